// How hot or cold a part may be made for fitting, as data.
import { celsius } from '../../quantity/constructors.ts'
import type { Kelvin } from '../../quantity/quantity.ts'

export interface HeatLimit {
  readonly kind: string
  readonly hottest: Kelvin
  readonly coldest: Kelvin
  /** How long at the hottest, in words; empty where nothing is said. */
  readonly holding: string
  readonly source: string
}

const SHEET =
  "a bearing maker's temperature sheet for heating and cooling bearings (standard classes); the maker of this one rules"
const PLAIN = 'common practice, no source: below tempering colours, no scale, no loss of hardness'

const limit = (kind: string, hottest: number, coldest: number, holding: string, source: string): HeatLimit => ({
  kind,
  hottest: celsius(hottest),
  coldest: celsius(coldest),
  holding,
  source,
})

const TABLE = {
  'bearing, metal cage': limit(
    'bearing, metal cage',
    121,
    -54,
    '8 hours at most at 121 °C, 24 hours at 93 °C; 1 hour cold',
    SHEET,
  ),
  'bearing, plastic cage or sealed': limit(
    'bearing, plastic cage or sealed',
    93,
    -54,
    '24 hours at most; 1 hour cold',
    SHEET,
  ),
  'bearing, precision': limit('bearing, precision', 66, -29, '24 hours at most', SHEET),
  'plain part': limit(
    'plain part',
    200,
    -78,
    '',
    `${PLAIN}; cold end: dry ice, as far as the expansions held here are true`,
  ),
  'hardened part': limit('hardened part', 150, -54, '', `${PLAIN}; hardened steel starts to soften near 150 °C`),
  unknown: limit('unknown', 66, -29, '', `not known: the narrowest limits held here; ${SHEET}`),
} as const satisfies Record<string, HeatLimit>

export type HeatedPart = keyof typeof TABLE

/**
 * Temperature limits of a part that is warmed or chilled to fit it; a kind that is not held here gets the narrowest.
 *
 * @source the source line of each; bearings: 121 °C is 250 °F, 93 °C is 200 °F, 66 °C is 150 °F, -54 °C is -65 °F
 * @example heatLimitOf('bearing, metal cage').holding   // '8 hours at most at 121 °C, …'
 */
export function heatLimitOf(kind: HeatedPart | (string & {})): HeatLimit {
  return Object.hasOwn(TABLE, kind) ? TABLE[kind as HeatedPart] : TABLE.unknown
}
