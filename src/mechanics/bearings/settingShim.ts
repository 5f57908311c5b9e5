import { Problem } from '../../problem/problem.ts'
import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { shown } from '../limits.ts'
import { type Known, type Range, rangeOf } from '../range.ts'

/** One measured size of the loop that decides the float. */
export interface LoopSize {
  readonly name: string
  /** 1 where a larger size gives more float, -1 where it gives less. */
  readonly sign: 1 | -1
  readonly size: Known<Metre>
}

export interface SettingShim {
  /** Float of the loop without any shim; below zero it is preload. */
  readonly loop: Range<Metre>
  /** Shims that reach the target whatever the readings hide; left out where the readings are too coarse for that. */
  readonly sure?: Range<Metre>
  /** Shims that may reach the target, from none at all; outside them none does. */
  readonly possible: Range<Metre>
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * Shim for a wanted float or preload, from the sizes that were measured: a pair of taper bearings shim-set in its
 * covers, a shaft between two faces. The float is the sum of the sizes with their signs, plus or minus the shim.
 * Gaskets as squeezed. Elastic give under preload is not in it. After a trial the loop is the float that was read and the
 * trial shim with its sign turned round.
 *
 * @param loop sizes with sign; take the sign from the drawing of the loop
 * @param shimSign 1 where a thicker shim gives more float (between cover and case), -1 where it takes float away
 * @param target wanted float, low to high; preload below zero
 * @returns float without shim, and the shims that surely or possibly fit
 * @throws RANGE_TURNED, SHIM_TARGET_BELOW_ZERO
 * @source sum along a loop; worked case 1.008 + 0.030 - 0.686 - 0.080 in: a gearbox build log
 * @example settingShim({ loop: [{ name: 'gap', sign: 1, size: mm(1.47) }], shimSign: -1, target: { low: mm(0.05), high: mm(0.1) } }).possible.low   // 1.37 mm
 */
export function settingShim({
  loop,
  shimSign,
  target,
}: {
  readonly loop: readonly LoopSize[]
  readonly shimSign: 1 | -1
  readonly target: Range<Metre>
}): SettingShim {
  const wanted = rangeOf(target)
  const ends = loop.map(({ sign, size }) => {
    const { low, high } = rangeOf(size)
    return sign > 0 ? { low, high } : { low: -high, high: -low }
  })
  const free = {
    low: metre(ends.reduce((sum, { low }) => sum + low, 0)),
    high: metre(ends.reduce((sum, { high }) => sum + high, 0)),
  }
  const sure =
    shimSign > 0
      ? { low: wanted.low - free.low, high: wanted.high - free.high }
      : { low: free.high - wanted.high, high: free.low - wanted.low }
  const possible =
    shimSign > 0
      ? { low: wanted.low - free.high, high: wanted.high - free.low }
      : { low: free.low - wanted.high, high: free.high - wanted.low }
  if (possible.high < -1e-9) throw new Problem('SHIM_TARGET_BELOW_ZERO', { high: shown(possible.high, 'm') })
  const isSure = sure.low <= sure.high + 1e-12 && sure.high > -1e-12
  const thickness = ({ low, high }: { readonly low: number; readonly high: number }) => ({
    low: metre(Math.max(0, low)),
    high: metre(Math.max(0, low, high)),
  })
  return {
    loop: free,
    ...(isSure ? { sure: thickness(sure) } : {}),
    possible: thickness(possible),
    cautions: cautions({ isSure, isPreload: wanted.low < 0, mayNeedNone: possible.low < -1e-9 }),
    source: `sum of ${loop.length} sizes with their signs`,
  }
}

function cautions({
  isSure,
  isPreload,
  mayNeedNone,
}: Readonly<Record<'isSure' | 'isPreload' | 'mayNeedNone', boolean>>): string[] {
  const said = ['Turn the shaft both ways while the covers are drawn up, then measure the float with the shims in.']
  if (isPreload) said.push('Preload: prove it by rolling torque, seal not fitted; float cannot be felt past zero.')
  if (mayNeedNone) {
    said.push('Without any shim it may lie past the target already: then a face has to be cut back, not shimmed.')
  }
  if (!isSure) said.push('The readings are coarser than the target: measure closer, or set up with a trial shim first.')
  return said
}
