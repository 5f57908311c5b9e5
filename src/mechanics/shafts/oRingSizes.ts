import { Problem } from '../../problem/problem.ts'
import { inch, mm } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'

/** AS568 in runs: first and last dash number, first inside diameter and step in inches; rounded half up to a thousandth. */
interface Run {
  readonly from: number
  readonly to: number
  readonly first: number
  readonly step: number
}
const run = (from: number, to: number, first: number, step: number): Run => ({ from, to, first, step })
const one = (at: number, first: number): Run => run(at, at, first, 0)

/** From memory; the cords and the ends of the series read at a seal house's page. */
const SERIES: readonly { readonly cord: number; readonly runs: readonly Run[] }[] = [
  {
    cord: 0.07,
    runs: [
      one(4, 0.07),
      one(5, 0.101),
      one(6, 0.114),
      one(7, 0.145),
      one(8, 0.176),
      one(9, 0.208),
      run(10, 28, 0.2385, 0.0625),
      run(29, 41, 1.489, 0.125),
      run(42, 50, 3.239, 0.25),
    ],
  },
  {
    cord: 0.103,
    runs: [
      one(102, 0.049),
      one(103, 0.081),
      one(104, 0.112),
      one(105, 0.143),
      one(106, 0.174),
      one(107, 0.206),
      one(108, 0.237),
      run(109, 149, 0.299, 0.0625),
      run(150, 151, 2.862, 0.125),
      run(152, 178, 3.237, 0.25),
    ],
  },
  {
    cord: 0.139,
    runs: [run(201, 222, 0.171, 0.0625), run(223, 258, 1.609, 0.125), run(259, 274, 6.234, 0.25)],
  },
  {
    cord: 0.21,
    runs: [run(309, 324, 0.412, 0.0625), run(325, 361, 1.475, 0.125), run(362, 366, 6.225, 0.25)],
  },
  { cord: 0.275, runs: [run(425, 437, 4.475, 0.125), run(438, 444, 6.225, 0.25)] },
]

export interface ORingSize {
  /** AS568 dash number, three digits. */
  readonly dash: string
  readonly inside: Metre
  readonly cord: Metre
}

const SIZES: readonly ORingSize[] = SERIES.flatMap(({ cord, runs }) =>
  runs.flatMap(({ from, to, first, step }) =>
    Array.from({ length: to - from + 1 }, (_, at) => ({
      dash: String(from + at).padStart(3, '0'),
      inside: inch(Math.round((first + at * step) * 1000 + 1e-6) / 1000),
      cord: inch(cord),
    })),
  ),
)

/**
 * O-ring by its AS568 dash number. The larger rings past -274, -366 and -444 are left out: measure them.
 *
 * @param dash as 210 or -210
 * @returns inside diameter and cord
 * @throws O_RING_NOT_HELD
 * @source AS568, five series (from memory)
 * @example oRingOfDash('-210').inside   // 0.734 in
 */
export function oRingOfDash(dash: string): ORingSize {
  const wanted = dash.trim().replace(/^-/, '').padStart(3, '0')
  const found = SIZES.find((size) => size.dash === wanted)
  if (!found) throw new Problem('O_RING_NOT_HELD', { received: dash })
  return found
}

/**
 * AS568 rings that a measured ring may be, nearest first. An old ring has shrunk, set or swollen: measure the groove too.
 *
 * @param inside symbol d1, measured
 * @param cord symbol d2, measured
 * @returns up to three sizes whose cord is within 0.3 mm
 * @throws VALUE_OUTSIDE
 * @source AS568 (from memory); ISO 3601-1 has the same cords: 1.78, 2.62, 3.53, 5.33, 6.99 mm
 * @example nearestORings({ inside: mm(18.6), cord: mm(3.5) })[0].dash   // '210'
 */
export function nearestORings({
  inside,
  cord,
}: {
  readonly inside: Metre
  readonly cord: Metre
}): readonly ORingSize[] {
  requireAboveZero('the inside of the ring', inside, 'm')
  requireAboveZero('the cord', cord, 'm')
  const off = (size: ORingSize) => Math.abs(size.inside - inside)
  return SIZES.filter((size) => Math.abs(size.cord - cord) <= mm(0.3))
    .sort((a, b) => off(a) - off(b))
    .slice(0, 3)
}
