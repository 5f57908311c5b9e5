import { openQuestions } from '../ask.ts'
import { resolveFeature } from '../features.ts'
import type { Kind } from '../kind.ts'
import type { BearingShimsGiven } from './given.ts'

export const asks: Kind<BearingShimsGiven>['asks'] = (connection, given, unit) => {
  const settled =
    unit.checks.has(given['settled by'] ?? '') ||
    [...unit.checks.values()].some(({ settles }) => settles === connection.id)
  const unmeasured = (given.loop?.terms ?? [])
    .map(({ part, feature }) => `${part}.${feature}`)
    .filter((name) => resolveFeature(unit, name)?.size === undefined)
  return openQuestions(connection, [
    {
      open: given.float === undefined && given.preload === undefined,
      asks: 'What is wanted, and who says so? Give `float` or `preload` with `source`.',
      holdsUp: 'the shim pack',
      rank: 1,
    },
    {
      open: given.loop === undefined,
      asks: 'Which faces make the loop? Give `loop`, as in box.depth A - bearing A.width + shims.',
      holdsUp: 'a pack worked out from sizes; without it, measure the gap',
      rank: 2,
    },
    {
      open: given.loop !== undefined && given.loop.shims === undefined,
      asks: 'Does a thicker pack open the float (`+ shims` in the loop) or close it (`- shims`)? Take it from the drawing.',
      holdsUp: 'the shim pack: without the sign it is not worked out',
      rank: 1,
    },
    {
      open: unmeasured.length > 0,
      asks: `Measure ${unmeasured.join(', ')}.`,
      holdsUp: 'the shim pack',
      rank: 2,
    },
    {
      open: !settled,
      asks: 'Which check proves it? Give `settled by`, or `settles` at the check.',
      holdsUp: 'the float or drag is not proved',
      rank: 2,
    },
  ])
}
