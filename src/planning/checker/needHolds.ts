// Contract, section 1: when a need holds.
import type { Need, OpId } from '../model/problem.ts'

/**
 * Whether a need holds for an operation that starts when exactly the operations in `before` have been done.
 * One person works, so what has started before has also ended.
 * @example needHolds({ anyOf: [{ done: ['float'], notDone: ['seal'] }] }, new Set(['float']))   // true
 */
export function needHolds({ anyOf }: Pick<Need, 'anyOf'>, before: ReadonlySet<OpId>): boolean {
  return anyOf.some(({ done, notDone }) => done.every((op) => before.has(op)) && notDone.every((op) => !before.has(op)))
}
