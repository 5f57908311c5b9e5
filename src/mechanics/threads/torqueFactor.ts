// How hard a screw turns for the tension it gives, by the state of its threads and head, as data.
import type { Range } from '../range.ts'

export interface TorqueFactor {
  readonly condition: string
  /** Symbol K: what it can be. */
  readonly range: Range<number>
  /** Symbol K: what the trade works with. */
  readonly usual: number
  readonly source: string
}

const HABIT = 'common practice, no source'

const TABLE = {
  dry: {
    condition: 'dry',
    range: { low: 0.17, high: 0.3 },
    usual: 0.2,
    source: 'Shigley, 9th ed., Table 8-15 (black 0.30, zinc plated 0.20; read); low end from memory',
  },
  oiled: {
    condition: 'oiled',
    range: { low: 0.12, high: 0.18 },
    usual: 0.15,
    source: `Shigley, 9th ed., Table 8-15 (lubricated 0.18; read); 0.15 and the low end: ${HABIT}`,
  },
  'anti-seize': { condition: 'anti-seize', range: { low: 0.1, high: 0.16 }, usual: 0.13, source: HABIT },
  dirty: {
    condition: 'dirty',
    range: { low: 0.13, high: 0.35 },
    usual: 0.2,
    source: `a fastener maker's tension test: grit raised the tension by half at one torque; ends: ${HABIT}`,
  },
  unknown: { condition: 'unknown', range: { low: 0.1, high: 0.35 }, usual: 0.2, source: 'not known: worst both ways' },
} as const satisfies Record<string, TorqueFactor>

export type ThreadCondition = keyof typeof TABLE

/**
 * Torque factor of a condition; one that is not held here is taken at its worst both ways.
 *
 * @source the source line of each
 * @example torqueFactor('oiled').usual   // 0.15
 */
export function torqueFactor(condition: ThreadCondition | (string & {})): TorqueFactor {
  return Object.hasOwn(TABLE, condition) ? TABLE[condition as ThreadCondition] : TABLE.unknown
}
