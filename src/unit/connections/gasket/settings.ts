import { restsOn, sizeOf } from '../features.ts'
import { figure } from '../figure.ts'
import type { Kind } from '../kind.ts'
import type { GasketGiven } from './given.ts'
import { words } from './words.ts'

/** The thickness that counts in a loop of faces: as squeezed, not as bought. */
export const settings: Kind<GasketGiven>['settings'] = (connection, given, unit, shop) => {
  if (given.sealant && given.gasket === undefined) return []
  const sizes = { free: sizeOf(unit, given.free), squeezed: sizeOf(unit, given.squeezed) }
  const figures = Object.entries(sizes).flatMap(([how, size]) =>
    size.known
      ? [
          figure({
            label: `gasket, ${how}`,
            dimension: 'length',
            range: size.known,
            ...restsOn([size], shop),
            source: size.known.source ?? given.source ?? 'no source',
          }),
        ]
      : [],
  )
  const missing = sizes.squeezed.known
    ? []
    : [
        `Measure ${sizes.squeezed.name ?? 'an old gasket between the bolt holes'}: the squeezed thickness counts in every loop.`,
      ]
  const title = `Gasket under ${given['squeezed by']}`
  return [
    {
      connection: connection.id,
      kind: 'gasket',
      title,
      figures,
      says: [],
      missing,
      cautions: words.cautions(connection, given),
    },
  ]
}
