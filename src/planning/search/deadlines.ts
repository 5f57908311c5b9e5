// While a maximum lag runs, the operation that it holds has a deadline. A label is hopeless when the work that has to come before
// the deadlines does not fit, earliest deadline first; or when one operation's own work ahead and change of set-up do not.
import type { Instance } from './instance.ts'
import type { Layer } from './layer.ts'
import type { Zones } from './zones.ts'

export class Deadlines {
  readonly #instance: Instance
  readonly #zones: Zones
  readonly #ops: number[] = []
  readonly #due: number[] = []
  readonly #counted: Uint32Array
  readonly #changesTakeTime: boolean

  constructor(instance: Instance, zones: Zones) {
    this.#instance = instance
    this.#zones = zones
    this.#counted = new Uint32Array(instance.words)
    this.#changesTakeTime = instance.modes.every(({ changesTakeTime }) => changesTakeTime)
  }

  /** Whether the running maximum lags of a label can all be met, as far as the work ahead of them tells. */
  canBeMet(layer: Layer, label: number): boolean {
    const set = layer.labelSet[label]!
    const count = layer.openCount[set]!
    const { words, durations, closing } = this.#instance
    const at = set * words
    const ops = this.#ops
    const due = this.#due
    ops.length = 0
    due.length = 0
    for (let event = 0; event < count; event++) {
      for (const { op, least } of this.#zones.holds[layer.open[layer.openAt[set]! + event]!]!) {
        if ((layer.setWords[at + (op >>> 5)]! >>> (op & 31)) & 1) continue
        // Seconds from now to the latest start, however late the event was.
        const left = layer.zones[layer.zone[label]! + count + event + 1]! - least
        let place = due.length
        while (place > 0 && due[place - 1]! > left) place--
        due.splice(place, 0, left)
        ops.splice(place, 0, op)
      }
    }
    for (let place = 0; place < ops.length; place++) {
      if (this.#needed(layer, label, ops[place]!) > due[place]!) return false
    }
    const counted = this.#counted
    for (let word = 0; word < words; word++) counted[word] = layer.setWords[at + word]!
    let work = 0
    let longest = 0
    for (let place = 0; place < ops.length; place++) {
      const op = ops[place]!
      const ahead = closing.before[op]!
      for (let word = 0; word < words; word++) {
        for (let bits = ahead[word]! & ~counted[word]!; bits !== 0; bits &= bits - 1) {
          work += durations[(word << 5) + 31 - Math.clz32(bits & -bits)]!
        }
        counted[word]! |= ahead[word]!
      }
      if (((counted[op >>> 5]! >>> (op & 31)) & 1) === 0) {
        counted[op >>> 5]! |= 1 << (op & 31)
        work += durations[op]!
      }
      if (durations[op]! > longest) longest = durations[op]!
      if (work - longest > due[place]!) return false
    }
    return true
  }

  /** Seconds before an operation can start: what has to come before it, and changes that its set-up cannot do without. */
  #needed(layer: Layer, label: number, op: number): number {
    const { durations, closing, setups, modes, modesOf, demands, words } = this.#instance
    const at = layer.labelSet[label]! * words
    const ahead = closing.before[op]!
    let seconds = 0
    for (let word = 0; word < words; word++) {
      for (let bits = ahead[word]! & ~layer.setWords[at + word]!; bits !== 0; bits &= bits - 1) {
        seconds += durations[(word << 5) + 31 - Math.clz32(bits & -bits)]!
      }
    }
    if (!this.#changesTakeTime) return seconds
    const state = setups.states[layer.setup[label]!]!
    for (let aspect = 0; aspect < setups.aspects.length; aspect++) {
      const value = state[aspect]!
      if (value < 0 || setups.aspects[aspect]!.seconds === 0) continue
      let must = true
      for (const mode of modesOf[op]!) {
        const wanted = demands[modes[mode]!.demand]![aspect]!
        if (wanted < 0 || wanted === value) must = false
      }
      if (must) seconds += setups.aspects[aspect]!.seconds
    }
    return seconds
  }
}
