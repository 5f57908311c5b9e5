// Damaged files: whatever is cut off or changed, the reader answers with a unit or with faults, each with a place in the file.
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { printProblem } from '../../problem/problem.ts'
import { readUnit } from './readUnit.ts'
import { tailBox } from './tailBox.example.ts'

const SEED = 20261125
const RUNS = 300

function answers(text: string): void {
  const { unit, faults } = readUnit(text, 'damaged.yaml')
  expect(faults.length === 0).toBe(unit !== undefined)
  const lines = text.split('\n').length
  for (const fault of faults) {
    expect(printProblem(fault)).toMatch(/^damaged\.yaml:\d+:\d+: .+\.|^damaged\.yaml:\d+:\d+: .+\?/s)
    expect(printProblem(fault)).not.toMatch(/undefined|\[object|NaN| {4}at /)
    expect(fault.place!.line).toBeLessThanOrEqual(lines)
  }
}

test(`a file that was cut off is answered (seed ${SEED})`, () => {
  const start = performance.now()
  fc.assert(
    fc.property(fc.nat(tailBox.length), (length) => answers(tailBox.slice(0, length))),
    { seed: SEED, numRuns: RUNS },
  )
  expect(performance.now() - start).toBeLessThan(60_000)
})

test(`a file with changed letters is answered (seed ${SEED})`, () => {
  const letters = [...'{}[]:,#&*!|>\'"%@`?-+/=~≈\n\t\0 \\0a.'].map((letter) => fc.constant(letter))
  const change = fc.tuple(fc.nat(tailBox.length - 1), fc.oneof(...letters, fc.string({ unit: 'binary', maxLength: 3 })))
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
      answers(changes.reduce((text, [at, by]) => text.slice(0, at) + by + text.slice(at + 1), tailBox))
    }),
    { seed: SEED, numRuns: RUNS },
  )
})

test(`a file with lines taken out, doubled or moved is answered (seed ${SEED})`, () => {
  const lines = tailBox.split('\n')
  const line = fc.nat(lines.length - 1)
  fc.assert(
    fc.property(fc.array(fc.tuple(line, line, fc.boolean()), { minLength: 1, maxLength: 8 }), (moves) => {
      const damaged = [...lines]
      for (const [from, to, doubled] of moves)
        damaged.splice(to, 0, ...(doubled ? [lines[from]!] : damaged.splice(from, 1)))
      answers(damaged.join('\n'))
    }),
    { seed: SEED, numRuns: RUNS },
  )
})

test(`a file with a value put in place of another is answered (seed ${SEED})`, () => {
  const odd = fc.constantFrom<unknown>(
    undefined,
    null,
    true,
    -1,
    0.5,
    '',
    '?',
    'x',
    '1..0',
    [],
    {},
    [null],
    [[]],
    [{}],
    { x: {} },
    ['x', 'x'],
  )
  const places = pathsOf(parse(tailBox))
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(places.length - 1), odd), { minLength: 1, maxLength: 4 }), (changes) => {
      const file = parse(tailBox)
      for (const [place, value] of changes) put(file, places[place]!, value)
      answers(JSON.stringify(file, null, 1))
    }),
    { seed: SEED, numRuns: 200 },
  )
})

function pathsOf(value: unknown, path: readonly string[] = []): string[][] {
  if (value === null || typeof value !== 'object') return [[...path]]
  return [[...path], ...Object.entries(value).flatMap(([key, inner]) => pathsOf(inner, [...path, key]))].filter(
    ({ length }) => length > 0,
  )
}

function put(file: unknown, path: readonly string[], value: unknown): void {
  const around = path
    .slice(0, -1)
    .reduce<unknown>((inner, key) => (inner as Record<string, unknown> | null)?.[key], file)
  if (around !== null && typeof around === 'object') (around as Record<string, unknown>)[path.at(-1)!] = value
}
