// `check FILE`: what contradicts itself, what is not known and what that holds up, and how much there is of everything.
import { massOf, type WorkUp } from '../../job/workUp.ts'
import { printQuantity, printRange, type System } from '../../quantity/printQuantity.ts'
import type { Kilogram } from '../../quantity/quantity.ts'
import { aboutWork, systemOf, titleOf, unitsNote } from '../aboutWork.ts'
import type { CheckAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import { Faults, faultAnswer } from '../faults.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { questionWords } from '../words/questionWords.ts'
import { counted } from '../words/timeWords.ts'
import { tellFaults } from './sequence.ts'

export interface CheckAsked extends Asked {
  /** Also which sizes decide the sequence: that takes some seconds. */
  readonly sizes?: boolean
}

export async function check(io: Io, file: string, asked: CheckAsked): Promise<ExitCode> {
  try {
    const work = await openWork(file, io, asked)
    const answer = { ...checkAnswerOf(file, work), sizesThatDecide: asked.sizes ? await decidingSizes(work) : null }
    io.out(asked.json ? jsonLine(answer) : checkWords(answer, work, { io, asked }))
    if (!asked.json) tellFaults(work, io)
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
      sizesThatDecide: null,
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
    sizesThatDecide: null,
  }
}

async function decidingSizes({ unit, joints }: WorkUp) {
  const { deciding } = await import('../../unit/derive/deciding.ts')
  return deciding(unit, joints).map(({ part, line, decides, loosens }) => ({
    part,
    line,
    steps: [...new Set([...decides.map(({ later }) => later), ...loosens])],
  }))
}

function checkWords(
  { counts, sizesThatDecide }: CheckAnswer,
  work: WorkUp,
  { io, asked }: { io: Io; asked: Asked },
): string {
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
    massWords(work, systemOf(work, asked)),
    ...unitsNote(work, asked),
    '',
    work.faults.length === 0
      ? 'Nothing contradicts itself.'
      : pen.stop(`${counted(work.faults.length, 'fault')}, told below.`),
    ...(work.questions.length === 0
      ? ['Nothing is missing that anybody asks for.']
      : ['', ...questionWords(work.questions, pen)]),
    '',
    ...(sizesThatDecide
      ? sizeWords(sizesThatDecide, work, pen)
      : ['With --sizes it lists the sizes that decide the sequence.']),
  ].join('\n')
}

/** What the unit weighs; known in part only, it is a least and says so. */
function massWords(work: WorkUp, system: System): string {
  const { atLeast, whole, unknown } = massOf(work)
  const print = (mass: Kilogram) => printQuantity(mass, 'mass', { system })
  if (!whole && atLeast === 0) return 'Nothing of it is weighed yet.'
  if (!whole)
    return `It weighs at least ${print(atLeast)}; ${unknown.join(', ')} not weighed: weigh it before it hangs.`
  return `It weighs ${printRange(whole, 'mass', { system })}.`
}

function sizeWords(deciding: NonNullable<CheckAnswer['sizesThatDecide']>, { unit }: WorkUp, pen: Pen): string[] {
  const named = new Set(deciding.map(({ part }) => part))
  const others = [...unit.parts.values()]
    .filter(({ id, rings }) => rings.size > 0 && !named.has(id))
    .map(({ id }) => id)
  return [
    pen.strong(`Diameters that decide the sequence (${deciding.length})`),
    ...deciding.flatMap(({ part, line, steps }) =>
      wrapped(`${part} on line ${line}: without them ${steps.join(', ')} would wait for less`, {
        width: pen.width,
        first: '  · ',
        rest: '    ',
      }),
    ),
    ...(others.length > 0
      ? wrapped(`The sequence would be the same without those of ${others.join(', ')}.`, {
          width: pen.width,
          first: '  ',
        })
      : []),
  ]
}
