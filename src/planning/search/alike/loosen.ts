// What is loosened: clocks (but for one wait), needs with alternatives, the attitudes of the bodies themselves, orders that not
// every body of a kind keeps, and orders between bodies (only how many others have to be so far is kept). Whatever is left out,
// every sequence of the problem is one of the loosened problem and costs no less.
import { hasBit, membersOf } from '../../bitSet.ts'
import type { Instance } from '../instance.ts'
import type { Wait } from '../waits.ts'
import { type Body, kindsOf } from './kindsOf.ts'
import { ANY, type Group, type Kind, type Loose, type Loosened, type Option, SELF } from './loosened.ts'

/** @param eager takes only the ways without hazard and counts no seconds: for good orders, not for a bound */
export function loosen(instance: Instance, wait: Wait | null, eager: boolean): Loosened {
  const hand = instance.setups.aspects.findIndex(({ name }) => name === 'at hand')
  const bodies = hand < 0 ? [] : kindsOf(instance, hand, wait, eager)
  const places = placesOf(instance, hand, bodies)
  const told = bodies.map((group) =>
    group[0]!.ops.map((_, bit) =>
      looseOf(
        group.map(({ ops }) => ops[bit]!),
        { instance, wait, eager, places },
      ),
    ),
  )
  const orders = told.map((list, kind) => ({ inBody: list.map(({ inBody }) => inBody), slot: places.firstSlot[kind]! }))
  const plainly = (loose: Loose): Loose => orders.reduce(withoutImplied, loose)
  const kinds = kindsFrom(
    bodies,
    told.map((list) => list.map(plainly)),
    places,
  )
  const rest = places.restOps.map((op) => ({
    ...plainly(looseOf([op], { instance, wait, eager, places })),
    leftForWait: isLeftForWait(instance, wait, op, places),
  }))
  return {
    ...places,
    kinds,
    rest,
    groups: groupsOf(rest),
    waitBit: wait ? places.restOf[wait.earlier]! : -1,
    waiting: [...rest.keys()].filter((at) => rest[at]!.leftForWait),
  }
}

type Places = ReturnType<typeof placesOf>

/** Where each operation and each body stands in the loosened problem. */
function placesOf({ size, setups: { aspects } }: Instance, hand: number, groups: readonly (readonly Body[])[]) {
  const bodyOf = new Int32Array(size).fill(-1)
  const bitOf = new Int32Array(size).fill(-1)
  const slotOf = new Int32Array(size).fill(-1)
  const restOf = new Int32Array(size).fill(-1)
  const bodyOfValue = new Int32Array(hand < 0 ? 0 : aspects[hand]!.values.length).fill(-1)
  const leftOut = aspects.map(() => false)
  const kindOf: number[] = []
  const firstSlot: number[] = []
  let slots = 0
  groups.forEach((group, kind) => {
    for (const { value, ops } of group) {
      const body = kindOf.push(kind) - 1
      for (const [bit, op] of ops.entries()) {
        bodyOf[op] = body
        bitOf[op] = bit
        slotOf[op] = slots + bit
      }
      bodyOfValue[value] = body
      const own = aspects.findIndex(({ name }) => name === `attitude ${aspects[hand]!.values[value]}`)
      if (own >= 0) leftOut[own] = true
    }
    firstSlot.push(slots)
    slots += group[0]!.ops.length
  })
  const restOps: number[] = []
  for (let op = 0; op < size; op++) if (bodyOf[op]! < 0) restOf[op] = restOps.push(op) - 1
  const fullRest = new Uint32Array(Math.max(1, (restOps.length + 31) >>> 5))
  for (const at of restOps.keys()) fullRest[at >>> 5]! |= 1 << (at & 31)
  return {
    hand,
    bodyOf,
    bitOf,
    slotOf,
    restOf,
    bodyOfValue,
    leftOut,
    kindOf: Int32Array.from(kindOf),
    firstSlot,
    slots,
    restOps,
    fullRest,
  }
}

interface Ground {
  readonly instance: Instance
  readonly wait: Wait | null
  readonly eager: boolean
  readonly places: Places
}

/** The loosened form of operations that are one and the same in different bodies. */
function looseOf(ops: readonly number[], { instance, wait, eager, places }: Ground): Loose {
  const { bodyOf, kindOf, slots } = places
  let inBody = -1
  const inRest = new Uint32Array(places.fullRest.length).fill(0xffffffff)
  const counts = new Int32Array(slots).fill(instance.size)
  for (const op of ops) {
    const { own, rest, so } = beforeOf(instance, op, places)
    inBody &= own
    for (let word = 0; word < rest.length; word++) inRest[word]! &= rest[word]!
    for (let slot = 0; slot < slots; slot++) counts[slot] = Math.min(counts[slot]!, so[slot]!)
  }
  const kind = bodyOf[ops[0]!]! < 0 ? -1 : kindOf[bodyOf[ops[0]!]!]!
  const isInBody = (slot: number) =>
    kind >= 0 &&
    slot >= places.firstSlot[kind]! &&
    slot < (places.firstSlot[kind + 1] ?? slots) &&
    ((inBody >>> (slot - places.firstSlot[kind]!)) & 1) === 1
  const kept = [...counts].map((least, slot) => ({ slot, least }))
  const all = optionsOf(instance, ops[0]!, places)
  return {
    options: eager ? all.filter(({ hazard }) => hazard === 0) : all,
    seconds: !eager && isFloating(instance, wait, ops[0]!) ? Math.min(...ops.map((op) => instance.durations[op]!)) : 0,
    leftForWait: false,
    inBody: kind < 0 ? 0 : inBody,
    inRest,
    counts: kept.filter(({ slot, least }) => least > 1 || (least === 1 && !isInBody(slot))),
  }
}

/** What comes before an operation: in its own body, among those of no body, and how many of each of the bodies' operations. */
function beforeOf({ closing }: Instance, op: number, { restOf, bodyOf, bitOf, slotOf, slots, fullRest }: Places) {
  let own = 0
  const rest = new Uint32Array(fullRest.length)
  const so = new Int32Array(slots)
  for (const other of membersOf(closing.before[op]!)) {
    const at = restOf[other]!
    if (at >= 0) rest[at >>> 5]! |= 1 << (at & 31)
    else {
      so[slotOf[other]!]!++
      if (bodyOf[other] === bodyOf[op]) own |= 1 << bitOf[other]!
    }
  }
  return { own, rest, so }
}

function optionsOf({ modes, modesOf, demands, leastHazard }: Instance, op: number, places: Places): Option[] {
  const { hand, leftOut, bodyOfValue, bodyOf } = places
  return modesOf[op]!.map((mode) => {
    const demand = demands[modes[mode]!.demand]!.slice()
    for (let aspect = 0; aspect < demand.length; aspect++) if (leftOut[aspect]) demand[aspect] = ANY
    const value = hand < 0 ? ANY : demand[hand]!
    if (value >= 0 && bodyOfValue[value] === bodyOf[op] && bodyOf[op]! >= 0) demand[hand] = SELF
    return { demand, hazard: modes[mode]!.hazard - leastHazard[op]! }
  })
}

function kindsFrom(
  bodies: readonly (readonly Body[])[],
  loose: readonly (readonly Loose[])[],
  { hand, firstSlot }: Places,
): Kind[] {
  let first = 0
  return bodies.map((group, kind) => {
    const list = loose[kind]!
    const handless = [...list.keys()].filter((bit) => list[bit]!.options.some(({ demand }) => demand[hand] !== SELF))
    const made = {
      loose: list,
      first,
      count: group.length,
      slot: firstSlot[kind]!,
      all: 2 ** list.length - 1,
      handless,
    }
    first += group.length
    return made
  })
}

function groupsOf(rest: readonly Loose[]): Group[] {
  const grouped = new Map<string, Group>()
  for (const [at, { options }] of rest.entries()) {
    for (const option of options) {
      const name = `${option.demand.join()}/${option.hazard}`
      const group = grouped.get(name) ?? { option, ops: [] }
      group.ops.push(at)
      grouped.set(name, group)
    }
  }
  return [...grouped.values()]
}

/** Whether an operation need come neither before the wait nor after it. */
const isFloating = ({ closing }: Instance, wait: Wait | null, op: number): boolean =>
  wait !== null && op !== wait.earlier && !hasBit(wait.ahead, op) && !hasBit(closing.after[wait.earlier]!, op)

/**
 * Floating work that could be done right after the wait begins without any hazard: put there, it costs no seconds. Only where
 * all that must follow it is so too.
 */
function isLeftForWait(instance: Instance, wait: Wait | null, op: number, { restOf }: Places): boolean {
  const { closing, modes, modesOf, demands, setups, durations } = instance
  if (!wait || restOf[wait.earlier]! < 0) return false
  const isOne = (each: number): boolean => {
    if (!isFloating(instance, wait, each) || restOf[each]! < 0 || durations[each] === 0) return false
    return modesOf[each]!.some((mode) => {
      if (modes[mode]!.hazard !== instance.leastHazard[each]) return false
      const demand = demands[modes[mode]!.demand]!
      return setups.aspects.every(({ hazard }, aspect) => {
        const value = demand[aspect]!
        return (
          hazard === 0 ||
          value < 0 ||
          modesOf[wait.earlier]!.every((at) => demands[modes[at]!.demand]![aspect] === value)
        )
      })
    })
  }
  return isOne(op) && membersOf(closing.after[op]!).every((later) => !isFloating(instance, wait, later) || isOne(later))
}

/** Leaves out counts that follow from another one: whatever is so far is also as far as what comes before. */
function withoutImplied(loose: Loose, { inBody, slot: first }: { inBody: readonly number[]; slot: number }): Loose {
  const counts = loose.counts.filter(
    ({ slot, least }) =>
      !loose.counts.some(
        (other) =>
          other.slot !== slot &&
          other.least >= least &&
          Math.min(slot, other.slot) >= first &&
          Math.max(slot, other.slot) < first + inBody.length &&
          (inBody[other.slot - first]! >>> (slot - first)) & 1,
      ),
  )
  return { ...loose, counts }
}
