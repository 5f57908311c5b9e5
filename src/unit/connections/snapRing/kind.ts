import type { Kind } from '../kind.ts'
import { asks } from './asks.ts'
import { drawing } from './drawing.ts'
import { given, type SnapRingGiven } from './given.ts'
import { settings } from './settings.ts'
import { steps } from './steps.ts'
import { words } from './words.ts'

export const snapRing: Kind<SnapRingGiven> = {
  name: 'snap ring',
  about: 'A sprung ring in a groove that keeps a part in its place.',
  given,
  parts: ({ ring, in: groove, keeps }) => [ring, groove, keeps].filter((part) => part !== undefined),
  asks,
  steps,
  settings,
  drawing,
  ...words,
}
