import type { Kind } from '../kind.ts'
import type { BearingShimsGiven } from './given.ts'

export const drawing: Kind<BearingShimsGiven>['drawing'] = (connection, given) => ({
  marks: [{ at: given.under, mark: 'shim pack', text: `${connection.id}: shims under ${given.under}` }],
  maps: [],
})
