// `reach FILE PART`: the cheapest way from the finished unit to a part, and what has to be done again after it.
import type { WorkUp } from '../../job/workUp.ts'
import { approach } from '../../planning/approach.ts'
import { reach as reachOf } from '../../planning/reach.ts'
import { Problem } from '../../problem/problem.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { ReachAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { plain } from '../nameOf.ts'
import { openWork } from '../openWork.ts'
import { stepNamed } from '../stepNamed.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { counted, spanOfTime } from '../words/timeWords.ts'
import { tellFaults } from './sequence.ts'

const A_SECOND_MS = 1000

export async function reach(
  io: Io,
  { file, part }: { readonly file: string; readonly part: string },
  asked: Asked,
): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { problem } = work.derivation
  const { housing } = work.unit
  if (plain(part) === plain(housing)) {
    throw new Problem('WRONG_USE', {
      reason: `${housing} is the housing: all else goes into it; expected a part or a step`,
      help: 'matchmark reach --help',
    })
  }
  const step = stepNamed(part, problem.operations, { work, file })
  // Where nobody has said what stands, the unit is finished.
  const done = work.job?.done.map((each) => each.step) ?? []
  if (done.length > 0 && !done.includes(step)) return ahead(io, { file, work, step, done }, asked)
  const began = io.now()
  let isTold = asked.json
  const found = reachOf(problem, step, {
    ...(done.length > 0 && { done }),
    // Asked at every way that is looked at; it never ends the search, but says once that it goes on.
    late: () => {
      if (!isTold && io.now() - began > A_SECOND_MS) {
        isTold = true
        io.err('looking for the cheapest way back; deep in a large unit this takes a while')
      }
      return false
    },
  })
  const answer: ReachAnswer = {
    schema: 'matchmark-reach/1',
    ...aboutWork(file, work),
    inputHash: inputHash(problem),
    step,
    way: found && {
      undo: [...found.undo],
      renews: [...found.renews],
      voids: [...found.voids],
      noReturn: found.noReturn.map(({ op, says }) => ({ step: op, says })),
      rebuild: found.rebuild.steps.map(({ op }) => op),
      cost_s: found.cost_s,
      bound_s: found.bound_s,
    },
    ahead: null,
  }
  const pen = penFor(io)
  io.out(asked.json ? jsonLine(answer) : [pen.strong(titleOf(work)), ...reachWords(answer, work, pen)].join('\n'))
  tellFaults(work, io)
  return found && work.faults.length === 0 ? 0 : 1
}

/** What is not done yet is reached by going on. */
function ahead(
  io: Io,
  { file, work, step, done }: { file: string; work: WorkUp; step: string; done: readonly string[] },
  asked: Asked,
): ExitCode {
  const { problem } = work.derivation
  const found = approach(problem, step, { done })
  const answer: ReachAnswer = {
    schema: 'matchmark-reach/1',
    ...aboutWork(file, work),
    inputHash: inputHash(problem),
    step,
    way: null,
    ahead: found && {
      undo: [...found.undo],
      steps: found.steps.map(({ op }) => op),
      cost_s: found.cost_s,
      bound_s: found.bound_s,
      afterwards: found.afterwards.steps.map(({ op }) => op),
    },
  }
  const pen = penFor(io)
  io.out(asked.json ? jsonLine(answer) : [pen.strong(titleOf(work)), ...aheadWords(answer, work, pen)].join('\n'))
  tellFaults(work, io)
  return found && work.faults.length === 0 ? 0 : 1
}

function aheadWords({ step, ahead: way }: ReachAnswer, { derivation }: WorkUp, pen: Pen): string[] {
  const does = new Map(derivation.problem.operations.map((operation) => [operation.id, operation.does]))
  const name = does.get(step) ?? step
  if (!way) return [`“${name}” is not done yet, and no way on to it was found.`]
  const least = way.cost_s === way.bound_s ? 'no way is shorter' : `none can be under ${spanOfTime(way.bound_s)}`
  return [
    ...wrapped(
      `“${name}” is not done yet: ${counted(way.steps.length, 'step')} to go, it among them, ${spanOfTime(way.cost_s)}, set-ups and waiting not counted; ${least}.`,
      { width: pen.width, rest: '' },
    ),
    ...(way.undo.length > 0
      ? wrapped(`First take back, because they shut the way: ${way.undo.map((id) => does.get(id) ?? id).join('; ')}.`, {
          width: pen.width,
          rest: '  ',
        })
      : []),
    ...way.steps.flatMap((id, place) =>
      wrapped(does.get(id) ?? id, {
        width: pen.width,
        first: `${String(place + 1).padStart(4)} `,
        rest: '     ',
      }),
    ),
    `${counted(way.afterwards.length, 'step')} can still be done after it.`,
  ]
}

function reachWords({ step, way }: ReachAnswer, { derivation, unit }: WorkUp, pen: Pen): string[] {
  const does = new Map(derivation.problem.operations.map((operation) => [operation.id, operation.does]))
  if (!way) return [`No way back to “${does.get(step) ?? step}” was found within the effort.`]
  const operations = new Map(derivation.problem.operations.map((operation) => [operation.id, operation]))
  const noReturn = new Set(way.noReturn.map((each) => each.step))
  const undoWords = (id: string): string => {
    const says = does.get(id) ?? id
    if (noReturn.has(id)) {
      const renews = operations.get(id)?.undo?.renews ?? []
      return `${says}: cannot be taken back${renews.length > 0 ? `, renew ${renews.join(', ')}` : ''}`
    }
    if (operations.get(id)?.check) return `${says} is void: made again`
    if (unit.fills.has(id)) return `drain the oil: ${id}`
    return unit.parts.has(id) ? `take off ${id}` : `undo: ${says}`
  }
  const listed = (ids: readonly string[], words: (id: string) => string) =>
    ids.flatMap((id, place) =>
      wrapped(words(id), { width: pen.width, first: `${String(place + 1).padStart(4)} `, rest: '     ' }),
    )
  const list = (ids: readonly string[]) => listed(ids, (id) => does.get(id) ?? id)
  const least = way.cost_s === way.bound_s ? 'no way is shorter' : `none can be under ${spanOfTime(way.bound_s)}`
  return [
    `${spanOfTime(way.cost_s)} to undo and to do again, set-ups not counted; ${least}.`,
    pen.strong(`Take back (${way.undo.length})`),
    ...listed(way.undo, undoWords),
    ...way.noReturn.flatMap(({ step: id, says }) =>
      wrapped(`${does.get(id) ?? id} is not undone without harm: ${says}`, {
        width: pen.width,
        first: '  ! ',
        rest: '    ',
      }).map(pen.stop),
    ),
    ...(way.renews.length > 0 ? wrapped(`Have ready: ${way.renews.join(', ')}`, { width: pen.width, rest: '  ' }) : []),
    ...(way.voids.length > 0
      ? wrapped(`What no longer counts: ${way.voids.map((id) => does.get(id) ?? id).join('; ')}`, {
          width: pen.width,
          rest: '  ',
        })
      : []),
    pen.strong(`Build up again (${counted(way.rebuild.length, 'step')})`),
    ...list(way.rebuild),
  ]
}
