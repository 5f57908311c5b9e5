import type { Kind } from '../kind.ts'
import type { SnapRingGiven } from './given.ts'

export const words: Pick<Kind<SnapRingGiven>, 'checks' | 'renewals' | 'cautions' | 'warnings'> = {
  checks: (_connection, { ring }) => [`${ring} turns in its groove by hand or with a screwdriver, all the way round.`],
  renewals: (_connection, { ring }) => [
    {
      part: ring,
      why: 'A new ring at every rebuild: a ring that was spread has lost spring.',
      standing: 'told',
      source: 'army transmission manual',
    },
  ],
  cautions: () => [
    'Glasses, and pliers that fit its lugs: a snap ring flies.',
    'Do not spread it further than it needs to pass.',
  ],
  warnings: (_connection, given) => [
    ...(given.made === undefined || given.made === 'stamped'
      ? [
          'Rounded edge at the wall of the groove that takes the load: the ring rolls out under thrust. It looks right from above.',
        ]
      : []),
    `${given.ring} on the edge of its groove instead of in it: it does not turn, and comes off under load.`,
  ],
}
