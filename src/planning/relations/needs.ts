// The rule of needs: when an operation starts, each of its needs and those of its mode has an alternative that holds.
import type { Alternative, Need, OpId } from '../model/problem.ts'
import { type Breach, listing, naming, type Rule } from './rule.ts'
import { worksTogether } from './teams.ts'

type Asked = (op: OpId) => boolean

/** With a crew something may have started that is not done. */
export const alternativeHolds = ({ done, notDone }: Alternative, isDone: Asked, isBegun: Asked = isDone): boolean =>
  done.every(isDone) && !notDone.some(isBegun)

export const needHolds = (need: Need, isDone: Asked, isBegun: Asked = isDone): boolean =>
  need.anyOf.some((alternative) => alternativeHolds(alternative, isDone, isBegun))

/** What keeps a need from holding, alternative by alternative: “A” is not done yet and “B” is done already, or … */
export function lacking(need: Need, isDone: Asked, name: (op: OpId) => string, isBegun: Asked = isDone): string {
  const ways = need.anyOf.map(({ done, notDone }) => {
    const missing = done.filter((op) => !isDone(op))
    const early = notDone.filter(isBegun)
    return [
      ...(missing.length > 0
        ? [`${listing(missing.map(name))} ${missing.length > 1 ? 'are' : 'is'} not done yet`]
        : []),
      ...(early.length > 0
        ? [
            `${listing(early.map(name))} ${early.length > 1 ? 'are' : 'is'} ${early.every(isDone) ? 'done' : 'begun'} already`,
          ]
        : []),
    ].join(' and ')
  })
  return ways.length === 0 ? 'nothing could meet it' : [...new Set(ways)].join(', or ')
}

export const needs: Rule = {
  name: 'needs',
  hard: true,
  breaches: (problem, sequence) => {
    const name = naming(problem)
    const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
    const together = worksTogether(problem)
    const done = new Map<OpId, number>()
    const isBegun = (op: OpId) => done.has(op)
    const found: Breach[] = []
    for (const { op, mode, start_s = Number.POSITIVE_INFINITY, end_s = start_s } of sequence) {
      const isDone = together ? (id: OpId) => (done.get(id) ?? Number.POSITIVE_INFINITY) <= start_s : isBegun
      for (const need of [...operations.get(op)!.needs, ...mode.needs]) {
        if (needHolds(need, isDone, isBegun)) continue
        found.push({
          rule: 'need',
          id: need.id,
          op,
          says: `${name(op)} cannot start: ${lacking(need, isDone, name, isBegun)}. ${need.reason.says}`,
          facts: {
            need: need.id,
            missing: [...new Set(need.anyOf.flatMap((alternative) => alternative.done.filter((id) => !isDone(id))))],
            early: [...new Set(need.anyOf.flatMap((alternative) => alternative.notDone.filter(isBegun)))],
          },
        })
      }
      done.set(op, end_s)
    }
    return found
  },
}
