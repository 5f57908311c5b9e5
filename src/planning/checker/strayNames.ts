// Names that point nowhere and ids given twice.
import { Problem } from '../../problem/problem.ts'
import type { Need, OpId, PlanningProblem } from '../model/problem.ts'

/** One problem for each id that is taken already and for each operation that is named and not there. */
export function strayNames({
  operations,
  lags,
  changes,
  crew = [],
  machines = {},
  loops = [],
}: PlanningProblem): readonly Problem[] {
  const problems: Problem[] = []
  const known = new Set(operations.map(({ id }) => id))

  const unique = (taken: Set<string>, id: string, where: string): void => {
    if (taken.has(id)) problems.push(new Problem('PLANNING_ID_TWICE', { where, id }))
    taken.add(id)
  }
  const named = (ids: readonly OpId[], where: string): void => {
    for (const id of ids) if (!known.has(id)) problems.push(new Problem('PLANNING_UNKNOWN_OPERATION', { where, id }))
  }

  const [operationIds, needIds, lagIds] = [new Set<string>(), new Set<string>(), new Set<string>()]
  const check = (needs: readonly Need[], owner: string): void => {
    for (const { id, anyOf } of needs) {
      unique(needIds, id, `A need of ${owner}`)
      for (const { done, notDone } of anyOf) named([...done, ...notDone], `The need '${id}' of ${owner}`)
    }
  }

  operations.forEach(({ id: op, modes, needs, undo }, place) => {
    unique(operationIds, op, `operations[${place}]`)
    check(needs, `'${op}'`)
    const modeIds = new Set<string>()
    for (const mode of modes) {
      unique(modeIds, mode.id, `A mode of '${op}'`)
      check(mode.needs, `'${op}' in mode '${mode.id}'`)
      for (const machine of Object.keys(mode.machines ?? {})) {
        if (Object.hasOwn(machines, machine)) continue
        problems.push(new Problem('PLANNING_UNKNOWN_MACHINE', { where: `'${op}'`, mode: mode.id, machine }))
      }
    }
    if (undo) {
      check(undo.needs, `the undoing of '${op}'`)
      named(undo.voids, `The undoing of '${op}'`)
    }
  })
  const personIds = new Set<string>()
  crew.forEach(({ id }, place) => {
    unique(personIds, id, `crew[${place}]`)
  })
  lags.forEach(({ id, from, to }, place) => {
    unique(lagIds, id, `lags[${place}]`)
    named([from.op, to.op], `The lag '${id}'`)
  })
  const loopIds = new Set<string>()
  loops.forEach(({ id, first, last }, place) => {
    unique(loopIds, id, `loops[${place}]`)
    named([first, last], `The loop '${id}'`)
  })
  const inTable = new Set<string>()
  for (const id of changes.between?.ops ?? []) unique(inTable, id, 'changes.between')
  named(changes.between?.ops ?? [], 'changes.between')
  return problems
}
