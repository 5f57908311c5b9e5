// A new sequence from a half-done state with new facts, close to the old one where that costs little.
import { Problem } from '../problem/problem.ts'
import { findConflict } from './conflict.ts'
import { between, type Difference, differences } from './explain/differences.ts'
import { movedBetween } from './explain/moved.ts'
import { choicesOf, type Trial, trial } from './explain/trial.ts'
import { judge, type ToldStep, toldSteps } from './judge.ts'
import type { Lag, Need, OpId, Person, PlanningProblem, Reason, StartState } from './model/problem.ts'
import type { Conflict, PlacedStep, Value } from './model/sequence.ts'
import { plan } from './plan.ts'
import { reach, takeBack } from './reach.ts'
import { compareValues } from './relations/compareValues.ts'
import { setUpAfter } from './relations/setUpChanges.ts'
import { worksTogether } from './relations/teams.ts'
import { repair } from './repair.ts'
import { restOf } from './restOf.ts'

/** How things are now, where they are not as they were planned. */
export interface NewFacts {
  /** What stands, in the order in which it was done. */
  readonly done: Iterable<OpId>
  /** Operations among them that are not right and have to be done again, such as a check that failed or what it blames. */
  readonly failed?: readonly OpId[]
  /** Operations that cannot start yet: seconds from now, or not known when. */
  readonly late?: readonly { readonly op: OpId; readonly notBefore_s?: number }[]
  /** Hands that there are now, where no crew is named. */
  readonly people?: number
  /** Who there is now. */
  readonly crew?: readonly Person[]
  /** How the set-up stands now; where left out, as what stands has left it, each done as the old order has it. */
  readonly start?: StartState
}

export interface ReplanOptions {
  /** The share of the best elapsed time that may be spent on keeping the old order. */
  readonly tolerance?: number
  readonly effort?: number
}

export interface Replan {
  /** What has to come off first, in order, and what has to be renewed for that. */
  readonly undo: readonly OpId[]
  readonly renews: readonly string[]
  /** Checks that no longer count. */
  readonly voids: readonly OpId[]
  /**
   * Steps done although a need of them cannot have been met. Where it is `never` given up they come off and are done again; else they
   * are left as they are, for a person to judge.
   */
  readonly outOfTurn: readonly { readonly op: OpId; readonly need: Need; readonly comesOff: boolean }[]
  /** From there on; times from the moment when that is done. Empty where nothing can be done. */
  readonly steps: readonly PlacedStep[]
  readonly value: Value | null
  /** The best there is, without regard to the old order; proven where `proven`. */
  readonly best: Value | null
  readonly proven: boolean
  /** Operations that stand elsewhere among what is left than they did, and the fewest that any sequence has to move. */
  readonly moved: readonly OpId[]
  readonly leastMoved: number
  /** Why: what each move cures, or gains; empty for a crew. */
  readonly differences: readonly Difference[]
  /** Operations of which it is not known when they can start: they come as late as all else allows. */
  readonly waitsFor: readonly OpId[]
  /** Why nothing can be done any more. */
  readonly conflict: Conflict | null
}

const USUAL_EFFORT = 300_000
const USUAL_TOLERANCE = 0.02
const NOW = 'now'

/**
 * What to do from here. Looked at are the old order of what is left, its smallest repair, the best sequence, and those between the
 * last two; of these, the one that moves least is taken among those that take no more hazard than the best and no more than
 * `tolerance` more time.
 *
 * @param old the order that was planned, every operation of the problem once
 * @returns null when what has to come off cannot be taken off, or no way was found within the effort
 * @throws PLANNING_STEPS, PLANNING_UNKNOWN_OPERATION; PLANNING_NOT_DONE when what failed is not done; PLANNING_CREW_NAMED; PLANNING_… when the problem is not valid
 * @example replan(problem, ['float', 'seal'], { done: ['float'] })?.steps.map(({ op }) => op)   // ['seal']
 */
export function replan(
  problem: PlanningProblem,
  old: readonly ToldStep[],
  facts: NewFacts,
  { tolerance = USUAL_TOLERANCE, effort = USUAL_EFFORT }: ReplanOptions = {},
): Replan | null {
  const planned = toldSteps(problem, old)
  const back = comesOff(problem, facts)
  if (!back) return null
  const { undo, renews, voids, outOfTurn, stands } = back
  const { late = [], start = leftBy(problem, old, facts) } = facts
  const rest = held({ ...restOf(problem, stands), ...handsNow(problem, facts), start }, late)
  const left = new Set(rest.operations.map(({ id }) => id))
  const order = [...(left.has(NOW) ? [{ op: NOW }] : []), ...planned.filter(({ op }) => left.has(op))]
  const about = {
    undo,
    renews,
    voids,
    outOfTurn,
    waitsFor: late.filter(({ op, notBefore_s }) => notBefore_s === undefined && left.has(op)).map(({ op }) => op),
  }
  const nothing = { steps: [], moved: [], leastMoved: 0, differences: [], value: null, best: null, proven: false }
  const best = plan(rest, { effort })
  if (!best.value) {
    const conflict = best.conflict ?? findConflict(rest, { effort })
    return conflict ? { ...about, ...nothing, conflict } : null
  }
  const ids = order.map(({ op }) => op)
  const mended = repair(rest, ids, { effort: Math.ceil(effort / 10) })
  const together = worksTogether(rest)
  const judged = judge(rest, ids)
  const told = together && judged.value ? judged.steps : judged.chosen
  const found = chosen({ rest, ids, told, mended: mended?.steps ?? null, best: best.steps, tolerance })
  return {
    ...about,
    steps: found.steps.filter(({ op }) => op !== NOW),
    value: found.value,
    best: best.value,
    proven: best.proven,
    moved: movedBetween(
      ids,
      found.choices.map(({ op }) => op),
    ),
    leastMoved: mended?.least ?? 0,
    differences: together ? [] : differences(rest, told, found.steps),
    conflict: null,
  }
}

/** The hands that there are now. */
function handsNow({ crew: named, people: told }: PlanningProblem, { crew, people }: NewFacts) {
  if (crew) return { crew, people: crew.length }
  if (named && people !== undefined) throw new Problem('PLANNING_CREW_NAMED', { people })
  return { people: people ?? told }
}

/** The set-up that what stands has left behind. */
function leftBy(problem: PlanningProblem, old: readonly ToldStep[], { done }: NewFacts): StartState {
  const modes = new Map(choicesOf(problem, judge(problem, old).chosen).map((choice) => [choice.op, choice]))
  const left = setUpAfter(
    problem,
    [...done].map((op) => modes.get(op)!),
  )
  // What each of several people has at hand is not told.
  return worksTogether(problem) ? { attitudes: left.attitudes } : left
}

/** What comes off because it failed, and because what was done out of turn shuts the way to the end. */
function comesOff(problem: PlanningProblem, { done, failed = [] }: NewFacts) {
  let stands: OpId[] = [...done]
  const undo: OpId[] = []
  const renews = new Set<string>()
  const voids = new Set<OpId>()
  const take = (way: ReturnType<typeof reach>): boolean => {
    if (!way) return false
    undo.push(...way.undo)
    for (const thing of way.renews) renews.add(thing)
    for (const op of way.voids) voids.add(op)
    stands = stands.filter((op) => !way.undo.includes(op) && !way.voids.includes(op))
    return true
  }
  const outOfTurn = doneTooEarly(problem, stands)
  for (const op of [...failed, ...outOfTurn.filter((each) => each.comesOff).map((each) => each.op)]) {
    if (undo.includes(op) || voids.has(op)) continue
    const { check, undo: undoing } = problem.operations.find(({ id }) => id === op) ?? {}
    // What is only read is read again; nothing comes off for that.
    if (check && !undoing && stands.includes(op)) {
      voids.add(op)
      stands = stands.filter((other) => other !== op)
    } else if (!take(reach(problem, op, { done: stands }))) return null
  }
  if (!take(takeBack(problem, stands))) return null
  return { undo, renews: [...renews], voids: [...voids], outOfTurn, stands }
}

/** Needs of what is done that wanted done what is not: whatever the order was, they cannot have been met. */
function doneTooEarly(problem: PlanningProblem, done: readonly OpId[]): Replan['outOfTurn'] {
  const stands = new Set(done)
  return problem.operations
    .filter(({ id }) => stands.has(id))
    .flatMap(({ id: op, needs, modes }) => {
      const own = modes.length === 1 ? [...needs, ...modes[0]!.needs] : needs
      const unmet = own.filter(({ anyOf }) => !anyOf.some((way) => way.done.every((other) => stands.has(other))))
      const need = unmet.find(({ giveUp }) => giveUp === 'never') ?? unmet[0]
      return need ? [{ op, need, comesOff: need.giveUp === 'never' }] : []
    })
}

const LATE: Reason = { code: 'LATE', says: 'It is not there yet.', facts: {}, origin: 'observed', standing: 'told' }

/** The problem with what is late held back from now. */
function held(rest: PlanningProblem, late: NonNullable<NewFacts['late']>): PlanningProblem {
  const there = late.filter(({ op }) => rest.operations.some(({ id }) => id === op))
  if (there.length === 0) return rest
  const all = rest.operations.reduce((sum, { duration_s }) => sum + duration_s.usual, 0)
  const after = (op: OpId): Need => ({
    id: `${NOW} before ${op}`,
    anyOf: [{ done: [NOW], notDone: [] }],
    reason: LATE,
    giveUp: 'never',
  })
  const lags = there.map(
    ({ op, notBefore_s = all }): Lag => ({
      id: `late: ${op}`,
      from: { op: NOW, edge: 'start' },
      to: { op, edge: 'start' },
      min_s: notBefore_s,
      reason: LATE,
      giveUp: 'never',
    }),
  )
  return {
    ...rest,
    lags: [...rest.lags, ...lags],
    operations: [
      {
        id: NOW,
        does: 'Now',
        duration_s: { low: 0, usual: 0, high: 0 },
        needs: [],
        modes: [
          {
            id: NOW,
            people: rest.crew ? 0 : 1,
            needs: [],
            setup: { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' },
          },
        ],
      },
      ...rest.operations.map((operation) => ({ ...operation, needs: [...operation.needs, after(operation.id)] })),
    ],
  }
}

type Named = readonly { readonly op: OpId; readonly mode: string }[]

/** Of the sequences looked at, the one that moves least among those that cost little more than the best. */
function chosen({
  rest,
  ids,
  told,
  mended,
  best,
  tolerance,
}: {
  rest: PlanningProblem
  ids: readonly OpId[]
  told: Named
  mended: Named | null
  best: Named
  tolerance: number
}): Trial & { readonly value: Value } {
  const together = worksTogether(rest)
  const tried = (list: Named): Trial =>
    together ? { ...judge(rest, list), choices: choicesOf(rest, list) } : trial(rest, choicesOf(rest, list))
  const top = tried(best)
  const [hazard, elapsed_s] = top.value!
  const most_s = Math.floor(elapsed_s * (1 + tolerance))
  const looked = [
    tried(told),
    ...(mended ? [tried(mended), ...(together ? [] : between(rest, mended, best))] : []),
    top,
  ]
  const fit = looked.filter(
    (each): each is Trial & { readonly value: Value } =>
      each.breaches.length === 0 && each.value !== null && each.value[0] <= hazard && each.value[1] <= most_s,
  )
  const moves = (each: Trial) =>
    movedBetween(
      ids,
      each.choices.map(({ op }) => op),
    ).length
  return fit.reduce((least, each) => {
    const fewer = moves(each) - moves(least)
    return fewer < 0 || (fewer === 0 && compareValues(each.value, least.value) < 0) ? each : least
  })
}
