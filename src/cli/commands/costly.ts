// `sequence FILE --costly`: which needs, clocks and set-ups cost time, by planning anew without each.
import { costlyRelations } from '../../planning/explain/costly.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { CostlyAnswer } from '../answers/schema.ts'
import { jsonLine } from '../asked.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { proofWords, valueWords } from '../words/sequenceWords.ts'
import { counted } from '../words/timeWords.ts'
import { savedWords } from './judgeOrder.ts'
import { type SequenceAsked, searched, tellFaults } from './sequence.ts'

export async function costly(io: Io, file: string, asked: SequenceAsked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { problem } = work
  const { result } = searched(work, io, asked)
  const end = asked.seconds === undefined ? undefined : io.now() + asked.seconds * 1000
  if (result.value && !asked.json) io.err('planning anew without each need and clock; this takes a while')
  const found = costlyRelations(problem, result, {
    ...(asked.effort !== undefined && { effort: asked.effort }),
    ...(end !== undefined && { late: () => io.now() > end }),
  })
  const answer: CostlyAnswer = {
    schema: 'matchmark-costly/1',
    ...aboutWork(file, work),
    inputHash: inputHash(problem),
    value: result.value && [...result.value],
    relations: found.relations.map(({ relation, reason, gains, proven }) => ({
      kind: relation.kind,
      id: relation.id,
      step: relation.op,
      says: reason.says,
      standing: reason.standing,
      gains: [...gains],
      proven,
    })),
    tried: found.tried,
    of: found.of,
  }
  const pen = penFor(io)
  io.out(
    asked.json
      ? jsonLine(answer)
      : [
          pen.strong(titleOf(work)),
          ...(result.value ? [`The best takes ${valueWords(result.value)}.`] : []),
          proofWords(result, work.faults.length),
          ...(result.value ? costlyWords(answer, pen) : []),
        ].join('\n'),
  )
  tellFaults(work, io)
  return result.value && work.faults.length === 0 ? 0 : 1
}

export function costlyWords({ relations, tried, of }: CostlyAnswer, pen: Pen): string[] {
  const part = tried === of ? `all ${of}` : `${tried} of ${of}; with more effort the others too`
  const head = `Left out one at a time (${part}), ${relations.length === 0 ? 'none costs anything.' : `${counted(relations.length, 'costs', 'cost')} something:`}`
  return [
    ...wrapped(head, { width: pen.width, rest: '' }),
    ...relations.flatMap(({ says, gains, proven, standing }) => [
      ...wrapped(`without this it ${savedWords([gains[0], gains[1], gains[2]])}${proven ? '' : ' at least'}:`, {
        width: pen.width,
        first: '  · ',
        rest: '    ',
      }),
      ...wrapped(`${says} (${standing})`, { width: pen.width, first: '      ', rest: '      ' }),
    ]),
  ]
}
