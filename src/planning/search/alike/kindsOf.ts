// Which bodies look alike: by what is done to them, in what set-ups and in what order.
import { type BitSet, hasBit, membersOf } from '../../bitSet.ts'
import type { Instance } from '../instance.ts'
import type { Wait } from '../waits.ts'
import { SELF } from './loosened.ts'

/** A body's operations are bits of one number. */
const MOST_IN_BODY = 30

export interface Body {
  readonly value: number
  /** In an order in which the bodies of a kind correspond. */
  readonly ops: readonly number[]
}

/** Groups of bodies that look alike; how they are matched decides how good the bound is, never whether it holds. */
export function kindsOf(instance: Instance, hand: number, wait: Wait | null, eager: boolean): Body[][] {
  const { size, modes, modesOf, demands, setups, closing, rightBefore, leastHazard } = instance
  const { aspects } = setups
  const handsOf = (op: number) => [...new Set(modesOf[op]!.map((mode) => demands[modes[mode]!.demand]![hand]!))]
  const core = new Int32Array(size).fill(-1)
  for (let op = 0; op < size; op++) {
    const [value, ...others] = handsOf(op)
    if (value! >= 0 && others.length === 0) core[op] = value!
  }
  // What else belongs to one body: its neighbours in the certain order are of that body, of those that are of any.
  const beside: Set<number>[] = Array.from({ length: size }, () => new Set())
  for (let op = 0; op < size; op++) {
    for (const before of rightBefore[op]!) {
      beside[op]!.add(core[before]!)
      beside[before]!.add(core[op]!)
    }
  }
  // What a value stands for is a body where another one looks alike by what is done to it alone.
  const values = aspects[hand]!.values.map((_, value) => value)
  const firstSign = (op: number, value: number): string => {
    const own = aspects.findIndex(({ name }) => name === `attitude ${aspects[hand]!.values[value]}`)
    const chosen = modesOf[op]!.filter((mode) => !eager || modes[mode]!.hazard === leastHazard[op])
    const ways = chosen.map((mode) => {
      const named = [...demands[modes[mode]!.demand]!].map((each, aspect) => {
        if (aspect === own) return -1
        return aspect === hand && each === value ? SELF : each
      })
      return `${named.join()}/${modes[mode]!.hazard - leastHazard[op]!}`
    })
    const place = !wait || hasBit(wait.ahead, op) ? 0 : hasBit(closing.after[wait.earlier]!, op) ? 2 : 1
    return `${ways.join(';')}@${place}`
  }
  const numbers = new Map<string, string>()
  const short = (sign: string): string => {
    const known = numbers.get(sign) ?? String(numbers.size)
    numbers.set(sign, known)
    return known
  }
  const around = (op: number, signs: readonly string[], among: ReadonlySet<number>): string => {
    const signsOf = (set: BitSet) =>
      membersOf(set)
        .filter((other) => among.has(other))
        .map((other) => signs[other]!)
        .sort()
        .join('+')
    return `${signsOf(closing.before[op]!)}<${signs[op]}<${signsOf(closing.after[op]!)}`
  }
  const grouped = (owner: Int32Array, chosen: readonly number[]): Body[][] => {
    const lists = new Map(chosen.map((value): [number, number[]] => [value, []]))
    for (const [op, value] of owner.entries()) lists.get(value)?.push(op)
    const groups = new Map<string, Body[]>()
    for (const [value, ops] of lists) {
      if (ops.length === 0 || ops.length > MOST_IN_BODY) continue
      const among = new Set(ops)
      let signs: string[] = []
      for (const op of ops) signs[op] = short(firstSign(op, value))
      for (let round = 0; round < 2; round++) {
        const finer: string[] = []
        for (const op of ops) finer[op] = short(around(op, signs, among))
        signs = finer
      }
      ops.sort((one, other) => Number(signs[one]) - Number(signs[other]) || one - other)
      const sign = ops.map((op) => signs[op]).join()
      groups.set(sign, [...(groups.get(sign) ?? []), { value, ops }])
    }
    return [...groups.values()].filter((group) => group.length > 1)
  }
  const alike = new Set(grouped(core, values).flatMap((group) => group.map(({ value }) => value)))
  const owner = core.slice()
  for (let op = 0; op < size; op++) {
    if (op === wait?.earlier || alike.has(core[op]!)) continue
    const near = [...beside[op]!].filter((value) => alike.has(value))
    if (near.length === 1) owner[op] = near[0]!
  }
  return grouped(owner, [...alike])
}
