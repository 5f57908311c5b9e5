// `sequence FILE --holds CHANCE`: where to stop and look, so that faults cost the least that can be expected.
import { holdPoints, type Range } from '../../planning/guard/holdPoints.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { HoldsAnswer } from '../answers/schema.ts'
import { jsonLine } from '../asked.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { proofWords } from '../words/sequenceWords.ts'
import { counted, spanOfTime } from '../words/timeWords.ts'
import { type SequenceAsked, searched, tellFaults } from './sequence.ts'

/** A look at one step, and the stop itself; common practice, no source. */
const LOOK_S: Range = { low: 60, high: 180 }
const STOP_S = 120

export async function holds(io: Io, file: string, asked: SequenceAsked & { readonly holds: Range }): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { problem } = work
  const { result } = searched(work, io, asked)
  const assumed = { chance: asked.holds, look_s: LOOK_S }
  const found = holdPoints(problem, result.steps, { assumed, stop_s: STOP_S })
  const answer: HoldsAnswer = {
    schema: 'matchmark-holds/1',
    ...aboutWork(file, work),
    inputHash: inputHash(problem),
    value: result.value && [...result.value],
    assumed: { ...assumed, stop_s: STOP_S },
    holds: found.holds.map(({ looksAt, ...hold }) => ({ ...hold, looksAt: [...looksAt] })),
    perhaps: [...found.perhaps],
    expected_s: found.expected_s,
    withoutHolds_s: found.withoutHolds_s,
    notKnown: [...found.notKnown],
  }
  const pen = penFor(io)
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  io.out(
    asked.json
      ? jsonLine(answer)
      : [
          pen.strong(titleOf(work)),
          proofWords(result, work.faults.length),
          ...(result.value ? holdWords(answer, does, pen) : []),
        ].join('\n'),
  )
  tellFaults(work, io)
  return result.value && work.faults.length === 0 ? 0 : 1
}

const span = ({ low, high }: Range, words: (value: number) => string): string =>
  low === high ? words(low) : `${words(low)} to ${words(high)}`

const inHundred = (chance: number): string => `${Number((chance * 100).toPrecision(3))}`

/** A minute is exact enough for what is expected. */
const minutes = (time_s: number): string => spanOfTime(Math.round(time_s / 60) * 60)

export function holdWords(answer: HoldsAnswer, does: ReadonlyMap<string, string>, pen: Pen): string[] {
  const { assumed, holds: list, perhaps, expected_s, withoutHolds_s, notKnown } = answer
  const name = (id: string) => `“${does.get(id) ?? id}”`
  const say = (text: string, first = '', rest = first) => wrapped(text, { width: pen.width, first, rest })
  return [
    ...(notKnown.length > 0
      ? say(
          `How often a step is not right is not known for ${counted(notKnown.length, 'step')}; taken for each: ${span(assumed.chance, inHundred)} in a hundred, ${span(assumed.look_s, spanOfTime)} to look, and a late fault costs the way back from the end. A stop takes ${spanOfTime(assumed.stop_s)}.`,
        )
      : []),
    ...(list.length === 0 ? ['No stop is worth its time.'] : [pen.strong(`Stop and look (${list.length})`)]),
    ...list.flatMap(({ after, place, looksAt, saves_s, certain }) => [
      ...say(`after ${place}, ${name(after)}: look at ${looksAt.map(name).join(', ')}`, '  · ', '    '),
      ...say(
        `${certain ? `saves ${span(saves_s, minutes)}` : `worth it only if faults are not rare: from ${saves_s.low < 0 ? `${minutes(-saves_s.low)} lost` : minutes(saves_s.low)} to ${minutes(saves_s.high)} saved`}, to be expected`,
        '      ',
      ),
    ]),
    ...(perhaps.length > 0
      ? say(`At the bad end of what is half known also after ${perhaps.map(({ place }) => place).join(', ')}.`)
      : []),
    ...say(
      `To be expected for looking and setting right: ${span(expected_s, minutes)}; with no stop at all ${span(withoutHolds_s, minutes)}.`,
    ),
  ]
}
