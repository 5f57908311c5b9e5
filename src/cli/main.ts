// The process around the command line: its words, its streams, its files, its end.
import { readFile } from 'node:fs/promises'
import { diskFiles } from './diskFiles.ts'
import type { Io } from './io.ts'
import { run } from './run.ts'
import { secret } from './secret.ts'
import { shown } from './shown.ts'

const { stdout, stderr, env } = process
const USUAL_WIDTH = 100

/** Colour only where a person looks at a screen and has not asked for none (NO_COLOR). */
const colour = stdout.isTTY === true && (env.NO_COLOR ?? '') === '' && env.TERM !== 'dumb'

/** In the time of this place, after ISO 8601; or as SOURCE_DATE_EPOCH says, for books that are to come out alike. */
function today(): string {
  const fixed = Number(env.SOURCE_DATE_EPOCH)
  const date = env.SOURCE_DATE_EPOCH && Number.isFinite(fixed) ? new Date(fixed * 1000) : new Date()
  const two = (value: number) => String(value).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}

const io: Io = {
  out: (text) => void stdout.write(`${shown(text, colour)}\n`),
  err: (text) => void stderr.write(`${shown(text, colour)}\n`),
  colour,
  width: stdout.isTTY ? Math.min(stdout.columns, USUAL_WIDTH) : USUAL_WIDTH,
  now: () => performance.now(),
  clock: () => Date.now(),
  today,
  files: diskFiles,
  env: (name) => env[name],
  font: (file) => readFile(new URL(`./fonts/${file}`, import.meta.url)),
  beside: (name) => new URL(`./${name}`, import.meta.url),
  secret,
  stopped: () =>
    new Promise((resolve) => {
      process.once('SIGINT', () => resolve())
      process.once('SIGTERM', () => resolve())
    }),
}

// A reader that had enough (`| head`) ends the program without a word.
for (const stream of [stdout, stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0)
    throw error
  })
}

process.exitCode = await run(process.argv.slice(2), io)
