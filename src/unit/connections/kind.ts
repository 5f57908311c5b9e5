// The one shape of every kind of connection. To add a kind: copy the folder of the nearest one and name it in kinds.ts.
import type { z } from 'zod'
import type { Standing } from '../../planning/model/problem.ts'
import type { NewtonMetre, Second } from '../../quantity/quantity.ts'
import type { Connection, JoinedPlace, Known, OpeningId, PartId, Unit } from '../model/unit.ts'

/** How the file gives its sizes: the unit of a bare number, and how well they are known. */
export type Sizes = Pick<Unit, 'lengthUnit' | 'sizesStanding' | 'sizesSource'>

/** Something worth knowing, and what it holds up. `rank` 1 is asked first. */
export interface Question {
  readonly about: string
  readonly asks: string
  readonly holdsUp: string
  readonly rank: 1 | 2 | 3
}

/** A step that a connection brings along. It lies as the housing lies for the step of `as`, and reaches in where that does. */
export interface StepDraft {
  readonly id: string
  readonly does: string
  readonly as: PartId
  readonly takes: Known<Second>
  readonly tools: readonly string[]
  readonly station?: string
  readonly reach: readonly OpeningId[]
  /** It is done away from the workpiece (heating in the oven): nothing is set up for it. */
  readonly apart?: boolean
  readonly noReturn?: string
  /** Work inside this step, in order. */
  readonly within?: readonly string[]
}

/** "`then` only after `first`", with its reason. */
export interface OrderDraft {
  readonly first: string
  readonly then: string
  readonly says: string
  readonly standing: Standing
  readonly source?: string
}

export interface ClockDraft {
  readonly id: string
  readonly from: { readonly step: string; readonly edge: 'start' | 'end' }
  readonly to: { readonly step: string; readonly edge: 'start' | 'end' }
  readonly least_s?: number
  readonly most_s?: number
  readonly says: string
  readonly standing: Standing
  readonly source?: string
}

/** What is set, read and set again until it is right. */
export interface LoopDraft {
  readonly id: string
  /** The step that the setting is made with. */
  readonly first: string
  /** The check that reads it. */
  readonly last: string
  readonly tries: { readonly low: number; readonly usual: number; readonly high: number }
  readonly says: string
  readonly standing: Standing
  readonly source?: string
}

/** What a connection adds to the sequence. */
export interface Contribution {
  readonly steps: readonly StepDraft[]
  readonly orders: readonly OrderDraft[]
  readonly clocks: readonly ClockDraft[]
  readonly loops: readonly LoopDraft[]
  /** Work inside the step of a part: gasket on, screws in stages. In order. */
  readonly within: readonly { readonly part: PartId; readonly does: string }[]
  /** Steps without which the part is home but not fast. */
  readonly fast: readonly { readonly part: PartId; readonly steps: readonly string[] }[]
  /** Steps that belong to the closing of an opening by this part; the first of them shuts it. */
  readonly closing: readonly { readonly part: PartId; readonly steps: readonly string[] }[]
  /** Parts without a step of their own (gasket, shims, screws): they go in with the step of another. */
  readonly carried: readonly { readonly part: PartId; readonly withPart: PartId }[]
  /** Pairs that may touch or overlap when `mover` goes home on the other. */
  readonly mayOverlap: readonly { readonly mover: PartId; readonly other: PartId }[]
  /** Where the step of a part is done when it is joined at that place: a press for what is pressed on the bench. */
  readonly stations: readonly { readonly part: PartId; readonly station: string; readonly joined: JoinedPlace }[]
  /** Why the step of a part cannot be taken back without harm or new parts. */
  readonly noReturns: readonly { readonly part: PartId; readonly says: string }[]
  /** What has to be new when it was taken off; gathered from the kinds, which give it under `renewals`. */
  readonly renewals: readonly Renewal[]
}

export type FigureDimension =
  | 'length'
  | 'force'
  | 'torque'
  | 'pressure'
  | 'temperature'
  | 'temperature difference'
  | 'angle'
  | 'mass'
  | 'time'
  | 'number'

/** One figure of a setting, SI inside, with what it rests on and what judges it. */
export interface Figure {
  readonly label: string
  readonly dimension: FigureDimension
  readonly low: number
  readonly high: number
  readonly standing: Standing
  /** Worked out from the job's readings, from nominal sizes, or some of each. */
  readonly basis: 'readings' | 'nominal' | 'mixed' | 'table'
  readonly source: string
  readonly limit?: { readonly low?: number; readonly high?: number; readonly source: string }
  readonly verdict?: 'within' | 'out' | 'not known'
  readonly note?: string
}

/** What to set at one connection: figures, words, cautions; or what is missing to say it. */
export interface Setting {
  readonly connection: string
  readonly kind: string
  readonly title: string
  readonly figures: readonly Figure[]
  readonly says: readonly string[]
  readonly missing: readonly string[]
  readonly cautions: readonly string[]
}

export interface Renewal {
  readonly part: PartId
  readonly why: string
  readonly standing: Standing
  readonly source?: string
}

/** What the shop has, as far as settings need it. */
export interface ShopFacts {
  readonly shims: readonly {
    readonly id: string
    readonly for?: string
    readonly thickness: Known<number>
    readonly nominal?: number
  }[]
  readonly pressRating_N?: number
  readonly ovenUpTo_K?: number
  readonly roomTemperature_K: number
  /** Features (`part.feature`) that were measured in this job. */
  readonly measured: ReadonlySet<string>
}

/** A mark that a drawing puts at a connection. */
export interface DrawingMark {
  readonly at: PartId
  readonly mark: 'hole map' | 'lip' | 'joint line' | 'shim pack' | 'snap ring' | 'interference' | 'finger'
  readonly text: string
}

export interface HolePlace {
  readonly id: string
  readonly y: number
  readonly z: number
  readonly letter: string
}

/** A tightening map: places in metres, in their order, with stages. */
export interface HoleMap {
  readonly connection: string
  readonly holes: readonly HolePlace[]
  readonly order: readonly string[]
  readonly stages: readonly string[]
  /** The torque of each stage, N·m. */
  readonly torques: readonly Known<NewtonMetre>[]
  readonly lengths: readonly { readonly letter: string; readonly text: string; readonly pieces: number }[]
}

export interface Kind<Given> {
  readonly name: string
  /** One sentence for the reference page. */
  readonly about: string
  /** What the file gives, checked and in SI; a bare number takes the unit of the file's sizes. */
  given(sizes: Sizes): z.ZodType<Given>
  /** The parts it joins, for checks of names. */
  parts(given: Given): readonly PartId[]
  asks(connection: Connection, given: Given, unit: Unit): readonly Question[]
  steps(connection: Connection, given: Given, unit: Unit): Contribution
  settings(connection: Connection, given: Given, unit: Unit, shop: ShopFacts): readonly Setting[]
  /** Checks that prove it, in words. */
  checks(connection: Connection, given: Given): readonly string[]
  renewals(connection: Connection, given: Given, unit: Unit): readonly Renewal[]
  cautions(connection: Connection, given: Given): readonly string[]
  drawing(
    connection: Connection,
    given: Given,
    unit: Unit,
  ): { readonly marks: readonly DrawingMark[]; readonly maps: readonly HoleMap[] }
  /** How it is put together wrongly, and how that shows. */
  warnings(connection: Connection, given: Given, unit: Unit): readonly string[]
}
