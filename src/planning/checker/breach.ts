// What the checker finds wrong with a sequence.
import type { OpId } from '../model/problem.ts'

export type BreachKind =
  | 'unknown operation'
  | 'done twice'
  | 'missing operation'
  | 'unknown mode'
  | 'people'
  | 'machine'
  | 'need'
  | 'never right after'
  | 'not whole seconds'
  | 'duration'
  | 'too early'
  | 'lag'
  | 'value'
  | 'tries'

/** One rule of the contract that is broken. */
export interface Breach {
  readonly kind: BreachKind
  /** The operation that breaks it; left out where the whole sequence does. */
  readonly op?: OpId
  /** The need, lag or mode that is broken. */
  readonly id?: string
  /** One sentence for people. */
  readonly says: string
}
