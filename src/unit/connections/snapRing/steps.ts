import type { Connection } from '../../model/unit.ts'
import type { Contribution } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import type { SnapRingGiven } from './given.ts'

/** A snap ring adds no step: which way round, and the proof that it is in its groove, are work inside its own step. */
export function steps(_connection: Connection, given: SnapRingGiven): Contribution {
  const { ring, keeps } = given
  const rounded =
    given.made === 'turned' || given.made === 'wire'
      ? []
      : [
          `Turn the rounded edge of ${ring} to ${keeps ?? 'the part that pushes'}, the sharp edge to the wall of the groove that takes the load.`,
        ]
  return {
    ...NOTHING,
    within: [...rounded, `Turn ${ring} in its groove: it turns only where it is right in.`].map((does) => ({
      part: ring,
      does,
    })),
  }
}
