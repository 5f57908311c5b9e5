// Tries everything: the outside truth for small problems.
import type { OpId, PlanningProblem } from '../model/problem.ts'
import type { PlacedStep, Value } from '../model/sequence.ts'
import { countOrders } from './countOrders.ts'
import { leastTimes } from './leastTimes.ts'
import { openModes } from './openModes.ts'
import type { ChosenStep } from './resolveStep.ts'
import { compareValues, sequenceValue } from './sequenceValue.ts'

const MOST_SEQUENCES = 400_000n

export interface Enumeration {
  /** Every order of the operations that satisfies the needs for at least one choice of modes. */
  readonly orders: readonly (readonly OpId[])[]
  /** The orders for which lags and neighbours allow times with at least one choice of modes. */
  readonly timed: number
  /** The best value there is, one sequence that has it and how many orders reach it; null when nothing can be done. */
  readonly best: { readonly value: Value; readonly steps: readonly PlacedStep[]; readonly orders: number } | null
}

/**
 * Lists all orders, tries all modes of each with their least times, and keeps the best.
 * @throws RangeError above 400,000 sequences (9 free operations with one mode each are 362,880)
 */
export function enumerate(problem: PlanningProblem): Enumeration {
  const { withModes } = countOrders(problem)
  if (withModes > MOST_SEQUENCES) {
    throw new RangeError(`Trying everything stops at ${MOST_SEQUENCES} sequences; this problem has ${withModes}.`)
  }
  const orders: OpId[][] = []
  let timed = 0
  let best: Enumeration['best'] = null
  for (const choices of byOrder(problem)) {
    orders.push(choices[0]!.map(({ op }) => op))
    const found = bestOf(problem, choices)
    if (!found) continue
    timed += 1
    const better = best ? compareValues(found.value, best.value) : -1
    if (better < 0) best = { ...found, orders: 1 }
    else if (better === 0) best = { ...best!, orders: best!.orders + 1 }
  }
  return { orders, timed, best }
}

/** For each order that satisfies the needs: every choice of modes for it. */
function* byOrder(problem: PlanningProblem): Generator<readonly (readonly ChosenStep[])[]> {
  function* extend(order: readonly OpId[], choices: ChosenStep[][]): Generator<ChosenStep[][]> {
    if (order.length === problem.operations.length) yield choices
    const before = new Set(order)
    for (const operation of problem.operations) {
      const { id: op } = operation
      const open = before.has(op) ? [] : openModes(problem, operation, before)
      if (open.length === 0) continue
      yield* extend(
        [...order, op],
        choices.flatMap((steps) => open.map(({ id: mode }) => [...steps, { op, mode }])),
      )
    }
  }
  yield* extend([], [[]])
}

/** The best of several choices of modes for one order. */
function bestOf(problem: PlanningProblem, choices: readonly (readonly ChosenStep[])[]) {
  return choices
    .map((order) => leastTimes(problem, order))
    .filter((steps) => steps !== undefined)
    .map((steps) => ({ steps, value: sequenceValue(problem, steps) }))
    .reduce<{ steps: readonly PlacedStep[]; value: Value } | undefined>(
      (best, found) => (best && compareValues(best.value, found.value) <= 0 ? best : found),
      undefined,
    )
}
