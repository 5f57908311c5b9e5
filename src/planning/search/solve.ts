// Widening passes of the kernel until one drops nothing, the bound meets the value, or the effort is used up.
import type { Instance } from './instance.ts'
import { Kernel, type Step } from './kernel.ts'

export interface Limits {
  /** Labels that may be made, at least those of one narrow pass. The same effort gives the same answer. */
  readonly effort: number
  readonly late: () => boolean
  readonly onBetter?: (found: Progress) => void
  /** Ends with the first sequence found, however good. */
  readonly anyWillDo?: boolean
  /** Only for tests: without the reductions the answer is the same. */
  readonly reduce?: boolean
}

export interface Progress {
  readonly key: number | null
  readonly boundKey: number
  readonly width: number
  readonly states: number
}

export interface Solution extends Progress {
  readonly steps: readonly Step[] | null
  /** True when nothing better exists; without steps, when there is no sequence at all. */
  readonly proven: boolean
  readonly dropped: number
}

const FIRST_WIDTH = 24
const WIDER = 6

/** Searches an instance for its best sequence. */
export function solve(instance: Instance, limits: Limits): Solution {
  const kernel = new Kernel(instance, { reduce: limits.reduce ?? true })
  let key = Number.POSITIVE_INFINITY
  let steps: readonly Step[] | null = null
  let boundKey = kernel.rootKey
  let dropped = 0
  let width = FIRST_WIDTH
  let effort = limits.effort
  for (;;) {
    // The first pass always comes to its end, so that there is something to show for the smallest effort.
    const stop = { effort: width === FIRST_WIDTH ? Number.POSITIVE_INFINITY : effort, late: limits.late }
    const made = kernel.made
    const pass = kernel.pass(width, key, stop)
    effort -= kernel.made - made
    dropped = pass.dropped
    if (pass.found) {
      key = pass.found.key
      steps = pass.found.steps
    }
    boundKey = Math.max(boundKey, Math.min(key, pass.bound))
    const exact = pass.finished && pass.dropped === 0
    limits.onBetter?.({ key: steps ? key : null, boundKey, width, states: kernel.made })
    const enough = limits.anyWillDo === true && steps !== null
    if (enough || exact || boundKey >= key || effort <= 0 || !pass.finished || limits.late()) {
      return {
        key: steps ? key : null,
        boundKey,
        width,
        states: kernel.made,
        steps,
        proven: exact || boundKey >= key,
        dropped,
      }
    }
    width *= WIDER
  }
}
