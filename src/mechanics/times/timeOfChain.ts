import { Problem } from '../../problem/problem.ts'
import { second } from '../../quantity/constructors.ts'
import type { Second } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { normalShareBelow } from '../measuring/distributions.ts'
import type { SpreadTime } from './threePointTime.ts'

export interface ChainTime extends SpreadTime {
  /** Chance to be done by the time asked for; left out where none was asked for. */
  readonly inTime?: number
  readonly late?: number
}

/**
 * How long several jobs take one after another, and the chance to be done by a time. Means add; of the spreads the
 * squares add, so that a chain is surer than its jobs. True where one job's luck is not the next one's, and for enough
 * jobs (five or so) that their sum lies like a normal distribution.
 *
 * @param times of the jobs, as threePointTime gives them; one or more
 * @param by time in which it should be done; left out no chance is told
 * @returns mean and standard deviation of the whole, and the chance
 * @throws VALUE_OUTSIDE, NOTHING_TOLD
 * @source D. Malcolm, J. Roseboom, C. Clark, W. Fazar, 1959
 * @example timeOfChain({ times: [{ mean: second(3), standardDeviation: second(1) }, { mean: second(14), standardDeviation: second(2) }], by: second(17) }).inTime   // 0.5
 */
export function timeOfChain({ times, by }: { readonly times: readonly SpreadTime[]; readonly by?: Second }): ChainTime {
  if (times.length === 0) throw new Problem('NOTHING_TOLD', { what: 'a chain of jobs', wants: 'job and its time' })
  let [mean, variance] = [0, 0]
  for (const time of times) {
    requireWithin('a mean time', time.mean, { low: 0, high: Number.MAX_VALUE, unit: 's' })
    requireWithin('the spread of a time', time.standardDeviation, { low: 0, high: Number.MAX_VALUE, unit: 's' })
    mean += time.mean
    variance += time.standardDeviation ** 2
  }
  const deviation = Math.sqrt(variance)
  const told = { mean: second(mean), standardDeviation: second(deviation) }
  if (by === undefined) return told
  const inTime = deviation > 0 ? normalShareBelow((by - mean) / deviation) : by >= mean ? 1 : 0
  return { ...told, inTime, late: 1 - inTime }
}
