// The part of the bench that plans generated geared units of growing size.
import { countSequences } from '../../src/planning/countSequences.ts'
import { plan } from '../../src/planning/plan.ts'
import { gearedUnit } from '../gearedUnits.ts'
import type { Told } from './arguments.ts'

const SIZES = [40, 60, 80, 100, 150, 200, 400, 1000]
const triple = (value: readonly number[] | null) => (value ? value.join('/') : '-')

/** How the time grows with the operations: the power between two sizes of the same seed. */
const growth = (now: readonly [number, number], before: readonly [number, number] | undefined): string =>
  before ? `^${(Math.log(now[1] / before[1]) / Math.log(now[0] / before[0])).toFixed(1)}` : ''

/** Plans the units and prints what came out; the targets that were missed, in words. */
export function runUnits({ sizes = SIZES, seeds = [1, 2, 3], effort = 300_000 }: Told): string[] {
  console.log(
    'clocks  ops  seed     time       value (hazard/s/changes)              bound        gap_s gap_c proven    states   width  dropped growth',
  )
  for (const clocks of [true, false]) {
    const last = new Map<number, readonly [number, number]>()
    for (const size of sizes) {
      for (const seed of seeds) {
        const problem = gearedUnit({ seed, operations: size, clocks })
        const begin = performance.now()
        const { value, bound, proven, effort: spent, conflict } = plan(problem, { effort })
        const time = performance.now() - begin
        const power = growth([size, time], last.get(seed))
        last.set(seed, [size, time])
        console.log(
          [
            clocks ? 'yes   ' : 'no    ',
            String(problem.operations.length).padStart(4),
            String(seed).padStart(5),
            `${(time / 1000).toFixed(2)} s`.padStart(9),
            triple(value).padStart(24),
            triple(bound).padStart(24),
            value && bound ? `${value[0] - bound[0]}/${value[1] - bound[1]}/${value[2] - bound[2]}`.padStart(12) : '',
            String(proven).padStart(6),
            String(spent.states).padStart(9),
            String(spent.width).padStart(7),
            String(spent.dropped).padStart(8),
            power.padStart(6),
            conflict ? 'conflict' : '',
          ].join(' '),
        )
      }
    }
  }
  const small = gearedUnit({ seed: 1, operations: 30, clocks: false })
  const begin = performance.now()
  try {
    console.log(`sequences of 30 operations: ${countSequences(small)} in ${(performance.now() - begin).toFixed(0)} ms`)
  } catch (problem) {
    console.log(`sequences of 30 operations: ${(problem as Error).message}`)
  }
  return []
}
