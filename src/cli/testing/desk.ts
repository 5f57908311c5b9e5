// A command line without a process: the words go in, what was said and the exit code come out.
import { join } from 'node:path'
import { Problem } from '../../problem/problem.ts'
import type { ExitCode, Files, Io } from '../io.ts'
import { run } from '../run.ts'

export interface Said {
  readonly code: ExitCode
  readonly out: string
  readonly err: string
}

/** Files in memory: the path → the text. What is written lands there too. */
export function memoryFiles(files: Map<string, string>): Files {
  return {
    read: async (path) => {
      const text = files.get(join(path))
      if (text === undefined) throw new Problem('FILE_UNREADABLE', { file: path, reason: 'there is no such file' })
      return text
    },
    write: async (path, text) => void files.set(join(path), text),
    readBytes: async (path) => Buffer.from(files.get(join(path)) ?? '', 'latin1'),
    writeBytes: async (path, bytes) => void files.set(join(path), Buffer.from(bytes).toString('latin1')),
  }
}

/** Runs the words of one command. The clock goes `tick_ms` further with every look at it. */
export async function say(
  words: readonly string[],
  told: Partial<Io> & { readonly tick_ms?: number } = {},
): Promise<Said> {
  const [out, err]: [string[], string[]] = [[], []]
  const { tick_ms = 1, ...given } = told
  let time = 0
  const io: Io = {
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    colour: false,
    width: 100,
    now: () => {
      time += tick_ms
      return time
    },
    clock: () => Date.UTC(2026, 2, 14, 9),
    today: () => '2026-03-14',
    files: memoryFiles(new Map()),
    env: () => undefined,
    font: async () => new Uint8Array(),
    beside: (name) => new URL(`../../../dist/${name}`, import.meta.url),
    secret: async () => '4711',
    stopped: async () => {},
    ...given,
  }
  const code = await run(words, io)
  return { code, out: out.join('\n'), err: err.join('\n') }
}
