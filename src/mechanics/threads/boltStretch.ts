import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonPerMetre, Pascal, Radian, SquareMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'
import { requirePossible } from './tensileStressArea.ts'

/**
 * How much longer a bolt is under its preload: what a micrometer over both ends shows, the surest way to set a big bolt.
 *
 * @param preload symbol F
 * @param length of what stretches: the grip and half of head and nut thread
 * @param area symbol A, shank or stress area where most of the length lies
 * @param modulus symbol E
 * @returns stretch
 * @throws VALUE_OUTSIDE
 * @source Hooke's law; Wentzell, Machine Design, Example 6.2
 * @example boltStretch({ preload: newton(50000), length: mm(100), area: squareMetre(157e-6), modulus: megapascal(207000) }).low   // 0.154 mm
 */
export function boltStretch({
  preload,
  length,
  area,
  modulus,
}: {
  readonly preload: Known<Newton>
  readonly length: Known<Metre>
  readonly area: SquareMetre
  readonly modulus: Known<Pascal>
}): Range<Metre> {
  requireAboveZero('the preload', preload, 'N')
  requireAboveZero('the length that stretches', length, 'm')
  requireAboveZero('the area', area, 'm²')
  requireAboveZero('the modulus', modulus, 'Pa')
  return spread({ preload, length, modulus }, (exact) => metre((exact.preload * exact.length) / (area * exact.modulus)))
}

/**
 * Angle to turn a nut from snug for a preload: it has to take up the stretch of the bolt and what the parts are squeezed.
 * Only from a snug joint without gasket; the first turn that seats faces and burrs does not count.
 *
 * @param stretch from boltStretch
 * @param preload symbol F; with members for what the parts are squeezed
 * @param members symbol k_m, from memberStiffness; left out the parts count as rigid, and the angle is least
 * @param pitch symbol P
 * @param nominalDiameter symbol d
 * @returns angle
 * @throws THREAD_PITCH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source angle = 2π (stretch + squeeze) / P; Wentzell, Machine Design, Example 6.2
 * @example turnAngle({ stretch: inch(0.01204), preload: lbf(24000), pitch: inch(0.1), nominalDiameter: inch(0.75) }).low   // 43.3 °
 */
export function turnAngle({
  stretch,
  preload,
  members,
  pitch,
  nominalDiameter,
}: {
  readonly stretch: Known<Metre>
  readonly preload: Newton
  readonly members?: NewtonPerMetre
  readonly pitch: Metre
  readonly nominalDiameter: Metre
}): Range<Radian> {
  requirePossible({ nominalDiameter, pitch })
  requireWithin('the stretch', stretch, { low: 0, high: 0.05, unit: 'm' })
  requireAboveZero('the preload', preload, 'N')
  const squeeze = members === undefined ? 0 : preload / members
  return spread({ stretch }, (exact) => radian((2 * Math.PI * (exact.stretch + squeeze)) / pitch))
}
