import { stackUp } from '../../../mechanics/stackup/stackUp.ts'
import { metre } from '../../../quantity/constructors.ts'
import type { Metre } from '../../../quantity/quantity.ts'
import type { Known } from '../../model/unit.ts'
import { restsOn, sizeOf } from '../features.ts'
import { figure, tried } from '../figure.ts'
import type { Kind } from '../kind.ts'
import type { SnapRingGiven } from './given.ts'
import { words } from './words.ts'

/** Play of the ring in its groove, where ring and groove are given. */
export const settings: Kind<SnapRingGiven>['settings'] = (connection, given, unit, shop) => {
  if (!given.thickness && !given.groove) return []
  const [ring, groove] = [sizeOf(unit, given.thickness), sizeOf(unit, given.groove)]
  const missing: string[] = []
  if (!ring.known) missing.push(`Measure ${ring.name ?? `the thickness of ${given.ring}`}.`)
  if (!groove.known) missing.push(`Measure ${groove.name ?? 'the width of the groove'}.`)
  const [thickness, width] = [ring.known, groove.known]
  const play =
    thickness && width
      ? tried(missing, () => stackUp({ links: [link(1, width), link(-1, thickness)] }).worstGap)
      : undefined
  const figures = play
    ? [
        figure({
          label: `play of ${given.ring} in its groove`,
          dimension: 'length',
          range: play,
          ...restsOn([ring, groove], shop),
          source: 'width of the groove less thickness of the ring',
          limit: { low: 0, source: 'the ring has to go into the groove' },
        }),
      ]
    : []
  const title = `${given.ring}: play in the groove`
  return [
    {
      connection: connection.id,
      kind: 'snap ring',
      title,
      figures,
      says: [],
      missing,
      cautions: words.cautions(connection, given),
    },
  ]
}

const link = (sign: 1 | -1, { low, high }: Known<Metre>) => ({
  sign,
  size: metre((low + high) / 2),
  tolerance: metre((high - low) / 2),
})
