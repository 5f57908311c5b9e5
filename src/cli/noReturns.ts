// The points of no return of a sequence: one answer for the list, its heading and the machine's answer.
import type { PlanningProblem } from '../planning/model/problem.ts'
import type { PlanResult } from '../planning/model/sequence.ts'

export interface NoReturn {
  /** Its place in the sequence, from 1. */
  readonly number: number
  readonly step: string
  readonly does: string
  readonly says: string
}

/** Every step of a sequence that cannot be taken back without new parts or harm, in order. */
export function noReturnsOf(problem: PlanningProblem, { steps }: PlanResult): readonly NoReturn[] {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  return steps.flatMap(({ op }, place) => {
    const { does, noReturn } = operations.get(op)!
    return noReturn ? [{ number: place + 1, step: op, does, says: noReturn }] : []
  })
}
