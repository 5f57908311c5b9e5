// What has to come off again before one operation of a sequence can be undone, and be done again afterwards.
import type { Need, OpId, PlanningProblem } from '../model/problem.ts'
import { alternativeHolds } from './needs.ts'
import type { Choice } from './setUpChanges.ts'

/**
 * Places of a sequence, rising: `from` and all up to `upTo` that stands on it. Something stands on what was undone when one of its
 * needs was met in no way without it; and what an undoing wants away has to be undone as well (docs/reference/contract.md, section 7).
 */
export function standsOn(
  problem: PlanningProblem,
  sequence: readonly Choice[],
  { from, upTo }: { from: number; upTo: number },
): number[] {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const places = new Map(sequence.map(({ op }, place) => [op, place]))
  const off = new Set([from])
  const isOff = (op: OpId) => off.has(places.get(op)!)
  const leans = (place: number): boolean => {
    const { op, mode } = sequence[place]!
    const stood = (other: OpId) => places.get(other)! < place
    return [...operations.get(op)!.needs, ...mode.needs].some(({ anyOf }) => {
      const met = anyOf.filter((alternative) => alternativeHolds(alternative, stood))
      return met.length > 0 && met.every(({ done }) => done.some(isOff))
    })
  }
  for (let size = 0; size !== off.size; ) {
    size = off.size
    for (let place = 0; place <= upTo; place++) if (!off.has(place) && leans(place)) off.add(place)
    for (const place of [...off]) {
      for (const need of operations.get(sequence[place]!.op)!.undo?.needs ?? []) {
        for (const op of wantedAway(need)) if (places.get(op)! <= upTo) off.add(places.get(op)!)
      }
    }
  }
  return [...off].sort((one, other) => one - other)
}

/** What every alternative of a need wants not done. */
const wantedAway = ({ anyOf: [first, ...others] }: Need): OpId[] =>
  (first?.notDone ?? []).filter((op) => others.every(({ notDone }) => notDone.includes(op)))

/**
 * Seconds to undo an operation: as told; what is only looked at or read is not undone; else as long as doing it (common practice, no
 * source).
 */
export const undoSeconds = ({ undo, check, duration_s }: PlanningProblem['operations'][number]): number =>
  undo ? undo.duration_s.usual : check ? 0 : duration_s.usual
