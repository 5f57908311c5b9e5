import type { Kind } from '../kind.ts'
import { asks } from './asks.ts'
import { drawing } from './drawing.ts'
import { type FastenersGiven, given } from './given.ts'
import { settings } from './settings.ts'
import { steps } from './steps.ts'
import { words } from './words.ts'

export const fasteners: Kind<FastenersGiven> = {
  name: 'fasteners',
  about: 'A set of screws, bolts, nuts or dowels that hold one part, on a pattern, of one length or of several.',
  given,
  parts: ({ holds, into, screws, lock }) =>
    [holds, into, ...(screws ?? []), lock?.part].filter((part) => part !== undefined),
  asks,
  steps,
  settings,
  drawing,
  ...words,
}
