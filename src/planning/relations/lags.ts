// The rule of lags: the time between two events lies between its least and its most.
import type { Lag, LagEvent, PlanningProblem } from '../model/problem.ts'
import { earliestStarts, type TimeBound } from './earliestStarts.ts'
import { lagConstraints } from './lagConstraints.ts'
import { type Breach, type JudgedStep, naming, type Rule } from './rule.ts'
import { secondsBefore } from './secondsBefore.ts'

const eventOf = (name: (op: string) => string, { op, edge }: LagEvent): string => `the ${edge} of ${name(op)}`

function says(lag: Lag, name: (op: string) => string, between_s: number | null): string {
  const span = `between ${eventOf(name, lag.from)} and ${eventOf(name, lag.to)}`
  const asked = [
    ...(lag.min_s === undefined ? [] : [`at least ${lag.min_s} s`]),
    ...(lag.max_s === undefined ? [] : [`at most ${lag.max_s} s`]),
  ].join(' and ')
  return between_s === null
    ? `In this order it cannot be ${asked} ${span}. ${lag.reason.says}`
    : `There are ${between_s} s ${span}; asked is ${asked}. ${lag.reason.says}`
}

const breach = (lag: Lag, name: (op: string) => string, between_s: number | null): Breach => ({
  rule: 'lag',
  id: lag.id,
  op: lag.to.op,
  says: says(lag, name, between_s),
  facts: {
    lag: lag.id,
    from: lag.from.op,
    to: lag.to.op,
    ...(lag.min_s === undefined ? {} : { min_s: lag.min_s }),
    ...(lag.max_s === undefined ? {} : { max_s: lag.max_s }),
    ...(between_s === null ? {} : { between_s }),
  },
})

/** Bounds between places of a sequence, from the lags of a problem. */
function boundsIn(problem: PlanningProblem, sequence: readonly JudgedStep[]): TimeBound[] {
  const places = new Map(sequence.map(({ op }, place) => [op, place]))
  const indexOf = new Map(problem.operations.map(({ id }, at) => [id, at]))
  const placeOf = (at: number) => places.get(problem.operations[at]!.id)!
  return lagConstraints(problem, indexOf).map(({ later, earlier, least_s, lag }) => ({
    later: placeOf(later),
    earlier: placeOf(earlier),
    least_s,
    lag,
  }))
}

/** The best starts of a sequence: as early as its order, changes and lags let them be; null when no times are left. */
export function bestStarts(problem: PlanningProblem, sequence: readonly JudgedStep[]): number[] | null {
  return earliestStarts(...lastsOf(problem, sequence), boundsIn(problem, sequence))
}

/** The latest starts of a sequence that can be done, when its last operation is to end by `end_s`. */
export function latestStarts(problem: PlanningProblem, sequence: readonly JudgedStep[], end_s: number): number[] {
  const [durations_s, changes_s] = lastsOf(problem, sequence)
  // Read backwards, from the end: what has to come before becomes what has to come after.
  const mirror = (place: number) => sequence.length - 1 - place
  const back = earliestStarts(
    [...durations_s].reverse(),
    sequence.map((_, place) => (place === 0 ? 0 : changes_s[sequence.length - place]!)),
    boundsIn(problem, sequence).map(({ later, earlier, least_s, lag }) => ({
      later: mirror(earlier),
      earlier: mirror(later),
      // Between ends instead of starts.
      least_s: least_s - durations_s[earlier]! + durations_s[later]!,
      lag,
    })),
  )
  if (!back) throw new Error('assert: a sequence with times has latest times')
  return sequence.map((_, place) => end_s - back[mirror(place)]! - durations_s[place]!)
}

function lastsOf(problem: PlanningProblem, sequence: readonly JudgedStep[]): [number[], number[]] {
  const durations = new Map(problem.operations.map(({ id, duration_s }) => [id, duration_s.usual]))
  return [sequence.map(({ op }) => durations.get(op)!), secondsBefore(problem, sequence)]
}

export const lags: Rule = {
  name: 'lags',
  hard: true,
  breaches: (problem, sequence) => {
    const name = naming(problem)
    const steps = new Map(sequence.map((step) => [step.op, step]))
    const timeOf = ({ op, edge }: LagEvent) => steps.get(op)![edge === 'start' ? 'start_s' : 'end_s']
    if (sequence.every(({ start_s, end_s }) => start_s !== undefined && end_s !== undefined)) {
      return problem.lags.flatMap((lag) => {
        const between_s = timeOf(lag.to)! - timeOf(lag.from)!
        const isKept = between_s >= (lag.min_s ?? -Infinity) && between_s <= (lag.max_s ?? Infinity)
        return isKept ? [] : [breach(lag, name, between_s)]
      })
    }
    // Without times: a lag is broken when no times are left with those that were taken in before it.
    const [durations_s, changes_s] = lastsOf(problem, sequence)
    const bounds = boundsIn(problem, sequence)
    const kept: TimeBound[] = []
    return problem.lags.flatMap((lag) => {
      const own = bounds.filter((bound) => bound.lag === lag)
      const fits = own.every(({ later, earlier, least_s }) => later !== earlier || least_s <= 0)
      if (fits && earliestStarts(durations_s, changes_s, [...kept, ...own])) {
        kept.push(...own)
        return []
      }
      return [breach(lag, name, null)]
    })
  },
}
