// How far each step of a sequence may move: in places, without breaking anything or without making it worse, and in seconds.
import type { PlanningProblem } from '../model/problem.ts'
import type { PlacedStep } from '../model/sequence.ts'
import { compareValues } from '../relations/compareValues.ts'
import { latestStarts } from '../relations/lags.ts'
import type { Breach } from '../relations/rule.ts'
import type { Choice } from '../relations/setUpChanges.ts'
import { assertOnePerson } from '../relations/teams.ts'
import { choicesOf, trial } from './trial.ts'

/** Places in the sequence, from 1. */
export interface Slack {
  readonly op: string
  readonly place: number
  /** It may be moved alone to any place from here to there, all others keeping their order, and the sequence can still be done. */
  readonly first: number
  readonly last: number
  /** The earliest and the latest of these places where the value is no worse. */
  readonly freeFirst: number
  readonly freeLast: number
  /** What breaks one place before `first` and one after `last`; null at the ends of the sequence. */
  readonly heldBack: Breach | null
  readonly heldOn: Breach | null
  /** It starts at the earliest as the sequence says, and may start so many seconds later in this order without a later end. */
  readonly waits_s: number
}

/**
 * The slack of every step of a sequence that can be done. Modes stay as they are; each step is moved alone.
 *
 * @param sequence every operation once, with its mode, such as the steps of `plan`
 * @throws PLANNING_ONE_PERSON for a crew
 * @example slackOf(problem, plan(problem).steps).map(({ first, last }) => [first, last])   // [[1, 1], [2, 2]]
 */
export function slackOf(problem: PlanningProblem, sequence: readonly Pick<PlacedStep, 'op' | 'mode'>[]): Slack[] {
  assertOnePerson(problem, 'Slack')
  const choices = choicesOf(problem, sequence)
  const { value, steps } = trial(problem, choices)
  if (!value) throw new Error('assert: a sequence whose slack is asked has times')
  const latest = latestStarts(problem, choices, value[1])
  return choices.map(({ op }, at) => {
    const one = (by: -1 | 1) => {
      let furthest = at
      let free = at
      for (let to = at + by; to >= 0 && to < choices.length; to += by) {
        const tried = trial(problem, moved(choices, at, to))
        const [held] = tried.breaches
        if (held || !tried.value) return { furthest, free, held: held ?? null }
        furthest = to
        if (compareValues(tried.value, value) <= 0) free = to
      }
      return { furthest, free, held: null }
    }
    const [back, on] = [one(-1), one(1)]
    return {
      op,
      place: at + 1,
      first: back.furthest + 1,
      last: on.furthest + 1,
      freeFirst: back.free + 1,
      freeLast: on.free + 1,
      heldBack: back.held,
      heldOn: on.held,
      waits_s: latest[at]! - steps[at]!.start_s,
    }
  })
}

function moved(choices: readonly Choice[], from: number, to: number): Choice[] {
  const list = [...choices]
  list.splice(to, 0, ...list.splice(from, 1))
  return list
}
