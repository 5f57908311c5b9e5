// The smallest repair of a sequence that breaks a rule: the fewest operations that have to be moved so that all can be done.
import { addBit, type BitSet, emptySet, hasBit } from './bitSet.ts'
import { type Closing, closing } from './closing.ts'
import { movedBetween } from './explain/moved.ts'
import { trial } from './explain/trial.ts'
import { type ToldStep, toldSteps } from './judge.ts'
import type { OpId, PlanningProblem } from './model/problem.ts'
import type { PlacedStep, Value } from './model/sequence.ts'
import { worksTogether } from './relations/teams.ts'
import { solveCrew } from './search/crew/solveCrew.ts'
import { type Instance, instanceOf } from './search/instance.ts'
import { mayStart } from './search/mayStart.ts'
import { solve } from './search/solve.ts'
import { assertValid } from './validate.ts'

export interface Repair {
  /** The repaired sequence: the best there is with only these operations moved. */
  readonly steps: readonly PlacedStep[]
  readonly value: Value
  /** What is taken out and put back elsewhere, with its place before and after, from 1; in the new order. */
  readonly moved: readonly { readonly op: OpId; readonly from: number; readonly to: number }[]
  /** Operations that are done in another way than told. */
  readonly otherModes: readonly OpId[]
  /** No repair moves fewer than this. */
  readonly least: number
}

export interface RepairOptions {
  /** States that may be looked at. */
  readonly effort?: number
  readonly late?: () => boolean
}

const USUAL_EFFORT = 60_000
const EACH_ORDER = 5_000

/**
 * The repair of a told order that moves the fewest operations; all others keep their order among themselves. Modes are free. Exact
 * where `moved.length` is `least`; else the best that was found. The needs are searched exactly; where a clock forbids what the needs allow, other sets of moved operations are
 * tried one after another, as long as the effort lasts. For a crew the order is that of the starts.
 *
 * @returns null when nothing can be done in any order, or nothing was found within the effort
 * @throws PLANNING_STEPS when the sequence does not list every operation once; PLANNING_… when the problem is not valid
 * @example repair(problem, ['seal', 'float']).moved   // [{ op: 'float', from: 2, to: 1 }]
 */
export function repair(
  problem: PlanningProblem,
  sequence: readonly ToldStep[],
  { effort = USUAL_EFFORT, late = () => false }: RepairOptions = {},
): Repair | null {
  assertValid(problem)
  const told = toldSteps(problem, sequence)
  const order = told.map(({ op }) => op)
  const closed = closing(problem)
  if (closed.contradiction) return null
  const instance = instanceOf(closed)
  const line = order.map((op) => closed.indexOf.get(op)!)
  const byNeeds = fewestMoved(instance, line, { effort, late })
  const result = (steps: readonly PlacedStep[], value: Value, least: number): Repair => {
    const now = steps.map(({ op }) => op)
    const modes = new Map(told.map(({ op, mode }) => [op, mode]))
    return {
      steps,
      value,
      moved: movedBetween(order, now).map((op) => ({ op, from: order.indexOf(op) + 1, to: now.indexOf(op) + 1 })),
      otherModes: steps
        .filter(({ op, mode }) => modes.get(op) !== undefined && modes.get(op) !== mode)
        .map(({ op }) => op),
      least,
    }
  }
  let { least } = byNeeds
  if (byNeeds.moved) {
    const kept = keeping(problem, without(line, byNeeds.moved), { late })
    if (kept.found) return result(kept.found.steps, kept.found.value, least)
    // A clock forbids this one. Others of the same size, then larger ones.
    let tries = Math.floor(effort / 100)
    for (let size = least; size <= line.length && tries > 0; size++) {
      let sure = true
      for (const moved of choose(line, size)) {
        if (tries-- <= 0 || late()) {
          sure = false
          break
        }
        const { found, proven } = keeping(problem, without(line, moved), { late })
        if (found) return result(found.steps, found.value, least)
        if (!proven) sure = false
      }
      if (!sure) break
      least = size + 1
    }
  }
  const any = keeping(problem, [], { late, effort })
  return any.found && result(any.found.steps, any.found.value, least)
}

const without = (line: readonly number[], moved: readonly number[]): number[] =>
  line.filter((op) => !moved.includes(op))

/** The best sequence that keeps these operations in this order. */
function keeping(
  problem: PlanningProblem,
  kept: readonly number[],
  { late, effort = EACH_ORDER }: { late: () => boolean; effort?: number },
): { found: { steps: PlacedStep[]; value: Value } | null; proven: boolean } {
  const orders = kept.slice(1).map((after, place) => ({ before: kept[place]!, after }))
  const closed: Closing = closing(problem, { orders })
  if (closed.contradiction) return { found: null, proven: true }
  if (worksTogether(problem)) {
    const { steps, value, proven } = solveCrew(closed, { effort, late })
    return { found: steps && value && { steps: [...steps], value }, proven }
  }
  const { steps, proven } = solve(instanceOf(closed), { effort, late })
  if (!steps) return { found: null, proven }
  const tried = trial(
    problem,
    steps.map(({ op, place }) => {
      const { id, modes } = problem.operations[op]!
      return { op: id, mode: modes[place]! }
    }),
  )
  return { found: { steps: [...tried.steps], value: tried.value! }, proven }
}

/** All ways of choosing so many of a list, those that lie close together first within each first member. */
function* choose<T>(list: readonly T[], size: number): Generator<T[]> {
  if (size === 0) {
    yield []
    return
  }
  for (let first = 0; first + size <= list.length; first++) {
    for (const rest of choose(list.slice(first + 1), size - 1)) yield [list[first]!, ...rest]
  }
}

interface State {
  readonly done: BitSet
  /** Place in the told order of the last operation that kept its order; -1 before the first. */
  readonly last: number
  readonly count: number
  readonly moved: number
  /** Not done yet and told before `last`: they will all have been moved. */
  readonly owed: number
  readonly parent: State | null
  /** The operation that was moved in this step. */
  readonly op: number
  readonly isMoved: boolean
}

/**
 * The fewest operations to move so that the closed needs hold. A state is what is done and the last operation that kept its order;
 * each operation that is done next either keeps the order, and all that it passes over will have been moved, or is moved itself.
 * States are taken with the fewest moved for certain first, so that the first complete one has the fewest.
 */
function fewestMoved(
  instance: Instance,
  line: readonly number[],
  { effort, late }: { effort: number; late: () => boolean },
): { moved: number[] | null; least: number } {
  const { size } = instance
  const placeOf = new Int32Array(size)
  line.forEach((op, place) => {
    placeOf[op] = place
  })
  const start: State = {
    done: emptySet(size),
    last: -1,
    count: 0,
    moved: 0,
    owed: 0,
    parent: null,
    op: -1,
    isMoved: false,
  }
  const open = new Open()
  open.enter(start)
  let looked = 0
  for (let state = open.next(); state; state = open.next()) {
    const { done: sofar, last, count, moved, owed } = state
    if (count === size) return { moved: movedIn(state), least: moved }
    if (looked++ > effort || late()) return { moved: null, least: moved + owed }
    for (let op = 0; op < size; op++) {
      if (hasBit(sofar, op) || !mayStart(instance, op, sofar, 0)) continue
      const done = sofar.slice()
      addBit(done, op)
      const place = placeOf[op]!
      const next = { done, count: count + 1, parent: state, op }
      if (place < last) {
        open.enter({ ...next, last, moved: moved + 1, owed: owed - 1, isMoved: true })
        continue
      }
      let passed = 0
      for (let at = last + 1; at < place; at++) if (!hasBit(sofar, line[at]!)) passed++
      open.enter({ ...next, last: place, moved, owed: owed + passed, isMoved: false })
      open.enter({ ...next, last, moved: moved + 1, owed, isMoved: true })
    }
  }
  return { moved: null, least: size }
}

/** States that are still to be looked at: those with the fewest moved for certain first, of these the one that is furthest on. */
class Open {
  /** By the number moved for certain, then by how much is done. */
  readonly #lists = new Map<number, Map<number, State[]>>()
  readonly #known = new Map<string, number>()

  enter(state: State): void {
    const key = `${state.last},${state.done.join()}`
    const cost = state.moved + state.owed
    const known = this.#known.get(key)
    if (known !== undefined && known <= cost) return
    this.#known.set(key, cost)
    const alike = this.#lists.get(cost) ?? new Map<number, State[]>()
    const list = alike.get(state.count) ?? []
    list.push(state)
    alike.set(state.count, list)
    this.#lists.set(cost, alike)
  }

  next(): State | undefined {
    const least = Math.min(...this.#lists.keys())
    const alike = this.#lists.get(least)
    if (!alike) return undefined
    const furthest = Math.max(...alike.keys())
    const list = alike.get(furthest)!
    const state = list.pop()
    if (list.length === 0) alike.delete(furthest)
    if (alike.size === 0) this.#lists.delete(least)
    return state
  }
}

function movedIn(end: State): number[] {
  const moved: number[] = []
  for (let state: State | null = end; state; state = state.parent) if (state.isMoved) moved.push(state.op)
  return moved
}
