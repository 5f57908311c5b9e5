import type { Kind } from '../kind.ts'
import { asks } from './asks.ts'
import { drawing } from './drawing.ts'
import { type EngagementGiven, given } from './given.ts'
import { settings } from './settings.ts'
import { steps } from './steps.ts'
import { words } from './words.ts'

export const engagement: Kind<EngagementGiven> = {
  name: 'engagement',
  about: 'Two parts that have to find each other unseen: a pin in a slot, a fork in a groove, a dog.',
  given,
  parts: ({ moves, meets }) => [moves, meets],
  asks,
  steps,
  settings,
  drawing,
  ...words,
}
