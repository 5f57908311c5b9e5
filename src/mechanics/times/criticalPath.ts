import { Problem } from '../../problem/problem.ts'
import { second } from '../../quantity/constructors.ts'
import type { Second } from '../../quantity/quantity.ts'
import type { SpreadTime } from './threePointTime.ts'
import { type ChainTime, timeOfChain } from './timeOfChain.ts'

/** Work that waits for other work: the grinder's, a part on order, our own bench. */
export interface Work {
  readonly name: string
  readonly time: SpreadTime
  /** Names of what has to be finished first. */
  readonly after: readonly string[]
}

export interface PlacedWork {
  readonly name: string
  /** Counted from the beginning of the whole. */
  readonly earliestStart: Second
  readonly earliestEnd: Second
  readonly latestStart: Second
  readonly latestEnd: Second
  /** How much later it may start without a later end of the whole. */
  readonly slack: Second
}

export interface CriticalPath extends ChainTime {
  readonly works: readonly PlacedWork[]
  /** The longest way from beginning to end, in order; where several are equally long, the least sure of them. */
  readonly critical: readonly string[]
  readonly cautions: readonly string[]
}

/**
 * Which work decides when the whole is done, and how much the rest may wait, where each can go on beside the others: some
 * at the grinder's, some on order, some on the bench. Hands and machines that several want at once are not in it.
 *
 * @param works each with its mean time, spread and what it waits for; a time as threePointTime gives it
 * @param by time in which the whole should be done; left out no chance is told
 * @returns earliest and latest times, the longest way, its mean, spread and chance
 * @throws NOTHING_TOLD, WORK_TWICE, WORK_NOT_THERE, WORK_IN_CIRCLE, VALUE_OUTSIDE
 * @source J. Kelley, M. Walker, Critical-Path Planning and Scheduling, 1959; spread of D. Malcolm, J. Roseboom, C. Clark, W. Fazar, 1959
 * @example criticalPath({ works: [{ name: 'grind', time: { mean: second(60), standardDeviation: second(0) }, after: [] }, { name: 'fit', time: { mean: second(30), standardDeviation: second(0) }, after: ['grind'] }] }).mean   // 90 s
 */
export function criticalPath({ works, by }: { readonly works: readonly Work[]; readonly by?: Second }): CriticalPath {
  const inOrder = ordered(works)
  const ends = new Map<string, Second>()
  const ways = new Map<string, readonly Work[]>()
  for (const work of inOrder) {
    const before = latestOf(work.after.map((name) => ways.get(name) as readonly Work[]))
    ways.set(work.name, [...before, work])
    ends.set(work.name, timeOfChain({ times: [...before, work].map(({ time }) => time) }).mean)
  }
  const longest = latestOf([...ways.values()])
  const whole = timeOfChain({ times: longest.map(({ time }) => time), ...(by !== undefined && { by }) })

  const latestEnds = new Map<string, number>()
  for (const { name, time } of [...inOrder].reverse()) {
    const latest = latestEnds.get(name) ?? whole.mean
    latestEnds.set(name, latest)
    for (const earlier of inOrder.find((work) => work.name === name)?.after ?? []) {
      latestEnds.set(earlier, Math.min(latestEnds.get(earlier) ?? whole.mean, latest - time.mean))
    }
  }
  return {
    ...whole,
    works: works.map(({ name, time }) => {
      const [end, latestEnd] = [ends.get(name) as number, latestEnds.get(name) as number]
      return {
        name,
        earliestStart: second(end - time.mean),
        earliestEnd: second(end),
        latestStart: second(latestEnd - time.mean),
        latestEnd: second(latestEnd),
        slack: second(Math.max(0, latestEnd - end)),
      }
    }),
    critical: longest.map(({ name }) => name),
    cautions: [
      'Only the longest way is in the chance. Where another is nearly as long, the whole is later than it says: look at what has little slack.',
    ],
  }
}

/** The way that ends last; of equal ones the least sure. */
function latestOf(ways: readonly (readonly Work[])[]): readonly Work[] {
  const told = ways.map((way) => ({ way, ...timeOfChain({ times: way.map(({ time }) => time) }) }))
  const [last] = told.sort((a, b) => {
    const isEqual = Math.abs(a.mean - b.mean) <= 1e-9 * a.mean
    return isEqual ? b.standardDeviation - a.standardDeviation : b.mean - a.mean
  })
  return last?.way ?? []
}

/** Each after all that it waits for. */
function ordered(works: readonly Work[]): readonly Work[] {
  if (works.length === 0) throw new Problem('NOTHING_TOLD', { what: 'a plan', wants: 'work and its time' })
  const names = works.map(({ name }) => name)
  const twice = names.find((name, at) => names.indexOf(name) !== at)
  if (twice !== undefined) throw new Problem('WORK_TWICE', { name: twice })
  for (const { name, after } of works) {
    const stray = after.find((other) => !names.includes(other))
    if (stray !== undefined) throw new Problem('WORK_NOT_THERE', { name, received: stray, expected: names.join(', ') })
  }
  const done: Work[] = []
  let left = works
  while (left.length > 0) {
    const finished = new Set(done.map(({ name }) => name))
    const ready = left.filter(({ after }) => after.every((name) => finished.has(name)))
    if (ready.length === 0) throw new Problem('WORK_IN_CIRCLE', { names: left.map(({ name }) => name).join(', ') })
    done.push(...ready)
    left = left.filter((work) => !ready.includes(work))
  }
  return done
}
