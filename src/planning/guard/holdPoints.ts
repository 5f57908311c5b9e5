// Where to stop and look on a sequence, so that faults cost the least that can be expected.
import { choicesOf } from '../explain/trial.ts'
import type { OpId, PlanningProblem } from '../model/problem.ts'
import type { PlacedStep } from '../model/sequence.ts'
import { standsOn, undoSeconds } from '../relations/standsOn.ts'
import { placeHolds } from './placeHolds.ts'

/** A number that is known or half known: `low` and `high` are the same where it is known. */
export interface Range {
  readonly low: number
  readonly high: number
}

/** What may be wrong with one operation once it is done. */
export interface Fault {
  /** That it was not done right, 0 to 1. */
  readonly chance: Range
  /** Seconds to look whether it was. */
  readonly look_s: Range
  /** Seconds that the fault costs when nobody found it before the end; missing: those of the way back from the end of the sequence. */
  readonly late_s?: Range
}

export interface HoldOptions {
  /** What is told of operations, beside their `check`. */
  readonly faults?: ReadonlyMap<OpId, Fault>
  /** Taken for operations of which nothing is told; they are listed. Without it they are left out, and listed as well. */
  readonly assumed?: Fault
  /** Seconds that each stop takes whatever is looked at. */
  readonly stop_s?: number
}

export interface HoldPoint {
  /** The stop comes after this operation, at this place of the sequence (from 1). */
  readonly after: OpId
  readonly place: number
  /** What is looked at there. */
  readonly looksAt: readonly OpId[]
  /** Seconds that the stop saves, to be expected, beside doing all without it. */
  readonly saves_s: Range
  /** False where it is worth its time only in a part of what is half known. */
  readonly certain: boolean
}

export interface HoldPlan {
  readonly holds: readonly HoldPoint[]
  /** Seconds of looking and of setting right to be expected, with these stops and with none. */
  readonly expected_s: Range
  readonly withoutHolds_s: Range
  /** Stops that would be worth it at the bad end of what is half known and are not among `holds`. */
  readonly perhaps: readonly { readonly after: OpId; readonly place: number }[]
  /** Operations of whose faults nothing is told. */
  readonly notKnown: readonly OpId[]
}

/**
 * The stops with the least seconds to be expected, for the middle of what is half known; with the ends, so that it can be seen which
 * stops hang on what is not known. Exact: dynamic programming over the last stop.
 *
 * A fault that is found at a stop costs undoing and doing again the operation and all that stands on it by then; where a point of
 * no return stands on it, as much as at the end. At a stop only that is looked at whose looking is worth it; looking always finds
 * the fault, and one fault does not hide another.
 *
 * @param sequence every operation once, with its mode, such as the steps of `plan`
 * @example holdPoints(problem, plan(problem).steps).notKnown   // ['float', 'seal']
 */
export function holdPoints(
  problem: PlanningProblem,
  sequence: readonly Pick<PlacedStep, 'op' | 'mode'>[],
  { faults = new Map(), assumed, stop_s = 0 }: HoldOptions = {},
): HoldPlan {
  const choices = choicesOf(problem, sequence)
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const notKnown: OpId[] = []
  const line = choices.map(({ op }, place): Watched | null => {
    const { check } = operations.get(op)!
    const told = faults.get(op)
    const known =
      told ?? (check && { chance: same(check.faultChance), look_s: same(check.cost), late_s: same(check.lateCost) })
    if (!known) notKnown.push(op)
    const fault = known ?? assumed
    if (!fault) return null
    const back: number[] = []
    let fromEnd = 0
    for (let upTo = place; upTo < choices.length; upTo++) {
      const off = standsOn(problem, choices, { from: place, upTo })
      const isFinal = off.some((at) => at !== place && operations.get(choices[at]!.op)!.noReturn !== undefined)
      const seconds = off.reduce((sum, at) => {
        const operation = operations.get(choices[at]!.op)!
        return sum + undoSeconds(operation) + operation.duration_s.usual
      }, 0)
      fromEnd = seconds
      back[upTo] = isFinal ? Number.POSITIVE_INFINITY : seconds
    }
    // Where a point of no return lies on the way, new parts come on top of these seconds.
    return { fault, back, late_s: fault.late_s ?? same(fromEnd) }
  })

  const middle = ({ low, high }: Range) => (low + high) / 2
  const low = ({ low: value }: Range) => value
  const high = ({ high: value }: Range) => value
  const cases = {
    middle: new Costs(line, stop_s, { chance: middle, look: middle, late: middle }),
    least: new Costs(line, stop_s, { chance: low, look: low, late: low }),
    most: new Costs(line, stop_s, { chance: high, look: high, late: high }),
    calm: new Costs(line, stop_s, { chance: low, look: high, late: low }),
    wary: new Costs(line, stop_s, { chance: high, look: low, late: high }),
  }
  const chosen = cases.middle.best()
  const calm = new Set(cases.calm.best())
  const wary = cases.wary.best()
  const range = (at: readonly number[]): Range => ({ low: cases.least.cost(at), high: cases.most.cost(at) })
  return {
    holds: chosen.map((place, index): HoldPoint => {
      const without = chosen.filter((other) => other !== place)
      const saved = Object.values(cases).map((costs) => costs.cost(without) - costs.cost(chosen))
      return {
        after: choices[place - 1]!.op,
        place,
        looksAt: cases.middle.lookedAt(chosen[index - 1] ?? 0, place).map((at) => choices[at]!.op),
        saves_s: { low: Math.min(...saved), high: Math.max(...saved) },
        certain: calm.has(place) && wary.includes(place),
      }
    }),
    expected_s: range(chosen),
    withoutHolds_s: range([]),
    perhaps: wary.filter((place) => !chosen.includes(place)).map((place) => ({ after: choices[place - 1]!.op, place })),
    notKnown,
  }
}

const same = (value: number): Range => ({ low: value, high: value })

interface Watched {
  readonly fault: Fault
  /** Seconds to set it right when it is found after each place from its own on; infinite behind a point of no return. */
  readonly back: readonly number[]
  readonly late_s: Range
}

/** Which value of a range is taken. */
type Taken = (range: Range) => number

/** The costs of stops for one value of all that is half known. */
class Costs {
  readonly #line: readonly (Watched | null)[]
  readonly #stop_s: number
  readonly #take: { readonly chance: Taken; readonly look: Taken; readonly late: Taken }

  constructor(
    line: readonly (Watched | null)[],
    stop_s: number,
    take: { readonly chance: Taken; readonly look: Taken; readonly late: Taken },
  ) {
    this.#line = line
    this.#stop_s = stop_s
    this.#take = take
  }

  #late({ fault, late_s }: Watched): number {
    return this.#take.chance(fault.chance) * this.#take.late(late_s)
  }

  /** Looked at when the stop after `next` steps comes; the fault found is set right at once. */
  #found(watched: Watched, next: number): number {
    const { fault, back, late_s } = watched
    const way = back[next - 1]!
    const cost = Number.isFinite(way) ? way : this.#take.late(late_s)
    return this.#take.look(fault.look_s) + this.#take.chance(fault.chance) * cost
  }

  lookedAt(last: number, next: number): number[] {
    const places: number[] = []
    for (let at = last; at < next; at++) {
      const watched = this.#line[at]
      if (watched && this.#found(watched, next) < this.#late(watched)) places.push(at)
    }
    return places
  }

  stretch(last: number, next: number | null): number {
    let cost = next === null ? 0 : this.#stop_s
    for (let at = last; at < (next ?? this.#line.length); at++) {
      const watched = this.#line[at]
      if (!watched) continue
      const late = this.#late(watched)
      cost += next === null ? late : Math.min(late, this.#found(watched, next))
    }
    return cost
  }

  /** Without a stop where nothing would be looked at. */
  best(): number[] {
    const { at } = placeHolds(this.#line.length, (last, next) => this.stretch(last, next))
    return at.filter((place, index) => this.lookedAt(at[index - 1] ?? 0, place).length > 0)
  }

  cost(at: readonly number[]): number {
    const stops = at.reduce((sum, place, index) => sum + this.stretch(at[index - 1] ?? 0, place), 0)
    return stops + this.stretch(at.at(-1) ?? 0, null)
  }
}
