// Whether a problem has any sequence at all.
import { closing } from './closing.ts'
import type { Mode, PlanningProblem, Setup } from './model/problem.ts'
import { instanceOf } from './search/instance.ts'
import { solve } from './search/solve.ts'
import { TimeIsUp } from './search/timeIsUp.ts'

export interface Feasibility {
  readonly answer: 'yes' | 'no' | 'not known'
  readonly states: number
}

const NOTHING: Setup = { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' }

/** A problem with the same answer and less to tell apart: no hazards, and no set-ups where no maximum lag could feel them. */
function bare(problem: PlanningProblem): PlanningProblem {
  const ties = problem.lags.some(({ min_s, max_s }) => max_s !== undefined || (min_s !== undefined && min_s < 0))
  const strip = (mode: Mode): Mode => ({
    ...mode,
    hazard: 0,
    setup: ties ? mode.setup : NOTHING,
  })
  const turn = Object.fromEntries(
    Object.entries(problem.changes.turn).map(([workpiece, { s }]) => [workpiece, { s, hazard: 0 }]),
  )
  return {
    ...problem,
    changes: { ...problem.changes, turn },
    operations: problem.operations.map((operation) => ({ ...operation, modes: operation.modes.map(strip) })),
  }
}

/** Looks for one sequence of a valid problem, within an effort. */
export function canBeDone(
  problem: PlanningProblem,
  { effort, late }: { effort: number; late: () => boolean },
): Feasibility {
  try {
    return triedOut(problem, { effort, late })
  } catch (thrown) {
    if (!(thrown instanceof TimeIsUp)) throw thrown
    return { answer: 'not known', states: 0 }
  }
}

function triedOut(problem: PlanningProblem, { effort, late }: { effort: number; late: () => boolean }): Feasibility {
  const closed = closing(bare(problem), { late })
  if (closed.contradiction) return { answer: 'no', states: 0 }
  const solution = solve(instanceOf(closed, late), { effort, late, anyWillDo: true })
  if (solution.steps) return { answer: 'yes', states: solution.states }
  return { answer: solution.proven ? 'no' : 'not known', states: solution.states }
}
