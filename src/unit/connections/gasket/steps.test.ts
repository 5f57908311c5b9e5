import { expect, test } from 'vitest'
import { connected, contribution, winchUnit } from '../winchBox.example.ts'

const PASTE = '  joint: {kind: gasket, squeezed by: cover A, sealant: {what: joint paste, open time: 10 min, cure: 12 h'

test('a gasket goes in with the part that squeezes it', () => {
  const { steps, carried, within } = contribution(
    '  joint: {kind: gasket, gasket: lid gasket, squeezed by: lid, holes: [vent]}',
  )
  expect(steps).toEqual([])
  expect(carried).toEqual([{ part: 'lid gasket', withPart: 'lid' }])
  expect(within[0]).toEqual({ part: 'lid', does: 'Hold the gasket to both faces: vent stays open.' })
})

test('with its own step the gasket is laid before the part, as its own part or as a step of the connection', () => {
  const part = contribution('  joint: {kind: gasket, gasket: lid gasket, squeezed by: lid, own step: true}')
  expect([part.steps, part.carried]).toEqual([[], []])
  expect(part.orders.map(({ first, then }) => [first, then])).toEqual([['lid gasket', 'lid']])
  expect(part.within[0]?.part).toBe('lid gasket')
  const named = contribution('  joint: {kind: gasket, squeezed by: lid, own step: true}')
  expect(named.steps.map(({ id }) => id)).toEqual(['joint'])
})

test('sealant is a step that shuts the opening, after the dry trial and before the part', () => {
  const { steps, closing, orders } = contribution(`${PASTE}}}`)
  expect(steps.map(({ id, as, noReturn }) => [id, as, noReturn !== undefined])).toEqual([
    ['sealant joint', 'cover A', true],
  ])
  expect(closing).toEqual([{ part: 'cover A', steps: ['sealant joint'] }])
  expect(orders.map(({ first, then }) => [first, then])).toEqual([
    ['sealant joint', 'cover A'],
    ['dry fit', 'sealant joint'],
  ])
})

test('open time runs from its start to the end of the part; the cure from there to every fill', () => {
  expect(contribution(`${PASTE}}}`).clocks).toMatchObject([
    {
      from: { step: 'sealant joint', edge: 'start' },
      to: { step: 'cover A', edge: 'end' },
      most_s: 600,
      standing: 'told',
    },
    { from: { step: 'cover A', edge: 'end' }, to: { step: 'oil', edge: 'start' }, least_s: 43_200 },
    { from: { step: 'cover A', edge: 'end' }, to: { step: 'grease', edge: 'start' }, least_s: 43_200 },
  ])
})

test('screws with their own step end the open time, and the cure may be for named fills', () => {
  const bolts = '  cover bolts: {kind: fasteners, holds: cover A, own step: true}'
  const { clocks } = contribution(`${PASTE}, cure before: oil}}\n${bolts}`)
  expect(clocks.map(({ from, to }) => [from.step, to.step])).toEqual([
    ['sealant joint', 'cover bolts'],
    ['cover bolts', 'oil'],
  ])
  expect(new Set(clocks.map(({ id }) => id)).size).toBe(2)
})

test('times that are not on record are asked for, and there is no clock', () => {
  const unit = winchUnit('  joint: {kind: gasket, squeezed by: cover A, sealant: {what: joint paste}}')
  const { connection, kind, given } = connected(unit, 'joint')
  expect(kind.steps(connection, given, unit).clocks).toEqual([])
  expect(kind.asks(connection, given, unit).map(({ rank }) => rank)).toEqual([1, 1])
})

test('a gasket that closes an oil hole is warned of by name', () => {
  const unit = winchUnit('  joint: {kind: gasket, gasket: lid gasket, squeezed by: lid, holes: [oil hole, vent]}')
  const { connection, kind, given } = connected(unit, 'joint')
  expect(kind.warnings(connection, given, unit)[0]).toContain('closes oil hole and vent')
  expect(kind.renewals(connection, given, unit)[0]?.part).toBe('lid gasket')
})
