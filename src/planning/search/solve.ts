// The whole search: narrow passes for a first sequence, windows to better it, then widening passes until one drops nothing, the
// bound meets the value, or the effort is used up.
import { addBit, emptySet, hasBit } from '../bitSet.ts'
import { AlikeBound } from './alike/alike.ts'
import { closingAlong, startedInTime } from './along.ts'
import { type Instance, instanceOf } from './instance.ts'
import { Kernel, type Pass, type Step } from './kernel.ts'
import { mayStart } from './mayStart.ts'
import { plainOf } from './plain/plainProblem.ts'
import { solvePlain } from './plain/solvePlain.ts'
import { tighten } from './tighten.ts'
import { TimeIsUp } from './timeIsUp.ts'
import { tripleOf } from './tripleOf.ts'
import { waitsOf } from './waits.ts'
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
  /** Only for tests: from how many operations on bodies that are alike are counted. */
  readonly alikeFrom?: number
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
/** Where clocks run into dead ends, they are started with more and more care. */
const CAREFUL = ['ready', 'one by one'] as const
/** Rounds of looking for orders that the least hazard makes certain. */
const ROUNDS = 4
/** Labels kept while clocks are fitted into an order. */
const LIFTED = 200
/** Smaller problems are done with sooner without the bound that counts alike bodies. */
const ALIKE_FROM = 36
/** Of two alike bodies the search finds out by itself. */
const FEWEST_ALIKE = 3
/** Its states are smaller work than labels; and so many are all that memory should be asked for. */
const ALIKE_EACH = 5
const MOST_ALIKE = 1_500_000
/** Bodies that are taken together for a first sequence, and labels kept along their order. */
const BATCH = 6
const BATCH_WIDTH = 4
/** In larger problems the orders that the least hazard makes certain are not looked for. */
const MOST_TIGHTENED = 2_000
const LARGE = 300
/** The first pass of a large problem is narrower: it looks at the square of the operations, for each label kept. */
const FIRST_SQUARES = 4_000_000
/** What is still done when the time is up takes about a second for so many operations and clocks. */
const MOST_ONE_BY_ONE = 1_000
/** The part of the effort that goes into windows once the narrow passes have dropped something. */
const WINDOWS = 0.4

/** Searches an instance for its best sequence. */
export function solve(instance: Instance, limits: Limits): Solution {
  const plain = limits.reduce === false ? null : plainOf(instance)
  if (plain) return solvePlain(instance, plain, limits)
  const search = new Search(new Kernel(instance, { reduce: limits.reduce ?? true }), limits)
  try {
    run(instance, search, limits)
  } catch (thrown) {
    if (!(thrown instanceof TimeIsUp)) throw thrown
  }
  if (!search.steps && !search.isOver) search.oneByOne()
  return search.solution()
}

function run(instance: Instance, search: Search, limits: Limits): void {
  const { effort, late, anyWillDo = false, reduce = true } = limits
  const fitting = Math.floor(FIRST_SQUARES / (instance.size * instance.size + 1))
  const firstWidth = limits.firstWidth ?? Math.max(3, Math.min(FIRST_WIDTH, fitting))
  const isDone = () => search.isOver || (anyWillDo && search.steps !== null)
  const unlimited = unlimitedFor(instance)
  if (reduce) search.inBatches()
  if (isDone()) return
  if (reduce && !anyWillDo) search.assumeLeastHazard(firstWidth)
  if (!search.steps) search.take(search.kernel.pass(firstWidth, search.key, { ...unlimited }), firstWidth)
  for (const clocks of CAREFUL) {
    if (isDone() || search.steps || instance.bounds.length === 0) break
    search.better(search.kernel.pass(firstWidth, search.key, { ...unlimited }, { clocks }))
  }
  if (isDone()) return
  if (reduce && instance.size <= LARGE) search.sharpen()
  const spent = search.kernel.made
  const isLarge = instance.size > LARGE && search.steps !== null
  for (let width = firstWidth * WIDER, round = 0; !isDone() && !isLarge; width *= WIDER, round++) {
    const left = effort - (search.kernel.made - spent)
    if (left <= 0 || late()) break
    if (round === 1 && search.steps) {
      const start = { key: search.key, steps: search.steps }
      const found = improve(search.kernel, start, { effort: left * WINDOWS, late, boundKey: search.boundKey })
      search.better({ found })
      if (reduce && !isDone()) search.sharpen()
      if (isDone()) break
    }
    const pass = search.kernel.pass(width, search.key, { effort: effort - (search.kernel.made - spent), late })
    search.take(pass, width)
    if (!pass.finished) break
  }
}

/** The first passes come to their end whatever the effort, so that there is something to show; in time, if that can be long. */
const unlimitedFor = ({ late }: Instance) => ({ effort: Number.POSITIVE_INFINITY, late })

class Search {
  kernel: Kernel
  key = Number.POSITIVE_INFINITY
  steps: readonly Step[] | null = null
  boundKey: number
  width = FIRST_WIDTH
  dropped = 0
  exact = false
  readonly #onBetter: ((found: Progress) => void) | undefined

  readonly #late: () => boolean
  readonly #alikeFrom: number
  readonly #alikeStates: number

  constructor(kernel: Kernel, { onBetter, late, effort, alikeFrom = ALIKE_FROM }: Limits) {
    this.#late = late
    this.#alikeFrom = alikeFrom
    this.#alikeStates = Math.min(MOST_ALIKE, ALIKE_EACH * effort)
    this.kernel = kernel
    this.boundKey = kernel.rootKey
    this.#onBetter = onBetter
  }

  /** Takes what a pass found; it may have been narrower than all sequences. */
  better({ found }: Pick<Pass, 'found'>): void {
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

  /** Looks only where no more hazard is taken than is certain; when something is there, nothing else can be better. */
  assumeLeastHazard(width: number): void {
    const { kernel } = this
    const [hazard] = tripleOf(kernel.instance, kernel.rootKey)
    const { size } = kernel.instance
    const isLeast = () => this.steps !== null && tripleOf(kernel.instance, this.key)[0] === hazard
    if (isLeast() && size > MOST_TIGHTENED) return
    let tight = tighten(kernel.instance, { hazard, elapsed: Number.POSITIVE_INFINITY })
    if (!tight) return
    if (isLeast() && size > LARGE) {
      const sharper = new Kernel(tight)
      sharper.made = kernel.made
      this.#follow(sharper)
      this.#tell()
      return
    }
    for (let round = 1; round < ROUNDS; round++) {
      const more = tighten(tight, { hazard, elapsed: Number.POSITIVE_INFINITY })
      if (!more) break
      tight = more
    }
    const assumed = new Kernel(tight, { alike: this.#alikeOf(tight) })
    const unlimited = unlimitedFor(tight)
    // A large problem is too dear to be tried in vain: there, care comes first.
    if (this.#lift(assumed, hazard)) return
    const careful = tight.bounds.length === 0 ? (['any'] as const) : (['any', ...CAREFUL] as const)
    for (const clocks of tight.size > LARGE ? [...careful].reverse() : careful) {
      const pass = assumed.pass(width, this.key, { ...unlimited }, { clocks })
      if (!pass.found || tripleOf(tight, pass.found.key)[0] > hazard) continue
      assumed.made += kernel.made
      this.#follow(assumed)
      if (clocks === 'any') this.take(pass, width)
      else this.better(pass)
      return
    }
    if (isLeast()) {
      assumed.made += kernel.made
      this.#follow(assumed)
      this.#tell()
    } else kernel.made += assumed.made
  }

  /** Goes on with only those sequences that may still be better. */
  sharpen(): void {
    if (!this.steps) return
    const [hazard, elapsed] = tripleOf(this.kernel.instance, this.key)
    const tight = tighten(this.kernel.instance, { hazard, elapsed })
    if (tight) {
      const sharper = new Kernel(tight, { alike: this.kernel.alike })
      sharper.made = this.kernel.made
      this.#follow(sharper)
    }
    this.#tell()
  }

  /** The sharper bound, from the wait that binds most; null where it is too much. */
  #alikeOf(instance: Instance): AlikeBound | null {
    // Costs between neighbours tell any two operations apart.
    if (instance.size < this.#alikeFrom || instance.between) return null
    const [wait = null] = waitsOf(instance)
    return AlikeBound.of(instance, wait, { late: this.#late, most: this.#alikeStates, fewest: FEWEST_ALIKE })
  }

  /** Keeps the order of set-ups that the sharper bound thinks best, and starts the clocks where they fit in. */
  #lift(kernel: Kernel, hazard: number): boolean {
    const { alike, instance } = kernel
    if (!alike) return false
    const order = alike.order()
    if (order.length < instance.size) return false
    const lifted = closingAlong(instance, order, alike.wait)
    if (lifted.contradiction) return false
    const narrow = new Kernel(instanceOf(lifted, instance.late), { alike })
    const pass = narrow.pass(LIFTED, this.key, unlimitedFor(instance))
    kernel.made += narrow.made
    if (!pass.found || tripleOf(instance, pass.found.key)[0] > hazard) return false
    kernel.made += this.kernel.made
    this.#follow(kernel)
    this.better(pass)
    return true
  }

  /** A first sequence: bodies that are alike a few at a time, and each clock started in time. */
  inBatches(): void {
    const { kernel } = this
    const { instance } = kernel
    if (instance.size < this.#alikeFrom || instance.between) return
    const [wait = null] = kernel.waits
    const order =
      AlikeBound.batches(instance, wait, { late: this.#late, most: this.#alikeStates, fewest: FEWEST_ALIKE })?.order(
        BATCH,
      ) ?? []
    if (order.length < instance.size) return
    const free = emptySet(instance.size)
    this.better(
      kernel.pass(BATCH_WIDTH, this.key, unlimitedFor(instance), { order: startedInTime(instance, order), free }),
    )
  }

  /** The last resort: at each step the first that may start, so that there is something to show where no pass came to its end. */
  oneByOne(): void {
    const { kernel } = this
    const { instance } = kernel
    if (instance.size + instance.bounds.length > MOST_ONE_BY_ONE) return
    const done = emptySet(instance.size)
    const order: number[] = []
    for (let next = 0; next >= 0; ) {
      next = instance.modesOf.findIndex((_, op) => !hasBit(done, op) && mayStart(instance, op, done, 0))
      if (next < 0) break
      addBit(done, next)
      order.push(next)
    }
    if (order.length < instance.size) return
    const free = emptySet(instance.size)
    const stop = { effort: Number.POSITIVE_INFINITY, late: () => false }
    this.better(kernel.pass(BATCH_WIDTH, this.key, stop, { order: startedInTime(instance, order), free }))
  }

  #follow(kernel: Kernel): void {
    this.kernel = kernel
    this.boundKey = Math.max(this.boundKey, Math.min(this.key, kernel.rootKey))
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
