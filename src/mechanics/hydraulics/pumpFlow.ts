import { cubicMetre, cubicMetrePerSecond, radian } from '../../quantity/constructors.ts'
import type { CubicMetre, CubicMetrePerSecond, Metre, RadianPerSecond } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

const TURN = radian(2 * Math.PI)

/**
 * Oil that an external gear pump moves in one turn, from its teeth as measured. The space between the teeth is taken as the
 * tooth: a few in a hundred too much for large teeth.
 *
 * @param outside symbol D_o, over the teeth
 * @param root symbol D_i, at the bottom of the teeth
 * @param width symbol L, of the teeth
 * @returns symbol V_D, for one turn
 * @throws VALUE_OUTSIDE
 * @source A. Esposito, Fluid Power with Applications, gear pumps
 * @example gearPumpDisplacement({ outside: mm(75), root: mm(50), width: mm(25) })   // 0.0614 l
 */
export function gearPumpDisplacement({
  outside,
  root,
  width,
}: {
  readonly outside: Metre
  readonly root: Metre
  readonly width: Metre
}): CubicMetre {
  requireAboveZero('the width', width, 'm')
  requireAboveZero('the root diameter', root, 'm')
  requireWithin('the root diameter', root, { low: 0, high: outside, unit: 'm' })
  return cubicMetre((Math.PI / 4) * (outside ** 2 - root ** 2) * width)
}

/**
 * What a pump delivers.
 *
 * @param displacement symbol V_D, for one turn
 * @param speed symbol N
 * @param volumetric symbol η_v, what does not slip back; left out 0.8 to 0.97 (common practice, no source): a worn one less
 * @returns symbol Q
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source definition
 * @example pumpFlow({ displacement: litre(0.0614), speed: rpm(1000), volumetric: 0.9 }).high   // 55.3 l/min
 */
export function pumpFlow({
  displacement,
  speed,
  volumetric = { low: 0.8, high: 0.97 },
}: {
  readonly displacement: Known<CubicMetre>
  readonly speed: Known<RadianPerSecond>
  readonly volumetric?: Known<number>
}): Range<CubicMetrePerSecond> {
  requireAboveZero('the displacement', displacement, 'm³')
  requireAboveZero('the speed', speed, 'rad/s')
  requireWithin('the volumetric efficiency', volumetric, { low: 0.1, high: 1, unit: '' })
  return spread({ displacement, speed, volumetric }, (known) =>
    cubicMetrePerSecond((known.volumetric * known.displacement * known.speed) / TURN),
  )
}
