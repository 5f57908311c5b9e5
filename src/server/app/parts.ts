// What a server is made of. `main` chooses; tests hand in other parts.
import type { Journal } from '../../journal/journal.ts'
import type { Files } from '../../stores/files/files.ts'
import type { Gate } from '../shop/gate.ts'
import type { ShopBook } from '../shop/shopBook.ts'
import type { Work } from '../work/work.ts'
import type { Measures } from './measures.ts'

export interface Parts {
  readonly journal: Journal
  readonly files: Files
  readonly book: ShopBook
  readonly gate: Gate
  readonly work: Work
  readonly measures: Measures
  /** The folder of the built app; null where there is none. */
  readonly webRoot: string | null
  /** The folder of the job books. */
  readonly booksIn: string
  readonly now: () => number
}

/**
 * Through which door people come in.
 *
 * own machine: plain http on the loopback address; who sits there keeps the shop and needs no account.
 * shop: https on the shop's network, or plain behind a proxy that speaks https; devices are enrolled and people sign in.
 */
export type Door =
  | { readonly kind: 'own machine' }
  | { readonly kind: 'shop'; readonly names: readonly string[]; readonly behindProxy: boolean }
