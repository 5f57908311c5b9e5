// How fast a loop of ten contributors is drawn at random, beside a plain typed-array sum of as many random numbers in the
// same run (once with drawing them and once with the numbers lying ready), and how long a long run keeps an event loop waiting: in steps on it, and in a thread of its own.
// `node scripts/bench.mjs monteCarlo [samples] [rounds] [samples of the long run]`
import { setImmediate as turn } from 'node:timers/promises'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { startedGenerator } from '../src/mechanics/measuring/simulate.ts'
import { simulateStackUp, simulateStackUpInSteps } from '../src/mechanics/stackup/simulateStackUp.ts'
import type { StackLink, StackShape } from '../src/mechanics/stackup/stackLink.ts'
import { mm } from '../src/quantity/constructors.ts'

const [, , samplesText = '200000', roundsText = '50', longText = '20000000'] = process.argv
const samples = Number(samplesText)
const rounds = Number(roundsText)
const long = Number(longText)
const CONTRIBUTORS = 10
const BLOCK = 4096
const SEED = 11

/** Ten batches of forty, none like another. */
const measured = (part: number) => Array.from({ length: 40 }, (_, at) => mm(10 + ((at * (37 + part)) % 41) / 1000))
const LOOPS: Readonly<Record<string, readonly StackShape[]>> = {
  rectangular: ['rectangular'],
  normal: ['normal'],
  mixed: ['normal', 'rectangular', 'triangular', 'arcsine', 'half-cosine'],
  measured: Array.from({ length: CONTRIBUTORS }, (_, part) => ({ measured: measured(part) })),
}
const loopOf = (shapes: readonly StackShape[]): readonly StackLink[] =>
  Array.from({ length: CONTRIBUTORS }, (_, at) => ({
    name: `part ${at + 1}`,
    sign: at % 2 ? -1 : 1,
    size: mm(10),
    tolerance: mm(0.02),
    shape: shapes[at % shapes.length] as StackShape,
  }))

/** Made once: getting the memory is no part of a sum. */
const sums = new Float64Array(samples)

/** The kind bound: one number for each contributor from the same generator, added up in a typed array, nothing else. */
function drawAndSum(): number {
  const generator = startedGenerator(SEED)
  sums.fill(0)
  for (let from = 0; from < samples; from += BLOCK) {
    const block = sums.subarray(from, from + BLOCK)
    for (let part = 0; part < CONTRIBUTORS; part++) {
      for (let at = 0; at < block.length; at++) block[at] = (block[at] as number) + generator.next()
    }
  }
  return sums[0] as number
}

/** The hard bound: the numbers lie drawn in the fast store already, and are only summed. */
const DRAWN = Float64Array.from({ length: BLOCK * CONTRIBUTORS }, (_, at) => Math.sin(at))
function sumOnly(): number {
  sums.fill(0)
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
const longRun = {
  links: loopOf(LOOPS.mixed as readonly StackShape[]),
  limits,
  seed: SEED,
  samples: long,
}

if (isMainThread) {
  const reached = compareRates()
  await freeLoop()
  process.exit(reached ? 0 : 1)
} else {
  // This same file as the thread that reckons.
  parentPort?.postMessage(simulateStackUp(workerData as typeof longRun))
}

function compareRates(): boolean {
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
  // Processor time, not that of the clock, so that others on the machine count less; the best of several rounds, in turns.
  const times = new Map<string, number>()
  for (let round = 0; round < rounds; round++) {
    for (const [name, run] of Object.entries(runs)) {
      const begin = process.cpuUsage()
      run()
      const { user, system } = process.cpuUsage(begin)
      times.set(name, Math.min(times.get(name) ?? Number.POSITIVE_INFINITY, (user + system) / 1000))
    }
  }
  const [drawing, sum] = [times.get('draw and sum') as number, times.get('sum only, drawn before') as number]
  console.log(`one core, ${CONTRIBUTORS} contributors, ${samples} samples, best of ${rounds}`)
  for (const [name, time] of times) {
    const rate = `${(samples / time / 1000).toFixed(2).padStart(7)} M samples/s`
    console.log(
      `${name.padEnd(24)}${rate}   ${(sum / time).toFixed(2)} of the sum alone, ${(drawing / time).toFixed(2)} of drawing and summing`,
    )
  }
  const slowest = Math.max(...[...times].filter(([name]) => name.startsWith('loop')).map(([, time]) => time))
  const verdict = (bound: number) =>
    `${bound / slowest >= 0.5 ? 'reached' : 'MISSED'}, ${(bound / slowest).toFixed(2)} for the slowest loop`
  console.log(`at least half of the sum alone, drawn before: ${verdict(sum)}`)
  console.log(`at least half of drawing and summing:         ${verdict(drawing)}`)
  return drawing / slowest >= 0.5
}

/** Prints the longest that the event loop waits while nothing runs, while the long run goes in steps, and in a thread. */
async function freeLoop(): Promise<void> {
  console.log(`event loop at worst, ${long / 1e6} M samples, a turn taken as often as it lets one`)
  const idle = await worstDelay((done) => setTimeout(done, 1000))
  console.log(`  with nothing to do      ${idle.worst.toFixed(1)} ms`)
  let longestStep = 0
  const stepped = await worstDelay(async (done) => {
    const steps = simulateStackUpInSteps(longRun)
    let step = steps.next()
    while (!step.done) {
      await turn()
      const begin = process.cpuUsage()
      step = steps.next()
      const { user, system } = process.cpuUsage(begin)
      longestStep = Math.max(longestStep, (user + system) / 1000)
    }
    done(step.value)
  })
  console.log(
    `  in steps on it          ${stepped.worst.toFixed(1)} ms, run of ${(stepped.took / 1000).toFixed(1)} s; longest step ${longestStep.toFixed(1)} ms of processor time`,
  )
  const apart = await worstDelay((done) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: longRun })
    worker.once('message', done)
    worker.once('error', (error) => {
      throw error
    })
  })
  console.log(`  in a thread of its own  ${apart.worst.toFixed(1)} ms, run of ${(apart.took / 1000).toFixed(1)} s`)
  const same = JSON.stringify(stepped.answer) === JSON.stringify(apart.answer)
  console.log(`  the answer is ${same ? 'the same' : 'NOT the same'} both ways`)
  if (!same) process.exit(1)
}

/** The longest time from one turn of the event loop to the next until the work says that it is done. */
async function worstDelay(
  work: (done: (answer?: unknown) => void) => unknown,
): Promise<{ readonly worst: number; readonly took: number; readonly answer: unknown }> {
  let [answer, isDone] = [undefined as unknown, false]
  const begin = performance.now()
  void work((found) => {
    answer = found
    isDone = true
  })
  let worst = performance.now() - begin
  let last = performance.now()
  while (!isDone) {
    await turn()
    const now = performance.now()
    worst = Math.max(worst, now - last)
    last = now
  }
  return { worst, took: performance.now() - begin, answer }
}
