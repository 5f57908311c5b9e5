// What the sequence engine answers.
import type { OpId, Reason } from './problem.ts'

/** (hazard, elapsed_s, changes): integers, compared in this order, smaller is better. */
export type Value = readonly [hazard: number, elapsed_s: number, changes: number]

/** One operation at its place. Times are whole seconds from the start of the work. */
export interface PlacedStep {
  readonly op: OpId
  readonly mode: string
  readonly start_s: number
  readonly end_s: number
}

/** A doubtful relation the result rests on, and whether the result changes when it is left out. */
export interface Assumption {
  readonly relation: string
  readonly reason: Reason
  readonly wouldChange: boolean | 'not tried'
}

/**
 * A member of an irreducible conflict: take any one out and the rest can be done. To take a mode out is to do it
 * with the hands that are there, its changes of set-up taking no time; its needs are members of their own.
 */
export interface ConflictMember {
  readonly kind: 'need' | 'lag' | 'mode'
  readonly id: string
  readonly op: OpId
  readonly reason: Reason
  readonly giveUp: number | 'never'
}

export interface Conflict {
  readonly members: readonly ConflictMember[]
  /** Ids of the members whose giving up is cheapest; giving up any one of them makes this conflict vanish. */
  readonly cheapest: readonly string[]
  /** False when the effort ran out before every member had been tried. */
  readonly irreducible: boolean
}

/** What one loop of a sequence takes for each further try. */
export interface LoopTry {
  readonly id: string
  /** What comes off and is done again, in order. */
  readonly again: readonly OpId[]
  /** What has to be renewed for each further try. */
  readonly renews: readonly string[]
  /** Operations among them that cannot be taken back without new parts or harm. */
  readonly noReturn: readonly OpId[]
  /** Seconds of one further try, changes of set-up included. */
  readonly try_s: number
}

/** The value of a sequence with the tries of its loops, for the low, usual and high number of them. */
export interface Tries {
  readonly low: Value
  readonly usual: Value
  readonly high: Value
  readonly loops: readonly LoopTry[]
}

export interface PlannedTries extends Tries {
  /** No sequence is better with usual tries. */
  readonly bound: Value
  readonly proven: boolean
}

export interface PlanResult {
  readonly value: Value | null
  /** No sequence is better than this; null where there is none at all. */
  readonly bound: Value | null
  /** No sequence is better than `value`, for what was told; false where there is no value. */
  readonly proven: boolean
  /** Whether anything can be done at all: 'no' is proven, and `conflict` says why; 'not known' when the effort ran out before. */
  readonly feasible: 'yes' | 'no' | 'not known'
  readonly steps: readonly PlacedStep[]
  readonly assumptions: readonly Assumption[]
  readonly conflict: Conflict | null
  /** Where the problem has loops and a sequence was found. */
  readonly tries?: PlannedTries
  readonly effort: { readonly states: number; readonly width: number; readonly dropped: number }
}
