import { expect, test } from 'vitest'
import { kilogram, mm } from '../../quantity/constructors.ts'
import { tipping, turnOver } from './tipping.ts'
import { uprightLegs } from './uprightLegs.ts'

test('a cube goes over at 45°, and a push high up starts it sooner than one low down', () => {
  const cube = { edgeDistance: mm(500), centreHeight: mm(500), mass: kilogram(100) }
  expect(tipping(cube).angle.low).toBeCloseTo(Math.PI / 4, 12)
  const push = (height: number) => tipping({ ...cube, pushHeight: mm(height) }).push?.low ?? 0
  expect(push(1000)).toBeCloseTo(490.3325, 4)
  expect(push(1000)).toBeLessThan(push(500))
})

test('what stands on a few degrees is told to be propped, and without a mass no push is told', () => {
  const { push, cautions } = tipping({ edgeDistance: mm(50), centreHeight: mm(600) })
  expect(push).toBeUndefined()
  expect(cautions[0]).toContain('prop or strap')
})

test('turning over: rise and fall come out at the heights of the two faces', () => {
  const { goesOverAt, rise, fall, energy, cautions } = turnOver({
    mass: kilogram(100),
    edgeDistance: mm(300),
    centreHeight: mm(400),
    hookDistance: mm(600),
  })
  expect(goesOverAt.low).toBeCloseTo(Math.atan(0.75), 12)
  expect(0.4 + rise.low - fall.low).toBeCloseTo(0.3, 12)
  expect(energy.high).toBeCloseTo(100 * 9.80665 * 0.2, 6)
  expect(cautions.join(' ')).toContain('no permission')
})

test('a hoist that may hang short of the centre of mass turns nothing: it would lift the whole, and is refused', () => {
  const unit = { mass: kilogram(100), edgeDistance: mm(300), centreHeight: mm(400) }
  for (const hookDistance of [mm(250), { low: mm(280), high: mm(600) }]) {
    expect(() => turnOver({ ...unit, hookDistance })).toThrow('would lift the whole unit')
  }
  expect(turnOver({ ...unit, hookDistance: mm(300) }).pull.high).toBeCloseTo(980.665, 6)
})

test('two upright legs carry the whole between them', () => {
  const { first, second } = uprightLegs({ mass: kilogram(100), toFirst: mm(300), toSecond: mm(500) })
  expect(first.high + second.high).toBeCloseTo(980.665, 6)
  expect(first.high).toBeGreaterThan(second.high)
})

test('refuses a centre of mass on the floor and above the edge', () => {
  expect(() => tipping({ edgeDistance: mm(0), centreHeight: mm(100) })).toThrow(
    'the distance to the edge has to be above 0 mm',
  )
  expect(() => uprightLegs({ mass: kilogram(1), toFirst: mm(0), toSecond: mm(1) })).toThrow(
    'the distance to the first leg',
  )
})
