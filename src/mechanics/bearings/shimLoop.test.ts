// Shim loops of taper-bearing pairs checked by independent algebra: every face gets its place along the axis, and the float
// is how far the shaft can be pushed between touching both cups. Nothing here uses a sum with signs.
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { metre, mm } from '../../quantity/constructors.ts'
import { settingShim } from './settingShim.ts'

interface Box {
  /** Between the two faces of the case that the covers bolt to. */
  readonly width: number
  /** How far each cover's spigot reaches in from its own flange, left and right. */
  readonly spigots: readonly [number, number]
  /** Width of each bearing, back of cup to back of cone, seated without play. */
  readonly bearings: readonly [number, number]
  /** Between the shoulders that the cones stand against. */
  readonly shaft: number
}

/** Places of faces along the axis from the left face of the case. */
function float(box: Box, shims: { readonly underLeftCover: number; readonly behindRightCup: number }): number {
  const leftCupBack = -shims.underLeftCover + box.spigots[0]
  const rightCupBack = box.width - box.spigots[1] - shims.behindRightCup
  const leftShoulderAtLeftStop = leftCupBack + box.bearings[0]
  const rightShoulderAtRightStop = rightCupBack - box.bearings[1]
  // Pushed left until the left bearing is tight, the shaft's left shoulder is at its stop; then right until the other is.
  return rightShoulderAtRightStop - box.shaft - leftShoulderAtLeftStop
}

const loopOf = (box: Box) =>
  [
    { name: 'case', sign: 1, size: mm(box.width) },
    { name: 'left spigot', sign: -1, size: mm(box.spigots[0]) },
    { name: 'right spigot', sign: -1, size: mm(box.spigots[1]) },
    { name: 'left bearing', sign: -1, size: mm(box.bearings[0]) },
    { name: 'right bearing', sign: -1, size: mm(box.bearings[1]) },
    { name: 'shaft', sign: -1, size: mm(box.shaft) },
  ] as const

const size = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true })
const boxes = fc.record({
  spigots: fc.tuple(size(5, 15), size(5, 15)),
  bearings: fc.tuple(size(18, 40), size(18, 40)),
  shaft: size(60, 300),
  gap: size(-0.9, 0.9),
})

test('the shim that is reckoned gives the float that was wanted, under a cover and behind a cup (seed 355)', () => {
  fc.assert(
    fc.property(boxes, size(-0.1, 0.2), ({ spigots, bearings, shaft, gap }, wanted) => {
      const width = spigots[0] + spigots[1] + bearings[0] + bearings[1] + shaft + gap
      const box = { width, spigots, bearings, shaft }
      const target = { low: mm(wanted), high: mm(wanted) }
      if (wanted >= gap) {
        const shim = settingShim({ loop: loopOf(box), shimSign: 1, target }).possible.low * 1000
        expect(float(box, { underLeftCover: shim, behindRightCup: 0 })).toBeCloseTo(wanted, 9)
      } else {
        const shim = settingShim({ loop: loopOf(box), shimSign: -1, target }).possible.low * 1000
        expect(float(box, { underLeftCover: 0, behindRightCup: shim })).toBeCloseTo(wanted, 9)
      }
    }),
    { seed: 355 },
  )
})

test('swapping the cone for a thicker one wants a shim thicker by as much under the cover, thinner behind the cup (seed 356)', () => {
  fc.assert(
    fc.property(boxes, size(0, 0.2), ({ spigots, bearings, shaft }, thicker) => {
      const width = spigots[0] + spigots[1] + bearings[0] + bearings[1] + shaft
      const [old, fresh] = [bearings[0], bearings[0] + thicker].map((first) =>
        loopOf({ width, spigots, bearings: [first, bearings[1]], shaft }),
      )
      const target = { low: metre(0.001), high: metre(0.001) }
      const shim = (loop: ReturnType<typeof loopOf>) => settingShim({ loop, shimSign: 1, target }).possible.low * 1000
      expect(shim(fresh as ReturnType<typeof loopOf>) - shim(old as ReturnType<typeof loopOf>)).toBeCloseTo(thicker, 9)
    }),
    { seed: 356 },
  )
})
