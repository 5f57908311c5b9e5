import type { Kind } from '../kind.ts'
import type { LipSealGiven } from './given.ts'

export const words: Pick<Kind<LipSealGiven>, 'checks' | 'renewals' | 'cautions' | 'warnings'> = {
  checks: (_connection, given) => [
    'The lip is whole all round and its spring is in its groove, seen before it goes in.',
    `Draw a finger nail across the track of ${given['runs on']?.part ?? 'the shaft'}: where it catches, fit a repair sleeve or let the lip run beside it.`,
    'It sits square: the same depth at four places.',
  ],
  renewals: (_connection, { seal }) => [
    {
      part: seal,
      why: 'An oil seal is always renewed; buy a spare.',
      standing: 'told',
      source: 'army overhaul manuals (oil seals)',
    },
  ],
  cautions: () => ['A charred rubber seal of the fluorine kind leaves acid: do not touch it, gloves and bag.'],
  warnings: (_connection, given) => [
    `Lip away from ${given['lip to'] ?? 'the oil'}: it leaks from the first hour, and looks the same from outside when it is double.`,
    'Lip turned over or cut on a keyway, splines or thread: a line of oil along the shaft.',
    'The shaft hung on the lip while it was fitted: it leaks at the bottom.',
  ],
}
