import { openQuestions } from '../ask.ts'
import type { Kind } from '../kind.ts'
import type { LipSealGiven } from './given.ts'

export const asks: Kind<LipSealGiven>['asks'] = (connection, given) =>
  openQuestions(connection, [
    {
      open: given['runs on'] === undefined,
      asks: 'Which shaft does it run on? Give `runs on`.',
      holdsUp: 'what it may touch, its order with the shaft',
      rank: 1,
    },
    {
      open: given.sleeve === undefined && given.over === undefined,
      asks: 'What would cut the lip on its way, and what goes over that? Give `over` and `sleeve`.',
      holdsUp: 'the sleeve, which has to pass as well',
      rank: 2,
    },
    {
      open: given.depth === undefined,
      asks: 'How deep does it sit? Give `depth`: a size, `flush` or `to the floor`.',
      holdsUp: 'where the lip runs',
      rank: 3,
    },
    {
      open: given['lip to'] === undefined,
      asks: 'Does the lip look at the oil? Give `lip to`.',
      holdsUp: 'which way round: taken as to the oil',
      rank: 3,
    },
  ])
