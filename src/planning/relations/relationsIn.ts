// The relations of a problem one by one, and the problem with only some of them.
import type { Relation } from '../closing.ts'
import type { Mode, PlanningProblem } from '../model/problem.ts'
import { isAllowed, worksTogether } from './teams.ts'

/**
 * Marks a mode that was taken out: the hands that are there will do, and the changes of set-up that it asks for take no time,
 * nor does coming right after any other. It still leaves the set-up as it names it; else taking it out could make a later change longer.
 */
export const LIFTED = Symbol('lifted')

export const isLifted = (mode: Mode): boolean => LIFTED in mode

export const relationKey = ({ kind, op, id }: Relation): string =>
  kind === 'mode' ? `mode ${op} ${id}` : `${kind} ${id}`

/** Everything that could be given up: needs, lags, and the hands and set-up that each mode asks for. */
export function relationsIn(problem: PlanningProblem): Relation[] {
  const relations: Relation[] = []
  const together = worksTogether(problem)
  for (const { id: op, modes } of problem.operations) {
    for (const mode of modes) {
      const { id, people, setup, machines } = mode
      const asks = [setup.workpiece, setup.station, setup.tools].some((asked) => asked !== 'any')
      const shares = together && (people > 0 || machines !== undefined)
      const follows = problem.changes.between?.ops.includes(op)
      if (asks || shares || follows || !isAllowed(problem, mode)) relations.push({ kind: 'mode', id, op })
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
  // A crew's mode that is taken out goes on by itself.
  const nobody = { people: 0, setup: { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' } } as const
  const lifted = { ...(worksTogether(problem) ? nobody : { people: 1 }), skills: [], machines: {}, [LIFTED]: true }
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
          ...(keeps({ kind: 'mode', id: mode.id, op }) ? {} : lifted),
        })),
      }
    }),
  }
}
