import type { Kind } from '../kind.ts'
import type { BearingShimsGiven } from './given.ts'

export const words: Pick<Kind<BearingShimsGiven>, 'checks' | 'renewals' | 'cautions' | 'warnings'> = {
  checks: (_connection, { under }) => [
    `Turn it about 20 times both ways so that the rollers seat, ${under} tight, no seal fitted, then read.`,
  ],
  renewals: () => [],
  cautions: () => ['Fingers off the rollers while it is turned and drawn together.'],
  warnings: (connection, { under }) => [
    `Read before the rollers are seated, ${connection.id} shows float that is not there: it runs tight and hot.`,
    'Label is not size: shims are measured one by one and as a pack.',
    `A burr or a folded shim under ${under} reads as thickness and settles in service.`,
    'After any change of bearing, gasket or cover the pack is void: measure the loop again.',
  ],
}
