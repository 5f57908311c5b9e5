import type { Kind } from '../kind.ts'
import type { LipSealGiven } from './given.ts'

export const settings: Kind<LipSealGiven>['settings'] = () => []
