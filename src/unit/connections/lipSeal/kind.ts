import type { Kind } from '../kind.ts'
import { asks } from './asks.ts'
import { drawing } from './drawing.ts'
import { given, type LipSealGiven } from './given.ts'
import { settings } from './settings.ts'
import { steps } from './steps.ts'
import { words } from './words.ts'

export const lipSeal: Kind<LipSealGiven> = {
  name: 'lip seal',
  about: 'A rubber lip that runs on a shaft and keeps oil in or dirt out.',
  given,
  parts: ({ seal, in: pocket, 'runs on': shaft }) =>
    [seal, pocket?.part, shaft?.part].filter((part) => part !== undefined),
  asks,
  steps,
  settings,
  drawing,
  ...words,
}
