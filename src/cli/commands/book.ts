// `book FILE -o DIR`: the job book, one page with everything inside.

import { workedOut } from '../../job/workedOut.ts'
import { aboutWork, systemOf } from '../aboutWork.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { writeJobBook } from '../jobBookOf.ts'
import { openWork } from '../openWork.ts'
import { proofWords } from '../words/sequenceWords.ts'
import { searched, tellFaults } from './sequence.ts'

export async function book(
  io: Io,
  { file, into }: { readonly file: string; readonly into: string },
  asked: Asked,
): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { result } = searched(work, io, {})
  const path = await writeJobBook(workedOut(work, result, systemOf(work, asked)), { into, io })
  if (asked.json) io.out(jsonLine({ schema: 'matchmark-book/1', ...aboutWork(file, work), book: path }))
  else {
    io.out(`${path}\n${proofWords(result, work.faults.length)}`)
    tellFaults(work, io)
  }
  return result.value && work.faults.length === 0 ? 0 : 1
}
