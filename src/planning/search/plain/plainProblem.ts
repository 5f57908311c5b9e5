// The plain problem: put operations in an order that keeps a certain order, at the least sum of costs between neighbours.
// It is what is left of an instance where nothing else depends on what was done before: one way for each operation, no needs beside
// the certain order, no lags, and set-ups that only hang on the operation before.
import { type BitSet, hasBit, isEmpty, meets, membersOf } from '../../bitSet.ts'
import { NEVER } from '../between.ts'
import type { Instance } from '../instance.ts'

export interface PlainProblem {
  /** Operations, numbered from 0. Two nodes more stand for the start (`size`) and the end (`size + 1`). */
  readonly size: number
  readonly nodes: number
  /** By row (from), then column (to): the cost of the column right after the row, or CLOSED. */
  readonly cost: Int32Array
  /** What certainly comes before and after each operation. */
  readonly before: readonly BitSet[]
  readonly after: readonly BitSet[]
  /** The same without what follows from others. */
  readonly rightBefore: readonly (readonly number[])[]
  readonly rightAfter: readonly (readonly number[])[]
}

/** The cost of what may never be neighbours; no sum of real costs comes near it. */
export const CLOSED = 2 ** 28

export interface Plain {
  readonly problem: PlainProblem
  /** What every sequence costs beside its neighbours, as a search key. */
  readonly constant: number
}

/** The plain problem that an instance is; null when it is more than that, or its numbers are too large for it. */
export function plainOf(instance: Instance): Plain | null {
  const { size, between, bounds, modes, modesOf, needs, setups, demands } = instance
  if (!between || bounds.length > 0) return null
  for (let op = 0; op < size; op++) {
    if (needs[op]!.length > 0 || modesOf[op]!.length !== 1 || modes[modesOf[op]![0]!]!.needs.length > 0) return null
  }
  const modeOf = (op: number) => modes[modesOf[op]![0]!]!
  const demandOf = (op: number) => demands[modeOf(op).demand]!
  const named = setups.aspects.every((_, aspect) =>
    Array.from({ length: size }, (_, op) => demandOf(op)[aspect]!).every((value) => value >= 0),
  )
  if (!named) return null

  const keyOf = (hazard: number, seconds: number, changes: number) =>
    (hazard * instance.elapsedRange + seconds) * instance.changesRange + changes
  const setUp = (from: number | null, to: number): number => {
    if (setups.aspects.length === 0) return 0
    const wanted = demandOf(to)
    let [hazard, seconds, changes] = [0, 0, 0]
    setups.aspects.forEach((aspect, at) => {
      const stands = from === null ? aspect.start : demandOf(from)[at]!
      if (stands < 0 || stands === wanted[at]) return
      hazard += aspect.hazard
      seconds += aspect.seconds
      changes++
    })
    return keyOf(hazard, modeOf(to).changesTakeTime ? seconds : 0, changes)
  }

  const { before, after } = instance.closing
  const nodes = size + 2
  const cost = new Int32Array(nodes * nodes).fill(CLOSED)
  let sum = 0
  for (let to = 0; to < size; to++) {
    let most = setUp(null, to)
    if (isEmpty(before[to]!)) cost[size * nodes + to] = Math.min(most, CLOSED)
    if (isEmpty(after[to]!)) cost[to * nodes + size + 1] = 0
    for (let from = 0; from < size; from++) {
      if (from === to || hasBit(after[to]!, from) || meets(before[to]!, after[from]!)) continue
      const seconds = modeOf(to).changesTakeTime ? between.cost[from * size + to]! : 0
      if (seconds === NEVER) continue
      const key = setUp(from, to) + keyOf(0, seconds, 0)
      most = Math.max(most, key)
      cost[from * nodes + to] = Math.min(key, CLOSED)
    }
    sum += most
  }
  if (size === 0) cost[1] = 0
  if (sum >= CLOSED) return null
  let constant = 0
  for (let op = 0; op < size; op++) constant += keyOf(modeOf(op).hazard, instance.durations[op]!, 0)
  return { problem: withOrder({ size, cost, before, after }), constant }
}

function withOrder({
  size,
  cost,
  before,
  after,
}: Pick<PlainProblem, 'size' | 'cost' | 'before' | 'after'>): PlainProblem {
  const rightBefore = before.map((set) => membersOf(set).filter((earlier) => !meets(set, after[earlier]!)))
  const rightAfter = before.map((): number[] => [])
  rightBefore.forEach((list, op) => {
    for (const earlier of list) rightAfter[earlier]!.push(op)
  })
  return { size, nodes: size + 2, cost, before, after, rightBefore, rightAfter }
}

/** The same problem told from its end. */
export function reversed({ size, nodes, cost, before, after, rightBefore, rightAfter }: PlainProblem): PlainProblem {
  const turned = new Int32Array(nodes * nodes)
  const other = (node: number) => (node === size ? size + 1 : node === size + 1 ? size : node)
  for (let from = 0; from < nodes; from++) {
    for (let to = 0; to < nodes; to++) turned[other(to) * nodes + other(from)] = cost[from * nodes + to]!
  }
  return {
    size,
    nodes,
    cost: turned,
    before: after,
    after: before,
    rightBefore: rightAfter,
    rightAfter: rightBefore,
  }
}

/** What an order of all operations costs; at least CLOSED when neighbours are among it that may be none. */
export function costOf({ size, nodes, cost }: PlainProblem, order: ArrayLike<number>): number {
  let sum = 0
  let last = size
  for (let place = 0; place < size; place++) {
    sum += cost[last * nodes + order[place]!]!
    last = order[place]!
  }
  return sum + cost[last * nodes + size + 1]!
}
