import { expect, test } from 'vitest'
import { Problem } from '../problem/problem.ts'
import { canonicalForm, hashOfBytes, hashOfText } from './canonicalForm.ts'

// Source: RFC 8785 (JSON Canonicalization Scheme), June 2020. 3.2.2 the sample, 3.2.4 its bytes.
test('the sample of RFC 8785 comes out byte for byte', () => {
  const sample = JSON.parse(String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`)
  const bytes = `
    7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72 75 65 2c 66 61 6c 73 65 5d 2c 22 6e 75 6d 62 65 72 73 22 3a
    5b 33 33 33 33 33 33 33 33 33 2e 33 33 33 33 33 33 33 2c 31 65 2b 33 30 2c 34 2e 35 2c 30 2e 30 30 32 2c 31 65 2d 32 37
    5d 2c 22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 5c 75 30 30 30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d`
  expect(canonicalForm(sample)).toBe(Buffer.from(bytes.replace(/\s/g, ''), 'hex').toString('utf8'))
})

// Source: RFC 8785, 3.2.3.
test('keys stand in the order of their UTF-16 units, as in RFC 8785', () => {
  const sample = JSON.parse(String.raw`{
    "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
    "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
  }`)
  expect([...canonicalForm(sample).matchAll(/:"([^"]+)"/g)].map(([, name]) => name)).toEqual([
    'Carriage Return',
    'One',
    'Control',
    'Latin Small Letter O With Diaeresis',
    'Euro Sign',
    'Emoji: Grinning Face',
    'Hebrew Letter Dalet With Dagesh',
  ])
})

// Source: RFC 8785, appendix B: bits of the double, and how it is written.
test.each([
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
])('the double %s is written %s, as in RFC 8785', (bits, written) => {
  expect(canonicalForm(Buffer.from(bits, 'hex').readDoubleBE())).toBe(written)
})

test('what JSON cannot say is refused: NaN and infinity (RFC 8785, appendix B), a lone half of a pair, a circle, nothing', () => {
  const circle: Record<string, unknown> = {}
  circle.self = circle
  const nan = Buffer.from('7fffffffffffffff', 'hex').readDoubleBE()
  for (const value of [nan, Number.POSITIVE_INFINITY, '\ud800', { '\udc00': 1 }, circle, undefined])
    expect(() => canonicalForm(value)).toThrow(Problem)
})

// Source: NIST, FIPS 180-2 appendix B.1 and B.2: the messages "abc" and the one of 448 bits; the empty message is from NIST's SHA test vectors.
test('the hash is SHA-256', () => {
  expect(hashOfText('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  expect(hashOfText('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  )
  expect(hashOfBytes(new Uint8Array())).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855')
})
