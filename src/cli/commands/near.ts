// `sequence FILE --near ORDER`: from what stands now, the best order that stays near the one told.
import { type Replan, replan } from '../../planning/replan.ts'
import { Problem } from '../../problem/problem.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { NearAnswer } from '../answers/schema.ts'
import { jsonLine } from '../asked.ts'
import { conflictAnswer } from '../conflictAnswer.ts'
import { Faults } from '../faults.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { readOrder } from '../readOrder.ts'
import { stepNamed } from '../stepNamed.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { conflictWords, valueWords } from '../words/sequenceWords.ts'
import { clockWords, counted } from '../words/timeWords.ts'
import { savedWords } from './judgeOrder.ts'
import { type SequenceAsked, tellFaults } from './sequence.ts'

export interface NearAsked extends SequenceAsked {
  readonly near: string
  /** Steps that are not right. */
  readonly failed: readonly string[]
  /** Steps that have to wait: `bearing A`, or `bearing A=3` for three hours from now. */
  readonly late: readonly string[]
}

export async function near(io: Io, file: string, asked: NearAsked): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { problem } = work.derivation
  const named = (name: string) => stepNamed(name, problem.operations, { work, file })
  const known = problem.operations.map(({ id, does }) => ({ id, also: does }))
  const told = readOrder(await io.files.read(asked.near), asked.near, known)
  if (told.faults.length > 0) throw new Faults(told.faults)
  const steps = new Set(problem.operations.map(({ id }) => id))
  const done = (work.job?.done ?? []).map(({ step }) => step).filter((step) => steps.has(step))
  const found = replan(
    problem,
    told.steps,
    {
      done,
      failed: asked.failed.map(named),
      late: asked.late.map((text) => lateStep(text, named)),
    },
    asked.effort === undefined ? {} : { effort: asked.effort },
  )
  const pen = penFor(io)
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  const answer = found && nearAnswerOf(found, does)
  const whole: NearAnswer = {
    schema: 'matchmark-near/1',
    ...aboutWork(file, work),
    order: asked.near,
    inputHash: inputHash(problem),
    ...(answer ?? NOTHING),
  }
  io.out(
    asked.json
      ? jsonLine(whole)
      : [
          pen.strong(titleOf(work)),
          ...(found ? nearWords(whole, does, pen) : ['No way on was found from here.']),
          ...(found?.conflict ? conflictWords(problem, found.conflict, pen) : []),
        ].join('\n'),
  )
  tellFaults(work, io)
  return found?.value && work.faults.length === 0 ? 0 : 1
}

function lateStep(text: string, named: (name: string) => string): { op: string; notBefore_s?: number } {
  const [, name, hours] = /^(.*?)(?:=([^=]*))?$/.exec(text)!
  if (hours === undefined) return { op: named(name!) }
  const value = Number(hours)
  if (hours.trim() === '' || !(value >= 0 && value <= 2_000)) {
    throw new Problem('WRONG_USE', {
      reason: `'${text}': expected the hours from now as a number from 0 to 2000, such as ${name}=3`,
      help: 'matchmark sequence --help',
    })
  }
  return { op: named(name!), notBefore_s: Math.round(value * 3600) }
}

const NOTHING = {
  undo: [],
  renews: [],
  voids: [],
  outOfTurn: [],
  steps: [],
  value: null,
  best: null,
  proven: false,
  moved: [],
  leastMoved: 0,
  differences: [],
  waitsFor: [],
  conflict: null,
}

function nearAnswerOf(
  {
    undo,
    renews,
    voids,
    steps,
    value,
    best,
    proven,
    moved,
    leastMoved,
    differences,
    waitsFor,
    outOfTurn,
    conflict,
  }: Replan,
  does: ReadonlyMap<string, string>,
): Omit<NearAnswer, 'schema' | 'file' | 'unit' | 'variant' | 'job' | 'order' | 'inputHash'> {
  return {
    undo: [...undo],
    renews: [...renews],
    voids: [...voids],
    outOfTurn: outOfTurn.map(({ op, need, comesOff }) => ({ step: op, says: need.reason.says, comesOff })),
    steps: steps.map(({ op, mode, start_s, end_s }) => ({ id: op, does: does.get(op) ?? op, mode, start_s, end_s })),
    value: value && [...value],
    best: best && [...best],
    proven,
    moved: [...moved],
    leastMoved,
    differences: differences.map(({ ops, after, otherAfter, cures, gains }) => ({
      steps: [...ops],
      after,
      nowAfter: otherAfter,
      cures: cures.map(({ rule, id, op, says }) => ({ rule, id, step: op, says })),
      gains: gains && [...gains],
    })),
    waitsFor: [...waitsFor],
    conflict: conflictAnswer(conflict),
  }
}

export function nearWords(answer: NearAnswer, does: ReadonlyMap<string, string>, pen: Pen): string[] {
  const { undo, renews, voids, steps, value, best, moved, leastMoved, differences, waitsFor, outOfTurn } = answer
  const name = (id: string | null) => (id === null || !does.has(id) ? 'the start' : `“${does.get(id)}”`)
  const say = (text: string, first = '', rest = first) => wrapped(text, { width: pen.width, first, rest })
  const moves =
    moved.length === 0
      ? 'Nothing moves: the order told is kept.'
      : `${counted(moved.length, 'step moves', 'steps move')}${leastMoved === moved.length ? ', and none can do with fewer' : ''}.`
  return [
    ...outOfTurn.flatMap(({ step, says, comesOff }) =>
      say(
        `${name(step)} was done too early: ${says}${comesOff ? '' : ' It is left as it is; judge whether that will do.'}`,
      ),
    ),
    ...(undo.length > 0 ? say(`First take back: ${undo.map(name).join(', ')}.`) : []),
    ...(renews.length > 0 ? say(`Have ready: ${renews.join(', ')}.`) : []),
    ...(voids.length > 0 ? say(`What no longer counts: ${voids.map(name).join(', ')}.`) : []),
    ...(value ? [`From here ${counted(steps.length, 'step')}, ${valueWords(value)}.`] : []),
    ...(value && best?.some((each, at) => each !== value[at])
      ? say(`The best without regard to the order told takes ${valueWords(best)}.`)
      : []),
    ...(value ? say(moves) : []),
    ...(waitsFor.length > 0
      ? say(`Nobody knows when ${waitsFor.map(name).join(', ')} can start: all that can goes before.`)
      : []),
    ...differences.flatMap((each) => [
      ...say(
        `${each.steps.map(name).join(', ')} after ${name(each.nowAfter)}, not after ${name(each.after)}:`,
        '  · ',
        '    ',
      ),
      ...each.cures.flatMap(({ says }) => say(`needed: ${says}`, '      ')),
      ...(each.gains?.some((part) => part !== 0)
        ? say(`${savedWords([each.gains[0], each.gains[1], each.gains[2]])}.`, '      ')
        : each.cures.length === 0
          ? ['      it goes with the others.']
          : []),
    ]),
    ...(steps.length > 0 ? [''] : []),
    ...steps.flatMap(({ does: what, start_s }, place) => {
      const head = `${clockWords(start_s).padStart(5)} ${String(place + 1).padStart(String(steps.length).length)}  `
      return say(what, head, ' '.repeat(head.length))
    }),
  ]
}
