// One calculation as a rebuilder asks for it.
import type { Asks, Given } from './ask.ts'
import type { Lines } from './say.ts'

export interface Told<A extends Asks, R> {
  /** As it is typed: plain words with hyphens. */
  readonly name: string
  /** The question as it is asked at the bench. */
  readonly asks: string
  /** The calculations of `mechanics` that it calls; the first one's docstring tells meaning, limits and source. */
  readonly of: readonly [string, ...string[]]
  readonly inputs: A
  readonly work: (given: Given<A>) => R
  readonly answers: (result: R, given: Given<A>) => Lines
  /** The formula in words. */
  readonly words: string
  /** Beside those that the calculation itself gives. */
  readonly cautions?: readonly string[]
  /** A line that can be typed behind the name. */
  readonly example: string
}

/** The same with its types put away, as a list of all of them needs it. */
export interface Figure extends Omit<Told<Asks, unknown>, 'work' | 'answers'> {
  readonly answer: (given: Readonly<Record<string, unknown>>) => Answered
}

export interface Answered {
  readonly lines: Lines
  readonly cautions: readonly string[]
  readonly source: string | undefined
}

/** A descriptor; the types of inputs, calculation and answers are held against each other. */
export function figure<const A extends Asks, R>({ work, answers, ...rest }: Told<A, R>): Figure {
  return {
    ...rest,
    answer: (given) => {
      const result = work(given as Given<A>)
      const { cautions = [], source } = (
        typeof result === 'object' && result !== null && !Array.isArray(result) ? result : {}
      ) as { cautions?: readonly string[]; source?: string }
      return { lines: answers(result, given as Given<A>), cautions, source }
    },
  }
}
