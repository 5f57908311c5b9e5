import type { Kind } from '../kind.ts'
import type { EngagementGiven } from './given.ts'

export const drawing: Kind<EngagementGiven>['drawing'] = (_connection, given) => ({
  marks: [
    { at: given.moves, mark: 'finger', text: `${given.how ?? 'engages blind'}: ${given.moves} in ${given.meets}` },
  ],
  maps: [],
})
