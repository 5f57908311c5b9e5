import type { Kind } from '../kind.ts'
import { asks } from './asks.ts'
import { drawing } from './drawing.ts'
import { type BearingShimsGiven, given } from './given.ts'
import { settings } from './settings.ts'
import { steps } from './steps.ts'
import { words } from './words.ts'

export const bearingShims: Kind<BearingShimsGiven> = {
  name: 'bearing shims',
  about: 'Float or preload of rolling bearings set by a pack of shims.',
  given,
  parts: ({ shims, under, bearings }) => [...(shims ?? []), under, ...(bearings ?? [])],
  asks,
  steps,
  settings,
  drawing,
  ...words,
}
