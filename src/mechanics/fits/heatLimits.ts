// How hot or cold a part may be made for fitting, as data.
import { celsius, minute } from '../../quantity/constructors.ts'
import type { Kelvin, Second } from '../../quantity/quantity.ts'

/** How long a part may stay at a temperature, or between it and room temperature. */
export interface Holding {
  readonly at: Kelvin
  readonly longest: Second
}

export interface HeatLimit {
  readonly kind: string
  readonly hottest: Kelvin
  readonly coldest: Kelvin
  /** Empty where nothing is said. */
  readonly holding: readonly Holding[]
  readonly source: string
}

/** A sheet that gives whole degrees of both scales is true to half a degree: 250 °F is 121.1 °C. */
export const WHOLE_DEGREE = 0.5

const SHEET =
  "a bearing maker's temperature sheet for heating and cooling bearings (standard classes); the maker of this one rules"
const PLAIN = 'common practice, no source: below tempering colours, no scale, no loss of hardness'

/** Celsius and hours. */
const hold = (at: number, hours: number): Holding => ({ at: celsius(at), longest: minute(hours * 60) })
const limit = (
  kind: string,
  {
    hottest,
    coldest,
    holding = [],
    source,
  }: { hottest: number; coldest: number; holding?: readonly Holding[]; source: string },
): HeatLimit => ({ kind, hottest: celsius(hottest), coldest: celsius(coldest), holding, source })

const TABLE = {
  'bearing, metal cage': limit('bearing, metal cage', {
    ...{ hottest: 121, coldest: -54, source: SHEET },
    holding: [hold(93, 24), hold(121, 8), hold(-54, 1)],
  }),
  'bearing, plastic cage or sealed': limit('bearing, plastic cage or sealed', {
    ...{ hottest: 93, coldest: -54, source: SHEET },
    holding: [hold(93, 24), hold(-54, 1)],
  }),
  'bearing, precision': limit('bearing, precision', {
    ...{ hottest: 66, coldest: -29, source: SHEET },
    holding: [hold(66, 24)],
  }),
  'plain part': limit('plain part', {
    ...{ hottest: 200, coldest: -78 },
    source: `${PLAIN}; cold end: dry ice, as far as the expansions held here are true`,
  }),
  'hardened part': limit('hardened part', {
    ...{ hottest: 150, coldest: -54 },
    source: `${PLAIN}; hardened steel starts to soften near its hottest`,
  }),
  unknown: limit('unknown', {
    ...{ hottest: 66, coldest: -29 },
    source: `not known: the narrowest limits held here; ${SHEET}`,
  }),
} as const satisfies Record<string, HeatLimit>

export type HeatedPart = keyof typeof TABLE

/**
 * Temperature limits of a part that is warmed or chilled to fit it; a kind that is not held here gets the narrowest.
 *
 * @source the source line of each; bearings: 121 °C is 250 °F, 93 °C is 200 °F, 66 °C is 150 °F, -54 °C is -65 °F
 * @example heatLimitOf('bearing, metal cage').holding[1].longest   // 28800 s
 */
export function heatLimitOf(kind: HeatedPart | (string & {})): HeatLimit {
  return Object.hasOwn(TABLE, kind) ? TABLE[kind as HeatedPart] : TABLE.unknown
}

/**
 * How long a part may stay at a temperature: the time of the mildest step that is not milder than it; left out where
 * nothing is said, or where it is beyond every step.
 *
 * @source the source line of the limit
 * @example longestAt(heatLimitOf('bearing, metal cage'), celsius(100))   // 28800 s
 */
export function longestAt({ holding }: HeatLimit, temperature: Kelvin): Second | undefined {
  const room = celsius(20)
  const isCold = temperature < room
  const steps = holding.filter(({ at }) =>
    isCold ? at <= temperature + WHOLE_DEGREE : at >= temperature - WHOLE_DEGREE,
  )
  if (steps.length === 0) return undefined
  return steps.reduce((mildest, step) => (Math.abs(step.at - room) < Math.abs(mildest.at - room) ? step : mildest))
    .longest
}

/** The hottest or coldest that a part takes, and on whose word. */
export interface HeatEnd {
  readonly temperature: Kelvin
  readonly source: string
}

/**
 * The hottest that a part takes: what is held here, or the maker's own ceiling where that is lower.
 *
 * @source the source line of the limit; the maker's own comes first
 * @example hottestOf({ kind: 'plain part', notAbove: celsius(60) }).source   // told for this part
 */
export function hottestOf({
  kind,
  notAbove,
}: {
  readonly kind: HeatedPart | (string & {})
  readonly notAbove?: Kelvin
}): HeatEnd {
  const { hottest, source } = heatLimitOf(kind)
  return notAbove !== undefined && notAbove < hottest
    ? { temperature: notAbove, source: 'told for this part' }
    : { temperature: hottest, source }
}

/**
 * The coldest that a part takes: what is held here, or the maker's own limit where that is higher.
 *
 * @source the source line of the limit; the maker's own comes first
 * @example coldestOf({ kind: 'plain part', notBelow: celsius(-40) }).source   // told for this part
 */
export function coldestOf({
  kind,
  notBelow,
}: {
  readonly kind: HeatedPart | (string & {})
  readonly notBelow?: Kelvin
}): HeatEnd {
  const { coldest, source } = heatLimitOf(kind)
  return notBelow !== undefined && notBelow > coldest
    ? { temperature: notBelow, source: 'told for this part' }
    : { temperature: coldest, source }
}
