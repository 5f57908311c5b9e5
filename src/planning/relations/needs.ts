// The rule of needs: when an operation starts, each of its needs and those of its mode has an alternative that holds.
import type { Alternative, Need, OpId } from '../model/problem.ts'
import { type Breach, listing, naming, type Rule } from './rule.ts'

export const alternativeHolds = ({ done, notDone }: Alternative, isDone: (op: OpId) => boolean): boolean =>
  done.every(isDone) && !notDone.some(isDone)

export const needHolds = (need: Need, isDone: (op: OpId) => boolean): boolean =>
  need.anyOf.some((alternative) => alternativeHolds(alternative, isDone))

/** What keeps a need from holding, alternative by alternative: “A” is not done yet and “B” is done already, or … */
export function lacking(need: Need, isDone: (op: OpId) => boolean, name: (op: OpId) => string): string {
  const ways = need.anyOf.map(({ done, notDone }) => {
    const missing = done.filter((op) => !isDone(op))
    const early = notDone.filter(isDone)
    return [
      ...(missing.length > 0
        ? [`${listing(missing.map(name))} ${missing.length > 1 ? 'are' : 'is'} not done yet`]
        : []),
      ...(early.length > 0 ? [`${listing(early.map(name))} ${early.length > 1 ? 'are' : 'is'} done already`] : []),
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
    const done = new Set<OpId>()
    const isDone = (op: OpId) => done.has(op)
    const found: Breach[] = []
    for (const { op, mode } of sequence) {
      for (const need of [...operations.get(op)!.needs, ...mode.needs]) {
        if (needHolds(need, isDone)) continue
        found.push({
          rule: 'need',
          id: need.id,
          op,
          says: `${name(op)} cannot start: ${lacking(need, isDone, name)}. ${need.reason.says}`,
          facts: {
            need: need.id,
            missing: [...new Set(need.anyOf.flatMap((alternative) => alternative.done.filter((id) => !isDone(id))))],
            early: [...new Set(need.anyOf.flatMap((alternative) => alternative.notDone.filter(isDone)))],
          },
        })
      }
      done.add(op)
    }
    return found
  },
}
