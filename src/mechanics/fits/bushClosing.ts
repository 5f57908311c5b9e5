import { metre, pascal } from '../../quantity/constructors.ts'
import type { Metre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Answer, isAtMost, type Known, type Range, rangeOf, spread } from '../range.ts'
import { interferencePressure } from './interferencePressure.ts'

export interface BushClosing {
  readonly pressure: Range<Pascal>
  /** How much smaller the bore of the bush becomes, on the diameter. */
  readonly closing: Range<Metre>
  /** Bore of the bush once it is in. */
  readonly boreInPlace: Range<Metre>
  /** Whether the bush stays elastic; one that yields closes less than this and comes loose when it gets hot. */
  readonly staysElastic: Answer
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * How much a bush closes in when it is pressed home: what the shaft will find. Elastic, bush and housing as long
 * cylinders; the boss at its thinnest counts. A split bush closes by about the whole interference instead.
 *
 * @param seat symbol D, diameter of the seat
 * @param bore symbol d, bore of the bush before it goes in
 * @param housingOutside diameter of the boss round it, where it is thinnest
 * @param interference symbol δ, after roughness
 * @param bush, housing materials
 * @returns pressure, closing, bore in place
 * @throws VALUE_OUTSIDE, HUB_INSIDE_SHAFT
 * @source Lamé: u at the bore under outside pressure, 2 p D² d / (E (D² - d²)); pressure as interferencePressure
 * @example bushClosing({ seat: mm(50), bore: mm(40), housingOutside: mm(90), interference: micrometre(40), bush: 'bronze', housing: 'grey iron' }).closing.high   // 31.46 µm
 */
export function bushClosing({
  seat,
  bore,
  housingOutside,
  interference,
  bush,
  housing,
}: {
  readonly seat: Metre
  readonly bore: Known<Metre>
  readonly housingOutside: Known<Metre>
  readonly interference: Known<Metre>
  readonly bush: Material | MaterialName | (string & {})
  readonly housing: Material | MaterialName | (string & {})
}): BushClosing {
  requireAboveZero('the bore of the bush', bore, 'm')
  requireWithin('the interference', interference, { low: -0.001, high: seat / 50, unit: 'm' })
  const [b, h] = [materialOf(bush), materialOf(housing)]
  const inputs = {
    bore,
    housingOutside,
    interference,
    bushModulus: b.youngsModulus,
    bushPoisson: b.poissonRatio,
    housingModulus: h.youngsModulus,
    housingPoisson: h.poissonRatio,
  }
  const pressureOf = (exact: { readonly [Name in keyof typeof inputs]: number }) =>
    interferencePressure({
      jointDiameter: seat,
      hubOutside: metre(exact.housingOutside),
      shaftBore: metre(exact.bore),
      interference: metre(Math.max(0, exact.interference)),
      hub: { youngsModulus: pascal(exact.housingModulus), poissonRatio: exact.housingPoisson },
      shaft: { youngsModulus: pascal(exact.bushModulus), poissonRatio: exact.bushPoisson },
    })
  const pressure = spread(inputs, pressureOf)
  const closing = spread(inputs, (exact) =>
    metre((2 * pressureOf(exact) * seat ** 2 * exact.bore) / (exact.bushModulus * (seat ** 2 - exact.bore ** 2))),
  )
  const hoop = spread({ pressure, bore }, (exact) => (2 * exact.pressure * seat ** 2) / (seat ** 2 - exact.bore ** 2))
  const before = rangeOf(bore)
  return {
    pressure,
    closing,
    boreInPlace: { low: metre(before.low - closing.high), high: metre(before.high - closing.low) },
    staysElastic: isAtMost({ low: hoop.low / b.yieldStrength.high, high: hoop.high / b.yieldStrength.low }, 1),
    cautions: [
      'Press it with a shouldered mandrel, square, in one go; measure the bore at both ends and the middle when it is in.',
      'A split bush closes by about the whole interference; a flange or a thin end closes less.',
    ],
    source: `thick cylinders after Lamé; bush: ${b.source}; housing: ${h.source}`,
  }
}

/**
 * The bore that a bush is bought or bored to so that after it has closed in there is enough left to ream, and not more
 * than the reamer takes.
 *
 * @param finished the bore wanted in the end, low to high
 * @param closing from bushClosing
 * @param allowance what the reamer should find, on the diameter; left out 0.1 to 0.3 mm (common practice, no source)
 * @returns bore before pressing; left out where the closing is known too coarsely for that allowance
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source arithmetic of sizes; allowance common practice, no source
 * @example boreBeforeReaming({ finished: { low: mm(40.025), high: mm(40.05) }, closing: { low: mm(0.02), high: mm(0.04) } })?.low   // 39.79 mm
 */
export function boreBeforeReaming({
  finished,
  closing,
  allowance = { low: metre(1e-4), high: metre(3e-4) },
}: {
  readonly finished: Range<Metre>
  readonly closing: Range<Metre>
  readonly allowance?: Range<Metre>
}): Range<Metre> | undefined {
  requireAboveZero('the finished bore', finished, 'm')
  requireWithin('the reaming allowance', allowance, { low: 0, high: 0.005, unit: 'm' })
  // The least allowance is taken from the smallest finished bore and the least closing, the greatest from the other ends.
  const high = finished.low - allowance.low + closing.low
  const low = finished.high - allowance.high + closing.high
  return low <= high ? { low: metre(low), high: metre(high) } : undefined
}
