import { rpm, second } from '../../quantity/constructors.ts'
import type { Metre, Newton, Quantity, RadianPerSecond, Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Range, rangeOf } from '../range.ts'
import { type BearingKind, ratingLifeTime } from './ratingLife.ts'

/** Symbol e_C by what gets into the oil, for mean diameters below 100 mm; larger bearings mind dirt less. */
const CONTAMINATION = {
  'laboratory clean': { low: 1, high: 1 },
  'high cleanliness': { low: 0.6, high: 0.8 },
  'normal cleanliness': { low: 0.5, high: 0.6 },
  'slight dirt': { low: 0.3, high: 0.5 },
  'typical dirt': { low: 0.1, high: 0.3 },
  'severe dirt': { low: 0, high: 0.1 },
} as const satisfies Record<string, Range<number>>

/**
 * How much of the fatigue limit dirt leaves, by the state of the oil; a state that is not held here counts as severe dirt.
 *
 * @returns symbol e_C, low to high, for mean diameters below 100 mm
 * @source ISO 281:2007, Table 13 (from memory)
 * @example contaminationFactor('typical dirt').low   // 0.1
 */
export function contaminationFactor(state: keyof typeof CONTAMINATION | (string & {})): Range<number> {
  return Object.hasOwn(CONTAMINATION, state)
    ? CONTAMINATION[state as keyof typeof CONTAMINATION]
    : CONTAMINATION['severe dirt']
}

/**
 * Viscosity of the oil at its running temperature over the one the bearing needs. Below 1 metal touches metal.
 *
 * @param viscosity symbol ν at running temperature, 1 to 10 000 cSt
 * @param meanDiameter symbol D_pw
 * @param speed symbol n, 1 to 100 000 turns a minute
 * @returns symbol κ
 * @throws VALUE_OUTSIDE
 * @source ISO 281:2007: ν1 = 45000 n^-0.83 D_pw^-0.5 below 1000 turns a minute, 4500 n^-0.5 D_pw^-0.5 above (mm²/s, mm), from memory
 * @example lubricationRatio({ viscosity: centistoke(20), meanDiameter: mm(65), speed: rpm(1500) })   // 1.388
 */
export function lubricationRatio({
  viscosity,
  meanDiameter,
  speed,
}: {
  readonly viscosity: Quantity<'m²/s'>
  readonly meanDiameter: Metre
  readonly speed: RadianPerSecond
}): number {
  requireWithin('the viscosity', viscosity, { low: 1e-6, high: 1e-2, unit: 'm²/s' })
  requireWithin('the mean diameter', meanDiameter, { low: 0.005, high: 3, unit: 'm' })
  const turnsPerMinute = speed / rpm(1)
  requireWithin('the speed in turns a minute', turnsPerMinute, { low: 1, high: 1e5, unit: '' })
  const bySpeed = turnsPerMinute < 1000 ? 45000 * turnsPerMinute ** -0.83 : 4500 * turnsPerMinute ** -0.5
  return (viscosity * 1e6) / (bySpeed * (meanDiameter * 1000) ** -0.5)
}

/** Constants of the diagrams for radial bearings, by kind; ends of the ranges of κ and what belongs to them. */
const CURVES = {
  ball: {
    base: 2.5671,
    outer: 0.83,
    load: 1 / 3,
    power: -9.3,
    parts: [
      [0.4, 2.2649, 0.054381],
      [1, 1.9987, 0.19087],
      [4, 1.9987, 0.071739],
    ],
  },
  roller: {
    base: 1.5859,
    outer: 1,
    load: 0.4,
    power: -9.185,
    parts: [
      [0.4, 1.3993, 0.054381],
      [1, 1.2348, 0.19087],
      [4, 1.2348, 0.071739],
    ],
  },
} as const

/**
 * What oil and dirt make of the rating life, after the newer method: a hundredth of it in bad cases, fifty times in the
 * best. Radial bearings. The older factors a2 and a3 have no formula: give them as a number to modifiedLifeTime.
 *
 * @param kind ball or roller
 * @param lubricationRatio symbol κ, 0.1 or more; above 4 it counts as 4
 * @param contamination symbol e_C, 0 to 1
 * @param fatigueLimit symbol C_u, from the maker
 * @param load symbol P
 * @returns symbol a_ISO, 0.1 to 50
 * @throws VALUE_OUTSIDE
 * @source ISO 281:2007, formulas for the diagrams of radial ball and roller bearings (from memory)
 * @example lifeModificationFactor({ kind: 'ball', lubricationRatio: 1, contamination: 0.5, fatigueLimit: newton(600), load: newton(3000) })   // 2.43
 */
export function lifeModificationFactor({
  kind,
  lubricationRatio: ratio,
  contamination,
  fatigueLimit,
  load,
}: {
  readonly kind: BearingKind
  readonly lubricationRatio: number
  readonly contamination: number
  readonly fatigueLimit: Newton
  readonly load: Newton
}): number {
  requireWithin('the viscosity ratio κ', ratio, { low: 0.1, high: 100, unit: '' })
  requireWithin('the contamination factor', contamination, { low: 0, high: 1, unit: '' })
  requireAboveZero('the fatigue load limit', fatigueLimit, 'N')
  requireAboveZero('the load', load, 'N')
  const { base, outer, load: loadPower, power, parts } = CURVES[kind]
  const kappa = Math.min(4, ratio)
  const [, take, root] = parts.find(([end], at) => kappa < end || at === parts.length - 1) ?? parts[2]
  const quality = Math.min(5, (contamination * fatigueLimit) / load)
  const inside = 1 - (base - take / kappa ** root) ** outer * quality ** loadPower
  return inside <= 0 ? MOST : Math.min(MOST, 0.1 * inside ** power)
}

const MOST = 50

/**
 * Running time that a wanted share of bearings outlasts with the oil they have: rating life times both factors.
 *
 * @param reliabilityFactor symbol a1, from reliabilityFactor
 * @param lifeFactor symbol a_ISO from lifeModificationFactor, or the older a2 a3 (a23) from the maker; a number or a range
 * @param dynamicRating, load, kind, speed as for ratingLifeTime
 * @returns symbol L_nmh, low to high
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 281:2007: L_nm = a1 a_ISO L_10
 * @example modifiedLifeTime({ reliabilityFactor: 0.64, lifeFactor: 2, dynamicRating: newton(20000), load: newton(5000), kind: 'ball', speed: rpm(100) }).low   // 13653 h
 */
export function modifiedLifeTime({
  reliabilityFactor,
  lifeFactor,
  ...rest
}: {
  readonly reliabilityFactor: number
  readonly lifeFactor: number | Range<number>
} & Parameters<typeof ratingLifeTime>[0]): Range<Second> {
  requireWithin('the factor a1', reliabilityFactor, { low: 0.01, high: 1, unit: '' })
  requireWithin('the life factor', lifeFactor, { low: 0.01, high: MOST, unit: '' })
  const { low, high } = rangeOf(lifeFactor)
  const time = ratingLifeTime(rest)
  return { low: second(reliabilityFactor * low * time), high: second(reliabilityFactor * high * time) }
}
