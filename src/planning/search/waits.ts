// Waiting that cannot be worked away: for each minimum lag that is longer than its first operation, what has to come before
// it and what has to come after it.
import { addBit, type BitSet, hasBit, keepOnly } from '../bitSet.ts'
import { ChangesBound } from './changesBound.ts'
import { type Instance, workOf } from './instance.ts'
import { watch } from './timeIsUp.ts'

export interface Wait {
  readonly earlier: number
  readonly later: number
  readonly least: number
  /** Work that has to be done before `earlier` starts. */
  readonly ahead: BitSet
  readonly aheadWork: number
  /** From the start of `later` to the end, at least. */
  readonly tail: number
  /** The changes among what comes ahead; null where that was not thought worth its price. */
  readonly changesAhead: ChangesBound | null
}

/** So many waits, those that bind most, are looked at together with the changes of set-up ahead of them and after them. */
const WITH_CHANGES = 2
/** In larger problems one has to do. */
const LARGE = 300
const MOST_JOINED = 400

/** Lower bounds on the elapsed time that come from waiting. */
export function waitsOf(instance: Instance): Wait[] {
  const { bounds, durations, closing } = instance
  const waits = bounds.filter(
    ({ earlier, later, least }) => least > durations[earlier]! && hasBit(closing.before[later]!, earlier),
  )
  const check = watch(instance.late)
  const tails = new Map<number, number>()
  const tailOf = (op: number): number => {
    const known = tails.get(op)
    if (known !== undefined) return known
    let tail = durations[op]! + workOf(instance, closing.after[op]!)
    check()
    // Of very many waits each is taken by itself.
    for (const { earlier, later, least } of waits.length > MOST_JOINED ? [] : waits) {
      if (earlier !== op && !hasBit(closing.after[op]!, earlier)) continue
      let between = 0
      if (earlier !== op) {
        const set = closing.after[op]!.slice()
        keepOnly(set, closing.before[earlier]!)
        addBit(set, op)
        between = workOf(instance, set)
      }
      tail = Math.max(tail, between + least + tailOf(later))
    }
    tails.set(op, tail)
    return tail
  }
  return waits
    .map(({ earlier, later, least }) => {
      const ahead = closing.before[earlier]!
      return { earlier, later, least, ahead, aheadWork: workOf(instance, ahead), tail: tailOf(later) }
    })
    .sort((one, other) => other.aheadWork + other.least + other.tail - (one.aheadWork + one.least + one.tail))
    .map((wait, place) => {
      if (place >= (instance.size > LARGE ? 1 : WITH_CHANGES)) return { ...wait, changesAhead: null }
      const tailOps = closing.after[wait.later]!.slice()
      addBit(tailOps, wait.later)
      const after = new ChangesBound(instance, tailOps)
      after.look(new Int32Array(after.length), 0, instance.setups.unknown)
      // Changes may hide in a later wait: they lengthen the tail only where it is all work.
      const tail = Math.max(wait.tail, workOf(instance, tailOps) + after.seconds)
      return { ...wait, tail, changesAhead: new ChangesBound(instance, wait.ahead) }
    })
}
