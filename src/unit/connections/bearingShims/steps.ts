import type { Connection } from '../../model/unit.ts'
import type { Contribution } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import type { BearingShimsGiven } from './given.ts'

/** Shims go in with the part that squeezes them; which ones stands in the settings of the job. */
export function steps(connection: Connection, given: BearingShimsGiven): Contribution {
  const { under } = given
  return {
    ...NOTHING,
    within: [
      {
        part: under,
        does: `Measure every shim of ${connection.id} and fit the pack of the settings: clean, flat, thick ones outside.`,
      },
    ],
    carried: (given.shims ?? []).map((part) => ({ part, withPart: under })),
  }
}
