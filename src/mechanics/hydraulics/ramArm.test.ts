import fc from 'fast-check'
import { expect, test } from 'vitest'
import { degree, mm, newton } from '../../quantity/constructors.ts'
import { leverForce } from './leverForce.ts'
import { ramArm } from './ramArm.ts'

const arm = {
  loadRadius: mm(800),
  pinRadius: mm(200),
  anchorDistance: mm(500),
  closed: mm(400),
  open: mm(600),
  closedAngle: degree(-20),
}

test('the work of the ram is the work on the load, all through the travel: independent of levers and angles (seed 78)', () => {
  const shapes = fc.record({
    pin: fc.integer({ min: 100, max: 400 }),
    anchor: fc.integer({ min: 410, max: 900 }),
    from: fc.double({ min: 0.1, max: 0.4, noNaN: true }),
    to: fc.double({ min: 0.5, max: 0.9, noNaN: true }),
    angle: fc.integer({ min: -60, max: 20 }),
  })
  fc.assert(
    fc.property(shapes, ({ pin, anchor, from, to, angle }) => {
      const length = (part: number) => mm(anchor - pin + 2 * pin * part)
      const { travel } = ramArm({
        load: newton(1000),
        loadRadius: mm(1000),
        pinRadius: mm(pin),
        anchorDistance: mm(anchor),
        closed: length(from),
        open: length(to),
        closedAngle: degree(angle),
        places: 200,
      })
      let done = 0
      for (let at = 1; at < travel.length; at++) {
        const [before, after] = [travel[at - 1], travel[at]] as [(typeof travel)[0], (typeof travel)[0]]
        done += ((before.force.high + after.force.high) / 2) * (after.extension - before.extension)
      }
      const height = (place: (typeof travel)[0] | undefined) => Math.sin(place?.angle ?? 0)
      const lifted = 1000 * (height(travel.at(-1)) - height(travel[0]))
      expect(Math.abs(done - lifted)).toBeLessThan(0.002 * 1000)
    }),
    { seed: 78, numRuns: 60 },
  )
})

test('the hardest place is the greatest of the table, and a range of load gives a range of force', () => {
  const { travel, hardest } = ramArm({ ...arm, load: { low: newton(900), high: newton(1100) } })
  expect(hardest.ratio).toBeGreaterThanOrEqual(Math.max(...travel.map(({ ratio }) => ratio)))
  expect(hardest.force.high / hardest.force.low).toBeCloseTo(11 / 9, 9)
})

test('an arm that goes over its dead point is told', () => {
  const over = ramArm({ ...arm, load: newton(1000), closedAngle: degree(60), closed: mm(310), open: mm(690) })
  expect(over.cautions[0]).toContain('dead point')
})

test('refuses a ram that cannot reach, and one that is longer closed than open', () => {
  expect(() => ramArm({ ...arm, load: newton(1), open: mm(700) })).toThrow('between 300 mm and 700 mm')
  expect(() => ramArm({ ...arm, load: newton(1), closed: mm(650) })).toThrow('the closed ram has to be')
})

test('a slanting force on a lever has to be larger', () => {
  const lever = { load: newton(1000), loadArm: mm(100), forceArm: mm(200) }
  expect(leverForce({ ...lever, slant: degree(60) }).high).toBeCloseTo(1000, 9)
  expect(() => leverForce({ ...lever, slant: degree(85) })).toThrow('the slant has to be from 0° to 80°')
})

test('the hardest push is found between the places too: with two places as with two hundred', () => {
  const ratio = (places: number) => ramArm({ ...arm, load: newton(1000), places }).hardest.ratio
  expect(ratio(2)).toBeCloseTo(ratio(200), 4)
  // Both ends are easier than the middle here.
  const { travel, hardest } = ramArm({ ...arm, load: newton(1000), places: 2 })
  for (const end of travel) expect(end.ratio).toBeLessThan(hardest.ratio - 0.05)
})
