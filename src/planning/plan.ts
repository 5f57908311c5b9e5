// The library door of the sequence engine: the best sequence of a problem, with its bound.
import { closing } from './closing.ts'
import { lagConstraints } from './lagConstraints.ts'
import type { PlanningProblem } from './model/problem.ts'
import type { PlacedStep, PlanResult, Value } from './model/sequence.ts'
import { setUpChanges } from './relations/setUpChanges.ts'
import { type Instance, instanceOf } from './search/instance.ts'
import { solve } from './search/solve.ts'
import { earliestStarts } from './times.ts'

export interface PlanOptions {
  /** How much may be tried, in states looked at; the same effort gives the same plan. */
  readonly effort?: number
  /** A clock in milliseconds; only read when there is a time limit. */
  readonly now?: () => number
  readonly timeLimit_s?: number
  readonly onProgress?: (progress: { value: Value | null; bound: Value; states: number }) => void
}

export const USUAL_EFFORT = 1_000_000

/** The triple that a search key stands for. */
function tripleOf(instance: Instance, key: number): Value {
  const changes = key % instance.changesRange
  const rest = (key - changes) / instance.changesRange
  const elapsed = rest % instance.elapsedRange
  return [(rest - elapsed) / instance.elapsedRange, elapsed, changes]
}

export function plan(problem: PlanningProblem, options: PlanOptions = {}): PlanResult {
  const { effort = USUAL_EFFORT, now, timeLimit_s, onProgress } = options
  const end = now && timeLimit_s !== undefined ? now() + timeLimit_s * 1000 : Number.POSITIVE_INFINITY
  const closed = closing(problem)
  if (closed.contradiction) {
    return {
      value: null,
      bound: null,
      proven: true,
      steps: [],
      assumptions: [],
      conflict: { members: [], cheapest: [] },
      effort: { states: 0, width: 0, dropped: 0 },
    }
  }
  const instance = instanceOf(closed)
  const solution = solve(instance, {
    effort,
    late: () => now !== undefined && now() > end,
    onBetter: (progress) =>
      onProgress?.({
        value: progress.key === null ? null : tripleOf(instance, progress.key),
        bound: tripleOf(instance, progress.boundKey),
        states: progress.states,
      }),
  })
  const { states, width, dropped } = solution
  return {
    value: solution.key === null ? null : tripleOf(instance, solution.key),
    bound: solution.steps === null && solution.proven ? null : tripleOf(instance, solution.boundKey),
    proven: solution.proven,
    steps: solution.steps ? placed(problem, solution.steps) : [],
    assumptions: [],
    conflict: null,
    effort: { states, width, dropped },
  }
}

function placed(problem: PlanningProblem, steps: readonly { op: number; place: number }[]): PlacedStep[] {
  const sequence = steps.map(({ op, place }) => {
    const operation = problem.operations[op]!
    return { op: operation.id, mode: operation.modes[place]!, duration_s: operation.duration_s.usual }
  })
  const places = new Map(sequence.map(({ op }, place) => [op, place]))
  const starts = earliestStarts(
    sequence.map(({ duration_s }) => duration_s),
    setUpChanges(problem, sequence).map((list) => list.reduce((sum, { s }) => sum + s, 0)),
    lagConstraints(problem, new Map(problem.operations.map(({ id }, at) => [id, at]))).map((bound) => ({
      ...bound,
      later: places.get(problem.operations[bound.later]!.id)!,
      earlier: places.get(problem.operations[bound.earlier]!.id)!,
    })),
  )
  if (!starts) throw new Error('assert: a sequence that was found has times')
  return sequence.map(({ op, mode, duration_s }, place) => ({
    op,
    mode: mode.id,
    start_s: starts[place]!,
    end_s: starts[place]! + duration_s,
  }))
}
