import { newton } from '../../quantity/constructors.ts'
import type { Metre, Newton, NewtonMetre, SquareMetre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import type { Range } from '../range.ts'
import { boltLoad, type FastenerStrength } from './fastenerStrength.ts'
import { type ThreadCondition, torqueFactor } from './torqueFactor.ts'
import { preloadFromTorque, torqueForPreload } from './torqueForPreload.ts'

export interface Tightening {
  readonly torque: NewtonMetre
  /** Tension that this torque may give, by all that is not known about the friction. */
  readonly preload: Range<Newton>
  /** The same as a share of the proof load. */
  readonly shareOfProof: Range<number>
  /** True when the torque had to be held below the usual one so that a slippery screw is not overstretched. */
  readonly isHeldBack: boolean
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * Torque for a screw whose book is lost. It aims at 0.75 of proof with the usual friction of the condition, but never so
 * high that the most slippery screw of that condition passes its proof load; for an unknown condition this leaves the
 * least tension low, and it says so. Short form T = K F D.
 *
 * @param nominalDiameter symbol D
 * @param stressArea symbol A_s
 * @param strength from fastenerStrength; an unknown grade is the weakest iron
 * @param condition of threads and head: dry, oiled, anti-seize, dirty; else unknown
 * @param shareOfProof aim, 0.1 to 0.9; left out 0.75
 * @returns torque, tension low and high, what to look out for
 * @throws VALUE_OUTSIDE
 * @source T = K F D and 0.75 of proof for joints taken apart again: Shigley, 9th ed., Eqs. 8-27 and 8-31
 * @example tightening({ nominalDiameter: inch(0.5), stressArea: squareMetre(9.155e-5), strength: fastenerStrength({ grade: 'SAE 5', nominalDiameter: inch(0.5) }), condition: 'oiled' }).torque   // 76.7 N·m
 */
export function tightening({
  nominalDiameter,
  stressArea,
  strength,
  condition,
  shareOfProof = 0.75,
}: {
  readonly nominalDiameter: Metre
  readonly stressArea: SquareMetre
  readonly strength: FastenerStrength
  readonly condition: ThreadCondition | (string & {})
  readonly shareOfProof?: number
}): Tightening {
  requireWithin('the share of proof', shareOfProof, { low: 0.1, high: 0.9, unit: '' })
  const factor = torqueFactor(condition)
  const proofLoad = boltLoad({ stressArea, strength: strength.proof })
  const usual = torqueForPreload({
    preload: newton(shareOfProof * proofLoad),
    nominalDiameter,
    torqueFactor: factor.usual,
  })
  const most = torqueForPreload({ preload: proofLoad, nominalDiameter, torqueFactor: factor.range.low })
  const isHeldBack = most < usual
  const torque = isHeldBack ? most : usual
  const preload = preloadFromTorque({ torque, nominalDiameter, torqueFactor: factor.range })
  const share = { low: preload.low / proofLoad, high: preload.high / proofLoad }
  return {
    torque,
    preload,
    shareOfProof: share,
    isHeldBack,
    cautions: cautions({ strength, condition: factor.condition, isHeldBack, least: share.low }),
    source: `${strength.source}; K: ${factor.source}`,
  }
}

function cautions({
  strength,
  condition,
  isHeldBack,
  least,
}: {
  readonly strength: FastenerStrength
  readonly condition: string
  readonly isHeldBack: boolean
  readonly least: number
}): string[] {
  const said: string[] = [...strength.cautions]
  if (condition === 'unknown' || condition === 'dirty') {
    said.push(
      `Threads ${condition}: at one torque the tension may be too low to hold or too high to bear. Clean and oil them, then the torque for oiled threads.`,
    )
  }
  if (isHeldBack) said.push('Held back so that the most slippery screw stays below its proof load.')
  if (least < 0.4) said.push(`The least tension may be only ${Math.round(least * 100)} % of proof: it can work loose.`)
  return [...said, 'The torque in the book of the machine comes first.']
}
