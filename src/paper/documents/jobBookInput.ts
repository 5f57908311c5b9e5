// What a job book is made from. Plain data; nothing is worked out here that the job room works out.
import type { AsBuilt } from '../../job/model/asBuilt.ts'
import type { KitLine } from '../../job/model/kit.ts'
import type { Tried } from '../../job/model/tried.ts'
import type { Verdicts } from '../../job/model/verdict.ts'
import type { WorkUp } from '../../job/workUp.ts'
import type { PlanResult } from '../../planning/model/sequence.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Setting } from '../../unit/connections/kind.ts'

export interface JobBookInput {
  /** The unit as this job has it, its connections, what is left to do, what is not known. */
  readonly work: WorkUp
  readonly result: PlanResult
  readonly settings: readonly Setting[]
  readonly kit: readonly KitLine[]
  /** Missing where there is no job. */
  readonly verdicts?: Verdicts
  /** What the record has of the building; missing where the book is made from a file. */
  readonly built?: AsBuilt
  /** Small pictures by the hash of their photo: JPEG in base64. */
  readonly pictures?: ReadonlyMap<string, string>
  /** Tries and counted bolts of the record; missing where the book is made from a file. */
  readonly tried?: Tried
  readonly system: System
  /** As it is to be printed. */
  readonly date: string
  /** Who made the book. */
  readonly person?: string
  /** WOFF2 in base64; without them the reader's own fonts are used. */
  readonly fonts?: { readonly words: string; readonly figures: string }
  /** Fixes the paper; without it the printer's paper is taken. */
  readonly sheet?: 'A4' | 'letter'
}
