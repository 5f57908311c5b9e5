import { expect, test } from 'vitest'
import { connected, contribution, winchUnit } from '../winchBox.example.ts'

const seat = (rest: string) => `  seat: {kind: cylindrical fit, shaft: shaft.seat A, bore: bearing A.bore, ${rest}}`

test('a loose fit, and one of which it is not told, add nothing', () => {
  for (const rest of ['fit: loose', 'source: nobody']) {
    const { steps, orders, clocks, mayOverlap, within } = contribution(seat(rest))
    expect([steps, orders, clocks, mayOverlap, within].flat()).toEqual([])
  }
})

test('a press fit may overlap, the part that goes on as the mover, and wants the press on the bench', () => {
  const { steps, mayOverlap, stations } = contribution(seat('fit: press'))
  expect(steps).toEqual([])
  expect(mayOverlap).toEqual([{ mover: 'bearing A', other: 'shaft' }])
  expect(stations).toEqual([{ part: 'bearing A', station: 'press', joined: 'on the bench' }])
})

test('a hot fit is three steps: warm it away from the work, the part, feel it when it is cold', () => {
  const { steps, orders, within } = contribution(seat('fit: hot'))
  expect(steps.map(({ id, station, apart }) => [id, station, apart])).toEqual([
    ['warm bearing A', 'oven', true],
    ['feel bearing A seated', undefined, undefined],
  ])
  expect(orders.map(({ first, then }) => [first, then])).toEqual([
    ['warm bearing A', 'bearing A'],
    ['bearing A', 'feel bearing A seated'],
  ])
  expect(within.map(({ does }) => does)).toEqual([
    'Drop bearing A home without a stop: out of the oven to home at most 2 min.',
    'Hold bearing A against its shoulder until it grips.',
  ])
})

test('a hot bearing soaks 30 min to 8 h, by the bearing maker; another part is ready for 10 min', () => {
  const [bearing, cold] = contribution(seat('fit: hot')).clocks
  expect(bearing).toMatchObject({
    from: { step: 'warm bearing A', edge: 'end' },
    to: { step: 'bearing A', edge: 'start' },
  })
  expect([bearing?.least_s, bearing?.most_s]).toEqual([1800, 28_800])
  expect(bearing?.source).toContain("bearing maker's temperature sheet")
  expect(cold).toMatchObject({ from: { step: 'bearing A', edge: 'end' }, least_s: 1200 })
  const [wheel] = contribution(
    '  seat: {kind: cylindrical fit, fit: hot, shaft: shaft.seat W, bore: wheel.bore}',
  ).clocks
  expect([wheel?.least_s, wheel?.most_s, wheel?.source]).toEqual([1800, 2400, 'common practice, no source'])
})

test('what is told wins: soak, readiness and the rest before feeling', () => {
  const [ready, cold] = contribution(
    seat('fit: hot, soak: 40, ready for: 5 min, feel after: 1 h, source: maker'),
  ).clocks
  expect(ready).toMatchObject({ least_s: 2400, most_s: 2700, standing: 'told', source: 'maker' })
  expect(cold).toMatchObject({ least_s: 3600, standing: 'told' })
})

test('a cold fit chills the inner part', () => {
  const { steps, clocks } = contribution(
    '  bush: {kind: cylindrical fit, fit: cold, shaft: bush.outside, bore: box.bush bore}',
    'bush',
  )
  expect(steps.map(({ id, station }) => [id, station])).toEqual([
    ['chill bush', 'cold box'],
    ['feel bush seated', undefined],
  ])
  expect(clocks[0]?.most_s).toBe(2400)
})

test('a shaft that drops into a warmed wheel: the wheel is warmed and is not left apart, the shaft moves', () => {
  const { steps, mayOverlap } = contribution(
    '  seat: {kind: cylindrical fit, fit: hot, shaft: shaft.seat W, bore: wheel.bore, moves: shaft}',
  )
  expect(steps[0]).toMatchObject({ id: 'warm wheel', as: 'shaft' })
  expect(steps[0]).not.toHaveProperty('apart')
  expect(mayOverlap).toEqual([{ mover: 'shaft', other: 'wheel' }])
})

test('only where rollers or balls are pressed on is their track spoken of', () => {
  const warned = (text: string) => {
    const unit = winchUnit(text)
    const { connection, kind, given } = connected(unit, 'seat')
    return kind.warnings(connection, given, unit).join(' ')
  }
  expect(warned(seat('fit: press'))).toContain('rollers or balls')
  expect(warned('  seat: {kind: cylindrical fit, shaft: shaft.seat A, bore: wheel.bore, fit: press}')).not.toContain(
    'rollers or balls',
  )
})
