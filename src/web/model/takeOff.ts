// What has to be taken apart before a setting can be tried again, as the sequence engine has it from what stands at the bench now.
import { reach } from '../../planning/reach.ts'
import type { Workings } from './workedJob.ts'

export interface TakeOff {
  /** In the order in which it comes off; what is made again afterwards, readings too. */
  readonly undo: readonly { readonly step: string; readonly does: string }[]
  /** What is wanted new for it. */
  readonly renews: readonly string[]
  /** What cannot be taken back without harm or new parts. */
  readonly noReturn: readonly string[]
}

/**
 * The cheapest way back to the step that the setting is made with.
 *
 * @param done the steps that stand now
 * @returns undefined where the step does not stand, or no way was found
 */
export function takeOff({ input }: Workings, first: string, done: readonly string[]): TakeOff | undefined {
  const { problem } = input.work
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const standing = done.filter((step) => operations.has(step))
  if (!standing.includes(first)) return undefined
  const way = reach(problem, first, { done: standing })
  if (!way) return undefined
  return {
    undo: [...way.undo, ...way.voids].map((step) => ({ step, does: operations.get(step)!.does })),
    renews: way.renews,
    noReturn: way.noReturn.map(({ says }) => says),
  }
}
