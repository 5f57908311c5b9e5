// `why FILE A B`: why one step comes before another, or that it need not.
import type { WorkUp } from '../../job/workUp.ts'
import { type Why, why as whyOf } from '../../planning/explain/why.ts'
import { Problem } from '../../problem/problem.ts'
import { aboutWork, titleOf } from '../aboutWork.ts'
import type { WhyAnswer } from '../answers/schema.ts'
import { type Asked, jsonLine } from '../asked.ts'
import { inputHash } from '../inputHash.ts'
import type { ExitCode, Io } from '../io.ts'
import { openWork } from '../openWork.ts'
import { stepNamed } from '../stepNamed.ts'
import { type Pen, penFor, wrapped } from '../words/pen.ts'
import { tellFaults } from './sequence.ts'

export async function why(
  io: Io,
  { file, a, b }: { readonly file: string; readonly a: string; readonly b: string },
  asked: Asked,
): Promise<ExitCode> {
  const work = await openWork(file, io, asked)
  const [first, second] = [a, b].map((name) => stepNamed(name, work.problem.operations, { work, file })) as [
    string,
    string,
  ]
  if (first === second) {
    throw new Problem('WRONG_USE', {
      reason: `'${a}' and '${b}': these are the same step; expected two`,
      help: 'matchmark why --help',
    })
  }
  const found = whyOf(work.problem, first, second)
  const reasonFor = ({ says, origin, standing, source }: Why['chain'][number]['reason']) => ({
    says,
    origin,
    standing,
    ...(source !== undefined && { source }),
  })
  const answer: WhyAnswer = {
    schema: 'matchmark-why/1',
    ...aboutWork(file, work),
    inputHash: inputHash(work.problem),
    first,
    second,
    order: found.order,
    says: found.says,
    chain: found.chain.map(({ before, after, reason, from }) => ({
      before,
      after,
      ...reasonFor(reason),
      from: from.map(({ id }) => id),
    })),
    relations: found.relations.map(({ relation, reason }) => ({ id: relation.id, ...reasonFor(reason) })),
  }
  const pen = penFor(io)
  io.out(asked.json ? jsonLine(answer) : [pen.strong(titleOf(work)), ...whyWords(answer, work, pen)].join('\n'))
  tellFaults(work, io)
  return found.order === 'never' || work.faults.length > 0 ? 1 : 0
}

function whyWords({ first, second, order, chain, relations }: WhyAnswer, { problem }: WorkUp, pen: Pen): string[] {
  const does = new Map(problem.operations.map((operation) => [operation.id, operation.does]))
  const name = (id: string) => `“${does.get(id) ?? id}”`
  const says = {
    first: `${name(first)} always comes before ${name(second)}.`,
    second: `The other way round: ${name(second)} always comes before ${name(first)}.`,
    free: `${name(first)} and ${name(second)} may be done in either order.`,
    never: 'Nothing can be done at all: these cannot all hold.',
    'not known': `Whether ${name(first)} has to come before ${name(second)} was not found out.`,
  }[order]
  const grounds = (of: { says: string; origin: string; standing: string; source?: string }) =>
    pen.faint(`     ${[`from ${ORIGINS[of.origin] ?? of.origin}`, of.standing, of.source].filter(Boolean).join(', ')}`)
  const one = (head: string, of: Parameters<typeof grounds>[0]) => [
    ...wrapped(`${head}${of.says}`, { width: pen.width, first: '  · ', rest: '    ' }),
    grounds(of),
  ]
  return [
    ...wrapped(says, { width: pen.width, rest: '' }),
    ...chain.flatMap((link) => one(`${name(link.after)} waits for ${name(link.before)}: `, link)),
    ...(order === 'free' && relations.length > 0 ? ['What speaks of both, under its conditions:'] : []),
    ...relations.flatMap((each) => one('', each)),
  ]
}

const ORIGINS: Readonly<Record<string, string>> = {
  geometry: 'the sizes',
  connection: 'how the parts are joined',
  process: 'how the work is done',
  author: 'a person',
  usual: 'usual practice',
  observed: 'what was seen',
}
