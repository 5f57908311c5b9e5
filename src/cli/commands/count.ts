// `sequence FILE --count`: how many orders of the steps there are at all.
import { countSequences } from '../../planning/countSequences.ts'
import { estimateSequences } from '../../planning/estimateSequences.ts'
import type { PlanningProblem } from '../../planning/model/problem.ts'
import { Problem } from '../../problem/problem.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { CountAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { penFor } from '../words/pen.ts'
import { tellFaults } from './sequence.ts'

export async function count(io: Io, file: string, asked: Asked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const found = counted(work.problem)
  const answer: CountAnswer = {
    schema: 'matchmark-count/1',
    ...aboutWork(file, work),
    inputHash: inputHash(work.problem),
    ...found,
  }
  const size = work.problem.operations.length
  io.out(asked.json ? jsonLine(answer) : `${penFor(io).strong(titleOf(work))}\n${countWords(found, size)}`)
  tellFaults(work, io)
  return found.count === '0' || work.faults.length > 0 ? 1 : 0
}

type Count = Pick<CountAnswer, 'count' | 'estimate'>

/** Exact where it can be counted, else estimated. */
function counted(problem: PlanningProblem): Count {
  try {
    return { count: countSequences(problem), estimate: null }
  } catch (error) {
    if (!(error instanceof Problem) || error.code !== 'PLANNING_COUNT_LIMIT') throw error
    const { count: about, ...estimate } = estimateSequences(problem)
    return { count: about, estimate }
  }
}

const grouped = (digits: string): string => digits.replace(/\B(?=(\d{3})+$)/g, ',')

/** @example countWords({ count: '6', estimate: null }, 4)   // '6 orders of 4 steps satisfy every need.' */
export function countWords({ count: orders, estimate }: Count, steps: number): string {
  if (!estimate) return `${grouped(orders)} orders of ${steps} steps satisfy every need.`
  const { low, high, draws, seed } = estimate
  return [
    `About ${grouped(orders)} orders of ${steps} steps satisfy every need: too many to count one by one.`,
    `Estimated: between ${grouped(low)} and ${grouped(high)}, 95 times in 100 (${draws} draws, seed ${seed}).`,
  ].join('\n')
}
