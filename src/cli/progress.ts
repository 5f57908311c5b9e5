// Word of a search that takes more than a second, at most once a second, beside the answer and never in it.
import type { PlanProgress } from '../planning/plan.ts'
import type { Io } from './io.ts'
import { valueWords } from './words/sequenceWords.ts'

const EVERY_MS = 1000

export function progressOf({ now, err }: Pick<Io, 'now' | 'err'>): (progress: PlanProgress) => void {
  const began = now()
  let next = began + EVERY_MS
  return ({ value, bound, states }) => {
    const time = now()
    if (time < next) return
    next = time + EVERY_MS
    const best = value ? `best so far ${valueWords(value)}` : 'none found so far'
    const seconds = Math.round((time - began) / 1000)
    err(`looking: ${best}; none can be under ${valueWords(bound)} (${seconds} s, ${states} states)`)
  }
}
