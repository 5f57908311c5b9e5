import type { Kind } from '../kind.ts'
import type { FitGiven } from './given.ts'

export const settings: Kind<FitGiven>['settings'] = () => []
