// How fast a loop of ten contributors is drawn at random, beside a plain typed-array sum of the same random numbers in the
// same run, and how long the steps keep an event loop waiting. `node scripts/bench.mjs monteCarlo [samples] [rounds]`
import { setImmediate as turn } from 'node:timers/promises'
import { startedGenerator } from '../src/mechanics/measuring/simulate.ts'
import { simulateStackUp, simulateStackUpInSteps } from '../src/mechanics/stackup/simulateStackUp.ts'
import type { StackLink, StackShape } from '../src/mechanics/stackup/stackLink.ts'
import { mm } from '../src/quantity/constructors.ts'

const [, , samplesText = '200000', roundsText = '50'] = process.argv
const samples = Number(samplesText)
const rounds = Number(roundsText)
const CONTRIBUTORS = 10
const BLOCK = 4096
const SEED = 11

const measured = Array.from({ length: 40 }, (_, at) => mm(10 + ((at * 37) % 41) / 1000))
const LOOPS: Readonly<Record<string, readonly StackShape[]>> = {
  rectangular: ['rectangular'],
  normal: ['normal'],
  mixed: ['normal', 'rectangular', 'triangular', 'arcsine', 'half-cosine'],
  measured: [{ measured }],
}
const loopOf = (shapes: readonly StackShape[]): readonly StackLink[] =>
  Array.from({ length: CONTRIBUTORS }, (_, at) => ({
    name: `part ${at + 1}`,
    sign: at % 2 ? -1 : 1,
    size: mm(10),
    tolerance: mm(0.02),
    shape: shapes[at % shapes.length] as StackShape,
  }))

/** The bound: draws the same numbers from the same generator and adds them up in a typed array, nothing else. */
function drawAndSum(): number {
  const generator = startedGenerator(SEED)
  const sums = new Float64Array(samples)
  for (let from = 0; from < samples; from += BLOCK) {
    const block = sums.subarray(from, from + BLOCK)
    for (let part = 0; part < CONTRIBUTORS; part++) {
      for (let at = 0; at < block.length; at++) block[at] = (block[at] as number) + generator.next()
    }
  }
  return sums[0] as number
}

/** A harder bound for comparison: the numbers lie drawn in the fast store already, and are only summed. */
const DRAWN = Float64Array.from({ length: BLOCK * CONTRIBUTORS }, (_, at) => Math.sin(at))
function sumOnly(): number {
  const sums = new Float64Array(samples)
  for (let from = 0; from < samples; from += BLOCK) {
    const block = sums.subarray(from, from + BLOCK)
    for (let part = 0; part < CONTRIBUTORS; part++) {
      const offset = part * BLOCK
      for (let at = 0; at < block.length; at++) block[at] = (block[at] as number) + (DRAWN[offset + at] as number)
    }
  }
  return sums[0] as number
}

const limits = { low: mm(-0.08), high: mm(0.08) }
const runs: Readonly<Record<string, () => unknown>> = {
  'draw and sum': drawAndSum,
  'sum only, drawn before': sumOnly,
  ...Object.fromEntries(
    Object.entries(LOOPS).map(([name, shapes]) => {
      const links = loopOf(shapes)
      return [`loop, ${name}`, () => simulateStackUp({ links, limits, seed: SEED, samples })]
    }),
  ),
}
// The best of several rounds, taken in turns: what the machine can do when nobody else uses it.
const times = new Map<string, number>()
for (let round = 0; round < rounds; round++) {
  for (const [name, run] of Object.entries(runs)) {
    const begin = performance.now()
    run()
    times.set(name, Math.min(times.get(name) ?? Number.POSITIVE_INFINITY, performance.now() - begin))
  }
}
const bound = times.get('draw and sum') as number
console.log(`one core, ${CONTRIBUTORS} contributors, ${samples} samples, best of ${rounds}`)
for (const [name, time] of times) {
  const rate = `${(samples / time / 1000).toFixed(2).padStart(7)} M samples/s`
  console.log(
    `${name.padEnd(24)}${rate}   ${name.startsWith('draw') ? 'the bound' : `${(bound / time).toFixed(2)} of it`}`,
  )
}
const worst = Math.min(...[...times].filter(([name]) => name.startsWith('loop')).map(([, time]) => bound / time))
console.log(`${worst >= 0.5 ? 'reached' : 'MISSED'}: at least half of the bound wanted, ${worst.toFixed(2)} at worst`)

let longest = 0
let last = performance.now()
const steps = simulateStackUpInSteps({
  links: loopOf(LOOPS.mixed as readonly StackShape[]),
  limits,
  seed: SEED,
  samples,
})
while (!steps.next().done) {
  await turn()
  longest = Math.max(longest, performance.now() - last)
  last = performance.now()
}
longest = Math.max(longest, performance.now() - last)
console.log(`in steps: the event loop waits ${longest.toFixed(1)} ms at worst`)
process.exit(worst >= 0.5 ? 0 : 1)
