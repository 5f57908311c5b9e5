// The shop's own stream is no job: nobody brings it in from outside, and it is not given away as one.
import { Problem } from '../../problem/problem.ts'
import { SHOP } from '../shop/shopState.ts'

/** @throws STREAM_NOT_YOURS */
export function mustBeJob(job: string): void {
  if (job === SHOP) throw new Problem('STREAM_NOT_YOURS', { stream: SHOP })
}
