// The job model: one customer's unit as its job file has it. Everything but the names may be missing.
import type { Standing } from '../../planning/model/problem.ts'
import type { Kelvin, Metre, Newton, NewtonMetre } from '../../quantity/quantity.ts'
import type { At, Known, PartId } from '../../unit/model/unit.ts'

/** One measurement of one feature. Further readings of the same feature stand beside it. */
export interface Reading {
  readonly at: At
  readonly part: PartId
  readonly feature: string
  /** Missing: it was tried and could not be read. */
  readonly reads?: Known<Metre>
  /** The instrument. */
  readonly with?: string
  readonly temperature?: Known<Kelvin>
  /** Where on the surface: `left end, across the keyway`. */
  readonly where?: string
  readonly by?: string
  readonly date?: string
}

/** A part as it came off. */
export interface AsFound {
  readonly part: PartId
  readonly at: At
  readonly where?: string
  readonly condition?: string
  readonly decision?: 'reuse' | 'repair' | 'renew'
}

export interface StockShim {
  readonly id: string
  readonly at: At
  readonly reads?: Known<Metre>
  readonly nominal?: Known<Metre>
  /** The part or connection that it is kept for. */
  readonly for?: string
}

export interface Instrument {
  readonly uncertainty?: Known<Metre>
  readonly due?: string
}

/** Who works on this job. Skills are the words that somebody gave them. */
export interface CrewMember {
  readonly name: string
  readonly skills: readonly string[]
}

/** What the shop has for this job. */
export interface Plant {
  /** Missing: nobody said. */
  readonly people?: number
  /** The people by name; `people` is their number. Missing where only a number is known. */
  readonly crew?: readonly CrewMember[]
  readonly room?: Known<Kelvin>
  readonly press?: { readonly rating?: Known<Newton> }
  readonly oven?: { readonly upTo?: Known<Kelvin> }
  readonly instruments: ReadonlyMap<string, Instrument>
  readonly wrenches: readonly { readonly name: string; readonly range?: Known<NewtonMetre> }[]
}

export interface Job {
  readonly schema: 'job/1'
  readonly file: string
  readonly id: string
  readonly invented: boolean
  /** The unit file, beside the job file. */
  readonly unit: string
  readonly serial?: string
  readonly variant?: string
  /** Where the serial or the variant stands in the file. */
  readonly variantAt: At
  readonly owner?: string
  readonly note?: string
  readonly lengthUnit: 'mm' | 'in'
  readonly sizesStanding: Standing
  readonly asFound: ReadonlyMap<PartId, AsFound>
  readonly readings: readonly Reading[]
  readonly shims: readonly StockShim[]
  readonly plant: Plant
  /** Steps that stand already. They are judged when all steps are known. */
  readonly done: readonly { readonly step: string; readonly at: At }[]
}
