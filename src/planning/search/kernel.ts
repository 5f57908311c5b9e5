// One pass of the search: layer by layer over the sets of operations done, keeping for each set and set-up the labels that no
// other label covers. Exact while nothing is dropped; with a width it keeps the most promising labels and remembers the best
// that any dropped one could have become.
import { type BitSet, hasBit, membersOf } from '../bitSet.ts'
import type { AlikeBound } from './alike/alike.ts'
import { ChangesBound } from './changesBound.ts'
import { Deadlines } from './deadlines.ts'
import type { Instance } from './instance.ts'
import { Layer } from './layer.ts'
import { isReady, needsHold } from './mayStart.ts'
import { Reductions } from './reductions.ts'
import { type Wait, waitsOf } from './waits.ts'
import { FREE, Zones } from './zones.ts'

/** One step of a found sequence: an operation and the place of its mode in the problem. */
export interface Step {
  readonly op: number
  readonly place: number
}

export interface Pass {
  /** The best complete sequence of this pass that beats the limit, with its value as one number. */
  readonly found: { readonly key: number; readonly steps: readonly Step[] } | null
  /** No sequence that beats the limit, outside `found`, is better than this; infinite when nothing was dropped. */
  readonly bound: number
  readonly dropped: number
  /** Whether the pass came to its end (it may have been stopped by the effort). */
  readonly finished: boolean
}

/** What a pass may do less than everything; only a whole pass bounds anything. */
export interface Scope {
  /**
   * 'ready': starts nothing that a maximum lag ties to an operation before all else that operation waits for is done.
   * 'one by one': nor while another maximum lag runs.
   */
  readonly clocks?: 'any' | 'ready' | 'one by one'
  /** Keeps this order of all operations, but for those that are `free`. */
  readonly order?: readonly number[]
  readonly free?: BitSet
}

export interface Stop {
  /** Labels that may still be made. */
  effort: number
  /** Asked now and then; true ends the pass. */
  readonly late: () => boolean
}

export class Kernel {
  readonly instance: Instance
  readonly waits: readonly Wait[]
  readonly rootKey: number
  made = 0
  readonly #changesBound: ChangesBound
  /** All bounds whose numbers are kept with a set: of all operations, then of each wait that has its own. Then each wait's work ahead. */
  readonly #tracked: readonly ChangesBound[]
  readonly #trackedLength: number
  readonly #zones: Zones
  readonly #deadlines: Deadlines
  readonly #tied: boolean
  readonly #reductions: Reductions
  readonly #naming: Uint32Array[]
  readonly #holding: Uint32Array
  /** A sharper bound on set-ups, where there is one. It holds for every instance that was made from its own. */
  readonly alike: AlikeBound | null
  #asksAlike = true
  /** What it said, by set and set-up of the layer in hand. */
  readonly #alikeKnown = new Map<number, Remainder | null>()

  constructor(
    instance: Instance,
    { reduce = true, alike = null }: { reduce?: boolean; alike?: AlikeBound | null } = {},
  ) {
    this.instance = instance
    this.alike = alike
    this.waits = waitsOf(instance)
    this.#zones = new Zones(instance)
    this.#deadlines = new Deadlines(instance, this.#zones)
    this.#tied = this.#zones.any
    const { size, words, modes, demands, setups } = instance
    this.#changesBound = new ChangesBound(instance)
    this.#tracked = [this.#changesBound, ...this.waits.flatMap(({ changesAhead }) => changesAhead ?? [])]
    this.#trackedLength = this.#tracked.reduce((sum, { length }) => sum + length, 0)
    this.#reductions = new Reductions(instance, this.waits, this.#zones, reduce && !instance.between)
    this.#naming = setups.aspects.map((_, aspect) => {
      const naming = new Uint32Array(words)
      for (const { op, demand } of modes) if (demands[demand]![aspect]! >= 0) naming[op >>> 5]! |= 1 << (op & 31)
      return naming
    })
    // Operations that a hold could bind later on: while one of them is to come, standing in another set-up may cost it its time.
    this.#holding = new Uint32Array(words)
    for (let op = 0; op < size; op++) {
      for (const tie of this.#zones.holds[op]!) this.#holding[tie.op >>> 5]! |= 1 << (tie.op & 31)
    }
    const root = this.#root()
    this.rootKey = root.key[0]!
  }

  #root(): Layer {
    const { instance } = this
    const layer = new Layer(instance.words, this.#trackedLength + this.waits.length)
    layer.enter(new Uint32Array(instance.words), 0, -1)
    const into = instance.between?.leastInto.reduce((sum, least) => sum + least, 0) ?? 0
    layer.work[0] = instance.durations.reduce((sum, duration) => sum + duration, into)
    layer.hazard[0] = instance.leastHazard.reduce((sum, hazard) => sum + hazard, 0)
    this.waits.forEach(({ aheadWork }, wait) => {
      layer.extra[this.#trackedLength + wait] = aheadWork
    })
    layer.takeLabel()
    layer.labelSet[0] = 0
    layer.next[0] = -1
    layer.first[0] = 0
    layer.parent[0] = -1
    layer.move[0] = -1
    layer.zone[0] = 0
    this.#keep(layer, 0)
    layer.setup[0] = instance.setups.forget(0, layer.kept[0]!)
    layer.alive = 1
    layer.key[0] = this.#promise(layer, 0)
    return layer
  }

  /**
   * @param width labels kept in each layer
   * @param limit only values below this one are looked for
   */
  pass(width: number, limit: number, stop: Stop, scope: Scope = {}): Pass {
    const { instance } = this
    const { order, free, clocks = 'any' } = scope
    // A window looks at sets that the sharper bound would have to work out one by one.
    this.#asksAlike = order === undefined
    for (const bound of this.#tracked) bound.clear()
    const fixed = order && free ? order.filter((op) => !hasBit(free, op)) : null
    const freeOps = free ? membersOf(free) : []
    const { size } = instance
    let from = this.#root()
    let to = new Layer(instance.words, this.#trackedLength + this.waits.length)
    let bound = Number.POSITIVE_INFINITY
    let dropped = 0
    const parents: Int32Array[] = []
    const moves: Int32Array[] = []
    if (from.key[0]! >= limit) return { found: null, bound, dropped, finished: true }
    const all = instance.closing.problem.operations.map((_, op) => op)
    const list: number[] = []
    const candidates = (layer: Layer, set: number, depth: number): readonly number[] => {
      const at = set * instance.words
      list.length = 0
      if (!fixed) {
        for (const op of all) {
          if (isIn(layer.setWords, at, op)) continue
          if (clocks !== 'any' && !this.#isDue(op, layer, set, clocks === 'one by one')) continue
          list.push(op)
        }
        return list
      }
      for (const op of freeOps) if (!isIn(layer.setWords, at, op)) list.push(op)
      const next = fixed[depth - (freeOps.length - list.length)]
      if (next !== undefined) list.push(next)
      return list
    }
    for (let depth = 0; depth < size; depth++) {
      to.clear()
      this.#alikeKnown.clear()
      if (stop.late() || !this.#expand(from, to, limit, stop, (set) => candidates(from, set, depth))) {
        for (let label = 0; label < from.labels; label++) {
          if (from.next[label] !== DEAD) bound = Math.min(bound, from.key[label]!)
        }
        return { found: null, bound, dropped, finished: false }
      }
      if (to.alive > width) {
        const cut = this.#narrow(to, width)
        bound = Math.min(bound, cut.bound)
        dropped += cut.dropped
      }
      parents.push(to.parent.slice(0, to.labels))
      moves.push(to.move.slice(0, to.labels))
      const spare = from
      from = to
      to = spare
      if (from.alive === 0) return { found: null, bound, dropped, finished: true }
    }
    let best = -1
    for (let label = 0; label < from.labels; label++) {
      if (from.next[label] !== DEAD && (best < 0 || from.key[label]! < from.key[best]!)) best = label
    }
    if (best < 0) return { found: null, bound, dropped, finished: true }
    const steps: Step[] = new Array(size)
    for (let depth = size - 1, label = best; depth >= 0; depth--) {
      const { op, place } = instance.modes[moves[depth]![label]!]!
      steps[depth] = { op, place }
      label = parents[depth]![label]!
    }
    return { found: { key: from.key[best]!, steps }, bound, dropped, finished: true }
  }

  /** Every step that each label may take next. False when the effort is used up. */
  #expand(from: Layer, to: Layer, limit: number, stop: Stop, candidates: (set: number) => readonly number[]): boolean {
    const { instance } = this
    const { words, modes, modesOf, setups } = instance
    for (let set = 0; set < from.sets; set++) {
      let label = from.first[set]!
      if (label < 0) continue
      if (stop.effort <= 0 || ((set & 255) === 255 && stop.late())) return false
      const at = set * words
      this.#reductions.enter(from, set)
      const moves: number[] = []
      for (const op of candidates(set)) {
        if (!isReady(instance, op, from.setWords, at)) continue
        for (const mode of modesOf[op]!) {
          const { needs } = modes[mode]!
          if (needs.length === 0 || needsHold(needs, from.setWords, at)) moves.push(mode)
        }
      }
      const targets = new Map<number, number>()
      for (; label >= 0; label = from.next[label]!) {
        const chosen = this.#reductions.choose(moves, from.setup[label]!)
        for (const mode of chosen) {
          const { op, demand, hazard, changesTakeTime } = modes[mode]!
          stop.effort--
          this.made++
          let target = targets.get(op)
          if (target === undefined) {
            target = this.#enter(from, set, op, to)
            targets.set(op, target)
          }
          const change = setups.change(from.setup[label]!, demand)
          const seconds = changesTakeTime ? change.seconds : 0
          if (seconds === Number.POSITIVE_INFINITY) continue
          let time: number
          if (from.openCount[set]! === 0 && to.openCount[target]! === 0) {
            time = from.time[label]! + seconds + instance.durations[op]!
            this.#zones.placed = 0
          } else {
            time = this.#zones.move(from, label, op, seconds, to, target)
            if (time < 0) continue
          }
          const fresh = to.takeLabel()
          to.labelSet[fresh] = target
          to.setup[fresh] = setups.forget(change.to, to.kept[target]!)
          to.hazards[fresh] = from.hazards[label]! + hazard + change.hazard
          to.time[fresh] = time
          to.changes[fresh] = from.changes[label]! + change.changes
          to.zone[fresh] = this.#zones.placed
          to.parent[fresh] = label
          to.move[fresh] = mode
          if (this.#isUseful(to, fresh, limit)) this.#link(to, fresh)
          else to.labels--
        }
      }
    }
    return true
  }

  /** Whether all is done that an operation tied to `op` by a maximum lag still waits for, beside `op` and what follows it. */
  #isDue(op: number, layer: Layer, set: number, alone: boolean): boolean {
    if (this.#zones.holds[op]!.length === 0) return true
    const words = layer.setWords
    const at = set * layer.words
    if (alone) {
      for (let event = 0; event < layer.openCount[set]!; event++) {
        for (const tie of this.#zones.holds[layer.open[layer.openAt[set]! + event]!]!) {
          if (tie.op !== op && !isIn(words, at, tie.op)) return false
        }
      }
    }
    const { before, after } = this.instance.closing
    for (const tie of this.#zones.holds[op]!) {
      const ahead = before[tie.op]!
      for (let word = 0; word < ahead.length; word++) {
        const others = ahead[word]! & ~after[op]![word]! & ~words[at + word]!
        if (word === op >>> 5 ? others & ~(1 << (op & 31)) : others) return false
      }
    }
    return true
  }

  /** The set after one more operation, with all that depends on the set alone. */
  #enter(from: Layer, set: number, op: number, to: Layer): number {
    const { instance } = this
    const sets = to.sets
    const target = to.enter(from.setWords, set * instance.words, op)
    if (target < sets) return target
    to.work[target] = from.work[set]! - instance.durations[op]! - (instance.between?.leastInto[op] ?? 0)
    to.hazard[target] = from.hazard[set]! - instance.leastHazard[op]!
    let place = set * to.extras
    let toPlace = target * to.extras
    for (const bound of this.#tracked) {
      bound.step(from.extra, place, op, to.extra, toPlace)
      place += bound.length
      toPlace += bound.length
    }
    for (const { ahead } of this.waits) {
      const before = from.extra[place++]!
      to.extra[toPlace++] = hasBit(ahead, op) ? before - instance.durations[op]! : before
    }
    this.#keep(to, target)
    if (this.#tied) {
      const at = target * instance.words
      const opensAt = from.openAt[set]!
      for (let event = 0; event < from.openCount[set]!; event++) {
        const tied = from.open[opensAt + event]!
        if (this.#zones.isOpen(tied, to.setWords, at)) to.addOpen(target, tied)
      }
      if (this.#zones.tied(op) && this.#zones.isOpen(op, to.setWords, at)) to.addOpen(target, op)
      sortOpen(to, target)
    }
    return target
  }

  /** Which aspects some operation to come still names. */
  #keep(layer: Layer, set: number): void {
    const { words } = this.instance
    let kept = 0
    for (let aspect = 0; aspect < this.#naming.length; aspect++) {
      const naming = this.#naming[aspect]!
      for (let word = 0; word < words; word++) {
        if ((naming[word]! & ~layer.setWords[set * words + word]!) === 0) continue
        kept += 2 ** aspect
        break
      }
    }
    layer.kept[set] = this.instance.setups.keep(kept)
  }

  /** The value that no completion of a label can beat, as one number. */
  #promise(layer: Layer, label: number, limit = Number.POSITIVE_INFINITY): number {
    const { instance } = this
    const set = layer.labelSet[label]!
    const bound = this.#changesBound
    bound.look(layer.extra, set * layer.extras, layer.setup[label]!)
    const hazard = layer.hazards[label]! + layer.hazard[set]! + bound.hazard
    const changes = layer.changes[label]! + bound.changes
    let elapsed = layer.time[label]! + layer.work[set]! + bound.seconds
    if (this.waits.length > 0) elapsed = Math.max(elapsed, this.#waiting(layer, label, set))
    const key = (hazard * instance.elapsedRange + elapsed) * instance.changesRange + changes
    if (key >= limit) return key
    const left = this.alike && this.#asksAlike && this.#remainder(this.alike, layer, label)
    if (!left) return key
    // With the wait begun there is nothing to trade seconds for, so that its changes hold whatever the time.
    const time = left.seconds < 0 ? elapsed : layer.time[label]! + left.seconds
    const other =
      ((layer.hazards[label]! + layer.hazard[set]! + left.hazard) * instance.elapsedRange + time) *
      instance.changesRange
    return Math.max(key, other + layer.changes[label]! + left.changes)
  }

  /** What the bound on bodies that are alike says of the rest of a label. */
  #remainder(alike: AlikeBound, layer: Layer, label: number): Remainder | null {
    const set = layer.labelSet[label]!
    const setup = layer.setup[label]!
    const place = set * 2 ** 24 + setup
    const known = this.#alikeKnown.get(place)
    if (known !== undefined) return known
    let left: Remainder | null = null
    const at = set * this.instance.words
    if (alike.look(layer.setWords, at, this.instance.setups.states[setup]!)) {
      const { hazard, seconds, changes, wait } = alike
      let more = layer.work[set]!
      if (wait) {
        const begun = isIn(layer.setWords, at, wait.earlier)
        more = begun ? -1 : wait.least + wait.tail + this.#workAhead(wait.ahead, layer, at)
      }
      left = { hazard, changes, seconds: more < 0 ? -1 : more + seconds }
    }
    this.#alikeKnown.set(place, left)
    return left
  }

  #workAhead(ahead: BitSet, layer: Layer, at: number): number {
    let work = 0
    for (let word = 0; word < ahead.length; word++) {
      for (let bits = ahead[word]! & ~layer.setWords[at + word]!; bits !== 0; bits &= bits - 1) {
        work += this.instance.durations[(word << 5) + 31 - Math.clz32(bits & -bits)]!
      }
    }
    return work
  }

  #waiting(layer: Layer, label: number, set: number): number {
    const at = set * this.instance.words
    let most = 0
    let extra = set * layer.extras + this.#changesBound.length
    for (let place = 0; place < this.waits.length; place++) {
      const wait = this.waits[place]!
      const tracked = extra
      if (wait.changesAhead) extra += wait.changesAhead.length
      if (isIn(layer.setWords, at, wait.later)) continue
      if (!isIn(layer.setWords, at, wait.earlier)) {
        let ahead = layer.extra[set * layer.extras + this.#trackedLength + place]!
        if (wait.changesAhead) {
          wait.changesAhead.look(layer.extra, tracked, layer.setup[label]!)
          ahead += wait.changesAhead.seconds
        }
        most = Math.max(most, layer.time[label]! + ahead + wait.least + wait.tail)
      } else {
        const opensAt = layer.openAt[set]!
        for (let event = 0; event < layer.openCount[set]!; event++) {
          if (layer.open[opensAt + event] !== wait.earlier) continue
          const low = layer.zones[layer.zone[label]! + event]!
          if (low > -FREE) most = Math.max(most, low + wait.least + wait.tail)
        }
      }
    }
    return most
  }

  /** Whether a new label may still lead to something better; the cheapest test comes first. */
  #isUseful(layer: Layer, fresh: number, limit: number): boolean {
    const set = layer.labelSet[fresh]!
    for (let label = layer.first[set]!; label >= 0; label = layer.next[label]!) {
      if (this.#covers(layer, label, fresh)) return false
    }
    if (layer.openCount[set]! > 0 && !this.#deadlines.canBeMet(layer, fresh)) return false
    layer.key[fresh] = this.#promise(layer, fresh, limit)
    return layer.key[fresh]! < limit
  }

  /** Puts a label to its set and takes out those that it covers. */
  #link(layer: Layer, fresh: number): void {
    const set = layer.labelSet[fresh]!
    let previous = -1
    for (let label = layer.first[set]!; label >= 0; ) {
      const next = layer.next[label]!
      if (this.#covers(layer, fresh, label)) {
        if (previous < 0) layer.first[set] = next
        else layer.next[previous] = next
        layer.next[label] = DEAD
        layer.alive--
      } else previous = label
      label = next
    }
    layer.next[fresh] = layer.first[set]!
    layer.first[set] = fresh
    layer.alive++
  }

  /** Whether whatever completes label `b` completes label `a` to a value that is no worse. */
  #covers(layer: Layer, a: number, b: number): boolean {
    const mine = layer.setup[a]!
    const theirs = layer.setup[b]!
    if (mine === theirs) {
      const hazard = layer.hazards[a]! - layer.hazards[b]!
      if (hazard > 0) return false
      const times = this.#zones.covers(layer, a, b)
      if (times === 0) return false
      if (hazard < 0) return true
      return times === 3 || (times === 2 && layer.changes[a]! <= layer.changes[b]!)
    }
    const set = layer.labelSet[a]!
    if (layer.openCount[set]! > 0) return false
    const gap = this.instance.setups.gap(mine, theirs)
    const hazard = layer.hazards[a]! + gap.hazard - layer.hazards[b]!
    if (hazard > 0) return false
    const time = layer.time[a]! + gap.seconds - layer.time[b]!
    if (gap.seconds > 0 && this.#mayHold(layer, set)) return false
    if (hazard < 0) return true
    return time < 0 || (time === 0 && layer.changes[a]! + gap.changes <= layer.changes[b]!)
  }

  #mayHold(layer: Layer, set: number): boolean {
    const { words } = this.instance
    for (let word = 0; word < words; word++)
      if (this.#holding[word]! & ~layer.setWords[set * words + word]!) return true
    return false
  }

  /** Keeps the most promising labels; among equals the earlier made. */
  #narrow(layer: Layer, width: number): { bound: number; dropped: number } {
    const order: number[] = []
    for (let label = 0; label < layer.labels; label++) if (layer.next[label] !== DEAD) order.push(label)
    const { key } = layer
    order.sort((one, other) => key[one]! - key[other]! || one - other)
    const bound = key[order[width]!]!
    for (let set = 0; set < layer.sets; set++) layer.first[set] = -1
    for (let place = order.length - 1; place >= width; place--) layer.next[order[place]!] = DEAD
    for (let place = Math.min(width, order.length) - 1; place >= 0; place--) {
      const label = order[place]!
      const set = layer.labelSet[label]!
      layer.next[label] = layer.first[set]!
      layer.first[set] = label
    }
    layer.alive = width
    return { bound, dropped: order.length - width }
  }
}

/** What is left at least: `seconds` to the end, work and waiting and all; −1 where nothing is said of them. */
interface Remainder {
  readonly hazard: number
  readonly seconds: number
  readonly changes: number
}

/** In `next`, marks a label that was covered or dropped. */
const DEAD = -2

const isIn = (words: Uint32Array, at: number, op: number): boolean =>
  ((words[at + (op >>> 5)]! >>> (op & 31)) & 1) === 1

/** Open events in the order of their operations, so that equal sets have equal zones. */
function sortOpen(layer: Layer, set: number): void {
  const at = layer.openAt[set]!
  const events = layer.open.subarray(at, at + layer.openCount[set]!)
  events.sort()
}
