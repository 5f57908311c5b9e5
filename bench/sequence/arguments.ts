// What the sequence bench is told on the command line.
import { parseArgs } from 'node:util'

export interface Told {
  /** Files to read; none means those of bench/data/sop. */
  readonly files: readonly string[]
  /** Time limit for each problem; without it, each target's own. */
  readonly seconds: number | undefined
  readonly json: boolean
  /** Applies the targets: what misses them makes the exit code 1. */
  readonly check: boolean
  /** Files alone, generated units alone, or both. */
  readonly part: 'files' | 'units' | 'both'
  readonly sizes: readonly number[] | undefined
  readonly seeds: readonly number[] | undefined
  readonly effort: number | undefined
}

const USAGE = `npm run bench:sequence -- [FILE …] [--seconds N] [--json] [--check]
  FILE       TSPLIB or SOPLIB sequence files, or planning problems as JSON (default: bench/data/sop and generated units)
  --seconds  time limit for each problem
  --json     one JSON object a line
  --check    applies the targets; exit 1 when one is missed
  --part     files, units or both
  --sizes 40,60 · --seeds 1,2,3 · --effort 300000   for the generated units`

/** Ends the process with the usage where the arguments cannot be used. */
export function argumentsOf(given: readonly string[]): Told {
  try {
    const { values, positionals } = parseArgs({
      args: [...given],
      allowPositionals: true,
      options: {
        seconds: { type: 'string' },
        json: { type: 'boolean', default: false },
        check: { type: 'boolean', default: false },
        part: { type: 'string' },
        sizes: { type: 'string' },
        seeds: { type: 'string' },
        effort: { type: 'string' },
      },
    })
    const { part = positionals.length > 0 ? 'files' : 'both' } = values
    if (part !== 'files' && part !== 'units' && part !== 'both') {
      throw new Error(`--part is '${part}'; expected is files, units or both.`)
    }
    return {
      files: positionals,
      seconds: values.seconds === undefined ? undefined : number('--seconds', values.seconds),
      json: values.json,
      check: values.check,
      part,
      sizes: values.sizes?.split(',').map((each) => number('--sizes', each)),
      seeds: values.seeds?.split(',').map((each) => number('--seeds', each)),
      effort: values.effort === undefined ? undefined : number('--effort', values.effort),
    }
  } catch (error) {
    console.error(`${(error as Error).message}\n${USAGE}`)
    process.exit(2)
  }
}

function number(name: string, text: string): number {
  const value = Number(text)
  if (text.trim() === '' || !Number.isFinite(value) || value <= 0) {
    throw new Error(`${name} is '${text}'; expected is a number above 0.`)
  }
  return value
}
