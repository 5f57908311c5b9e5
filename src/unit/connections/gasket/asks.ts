import { openQuestions } from '../ask.ts'
import { sizeOf } from '../features.ts'
import type { Kind } from '../kind.ts'
import type { GasketGiven } from './given.ts'

export const asks: Kind<GasketGiven>['asks'] = (connection, given, unit) => {
  const gasket = given.gasket !== undefined || given.sealant === undefined
  return openQuestions(connection, [
    {
      open: gasket && sizeOf(unit, given.squeezed).known === undefined,
      asks: 'How thick is the gasket when it is squeezed? Give `squeezed`: measure an old one between the bolt holes.',
      holdsUp: 'every loop of faces that runs through it',
      rank: 2,
    },
    {
      open: gasket && given.holes === undefined,
      asks: 'Which oil, drain or vent holes run through the gasket? Give `holes`.',
      holdsUp: 'the check that none is closed',
      rank: 2,
    },
    {
      open: given.sealant !== undefined && given.sealant['open time'] === undefined,
      asks: 'How long may the sealant lie open? Read the tube and give `open time`.',
      holdsUp: 'the clock from the first bead to the last screw',
      rank: 1,
    },
    {
      open: given.sealant !== undefined && given.sealant.cure === undefined,
      asks: 'How long does the sealant cure? Read the tube and give `cure`.',
      holdsUp: 'when oil may go in',
      rank: 1,
    },
  ])
}
