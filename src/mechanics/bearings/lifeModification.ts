import { metre, newton, rpm, second } from '../../quantity/constructors.ts'
import type { Metre, Newton, Quantity, RadianPerSecond, Second } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Range, rangeOf } from '../range.ts'
import { type BearingKind, ratingLifeTime } from './ratingLife.ts'

/** Symbol e_C by what gets into the oil, for mean diameters below 100 mm and from there on: larger bearings mind dirt less. */
const CONTAMINATION = {
  'laboratory clean': [
    { low: 1, high: 1 },
    { low: 1, high: 1 },
  ],
  'high cleanliness': [
    { low: 0.6, high: 0.8 },
    { low: 0.8, high: 0.9 },
  ],
  'normal cleanliness': [
    { low: 0.5, high: 0.6 },
    { low: 0.6, high: 0.8 },
  ],
  'slight dirt': [
    { low: 0.3, high: 0.5 },
    { low: 0.4, high: 0.6 },
  ],
  'typical dirt': [
    { low: 0.1, high: 0.3 },
    { low: 0.2, high: 0.4 },
  ],
  'severe dirt': [
    { low: 0, high: 0.1 },
    { low: 0, high: 0.1 },
  ],
  'very severe dirt': [
    { low: 0, high: 0 },
    { low: 0, high: 0 },
  ],
} as const satisfies Record<string, readonly [small: Range<number>, large: Range<number>]>

const LARGE = 0.1

/**
 * How much of the fatigue limit dirt leaves, by the state of the oil; a state that is not held here counts as very severe
 * dirt.
 *
 * @param state laboratory clean (particles as fine as the film of oil), high cleanliness (very fine filter; sealed and
 *   greased for life), normal cleanliness (fine filter; shielded), slight dirt, typical dirt (no seals, coarse filter, wear
 *   from beside), severe dirt, very severe dirt
 * @param meanDiameter symbol D_pw; left out below 100 mm, the worse
 * @returns symbol e_C, low to high
 * @throws VALUE_OUTSIDE
 * @source ISO 281:2007, Table 13 (read as a program's manual prints it)
 * @example contaminationFactor({ state: 'typical dirt' }).low   // 0.1
 */
export function contaminationFactor({
  state,
  meanDiameter = metre(0),
}: {
  readonly state: keyof typeof CONTAMINATION | (string & {})
  readonly meanDiameter?: Metre
}): Range<number> {
  requireWithin('the mean diameter', meanDiameter, { low: 0, high: 3, unit: 'm' })
  const told = Object.hasOwn(CONTAMINATION, state) ? (state as keyof typeof CONTAMINATION) : 'very severe dirt'
  return CONTAMINATION[told][meanDiameter < LARGE - 1e-9 ? 0 : 1]
}

/** Symbols of C_u = C_0 / share, and the power of 100 mm / D_pw for larger bearings. */
const LIMITS = { ball: { share: 22, power: 0.5 }, roller: { share: 8.2, power: 0.3 } } as const

/**
 * Fatigue load limit of a bearing whose maker does not print it, as with most old ones: roughly, from its static rating.
 *
 * @param kind ball or roller
 * @param staticRating symbol C_0
 * @param meanDiameter symbol D_pw, mean of bore and outside diameter
 * @returns symbol C_u = C_0 / 22 of balls, C_0 / 8.2 of rollers; above 100 mm less
 * @throws VALUE_OUTSIDE
 * @source ISO 281:2007, annex B, simple estimate (from memory; that for balls read in a public program)
 * @example fatigueLimitFromStatic({ kind: 'ball', staticRating: newton(22000), meanDiameter: mm(65) })   // 1000 N
 */
export function fatigueLimitFromStatic({
  kind,
  staticRating,
  meanDiameter,
}: {
  readonly kind: BearingKind
  readonly staticRating: Newton
  readonly meanDiameter: Metre
}): Newton {
  requireAboveZero('the static rating', staticRating, 'N')
  requireWithin('the mean diameter', meanDiameter, { low: 0.005, high: 3, unit: 'm' })
  const { share, power } = LIMITS[kind]
  return newton((staticRating / share) * Math.min(1, LARGE / meanDiameter) ** power)
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
 * What oil and dirt make of the rating life, after the newer method: a tenth of it in bad cases, fifty times in the best.
 * Radial bearings; oil without additives that attack. The older factors a2 and a3 have no formula: give them as a number to modifiedLifeTime.
 *
 * @param kind ball or roller
 * @param lubricationRatio symbol κ, 0.1 or more; above 4 it counts as 4
 * @param contamination symbol e_C, 0 to 1
 * @param fatigueLimit symbol C_u, from the maker
 * @param load symbol P
 * @returns symbol a_ISO, 0.1 to 50
 * @throws VALUE_OUTSIDE
 * @source ISO 281:2007, equations 31 to 36, of the diagrams for radial ball and roller bearings (from memory; those for balls
 *   read in two public programs, held against a bearing maker's diagram)
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
  // The rounded constants miss nothing at all by a hair at κ = 0.1.
  const inside = 1 - Math.max(0, base - take / kappa ** root) ** outer * quality ** loadPower
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
