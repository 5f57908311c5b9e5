// `kit FILE`: one list of what to get.
import { kitOf } from '../../job/kit.ts'
import { renewalsOf } from '../../job/workUp.ts'
import { aboutWork, systemOf, titleOf } from '../aboutWork.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { kitWords } from '../words/kitWords.ts'
import { penFor } from '../words/pen.ts'
import { tellFaults } from './sequence.ts'

export async function kit(io: Io, file: string, asked: Asked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const lines = kitOf(work.unit, work.job, renewalsOf(work), systemOf(work, asked))
  const pen = penFor(io)
  io.out(
    asked.json
      ? jsonLine({ schema: 'matchmark-kit/1', ...aboutWork(file, work), lines })
      : [pen.strong(titleOf(work)), ...kitWords(lines, pen)].join('\n'),
  )
  tellFaults(work, io)
  return work.faults.length > 0 ? 1 : 0
}
