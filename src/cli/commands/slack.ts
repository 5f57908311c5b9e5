// `sequence FILE --slack`: how far each step of the best order may move, what holds it, and what it shuts.
import { closesIn } from '../../planning/explain/closes.ts'
import { slackOf } from '../../planning/explain/slack.ts'
import type { Breach } from '../../planning/relations/rule.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { SlackAnswer } from '../answers/schema.ts'
import { jsonLine } from '../asked.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { proofWords, valueWords } from '../words/sequenceWords.ts'
import { counted, spanOfTime } from '../words/timeWords.ts'
import { type SequenceAsked, searched, tellFaults } from './sequence.ts'

export async function slack(io: Io, file: string, asked: SequenceAsked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { problem } = work
  const { result } = searched(work, io, asked)
  const closed = result.value ? closesIn(problem, result.steps) : []
  const steps = result.value ? slackOf(problem, result.steps) : []
  const answer: SlackAnswer = {
    schema: 'matchmark-slack/1',
    ...aboutWork(file, work),
    inputHash: inputHash(problem),
    value: result.value && [...result.value],
    steps: steps.map(({ op, heldBack, heldOn, ...places }, at) => {
      const { noReturn, shuts, couldComeBefore } = closed[at]!
      return {
        id: op,
        ...places,
        heldBack: heldBack && heldAnswer(heldBack),
        heldOn: heldOn && heldAnswer(heldOn),
        noReturn,
        shuts: shuts.map(({ op: step, need }) => ({ step, says: need.reason.says })),
        couldComeBefore: [...couldComeBefore],
      }
    }),
  }
  const pen = penFor(io)
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  io.out(
    asked.json
      ? jsonLine(answer)
      : [
          pen.strong(titleOf(work)),
          ...(result.value ? [`${counted(steps.length, 'step')}, ${valueWords(result.value)}.`] : []),
          proofWords(result, work.faults.length),
          ...(result.value ? slackWords(answer, does, pen) : []),
        ].join('\n'),
  )
  tellFaults(work, io)
  return result.value && work.faults.length === 0 ? 0 : 1
}

const heldAnswer = ({ rule, id, op, says }: Breach) => ({ rule, id, step: op, says })

/** The places of a step alone: `stays at 4`, `4 to 9; at no cost 5 to 7`. */
export function placesWords({
  place,
  first,
  last,
  freeFirst,
  freeLast,
}: Pick<SlackAnswer['steps'][number], 'place' | 'first' | 'last' | 'freeFirst' | 'freeLast'>): string {
  if (first === last) return `stays at ${place}`
  const all = `may stand at ${first} to ${last}`
  if (freeFirst === freeLast) return `${all}; anywhere else it costs something`
  return freeFirst === first && freeLast === last
    ? `${all} at no cost`
    : `${all}; ${freeFirst} to ${freeLast} at no cost`
}

export function slackWords({ steps }: SlackAnswer, does: ReadonlyMap<string, string>, pen: Pen): string[] {
  const placeOf = new Map(steps.map(({ id, place }) => [id, place]))
  const margin = String(steps.length).length
  const under = ' '.repeat(margin + 2)
  const say = (text: string) => wrapped(text, { width: pen.width, first: under, rest: under }).map(pen.faint)
  const numbers = (ids: readonly string[]) => runsOf(ids.map((id) => placeOf.get(id)!)).join(', ')
  return [
    'Each step moved alone, all others keeping their order:',
    ...steps.flatMap((step) => {
      const { id, place, waits_s, heldBack, heldOn, noReturn, shuts, couldComeBefore } = step
      const stuck = step.first === step.last
      return [
        ...wrapped(does.get(id) ?? id, {
          width: pen.width,
          first: `${String(place).padStart(margin)}  `,
          rest: under,
        }),
        ...say(`${placesWords(step)}${waits_s > 0 ? `; may start ${spanOfTime(waits_s)} later` : ''}`),
        ...(heldBack && !stuck ? say(`not earlier: ${heldBack.says}`) : []),
        ...(heldOn && !stuck ? say(`not later: ${heldOn.says}`) : []),
        ...(shuts.length > 0 ? say(`shuts the way for ${numbers(shuts.map((each) => each.step))}`) : []),
        ...(noReturn === null
          ? []
          : wrapped(
              `No way back: ${noReturn} ${couldComeBefore.length > 0 ? `Could still come before it: ${numbers(couldComeBefore)}.` : 'All that could come before it is done.'}`,
              { width: pen.width, first: under, rest: under },
            ).map(pen.stop)),
      ]
    }),
  ]
}

/** @example runsOf([3, 4, 5, 9])   // ['3 to 5', '9'] */
export function runsOf(numbers: readonly number[]): string[] {
  const rising = numbers.toSorted((one, other) => one - other)
  const runs: [number, number][] = []
  for (const number of rising) {
    const run = runs.at(-1)
    if (run && run[1] + 1 === number) run[1] = number
    else runs.push([number, number])
  }
  return runs.map(([first, last]) => (first === last ? `${first}` : `${first} to ${last}`))
}
