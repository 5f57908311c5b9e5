// Starts the appender, kills it, and keeps what it was told was safe.
import { type ChildProcess, spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { build } from 'rolldown'
import { checkChains } from '../../journal/checkChains.ts'
import type { Journal } from '../../journal/journal.ts'
import { readEntry } from '../../journal/readEntry.ts'
import { readAll } from './readAll.ts'

const root = fileURLToPath(new URL('../../../', import.meta.url))

/** The appender as one file that node runs. @param name of this test's own copy */
export const bundleAppender = (name: string): Promise<string> => bundled('src/stores/testing/appender.ts', name)

/** A child as one file that node runs. @param name of this test's own copy */
export async function bundled(input: string, name: string): Promise<string> {
  const file = `${root}dist/crash/${name}.mjs`
  await build({
    input: `${root}${input}`,
    platform: 'node',
    logLevel: 'warn',
    external: [/^@photostructure/, /^node:/, 'pg', 'sharp'],
    output: { file, format: 'esm', codeSplitting: false },
  })
  return file
}

export interface Appender {
  /** Id → hash of what was acknowledged. */
  readonly acknowledged: Map<string, string>
  /** SIGKILL, and all that it had said is read. */
  kill(): Promise<void>
  /** When it has said at least so many. */
  said(count: number): Promise<void>
}

export function startAppender(file: string, place: string, device = 'tablet'): Appender {
  const child: ChildProcess = spawn(process.execPath, [file, place, device], { stdio: ['ignore', 'pipe', 'pipe'] })
  const acknowledged = new Map<string, string>()
  let rest = ''
  let faults = ''
  child.stdout!.on('data', (piece: Buffer) => {
    const lines = `${rest}${piece}`.split('\n')
    rest = lines.pop() ?? ''
    for (const line of lines) {
      const [id = '', hash = ''] = line.split(' ')
      acknowledged.set(id, hash)
    }
  })
  child.stderr!.on('data', (piece: Buffer) => {
    faults += piece
  })
  const gone = new Promise<void>((go) => child.once('close', () => go()))
  return {
    acknowledged,
    async kill() {
      if (child.exitCode !== null) throw new Error(`the appender ended by itself:\n${faults}`)
      child.kill('SIGKILL')
      await gone
    },
    async said(count) {
      const until = Date.now() + 30_000
      while (acknowledged.size < count) {
        if (child.exitCode !== null) throw new Error(`the appender ended by itself:\n${faults}`)
        if (Date.now() > until) throw new Error('the appender said nothing for 30 s')
        await new Promise((go) => setTimeout(go, 2))
      }
    },
  }
}

/** How many rounds: a part in `npm test`, all in `npm run crash`. */
export const rounds = (part: number, all: number): number => (process.env.MATCHMARK_CRASH === 'all' ? all : part)

/** Every acknowledged entry is there as it was acknowledged; each entry still has its hash; every chain is whole. */
export async function lossesIn(
  journal: Journal,
  acknowledged: ReadonlyMap<string, string>,
): Promise<readonly string[]> {
  const stored = await readAll(journal, 'J41', 5000)
  const hashes = new Map(stored.map(({ entry }) => [entry.id, readEntry(entry).hash]))
  return [
    ...[...acknowledged].filter(([id, hash]) => hashes.get(id) !== hash).map(([id]) => `${id} is lost`),
    ...stored.filter(({ entry, hash }) => hashes.get(entry.id) !== hash).map(({ entry }) => `${entry.id} has changed`),
    ...checkChains(stored).flatMap(({ device, faults }) => faults.map(({ what, seq }) => `${device} ${seq}: ${what}`)),
  ]
}
