// The housing is not turned while something in it is loose.
import type { Need, Operation } from '../../planning/model/problem.ts'
import type { Frame } from './frame.ts'
import { oneOf, reason } from './reasons.ts'

/** What each step in a given attitude needs so that nothing falls, slides or drops out. */
export function looseNeeds(operations: readonly Operation[], frame: Frame): ReadonlyMap<string, readonly Need[]> {
  const { unit } = frame
  const loose = frame.movers.flatMap((part) => {
    const homeWith = frame.parking(part.id)?.homeWith
    const until = part.looseUntil.length ? part.looseUntil : homeWith ? [homeWith] : []
    const held = unit.lies.get(part.id)
    return until.length && held ? [{ part, until, held }] : []
  })
  const needs = new Map<string, readonly Need[]>()
  for (const operation of operations) {
    const attitude = attitudeOf(operation, unit.housing)
    if (!attitude) continue
    const asked = loose.flatMap(({ part, until, held }): readonly Need[] => {
      if (part.id === operation.id || attitude === held) return []
      const why = reason({
        code: 'LOOSE',
        says: `The ${unit.housing} is not turned to ${attitude} while ${part.id} is loose in it: first ${until.join(', ')}.`,
        origin: 'process',
        standing: 'told',
        facts: { part: part.id, attitude, until: [...until] },
      })
      const away = frame.chain(part.id).map((id) => ({ done: [], notDone: [id] }))
      return [oneOf(`${operation.id}: ${part.id} fast or away`, [...away, { done: [...until], notDone: [] }], why)]
    })
    if (asked.length) needs.set(operation.id, asked)
  }
  return needs
}

/** The attitude that every way of the step asks of the housing, when they agree. */
function attitudeOf(operation: Operation, housing: string): string | undefined {
  const [first, ...rest] = operation.modes.map((mode) =>
    mode.setup.workpiece === housing && mode.setup.attitude !== 'any' ? mode.setup.attitude : undefined,
  )
  return rest.every((each) => each === first) ? first : undefined
}
