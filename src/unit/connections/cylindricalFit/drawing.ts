import type { Kind } from '../kind.ts'
import type { FitGiven } from './given.ts'
import { pairOf } from './pair.ts'

export const drawing: Kind<FitGiven>['drawing'] = (_connection, given, unit) => {
  const { mover, other } = pairOf(given, unit)
  if (mover === undefined || given.fit === undefined || given.fit === 'loose') return { marks: [], maps: [] }
  const on = other === undefined ? '' : ` on ${other}`
  return { marks: [{ at: mover, mark: 'interference', text: `${given.fit} fit: ${mover}${on}` }], maps: [] }
}
