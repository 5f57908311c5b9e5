import type { Connection } from '../../model/unit.ts'
import type { Contribution } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import type { EngagementGiven } from './given.ts'

/** A blind engagement adds no step: the neutral position, lowering level and feeling it afterwards are work inside the step. */
export function steps(_connection: Connection, given: EngagementGiven): Contribution {
  const { moves, meets } = given
  const work = [
    `Put ${meets} and ${moves} in ${given.neutral ?? 'the neutral position'}, and look at it.`,
    `Lower ${moves} ${given.lowered ?? 'level, without force'}: what is not engaged holds it off its face.`,
    ...(given.felt ?? [`work the lever through every position: ${meets} follows`]).map(
      (felt) => `Feel before it is fastened: ${felt}.`,
    ),
  ]
  return {
    ...NOTHING,
    within: work.map((does) => ({ part: moves, does })),
    mayOverlap: [{ mover: moves, other: meets }],
  }
}
