// `sequence FILE --judge ORDERFILE`: where a told order breaks a need or a clock, and what it costs more than the best.
import { judge } from '../../planning/judge.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { JudgementAnswer } from '../answers/schema.ts'
import { jsonLine } from '../asked.ts'
import { Faults } from '../faults.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { readOrder } from '../readOrder.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { proofWords, valueWords } from '../words/sequenceWords.ts'
import { counted, spanOfTime } from '../words/timeWords.ts'
import { type SequenceAsked, searched, tellFaults } from './sequence.ts'

export async function judgeOrder(
  io: Io,
  file: string,
  asked: SequenceAsked & { readonly judge: string },
): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { problem } = work
  const steps = problem.operations.map(({ id, does }) => ({ id, also: does }))
  const told = readOrder(await io.files.read(asked.judge), asked.judge, steps)
  if (told.faults.length > 0) throw new Faults(told.faults)
  const { result } = searched(work, io, asked)
  const judgement = judge(problem, told.steps, result.value)
  const { breaches, value, costsMore } = judgement
  const answer: JudgementAnswer = {
    schema: 'matchmark-judgement/1',
    ...aboutWork(file, work),
    order: asked.judge,
    inputHash: inputHash(problem),
    breaches: breaches.map(({ rule, id, op, says }) => ({ rule, id, step: op, says })),
    value: value && [...value],
    best: result.value && [...result.value],
    costsMore: costsMore && [...costsMore],
  }
  const pen = penFor(io)
  const places = new Map(told.steps.map(({ op }, place) => [op, place + 1]))
  io.out(
    asked.json
      ? jsonLine(answer)
      : [
          pen.strong(titleOf(work)),
          ...breachWords(answer, places, pen),
          ...(value ? [`Done in this order it takes ${valueWords(value)}.`] : ['No times hold for this order.']),
          ...(result.value
            ? [`The best takes ${valueWords(result.value)}. ${proofWords(result, work.faults.length)}`]
            : [proofWords(result, work.faults.length)]),
          ...(costsMore ? [`This order costs ${costWords(costsMore)}.`] : []),
        ].join('\n'),
  )
  tellFaults(work, io)
  return breaches.length > 0 || !value || work.faults.length > 0 ? 1 : 0
}

function breachWords({ breaches }: JudgementAnswer, places: ReadonlyMap<string, number>, pen: Pen): string[] {
  if (breaches.length === 0) return ['Every need and every clock holds.']
  return [
    pen.stop(`It cannot be done like this: ${counted(breaches.length, 'breach', 'breaches')}.`),
    ...breaches.flatMap(({ step, says }) =>
      wrapped(`${places.get(step)}: ${says}`, { width: pen.width, first: '  ', rest: '    ' }),
    ),
  ]
}

/** What is more and what is less than the best, each in its own words. */
export function costWords([hazard, elapsed_s, changes]: readonly [number, number, number]): string {
  const parts = [
    ...(hazard !== 0 ? [`${counted(Math.abs(hazard), 'point')} of hazard ${hazard > 0 ? 'more' : 'less'}`] : []),
    ...(elapsed_s !== 0 ? [`${spanOfTime(Math.abs(elapsed_s))} ${elapsed_s > 0 ? 'more' : 'less'}`] : []),
    ...(changes !== 0 ? [`${counted(Math.abs(changes), 'change')} of set-up ${changes > 0 ? 'more' : 'less'}`] : []),
  ]
  return parts.join(', ') || 'nothing more'
}
