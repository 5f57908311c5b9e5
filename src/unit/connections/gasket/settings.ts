import type { Kind } from '../kind.ts'
import type { GasketGiven } from './given.ts'

export const settings: Kind<GasketGiven>['settings'] = () => []
