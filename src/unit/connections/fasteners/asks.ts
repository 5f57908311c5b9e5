import { openQuestions } from '../ask.ts'
import { sizeOf } from '../features.ts'
import type { Kind } from '../kind.ts'
import type { FastenersGiven } from './given.ts'
import { lengthsOf, placesOf } from './places.ts'

export const asks: Kind<FastenersGiven>['asks'] = (connection, given, unit) => {
  const inside = given.lock === undefined && !given.dowels
  const screws = !given.dowels
  const letters = lengthsOf(given)
  const places = placesOf(given)
  return openQuestions(connection, [
    {
      open: screws && given.thread === undefined,
      asks: 'Which thread? Give `thread`, as M8 or 3/8-16 UNC.',
      holdsUp: 'torque and engagement',
      rank: 2,
    },
    {
      open: screws && given.thread !== undefined && given.torque === undefined && given.grade === undefined,
      asks: 'Which torque does the maker say, or which grade is on the heads? Give `torque` or `grade`.',
      holdsUp: 'torque: an unknown grade is taken at its worst',
      rank: 2,
    },
    {
      open: screws && given.condition === undefined && given.torque === undefined,
      asks: 'Dry or oiled threads? Give `condition`.',
      holdsUp: 'torque: taken at its worst',
      rank: 3,
    },
    {
      open: screws && given.into === undefined,
      asks: 'Which part has the thread? Give `into`.',
      holdsUp: 'how deep the thread has to reach',
      rank: 3,
    },
    {
      open:
        screws && given.into !== undefined && (letters.length === 0 || sizeOf(unit, given.clamps).known === undefined),
      asks: 'How long are the screws, and how thick is what they clamp? Give `lengths` and `clamps`.',
      holdsUp: 'engagement, and whether one bottoms',
      rank: 3,
    },
    {
      open: screws && given.through !== true && given['thread depth'] === undefined,
      asks: 'Are the holes blind? Give `thread depth`, or `through: true`.',
      holdsUp: 'whether a screw bottoms before it clamps',
      rank: 2,
    },
    {
      open: letters.length > 1 && (places.length === 0 || places.some(({ letter }) => letter === '?')),
      asks: 'Which length belongs in which hole? Give `holes` of each letter.',
      holdsUp: 'the hole map',
      rank: 1,
    },
    {
      open: places.length === 0,
      asks: 'Where are the holes? Give `circle` with `angles` or `pieces`, or `holes`.',
      holdsUp: 'the tightening map',
      rank: 3,
    },
    {
      open: inside,
      asks: 'What locks them? Give `lock`. Every fastener inside a housing needs a named lock.',
      holdsUp: 'the lock check before closing',
      rank: 3,
    },
  ])
}
