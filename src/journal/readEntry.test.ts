import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Problem, printProblem } from '../problem/problem.ts'
import { KINDS } from './entry.ts'
import { MOST_AT_ONCE, readEntries } from './readEntries.ts'
import { readEntry } from './readEntry.ts'
import { V1 } from './testing/entriesOfVersion1.ts'
import { LATER_KEYS } from './testing/entriesWithLaterKeys.ts'

const good = V1.find(({ entry }) => entry.kind === 'note')!.entry
const told = (value: unknown): string => {
  try {
    readEntry(value)
    return 'taken'
  } catch (error) {
    if (error instanceof Problem) return printProblem(error)
    throw error
  }
}

test('entries of version 1, written in 2026, are read as they were written, to the hash', () => {
  expect(new Set(V1.map(({ entry }) => entry.kind))).toEqual(new Set(KINDS))
  for (const { entry, hash } of V1) {
    const sealed = readEntry(JSON.parse(JSON.stringify(entry)))
    expect(sealed.entry).toEqual(entry)
    expect(sealed.hash, `${entry.kind} ${entry.id}`).toBe(hash)
  }
})

test('[J12] keys that came later are read as they were written, to the hash; entries without them keep the hash they had', () => {
  for (const { entry, hash } of LATER_KEYS) {
    const sealed = readEntry(JSON.parse(JSON.stringify(entry)))
    expect(sealed.entry).toEqual(entry)
    expect(sealed.hash, `${entry.kind} ${entry.id}`).toBe(hash)
  }
  const signed = LATER_KEYS.find(({ entry }) => entry.kind === 'step-signed')!.entry
  const [stage] = signed.kind === 'step-signed' ? signed.body.tightened! : []
  const withStage = (change: object) =>
    told({ ...signed, body: { ...signed.body, tightened: [{ ...stage, ...change }] } })
  expect(withStage({})).toBe('taken')
  expect(withStage({ count: 13 })).toContain("'body › tightened › 0' is an object; expected count not above of")
  expect(withStage({ stage: 0 })).toContain('expected a whole number, 1 or more')
})

test('what is wrong is told: where, what came, what was expected, what to do', () => {
  expect(told({ ...good, seq: 0 })).toBe(
    "In an entry, 'seq' is 0; expected a whole number, 1 or more. The shapes of all entries stand in src/journal/entry.ts. The entry was not taken; nothing else was changed.",
  )
  expect(told({ ...good, body: { say: 'x' } })).toContain("'body › says' is missing; expected text")
  expect(told({ ...good, body: { says: 'x', loud: true } })).toContain(
    "'body › loud' is true; expected no other keys than says · about",
  )
  expect(told({ ...good, kind: 'rumour' })).toContain("An entry of the kind 'rumour', version 1, is not known here.")
  expect(told({ ...good, v: 2 })).toContain("An entry of the kind 'note', version 2, is not known here.")
  expect(told({ ...good, v: 'one' })).toContain("'v' is 'one'; expected version 1")
  expect(told(null)).toContain("'entry' is null; expected an object")
  expect(told([good])).toContain("'entry' is a list of 1; expected an object")
})

test.each([
  ['NaN as a time', { at: { ms: Number.NaN, n: 0 } }],
  ['a time behind the year 9999', { at: { ms: 1e15, n: 0 } }],
  ['half a millisecond', { at: { ms: 0.5, n: 0 } }],
  ['an id in capitals', { id: good.id.toUpperCase() }],
  ['an id that is a path', { id: '../../etc/passwd' }],
  ['a stream with a line end', { stream: 'J41\nJ42' }],
  ['a stream of nothing', { stream: '' }],
  ['a stream without end', { stream: 'J'.repeat(121) }],
  ['a person who is a list', { person: ['M. Ashdown'] }],
  ['a name that is half a character', { device: 'tablet \ud83d' }],
  ['a prev that is no hash', { prev: 'abc' }],
  ['a body that is none', { body: null }],
  ['says without end', { body: { says: 'x'.repeat(10_001) } }],
  ['facts with a wild key', { body: { says: 'x', facts: { 'a\u0000b': 1 } } }],
  ['facts that are deep', { body: { says: 'x', facts: { a: { b: 1 } } } }],
])('refuses %s', (_, change) => {
  expect(told({ ...good, ...change })).toContain('In an entry, ')
})

test('refuses a key __proto__ wherever it hides, and a body without a bottom', () => {
  const text = JSON.stringify({ ...good, body: { says: 'x' } })
  expect(told(JSON.parse(`{"__proto__": {"kind": "note"}, ${text.slice(1)}`))).toContain('__proto__')
  expect(told(JSON.parse(text.replace('"body":{', '"body":{"facts":{"__proto__":"x"},')))).toContain('__proto__')
  const deep = JSON.parse(text.replace('"body":{', `"body":{"about":${'{"a":'.repeat(5000)}1${'}'.repeat(5000)},`))
  expect(told(deep)).toContain('is too deep; expected at most 12 levels')
  expect(Object.getPrototypeOf(readEntry(JSON.parse(text)).entry)).toBe(Object.prototype)
})

test('refuses an entry, and a put, that is too large', () => {
  const step = { step: 'ü'.repeat(200) }
  const body = { steps: Array.from({ length: 1_500 }, () => step) }
  expect(told({ ...good, kind: 'sequence-adopted', body })).toMatch(
    /An entry is \d+ bytes long; at most 400000 are taken\./,
  )
  expect(() => readEntries(Array.from({ length: MOST_AT_ONCE + 1 }, () => good))).toThrow('entries came at once')
})

test('whatever comes in, it is an entry or a problem, and what is taken is taken unchanged (seed 8)', () => {
  const keys = fc.constantFrom(...Object.keys(good), 'x')
  fc.assert(
    fc.property(fc.constantFrom(...V1), keys, fc.anything({ maxDepth: 3 }), ({ entry }, key, value) => {
      const input = { ...entry, [key]: value }
      try {
        expect(readEntry(input).entry).toEqual(input)
      } catch (error) {
        expect(error).toBeInstanceOf(Problem)
      }
    }),
    { seed: 8, numRuns: 2_000 },
  )
})

test('what was read is not read again, and nobody can make himself such a thing', async () => {
  const sealed = readEntry(V1[0]!.entry)
  expect(readEntries([sealed])[0]).toBe(sealed)
  expect(() => readEntries([{ ...sealed, hash: '0'.repeat(64) }])).toThrow()
  expect(() => Object.assign(sealed, { hash: '0'.repeat(64) })).toThrow(TypeError)
})

test('what is far too much is not walked through: an entry of four million numbers is refused at once', () => {
  const many = Array.from({ length: 4_000_000 }, () => 1)
  for (const body of [many, { says: Array.from({ length: 2_000 }, () => many.slice(0, 2_000)) }])
    expect(() => readEntry({ kind: 'note', v: 1, body })).toThrow(/too many values/)
})
