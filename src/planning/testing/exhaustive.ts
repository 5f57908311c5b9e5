// The plainest way to the best sequence: every order, every mode, times by relaxation. Only for small tests.
import { lagConstraints } from '../lagConstraints.ts'
import type { Need, PlanningProblem } from '../model/problem.ts'
import type { Value } from '../model/sequence.ts'
import { type Choice, setUpChanges } from '../relations/setUpChanges.ts'
import { earliestStarts } from '../times.ts'

const holds = (need: Need, done: ReadonlySet<string>): boolean =>
  need.anyOf.some(
    (alternative) => alternative.done.every((op) => done.has(op)) && !alternative.notDone.some((op) => done.has(op)),
  )

export const isBetter = (one: Value, other: Value | null): boolean => {
  if (!other) return true
  for (let part = 0; part < 3; part++) if (one[part] !== other[part]) return one[part]! < other[part]!
  return false
}

/** The value of one sequence with its modes; null when no times satisfy the lags. Needs are not looked at. */
export function valueOfSequence(problem: PlanningProblem, sequence: readonly Choice[]): Value | null {
  const durations = new Map(problem.operations.map(({ id, duration_s }) => [id, duration_s.usual]))
  const places = new Map(sequence.map(({ op }, place) => [op, place]))
  const changes = setUpChanges(problem, sequence)
  const lasts = sequence.map(({ op }) => durations.get(op)!)
  const starts = earliestStarts(
    lasts,
    changes.map((list) => list.reduce((sum, { s }) => sum + s, 0)),
    lagConstraints(problem, new Map(problem.operations.map(({ id }, at) => [id, at]))).map((bound) => ({
      ...bound,
      later: places.get(problem.operations[bound.later]!.id)!,
      earlier: places.get(problem.operations[bound.earlier]!.id)!,
    })),
  )
  if (!starts) return null
  const all = changes.flat()
  const hazard = sequence.reduce(
    (sum, { mode }) => sum + (mode.hazard ?? 0),
    all.reduce((sum, change) => sum + change.hazard, 0),
  )
  return [hazard, sequence.length === 0 ? 0 : starts.at(-1)! + lasts.at(-1)!, all.length]
}

export interface Exhausted {
  readonly best: Value | null
  /** Orders that satisfy the needs for at least one choice of modes. */
  readonly orders: bigint
  /** False when there were more sequences than `most`. */
  readonly complete: boolean
}

export function exhaust(problem: PlanningProblem, most = 40_000): Exhausted {
  let best: Value | null = null
  let looked = 0
  const done = new Set<string>()
  const sequence: Choice[] = []
  const visit = (): void => {
    if (looked > most) return
    if (sequence.length === problem.operations.length) {
      looked++
      const value = valueOfSequence(problem, sequence)
      if (value && isBetter(value, best)) best = value
      return
    }
    for (const { id, needs, modes } of problem.operations) {
      if (done.has(id) || !needs.every((need) => holds(need, done))) continue
      for (const mode of modes) {
        if (mode.people > problem.people || !mode.needs.every((need) => holds(need, done))) continue
        sequence.push({ op: id, mode })
        done.add(id)
        visit()
        done.delete(id)
        sequence.pop()
      }
    }
  }
  visit()
  return { best, orders: countOrders(problem), complete: looked <= most }
}

/** Every order that satisfies the needs, by plain recursion. */
export function countOrders(problem: PlanningProblem): bigint {
  const done = new Set<string>()
  const known = new Map<string, bigint>()
  const count = (): bigint => {
    if (done.size === problem.operations.length) return 1n
    const key = [...done].sort().join(' ')
    const before = known.get(key)
    if (before !== undefined) return before
    let sum = 0n
    for (const { id, needs, modes } of problem.operations) {
      if (done.has(id) || !needs.every((need) => holds(need, done))) continue
      if (!modes.some((mode) => mode.people <= problem.people && mode.needs.every((need) => holds(need, done))))
        continue
      done.add(id)
      sum += count()
      done.delete(id)
    }
    known.set(key, sum)
    return sum
  }
  return count()
}
