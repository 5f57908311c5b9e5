// The relations of a problem one by one, and the problem with only some of them.
import type { Relation } from '../closing.ts'
import type { PlanningProblem } from '../model/problem.ts'

export const relationKey = ({ kind, op, id }: Relation): string =>
  kind === 'mode' ? `mode ${op} ${id}` : `${kind} ${id}`

/** Everything that could be given up: needs, lags, and the hands and set-up that each mode asks for. */
export function relationsIn(problem: PlanningProblem): Relation[] {
  const relations: Relation[] = []
  for (const { id: op, modes } of problem.operations) {
    for (const { id, people, setup } of modes) {
      const asks = [setup.workpiece, setup.station, setup.tools].some((asked) => asked !== 'any')
      if (asks || people > problem.people) relations.push({ kind: 'mode', id, op })
    }
  }
  for (const { id, to } of problem.lags) relations.push({ kind: 'lag', id, op: to.op })
  for (const { id: op, needs, modes } of problem.operations) {
    for (const { id } of [...needs, ...modes.flatMap((mode) => mode.needs)]) relations.push({ kind: 'need', id, op })
  }
  return relations
}

/** The problem with all relations taken out but those that `keeps` says yes to. */
export function keepRelations(problem: PlanningProblem, keeps: (relation: Relation) => boolean): PlanningProblem {
  return {
    ...problem,
    lags: problem.lags.filter(({ id, to }) => keeps({ kind: 'lag', id, op: to.op })),
    operations: problem.operations.map((operation) => {
      const op = operation.id
      return {
        ...operation,
        needs: operation.needs.filter(({ id }) => keeps({ kind: 'need', id, op })),
        modes: operation.modes.map((mode) => ({
          ...mode,
          needs: mode.needs.filter(({ id }) => keeps({ kind: 'need', id, op })),
          ...(keeps({ kind: 'mode', id: mode.id, op }) ? {} : LIFTED),
        })),
      }
    }),
  }
}

const LIFTED = { people: 1, setup: { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' } } as const
