// The whole search: narrow passes for a first sequence, windows to better it, then widening passes until one drops nothing, the
// bound meets the value, or the effort is used up.
import type { Instance } from './instance.ts'
import { Kernel, type Pass, type Step } from './kernel.ts'
import { tighten } from './tighten.ts'
import { tripleOf } from './tripleOf.ts'
import { improve } from './windows.ts'

export interface Limits {
  /** Labels that may be made, beside those of the first narrow passes. The same effort gives the same answer. */
  readonly effort: number
  readonly late: () => boolean
  readonly onBetter?: (found: Progress) => void
  /** Ends with the first sequence found, however good. */
  readonly anyWillDo?: boolean
  /** Only for tests: without the reductions the answer is the same, and from whatever width it starts. */
  readonly reduce?: boolean
  readonly firstWidth?: number
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
/** The part of the effort that goes into windows once the narrow passes have dropped something. */
const WINDOWS = 0.4

/** Searches an instance for its best sequence. */
export function solve(instance: Instance, limits: Limits): Solution {
  const { effort, late, anyWillDo = false, reduce = true, firstWidth = FIRST_WIDTH } = limits
  let kernel = new Kernel(instance, { reduce })
  const search = new Search(kernel, limits)
  // The first pass always comes to its end, so that there is something to show for the smallest effort.
  const unlimited = { effort: Number.POSITIVE_INFINITY, late: () => false }
  search.take(kernel.pass(firstWidth, search.key, { ...unlimited }), firstWidth)
  if (search.isOver || (anyWillDo && search.steps)) return search.solution()
  if (instance.bounds.length > 0) {
    const careful = kernel.pass(firstWidth, search.key, { ...unlimited }, { careful: true })
    search.better(careful)
    if (search.isOver || (anyWillDo && search.steps)) return search.solution()
  }
  const sharpen = () => {
    if (!reduce || !search.steps) return
    const sharper = search.sharpen(kernel)
    if (sharper) kernel = sharper
  }
  sharpen()
  if (search.isOver) return search.solution()
  const spent = kernel.made
  for (let width = firstWidth * WIDER, round = 0; ; width *= WIDER, round++) {
    const left = effort - (kernel.made - spent)
    if (left <= 0 || late()) return search.solution()
    if (round === 1 && search.steps) {
      const start = { key: search.key, steps: search.steps }
      const found = improve(kernel, start, { effort: left * WINDOWS, late, boundKey: search.boundKey })
      search.better({ found, bound: 0, dropped: 1, finished: false })
      if (search.isOver) return search.solution()
      sharpen()
      if (search.isOver) return search.solution()
    }
    const stop = { effort: effort - (kernel.made - spent), late }
    const pass = kernel.pass(width, search.key, stop)
    search.take(pass, width)
    if (search.isOver || !pass.finished || (anyWillDo && search.steps)) return search.solution()
  }
}

class Search {
  kernel: Kernel
  key = Number.POSITIVE_INFINITY
  steps: readonly Step[] | null = null
  boundKey: number
  width = FIRST_WIDTH
  dropped = 0
  exact = false
  readonly #onBetter: ((found: Progress) => void) | undefined

  constructor(kernel: Kernel, { onBetter }: Limits) {
    this.kernel = kernel
    this.boundKey = kernel.rootKey
    this.#onBetter = onBetter
  }

  /** Takes what a pass found; it may have been narrower than all sequences. */
  better({ found }: Pass): void {
    if (!found || found.key >= this.key) return
    this.key = found.key
    this.steps = found.steps
    this.#tell()
  }

  /** Takes what a whole pass found, and what it proves. */
  take(pass: Pass, width: number): void {
    this.better(pass)
    this.width = width
    this.dropped = pass.dropped
    this.exact = pass.finished && pass.dropped === 0
    this.boundKey = Math.max(this.boundKey, Math.min(this.key, pass.bound))
    this.#tell()
  }

  /** A kernel for only those sequences that may still be better, or null when nothing more is known of them. */
  sharpen({ instance }: Kernel): Kernel | null {
    const [hazard, elapsed] = tripleOf(instance, this.key)
    const [leastHazard, leastElapsed] = tripleOf(instance, this.boundKey)
    const tight = tighten(instance, { hazard, elapsed, leastHazard, leastElapsed })
    if (!tight) return null
    const kernel = new Kernel(tight)
    kernel.made = this.kernel.made
    this.kernel = kernel
    this.boundKey = Math.max(this.boundKey, Math.min(this.key, kernel.rootKey))
    this.#tell()
    return kernel
  }

  get isOver(): boolean {
    return this.exact || this.boundKey >= this.key
  }

  #tell(): void {
    const { key, boundKey, width, kernel } = this
    this.#onBetter?.({ key: this.steps ? key : null, boundKey: Math.min(key, boundKey), width, states: kernel.made })
  }

  solution(): Solution {
    const { key, boundKey, width, steps, dropped, kernel } = this
    return {
      key: steps ? key : null,
      boundKey: this.exact ? key : boundKey,
      width,
      states: kernel.made,
      steps,
      proven: this.isOver,
      dropped,
    }
  }
}
