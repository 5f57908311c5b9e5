import type { Kind } from '../kind.ts'
import type { FastenersGiven } from './given.ts'

export const settings: Kind<FastenersGiven>['settings'] = () => []
