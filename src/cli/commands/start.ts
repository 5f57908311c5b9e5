// `start FILE`: all of it in one go, told in words; the job book is written and, unless it is to be once, shown.
import { dirname, join } from 'node:path'
import type { Job } from '../../job/model/job.ts'
import { type WorkedOut, workedOut } from '../../job/workedOut.ts'
import { importJob } from '../../server/jobs/importJob.ts'
import type { Served } from '../../server/serveShop.ts'
import { KEEPER } from '../../server/shop/who.ts'
import { aboutWork, systemOf, titleOf } from '../aboutWork.ts'
import { jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { writeJobBook } from '../jobBookOf.ts'
import { noReturnsOf } from '../noReturns.ts'
import { openWork } from '../openWork.ts'
import { kitWords } from '../words/kitWords.ts'
import { type Pen, penFor } from '../words/pen.ts'
import { questionWords } from '../words/questionWords.ts'
import { noReturnWords, sequenceWords } from '../words/sequenceWords.ts'
import { settingWords } from '../words/settingWords.ts'
import { counted } from '../words/timeWords.ts'
import { searched, tellFaults } from './sequence.ts'
import { type ServeAsked, serve } from './serve.ts'

export interface StartAsked extends ServeAsked {
  readonly into: string
  readonly once?: boolean
}

/** Questions of each rank that are told at once; `check` lists all. */
const FEW_QUESTIONS = 6

export async function start(io: Io, file: string, asked: StartAsked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { result, wall_s } = searched(work, io, {})
  const out = workedOut(work, result, systemOf(work, asked))
  // Told first: the book takes a moment longer.
  if (!asked.json) {
    io.out(startWords(out, file, penFor(io)).join('\n'))
    tellFaults(work, io)
  }
  const path = await writeJobBook(out, { into: asked.into, io })
  if (asked.json) io.out(jsonLine({ schema: 'matchmark-book/1', ...aboutWork(file, work), book: path }))
  else io.out(`\nThe job book is ${path}; the sequence was found in ${wall_s.toFixed(2)} s.`)
  const code = result.value && work.faults.length === 0 ? 0 : 1
  if (asked.once) return code
  const bring = async ({ shop }: Served) => {
    if (work.job)
      await importJob(
        { job: work.job, unit: await unitText(file, work.job, io), sequence: result },
        { ...shop, now: io.clock, person: KEEPER },
      )
  }
  return (await serve(io, asked.into, asked, bring)) || code
}

const unitText = (file: string, job: Job, { files }: Io): Promise<string> => files.read(join(dirname(file), job.unit))

function startWords({ work, result, system, settings, kit }: WorkedOut, file: string, pen: Pen): string[] {
  const { problem } = work
  const section = (title: string, lines: readonly string[]): string[] =>
    lines.length > 0 ? ['', pen.strong(title.toUpperCase()), ...lines] : []
  const noReturns = noReturnsOf(problem, result)
  return [
    pen.strong(titleOf(work)),
    ...section('Sequence', sequenceWords(work, result, pen)),
    ...section(`No way back: ${counted(noReturns.length, 'point')} of no return`, noReturnWords(noReturns, pen)),
    ...section('Settings', settingWords(settings, pen, system)),
    ...section('To get', kitWords(kit, pen)),
    ...section('Not known', questionWords(work.questions, pen, FEW_QUESTIONS)),
    ...(work.questions.length > 0 ? [pen.faint(`  'matchmark check ${file}' lists them all.`)] : []),
  ]
}
