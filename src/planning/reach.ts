// The cheapest way from what is done back to one operation, and forward again.
//
// An operation can be undone when it could have been the last one done: its own `undo.needs` hold, or, where none are told, its
// bodily needs (geometry, connection) hold without it and nothing that is done leans on it. Needs of the process keep no part in
// place: what they bind becomes void and has to be done again; unless it is a check, it has to be undone for that.
import { Problem } from '../problem/problem.ts'
import { canBeDone } from './canBeDone.ts'
import type { Need, Operation, OpId, PlanningProblem } from './model/problem.ts'
import type { PlanResult } from './model/sequence.ts'
import { plan } from './plan.ts'
import { needHolds } from './relations/needs.ts'
import { restOf } from './restOf.ts'
import { assertValid } from './validate.ts'

export interface Reach {
  /** Operations to undo, in order. */
  readonly undo: readonly OpId[]
  /** Checks that the undoing makes void: they have to be done again. */
  readonly voids: readonly OpId[]
  /** What has to be renewed. */
  readonly renews: readonly string[]
  /** Undone operations that cannot be taken back without new parts or harm, with the reason told. */
  readonly noReturn: readonly { readonly op: OpId; readonly says: string }[]
  /** Seconds of undoing and of doing again; set-ups and waiting are not counted. */
  readonly cost_s: number
  /** No way costs less than this; equal to `cost_s` when the way is proven the cheapest. */
  readonly bound_s: number
  /** How to do what is then left, from there to the end. */
  readonly rebuild: PlanResult
}

export interface ReachOptions {
  /** What is done; all operations when left out. */
  readonly done?: Iterable<OpId>
  /** Ways that may be looked at. */
  readonly effort?: number
  readonly late?: () => boolean
}

const USUAL_EFFORT = 5_000
const REBUILD_EFFORT = 100_000

/**
 * The cheapest set of operations to undo so that `wanted` is undone and all can be done again from there.
 * Undoing lasts as long as doing where `undo` does not say (common practice, no source).
 *
 * @returns null when there is no way back, or none was found within the effort
 * @throws PLANNING_NOT_DONE when `wanted` is not done; PLANNING_… when the problem is not valid
 * @example reach(problem, 'float')?.undo   // ['seal', 'float']
 */
export function reach(problem: PlanningProblem, wanted: OpId, options: ReachOptions = {}): Reach | null {
  assertValid(problem)
  const { effort = USUAL_EFFORT, late = () => false } = options
  const done = new Set(options.done ?? problem.operations.map(({ id }) => id))
  if (!done.has(wanted)) throw new Problem('PLANNING_NOT_DONE', { id: wanted })
  const build = new Build(problem, done, wanted)
  return (
    search(build, problem, { effort, late, direct: true }) ?? search(build, problem, { effort, late, direct: false })
  )
}

/**
 * The cheapest set of operations to undo so that all can be done from there, when what was done out of turn shuts the way to the
 * end; nothing to undo where it does not.
 *
 * @returns null when there is no way back, or none was found within the effort
 * @throws PLANNING_UNKNOWN_OPERATION; PLANNING_… when the problem is not valid
 * @example takeBack(problem, ['seal'])?.rebuild.steps.map(({ op }) => op)   // ['float']
 */
export function takeBack(
  problem: PlanningProblem,
  done: Iterable<OpId>,
  { effort = USUAL_EFFORT, late = () => false }: Omit<ReachOptions, 'done'> = {},
): Reach | null {
  assertValid(problem)
  const built = new Set(done)
  for (const id of built) {
    if (!problem.operations.some((operation) => operation.id === id)) {
      throw new Problem('PLANNING_UNKNOWN_OPERATION', { where: 'What is done', id })
    }
  }
  return search(new Build(problem, built, null), problem, { effort, late, direct: false })
}

interface SearchLimits {
  readonly effort: number
  readonly late: () => boolean
  /** Undo at once, and one at a time, what has to be undone for certain: no choice, so nothing to branch on. */
  readonly direct: boolean
}

function search(build: Build, problem: PlanningProblem, { effort, late, direct }: SearchLimits): Reach | null {
  const queue: Way[] = [build.way([])]
  const seen = new Set<string>()
  let bound_s = 0
  for (let looked = 0; queue.length > 0 && looked < 2 * effort && !late(); looked++) {
    // In the second half of the effort any way is welcome: those that are nearest to their end come first.
    const inHaste = looked >= effort
    const way = takeBest(queue, inHaste)
    if (!inHaste) bound_s = Math.max(bound_s, way.least_s)
    if (way.isThere) {
      const rest = restOf(problem, build.standing(way))
      if (canBeDone(rest, { effort: REBUILD_EFFORT, late }).answer === 'yes') {
        const rebuild = plan(rest, { effort: REBUILD_EFFORT })
        return build.result(build.inReverse(way, rebuild), Math.min(bound_s, way.cost_s), rebuild)
      }
    }
    const open = build.undoable(way)
    const certain = direct ? open.filter((id) => way.forced.has(id)).slice(0, 1) : []
    for (const id of certain.length > 0 ? certain : open) {
      const undone = [...way.undone, id]
      const key = [...undone].sort().join('\n')
      if (seen.has(key)) continue
      seen.add(key)
      queue.push(build.way(undone))
    }
  }
  return null
}

/** Some operations undone, in order. */
interface Way {
  readonly undone: readonly OpId[]
  readonly voids: ReadonlySet<OpId>
  /** What is undone and what has to be undone besides for certain. */
  readonly forced: ReadonlySet<OpId>
  /** Whether nothing more has to be undone for certain. */
  readonly isThere: boolean
  readonly cost_s: number
  /** The cost with all that has to be undone for certain, and the cheapest of each choice that is still to be made. */
  readonly least_s: number
  readonly toGo: number
}

function takeBest(queue: Way[], inHaste: boolean): Way {
  const isBetter = (one: Way, other: Way): boolean => {
    const [cost, goal] = [one.least_s - other.least_s, one.toGo - other.toGo]
    return inHaste ? (goal || cost) < 0 : (cost || goal) < 0
  }
  let best = 0
  for (let place = 1; place < queue.length; place++) if (isBetter(queue[place]!, queue[best]!)) best = place
  const [way] = queue.splice(best, 1)
  return way!
}

const isBodily = ({ reason }: Need): boolean => reason.origin === 'geometry' || reason.origin === 'connection'

/** The needs that an operation had in whatever mode: its own, and those of its mode when it has but one. */
const needsOf = ({ needs, modes }: Operation): readonly Need[] =>
  modes.length === 1 ? [...needs, ...modes[0]!.needs] : needs

/** Whether a need cannot have been met without `on`: every alternative whose operations are done names it. */
function leansOn(need: Need, on: OpId, isDone: (op: OpId) => boolean): boolean {
  const usable = need.anyOf.filter((alternative) => alternative.done.every(isDone))
  return usable.length > 0 && usable.every((alternative) => alternative.done.includes(on))
}

class Build {
  readonly problem: PlanningProblem
  readonly done: ReadonlySet<OpId>
  /** Null when any undoing will do that lets all be done from there. */
  readonly wanted: OpId | null
  readonly operations: ReadonlyMap<OpId, Operation>
  readonly relevant: ReadonlySet<OpId>

  constructor(problem: PlanningProblem, done: ReadonlySet<OpId>, wanted: OpId | null) {
    this.problem = problem
    this.done = done
    this.wanted = wanted
    this.operations = new Map(
      problem.operations.filter(({ id }) => done.has(id)).map((operation) => [operation.id, operation]),
    )
    this.relevant = wanted === null ? done : this.#relevantTo(wanted)
  }

  way(undone: readonly OpId[]): Way {
    const gone = new Set(undone)
    const forced = this.#forced(gone)
    const voids = this.#voids(gone)
    const certain = this.#voids(forced)
    const choices = this.#choices({ gone, forced, voids: certain })
    return {
      undone,
      voids,
      forced,
      isThere: forced.size === gone.size,
      cost_s: this.#cost(gone, voids),
      least_s: this.#cost(forced, certain) + choices.least_s,
      toGo: forced.size - gone.size + choices.open,
    }
  }

  /** What still counts as done on a way. */
  standing({ undone, voids }: Way): OpId[] {
    return [...this.done].filter((id) => !voids.has(id) && !undone.includes(id))
  }

  /** Operations that may be undone next, among those that can matter. */
  undoable({ undone }: Way): OpId[] {
    const gone = new Set(undone)
    const stands = (op: OpId) => this.done.has(op) && !gone.has(op)
    return [...this.relevant].filter((id) => {
      if (gone.has(id)) return false
      const operation = this.operations.get(id)!
      const { undo } = operation
      if (undo && undo.needs.length > 0) return undo.needs.every((need) => needHolds(need, stands))
      const others = (op: OpId) => op !== id && stands(op)
      if (!needsOf(operation).every((need) => !isBodily(need) || needHolds(need, others))) return false
      return ![...this.operations.values()].some((other) => others(other.id) && this.#standsOn(other, id, stands))
    })
  }

  /** The same operations undone in the reverse of the order in which they go together again, where that can be. */
  inReverse(way: Way, { steps }: PlanResult): Way {
    const order = steps.map(({ op }) => op).reverse()
    const undone: OpId[] = []
    for (const id of order.filter((op) => way.undone.includes(op))) {
      if (!this.undoable(this.way(undone)).includes(id)) return way
      undone.push(id)
    }
    return undone.length === way.undone.length ? { ...way, undone } : way
  }

  result(way: Way, bound_s: number, rebuild: PlanResult): Reach {
    const undone = way.undone.map((id) => this.operations.get(id)!)
    return {
      undo: way.undone,
      voids: [...way.voids].filter((id) => !way.undone.includes(id)),
      renews: [...new Set(undone.flatMap(({ undo }) => undo?.renews ?? []))],
      noReturn: undone.flatMap(({ id, noReturn }) => (noReturn === undefined ? [] : [{ op: id, says: noReturn }])),
      cost_s: way.cost_s,
      bound_s,
      rebuild,
    }
  }

  /** Whether an operation keeps another from being undone by standing on it. */
  #standsOn(operation: Operation, on: OpId, stands: (op: OpId) => boolean): boolean {
    return needsOf(operation).some((need) => isBodily(need) && leansOn(need, on, stands))
  }

  #cost(gone: ReadonlySet<OpId>, voids: ReadonlySet<OpId>): number {
    let cost = 0
    for (const id of gone) {
      const { duration_s, undo } = this.operations.get(id)!
      cost += (undo?.duration_s ?? duration_s).usual + duration_s.usual
    }
    for (const id of voids) if (!gone.has(id)) cost += this.operations.get(id)!.duration_s.usual
    return cost
  }

  /** What has to be done again because of the operations undone: told, or bound to them by the process. */
  #voids(gone: ReadonlySet<OpId>): Set<OpId> {
    const voids = new Set<OpId>()
    const isDone = (op: OpId) => this.done.has(op)
    const open = [...gone]
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      const from = id
      const told = this.operations.get(from)!.undo?.voids ?? []
      const bound = [...this.operations.values()].filter((other) =>
        needsOf(other).some((need) => !isBodily(need) && leansOn(need, from, isDone)),
      )
      for (const op of [...told, ...bound.map((other) => other.id)]) {
        if (!this.done.has(op) || voids.has(op) || op === from) continue
        voids.add(op)
        open.push(op)
      }
    }
    return voids
  }

  /** `gone` and all that has to be undone with it for certain, if the wanted operation is to be done again. */
  #forced(gone: ReadonlySet<OpId>): Set<OpId> {
    const forced = new Set(this.wanted === null ? gone : [...gone, this.wanted])
    for (let again = true; again; ) {
      again = false
      const stands = (op: OpId) => this.done.has(op) && !gone.has(op)
      const add = (id: OpId) => {
        if (!this.done.has(id) || forced.has(id)) return
        forced.add(id)
        again = true
      }
      const voids = this.#voids(forced)
      // What is only read is done again as it stands; anything else has to be undone before it is done again.
      for (const id of voids) {
        const { check, undo } = this.operations.get(id)!
        if (!check || undo) add(id)
      }
      for (const id of [...forced]) {
        const operation = this.operations.get(id)!
        const own = operation.undo?.needs ?? []
        if (gone.has(id)) continue
        for (const { anyOf } of own) if (anyOf.length === 1) anyOf[0]!.notDone.forEach(add)
        if (own.length > 0) continue
        for (const other of this.operations.values()) {
          if (other.id !== id && stands(other.id) && this.#standsOn(other, id, stands)) add(other.id)
        }
      }
      // To be done again, an operation wants those away that it must not find done.
      for (const id of [...forced, ...voids]) {
        for (const { anyOf } of needsOf(this.operations.get(id)!)) {
          if (anyOf.length === 1) for (const early of anyOf[0]!.notDone) if (!voids.has(early)) add(early)
        }
      }
    }
    return forced
  }

  /**
   * What has to be undone in one of several ways: for each need that cannot hold as things stand, the least seconds of its
   * alternatives. Needs that share an operation with one taken before are left out, so that nothing is counted twice.
   */
  #choices({ gone, forced, voids }: { gone: ReadonlySet<OpId>; forced: ReadonlySet<OpId>; voids: ReadonlySet<OpId> }): {
    least_s: number
    open: number
  } {
    const stays = (op: OpId) => this.done.has(op) && !forced.has(op)
    const open: { least_s: number; ops: OpId[] }[] = []
    const look = ({ anyOf }: Need, isInTheWay: (op: OpId) => boolean) => {
      if (anyOf.length < 2) return
      const ways = anyOf.map(({ notDone }) => notDone.filter((op) => stays(op) && isInTheWay(op)))
      if (ways.some((ops) => ops.length === 0)) return
      open.push({ least_s: Math.min(...ways.map((ops) => this.#cost(new Set(ops), new Set()))), ops: ways.flat() })
    }
    for (const id of forced) {
      const { undo } = this.operations.get(id)!
      for (const need of gone.has(id) ? [] : (undo?.needs ?? [])) look(need, (op) => op !== id)
    }
    for (const id of [...forced, ...voids]) {
      for (const need of needsOf(this.operations.get(id)!)) look(need, (op) => !voids.has(op))
    }
    const used = new Set<OpId>()
    let least = 0
    for (const { least_s, ops } of open.sort((one, other) => other.least_s - one.least_s)) {
      if (ops.some((op) => used.has(op))) continue
      for (const op of ops) used.add(op)
      least += least_s
    }
    return { least_s: least, open: open.length }
  }

  /** Everything that may have to be undone on some way to the wanted operation. */
  #relevantTo(wanted: OpId): Set<OpId> {
    const relevant = new Set([wanted])
    const open = [wanted]
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      const operation = this.operations.get(id)!
      const own = operation.undo?.needs ?? []
      const named = new Set<OpId>(this.#voids(new Set([id])))
      for (const need of [...own, ...operation.needs, ...operation.modes.flatMap((mode) => mode.needs)]) {
        for (const { notDone } of need.anyOf) for (const op of notDone) named.add(op)
      }
      for (const other of this.operations.values()) {
        const names = needsOf(other).some((need) =>
          need.anyOf.some((alternative) => alternative.done.includes(operation.id)),
        )
        if (names) named.add(other.id)
      }
      for (const op of named) {
        if (!this.done.has(op) || relevant.has(op)) continue
        relevant.add(op)
        open.push(op)
      }
    }
    return relevant
  }
}
