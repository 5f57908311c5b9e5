// Judges a sequence for a crew. What is not told, ways, people and times, is chosen as well as it can be in the order that is told.
import { Problem } from '../problem/problem.ts'
import { closing } from './closing.ts'
import type { Judgement } from './judge.ts'
import type { Mode, Need, OpId, PlanningProblem } from './model/problem.ts'
import type { PlacedStep, Value } from './model/sequence.ts'
import { crew } from './relations/crew.ts'
import { crewChanges } from './relations/crewChanges.ts'
import { lags } from './relations/lags.ts'
import { needHolds, needs } from './relations/needs.ts'
import type { JudgedStep } from './relations/rule.ts'
import type { SetUpChange } from './relations/setUpChanges.ts'
import { isAllowed } from './relations/teams.ts'
import { solveCrew } from './search/crew/solveCrew.ts'

/** A step as told; the mode, if told, is one of its operation. */
export interface ToldCrewStep {
  readonly op: OpId
  readonly mode?: string
  readonly start_s?: number
  readonly end_s?: number
  readonly people?: readonly string[]
}

/**
 * The order of starts is kept; the steps have to name every operation once.
 * @throws PLANNING_UNKNOWN_PERSON
 */
export function judgeCrew(problem: PlanningProblem, told: readonly ToldCrewStep[], best: Value | null): Judgement {
  const modeOf = new Map(problem.operations.map(({ id, modes }) => [id, new Map(modes.map((mode) => [mode.id, mode]))]))
  for (const id of told.flatMap(({ people = [] }) => people)) {
    if (!problem.crew!.some((person) => person.id === id)) throw new Problem('PLANNING_UNKNOWN_PERSON', { id })
  }
  const isWhole = told.every(
    ({ mode, start_s, end_s, people }) =>
      mode !== undefined && people !== undefined && start_s !== undefined && end_s !== undefined,
  )
  const placed = isWhole ? (told as readonly PlacedStep[]) : filledIn(problem, told)
  const asTold = told.map(({ op, mode }) => ({
    op,
    mode: modeOf.get(op)!.get(mode ?? '') ?? [...modeOf.get(op)!.values()][0]!,
  }))
  const steps: readonly JudgedStep[] = placed
    ? placed.map((step) => ({ ...step, mode: modeOf.get(step.op)!.get(step.mode)! }))
    : asTold
  const breaches = [needs, crew, lags].flatMap((rule) => rule.breaches(problem, steps))
  const changes = crewChanges(problem, steps)
  const chosen = steps.map(({ op, mode }) => ({ op, mode: mode.id }))
  if (!placed) return { breaches, value: null, steps: [], chosen, changes, tries: null, costsMore: null }
  const value = valueOfCrew(placed, steps, changes)
  const costsMore: Value | null = best && [value[0] - best[0], value[1] - best[1], value[2] - best[2]]
  return { breaches, value, steps: placed, chosen, changes, tries: null, costsMore }
}

/** The value of a crew's schedule: summed hazards, the latest end, the number of changes. */
export function valueOfCrew(
  placed: readonly PlacedStep[],
  steps: readonly { readonly mode: Mode }[],
  changes: readonly (readonly SetUpChange[])[],
): Value {
  const all = changes.flat()
  return [
    steps.reduce((sum, { mode }) => sum + (mode.hazard ?? 0), 0) + all.reduce((sum, { hazard }) => sum + hazard, 0),
    placed.reduce((latest, { end_s }) => Math.max(latest, end_s), 0),
    all.length,
  ]
}

const ORDER_EFFORT = 30_000

/** The best found for the order told; without the lags when they allow no times, and null when nothing can be done in it. */
function filledIn(problem: PlanningProblem, told: readonly ToldCrewStep[]): readonly PlacedStep[] | null {
  const inOrder = keepOrder(problem, told)
  for (const trial of [inOrder, { ...inOrder, lags: [] }]) {
    const closed = closing(trial)
    if (closed.contradiction) continue
    const { steps } = solveCrew(closed, { effort: ORDER_EFFORT, late: () => false })
    if (steps) return steps
  }
  return null
}

const hisOwn = (person: string) => `is ${person}`

/** The problem in which the operations start as told, by whom is told, and whose needs are those that can hold then. */
function keepOrder(problem: PlanningProblem, told: readonly ToldCrewStep[]): PlanningProblem {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const started = new Set<OpId>()
  return {
    ...problem,
    crew: problem.crew!.map(({ id, skills }) => ({ id, skills: [...skills, hisOwn(id)] })),
    operations: told.map(({ op, mode: named, people }, place) => {
      const operation = operations.get(op)!
      const possible = (list: readonly Need[]) => list.filter((need) => needHolds(need, (id) => started.has(id)))
      const asked = operation.modes.filter(({ id }) => named === undefined || id === named)
      const open = asked.filter((mode) => isAllowed(problem, mode) && possible(mode.needs).length === mode.needs.length)
      const modes = (open.length > 0 ? open : asked).map((mode) => ({
        ...mode,
        needs: possible(mode.needs),
        ...(people ? { people: people.length, skills: [...(mode.skills ?? []), ...people.map(hisOwn)] } : {}),
      }))
      const next = told[place + 1]
      const kept = {
        ...operation,
        modes,
        needs: [...possible(operation.needs), ...(next ? [before(op, next.op)] : [])],
      }
      started.add(op)
      return kept
    }),
  }
}

const before = (op: OpId, next: OpId): Need => ({
  id: `order ${op}`,
  anyOf: [{ done: [], notDone: [next] }],
  reason: { code: 'ORDER', says: 'As told.', facts: {}, origin: 'author', standing: 'told' },
  giveUp: 'never',
})
