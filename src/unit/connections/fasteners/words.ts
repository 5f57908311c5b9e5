import type { Kind } from '../kind.ts'
import type { FastenersGiven } from './given.ts'
import { lengthsOf } from './places.ts'

type Words = Pick<Kind<FastenersGiven>, 'checks' | 'renewals' | 'cautions' | 'warnings'>

const OVERHAUL =
  'army overhaul manuals (cotter pins, lock-wire, lock-washers, self-locking nuts); bent tabs: common practice, no source'

export const words: Words = {
  checks: (_connection, given) => [
    `Turn what ${given.holds} covers by hand: it turns as before the tightening.`,
    ...(given.dowels ? [] : ['Put a witness mark across each head after the last stage.']),
    ...(given.lock ? [`Look at ${given.lock.with}: every one is closed.`] : []),
  ],
  renewals: (_connection, given) =>
    given.lock?.part === undefined
      ? []
      : [
          {
            part: given.lock.part,
            why: `${given.lock.with}: renewed whenever it was undone.`,
            standing: 'told',
            source: OVERHAUL,
          },
        ],
  cautions: (_connection, given) =>
    given.dowels
      ? []
      : [
          'Pull the wrench towards you, feet firm; no tube on the handle.',
          'Dirt on the threads can raise the tension far over what the torque says: clean them.',
          "The maker's torque for this machine comes first.",
        ],
  warnings: (_connection, given) => {
    if (given.dowels)
      return [`Dowels pulled home with the bolts split the hole or bend: ${given.holds} then sits off its place.`]
    const mixed = lengthsOf(given).length > 1
    return [
      ...(mixed
        ? [
            `Lengths of ${given.holds} swapped: a long one in a short blind hole bottoms and feels tight without clamping, or cracks the floor of the hole; a short one in a deep hole has too little thread and strips.`,
          ]
        : []),
      ...(given.through
        ? []
        : ['Oil or chips in a blind hole: it feels tight before it clamps, and can crack the casting.']),
      'Left finger-tight when the work is interrupted: most things left out are fasteners not done up. Write down what is open.',
    ]
  },
}
