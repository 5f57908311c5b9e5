// The library door of the sequence engine: the best sequence of a problem, with its bound and what it rests on.
import { type Closing, closing } from './closing.ts'
import { findConflict } from './conflict.ts'
import { assumptionsOf } from './explain/assumptions.ts'
import { valueOfSteps } from './judge.ts'
import type { PlanningProblem } from './model/problem.ts'
import type { PlacedStep, PlanResult, Value } from './model/sequence.ts'
import { bestStarts } from './relations/lags.ts'
import { setUpChanges } from './relations/setUpChanges.ts'
import { worksTogether } from './relations/teams.ts'
import { solveCrew } from './search/crew/solveCrew.ts'
import { instanceOf } from './search/instance.ts'
import type { Step } from './search/kernel.ts'
import { solve } from './search/solve.ts'
import { TimeIsUp, whilePreparing } from './search/timeIsUp.ts'
import { tripleOf } from './search/tripleOf.ts'
import { assertValid } from './validate.ts'
import { withTries } from './withTries.ts'

export interface PlanProgress {
  /** The best value so far. */
  readonly value: Value | null
  readonly bound: Value
  readonly states: number
}

export interface PlanOptions {
  /** How much may be tried, in states looked at; the same effort gives the same plan. */
  readonly effort?: number
  /** A clock in milliseconds; it is only read when there is a time limit. */
  readonly now?: () => number
  /** Ends the search early; what was found by then depends on the machine. */
  readonly timeLimit_s?: number
  /** Asked now and then; true ends the search as a time limit does. */
  readonly cancelled?: () => boolean
  readonly onProgress?: (progress: PlanProgress) => void
}

const USUAL_EFFORT = 300_000

/**
 * The sequence with the least (hazard, elapsed_s, changes), or the conflict that forbids every one.
 *
 * `proven` says that no sequence is better, for what was told; otherwise `bound` says what no sequence can beat. Without a value,
 * `feasible` says whether that is proven ('no', with the conflict) or only that none was found within the effort ('not known').
 *
 * @throws PLANNING_… when the problem is not valid
 * @example plan(problem).steps.map(({ op }) => op)   // ['float', 'seal']
 */
export function plan(problem: PlanningProblem, options: PlanOptions = {}): PlanResult {
  assertValid(problem)
  const late = lateness(options)
  const once = planOnce(problem, options, late)
  return problem.loops?.length && once.value && !worksTogether(problem)
    ? withTries(problem, once, (apart) => planOnce(apart, options, late))
    : once
}

/** The best sequence in which each is done once. */
function planOnce(problem: PlanningProblem, options: PlanOptions, late: () => boolean): PlanResult {
  try {
    return planned(problem, options, late)
  } catch (thrown) {
    if (!(thrown instanceof TimeIsUp)) throw thrown
    const effort = { states: 0, width: 0, dropped: 0 }
    return { ...NOTHING, bound: leastOf(problem), feasible: 'not known', conflict: null, effort }
  }
}

function planned(
  problem: PlanningProblem,
  { effort = USUAL_EFFORT, onProgress }: PlanOptions,
  late: () => boolean,
): PlanResult {
  const lateToPrepare = whilePreparing(problem.operations.length, late)
  const closed = closing(problem, { late: lateToPrepare })
  if (closed.contradiction) return blocked(closed, { effort, late, states: 0, width: 0 })
  if (worksTogether(problem)) return planCrew(closed, { effort, late, onProgress })
  const instance = instanceOf(closed, lateToPrepare)
  const solution = solve(instance, {
    effort,
    late,
    onBetter: ({ key, boundKey, states }) =>
      onProgress?.({
        value: key === null ? null : tripleOf(instance, key),
        bound: tripleOf(instance, boundKey),
        states,
      }),
  })
  const { states, width, dropped, proven } = solution
  if (!solution.steps && proven) return blocked(closed, { effort, late, states, width })
  const bound = tripleOf(instance, solution.boundKey)
  if (!solution.steps) {
    return { ...NOTHING, bound, feasible: 'not known', conflict: null, effort: { states, width, dropped } }
  }
  const { steps, value } = placed(problem, solution.steps)
  const assumptions = assumptionsOf(problem, { value, proven }, { effort, late, each: 2 * states + 1_000 })
  return {
    value,
    bound,
    proven,
    feasible: 'yes',
    steps,
    assumptions,
    conflict: null,
    effort: { states, width, dropped },
  }
}

/** Several people, or things that go on by themselves: `states` are placements of one operation. */
function planCrew(
  closed: Closing,
  { effort, late, onProgress }: { effort: number; late: () => boolean; onProgress: PlanOptions['onProgress'] },
): PlanResult {
  const { problem } = closed
  const { value, bound, proven, steps, states } = solveCrew(closed, {
    effort,
    late,
    onBetter: (found) => onProgress?.(found),
  })
  if (!steps && proven) return blocked(closed, { effort, late, states, width: 0 })
  const spent = { states, width: 0, dropped: 0 }
  if (!value || !steps) return { ...NOTHING, bound, feasible: 'not known', conflict: null, effort: spent }
  const assumptions = assumptionsOf(problem, { value, proven }, { effort, late, each: states + 1_000 })
  return { value, bound, proven, feasible: 'yes', steps, assumptions, conflict: null, effort: spent }
}

const NOTHING = { value: null, proven: false, steps: [], assumptions: [] } as const

function lateness({ now, timeLimit_s, cancelled = () => false }: PlanOptions): () => boolean {
  if (!now || timeLimit_s === undefined) return cancelled
  const end = now() + timeLimit_s * 1000
  return () => now() > end || cancelled()
}

/** What no sequence is better than, at a glance: the least hazard and the work alone; of several people, the longest piece of it. */
function leastOf(problem: PlanningProblem): Value {
  const { operations, people } = problem
  const allowed = operations.map(({ modes }) => modes.filter((mode) => mode.people <= people))
  return [
    allowed.reduce(
      (sum, modes) => sum + modes.reduce((least, { hazard = 0 }) => Math.min(least, hazard), modes[0]?.hazard ?? 0),
      0,
    ),
    worksTogether(problem)
      ? operations.reduce((most, { duration_s }) => Math.max(most, duration_s.usual), 0)
      : operations.reduce((sum, { duration_s }) => sum + duration_s.usual, 0),
    0,
  ]
}

/** The answer when no sequence is feasible. */
function blocked(
  { problem }: Closing,
  { effort, late, states, width }: { effort: number; late: () => boolean; states: number; width: number },
): PlanResult {
  const conflict = findConflict(problem, { effort, late })
  return { ...NOTHING, bound: null, feasible: 'no', conflict, effort: { states, width, dropped: 0 } }
}

/** Gives the steps of the search their best times; the value is worked out anew by the rules. */
function placed(problem: PlanningProblem, steps: readonly Step[]): { steps: PlacedStep[]; value: Value } {
  const choices = steps.map(({ op, place }) => {
    const operation = problem.operations[op]!
    return { op: operation.id, mode: operation.modes[place]!, duration_s: operation.duration_s.usual }
  })
  const starts = bestStarts(problem, choices)
  if (!starts) throw new Error('assert: a sequence that the search found has times')
  const list = choices.map(({ op, mode, duration_s }, place) => ({
    op,
    mode: mode.id,
    start_s: starts[place]!,
    end_s: starts[place]! + duration_s,
  }))
  return { steps: list, value: valueOfSteps(list, choices, setUpChanges(problem, choices)) }
}
