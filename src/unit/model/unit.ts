// The unit model: what a rebuilder has written down about one kind of unit. Everything but names may be missing.

import type { Known, Standing } from '../../quantity/known.ts'
import type { Kilogram, Metre, Second } from '../../quantity/quantity.ts'

export type { Known }

/** Where something was written: one-based line and column of the unit file. */
export interface At {
  readonly line: number
  readonly column: number
}

export type PartId = string
export type LineId = string
export type OpeningId = string
export type AttitudeId = string
/** The two ends of a line: `-` where its positions grow smaller, `+` where they grow. */
export type End = '-' | '+'
export type JoinedPlace = 'on the bench' | 'in the housing'

/**
 * One ring of a part on a line. Diameters, and distances from the datum face. A missing value was not measured.
 * `inside` 0 is solid; `outside` 'endless' is a wall, seen only from its own line.
 */
export interface Ring {
  readonly from?: Known<Metre>
  readonly to?: Known<Metre>
  readonly outside?: Known<Metre> | 'endless'
  readonly inside?: Known<Metre>
  /** What kind of ring it is, where that says how it is drawn or what it may meet. */
  readonly teeth?: boolean
}

export interface Line {
  readonly id: LineId
  readonly at: At
  /** Where the line stands, looking along it: to the right and up. Missing: not measured. */
  readonly place?: { readonly y: Known<Metre>; readonly z: Known<Metre> }
  /** Words for the - end and the + end. */
  readonly ends: readonly [minus: string, plus: string]
  readonly datum?: string
  /** The stacking list from the - end to the + end, where it was given without sizes. */
  readonly stack: readonly PartId[]
}

/** "P passes S" or "P does not pass S", said by a person; it wins over sizes. */
export interface Passing {
  readonly at: At
  readonly line: LineId
  readonly mover: PartId
  readonly past: PartId
  readonly passes: boolean
  readonly standing: Standing
}

export interface Opening {
  readonly id: OpeningId
  readonly at: At
  /** It is a hole in this part (a cover, say) and exists only where that part is. */
  readonly in?: PartId
  /** It lies across these lines at this end: what comes from that end comes through it. */
  readonly lines: readonly LineId[]
  readonly end?: End
  readonly size?: string
  /** The plane in which a split housing opens: bodies are laid in across it. */
  readonly split?: boolean
}

/** How a body gets home when it does not simply go along its line. */
export interface DeclaredWay {
  readonly at: At
  readonly path: 'along the line' | 'across the split' | 'tilt' | 'loop' | 'by hand'
  /** The opening it comes through. */
  readonly through?: OpeningId
  /** Only for 'along the line'. */
  readonly from?: End
  /** Parts that must not be in the housing meanwhile. */
  readonly clear: readonly PartId[]
  readonly joined?: JoinedPlace
  /** It is parked first and brought home by the step of this part. */
  readonly homeWith?: PartId
  /** What holds it while it is parked: a hand, a wire, a strap, a prop. Missing with `resting`: nothing is needed. */
  readonly heldBy?: string
  /** Parked, it lies by itself: the housing may not be turned, but no hand is taken. */
  readonly resting?: string
  /** Where it is parked, from its home place: to the right and up. Missing: at home on its line. */
  readonly parkedAt?: { readonly y: Metre; readonly z: Metre }
  readonly why?: string
}

/** A straight column that hand, tool or eye wants free from `x` to an end: a screw head and its wrench. */
export interface Column {
  readonly at: At
  readonly line: LineId
  /** From the line: to the right and up. */
  readonly y: Metre
  readonly z: Metre
  readonly diameter: Metre
  readonly x: Metre
  readonly from: End
  readonly for: string
}

/**
 * Where a part stands when its rings are written in its own measure: its `face` meets the face `at` of another part, `gap` apart (a squeezed
 * gasket). Each is a size along the line or the name of a feature; missing: not measured, and then the position is not known.
 */
export interface Stand {
  readonly face: Known<Metre> | string | undefined
  readonly at: Known<Metre> | string | undefined
  readonly against: PartId
  /** Something lies between the faces; `gap` is how much, when that is known. */
  readonly apart: boolean
  readonly gap: Known<Metre> | string | undefined
}

/** A limit of a feature, new or worn, with where it comes from. */
export interface Limit {
  readonly low?: Metre
  readonly high?: Metre
  readonly standing: Standing
  readonly source?: string
}

/** A measurable size of a part: a bore, a journal, a width. */
export interface Feature {
  readonly id: string
  readonly at: At
  readonly what?: string
  readonly size?: Known<Metre>
  readonly limitNew?: Limit
  readonly limitWorn?: Limit
}

/** A step of its own that follows a part's step: bend a tab, feel for the seat when cold. */
export interface Follow {
  readonly id: string
  readonly at: At
  readonly does: string
  readonly takes?: Known<Second>
  readonly tools: readonly string[]
  readonly reach: readonly OpeningId[]
  /** Why it cannot be taken back without harm or new parts. */
  readonly noReturn?: string
}

export interface Part {
  readonly id: PartId
  readonly at: At
  /** How many pieces stand under this name; they go in one step. */
  readonly pieces: number
  readonly material?: string
  /** Of all the pieces together. */
  readonly mass?: Known<Kilogram>
  readonly life?: 'renew' | 'inspect' | 'keep'
  readonly from?: string
  readonly price?: string
  readonly lead?: string
  readonly number?: string
  readonly note?: string
  /** How it is drawn and hatched. */
  readonly look?: 'casting' | 'shaft' | 'gear' | 'bearing' | 'ring' | 'seal' | 'key' | 'fastener' | 'gasket' | 'sheet'

  /** The one part that it goes onto. */
  readonly onto?: PartId
  /** Bench or housing, said by a person; missing: whichever its way allows. */
  readonly joined?: JoinedPlace
  /** Its connection to what it goes onto, in one word; the full form stands under `connections`. */
  readonly kind?: string
  /** It has no step of its own but goes in with the step of this part (gasket, shim, screws). */
  readonly goesWith?: PartId

  readonly rings: ReadonlyMap<LineId, readonly Ring[]>
  /** Its shape while it is sprung or driven. */
  readonly passing: ReadonlyMap<LineId, readonly Ring[]>
  /** Half a ring: open towards the split. */
  readonly half?: 'lower' | 'upper'
  /** Cut flat towards another line, so far from its own. */
  readonly flat: readonly { readonly line: LineId; readonly distance: Known<Metre> }[]
  readonly end?: End
  readonly ways: readonly DeclaredWay[]

  /** Its position from its seats; empty: its rings are written from the datum face. */
  readonly stands: readonly Stand[]
  /** Faces it stands against: the named part cannot pass it. */
  readonly seats: readonly PartId[]
  readonly slidesOn: readonly PartId[]
  readonly meshes: readonly PartId[]
  readonly keys: readonly PartId[]
  readonly runsOn: readonly PartId[]
  /** Blind: finger in groove, dog, pin in slot. The named part has to be home first. */
  readonly engages: readonly PartId[]
  /** While the two come together, somebody watches through the opening. */
  readonly watched: readonly { readonly meets: PartId; readonly through: OpeningId }[]

  readonly closes: readonly OpeningId[]
  readonly reach: readonly OpeningId[]
  readonly columns: readonly Column[]
  /** In the housing, but loose until these are done: the housing is not turned meanwhile. */
  readonly looseUntil: readonly string[]
  readonly tool?: { readonly name: string; readonly line: LineId; readonly rings: readonly Ring[] }

  readonly features: readonly Feature[]
  readonly takes?: Known<Second>
  readonly tools: readonly string[]
  readonly follows: readonly Follow[]
  readonly cautions: readonly string[]
  /** Only in these variants; empty: in all. */
  readonly variants: readonly string[]
}

/** A connection in full: a kind and what that kind asks for. The kinds read `given` themselves. */
export interface Connection {
  readonly id: string
  readonly at: At
  readonly kind: string
  readonly given: Readonly<Record<string, unknown>>
  /** Where each value of `given` was written; read with `placeOf`. */
  readonly places?: ReadonlyMap<string, At>
  readonly variants: readonly string[]
}

export interface Check {
  readonly id: string
  readonly at: At
  readonly does?: string
  readonly wants: readonly string[]
  readonly without: readonly string[]
  readonly reach: readonly OpeningId[]
  /** A trial: these parts are put home for the reading and come off again; their final step comes later. */
  readonly trial: readonly PartId[]
  /** Made on this body, on the bench, before it moves. */
  readonly onBench?: PartId
  readonly limit?: {
    readonly text: string
    readonly low?: number
    readonly high?: number
    readonly unit: string
    readonly standing: Standing
    readonly source?: string
  }
  /** The loop or setting that this check settles. */
  readonly settles?: string
  readonly takes?: Known<Second>
  readonly tools: readonly string[]
  readonly variants: readonly string[]
}

export interface Fill {
  readonly id: string
  readonly at: At
  readonly what?: string
  readonly through?: OpeningId
  readonly above: readonly OpeningId[]
  readonly after: readonly string[]
  readonly takes?: Known<Second>
  readonly litres?: number
  readonly variants: readonly string[]
}

/** So many people at once, among them somebody with each of these skills. */
export interface Hands {
  readonly at: At
  readonly people: number
  readonly skills: readonly string[]
}

/** Relations and steps that a person adds by hand. */
export interface AddedStep {
  readonly id: string
  readonly at: At
  readonly does: string
  readonly after: readonly string[]
  readonly before: readonly string[]
  readonly why?: string
  readonly standing: Standing
  readonly takes?: Known<Second>
  readonly tools: readonly string[]
  readonly reach: readonly OpeningId[]
  readonly variants: readonly string[]
}

/** "A before B", said by a person about steps that are there anyway. */
export interface AddedOrder {
  readonly at: At
  readonly first: string
  readonly then: string
  readonly why?: string
  readonly standing: Standing
}

/** A clock between two steps: at least, at most. */
export interface Clock {
  readonly id: string
  readonly at: At
  readonly from: { readonly step: string; readonly edge: 'start' | 'end' }
  readonly to: { readonly step: string; readonly edge: 'start' | 'end' }
  readonly least?: Second
  readonly most?: Second
  readonly why?: string
  readonly standing: Standing
  readonly source?: string
}

/** What the record of a step wants beside the name of the one who did it. */
export interface SignOff {
  readonly step: string
  readonly at: At
  /** Somebody else looks and signs too. */
  readonly secondPerson: boolean
  /** What a photo has to show, taken before the step is signed. */
  readonly photo?: string
  readonly why?: string
  readonly standing: Standing
  readonly source?: string
}

export interface Variant {
  readonly id: string
  readonly at: At
  /** Serial numbers, both included; missing: not by serial. */
  readonly serials?: { readonly low?: number; readonly high?: number }
  readonly marks?: string
}

export interface Unit {
  readonly schema: 'unit/1'
  readonly file: string
  readonly name: string
  readonly about?: string
  readonly invented: boolean
  readonly revision?: string
  /** The unit that a bare length takes. */
  readonly lengthUnit: 'mm' | 'in'
  /** How well every size is known that says nothing itself. */
  readonly sizesStanding: Standing
  readonly sizesSource?: string
  readonly housing: PartId
  readonly lines: ReadonlyMap<LineId, Line>
  readonly passings: readonly Passing[]
  readonly openings: ReadonlyMap<OpeningId, Opening>
  readonly parts: ReadonlyMap<PartId, Part>
  readonly connections: ReadonlyMap<string, Connection>
  readonly checks: ReadonlyMap<string, Check>
  readonly fills: ReadonlyMap<string, Fill>
  /** How the housing lies for a step; what is not named does not care. */
  readonly lies: ReadonlyMap<string, AttitudeId>
  /** What a step wants of people; what is not named wants one, of any skill. */
  readonly hands: ReadonlyMap<string, Hands>
  readonly addedSteps: ReadonlyMap<string, AddedStep>
  readonly addedOrders: readonly AddedOrder[]
  /** Steps that a person took out, with why. */
  readonly dropped: ReadonlyMap<string, string>
  readonly clocks: readonly Clock[]
  /** By the step that wants it. */
  readonly signOffs: ReadonlyMap<string, SignOff>
  readonly sets: ReadonlyMap<string, { readonly parts: readonly PartId[]; readonly why?: string }>
  readonly variants: readonly Variant[]
  readonly turning?: { readonly takes: Second; readonly hazard: number }
}
