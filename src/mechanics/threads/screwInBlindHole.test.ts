import { expect, test } from 'vitest'
import { mm } from '../../quantity/constructors.ts'
import { requiredEngagement } from './requiredEngagement.ts'
import { screwInBlindHole } from './screwInBlindHole.ts'

const cover = {
  screwLength: mm(40),
  grip: mm(18),
  washer: mm(2),
  gasketSqueezed: mm(0.5),
  holeDepth: mm(24),
  threadDepth: mm(21),
  wanted: mm(18),
}

test('a screw of the right length clamps, with room at the bottom', () => {
  const fit = screwInBlindHole(cover)
  expect(fit).toMatchObject({ bottoms: 'no', runsOutOfThread: 'no', shankJams: 'no', hasEngagement: 'yes' })
  expect(fit.leftAtBottom.low).toBeCloseTo(0.0045, 9)
})

test('the same screw without its washer and with a cover that was faced runs out of thread, and one size longer bottoms', () => {
  expect(screwInBlindHole({ ...cover, washer: mm(0), grip: mm(17) }).runsOutOfThread).toBe('yes')
  expect(screwInBlindHole({ ...cover, screwLength: mm(45) }).bottoms).toBe('yes')
  expect(screwInBlindHole({ ...cover, screwLength: mm(45) }).cautions).toHaveLength(2)
})

test('a hole depth known only roughly leaves it open whether it bottoms', () => {
  expect(screwInBlindHole({ ...cover, holeDepth: { low: mm(18), high: mm(24) } }).bottoms).toBe('not known')
})

test('a shank longer than what it clamps jams in the hole', () => {
  expect(screwInBlindHole({ ...cover, screwThread: mm(15) }).shankJams).toBe('yes')
})

test('a short screw does not hold', () => {
  const fit = screwInBlindHole({ ...cover, screwLength: mm(30) })
  expect(fit.hasEngagement).toBe('no')
  expect(screwInBlindHole({ ...cover, screwLength: mm(15) }).engagement.low).toBe(0)
})

test('1 d in steel, 1.5 d in cast iron, 2 d in aluminium and in what is not known', () => {
  const depth = (tapped: string) => requiredEngagement({ nominalDiameter: mm(10), tapped })
  expect([depth('steel'), depth('cast iron'), depth('aluminium'), depth('?')]).toEqual([0.01, 0.015, 0.02, 0.02])
})

test('refuses a grip below zero', () => {
  expect(() => screwInBlindHole({ ...cover, grip: mm(-1) })).toThrow('a clamped thickness has to be from 0 mm')
})
