// The one kind of error that a person may see. Pure code throws it; an edge catches it once and prints it.
import { CATALOGUE, type ProblemCode } from './catalogue.ts'
import type { Facts } from './facts.ts'

/** A place in a file that a person wrote: one-based line and column. */
export interface Place {
  readonly file: string
  readonly line: number
  readonly column: number
}

/** Something received that cannot be used: what came, what was expected, where, and what to do next. */
export class Problem extends Error {
  override readonly name = 'Problem'
  readonly code: ProblemCode
  readonly facts: Facts
  readonly place: Place | undefined

  constructor(code: ProblemCode, facts: Facts = {}, place?: Place) {
    super(CATALOGUE[code].says(facts))
    this.code = code
    this.facts = facts
    this.place = place
  }

  /** What the person can do about it. */
  get next(): string {
    const { next } = CATALOGUE[this.code]
    return typeof next === 'function' ? next(this.facts) : next
  }

  /** The HTTP status that an edge answers with. */
  get http(): number {
    return CATALOGUE[this.code].http
  }

  /** The same problem, told where in a file it stands; a place that is already known is kept. */
  at(place: Place): Problem {
    return this.place ? this : new Problem(this.code, this.facts, place)
  }
}

/** One line for people: `file:line:column: what is wrong. What to do.` */
export function printProblem(problem: Problem): string {
  const { place } = problem
  const where = place ? `${place.file}:${place.line}:${place.column}: ` : ''
  return `${where}${problem.message} ${problem.next}`.trim()
}
