// The housing is not turned while something in it is loose.
import type { Mode, Need, Operation, Standing } from '../../planning/model/problem.ts'
import type { Frame } from './frame.ts'
import { oneOf, reason } from './reasons.ts'

/** The same steps; those that lie in a given attitude need that nothing falls, slides or drops out of the housing. */
export function heldFast(operations: readonly Operation[], frame: Frame): readonly Operation[] {
  const { unit } = frame
  // Parked it is loose until it is brought home: a person may know better, and says `loose until`.
  const loose = frame.movers.flatMap((part) => {
    const homeWith = frame.parking(part.id)?.homeWith
    const until = part.looseUntil.length ? part.looseUntil : homeWith ? [homeWith] : []
    const held = unit.lies.get(part.id)
    const standing: Standing = part.looseUntil.length ? 'told' : 'usual'
    return until.length && held ? [{ part, until, held, standing }] : []
  })
  const needsOf = (operation: Operation, mode: Mode): readonly Need[] => {
    const { workpiece, attitude } = mode.setup
    if (workpiece !== unit.housing || attitude === 'any') return []
    return loose.flatMap(({ part, until, held, standing }): readonly Need[] => {
      if (part.id === operation.id || attitude === held) return []
      const why = reason({
        code: 'LOOSE',
        says: `The ${unit.housing} is not turned to ${attitude} while ${part.id} is loose in it: first ${until.join(', ')}.`,
        origin: 'process',
        // Where nobody said how the housing lies for a step it usually lies as for the part that the step belongs to.
        standing: unit.lies.has(operation.id) ? standing : 'usual',
        facts: { part: part.id, attitude, until: [...until] },
      })
      const away = frame.chain(part.id).map((id) => ({ done: [], notDone: [id] }))
      return [oneOf(`${operation.id}: ${part.id} fast or away`, [...away, { done: [...until], notDone: [] }], why)]
    })
  }
  return operations.map((operation) => ({
    ...operation,
    modes: operation.modes.map((mode) => ({ ...mode, needs: [...mode.needs, ...needsOf(operation, mode)] })),
  }))
}
