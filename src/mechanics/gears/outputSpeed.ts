import { metrePerSecond } from '../../quantity/constructors.ts'
import type { Metre, MetrePerSecond, RadianPerSecond } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'

/**
 * Speed along the road or the rails.
 *
 * @param shaftSpeed symbol ω, of the engine or the shaft that the ratio starts from
 * @param ratio turns of that shaft for one of the wheel, gearbox and axle together
 * @param rollingRadius from the axle to the ground, loaded: of a tyre less than half its diameter
 * @param slip share of the turning that is lost; left out 0
 * @returns speed, without regard to direction
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source kinematics
 * @example roadSpeed({ shaftSpeed: rpm(1500), ratio: 60, rollingRadius: mm(600) }).low / kilometrePerHour(1)   // 5.65
 */
export function roadSpeed({
  shaftSpeed,
  ratio,
  rollingRadius,
  slip = 0,
}: {
  readonly shaftSpeed: Known<RadianPerSecond>
  readonly ratio: number
  readonly rollingRadius: Known<Metre>
  readonly slip?: Known<number>
}): Range<MetrePerSecond> {
  requireAboveZero('the ratio', ratio, '')
  requireWithin('the speed of the shaft', shaftSpeed, { low: 0, high: 1e4, unit: 'rad/s' })
  requireWithin('the rolling radius', rollingRadius, { low: 0.01, high: 5, unit: 'm' })
  requireWithin('the slip', slip, { low: 0, high: 1, unit: '' })
  return spread({ shaftSpeed, rollingRadius, slip }, (exact) =>
    metrePerSecond((exact.shaftSpeed / ratio) * exact.rollingRadius * (1 - exact.slip)),
  )
}

/** How much a layer of rope adds to the radius, in rope diameters: bedded in the grooves below, or on top of the turns. */
const LAYER = { low: Math.sqrt(3) / 2, high: 1 }

/**
 * Speed of the hook of a winch, from its drum: every layer of rope makes it faster and weaker.
 *
 * @param drumSpeed symbol ω, of the drum
 * @param drumDiameter of the bare barrel
 * @param ropeDiameter as measured
 * @param layer which layer the rope runs off, 1 on the bare barrel
 * @param falls parts of rope that carry the hook; left out 1
 * @returns speed; from the second layer on a range, for it is not known how the rope beds
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source kinematics, rope taken at its centre line
 * @example ropeSpeed({ drumSpeed: rpm(10), drumDiameter: mm(300), ropeDiameter: mm(16), layer: 1 }).low / metrePerSecond(1)   // 0.165
 */
export function ropeSpeed({
  drumSpeed,
  drumDiameter,
  ropeDiameter,
  layer,
  falls = 1,
}: {
  readonly drumSpeed: Known<RadianPerSecond>
  readonly drumDiameter: Metre
  readonly ropeDiameter: Metre
  readonly layer: number
  readonly falls?: number
}): Range<MetrePerSecond> {
  requireWithin('the speed of the drum', drumSpeed, { low: 0, high: 1e4, unit: 'rad/s' })
  requireAboveZero('the drum', drumDiameter, 'm')
  requireWithin('the rope', ropeDiameter, { low: 1e-3, high: drumDiameter, unit: 'm' })
  requireWithin('the layer', layer, { low: 1, high: 30, unit: '' })
  requireWithin('the falls of rope', falls, { low: 1, high: 20, unit: '' })
  return spread({ drumSpeed, bedding: LAYER }, (exact) => {
    const radius = drumDiameter / 2 + ropeDiameter * (0.5 + (layer - 1) * exact.bedding)
    return metrePerSecond((exact.drumSpeed * radius) / falls)
  })
}
