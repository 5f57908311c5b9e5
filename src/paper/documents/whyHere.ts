// Why a step stands where it does in a sequence: the relations that hold it, the nearest first.
import type { Alternative, Need, OpId, PlanningProblem, Reason } from '../../planning/model/problem.ts'
import type { PlanResult } from '../../planning/model/sequence.ts'

export interface Hold {
  readonly side: 'after' | 'before'
  /** The step that it stands after or before, by its number in the sequence; 0 where that step stood already. */
  readonly number: number
  readonly op: OpId
  readonly reason: Reason
}

/**
 * For each step of the sequence what holds it there. Of a need with several ways out only the one that this sequence takes is told.
 * A step without any is where it is because that is quickest.
 *
 * @example whyHere(problem, plan(problem)).get('seal')?.[0]?.reason.says   // 'The float is read without the drag of the seal.'
 */
export function whyHere(problem: PlanningProblem, result: PlanResult): ReadonlyMap<OpId, readonly Hold[]> {
  const place = new Map(result.steps.map(({ op }, index) => [op, index + 1]))
  const chosen = new Map(result.steps.map(({ op, mode }) => [op, mode]))
  const holds = new Map<OpId, Hold[]>(result.steps.map(({ op }) => [op, []]))
  const add = (op: OpId, hold: Hold) => holds.get(op)?.push(hold)

  for (const operation of problem.operations) {
    const at = place.get(operation.id)
    if (at === undefined) continue
    const mode = operation.modes.find(({ id }) => id === chosen.get(operation.id))
    for (const need of [...operation.needs, ...(mode?.needs ?? [])]) {
      const taken = takenBy(need, at, place)
      if (!taken) continue
      const latest = last(taken.done, place)
      const earliest = first(taken.notDone, place)
      if (latest) {
        add(operation.id, { side: 'after', ...latest, reason: need.reason })
        add(latest.op, { side: 'before', number: at, op: operation.id, reason: need.reason })
      }
      if (earliest) {
        add(operation.id, { side: 'before', ...earliest, reason: need.reason })
        add(earliest.op, { side: 'after', number: at, op: operation.id, reason: need.reason })
      }
    }
  }
  for (const { op } of result.steps) {
    const at = place.get(op) ?? 0
    const seen = new Set<string>()
    const sorted = (holds.get(op) ?? [])
      .sort((a, b) => Math.abs(a.number - at) - Math.abs(b.number - at))
      .filter(({ reason }) => !seen.has(reason.says) && seen.add(reason.says))
    holds.set(op, sorted)
  }
  return holds
}

/** The alternative that holds where the step stands, the one that asks least. */
function takenBy({ anyOf }: Need, at: number, place: ReadonlyMap<OpId, number>): Alternative | undefined {
  return anyOf
    .filter(
      ({ done, notDone }) =>
        done.every((op) => (place.get(op) ?? 0) < at) && notDone.every((op) => (place.get(op) ?? Infinity) > at),
    )
    .sort((a, b) => a.done.length + a.notDone.length - b.done.length - b.notDone.length)[0]
}

const placed = (ops: readonly OpId[], place: ReadonlyMap<OpId, number>) =>
  ops.flatMap((op) => {
    const number = place.get(op)
    return number === undefined ? [] : [{ op, number }]
  })
const last = (ops: readonly OpId[], place: ReadonlyMap<OpId, number>) =>
  placed(ops, place).sort((a, b) => b.number - a.number)[0]
const first = (ops: readonly OpId[], place: ReadonlyMap<OpId, number>) =>
  placed(ops, place).sort((a, b) => a.number - b.number)[0]
