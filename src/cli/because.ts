// Why a step of a sequence does not stand earlier: the need of it that was met last. The closed needs are asked, so that a step
// that must not come too early says so itself.
import { close } from '../planning/close.ts'
import type { Need, Operation, PlanningProblem, Reason } from '../planning/model/problem.ts'
import type { PlacedStep } from '../planning/model/sequence.ts'

export interface Because {
  /** Place in the sequence, from 0, of the step that it waited for. */
  readonly after: number
  readonly reason: Reason
}

/** The needs of an operation and of one of its modes. */
export const needsOf = ({ needs, modes }: Operation, mode: string): readonly Need[] => [
  ...needs,
  ...(modes.find(({ id }) => id === mode)?.needs ?? []),
]

/**
 * For each step, the need that was met last before it could start; undefined where nothing had to be done first.
 *
 * @example becauseOf(problem, plan(problem).steps)[1]?.reason.says   // 'The float is read without the drag of the seal.'
 */
export function becauseOf(problem: PlanningProblem, steps: readonly PlacedStep[]): readonly (Because | undefined)[] {
  const operations = new Map(close(problem).problem.operations.map((operation) => [operation.id, operation]))
  const told = new Map(
    problem.operations.flatMap(({ needs, modes }) =>
      [...needs, ...modes.flatMap((mode) => mode.needs)].map(({ id, reason }) => [id, reason]),
    ),
  )
  const placeOf = new Map(steps.map(({ op }, place) => [op, place]))
  /** A derived reason names the need it came from, which says the same more shortly. */
  const toldOf = (reason: Reason): Reason => {
    const { from } = reason.facts
    const [first] = Array.isArray(from) ? from : []
    return (first !== undefined && told.get(first)) || reason
  }
  return steps.map(({ op, mode }, place) => {
    const before = (id: string) => (placeOf.get(id) ?? Number.POSITIVE_INFINITY) < place
    let last: Because | undefined
    for (const { anyOf, reason } of needsOf(operations.get(op)!, mode)) {
      // Of several ways of meeting a need the one that was there first counts.
      const metAt = anyOf
        .filter(({ done, notDone }) => done.every(before) && !notDone.some(before))
        .map(({ done }) => Math.max(-1, ...done.map((id) => placeOf.get(id)!)))
      const after = Math.min(...metAt)
      if (Number.isFinite(after) && after >= 0 && after > (last?.after ?? -1)) last = { after, reason: toldOf(reason) }
    }
    return last
  })
}
