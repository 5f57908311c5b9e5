import type { Kind } from '../kind.ts'
import type { BearingShimsGiven } from './given.ts'

export const settings: Kind<BearingShimsGiven>['settings'] = () => []
