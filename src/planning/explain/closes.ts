// What each step of a sequence closes, and what could still be done before it: the list to go through before a door is shut.
import { hasBit } from '../bitSet.ts'
import { closing } from '../closing.ts'
import type { Need, Operation, OpId, PlanningProblem } from '../model/problem.ts'
import type { PlacedStep } from '../model/sequence.ts'
import { alternativeHolds } from '../relations/needs.ts'
import { restOf } from '../restOf.ts'

export interface Closes {
  readonly op: OpId
  /** Why it cannot be taken back; null where it can. */
  readonly noReturn: string | null
  /** Operations that could not be done any more after it: each has to be done by then. With the need that says so. */
  readonly shuts: readonly { readonly op: OpId; readonly need: Need }[]
  /** Needs of operations that are still to come and lose a way of being met by it, with the number of ways left. */
  readonly narrows: readonly { readonly op: OpId; readonly need: Need; readonly left: number }[]
  /** What comes later in the sequence and could still be done before it. */
  readonly couldComeBefore: readonly OpId[]
}

/**
 * What each step of a sequence that can be done closes, in the order of the sequence.
 *
 * @example closesIn(problem, plan(problem).steps)[1].shuts   // []
 */
export function closesIn(problem: PlanningProblem, sequence: readonly Pick<PlacedStep, 'op' | 'mode'>[]): Closes[] {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const modeOf = new Map(sequence.map(({ op, mode }) => [op, mode]))
  const needsOf = (operation: Operation): readonly Need[] => [
    ...operation.needs,
    ...(operation.modes.find(({ id }) => id === modeOf.get(operation.id))?.needs ?? []),
  ]
  return sequence.map(({ op }, place) => {
    const before = sequence.slice(0, place).map((step) => step.op)
    const done = new Set([...before, op])
    const rest = closing(restOf(problem, before))
    const at = rest.indexOf.get(op)!
    const waysLeft = (need: Need, gone: ReadonlySet<OpId>) =>
      need.anyOf.filter(({ notDone }) => alternativeHolds({ done: [], notDone }, (id) => gone.has(id))).length
    const without = new Set(before)
    return {
      op,
      noReturn: operations.get(op)!.noReturn ?? null,
      shuts: before.flatMap((id) => {
        const need = needsOf(operations.get(id)!).find(
          ({ anyOf }) => anyOf.length > 0 && anyOf.every(({ notDone }) => notDone.includes(op)),
        )
        return need ? [{ op: id, need }] : []
      }),
      narrows: sequence.slice(place + 1).flatMap((later) =>
        needsOf(operations.get(later.op)!).flatMap((need) => {
          const left = waysLeft(need, done)
          return left < waysLeft(need, without) ? [{ op: later.op, need, left }] : []
        }),
      ),
      couldComeBefore: sequence
        .slice(place + 1)
        .map((later) => later.op)
        .filter((later) => !hasBit(rest.after[at]!, rest.indexOf.get(later)!)),
    }
  })
}
