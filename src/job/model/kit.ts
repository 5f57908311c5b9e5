// One line of the buying list.
import type { Standing } from '../../planning/model/problem.ts'
import type { PartId } from '../../unit/model/unit.ts'

/** In the order of the list; a part stands under the first that holds. */
export type KitGroup = 'rejected' | 'always renewed' | 'completes a set' | 'shims wanted' | 'consumables'

export interface KitLine {
  readonly group: KitGroup
  /** Missing for what is no part: oil, sealant, lock wire. */
  readonly part?: PartId
  /** As it is asked for over the counter. */
  readonly what: string
  /** Missing where nobody counted. */
  readonly pieces?: number
  /** Instead of pieces: `4.5 l`. */
  readonly amount?: string
  readonly why: readonly { readonly says: string; readonly standing: Standing; readonly source?: string }[]
  readonly number?: string
  readonly from?: string
  readonly price?: string
  readonly lead?: string
}
