import { expect, test } from 'vitest'
import { printProblem } from '../problem/problem.ts'
import { countUnit } from './countUnit.ts'
import { readUnit } from './file/readUnit.ts'
import { tailBox } from './file/tailBox.example.ts'
import { forVariant, variantOf } from './variants.ts'

const WINCH = `matchmark: unit/1
unit: incline winch
invented: true
housing: frame
lines:
  1: {stack: [drum, collar, cap]}
openings:
  top: {}
  inspection hole: {in: hand cover}
parts:
  drum: {seats against: collar, keys: [collar, cap], reach: [top, inspection hole], loose until: [tighten collar, tighten cap]}
  collar: {variants: early, onto: drum, then: {bend the tab: {reach: top}}}
  cap: {pieces: 8, passes: collar}
  hand cover: {variants: [early, late], closes: top, way: [{through: inspection hole}, {through: top}]}
  hook: {variants: rope, way: {through: inspection hole, path: by hand}, closes: inspection hole}
connections:
  grip: {kind: press fit, inner: drum, outer: collar.bore}
  screws: {kind: fasteners, of: cap}
checks:
  float: {wants: [drum, collar], without: [hook], on bench: collar, reach: inspection hole}
fills:
  oil: {through: inspection hole, stands above: [top, inspection hole], after: bend the tab}
lies:
  upright: [drum, collar, tighten collar, screws]
orders:
  - {first: collar, then: cap}
  - {first: drum, then: cap}
clocks:
  grip clock: {from: end of warm collar, to: start of drum, most: 2 min}
drop: {bend the tab: not wanted}
sets: {pair: {parts: [drum, collar]}}
variants:
  early: {serials: ..1204}
  late: {serials: 1205..1300}
  rope: {serials: 1290.., marks: cast R}
`

const { unit, faults } = readUnit(WINCH, 'winch.unit.yaml')

test('a serial number picks the one variant that holds it', () => {
  expect(faults.map(printProblem)).toEqual([])
  expect([1, 1204, '1205', 1301].map((serial) => variantOf(unit!, serial)?.id)).toEqual([
    'early',
    'early',
    'late',
    'rope',
  ])
  expect([1295, 'A7', '', -3, 1.5].map((serial) => variantOf(unit!, serial))).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
    undefined,
  ])
})

test('what a variant does not have falls out of every list', () => {
  const late = forVariant(unit!, 'late')
  expect([...late.parts.keys()]).toEqual(['drum', 'cap', 'hand cover', 'frame'])
  expect(late.parts.get('drum')).toMatchObject({
    seats: [],
    keys: ['cap'],
    reach: ['top', 'inspection hole'],
    looseUntil: ['tighten cap'],
  })
  expect([...late.connections.keys()]).toEqual(['screws'])
  expect(late.lines.get('1')!.stack).toEqual(['drum', 'cap'])
  expect(late.passings).toEqual([])
  expect(late.checks.get('float')).toMatchObject({ wants: ['drum'], without: [], reach: ['inspection hole'] })
  expect(late.checks.get('float')!.onBench).toBeUndefined()
  expect(late.fills.get('oil')).toMatchObject({
    through: 'inspection hole',
    above: ['top', 'inspection hole'],
    after: [],
  })
  expect([...late.lies.keys()]).toEqual(['drum', 'screws'])
  expect(late.addedOrders.map(({ first, then }) => [first, then])).toEqual([['drum', 'cap']])
  expect([late.clocks, [...late.dropped.keys()]]).toEqual([[], []])
  expect(late.sets.get('pair')!.parts).toEqual(['drum'])
})

test('an opening in a part that is not there falls away, and the ways and the filling through it', () => {
  const rope = forVariant(unit!, 'rope')
  expect([...rope.openings.keys()]).toEqual(['top'])
  expect(rope.parts.get('hook')).toMatchObject({ ways: [], closes: [] })
  expect(rope.parts.get('drum')!.reach).toEqual(['top'])
  expect(rope.fills.get('oil')!.through).toBeUndefined()
  expect(rope.fills.get('oil')!.above).toEqual(['top'])
})

test('a variant keeps all that it has', () => {
  const early = forVariant(unit!, 'early')
  expect([...early.parts.keys()]).toEqual(['drum', 'collar', 'cap', 'hand cover', 'frame'])
  expect([...early.connections.keys()]).toEqual(['grip', 'screws'])
  expect(early.clocks).toHaveLength(1)
  expect(early.parts.get('hand cover')!.ways).toHaveLength(2)
})

test('parts and pieces are counted apart', () => {
  expect(countUnit(unit!)).toEqual({ parts: 6, pieces: 13, lines: 1, openings: 2, connections: 2 })
  expect(countUnit(readUnit(tailBox, 'x').unit!)).toEqual({
    parts: 17,
    pieces: 17,
    lines: 2,
    openings: 7,
    connections: 2,
  })
})
