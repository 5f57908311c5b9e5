// What every hard rule has: a name, and a function that lists where a sequence breaks it.
import type { Mode, OpId, PlanningProblem } from '../model/problem.ts'

/** One step of a sequence that is judged, with its times where they are told or worked out. */
export interface JudgedStep {
  readonly op: OpId
  readonly mode: Mode
  readonly start_s?: number
  readonly end_s?: number
  readonly people?: readonly string[]
}

/** Where a sequence breaks a rule. `says` is one sentence for people; `facts` carries what it was made from. */
export interface Breach {
  readonly rule: 'need' | 'lag' | 'set-up change' | 'one person' | 'crew' | 'between'
  /** The need or lag that is broken; else the operation. */
  readonly id: string
  readonly op: OpId
  readonly says: string
  readonly facts: Readonly<Record<string, string | number | readonly string[]>>
}

export interface Rule {
  readonly name: string
  readonly hard: true
  readonly breaches: (problem: PlanningProblem, sequence: readonly JudgedStep[]) => Breach[]
}

/** “Fit the seal”: how sentences name an operation. */
export const naming = (problem: PlanningProblem): ((op: OpId) => string) => {
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  return (op) => `“${does.get(op) ?? op}”`
}

export const listing = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
