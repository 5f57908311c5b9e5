// `settings FILE`: what to press, heat, torque and shim, from the sizes as they stand.
import { settingsOf } from '../../job/workUp.ts'
import { aboutWork, systemOf, titleOf } from '../aboutWork.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { penFor } from '../words/pen.ts'
import { settingWords } from '../words/settingWords.ts'
import { tellFaults } from './sequence.ts'

export async function settings(io: Io, file: string, asked: Asked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const all = settingsOf(work)
  const isOut = all.some(({ figures }) => figures.some(({ verdict }) => verdict === 'out'))
  const answer = { schema: 'matchmark-settings/1', ...aboutWork(file, work), settings: all }
  const pen = penFor(io)
  io.out(
    asked.json
      ? jsonLine(answer)
      : [pen.strong(titleOf(work)), '', ...settingWords(all, pen, systemOf(work, asked)), '', FIRST].join('\n'),
  )
  tellFaults(work, io)
  return isOut || work.faults.length > 0 ? 1 : 0
}

const FIRST = "The maker's manual, the local code and licensed practice come first."
