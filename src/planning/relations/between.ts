// The rule of neighbours: what doing one operation right after another costs, and which never comes right after which.
import type { OpId, PlanningProblem } from '../model/problem.ts'
import { isLifted } from './relationsIn.ts'
import { type Breach, naming, type Rule } from './rule.ts'
import type { Choice } from './setUpChanges.ts'

/** For each step, the seconds that coming right after the one before it costs; null where it may not. */
export function betweenSeconds({ changes }: PlanningProblem, sequence: readonly Choice[]): (number | null)[] {
  const { between } = changes
  if (!between) return sequence.map(() => 0)
  const rowOf = new Map<OpId, number>(between.ops.map((id, row) => [id, row]))
  return sequence.map(({ op, mode }, place) => {
    const row = place === 0 ? undefined : rowOf.get(sequence[place - 1]!.op)
    const column = rowOf.get(op)
    return row === undefined || column === undefined || isLifted(mode) ? 0 : between.s[row]![column]!
  })
}

/** The sentence that two operations, as sentences name them, are never neighbours in this order. */
export const neverSays = (op: string, previous: string): string => `${op} never comes right after ${previous}.`

/** What an operation never comes right after, in the order of the table. */
export function neverRightAfter({ changes }: PlanningProblem, op: OpId): OpId[] {
  const { ops, s } = changes.between ?? { ops: [], s: [] }
  const column = ops.indexOf(op)
  return column < 0 ? [] : ops.filter((other, row) => other !== op && s[row]![column] === null)
}

export const between: Rule = {
  name: 'between',
  hard: true,
  breaches: (problem, sequence) => {
    const name = naming(problem)
    return betweenSeconds(problem, sequence).flatMap((seconds, place): Breach[] => {
      if (seconds !== null) return []
      const { op } = sequence[place]!
      const previous = sequence[place - 1]!.op
      const says = neverSays(name(op), name(previous))
      return [{ rule: 'between', id: op, op, says, facts: { op, previous } }]
    })
  },
}
