// A sequence for people: what it is worth, every step with its reason, where there is no way back, and what it rests on.

import type { PlanningProblem } from '../../planning/model/problem.ts'
import type { Conflict, PlanResult, Value } from '../../planning/model/sequence.ts'
import { type Before, beforeEach } from '../../planning/relations/before.ts'
import type { SetUpChange } from '../../planning/relations/setUpChanges.ts'
import { becauseOf } from '../because.ts'
import type { NoReturn } from '../noReturns.ts'
import { type Pen, wrapped } from './pen.ts'
import { clockWords, counted, spanOfTime } from './timeWords.ts'

/** `6 h 40 min, 31 changes of set-up`; the hazard stands first where there is any. */
export const valueWords = ([hazard, elapsed_s, changes]: Value): string =>
  [
    ...(hazard > 0 ? [counted(hazard, 'point of hazard', 'points of hazard')] : []),
    spanOfTime(elapsed_s),
    counted(changes, 'change of set-up', 'changes of set-up'),
  ].join(', ')

/**
 * What is claimed for a result, in one sentence.
 *
 * @param faults how many faults the work has; they are told below and the claim leaves them out
 */
export function proofWords({ value, bound, proven, feasible }: PlanResult, faults = 0): string {
  const rest = faults > 0 ? `the rest; ${counted(faults, 'fault stands', 'faults stand')} below` : 'what was told'
  if (!value) {
    return feasible === 'no'
      ? `No sequence is possible, for ${rest}.`
      : `None was found within the effort; whether there is one is not known.`
  }
  if (proven) return `No sequence is better: proven, for ${rest}.`
  return `The best that was found; not proven. None can be better than ${bound ? valueWords(bound) : 'is known'}.`
}

/** The changes of set-up before each step of a result, and who waits for it. */
export function beforeSteps(problem: PlanningProblem, { steps }: PlanResult): readonly Before[] {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  return beforeEach(
    problem,
    steps.map((step) => ({ ...step, mode: operations.get(step.op)!.modes.find(({ id }) => id === step.mode)! })),
  )
}

/** What a person has to know of the work beside its problem, to judge a proof. */
export interface Ground {
  readonly faults: readonly unknown[]
  readonly taken: readonly string[]
  readonly questions: readonly { readonly rank: number }[]
}

/** The proof, and below it what was taken for granted and what is open. */
function groundWords(result: PlanResult, { faults, taken, questions }: Ground): string[] {
  const open = questions.filter(({ rank }) => rank === 1).length
  return [
    proofWords(result, faults.length),
    ...taken,
    ...(open > 0 ? [`${counted(open, 'thing that is', 'things that are')} not known could change it: see check.`] : []),
  ]
}

export function sequenceWords(
  work: Ground & { readonly problem: PlanningProblem },
  result: PlanResult,
  pen: Pen,
): string[] {
  const { problem } = work
  if (!result.value) {
    return [...groundWords(result, work), ...(result.conflict ? conflictWords(problem, result.conflict, pen) : [])]
  }
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const before = beforeSteps(problem, result)
  const turns = before.flatMap(({ changes }) => changes).filter(({ what }) => what === 'attitude').length
  const because = becauseOf(problem, result.steps)
  const digits = String(result.steps.length).length
  const head = (time_s: number, place: number) =>
    `${clockWords(time_s).padStart(5)} ${String(place + 1).padStart(digits)}  `
  const indent = ' '.repeat(head(0, 0).length)
  const steps = result.steps.flatMap(({ op, mode, start_s, people }, place) => {
    const { does, noReturn, modes } = operations.get(op)!
    const { setup, people: hands } = modes.find(({ id }) => id === mode)!
    const tools = setup.tools === 'any' ? [] : setup.tools
    const reason = because[place]
    return [
      ...before[place]!.changes.flatMap((change) => turnWords(change, indent)).map(pen.strong),
      ...before[place]!.idle.filter(({ s }) => s >= WORTH_TELLING_S).map(({ person, s }) =>
        pen.faint(`${indent}${person} waits ${spanOfTime(s)}`),
      ),
      ...wrapped(`${does}${whoWords(people, hands)}`, {
        width: pen.width,
        first: head(start_s, place),
        rest: indent,
      }),
      ...(tools.length > 0 ? wrapped(`with ${tools.join(', ')}`, { width: pen.width, first: indent }) : []),
      ...(reason
        ? wrapped(`after ${reason.after + 1}: ${reason.reason.says}`, { width: pen.width, first: indent }).map(
            pen.faint,
          )
        : []),
      ...(noReturn ? wrapped(`No way back: ${noReturn}`, { width: pen.width, first: indent }).map(pen.stop) : []),
    ]
  })
  return [
    `${counted(result.steps.length, 'step')}, ${valueWords(result.value)}, of them ${counted(turns, 'turn-over')}.`,
    ...crewWords(result, problem),
    ...triesWords(result, problem, pen),
    ...groundWords(result, work),
    '',
    ...steps,
    ...assumptionWords(result, pen),
  ]
}

/** Who is at a step, by name where people work beside each other; else how many, where it is not one. */
function whoWords(people: readonly string[] | undefined, hands: number): string {
  if (people) return ` · ${people.join(' and ') || 'goes on by itself'}`
  return hands > 1 ? ` · ${hands} people` : ''
}

/** How much each of several people has to do: `M. Ashdown is at 45 steps, 4 h 50 min.` */
function crewWords({ steps }: PlanResult, { crew = [], loops = [] }: PlanningProblem): string[] {
  if (crew.length < 2) return []
  const tried =
    loops.length > 0 ? ['Each is done once: further tries of a setting are not planned for several people.'] : []
  const shares = crew.map(({ id }) => {
    const mine = steps.filter(({ people = [] }) => people.includes(id))
    const work_s = mine.reduce((sum, { start_s, end_s }) => sum + end_s - start_s, 0)
    return `${id} is at ${counted(mine.length, 'step')}, ${spanOfTime(work_s)}.`
  })
  return [...shares, ...tried]
}

/** What is tried until it is right, and what that makes of the whole. */
export function triesWords({ tries }: PlanResult, problem: PlanningProblem, pen: Pen): string[] {
  if (!tries) return []
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  const told = new Map(problem.loops?.map((loop) => [loop.id, loop]))
  const say = (text: string, first = '', rest = first) => wrapped(text, { width: pen.width, first, rest })
  return [
    ...say(`With the usual tries ${valueWords(tries.usual)}; at worst ${valueWords(tries.high)}.`),
    ...tries.loops.flatMap(({ id, again, renews, noReturn, try_s }) => {
      const { last, tries: often } = told.get(id)!
      return [
        ...say(
          `until “${does.get(last) ?? last}” is right: ${often.low} to ${often.high} tries, usually ${often.usual}; each further one takes ${counted(again.length, 'step')} and ${spanOfTime(try_s)}${renews.length > 0 ? `, and new ${renews.join(', ')}` : ''}`,
          '  ',
          '    ',
        ),
        ...(noReturn.length > 0
          ? say(`each try breaks into ${noReturn.map((op) => `“${does.get(op) ?? op}”`).join(', ')}`, '    ').map(
              pen.stop,
            )
          : []),
      ]
    }),
  ]
}

/** A shorter wait is no more than looking round for the next part. */
const WORTH_TELLING_S = 60

function turnWords({ what, from, to, workpiece, person }: SetUpChange, indent: string): string[] {
  if (what === 'attitude') return [`${indent}— turn ${workpiece}: from ${from} to ${to} —`]
  if (what === 'station')
    return [`${indent}— ${person === undefined ? '' : `${person} `}from the ${from} to the ${to} —`]
  return []
}

function assumptionWords({ assumptions }: PlanResult, pen: Pen): string[] {
  if (assumptions.length === 0) return []
  const changes = {
    true: 'without it there is a better sequence',
    false: 'without it nothing is better',
    'not tried': 'not tried without it',
  }
  return [
    '',
    pen.strong(`Rests on ${counted(assumptions.length, 'supposition')}`),
    ...assumptions.flatMap(({ reason, wouldChange }) =>
      wrapped(`${reason.says} (${changes[`${wouldChange}`]})`, { width: pen.width, first: '  ', rest: '    ' }),
    ),
  ]
}

export function conflictWords(
  problem: PlanningProblem,
  { members, cheapest, irreducible }: Conflict,
  pen: Pen,
): string[] {
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  const together = irreducible
    ? 'These cannot all hold; take any one out and the others can:'
    : 'These cannot all hold; perhaps not all of them are needed for that:'
  return [
    together,
    ...members.flatMap(({ id, op, reason, giveUp }) => [
      ...wrapped(`${does.get(op) ?? op}: ${reason.says}`, { width: pen.width, first: '  · ', rest: '    ' }),
      ...wrapped(
        giveUp === 'never'
          ? 'not to be given up'
          : `${cheapest.includes(id) ? 'cheapest to give up' : 'may be given up'}`,
        { width: pen.width, first: '    ' },
      ).map(pen.faint),
    ]),
  ]
}

/** A list of the steps that cannot be taken back. */
export const noReturnWords = (steps: readonly NoReturn[], pen: Pen): string[] =>
  steps.flatMap(({ number, does, says }) =>
    wrapped(`${number} ${does}: ${says}`, { width: pen.width, first: '  ', rest: '    ' }),
  )
