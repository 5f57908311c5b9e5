// Works a job out beside the page: reading the unit, deriving the steps, looking for the sequence, drawing.
import { Problem, printProblem } from '../../problem/problem.ts'
import { readUnit } from '../../unit/file/readUnit.ts'
import type { Unit } from '../../unit/model/unit.ts'
import { lineDrawing, stepDrawing } from '../model/drawings.ts'
import { takeOff } from '../model/takeOff.ts'
import { tryProposal } from '../model/tryProposal.ts'
import { type Workings, workedJob } from '../model/workedJob.ts'
import type { Answer, Question, Sources } from './protocol.ts'

let workings: Workings | undefined
let read: { readonly text: string; readonly unit: Unit } | undefined

const answer = (message: Answer) => postMessage(message)

self.addEventListener('message', ({ data }: MessageEvent<Question>) => {
  try {
    answerTo(data)
  } catch (error) {
    const says = error instanceof Problem ? printProblem(error) : error instanceof Error ? error.message : String(error)
    answer({ id: data.id, is: 'trouble', says: [says] })
  }
})

function answerTo(question: Question): void {
  const { id } = question
  if (question.asks === 'work') answer(work(id, question.sources))
  else if (question.asks === 'next try') answer({ id, is: 'next try', next: tryProposal(question.asked) })
  else if (!workings) answer({ id, is: 'trouble', says: ['assert: drawn before it was worked out'] })
  else if (question.asks === 'step')
    answer({ id, is: 'drawn', drawing: stepDrawing(workings, question.step, question.room) })
  else if (question.asks === 'off') answer({ id, is: 'off', off: takeOff(workings, question.step, question.done) })
  else answer({ id, is: 'drawn', drawing: lineDrawing(workings, question.line, question.room) })
}

function work(id: number, { unitText, unitFile, job, sequence, system }: Sources): Answer {
  if (read?.text !== unitText) {
    const { unit, faults } = readUnit(unitText, unitFile)
    if (!unit) return { id, is: 'trouble', says: faults.map(printProblem) }
    read = { text: unitText, unit }
  }
  const done = workedJob({ unit: read.unit, job, system, ...(sequence && { sequence }) }, ({ states }) =>
    answer({ id, is: 'progress', states }),
  )
  workings = done.workings
  return { id, is: 'worked', worked: done.worked }
}
