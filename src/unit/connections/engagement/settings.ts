import type { Kind } from '../kind.ts'
import type { EngagementGiven } from './given.ts'

/** There is nothing to set: an engagement is felt, not measured. */
export const settings: Kind<EngagementGiven>['settings'] = () => []
