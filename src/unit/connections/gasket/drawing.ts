import type { Kind } from '../kind.ts'
import type { GasketGiven } from './given.ts'

export const drawing: Kind<GasketGiven>['drawing'] = (_connection, given) => {
  const what = [given.gasket ?? (given.sealant ? undefined : 'gasket'), given.sealant?.what].filter(
    (each) => each !== undefined,
  )
  return { marks: [{ at: given['squeezed by'], mark: 'joint line', text: what.join(' with ') }], maps: [] }
}
