// Reads the commands that a page shows, with what they print there, and runs them as the command line would.
import { join } from 'node:path'
import { diskFiles } from '../src/cli/diskFiles.ts'
import type { Files } from '../src/cli/io.ts'
import { say } from '../src/cli/testing/desk.ts'

export interface ShownCommand {
  readonly line: number
  /** As typed, without the prompt. */
  readonly typed: string
  /** The lines below it; `…` alone stands for any lines. */
  readonly printed: readonly string[]
}

/** Blocks marked `console`: a command behind `$ `, then its output. */
export function shownCommands(page: string): readonly ShownCommand[] {
  return [...page.matchAll(/^```console\n([\s\S]*?)^```/gm)].flatMap(({ 1: block, index }) => {
    const first = page.slice(0, index).split('\n').length + 1
    const commands: { line: number; typed: string; printed: string[] }[] = []
    block!.split('\n').forEach((line, place) => {
      if (line.startsWith('$ ')) commands.push({ line: first + place, typed: line.slice(2), printed: [] })
      else commands.at(-1)?.printed.push(line)
    })
    return commands.map((each) => ({ ...each, printed: trimmed(each.printed) }))
  })
}

const trimmed = (lines: readonly string[]): readonly string[] => {
  const last = lines.findLastIndex((line) => line.trim() !== '')
  return lines.slice(0, last + 1)
}

/** Files that a page shows: blocks marked `yaml NAME` or `text NAME`. */
export const shownFiles = (page: string): ReadonlyMap<string, string> =>
  new Map([...page.matchAll(/^```(?:yaml|text) (\S+)\n([\s\S]*?)^```/gm)].map(([, name, text]) => [name!, text!]))

/** What the command prints now. Files of the page lie beside those of the clone; nothing is written to the disk. */
export async function runShown(typed: string, files: ReadonlyMap<string, string>): Promise<readonly string[]> {
  const words = wordsOf(typed)
  const start = ['npm', 'start', '--', '--once']
  const isStart = words.length === start.length && words.every((word, place) => word === start[place])
  if (!isStart && words[0] !== './matchmark')
    throw new Error(`'${typed}' is neither ./matchmark nor npm start -- --once`)
  const asked = isStart ? ['start', 'examples/quarry-railway/J41.job.yaml', '--into', 'out', '--once'] : words.slice(1)
  const lines: string[] = []
  const print = (text: string) => void lines.push(...text.split('\n'))
  await say(asked, { files: beside(files), out: print, err: print })
  return lines
}

function beside(shown: ReadonlyMap<string, string>): Files {
  const root = new URL('..', import.meta.url).pathname
  return {
    read: async (path) => shown.get(path) ?? diskFiles.read(join(root, path)),
    write: async () => {},
    readBytes: async (path) => diskFiles.readBytes(join(root, path)),
    writeBytes: async () => {},
  }
}

/** Words of a shell line, as far as pages use it: spaces between, quotes around. */
const wordsOf = (typed: string): string[] =>
  [...typed.matchAll(/'([^']*)'|"([^"]*)"|(\S+)/g)].map((found) => found[1] ?? found[2] ?? found[3]!)

/** The first printed line that does not come, in its order; undefined when all do. */
export function firstDifference(printed: readonly string[], said: readonly string[]): string | undefined {
  let place = 0
  let isLoose = false
  for (const line of printed) {
    if (line.trim() === '…') {
      isLoose = true
      continue
    }
    const found = isLoose ? said.indexOf(line, place) : said[place] === line ? place : -1
    if (found < 0) return `'${line}' does not come${isLoose ? '' : ` here; it says '${said[place] ?? 'nothing more'}'`}`
    place = found + 1
    isLoose = false
  }
  return isLoose || place === said.length ? undefined : `more comes: '${said[place]}'; close with a line '…'`
}

/** The page with what its commands print now, cut where it was cut: all lines, or as many as stood before a closing `…`. */
export async function withOutputs(page: string): Promise<string> {
  const files = shownFiles(page)
  const lines = page.split('\n')
  for (const { line, typed, printed } of shownCommands(page).toReversed()) {
    const said = await runShown(typed, files)
    const cut = printed.at(-1)?.trim() === '…' ? [...said.slice(0, printed.length - 1), '…'] : said
    lines.splice(line, printed.length, ...cut)
  }
  return lines.join('\n')
}
