import type { Kind } from '../kind.ts'
import { asks } from './asks.ts'
import { drawing } from './drawing.ts'
import { type FitGiven, given } from './given.ts'
import { settings } from './settings.ts'
import { steps } from './steps.ts'
import { words } from './words.ts'

export const cylindricalFit: Kind<FitGiven> = {
  name: 'cylindrical fit',
  about: 'A round seat in a round bore: loose, pressed, or put together hot or cold.',
  given,
  parts: ({ moves, onto, shaft, bore, warms, chills }) =>
    [moves, onto, shaft?.part, bore?.part, warms, chills].filter((part) => part !== undefined),
  asks,
  steps,
  settings,
  drawing,
  ...words,
}
