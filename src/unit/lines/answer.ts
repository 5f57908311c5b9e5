// Yes, no or not known, and how well that is known.
import type { Standing } from '../../planning/model/problem.ts'

export interface Answer {
  readonly is: 'yes' | 'no' | 'not known'
  /** The weakest standing among the facts that decide it. */
  readonly standing: Standing
}

const ORDER: readonly Standing[] = ['seen', 'told', 'usual', 'supposed']

export const weaker = (a: Standing, b: Standing): Standing => (ORDER.indexOf(a) > ORDER.indexOf(b) ? a : b)
export const stronger = (a: Standing, b: Standing): Standing => (weaker(a, b) === a ? b : a)

/** Measured or told, not merely usual or a guess. */
export const isFirm = (standing: Standing): boolean => standing === 'seen' || standing === 'told'

export const YES: Answer = { is: 'yes', standing: 'seen' }
export const NO: Answer = { is: 'no', standing: 'seen' }
export const NOT_KNOWN: Answer = { is: 'not known', standing: 'supposed' }

/** Yes when all are yes; one firm no is enough for no. */
export function all(answers: readonly Answer[]): Answer {
  const noes = answers.filter((answer) => answer.is === 'no')
  if (noes.length) return { is: 'no', standing: noes.map((answer) => answer.standing).reduce(stronger) }
  if (answers.some((answer) => answer.is === 'not known')) return NOT_KNOWN
  return { is: 'yes', standing: answers.map((answer) => answer.standing).reduce(weaker, 'seen') }
}

export function not(answer: Answer): Answer {
  if (answer.is === 'not known') return answer
  return { is: answer.is === 'yes' ? 'no' : 'yes', standing: answer.standing }
}

/** Yes when one is yes. */
export const any = (answers: readonly Answer[]): Answer => not(all(answers.map(not)))
