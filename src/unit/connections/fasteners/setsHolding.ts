// The fastener sets of a unit that hold one part, as other connections need to see them.
import type { Connection, PartId, Unit } from '../../model/unit.ts'
import { type FastenersGiven, given as givenSchema } from './given.ts'

export interface HoldingSet {
  readonly connection: Connection
  readonly given: FastenersGiven
}

/** Sets that hold this part. One whose file entry is faulty is reported where it stands and left out here. */
export function setsHolding(unit: Unit, part: PartId): readonly HoldingSet[] {
  const schema = givenSchema(unit)
  return [...unit.connections.values()]
    .filter(({ kind, given }) => kind === 'fasteners' && given.holds === part)
    .flatMap((connection) => {
      const { success, data } = schema.safeParse(connection.given)
      return success ? [{ connection, given: data }] : []
    })
}

/** The steps that make a part fast: its own-step sets, or the part's step where it has none. */
export function lastFastSteps(unit: Unit, part: PartId): readonly string[] {
  const own = setsHolding(unit, part).filter(({ given }) => given['own step'])
  return own.length > 0 ? own.map(({ connection }) => connection.id) : [part]
}
