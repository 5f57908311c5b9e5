// Contract, section 3: the best times for an order whose modes are chosen.
import type { LagEvent, PlanningProblem } from '../model/problem.ts'
import type { PlacedStep } from '../model/sequence.ts'
import { betweenSeconds } from './betweenSeconds.ts'
import { type ChosenStep, resolveOrder } from './resolveStep.ts'
import { setupChanges } from './setupChanges.ts'

/** `starts[after] ≥ starts[before] + s`; place -1 is the moment 0. */
interface AtLeast {
  readonly before: number
  readonly after: number
  readonly s: number
}

/**
 * The least times that keep one person, set-ups and lags: every operation as early as it can be, and so the least
 * elapsed time. Undefined when the lags allow no times for this order, or a neighbour is none that may be. Needs are not judged here.
 *
 * The rules form a simple temporal network (differences between starts with lower bounds). Its least solution is the
 * longest path from the moment 0 to each start, found by Bellman-Ford; when a round still moves something after as many
 * rounds as there are starts, the rules chase each other in a circle and nothing satisfies them.
 * @throws RangeError when a step is not in the problem, or the order leaves out an operation that a lag names
 * @source R. Dechter, I. Meiri, J. Pearl, Temporal constraint networks, Artificial Intelligence 49 (1991) 61-95
 */
export function leastTimes(problem: PlanningProblem, order: readonly ChosenStep[]): readonly PlacedStep[] | undefined {
  const steps = resolveOrder(problem, order)
  const durations = steps.map(({ operation }) => operation.duration_s.usual)
  const changes = setupChanges(
    problem,
    steps.map(({ mode }) => mode.setup),
  )

  const between = betweenSeconds(
    problem,
    order.map(({ op }) => op),
  )
  if (between.includes(null)) return undefined

  const placeOf = (event: LagEvent): number => {
    const place = order.findIndex(({ op }) => op === event.op)
    if (place < 0) throw new RangeError(`The order leaves out '${event.op}', which a lag names.`)
    return place
  }
  /** Seconds from the start of the event's operation to the event. */
  const offset = (event: LagEvent, place: number): number => (event.edge === 'end' ? durations[place]! : 0)

  const rules: AtLeast[] = steps.map((_, place) => ({
    before: place - 1,
    after: place,
    s: (place === 0 ? 0 : durations[place - 1]!) + changes[place]!.s + between[place]!,
  }))
  for (const { from, to, min_s, max_s } of problem.lags) {
    const [a, b] = [placeOf(from), placeOf(to)]
    const offsets = offset(from, a) - offset(to, b)
    if (min_s !== undefined) rules.push({ before: a, after: b, s: min_s + offsets })
    if (max_s !== undefined) rules.push({ before: b, after: a, s: -max_s - offsets })
  }

  const starts = steps.map(() => 0)
  let moved = true
  for (let round = 0; moved; round++) {
    if (round > steps.length) return undefined
    moved = false
    for (const { before, after, s } of rules) {
      const earliest = (before < 0 ? 0 : starts[before]!) + s
      if (earliest > starts[after]!) {
        starts[after] = earliest
        moved = true
      }
    }
  }
  return order.map(({ op, mode }, place) => ({
    op,
    mode,
    start_s: starts[place]!,
    end_s: starts[place]! + durations[place]!,
  }))
}
