// Waiting that cannot be worked away: for each minimum lag that is longer than its first operation, what has to come before
// it and what has to come after it.
import { addBit, type BitSet, emptySet, hasBit, keepOnly } from '../bitSet.ts'
import { type Instance, workOf } from './instance.ts'

export interface Wait {
  readonly earlier: number
  readonly later: number
  readonly least: number
  /** Work that has to be done before `earlier` starts. */
  readonly ahead: BitSet
  readonly aheadWork: number
  /** From the start of `later` to the end, at least. */
  readonly tail: number
}

/** Lower bounds on the elapsed time that come from waiting. */
export function waitsOf(instance: Instance): Wait[] {
  const { bounds, durations, closing } = instance
  const waits = bounds.filter(
    ({ earlier, later, least }) => least > durations[earlier]! && hasBit(closing.before[later]!, earlier),
  )
  const tails = new Map<number, number>()
  const tailOf = (op: number): number => {
    const known = tails.get(op)
    if (known !== undefined) return known
    let tail = durations[op]! + workOf(instance, closing.after[op]!)
    for (const { earlier, later, least } of waits) {
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
  return waits.map(({ earlier, later, least }) => ({
    earlier,
    later,
    least,
    ahead: closing.before[earlier]!,
    aheadWork: workOf(instance, closing.before[earlier]!),
    tail: tailOf(later),
  }))
}

/** The first operations of all waits. */
export function waitStarts(instance: Instance, waits: readonly Wait[]): BitSet {
  const starts = emptySet(instance.size)
  for (const { earlier } of waits) addBit(starts, earlier)
  return starts
}
