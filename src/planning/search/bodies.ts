// Bodies that may be finished once they are at hand: all that is done to one workpiece, where nothing outside shares its set-ups.
//
// Bringing the operations of such a body together, right after the one that is at hand, adds no change: an aspect that all of them
// name with values of their own changes wherever they meet the others, so that fewer meetings cost less; an aspect that they all
// name with one and the same value costs nothing between them. What the others need is never kept from them by it.
import { addBit, type BitSet, emptySet, hasBit, isEmpty, isWithin, membersOf } from '../bitSet.ts'
import type { Instance } from './instance.ts'

export interface Body {
  readonly ops: BitSet
  /** For each aspect that its operations name, the values that stand while it is at hand. */
  readonly stands: readonly { readonly aspect: number; readonly values: ReadonlySet<number> }[]
  /** All that its operations name as done, outside itself. */
  readonly outside: BitSet
}

/** The bodies of an instance for which the reduction is sound, as long as no clock is in play. */
export function bodiesOf(instance: Instance): Body[] {
  const { size, setups, modes, modesOf, demands, boundsOf, blocks, closing } = instance
  const atHand = setups.aspects.findIndex(({ name }) => name === 'at hand')
  if (atHand < 0) return []
  const valuesOf = (op: number, aspect: number) => modesOf[op]!.map((mode) => demands[modes[mode]!.demand]![aspect]!)
  return setups.aspects[atHand]!.values.flatMap((workpiece, value): Body[] => {
    const ops = emptySet(size)
    const others: number[] = []
    for (let op = 0; op < size; op++) {
      const hands = valuesOf(op, atHand)
      if (hands.every((hand) => hand === value)) addBit(ops, op)
      else if (hands.includes(value)) return []
      else others.push(op)
    }
    const members = membersOf(ops)
    if (members.length < 2) return []
    if (members.some((op) => boundsOf[op]!.length > 0 || !isWithin(blocks[op]!, ops))) return []
    const stands: { aspect: number; values: Set<number> }[] = []
    for (let aspect = 0; aspect < setups.aspects.length; aspect++) {
      const { name } = setups.aspects[aspect]!
      // Nothing else can turn this workpiece over.
      if (name === `attitude ${workpiece}`) continue
      const named = members.map((op) => valuesOf(op, aspect))
      const values = new Set(named.flat())
      if (values.size === 1 && values.has(-1)) continue
      if (values.has(-1)) return []
      const isOwn = others.every((op) => valuesOf(op, aspect).every((each) => !values.has(each)))
      if (values.size > 1 && !isOwn) return []
      stands.push({ aspect, values })
    }
    const outside = emptySet(size)
    for (const op of members) {
      for (const before of membersOf(closing.before[op]!)) if (!hasBit(ops, before)) addBit(outside, before)
      for (const { anyOf } of [...closing.needs[op]!, ...closing.modes[op]!.flatMap((mode) => mode.needs)])
        for (const { done } of anyOf) for (const before of done) if (!hasBit(ops, before)) addBit(outside, before)
    }
    return isEmpty(ops) ? [] : [{ ops, stands, outside }]
  })
}
