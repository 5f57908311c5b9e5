// `sequence FILE --count`: how many orders of the steps there are at all.
import { countSequences } from '../../planning/countSequences.ts'
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
  const orders = countSequences(work.problem)
  const answer: CountAnswer = {
    schema: 'matchmark-count/1',
    ...aboutWork(file, work),
    inputHash: inputHash(work.problem),
    count: orders,
  }
  const grouped = orders.replace(/\B(?=(\d{3})+$)/g, ',')
  io.out(
    asked.json
      ? jsonLine(answer)
      : `${penFor(io).strong(titleOf(work))}\n${grouped} orders of ${work.problem.operations.length} steps satisfy every need.`,
  )
  tellFaults(work, io)
  return orders === '0' || work.faults.length > 0 ? 1 : 0
}
