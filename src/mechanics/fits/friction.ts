// Friction of press fits, as ranges: how hard it goes in, and how well it holds.
import type { Range } from '../range.ts'

export interface Friction {
  /** Symbol μ. */
  readonly coefficient: Range<number>
  readonly source: string
}

const TRIBOLOGY_PAGE = 'tribology course page on press fits (read): steel on steel'

const TABLE = {
  oiled: { coefficient: { low: 0.05, high: 0.1 }, source: `${TRIBOLOGY_PAGE}, lubricated 0.05 to 0.10` },
  dry: { coefficient: { low: 0.1, high: 0.15 }, source: `${TRIBOLOGY_PAGE}, dry 0.10 to 0.15` },
  unknown: { coefficient: { low: 0.05, high: 0.25 }, source: 'not known: worst both ways, no source' },
} as const satisfies Record<string, Friction>

export type FrictionState = keyof typeof TABLE

/**
 * Friction of a joint by the state of its surfaces; a state that is not held here is taken at its worst both ways.
 *
 * @source the source line of each
 * @example frictionOf('oiled').coefficient.low   // 0.05
 */
export function frictionOf(state: FrictionState | (string & {})): Friction {
  return Object.hasOwn(TABLE, state) ? TABLE[state as FrictionState] : TABLE.unknown
}
