// What comes before each step of a sequence that is placed in time: what is set up anew, and who waits how long.
import type { Mode, OpId, PlanningProblem } from '../model/problem.ts'
import { crewChanges, ownSeconds, turnSeconds } from './crewChanges.ts'
import { type SetUpChange, setUpChanges } from './setUpChanges.ts'
import { worksTogether } from './teams.ts'

export interface Before {
  readonly changes: readonly SetUpChange[]
  /** Seconds in which nobody who is at the step has anything to do. */
  readonly wait_s: number
  /** Who of a crew waits for it, and how many seconds; nobody where one person works. */
  readonly idle: readonly { readonly person: string; readonly s: number }[]
}

export interface Placed {
  readonly op: OpId
  readonly mode: Mode
  readonly start_s: number
  readonly end_s: number
  readonly people?: readonly string[]
}

/** For each step, in the order of starts (docs/reference/contract.md, sections 2 and 8). */
export function beforeEach(problem: PlanningProblem, steps: readonly Placed[]): readonly Before[] {
  return worksTogether(problem) ? beforeOfCrew(problem, steps) : beforeOfOne(problem, steps)
}

function beforeOfOne(problem: PlanningProblem, steps: readonly Placed[]): readonly Before[] {
  return setUpChanges(problem, steps).map((changes, place) => {
    const spent = changes.reduce((sum, { s }) => sum + s, 0)
    const ended = steps[place - 1]?.end_s ?? 0
    return { changes, wait_s: Math.max(0, steps[place]!.start_s - ended - spent), idle: [] }
  })
}

function beforeOfCrew(problem: PlanningProblem, steps: readonly Placed[]): readonly Before[] {
  const ended = new Map<string, number>()
  return crewChanges(problem, steps).map((changes, place) => {
    const { start_s, end_s, people = [] } = steps[place]!
    const setUp = start_s - turnSeconds(changes)
    const idle = people.map((person) => {
      const ready = (ended.get(person) ?? 0) + ownSeconds(changes, person)
      ended.set(person, end_s)
      return { person, s: Math.max(0, setUp - ready) }
    })
    return { changes, wait_s: idle.length > 0 ? Math.min(...idle.map(({ s }) => s)) : 0, idle }
  })
}
