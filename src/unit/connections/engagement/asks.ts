import { openQuestions } from '../ask.ts'
import type { Kind } from '../kind.ts'
import type { EngagementGiven } from './given.ts'

export const asks: Kind<EngagementGiven>['asks'] = (connection, given, unit) =>
  openQuestions(connection, [
    {
      open: given.how === undefined,
      asks: `How does ${given.moves} take hold of ${given.meets}? Give \`how\`.`,
      holdsUp: 'the sketch and the words of the step',
      rank: 3,
    },
    {
      open: given.neutral === undefined,
      asks: 'In which position do the two find each other? Give `neutral`.',
      holdsUp: 'closing it blind: fitted out of position it bends or breaks',
      rank: 1,
    },
    {
      open: unit.parts.get(given.moves)?.watched.every(({ meets }) => meets !== given.meets) ?? true,
      asks: `Can somebody watch while they meet? Give \`watched\` at ${given.moves}, or leave it blind.`,
      holdsUp: 'which openings stay open',
      rank: 3,
    },
  ])
