import { expect, test } from 'vitest'
import { small } from './testing/smallUnit.ts'

const plate = (wheel: string, column = 'at: [24, 0], diameter: 14') => `
lines: {1: {at: [0, 0], ends: [front, rear]}, 2: {at: [60, 0], ends: [front, rear]}}
parts:
  box: {}
  plate: {line 1: "0..6: 60/20", comes from: rear, columns: {line: 1, ${column}, x: 6, from: rear, for: screw head}}
  wheel: {look: gear, ${wheel}, comes from: rear}
`

test('what stands in the column of a screw comes after it, with the ring that stands there', () => {
  const { refuses } = small(plate('line 2: "20..40: 80"'))
  expect(refuses('plate', 'wheel')).toEqual([])
  expect(refuses('wheel', 'plate')).toEqual([
    'plate: wheel stands in the column of the screw head of plate: Ø 80 at 20..40.',
  ])
})

test('beside the column, or behind its end, nothing bars it', () => {
  expect(small(plate('line 2: "20..40: 50"')).refuses('wheel', 'plate')).toEqual([])
  expect(small(plate('line 2: "-40..-20: 80"')).refuses('wheel', 'plate')).toEqual([])
})

test('on its own line a column is judged by its place beside the line', () => {
  const columns = (diameter: number) =>
    small(plate(`line 1: "20..40: ${diameter}/10"`))
      .derivation.problem.operations.find(({ id }) => id === 'plate')!
      .needs.filter(({ reason }) => reason.code === 'COLUMN').length
  expect([columns(34), columns(35)]).toEqual([0, 1])
})

test('columns on a circle are spread by their angles', () => {
  const on = (angle: number) =>
    small(plate('line 2: "20..40: 60"', `circle: 60, angles: [${angle}], diameter: 14`))
      .derivation.problem.operations.find(({ id }) => id === 'plate')!
      .needs.filter(({ reason }) => reason.code === 'COLUMN').length
  expect([on(0), on(90), on(180)]).toEqual([1, 0, 0])
})

test('what was not measured leaves a question', () => {
  const { doubts, refuses } = small(plate('line 2: "20..40: ?"'))
  expect(refuses('wheel', 'plate')).toEqual([])
  expect(doubts).toContainEqual(expect.stringContaining('wheel stands in the column of the screw head of plate'))
})
