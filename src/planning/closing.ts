// Closes the needs of a problem, with the proof of every certain order. `close.ts` words the result; the search uses it as it is.
import { addAll, type BitSet, emptySet, hasBit, isEmpty, keepOnly, meets, membersOf, setOf, takeOut } from './bitSet.ts'
import type { Need, OpId, PlanningProblem } from './model/problem.ts'
import { lagConstraints } from './relations/lagConstraints.ts'
import { watch } from './search/timeIsUp.ts'

/** A relation of the problem that a conclusion rests on; a mode stands for the hands and the set-up it asks for. */
export interface Relation {
  readonly kind: 'need' | 'lag' | 'mode'
  readonly id: string
  readonly op: OpId
}

/** What a conclusion was made from: relations of the problem, and certain orders that were known by then. */
export interface Grounds {
  readonly relations: readonly Relation[]
  readonly orders: readonly (readonly [before: number, after: number])[]
}

/** `before` certainly comes before `after`, for one reason of its own (not by way of a third operation). */
export interface CertainOrder {
  readonly before: number
  readonly after: number
  readonly grounds: Grounds
  /** The need or lag whose reason tells it best. */
  readonly relation: Relation
}

export interface ClosedAlternative {
  readonly done: readonly number[]
  readonly notDone: readonly number[]
}

/** A need that is left after closing: more than one way of meeting it, or a member that is not certain. */
export interface ClosedNeed {
  readonly need: Need
  /** True when it was made from a need of another operation, to refuse a trap at the step that sets it. */
  readonly derivedFor: number | null
  readonly anyOf: readonly ClosedAlternative[]
}

export interface ClosedMode {
  /** Its place among the modes of the operation. */
  readonly place: number
  readonly needs: readonly ClosedNeed[]
}

export interface Closing {
  readonly problem: PlanningProblem
  readonly indexOf: ReadonlyMap<OpId, number>
  /** For each operation, all that certainly come before it, and after it. */
  readonly before: readonly BitSet[]
  readonly after: readonly BitSet[]
  /** In the order in which they were found. */
  readonly orders: readonly CertainOrder[]
  readonly needs: readonly (readonly ClosedNeed[])[]
  readonly modes: readonly (readonly ClosedMode[])[]
  /** What contradicts itself, when closing alone shows that there is no sequence. */
  readonly contradiction: Grounds | null
}

interface LiveAlternative {
  readonly done: readonly number[]
  readonly notDone: readonly number[]
  readonly doneFirst: BitSet
  readonly comesLater: BitSet
}

interface LiveNeed {
  readonly owner: number
  readonly need: Need
  readonly relation: Relation
  readonly derivedFor: number | null
  alternatives: LiveAlternative[]
  relations: Relation[]
  orders: (readonly [number, number])[]
}

interface LiveMode {
  readonly place: number
  readonly needs: LiveNeed[]
}

class Contradiction {
  readonly grounds: Grounds
  constructor(grounds: Grounds) {
    this.grounds = grounds
  }
}

const joinGrounds = (parts: readonly Grounds[]): Grounds => ({
  relations: [...new Set(parts.flatMap((part) => part.relations))],
  orders: parts.flatMap((part) => part.orders),
})

const MOST_COMBINED = 24
const NO_GROUNDS: Grounds = { relations: [], orders: [] }
const NO_RELATION: Relation = { kind: 'need', id: '', op: '' }

class Closer {
  readonly problem: PlanningProblem
  readonly size: number
  readonly indexOf = new Map<OpId, number>()
  readonly before: BitSet[]
  readonly after: BitSet[]
  readonly orders: CertainOrder[] = []
  readonly own: LiveNeed[][]
  readonly derived: LiveNeed[][]
  readonly modes: LiveMode[][]
  readonly fallenModes: Grounds[][]
  readonly options: ClosingOptions
  readonly #check: () => void
  changed = false

  constructor(problem: PlanningProblem, options: ClosingOptions) {
    this.#check = watch(options.late ?? (() => false))
    this.problem = problem
    this.size = problem.operations.length
    problem.operations.forEach((operation, at) => {
      this.indexOf.set(operation.id, at)
    })
    this.before = problem.operations.map(() => emptySet(this.size))
    this.after = problem.operations.map(() => emptySet(this.size))
    this.derived = problem.operations.map(() => [])
    this.fallenModes = problem.operations.map(() => [])
    this.own = problem.operations.map((operation, at) => operation.needs.map((need) => this.live(at, need)))
    this.modes = problem.operations.map((operation, at) =>
      operation.modes.flatMap((mode, place) => {
        if (mode.people > problem.people) {
          const relation: Relation = { kind: 'mode', id: mode.id, op: operation.id }
          this.fallenModes[at]!.push({ relations: [relation], orders: [] })
          return []
        }
        if (options.hasMode?.(at, place) === false) return []
        return [{ place, needs: mode.needs.map((need) => this.live(at, need)) }]
      }),
    )
    this.options = options
  }

  live(owner: number, need: Need): LiveNeed {
    const relation: Relation = { kind: 'need', id: need.id, op: this.problem.operations[owner]!.id }
    const alternatives = need.anyOf.map(({ done, notDone }) =>
      this.alternative(
        done.map((id) => this.indexOf.get(id)!),
        notDone.map((id) => this.indexOf.get(id)!),
      ),
    )
    return { owner, need, relation, derivedFor: null, alternatives, relations: [relation], orders: [] }
  }

  alternative(done: readonly number[], notDone: readonly number[]): LiveAlternative {
    return { done, notDone, doneFirst: setOf(this.size, done), comesLater: setOf(this.size, notDone) }
  }

  orderByLags(): void {
    for (const { later, earlier, least_s, lag } of lagConstraints(this.problem, this.indexOf)) {
      const relation: Relation = { kind: 'lag', id: lag.id, op: lag.to.op }
      const grounds: Grounds = { relations: [relation], orders: [] }
      if (later === earlier) {
        if (least_s > 0) throw new Contradiction(grounds)
        continue
      }
      // Were `later` first, start(later) − start(earlier) would be at most −(its own duration).
      if (least_s > -this.problem.operations[later]!.duration_s.usual) this.order(earlier, later, grounds, relation)
    }
  }

  /** Learns that `before` comes first; finds the circle when that cannot be. */
  order(before: number, after: number, grounds: Grounds, relation: Relation): void {
    if (before === after) throw new Contradiction(grounds)
    if (hasBit(this.before[after]!, before)) return
    if (hasBit(this.before[before]!, after)) {
      throw new Contradiction({ relations: grounds.relations, orders: [...grounds.orders, [after, before]] })
    }
    this.#check()
    this.changed = true
    this.orders.push({ before, after, grounds, relation })
    const earlier = [before, ...membersOf(this.before[before]!)]
    const later = [after, ...membersOf(this.after[after]!)]
    const allEarlier = setOf(this.size, earlier)
    const allLater = setOf(this.size, later)
    spread(this.before, later, allEarlier)
    spread(this.after, earlier, allLater)
  }

  /** Widens an alternative by what is certain; returns the grounds on which it falls, or null while it stands. */
  fall(owner: number, alternative: LiveAlternative): (readonly [number, number])[] | null {
    for (const op of alternative.done) addAll(alternative.doneFirst, this.before[op]!)
    for (const op of alternative.notDone) addAll(alternative.comesLater, this.after[op]!)
    const ownerLate = this.before[owner]!
    const ownerEarly = this.after[owner]!
    const doneBy = (op: number): (readonly [number, number])[] =>
      alternative.done.includes(op)
        ? []
        : [[op, alternative.done.find((done) => hasBit(this.before[done]!, op))!] as const]
    const keptBy = (op: number): (readonly [number, number])[] =>
      alternative.notDone.includes(op)
        ? []
        : [[alternative.notDone.find((later) => hasBit(this.after[later]!, op))!, op] as const]
    if (hasBit(alternative.doneFirst, owner)) return doneBy(owner)
    for (const op of membersOf(alternative.comesLater)) {
      if (hasBit(ownerLate, op)) return [...keptBy(op), [op, owner]]
      if (hasBit(alternative.doneFirst, op)) return [...keptBy(op), ...doneBy(op)]
    }
    if (meets(alternative.doneFirst, ownerEarly)) {
      const op = membersOf(alternative.doneFirst).find((done) => hasBit(ownerEarly, done))!
      return [...doneBy(op), [owner, op]]
    }
    return null
  }

  /** Lets alternatives fall; false when none is left. */
  thin(live: LiveNeed): boolean {
    live.alternatives = live.alternatives.filter((alternative) => {
      const orders = this.fall(live.owner, alternative)
      if (orders) live.orders.push(...orders)
      return orders === null
    })
    return live.alternatives.length > 0
  }

  certainIn(live: LiveNeed, side: 'doneFirst' | 'comesLater'): BitSet {
    const certain = live.alternatives[0]![side].slice()
    for (const alternative of live.alternatives) keepOnly(certain, alternative[side])
    return certain
  }

  groundsFor(live: LiveNeed, op: number, side: 'doneFirst' | 'comesLater'): Grounds {
    const support = live.alternatives.flatMap((alternative): (readonly [number, number])[] => {
      const named = side === 'doneFirst' ? alternative.done : alternative.notDone
      if (named.includes(op)) return []
      return side === 'doneFirst'
        ? [[op, named.find((done) => hasBit(this.before[done]!, op))!]]
        : [[named.find((later) => hasBit(this.after[later]!, op))!, op]]
    })
    return { relations: live.relations, orders: [...live.orders, ...support] }
  }

  /** The members of `certain` that are news, those first that bring others with them. */
  learn(owner: number, certain: BitSet, side: 'doneFirst' | 'comesLater', teach: (op: number) => void): void {
    const known = side === 'doneFirst' ? this.before[owner]! : this.after[owner]!
    for (;;) {
      const news = certain.slice()
      takeOut(news, known)
      const members = membersOf(news).filter((op) => op !== owner)
      if (members.length === 0) return
      const rest = setOf(this.size, members)
      const reach = side === 'doneFirst' ? this.after : this.before
      teach(members.find((op) => !meets(reach[op]!, rest)) ?? members[0]!)
    }
  }

  closeNeed(live: LiveNeed): void {
    if (!this.thin(live)) throw new Contradiction({ relations: live.relations, orders: live.orders })
    const { owner, relation } = live
    this.learn(owner, this.certainIn(live, 'doneFirst'), 'doneFirst', (op) => {
      this.order(op, owner, this.groundsFor(live, op, 'doneFirst'), relation)
    })
    this.learn(owner, this.certainIn(live, 'comesLater'), 'comesLater', (op) => {
      this.order(owner, op, this.groundsFor(live, op, 'comesLater'), relation)
    })
  }

  closeModes(owner: number): void {
    this.modes[owner] = this.modes[owner]!.filter((mode) => {
      const fallen = mode.needs.find((live) => !this.thin(live))
      if (fallen) this.fallenModes[owner]!.push({ relations: fallen.relations, orders: fallen.orders })
      return fallen === undefined
    })
    const modes = this.modes[owner]!
    if (modes.length === 0) throw new Contradiction(joinGrounds(this.fallenModes[owner]!))
    for (const side of ['doneFirst', 'comesLater'] as const) {
      const certain = this.certainInMode(modes[0]!, side)
      for (const mode of modes) keepOnly(certain, this.certainInMode(mode, side))
      this.learn(owner, certain, side, (op) => {
        const telling = modes.map((mode) => mode.needs.find((live) => hasBit(this.certainIn(live, side), op))!)
        const grounds = joinGrounds([
          ...telling.map((live) => this.groundsFor(live, op, side)),
          ...this.fallenModes[owner]!,
        ])
        const relation = telling[0]!.relation
        if (side === 'doneFirst') this.order(op, owner, grounds, relation)
        else this.order(owner, op, grounds, relation)
      })
    }
  }

  certainInMode(mode: LiveMode, side: 'doneFirst' | 'comesLater'): BitSet {
    const certain = emptySet(this.size)
    for (const live of mode.needs) addAll(certain, this.certainIn(live, side))
    return certain
  }

  closeCertain(): void {
    do {
      this.changed = false
      for (let owner = 0; owner < this.size; owner++) {
        this.#check()
        for (const live of this.own[owner]!) this.closeNeed(live)
        for (const live of this.derived[owner]!) this.closeNeed(live)
        this.closeModes(owner)
      }
    } while (this.changed)
  }

  /**
   * Conditional traps: x may be done only while the owner is done or one of the alternatives without x is still open.
   * Several modes, each with its needs, are combined as long as that stays small.
   */
  derive(): void {
    for (const list of this.derived) list.length = 0
    for (let owner = 0; owner < this.size; owner++) {
      this.#check()
      for (const live of this.own[owner]!) this.deriveFrom(owner, [[live]], live)
      const modes = this.modes[owner]!
      if (modes.length === 1) for (const live of modes[0]!.needs) this.deriveFrom(owner, [[live]], live)
      else if (modes.every((mode) => mode.needs.length > 0)) {
        this.deriveFrom(
          owner,
          modes.map((mode) => mode.needs),
          modes[0]!.needs[0]!,
        )
      }
    }
  }

  deriveFrom(owner: number, ways: readonly (readonly LiveNeed[])[], first: LiveNeed): void {
    const blockers = emptySet(this.size)
    for (const way of ways)
      for (const live of way) for (const { notDone } of live.alternatives) addAll(blockers, setOf(this.size, notDone))
    takeOut(blockers, this.after[owner]!)
    for (const blocker of membersOf(blockers)) {
      if (blocker === owner) continue
      const open = ways.flatMap((way) => this.openAfter(owner, blocker, way))
      if (open.length > MOST_COMBINED || open.some((members) => members.length === 0)) continue
      const grounds = joinGrounds([
        ...ways.flat().map((live) => ({ relations: live.relations, orders: live.orders })),
        ...(ways.length > 1 ? this.fallenModes[owner]! : []),
      ])
      this.derived[blocker]!.push({
        owner: blocker,
        need: first.need,
        relation: first.relation,
        derivedFor: owner,
        alternatives: [this.alternative([owner], []), ...open.map((members) => this.alternative([], members))],
        relations: [...grounds.relations],
        orders: [...grounds.orders],
      })
    }
  }

  /** What must not be done yet, in each combination of alternatives that is left once `blocker` is done. */
  openAfter(owner: number, blocker: number, way: readonly LiveNeed[]): number[][] {
    let combined: BitSet[] = [emptySet(this.size)]
    for (const live of way) {
      const left = live.alternatives.filter(({ comesLater }) => !hasBit(comesLater, blocker))
      combined = combined.flatMap((set) =>
        left.map(({ notDone }) => {
          const joined = setOf(this.size, notDone)
          takeOut(joined, this.after[owner]!)
          addAll(joined, set)
          return joined
        }),
      )
      if (combined.some(isEmpty)) combined = [emptySet(this.size)]
      if (combined.length > MOST_COMBINED) return [[]]
    }
    return combined.map((set) => membersOf(set).filter((op) => op !== owner))
  }

  closeAll(): void {
    let known = -1
    const { useLags = true, orders = [] } = this.options
    if (useLags) this.orderByLags()
    for (const { before, after } of orders) this.order(before, after, NO_GROUNDS, NO_RELATION)
    this.closeCertain()
    while (known !== this.orders.length) {
      known = this.orders.length
      this.derive()
      this.closeCertain()
    }
    this.noteShortcuts()
  }

  /** Orders that a need says itself are kept even where they follow from others, so that the shortest chain can be told. */
  noteShortcuts(): void {
    const noted = new Set(this.orders.map(({ before, after }) => before * this.size + after))
    const note = (before: number, after: number, { relations, orders, relation }: LiveNeed) => {
      if (noted.has(before * this.size + after)) return
      noted.add(before * this.size + after)
      this.orders.push({ before, after, grounds: { relations, orders }, relation })
    }
    for (const list of this.own) {
      for (const live of list) {
        const [first, ...others] = live.alternatives
        for (const op of first!.done) if (others.every(({ done }) => done.includes(op))) note(op, live.owner, live)
        for (const op of first!.notDone)
          if (others.every(({ notDone }) => notDone.includes(op))) note(live.owner, op, live)
      }
    }
  }

  /** What is left of a need once all that is certain anyway is dropped; null when it holds always. */
  left(live: LiveNeed): ClosedNeed | null {
    const anyOf: ClosedAlternative[] = []
    for (const { done, notDone } of live.alternatives) {
      const alternative = {
        done: done.filter((op) => !hasBit(this.before[live.owner]!, op)),
        notDone: notDone.filter((op) => !hasBit(this.after[live.owner]!, op)),
      }
      if (alternative.done.length + alternative.notDone.length === 0) return null
      anyOf.push(alternative)
    }
    return { need: live.need, derivedFor: live.derivedFor, anyOf }
  }

  result(contradiction: Grounds | null): Closing {
    const leftOf = (list: readonly LiveNeed[]) => list.flatMap((live) => this.left(live) ?? [])
    return {
      problem: this.problem,
      indexOf: this.indexOf,
      before: this.before,
      after: this.after,
      orders: this.orders,
      needs: this.own.map((list, owner) => (contradiction ? [] : leftOf([...list, ...this.derived[owner]!]))),
      modes: this.modes.map((modes) =>
        modes.map(({ place, needs }) => ({ place, needs: contradiction ? [] : leftOf(needs) })),
      ),
      contradiction,
    }
  }
}

/** Adds `more` to the sets of these operations; where it is small, few words have to be looked at. */
function spread(sets: readonly BitSet[], ops: readonly number[], more: BitSet): void {
  const words: number[] = []
  for (let word = 0; word < more.length; word++) if (more[word] !== 0) words.push(word)
  for (const op of ops) for (const word of words) sets[op]![word]! |= more[word]!
}

export interface ClosingOptions {
  /** @throws TimeIsUp when this says so */
  readonly late?: () => boolean
  /** Lags give certain orders too, unless they are left out (as when sequences are counted). */
  readonly useLags?: boolean
  /** Orders that are known from elsewhere. */
  readonly orders?: readonly { readonly before: number; readonly after: number }[]
  /** Modes that may still be used, by operation and place. */
  readonly hasMode?: (op: number, place: number) => boolean
}

/** Closes the needs of a valid problem. */
export function closing(problem: PlanningProblem, options: ClosingOptions = {}): Closing {
  const closer = new Closer(problem, options)
  try {
    closer.closeAll()
    return closer.result(null)
  } catch (thrown) {
    if (!(thrown instanceof Contradiction)) throw thrown
    return closer.result(thrown.grounds)
  }
}
