// How long a step takes and what it wants in hand where the file does not say: common practice, no source.
import type { Duration } from '../../planning/model/problem.ts'
import type { Known, Part } from '../model/unit.ts'

const MINUTES: Readonly<Record<string, number>> = {
  'press fit': 8,
  'hot fit': 3,
  'snap ring': 3,
  'lip seal': 5,
  key: 2,
  plug: 2,
  slide: 4,
}
const ORDINARY_MINUTES = 5

/** Where work is done that wants no press, oven or other plant. */
export const ASSEMBLY_BENCH = 'assembly bench'

const spread = (usual: number): Duration => ({
  low: Math.round(usual * 0.7),
  usual: Math.round(usual),
  high: Math.round(usual * 1.8),
})

/** Whole seconds; a given range keeps its ends and plans with the middle. */
export function durationOf(takes: Known<number> | undefined, minutes: number): Duration {
  if (!takes) return spread(minutes * 60)
  if (takes.low === takes.high)
    return { low: Math.round(takes.low), usual: Math.round(takes.low), high: Math.round(takes.high) }
  return { low: Math.round(takes.low), usual: Math.round((takes.low + takes.high) / 2), high: Math.round(takes.high) }
}

export const partDuration = (part: Part): Duration =>
  durationOf(part.takes, MINUTES[part.kind ?? ''] ?? ORDINARY_MINUTES)
