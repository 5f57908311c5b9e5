// `sequence FILE --judge ORDERFILE`: where a told order breaks a need or a clock, and what it costs more than the best.

import { differences } from '../../planning/explain/differences.ts'
import { judge } from '../../planning/judge.ts'
import type { PlanningProblem } from '../../planning/model/problem.ts'
import { worksTogether } from '../../planning/relations/teams.ts'
import { repair as repairOf } from '../../planning/repair.ts'
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
  const { breaches, value, costsMore, chosen } = judgement
  const mended = breaches.length > 0 ? repairOf(problem, told.steps) : null
  // What one person would do otherwise; for several there is no such list.
  const isAlone = !worksTogether(problem)
  const otherwise = result.value && isAlone ? differences(problem, chosen, result.steps) : []
  const breachAnswer = ({ rule, id, op, says }: (typeof breaches)[number]) => ({ rule, id, step: op, says })
  const answer: JudgementAnswer = {
    schema: 'matchmark-judgement/1',
    ...aboutWork(file, work),
    order: asked.judge,
    inputHash: inputHash(problem),
    breaches: breaches.map(breachAnswer),
    value: value && [...value],
    best: result.value && [...result.value],
    costsMore: costsMore && [...costsMore],
    repair: mended && {
      moved: mended.moved.map(({ op, from, to }) => ({
        step: op,
        from,
        to,
        after: mended.steps[to - 2]?.op ?? null,
      })),
      otherModes: [...mended.otherModes],
      least: mended.least,
      value: [...mended.value],
      order: mended.steps.map(({ op }) => op),
    },
    differences: otherwise.map(({ ops, after, otherAfter, mode, cures, gains }) => ({
      steps: [...ops],
      after,
      bestAfter: otherAfter,
      mode,
      cures: cures.map(breachAnswer),
      gains: gains && [...gains],
    })),
  }
  const pen = penFor(io)
  const places = new Map(told.steps.map(({ op }, place) => [op, place + 1]))
  io.out(
    asked.json
      ? jsonLine(answer)
      : [
          pen.strong(titleOf(work)),
          ...breachWords(answer, places, pen),
          ...repairWords(answer, problem, pen),
          ...(value ? [`Done in this order it takes ${valueWords(value)}.`] : ['No times hold for this order.']),
          ...(result.value
            ? [`The best takes ${valueWords(result.value)}. ${proofWords(result, work.faults.length)}`]
            : [proofWords(result, work.faults.length)]),
          ...(costsMore ? [`This order costs ${costWords(costsMore)}.`] : []),
          ...differenceWords(answer, { problem, places, pen }),
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

const namesIn = (problem: PlanningProblem) => {
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  return (id: string) => `“${does.get(id) ?? id}”`
}

/** The fewest steps to move, and where to. */
export function repairWords({ breaches, repair }: JudgementAnswer, problem: PlanningProblem, pen: Pen): string[] {
  if (breaches.length === 0) return []
  if (!repair) return ['No repair was found.']
  const name = namesIn(problem)
  const { moved, otherModes, least, value } = repair
  const proof = least === moved.length ? 'no repair moves fewer' : `whether ${least} would do was not found out`
  return [
    pen.strong(`Mended by moving ${counted(moved.length, 'step')} (${proof})`),
    ...moved.flatMap(({ step, from, after }) =>
      wrapped(`${from}: ${name(step)} ${after === null ? 'first of all' : `right after ${name(after)}`}`, {
        width: pen.width,
        first: '  ',
        rest: '    ',
      }),
    ),
    ...otherModes.flatMap((step) =>
      wrapped(`${name(step)} in another way than told`, { width: pen.width, first: '  ', rest: '    ' }),
    ),
    `Mended like this it takes ${valueWords(value)}.`,
  ]
}

/** What the best does otherwise, and what each of it is good for. */
export function differenceWords(
  { differences: list }: JudgementAnswer,
  { problem, places, pen }: { problem: PlanningProblem; places: ReadonlyMap<string, number>; pen: Pen },
): string[] {
  if (list.length === 0) return []
  const name = namesIn(problem)
  const behind = (id: string | null) => (id === null ? 'first of all' : `after ${name(id)}`)
  const goodFor = ({ cures, gains }: JudgementAnswer['differences'][number]): string[] => {
    const broken = [...new Set(cures.map(({ step }) => places.get(step)!))].sort((one, other) => one - other)
    const said = [
      ...(broken.length > 0
        ? [
            `mends ${counted(cures.length, 'breach', 'breaches')} at ${broken.length > 1 ? 'steps' : 'step'} ${broken.join(', ')}.`,
          ]
        : []),
      ...(gains?.some((each) => each !== 0) ? [`${savedWords([gains[0], gains[1], gains[2]])}.`] : []),
    ]
    return said.length > 0 ? said : ['by itself it saves nothing; it goes with the others.']
  }
  return [
    pen.strong('What the best does otherwise'),
    ...list.flatMap((each) => {
      const steps = each.steps.map(name).join(', ')
      const what = each.mode
        ? `${steps} in the way '${each.mode.other}', not '${each.mode.told}'`
        : `${steps} ${behind(each.bestAfter)}, not ${behind(each.after)}`
      return [
        ...wrapped(`${what}:`, { width: pen.width, first: '  · ', rest: '    ' }),
        ...goodFor(each).flatMap((line) => wrapped(line, { width: pen.width, first: '      ', rest: '      ' })),
      ]
    }),
  ]
}

/** What is spared and what is added. */
export function savedWords([hazard, elapsed_s, changes]: readonly [number, number, number]): string {
  const parts = (sign: 1 | -1) => [
    ...(hazard * sign > 0 ? [counted(hazard * sign, 'point of hazard', 'points of hazard')] : []),
    ...(elapsed_s * sign > 0 ? [spanOfTime(elapsed_s * sign)] : []),
    ...(changes * sign > 0 ? [counted(changes * sign, 'change of set-up', 'changes of set-up')] : []),
  ]
  const [spared, added] = [parts(1), parts(-1)]
  return [
    ...(spared.length > 0 ? [`saves ${spared.join(', ')}`] : []),
    ...(added.length > 0 ? [`costs ${added.join(', ')}`] : []),
  ].join('; ')
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
