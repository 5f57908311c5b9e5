// What of a unit is set, read and set again until it is right, and by what it is moved, as far as the unit says it.

import type { BearingShimsGiven } from '../connections/bearingShims/given.ts'
import type { Connected } from '../connections/connectionsOf.ts'
import type { PartId, Unit } from '../model/unit.ts'

export interface TrySetting {
  /** The step that reads it. */
  readonly check: string
  /** What is set: the connection; where the unit has none for it, what the check settles. Tries are kept under this name. */
  readonly of: string
  /** The step that the setting is made with: it comes off for another try. Missing: the unit does not say. */
  readonly first?: string
  /** 1 where a thicker pack gives more of what is read, -1 where it takes it away. Missing: to be learnt from the tries. */
  readonly sign?: 1 | -1
  /** Whether what moves it is told to be shims; else it may be a nut as well. */
  readonly isShims: boolean
  /** Shims kept for one of these, or for nothing, may be used. */
  readonly shimsFor: readonly string[]
}

/**
 * Every check that a setting is tried by: one that a pack of bearing shims is set to, and any other that settles something and has a limit.
 *
 * @example trySettings(unit, connectionsOf(unit).connections).map(({ of }) => of)   // ['input setting', 'float of the jackshaft']
 */
export function trySettings(unit: Unit, connections: readonly Connected[]): readonly TrySetting[] {
  const packs = connections.flatMap(({ connection, kind, given }) =>
    kind.name === 'bearing shims' ? [{ id: connection.id, given: given as BearingShimsGiven }] : [],
  )
  return [...unit.checks.values()].flatMap(({ id, settles, wants, limit }): readonly TrySetting[] => {
    const pack = packs.find(
      ({ id: connection, given }) =>
        given['settled by'] === id || settles === connection || (settles !== undefined && wants.includes(given.under)),
    )
    if (pack) return [ofPack(id, pack.id, pack.given)]
    if (settles === undefined || limit?.unit !== 'm') return []
    return [{ check: id, of: settles, isShims: false, shimsFor: [id, settles] }]
  })
}

function ofPack(check: string, of: string, { under, shims = [], loop }: BearingShimsGiven): TrySetting {
  const first: PartId = under
  return {
    check,
    of,
    first,
    ...(loop?.shims !== undefined && { sign: loop.shims }),
    isShims: true,
    shimsFor: [of, ...shims],
  }
}
