import { newton } from '../../quantity/constructors.ts'
import type { Newton } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, isAtMost, type Known, type Range, rangeOf, spread } from '../range.ts'

export interface JointLoads {
  /** Load of the bolt while the working load pulls; of a joint that gapes the whole working load. */
  readonly boltLoad: Range<Newton>
  /** What still clamps; none where the joint gapes. */
  readonly clampLeft: Range<Newton>
  /** Symbol n_p: proof over the load of the bolt. */
  readonly yieldFactor: Range<number>
  /** Symbol n_L: how many times the working load may grow before the bolt reaches proof, gaping first or not; 0 where its tension alone is past it. */
  readonly loadFactor: Range<number>
  /** Symbol n_0: how many times it may grow before the joint gapes. */
  readonly separationFactor: Range<number>
  readonly staysClosed: Answer
  /** Does the load of the bolt stay at or below proof? */
  readonly staysBelowProof: Answer
  readonly cautions: readonly string[]
}

/**
 * What a working load along the bolts does to a preloaded joint: how much the bolt feels, what still clamps, and how far
 * both are from their ends. Static; preload and share as ranges, since both are never known well. Once a joint gapes its
 * bolts take the whole load, preload or none.
 *
 * @param preload symbol F_i of one bolt
 * @param load symbol P, working load on one bolt, along it
 * @param share symbol C, from boltShare
 * @param proofLoad symbol S_p A_t of one bolt
 * @returns loads and factors
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source Shigley, 9th ed., eqs. 8-24 and 8-28 to 8-30
 * @example jointLoads({ preload: lbf(14400), load: lbf(6000), share: 0.368, proofLoad: lbf(19210) }).separationFactor.low   // 3.797
 */
export function jointLoads({
  preload,
  load,
  share,
  proofLoad,
}: {
  readonly preload: Known<Newton>
  readonly load: Known<Newton>
  readonly share: Known<number>
  readonly proofLoad: Newton
}): JointLoads {
  requireAboveZero('the preload', preload, 'N')
  requireAboveZero('the working load', load, 'N')
  requireAboveZero('the proof load', proofLoad, 'N')
  requireWithin('the share of the bolt', share, { low: 0.001, high: 0.999, unit: '' })
  const inputs = { preload, load, share }
  const clamp = spread(inputs, (exact) => exact.preload - (1 - exact.share) * exact.load)
  const boltLoad = spread(inputs, (exact) => newton(Math.max(exact.preload + exact.share * exact.load, exact.load)))
  const staysBelowProof = isAtMost(boltLoad, proofLoad)
  return {
    boltLoad,
    clampLeft: { low: newton(Math.max(0, clamp.low)), high: newton(Math.max(0, clamp.high)) },
    yieldFactor: spread({ boltLoad }, (exact) => proofLoad / exact.boltLoad),
    loadFactor: spread(inputs, (exact) =>
      Math.max(0, Math.min((proofLoad - exact.preload) / (exact.share * exact.load), proofLoad / exact.load)),
    ),
    separationFactor: spread(inputs, (exact) => exact.preload / (exact.load * (1 - exact.share))),
    staysClosed: isAtMost({ low: -clamp.high, high: -clamp.low }, 0),
    staysBelowProof,
    cautions:
      staysBelowProof === 'yes'
        ? []
        : [
            `The bolt ${staysBelowProof === 'no' ? 'is' : 'may be'} drawn past proof: it stretches for good, loses its clamp and may break. Less tension, a stronger bolt, or more of them.`,
          ],
  }
}

/**
 * How many bolts a joint wants for a working load along them with so much in hand against proof and against gaping.
 *
 * @param total working load on the whole joint
 * @param preload symbol F_i of one bolt
 * @param share symbol C
 * @param proofLoad symbol S_p A_t of one bolt
 * @param loadFactor symbol n_L wanted
 * @returns symbol N, not rounded: take the next whole number, and an even one
 * @throws VALUE_OUTSIDE
 * @source Shigley, 9th ed., eqs. 8-29 and 8-30, and where it gapes first the whole load on the bolts
 * @example boltsNeeded({ total: lbf(36000), preload: lbf(14407.5), share: 0.368, proofLoad: lbf(19210), loadFactor: 2 })   // 5.52
 */
export function boltsNeeded({
  total,
  preload,
  share,
  proofLoad,
  loadFactor,
}: {
  readonly total: Newton
  readonly preload: Newton
  readonly share: number
  readonly proofLoad: Newton
  readonly loadFactor: number
}): number {
  requireAboveZero('the working load', total, 'N')
  requireAboveZero('the preload', preload, 'N')
  requireWithin('the preload', preload, { low: 0, high: proofLoad * (1 - 1e-9), unit: 'N' })
  requireWithin('the share of the bolt', share, { low: 0.001, high: 0.999, unit: '' })
  requireWithin('the load factor', loadFactor, { low: 1, high: 20, unit: '' })
  const grown = loadFactor * total
  return Math.max((share * grown) / (proofLoad - preload), grown / proofLoad, ((1 - share) * grown) / preload)
}

/**
 * Load across the bolts at which the joint slips: friction between the faces carries it, not the bolts' shanks.
 *
 * @param clamp what is left of the clamp load of one bolt, from jointLoads
 * @param bolts symbol N
 * @param faces how many pairs of faces slip at once; left out 1
 * @param friction symbol μ between the faces; left out 0.05, where there may be oil, to 0.2
 * @returns least and most; count on the least
 * @throws VALUE_OUTSIDE
 * @source Coulomb friction; 0.1 to 0.2 for plain dry faces, half where there is oil: from memory
 * @example slipLoad({ clamp: newton(10000), bolts: 6, friction: 0.12 }).low   // 7200 N
 */
export function slipLoad({
  clamp,
  bolts,
  faces = 1,
  friction = { low: 0.05, high: 0.2 },
}: {
  readonly clamp: Known<Newton>
  readonly bolts: number
  readonly faces?: number
  readonly friction?: Known<number>
}): Range<Newton> {
  requireWithin('the clamp load', clamp, { low: 0, high: 1e8, unit: 'N' })
  requireWithin('the number of bolts', bolts, { low: 1, high: 500, unit: '' })
  requireWithin('the number of faces', faces, { low: 1, high: 10, unit: '' })
  requireWithin('the friction', rangeOf(friction), { low: 0.01, high: 1, unit: '' })
  return spread({ clamp, friction }, (exact) => newton(exact.clamp * exact.friction * bolts * faces))
}
