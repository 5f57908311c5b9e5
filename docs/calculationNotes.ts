// Reads the docstrings of the exported calculations: what `matchmark figure` says of meaning, limits, inputs and source.
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Note } from '../src/figures/frame/note.ts'

const room = fileURLToPath(new URL('../src/mechanics/', import.meta.url))
const DOCUMENTED = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport function\*? (\w+)/g

/** Name of each documented function of the mechanics room → its note. */
export function readNotes(): Record<string, Note> {
  const files = readdirSync(room, { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.endsWith('.ts') && !file.endsWith('.test.ts'),
  )
  const notes = files.flatMap((file) =>
    [...readFileSync(join(room, file), 'utf8').matchAll(DOCUMENTED)].map(
      ([, comment, name]) => [name!, noteIn(comment!)] as const,
    ),
  )
  return Object.fromEntries(notes.sort(([a], [b]) => (a < b ? -1 : 1)))
}

function noteIn(comment: string): Note {
  const text = comment
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/, ''))
    .join('\n')
  const [says = '', ...tags] = text.split(/\n@(?=\w)|^@(?=\w)/)
  const told = (tag: string) =>
    tags.filter((each) => each.startsWith(`${tag} `)).map((each) => flat(each.slice(tag.length)))
  return {
    says: flat(says),
    params: Object.fromEntries(told('param').flatMap(paramsIn)),
    returns: told('returns')[0] ?? '',
    source: told('source')[0] ?? '',
  }
}

/** `a, b symbols x, y` tells of two inputs at once. */
function paramsIn(line: string): [name: string, says: string][] {
  const [, list = '', says = ''] = /^((?:\w+, )*\w+)(?: (.*))?$/.exec(line) ?? []
  const names = list.split(', ')
  const [, symbols, rest = ''] = /^symbols ([^;]*)(.*)$/.exec(says) ?? []
  const each = symbols?.split(/, | and /) ?? []
  return names.map((name, at) => [name, each.length === names.length ? `symbol ${each[at]}${rest}` : says])
}

const flat = (text: string): string => text.replace(/\s+/g, ' ').trim()
