import type { Kind } from '../kind.ts'
import { asks } from './asks.ts'
import { drawing } from './drawing.ts'
import { type GasketGiven, given } from './given.ts'
import { settings } from './settings.ts'
import { steps } from './steps.ts'
import { words } from './words.ts'

export const gasket: Kind<GasketGiven> = {
  name: 'gasket',
  about: 'A gasket, a sealant or both in a joint that is squeezed by one part.',
  given,
  parts: ({ gasket: part, 'squeezed by': squeezer, against }) =>
    [part, squeezer, against].filter((part) => part !== undefined),
  asks,
  steps,
  settings,
  drawing,
  ...words,
}
