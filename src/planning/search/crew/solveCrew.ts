// The whole search for a crew: what is certain first, then schedules, then the proof where there is one.
import type { Closing } from '../../closing.ts'
import { closing } from '../../closing.ts'
import type { PlanningProblem } from '../../model/problem.ts'
import type { PlacedStep, Value } from '../../model/sequence.ts'
import { compareValues } from '../../relations/compareValues.ts'
import { instanceOf } from '../instance.ts'
import type { Step } from '../kernel.ts'
import { solve } from '../solve.ts'
import { TimeIsUp, whilePreparing } from '../timeIsUp.ts'
import { tripleOf } from '../tripleOf.ts'
import { changesBound, elapsedBound } from './crewBounds.ts'
import { huntListed } from './listHunt.ts'
import type { Schedule } from './listing.ts'
import { huntPacked } from './pack.ts'
import { type Packed, Packer } from './packing.ts'
import { apartPairs, canShare, orderPairs, type Spans, spansIn, spansOf } from './times.ts'
import { type Way, type Workshop, workshopOf } from './workshop.ts'

export interface CrewLimits {
  /** Placements of one operation that may be tried, proofs included. The same effort gives the same answer. */
  readonly effort: number
  readonly late: () => boolean
  /** Ends with the first schedule found, however good. */
  readonly anyWillDo?: boolean
  readonly onBetter?: (found: { value: Value | null; bound: Value; states: number }) => void
}

export interface CrewSolution {
  readonly value: Value | null
  readonly bound: Value
  /** Nothing better exists; without steps, nothing at all. */
  readonly proven: boolean
  readonly steps: readonly PlacedStep[] | null
  readonly states: number
}

/** A full search for a proof looks at whole matrices; above this many operations it is left out. */
const MOST_PROVEN = 60
/** The search for one person is not asked above this many operations, unless nothing else finds a schedule. */
const MOST_ORDERED = 400
/** The part of the effort that goes into proofs. */
const PROOFS = 0.25
/** What one look of a proof counts, in placements for each operation. */
const LOOK = 4

/** The closing has to be without contradiction. */
export function solveCrew(closed: Closing, limits: CrewLimits): CrewSolution {
  return new CrewSearch(closed, limits).run()
}

class CrewSearch {
  readonly closed: Closing
  readonly workshop: Workshop
  readonly limits: CrewLimits
  value: Value | null = null
  bound: Value = [0, 0, 0]
  steps: readonly PlacedStep[] | null = null
  /** Placements of the hunts, and what proofs and beginnings were worth beside them. */
  hunted = 0
  /** The least hazardous sequence of the operations one after another, without times. */
  safest: readonly Step[] | null = null
  looked = 0
  readonly #lateToPrepare: () => boolean

  constructor(closed: Closing, limits: CrewLimits) {
    this.closed = closed
    this.#lateToPrepare = whilePreparing(closed.problem.operations.length, limits.late)
    this.workshop = workshopOf(closed, this.#lateToPrepare)
    this.limits = limits
  }

  run(): CrewSolution {
    const { workshop, limits } = this
    const { anyWillDo = false } = limits
    const rough = spansOf(workshop)
    const pairs = rough?.times ? apartPairs(workshop) : []
    if (!rough || (rough.times && !orderPairs(rough.times, pairs))) return this.#nothing()
    const spans = rough.times ? spansIn(rough.times) : rough
    this.bound = [anyWillDo ? 0 : this.#leastHazard(), elapsedBound(workshop, spans), changesBound(workshop)]
    if (workshop.size === 0) {
      this.#take([0, 0, 0], [])
      return this.#answer()
    }
    if (!anyWillDo) this.#pressPairs(spans, pairs)
    const canProve = rough.times !== null && workshop.size <= MOST_PROVEN
    // A short proof that nothing can be done spares the search.
    if (canProve && this.#share(spans, pairs, null, limits.effort * PROOFS * 0.1) === 'no') return this.#nothing()
    let isNothing = false
    let proving = 0
    /** Looks for a proof with a part of what the search has been worth so far. */
    const prove = () => {
      if (!canProve || isNothing || this.#isProven) return
      const effort = Math.min(this.hunted, limits.effort) * PROOFS - proving
      const before = this.looked
      if (!this.steps) isNothing = this.#share(spans, pairs, null, effort) === 'no'
      else if (!anyWillDo) this.#prove(spans, pairs, effort)
      proving += this.looked - before
    }
    const effort = limits.effort * (canProve ? 1 - PROOFS : 1)
    this.#hunt(spans, { effort, prove, late: () => isNothing || limits.late() })
    prove()
    return isNothing ? this.#nothing() : this.#answer()
  }

  get #isProven(): boolean {
    return this.value !== null && compareValues(this.value, this.bound) <= 0
  }

  /** The least hazard of the operations done one after another: the turns and the modes are the same for a crew. */
  #leastHazard(): number {
    const { problem } = this.closed
    const operations = problem.operations.map((operation) => ({
      ...operation,
      duration_s: { low: 0, usual: 0, high: 0 },
      modes: operation.modes.map((mode) => ({
        ...mode,
        setup: { ...mode.setup, station: 'any', tools: 'any' as const },
      })),
    }))
    const hazardous =
      Object.values(problem.changes.turn).some(({ hazard }) => hazard > 0) ||
      problem.operations.some(({ modes }) => modes.some(({ hazard = 0 }) => hazard > 0))
    if (!hazardous) return 0
    const ofModes = this.workshop.ways.reduce((sum, list) => sum + Math.min(...list.map(({ hazard }) => hazard)), 0)
    if (operations.length > MOST_ORDERED) return ofModes
    const bare: PlanningProblem = {
      ...problem,
      operations,
      lags: [],
      changes: { ...problem.changes, station_s: 0, workpiece_s: 0, tools_s: 0 },
    }
    return (
      this.#inTime((late) => {
        const instance = instanceOf(closing(bare, { late }), late)
        const limits = { effort: this.limits.effort * 0.05, late: this.limits.late }
        const { boundKey, states, steps } = solve(instance, limits)
        this.looked += states
        this.safest = steps
        return tripleOf(instance, boundKey)[0]
      }) ?? ofModes
    )
  }

  /** What a preparation comes to; null where the time is up before. */
  #inTime<T>(prepare: (late: () => boolean) => T): T | null {
    try {
      return prepare(this.#lateToPrepare)
    } catch (thrown) {
      if (!(thrown instanceof TimeIsUp)) throw thrown
      return null
    }
  }

  /** Raises the bound as long as the pairs that cannot go on at once leave no way of ending by it. */
  #pressPairs({ times }: Spans, pairs: readonly (readonly [number, number])[]): void {
    if (!times || pairs.length === 0 || times.size > MOST_PROVEN) return
    let step = 1
    let known = this.bound[1]
    for (let tries = 0; tries < 40; tries++) {
      const trial = times.copy()
      const end_s = known + step - 1
      if (trial.endBy(end_s) && orderPairs(trial, pairs)) {
        if (step === 1) break
        step = 1
        continue
      }
      known = end_s + 1
      step *= 2
    }
    this.bound = [this.bound[0], known, this.bound[2]]
  }

  /** Whether what is scarce can be shared so that all ends by a second; null asks for any time. */
  #share(spans: Spans, pairs: readonly (readonly [number, number])[], end_s: number | null, effort: number) {
    const times = spans.times!.copy()
    if (end_s !== null && !times.endBy(end_s)) return 'no'
    const looks = Math.ceil(effort / (LOOK * this.workshop.size))
    const budget = { left: looks, late: this.limits.late }
    const answer = canShare(times, this.workshop.resources, { pairs, budget })
    this.looked += (looks - budget.left) * LOOK * this.workshop.size
    if (typeof answer !== 'string') this.#takeShared(answer)
    return answer
  }

  /** Where nothing else matters than what is shared, starts that share it are a schedule. */
  #takeShared(starts: Int32Array): void {
    const { ways, durations, needs, hasChanges } = this.workshop
    const isAll =
      !hasChanges &&
      needs.every((list) => list.length === 0) &&
      ways.every((list) => list.length === 1 && list[0]!.team.length === 0 && list[0]!.needs.length === 0)
    if (!isAll) return
    const end_s = starts.reduce((end, start, op) => Math.max(end, start + durations[op]!), 0)
    this.#takePacked({ starts, ways: ways.map(([way]) => way!), end_s })
  }

  #prove(spans: Spans, pairs: readonly (readonly [number, number])[], effort: number): void {
    const [hazard, elapsed_s] = this.value!
    if (hazard > this.bound[0]) return
    for (let end_s = elapsed_s - 1; end_s >= this.bound[1]; end_s = this.value![1] - 1) {
      const answer = this.#share(spans, pairs, end_s, effort * 0.5)
      if (answer === 'no') {
        this.#raise(end_s + 1)
        return
      }
      if (answer === 'not known' || this.value![1] > end_s) break
    }
    let left = effort * 0.5
    while (left > 0 && this.bound[1] < this.value![1]) {
      const before = this.looked
      if (this.#share(spans, pairs, this.bound[1], left) !== 'no') return
      this.#raise(this.bound[1] + 1)
      left -= this.looked - before + 1
    }
  }

  #hunt(spans: Spans, { effort, prove, late }: { effort: number; prove: () => void; late: () => boolean }): void {
    const { workshop, limits } = this
    const { anyWillDo = false } = limits
    if (anyWillDo && this.steps) return
    const pauseAfter = (earlier: number) => (made: number) => {
      this.hunted = earlier + made
      prove()
    }
    const isPacked =
      !workshop.hasChanges &&
      workshop.needs.every((needs) => needs.length === 0) &&
      workshop.ways.every((list) => list.every(({ needs }) => needs.length === 0))
    if (isPacked) {
      const arcs = workshop.hasTies && spans.times ? spans.times.arcs() : workshop.arcs
      this.hunted = huntPacked(
        workshop,
        { tails: spans.tails, arcs },
        {
          effort,
          late,
          bound_s: () => this.bound[1],
          pause: pauseAfter(0),
          anyWillDo,
          onBetter: (packed) => this.#takePacked(packed),
        },
      )
      if (this.steps) return
    }
    const packed = this.hunted
    const listed = huntListed(workshop, spans.tails, {
      effort,
      late,
      pause: pauseAfter(packed),
      anyWillDo,
      beginnings: () => this.#beginnings(effort),
      isBest: ({ hazard, elapsed_s, changes }) => compareValues([hazard, elapsed_s, changes], this.bound) <= 0,
      onBetter: (schedule) => this.#takeSchedule(schedule),
    })
    this.hunted = packed + listed
  }

  /** The least hazardous sequence, and the first that one person would find. */
  #beginnings(effort: number): (readonly Step[])[] {
    const safest = this.safest ? [this.safest] : []
    if (this.workshop.size > MOST_ORDERED && (this.steps || this.limits.late())) return safest
    const { crew: _, ...alone } = this.closed.problem
    for (const problem of alone.lags.length > 0 ? [alone, { ...alone, lags: [] }] : [alone]) {
      const steps = this.#inTime((late) => {
        const closed = closing(problem, { late })
        if (closed.contradiction) return null
        const limits = { effort: effort * 0.1, late: this.limits.late, anyWillDo: true, firstWidth: 6 }
        const found = solve(instanceOf(closed, late), limits)
        this.looked += found.states
        return found.steps
      })
      if (steps) return [...safest, steps]
    }
    return safest
  }

  #takePacked({ starts, ways, end_s }: Packed): void {
    const { workshop } = this
    // What takes no time goes before what begins in the same second, unless it has to come after.
    const rank = Float64Array.from(starts, (start, op) => start + (workshop.durations[op]! > 0 ? 0.5 : 0))
    const list = [...new Packer(workshop).order(rank)].map((op) => ways[op]!)
    const hazard = ways.reduce((sum, way) => sum + way.hazard, 0)
    this.#takeSchedule({ list, starts, hazard, elapsed_s: end_s, changes: 0 })
  }

  #takeSchedule({ list, starts, hazard, elapsed_s, changes }: Schedule): void {
    const { operations, crew = [] } = this.closed.problem
    const step = ({ op, place, team }: Way): PlacedStep => ({
      op: operations[op]!.id,
      mode: operations[op]!.modes[place]!.id,
      start_s: starts[op]!,
      end_s: starts[op]! + this.workshop.durations[op]!,
      people: team.map((person) => crew[person]!.id),
    })
    this.#take([hazard, elapsed_s, changes], list.map(step))
  }

  #take(value: Value, steps: readonly PlacedStep[]): void {
    if (this.value && compareValues(this.value, value) <= 0) return
    this.value = value
    this.steps = steps
    this.#tell()
  }

  /** Nothing ends sooner than this. */
  #raise(elapsed_s: number): void {
    this.bound = [this.bound[0], elapsed_s, this.bound[2]]
    this.#tell()
  }

  #tell(): void {
    const { value, bound } = this
    const states = this.hunted + this.looked
    this.limits.onBetter?.({ value, bound: value ? this.#leastOf(value) : bound, states })
  }

  #leastOf(value: Value): Value {
    return compareValues(value, this.bound) < 0 ? value : this.bound
  }

  #nothing(): CrewSolution {
    return { value: null, bound: this.bound, proven: true, steps: null, states: this.hunted + this.looked }
  }

  #answer(): CrewSolution {
    const { value, steps } = this
    const states = this.hunted + this.looked
    const isProven = this.#isProven
    return { value, bound: isProven ? value! : this.bound, proven: isProven, steps, states }
  }
}
