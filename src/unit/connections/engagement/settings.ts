import type { Kind } from '../kind.ts'
import type { EngagementGiven } from './given.ts'

export const settings: Kind<EngagementGiven>['settings'] = () => []
