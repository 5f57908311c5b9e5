// The plainest way to the best sequence: every order, every mode, times by relaxation. Only for small tests.
import { valueOfSteps } from '../judge.ts'
import type { PlanningProblem } from '../model/problem.ts'
import type { Value } from '../model/sequence.ts'
import { betweenSeconds } from '../relations/between.ts'
import { compareValues } from '../relations/compareValues.ts'
import { bestStarts } from '../relations/lags.ts'
import { needHolds } from '../relations/needs.ts'
import { type Choice, setUpChanges } from '../relations/setUpChanges.ts'
import { isAllowed } from '../relations/teams.ts'
import { triesOf } from '../relations/tries.ts'

/** The value of one sequence with its modes; null when no times satisfy the lags or a neighbour may not be one. Needs are not looked at. */
export function valueOfSequence(problem: PlanningProblem, sequence: readonly Choice[]): Value | null {
  const durations = new Map(problem.operations.map(({ id, duration_s }) => [id, duration_s.usual]))
  const starts = bestStarts(problem, sequence)
  if (!starts || betweenSeconds(problem, sequence).includes(null)) return null
  const steps = sequence.map(({ op, mode }, place) => ({
    op,
    mode: mode.id,
    start_s: starts[place]!,
    end_s: starts[place]! + durations.get(op)!,
  }))
  return valueOfSteps(steps, sequence, setUpChanges(problem, sequence))
}

export interface Exhausted {
  readonly best: Value | null
  /** The best value with usual tries; the same as `best` where the problem has no loops. */
  readonly bestUsual: Value | null
  /** Orders that satisfy the needs for at least one choice of modes. */
  readonly orders: bigint
  /** False when there were more sequences than `most`. */
  readonly complete: boolean
}

export function exhaust(problem: PlanningProblem, most = 40_000): Exhausted {
  let best: Value | null = null
  let bestUsual: Value | null = null
  let looked = 0
  const done = new Set<string>()
  const isDone = (op: string) => done.has(op)
  const sequence: Choice[] = []
  const visit = (): void => {
    if (looked > most) return
    if (sequence.length === problem.operations.length) {
      looked++
      const value = valueOfSequence(problem, sequence)
      if (!value) return
      if (!best || compareValues(value, best) < 0) best = value
      const usual = triesOf(problem, sequence, value)?.usual ?? value
      if (!bestUsual || compareValues(usual, bestUsual) < 0) bestUsual = usual
      return
    }
    for (const { id, needs, modes } of problem.operations) {
      if (done.has(id) || !needs.every((need) => needHolds(need, isDone))) continue
      for (const mode of modes) {
        if (!isAllowed(problem, mode) || !mode.needs.every((need) => needHolds(need, isDone))) continue
        sequence.push({ op: id, mode })
        done.add(id)
        visit()
        done.delete(id)
        sequence.pop()
      }
    }
  }
  visit()
  return { best, bestUsual, orders: countOrders(problem), complete: looked <= most }
}

/** Every order that satisfies the needs, by plain recursion. */
export function countOrders(problem: PlanningProblem): bigint {
  const done = new Set<string>()
  const isDone = (op: string) => done.has(op)
  const known = new Map<string, bigint>()
  const count = (): bigint => {
    if (done.size === problem.operations.length) return 1n
    const key = [...done].sort().join(' ')
    const before = known.get(key)
    if (before !== undefined) return before
    let sum = 0n
    for (const { id, needs, modes } of problem.operations) {
      if (done.has(id) || !needs.every((need) => needHolds(need, isDone))) continue
      if (!modes.some((mode) => isAllowed(problem, mode) && mode.needs.every((need) => needHolds(need, isDone))))
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
