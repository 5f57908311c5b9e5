import { expect, test } from 'vitest'
import { mm } from '../src/quantity/constructors.ts'
import { differs, evaluate, readExamples } from './docstringExamples.ts'

test('examples are read with their lines, from blocks and from single lines, and without a result too', () => {
  const source = [
    '/**',
    ' * Twice as much.',
    ' * @example twice(3)   // 6',
    ' * @example   twice(0.5, { at: "a // b" })   // 1.00 mm²  ',
    ' * @example twice(2)',
    ' * @exampled twice(2)   // 4',
    ' */',
    'const text = "@example twice(2)   // 4"',
    "/** @example name()   // 'M10 × 1.5' */",
  ].join('\n')
  expect(readExamples(source)).toEqual([
    { line: 3, call: 'twice(3)', printed: '6' },
    { line: 4, call: 'twice(0.5, { at: "a // b" })', printed: '1.00 mm²' },
    { line: 5, call: 'twice(2)', printed: undefined },
    { line: 9, call: 'name()', printed: "'M10 × 1.5'" },
  ])
})

test('an expression sees the names it is given', () => {
  expect(evaluate('twice(mm(2))', { mm, twice: (value: number) => 2 * value })).toBe(0.004)
  expect(() => evaluate('twice(2)', {})).toThrow('twice is not defined')
})

// The first value is just inside half a unit of the last digit printed, the second just outside.
test.each([
  ['57.99 mm²', 57.9949e-6, 57.9951e-6],
  ['0.10 mm', 0.1049e-3, 0.1051e-3],
  ['12 µm', 12.49e-6, 12.51e-6],
  ['12 μm', 11.51e-6, 11.49e-6],
  ['2.0 in', 2.049 * 0.0254, 2.051 * 0.0254],
  ['5 kN', 5490, 5510],
  ['1.2 MPa', 1.249e6, 1.251e6],
  ['100 psi', 100.49 * 6894.757, 100.51 * 6894.757],
  ['80 °C', 353.15 + 0.49, 353.15 + 0.51],
  ['30 deg', (30.49 * Math.PI) / 180, (30.51 * Math.PI) / 180],
  ['1.5 min', 92.9, 93.1],
  ['1.2e-5 1/K', 1.249e-5, 1.251e-5],
  ['-3.5', -3.549, -3.551],
  ['−3.5', -3.451, -3.449],
  ['7', 7.49, 7.51],
])('%s is %d and not %d', (printed, inside, outside) => {
  expect(differs(inside, printed)).toBeUndefined()
  expect(differs(outside, printed)).toContain(`printed is ${printed}`)
})

test('texts, yes and no, nothing and lists are compared as they are', () => {
  expect(differs('M10 × 1.5', "'M10 × 1.5'")).toBeUndefined()
  expect(differs('M10', "'M10 × 1.5'")).toBe(`it gives "M10"; printed is 'M10 × 1.5'`)
  expect(differs(true, 'true')).toBeUndefined()
  expect(differs('true', 'true')).toBe('it gives "true"; printed is true')
  expect(differs(undefined, 'undefined')).toBeUndefined()
  expect(differs([{ op: 'a', s: 1 }], "[{ op: 'a', s: 1 }]")).toBeUndefined()
  expect(differs([{ op: 'a', s: 2 }], "[{ op: 'a', s: 1 }]")).toContain('it gives')
})

test('what cannot be compared is said', () => {
  expect(differs(Number.NaN, '7')).toBe('it gives NaN in SI units; printed is 7, which is 7')
  expect(differs('7', '7')).toBe('it gives "7", which is not a number; printed is 7')
  expect(differs(7, '7 furlong')).toContain("the unit 'furlong' is not known here; known are % m mm")
  expect(differs(7, 'about seven')).toBe(
    "'about seven' is neither a number with its unit, nor a quoted text, nor another literal",
  )
})
