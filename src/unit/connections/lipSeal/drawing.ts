import type { Kind } from '../kind.ts'
import type { LipSealGiven } from './given.ts'

export const drawing: Kind<LipSealGiven>['drawing'] = (_connection, given) => ({
  marks: [{ at: given.seal, mark: 'lip', text: `lip to ${given['lip to'] ?? 'the oil'}` }],
  maps: [],
})
