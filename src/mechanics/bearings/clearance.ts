import { kelvinDifference, metre } from '../../quantity/constructors.ts'
import type { KelvinDifference, Metre, Radian } from '../../quantity/quantity.ts'
import { interferencePressure } from '../fits/interferencePressure.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Material, type MaterialName, materialOf } from '../materials.ts'
import { type Answer, isAtMost, type Known, type Range, spread } from '../range.ts'

const ANGLES = { low: Math.PI / 36, high: Math.PI / 4, unit: '' } as const
const PLAYS = { low: -0.01, high: 0.01, unit: 'm' } as const
/** Of a diameter: more interference no ring stands. */
const TIGHTEST = 0.005

/**
 * Play along the shaft that belongs to a play across it, for one bearing with a contact angle. For a pair with one
 * adjuster both add up.
 *
 * @param radialPlay from the middle to one side: half of the play on the diameter
 * @param contactAngle symbol α, 5 to 45°
 * @returns axial play of the one bearing: radial cot α
 * @throws VALUE_OUTSIDE
 * @source geometry of the cone
 * @example axialPlay({ radialPlay: mm(0.01), contactAngle: degree(15) }).low   // 37.3 µm
 */
export function axialPlay({
  radialPlay,
  contactAngle,
}: {
  readonly radialPlay: Known<Metre>
  readonly contactAngle: Radian
}): Range<Metre> {
  requireWithin('the contact angle in radians', contactAngle, ANGLES)
  requireWithin('the play across the shaft', radialPlay, PLAYS)
  return spread({ radialPlay }, (exact) => metre(exact.radialPlay / Math.tan(contactAngle)))
}

/**
 * Play across the shaft that belongs to a play along it; below zero both are preload.
 *
 * @param axialPlay of one bearing
 * @param contactAngle symbol α, 5 to 45°
 * @returns radial play from the middle to one side: axial tan α
 * @throws VALUE_OUTSIDE
 * @source geometry of the cone
 * @example radialPlay({ axialPlay: mm(0.1), contactAngle: degree(15) }).low   // 26.8 µm
 */
export function radialPlay({
  axialPlay: along,
  contactAngle,
}: {
  readonly axialPlay: Known<Metre>
  readonly contactAngle: Radian
}): Range<Metre> {
  requireWithin('the contact angle in radians', contactAngle, ANGLES)
  requireWithin('the play along the shaft', along, PLAYS)
  return spread({ along }, (exact) => metre(exact.along * Math.tan(contactAngle)))
}

export interface ClearanceLeft {
  /** How much the inner raceway grew on its seat. */
  readonly innerGrowth: Range<Metre>
  /** How much the outer raceway closed in its bore. */
  readonly outerClosing: Range<Metre>
  /** What warmth takes; below zero it gives. */
  readonly heatLoss: Range<Metre>
  /** Clearance across the shaft that is left running, on the diameter; below zero it is preload. */
  readonly left: Range<Metre>
  readonly staysFree: Answer
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * Internal clearance that is left of a bearing's own once it is on its seats and warm: the rings stretch and close, the
 * inner one runs warmer. Steel rings as plain cylinders to their raceways; elastic.
 *
 * @param clearance internal clearance as bought, on the diameter
 * @param bore symbol d
 * @param innerRaceway diameter of the inner raceway, where the ring is thinnest
 * @param outside symbol D
 * @param outerRaceway diameter of the outer raceway
 * @param shaftInterference, housingInterference on the diameter, effective; below zero counts as none
 * @param shaftBore symbol of a hollow shaft; left out solid
 * @param housingOutside diameter of the boss; left out four times the outside
 * @param shaft, housing materials; left out steel and grey iron
 * @param innerWarmer how much warmer the inner ring runs than the outer; left out 0
 * @returns growth, closing, heat, and what is left
 * @throws VALUE_OUTSIDE, HUB_INSIDE_SHAFT
 * @source Lamé: raceway growth 2 p d² F / (E (F² - d²)), closing 2 p D² E_r / (E (D² - E_r²)); heat α ΔT (F + E_r) / 2
 * @example clearanceLeft({ clearance: micrometre(30), bore: mm(50), innerRaceway: mm(60), outside: mm(90), outerRaceway: mm(80), shaftInterference: micrometre(20), housingInterference: micrometre(0), shaft: { ...materialOf('bearing steel'), youngsModulus: rangeOf(megapascal(206000)), poissonRatio: rangeOf(0.3) } }).innerGrowth.low   // 16.6 µm
 */
export function clearanceLeft({
  clearance,
  bore,
  innerRaceway,
  outside,
  outerRaceway,
  shaftInterference,
  housingInterference,
  shaftBore = NOTHING,
  housingOutside,
  shaft = 'steel',
  housing = 'grey iron',
  innerWarmer,
}: {
  readonly clearance: Known<Metre>
  readonly bore: Metre
  readonly innerRaceway: Metre
  readonly outside: Metre
  readonly outerRaceway: Metre
  readonly shaftInterference: Known<Metre>
  readonly housingInterference: Known<Metre>
  readonly shaftBore?: Metre
  readonly housingOutside?: Metre
  readonly shaft?: Material | MaterialName | (string & {})
  readonly housing?: Material | MaterialName | (string & {})
  readonly innerWarmer?: Known<KelvinDifference>
}): ClearanceLeft {
  requireAboveZero('the bore', bore, 'm')
  requireWithin('the inner raceway', innerRaceway, { low: bore * 1.001, high: outerRaceway, unit: 'm' })
  requireWithin('the outer raceway', outerRaceway, { low: innerRaceway, high: outside * 0.9999, unit: 'm' })
  requireWithin('the clearance as bought', clearance, { low: -0.001, high: 0.005, unit: 'm' })
  const tight = (of: Metre) => ({ low: -0.005, high: TIGHTEST * of, unit: 'm' }) as const
  requireWithin('the interference on the shaft', shaftInterference, tight(bore))
  requireWithin('the interference in the housing', housingInterference, tight(outside))
  const warmer = innerWarmer ?? NOT_WARMER
  requireWithin('how much warmer the inner ring is', warmer, { low: -150, high: 150, unit: '' })
  const [ring, s, h] = [materialOf('bearing steel'), materialOf(shaft), materialOf(housing)]
  const boss = housingOutside ?? metre(4 * outside)
  const innerGrowth = spread(
    {
      interference: shaftInterference,
      ringModulus: ring.youngsModulus,
      otherModulus: s.youngsModulus,
      ringPoisson: ring.poissonRatio,
      otherPoisson: s.poissonRatio,
    },
    (exact) => {
      const pressure = interferencePressure({
        jointDiameter: bore,
        hubOutside: innerRaceway,
        shaftBore,
        interference: metre(Math.max(0, exact.interference)),
        hub: { youngsModulus: exact.ringModulus, poissonRatio: exact.ringPoisson },
        shaft: { youngsModulus: exact.otherModulus, poissonRatio: exact.otherPoisson },
      })
      return metre((2 * pressure * bore ** 2 * innerRaceway) / (exact.ringModulus * (innerRaceway ** 2 - bore ** 2)))
    },
  )
  const outerClosing = spread(
    {
      interference: housingInterference,
      ringModulus: ring.youngsModulus,
      otherModulus: h.youngsModulus,
      ringPoisson: ring.poissonRatio,
      otherPoisson: h.poissonRatio,
    },
    (exact) => {
      const pressure = interferencePressure({
        jointDiameter: outside,
        hubOutside: boss,
        shaftBore: outerRaceway,
        interference: metre(Math.max(0, exact.interference)),
        hub: { youngsModulus: exact.otherModulus, poissonRatio: exact.otherPoisson },
        shaft: { youngsModulus: exact.ringModulus, poissonRatio: exact.ringPoisson },
      })
      return metre(
        (2 * pressure * outside ** 2 * outerRaceway) / (exact.ringModulus * (outside ** 2 - outerRaceway ** 2)),
      )
    },
  )
  const heatLoss = spread({ warmer, expansion: ring.expansion }, (exact) =>
    metre((exact.expansion * exact.warmer * (innerRaceway + outerRaceway)) / 2),
  )
  const left = spread({ clearance, innerGrowth, outerClosing, heatLoss }, (exact) =>
    metre(exact.clearance - exact.innerGrowth - exact.outerClosing - exact.heatLoss),
  )
  return {
    innerGrowth,
    outerClosing,
    heatLoss,
    left,
    staysFree: isAtMost({ low: -left.high, high: -left.low }, 0),
    cautions: [
      ...(left.low < 0
        ? [
            'At the tightest it runs with preload: a bearing not meant for it warms, closes further and seizes. More clearance as bought, or a looser seat.',
          ]
        : []),
      // Common practice, no source.
      ...(innerWarmer === undefined
        ? [
            'Reckoned cold: running, the inner ring is usually 5 to 10 °C (9 to 18 °F) warmer than the outer, after a cold start more. Tell how much.',
          ]
        : []),
    ],
    source: `thick cylinders after Lamé; ring: ${ring.source}; shaft: ${s.source}; housing: ${h.source}`,
  }
}

const NOTHING = metre(0)
const NOT_WARMER = kelvinDifference(0)
