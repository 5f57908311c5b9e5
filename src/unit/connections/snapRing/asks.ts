import { openQuestions } from '../ask.ts'
import type { Kind } from '../kind.ts'
import type { SnapRingGiven } from './given.ts'

export const asks: Kind<SnapRingGiven>['asks'] = (connection, given, unit) => {
  const ring = unit.parts.get(given.ring)
  return openQuestions(connection, [
    {
      open: ring !== undefined && ring.rings.size > 0 && ring.passing.size === 0,
      asks: `What shape has ${given.ring} while it is sprung? Give \`passing\` at the part.`,
      holdsUp: 'what it passes on its way to the groove',
      rank: 2,
    },
    {
      open: given.in === undefined,
      asks: 'Which part has the groove? Give `in`.',
      holdsUp: 'where the ring is drawn',
      rank: 3,
    },
    {
      open: given.keeps === undefined,
      asks: 'Which part pushes against it? Give `keeps`.',
      holdsUp: 'which way round it goes',
      rank: 3,
    },
    {
      open: given.made === undefined,
      asks: 'Is it stamped (one edge rounded), turned or wire? Give `made`.',
      holdsUp: 'which way round it goes: taken as stamped',
      rank: 3,
    },
  ])
}
