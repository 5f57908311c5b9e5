import { expect, test } from 'vitest'
import { connected, contribution, winchUnit } from '../winchBox.example.ts'

const BOLTS =
  '  bolts: {kind: fasteners, holds: lid, screws: lid screws, thread: M10, own step: true, pieces: 6, circle: 160'

test('a set is work inside the step of the part that it holds', () => {
  const { steps, within, fast, carried } = contribution(
    '  bolts: {kind: fasteners, holds: lid, screws: lid screws, torque: 40 N·m, pieces: 4, circle: 160}',
  )
  expect(steps).toEqual([])
  expect(fast).toEqual([])
  expect(carried).toEqual([{ part: 'lid screws', withPart: 'lid' }])
  expect(within.map(({ part, does }) => [part, does])).toEqual([
    ['lid', 'Start every one by hand, several turns.'],
    ['lid', 'Tighten in small even steps in the order of the numbers on the map.'],
    ['lid', 'Bring all to 40 N·m (29.5 lbf·ft).'],
  ])
})

test('with its own step it makes the part fast and belongs to its closing', () => {
  const { steps, fast, closing, orders } = contribution(`${BOLTS}}`)
  expect(steps.map(({ id, as }) => [id, as])).toEqual([['bolts', 'lid']])
  expect(steps[0]?.takes).toMatchObject({ low: 360, high: 720, standing: 'usual' })
  expect(fast).toEqual([{ part: 'lid', steps: ['bolts'] }])
  expect(closing).toEqual([{ part: 'lid', steps: ['bolts'] }])
  expect(orders.map(({ first, then }) => [first, then])).toEqual([['lid', 'bolts']])
})

test('dowels before fitted bolts, these before bolts with clearance', () => {
  const sets = `  pins: {kind: fasteners, holds: lid, dowels: true, own step: true}
  fitted: {kind: fasteners, holds: lid, fitted: true, own step: true}
${BOLTS}}
  cover bolts: {kind: fasteners, holds: cover A, own step: true}`
  const after = (id: string) =>
    contribution(sets, id)
      .orders.filter(({ first }) => first === id)
      .map(({ then }) => then)
  expect([after('pins'), after('fitted'), after('bolts')]).toEqual([['fitted', 'bolts'], ['bolts'], []])
  expect(contribution(sets, 'pins').steps[0]?.within?.[0]).toContain('by wiggling')
})

test('a lock with its own step comes after the torque and after the check that settles something with this part', () => {
  const { steps, orders, fast, carried } = contribution(
    `${BOLTS}, lock: {with: tab washers, part: tabs, own step: true, takes: 3}}`,
  )
  expect(steps[1]).toMatchObject({
    id: 'lock bolts',
    takes: { low: 180 },
    noReturn: expect.stringContaining('tab washers'),
  })
  expect(orders.filter(({ then }) => then === 'lock bolts').map(({ first }) => first)).toEqual(['bolts', 'lever'])
  expect(fast[0]?.steps).toEqual(['bolts'])
  expect(carried.map(({ part }) => part)).toEqual(['lid screws', 'tabs'])
})

test('a lock without its own step is the last work, and `after` orders the tightening', () => {
  const { steps, orders } = contribution(`${BOLTS}, lock: {with: wire}, after: float}`)
  expect(steps[0]?.within?.at(-1)).toBe('Lock bolts with wire, after the torque')
  expect(orders.map(({ first, then, standing }) => [first, then, standing])).toContainEqual(['float', 'bolts', 'told'])
})

test('mixed lengths: the map has a letter for every hole, and swapping is warned of', () => {
  const unit = winchUnit(`${BOLTS}, lengths: {A: {length: 35, holes: [1, 2, 4, 5]}, B: {length: 55, holes: [3, 6]}}}`)
  const { connection, kind, given } = connected(unit, 'bolts')
  const [map] = kind.drawing(connection, given, unit).maps
  expect(map?.holes.map(({ id, letter }) => id + letter)).toEqual(['1A', '2A', '3B', '4A', '5A', '6B'])
  expect(map?.holes[0]?.y).toBeCloseTo(0.08, 12)
  expect(map?.lengths).toEqual([
    { letter: 'A', text: '35 mm', pieces: 4 },
    { letter: 'B', text: '55 mm', pieces: 2 },
  ])
  expect(kind.warnings(connection, given, unit)[0]).toContain('swapped')
  expect(kind.steps(connection, given, unit).steps[0]?.within?.[0]).toBe(
    'Put each length where the map has its letter: A, B.',
  )
})

test('a length that is told for no hole is asked for', () => {
  const unit = winchUnit(`${BOLTS}, lengths: {A: {length: 35, holes: [1, 2]}, B: {length: 55}}}`)
  const { connection, kind, given } = connected(unit, 'bolts')
  expect(kind.asks(connection, given, unit).map(({ asks }) => asks)).toContain(
    'Which length belongs in which hole? Give `holes` of each letter.',
  )
})
