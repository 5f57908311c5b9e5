// All orders near a known one, searched at once and exactly: an operation may be done early, but never while one that stands so many
// places before it is not done. There are exponentially many, and few states.
import { emptySet, membersOf, setOf } from '../../bitSet.ts'
import type { PlainProblem } from './plainProblem.ts'
import type { Potentials } from './potentials.ts'
import { type Stop, Sweep } from './sweep.ts'

export interface NearLimits {
  readonly ceiling: number
  readonly reach: number
  readonly width: number
  readonly stop: Stop
}

/**
 * The best order under the ceiling in which nothing comes before what stands `reach` places or more ahead of it; null when none is.
 * @source E. Balas, N. Simonetti, Linear time dynamic-programming algorithms for new classes of restricted TSPs, INFORMS Journal on
 *   Computing 13 (2001) 56-75
 */
export function bestNear(
  problem: PlainProblem,
  potentials: Potentials,
  order: Int32Array,
  limits: NearLimits,
): { found: { cost: number; order: Int32Array } | null; made: number } {
  const sweep = new Sweep(renumbered(problem, order), pricesInOrder(potentials, order))
  const { found } = sweep.run(limits)
  return { found: found && { cost: found.cost, order: found.order.map((place) => order[place]!) }, made: sweep.made }
}

/** The problem with its operations numbered by their places in an order. */
function renumbered({ size, nodes, cost, ...orders }: PlainProblem, order: Int32Array): PlainProblem {
  const nodeAt = nodesOf(order)
  const placeOf = new Int32Array(size)
  order.forEach((op, place) => {
    placeOf[op] = place
  })
  const moved = new Int32Array(nodes * nodes)
  for (let from = 0; from < nodes; from++) {
    const row = nodeAt[from]! * nodes
    for (let to = 0; to < nodes; to++) moved[from * nodes + to] = cost[row + nodeAt[to]!]!
  }
  const list = (of: readonly (readonly number[])[]) => Array.from(order, (op) => of[op]!.map((each) => placeOf[each]!))
  const sets = (of: readonly Uint32Array[]) =>
    Array.from(order, (op) =>
      size === 0
        ? emptySet(0)
        : setOf(
            size,
            membersOf(of[op]!).map((each) => placeOf[each]!),
          ),
    )
  return {
    size,
    nodes,
    cost: moved,
    before: sets(orders.before),
    after: sets(orders.after),
    rightBefore: list(orders.rightBefore),
    rightAfter: list(orders.rightAfter),
  }
}

const nodesOf = (order: Int32Array): Int32Array => Int32Array.from([...order, order.length, order.length + 1])

function pricesInOrder({ bound, leave, worth, around, chain }: Potentials, order: Int32Array): Potentials {
  const nodeAt = nodesOf(order)
  const movedWorth = worth.slice()
  const movedAround = around.slice()
  nodeAt.forEach((node, place) => {
    movedWorth[place] = worth[node]!
    movedAround[place] = around[node]!
  })
  return {
    bound,
    leave: Float64Array.from(nodeAt, (node) => leave[node]!),
    worth: movedWorth,
    around: movedAround,
    chain: Float64Array.from(nodeAt, (node) => chain[node]!),
  }
}
