import type { Kind } from '../kind.ts'
import type { EngagementGiven } from './given.ts'

export const words: Pick<Kind<EngagementGiven>, 'checks' | 'renewals' | 'cautions' | 'warnings'> = {
  checks: (_connection, { moves, meets, felt }) =>
    felt ?? [`With ${moves} held by hand on its face, the lever moves ${meets} through every position and back.`],
  renewals: () => [],
  cautions: () => [
    'Fingers out of the joint while it comes down; a heavy cover hangs from a hoist or is carried by two.',
  ],
  warnings: (_connection, { moves, meets }) => [
    `${moves} drawn down with its screws while ${meets} is not engaged: a bent fork, a broken finger, a cracked cover.`,
    `${moves} stands off its face by an even gap: it stands on ${meets}. Lift it, do not tighten.`,
  ],
}
