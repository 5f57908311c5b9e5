// Faults found in the work: what a file says wrongly, or what cannot be true together. All of them at once.
import { type Problem, printProblem } from '../problem/problem.ts'

export class Faults extends Error {
  override readonly name = 'Faults'
  readonly problems: readonly Problem[]

  constructor(problems: readonly Problem[]) {
    super(problems.map(printProblem).join('\n'))
    this.problems = problems
  }
}

/** One fault for machines. */
export const faultAnswer = ({ code, message, next, place }: Problem) => ({
  code,
  says: message,
  next,
  ...(place && { file: place.file, line: place.line, column: place.column }),
})
