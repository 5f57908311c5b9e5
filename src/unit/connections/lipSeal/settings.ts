import { interference } from '../../../mechanics/fits/interference.ts'
import { restsOn, sizeOf } from '../features.ts'
import { figure, tried } from '../figure.ts'
import type { Kind } from '../kind.ts'
import type { LipSealGiven } from './given.ts'
import { words } from './words.ts'

/** How tight the seal sits in its pocket, where both are given. */
export const settings: Kind<LipSealGiven>['settings'] = (connection, given, unit, shop) => {
  if (!given.outside && !given.pocket) return []
  const [outside, pocket] = [sizeOf(unit, given.outside), sizeOf(unit, given.pocket)]
  const missing: string[] = []
  if (!outside.known) missing.push(`Measure ${outside.name ?? `the outside of ${given.seal}`}.`)
  if (!pocket.known) missing.push(`Measure ${pocket.name ?? 'the bore of the pocket'}.`)
  const [shaft, bore] = [outside.known, pocket.known]
  const tight = shaft && bore ? tried(missing, () => interference({ shaft, bore }).measured) : undefined
  const figures = tight
    ? [
        figure({
          label: `${given.seal} tight in its pocket`,
          dimension: 'length',
          range: tight,
          ...restsOn([outside, pocket], shop),
          source: 'outside of the seal less bore of the pocket',
          limit: { low: 0, source: 'a loose seal turns with the shaft and leaks outside' },
        }),
      ]
    : []
  const title = `${given.seal}: seat in its pocket`
  return [
    {
      connection: connection.id,
      kind: 'lip seal',
      title,
      figures,
      says: [],
      missing,
      cautions: words.cautions(connection, given),
    },
  ]
}
