import type { Kind } from '../kind.ts'
import type { SnapRingGiven } from './given.ts'

export const settings: Kind<SnapRingGiven>['settings'] = () => []
