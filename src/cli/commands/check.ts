// `check FILE`: what contradicts itself, what is not known and what that holds up, and how much there is of everything.
import type { WorkUp } from '../../job/workUp.ts'
import { printProblem } from '../../problem/problem.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { CheckAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import { Faults, faultAnswer } from '../faults.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { penFor } from '../words/pen.ts'
import { questionWords } from '../words/questionWords.ts'
import { counted } from '../words/timeWords.ts'

export async function check(io: Io, file: string, asked: Asked): Promise<ExitCode> {
  try {
    const work = await openWork(file, io, asked)
    const answer = checkAnswerOf(file, work)
    io.out(asked.json ? jsonLine(answer) : checkWords(answer, work, io))
    for (const fault of work.faults) if (!asked.json) io.err(printProblem(fault))
    return answer.faults.length > 0 ? 1 : 0
  } catch (error) {
    if (!(error instanceof Faults) || !asked.json) throw error
    const unread: CheckAnswer = {
      schema: 'matchmark-check/1',
      file,
      unit: null,
      variant: null,
      job: null,
      counts: null,
      faults: error.problems.map(faultAnswer),
      questions: [],
    }
    io.out(jsonLine(unread))
    return 1
  }
}

function checkAnswerOf(file: string, work: WorkUp): CheckAnswer {
  const { unit, derivation, connections, questions, faults } = work
  const parts = [...unit.parts.values()]
  return {
    schema: 'matchmark-check/1',
    ...aboutWork(file, work),
    counts: {
      parts: parts.length,
      pieces: parts.reduce((sum, { pieces }) => sum + pieces, 0),
      lines: unit.lines.size,
      ways: derivation.ways.filter(({ mode }) => mode).length,
      openings: unit.openings.size,
      connections: connections.connections.length,
      operations: work.problem.operations.length,
      needs: derivation.needs.all,
      needsByHand: derivation.needs.byHand,
      questions: questions.length,
      faults: faults.length,
    },
    faults: faults.map(faultAnswer),
    questions: questions.map(({ about, asks, holdsUp, rank }) => ({ about, asks, holdsUp, rank })),
  }
}

function checkWords({ counts }: CheckAnswer, work: WorkUp, io: Io): string {
  const pen = penFor(io)
  const { parts, pieces, lines, ways, openings, connections, operations, needs, needsByHand } = counts!
  const share = needs === 0 ? 0 : Math.round((100 * needsByHand) / needs)
  return [
    pen.strong(titleOf(work)),
    [
      counted(parts, 'part'),
      counted(pieces, 'piece'),
      counted(lines, 'line'),
      counted(openings, 'opening'),
      counted(ways, 'way in', 'ways in'),
      counted(connections, 'connection'),
    ].join(' · '),
    `${counted(operations, 'step')} with ${counted(needs, 'need')}, of which ${needsByHand} declared by hand (${share} %)`,
    '',
    work.faults.length === 0
      ? 'Nothing contradicts itself.'
      : pen.stop(`${counted(work.faults.length, 'fault')}, told below.`),
    ...(work.questions.length === 0
      ? ['Nothing is missing that anybody asks for.']
      : ['', ...questionWords(work.questions, pen)]),
  ].join('\n')
}
