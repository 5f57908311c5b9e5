import type { Connection, Unit } from '../../model/unit.ts'
import type { Contribution } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import type { BearingShimsGiven } from './given.ts'

/** The first pack is right, or the second is; a third is rare (common practice, no source). */
const TRIES = { low: 1, usual: 2, high: 3 }

/** Shims go in with the part that squeezes them; which ones stands in the settings of the job. A check that settles a float with that part on is
 * read until it is right: with another pack each time. */
export function steps(connection: Connection, given: BearingShimsGiven, unit: Unit): Contribution {
  const { under } = given
  return {
    ...NOTHING,
    within: [
      {
        part: under,
        does: `Measure every shim of ${connection.id} and fit the pack of the settings: clean, flat, thick ones outside.`,
      },
    ],
    loops: [...unit.checks.values()]
      .filter(({ settles, wants }) => settles !== undefined && wants.includes(under))
      .map(({ id, settles }) => ({
        id: `${connection.id}: until ${id} is right`,
        first: under,
        last: id,
        tries: TRIES,
        says: `${id} settles ${settles}: where it is not right, ${under} comes off for another pack of ${connection.id}.`,
        standing: 'usual' as const,
        source: 'common practice, no source',
      })),
    carried: (given.shims ?? []).map((part) => ({ part, withPart: under })),
  }
}
