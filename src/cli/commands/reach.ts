// `reach FILE PART`: the cheapest way from the finished unit to a part, and what has to be done again after it.
import type { WorkUp } from '../../job/workUp.ts'
import { reach as reachOf } from '../../planning/reach.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { ReachAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { stepNamed } from '../stepNamed.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { counted, spanOfTime } from '../words/timeWords.ts'
import { tellFaults } from './sequence.ts'

export async function reach(
  io: Io,
  { file, part }: { readonly file: string; readonly part: string },
  asked: Asked,
): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const { problem } = work.derivation
  const step = stepNamed(part, problem.operations, { work, file })
  // Where nobody has said what stands, the unit is finished.
  const done = work.job?.done.map((each) => each.step) ?? []
  if (!asked.json) io.err('looking for the cheapest way back; deep in a large unit this takes a while')
  const found = reachOf(problem, step, done.length > 0 ? { done } : {})
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
  }
  const pen = penFor(io)
  io.out(asked.json ? jsonLine(answer) : [pen.strong(titleOf(work)), ...reachWords(answer, work, pen)].join('\n'))
  tellFaults(work, io)
  return found && work.faults.length === 0 ? 0 : 1
}

function reachWords({ step, way }: ReachAnswer, { derivation }: WorkUp, pen: Pen): string[] {
  const does = new Map(derivation.problem.operations.map((operation) => [operation.id, operation.does]))
  if (!way) return [`No way back to “${does.get(step) ?? step}” was found within the effort.`]
  const list = (ids: readonly string[]) =>
    ids.flatMap((id, place) =>
      wrapped(does.get(id) ?? id, { width: pen.width, first: `${String(place + 1).padStart(4)} `, rest: '     ' }),
    )
  const least = way.cost_s === way.bound_s ? 'no way is shorter' : `none can be under ${spanOfTime(way.bound_s)}`
  return [
    `${spanOfTime(way.cost_s)} to undo and to do again, set-ups not counted; ${least}.`,
    pen.strong(`Take back (${way.undo.length})`),
    ...list(way.undo),
    ...way.noReturn.flatMap(({ step: id, says }) =>
      wrapped(`${does.get(id) ?? id} is not undone without harm: ${says}`, {
        width: pen.width,
        first: '  ! ',
        rest: '    ',
      }).map(pen.stop),
    ),
    ...(way.renews.length > 0 ? wrapped(`Renew: ${way.renews.join(', ')}`, { width: pen.width, rest: '  ' }) : []),
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
