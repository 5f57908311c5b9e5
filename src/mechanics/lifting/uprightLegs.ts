import { newton } from '../../quantity/constructors.ts'
import type { Kilogram, Metre, Newton } from '../../quantity/quantity.ts'
import { requireAboveZero } from '../limits.ts'
import { type Known, type Range, spread } from '../range.ts'
import { RATED_GEAR } from './ratedGear.ts'
import { GRAVITY } from './tipping.ts'

export interface UprightLegs {
  readonly first: Range<Newton>
  readonly second: Range<Newton>
  readonly cautions: readonly string[]
}

/**
 * How two upright legs share a load: two hoists, a spreader, two trestles. The nearer one to the centre of mass carries
 * more.
 *
 * @param mass symbol m
 * @param toFirst level distance from the centre of mass to the first leg
 * @param toSecond level distance to the second, on the other side
 * @returns load of each
 * @throws VALUE_OUTSIDE, RANGE_TURNED
 * @source statics
 * @example uprightLegs({ mass: kilogram(100), toFirst: mm(800), toSecond: mm(200) }).second.high   // 785 N
 */
export function uprightLegs({
  mass,
  toFirst,
  toSecond,
}: {
  readonly mass: Known<Kilogram>
  readonly toFirst: Known<Metre>
  readonly toSecond: Known<Metre>
}): UprightLegs {
  requireAboveZero('the mass', mass, 'kg')
  requireAboveZero('the distance to the first leg', toFirst, 'm')
  requireAboveZero('the distance to the second leg', toSecond, 'm')
  const inputs = { mass, toFirst, toSecond }
  return {
    first: spread(inputs, (known) =>
      newton((known.mass * GRAVITY * known.toSecond) / (known.toFirst + known.toSecond)),
    ),
    second: spread(inputs, (known) =>
      newton((known.mass * GRAVITY * known.toFirst) / (known.toFirst + known.toSecond)),
    ),
    cautions: ['Two hoists have to rise together: one that hangs back throws its load on the other.', ...RATED_GEAR],
  }
}
