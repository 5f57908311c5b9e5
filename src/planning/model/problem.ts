// What the sequence engine is told. Plain immutable data; the meaning of every field is in docs/reference/contract.md.

import type { Standing } from '../../quantity/known.ts'

export type OpId = string

export type Origin = 'geometry' | 'connection' | 'process' | 'author' | 'usual' | 'observed'

export type { Standing }

/** Why a relation holds. `says` is one sentence for people; `facts` carries what it was made from. */
export interface Reason {
  readonly code: string
  readonly says: string
  readonly facts: Readonly<Record<string, string | number | boolean | readonly string[]>>
  readonly origin: Origin
  readonly standing: Standing
  readonly source?: string
}

/** What it costs to give a relation up in a conflict; `never` where giving up would be dangerous or senseless. */
export type GiveUp = number | 'never'

/** Holds when everything in `done` is done and nothing in `notDone` is. */
export interface Alternative {
  readonly done: readonly OpId[]
  readonly notDone: readonly OpId[]
}

/** Judged at the moment its operation starts: at least one alternative has to hold. */
export interface Need {
  readonly id: string
  readonly anyOf: readonly Alternative[]
  readonly reason: Reason
  readonly giveUp: GiveUp
}

/** What has to be set up for a mode; `any` asks for nothing and changes nothing. */
export interface Setup {
  readonly workpiece: string | 'any'
  /** How that workpiece lies. Only read where `workpiece` is named. */
  readonly attitude: string | 'any'
  readonly station: string | 'any'
  /** The tools in hand, in any order; `any` leaves the hand as it is. */
  readonly tools: readonly string[] | 'any'
}

/** One way of doing an operation. */
export interface Mode {
  readonly id: string
  readonly setup: Setup
  /** Hands wanted at once, at least 1; with a crew 0 is what goes on by itself. */
  readonly people: number
  /** Each of these from at least one of the people at it; only with a crew. */
  readonly skills?: readonly string[]
  /** So many of each machine, from the start of the operation to its end. */
  readonly machines?: Readonly<Record<string, number>>
  readonly needs: readonly Need[]
  /** Integer, at least 0; summed into the first part of the objective. */
  readonly hazard?: number
}

/** Whole seconds, low ≤ usual ≤ high; planning uses `usual`. */
export interface Duration {
  readonly low: number
  readonly usual: number
  readonly high: number
}

export interface Operation {
  readonly id: OpId
  /** A short imperative sentence for people. */
  readonly does: string
  readonly duration_s: Duration
  readonly modes: readonly Mode[]
  readonly needs: readonly Need[]
  readonly undo?: {
    readonly duration_s: Duration
    readonly needs: readonly Need[]
    /** What has to be renewed when it is undone. */
    readonly renews: readonly string[]
    /** Operations that become void and have to be done again. */
    readonly voids: readonly OpId[]
  }
  /** The chance that it is not right once it is done, the seconds to look, the seconds that a fault costs which is found after the end. */
  readonly check?: { readonly faultChance: number; readonly cost: number; readonly lateCost: number }
  /** Doing it cannot be taken back without new parts or harm. */
  readonly noReturn?: string
}

export interface LagEvent {
  readonly op: OpId
  readonly edge: 'start' | 'end'
}

/** min_s ≤ time(to) − time(from) ≤ max_s, whole seconds, each optional, each may be negative. */
export interface Lag {
  readonly id: string
  readonly from: LagEvent
  readonly to: LagEvent
  readonly min_s?: number
  readonly max_s?: number
  readonly reason: Reason
  readonly giveUp: GiveUp
}

/** What is tried until it is right: all that stands on `first` comes off and is done again up to `last`. */
export interface Loop {
  readonly id: string
  readonly first: OpId
  readonly last: OpId
  /** How often it is done, whole, 1 ≤ low ≤ usual ≤ high. */
  readonly tries: { readonly low: number; readonly usual: number; readonly high: number }
  readonly reason: Reason
}

/** What a change of set-up costs. The first set-up of each thing is free. */
export interface ChangeCosts {
  /** Turning a workpiece over: seconds and hazard for each workpiece named; others cost 0 s and 0 hazard. */
  readonly turn: Readonly<Record<string, { readonly s: number; readonly hazard: number }>>
  readonly station_s: number
  readonly workpiece_s: number
  readonly tools_s: number
  readonly between?: Between
}

/** What it costs to do one operation right after another, beside the changes of set-up. */
export interface Between {
  /** The operations of the rows and columns, in their order. A pair with another operation costs nothing. */
  readonly ops: readonly OpId[]
  /** Whole seconds of doing the column right after the row; null where it may never come right after. */
  readonly s: readonly (readonly (number | null)[])[]
}

/** Where things stand before the first operation. */
export interface StartState {
  readonly attitudes: Readonly<Record<string, string>>
  readonly station?: string
  readonly workpiece?: string
  readonly tools?: readonly string[]
}

/** One of the people who do the work. */
export interface Person {
  readonly id: string
  readonly skills: readonly string[]
}

export interface PlanningProblem {
  readonly schema: 'matchmark-planning/1'
  readonly operations: readonly Operation[]
  readonly lags: readonly Lag[]
  readonly changes: ChangeCosts
  readonly start: StartState
  /** Hands available at once; without a crew, one person works who may call this many hands together. */
  readonly people: number
  /** The one to four people who work beside each other; `people` is their number. */
  readonly crew?: readonly Person[]
  /** How many there are of what is scarce: the press, the oven. */
  readonly machines?: Readonly<Record<string, number>>
  readonly loops?: readonly Loop[]
}
