// What has to come off again before one operation of a sequence can be undone, and be done again afterwards.
import type { Mode, Need, Operation, OpId, PlanningProblem } from '../model/problem.ts'
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
      const { op, mode } = sequence[place]!
      for (const need of needsOfUndoing(operations.get(op)!, mode)) {
        for (const op of wantedAway(need)) if (places.get(op)! <= upTo) off.add(places.get(op)!)
      }
    }
  }
  return [...off].sort((one, other) => one - other)
}

/** What has to hold when an operation is undone: as told, else what the body wanted when it was done. */
export const needsOfUndoing = ({ undo, needs }: Operation, mode: Pick<Mode, 'needs'>): readonly Need[] =>
  undo?.needs.length
    ? undo.needs
    : [...needs, ...mode.needs].filter(({ reason: { origin } }) => origin === 'geometry' || origin === 'connection')

/** What every alternative of a need wants not done. */
export const wantedAway = ({ anyOf: [first, ...others] }: Need): OpId[] =>
  (first?.notDone ?? []).filter((op) => others.every(({ notDone }) => notDone.includes(op)))

/**
 * Seconds to undo an operation: as told; what is only looked at or read is not undone; else as long as doing it (common practice, no
 * source).
 */
export const undoSeconds = ({ undo, check, duration_s }: Operation): number =>
  undo ? undo.duration_s.usual : check ? 0 : duration_s.usual
