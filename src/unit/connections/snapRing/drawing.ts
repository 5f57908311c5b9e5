import type { Kind } from '../kind.ts'
import type { SnapRingGiven } from './given.ts'

export const drawing: Kind<SnapRingGiven>['drawing'] = (_connection, given) => {
  const way =
    given.made === 'turned' || given.made === 'wire'
      ? `${given.made} ring: no edge to look for`
      : `rounded edge to ${given.keeps ?? 'the part that pushes'}`
  return { marks: [{ at: given.ring, mark: 'snap ring', text: way }], maps: [] }
}
