// The names that a file gives, and references to them.

import { clip } from '../../quantity/clip.ts'
import type { At } from '../model/unit.ts'
import type { Item } from './item.ts'
import { nearest } from './nearest.ts'
import type { Page, Path } from './page.ts'

export type Kind = 'part' | 'line' | 'opening' | 'connection' | 'check' | 'fill' | 'step' | 'variant'

/** Every name of a file by what it names. They come from the file as written, so that a faulty entry is still known. */
export type Names = Readonly<Record<Kind, ReadonlyMap<string, Path>>>

export function gatherNames(page: Page): Names {
  const section = (key: string) => keysAt(page, [key])
  const parts = new Map(section('parts'))
  const housing = page.text(['housing'])
  if (housing && !parts.has(housing)) parts.set(housing, ['housing'])
  const steps = new Map(section('steps'))
  for (const path of section('parts').values()) {
    for (const [id, place] of keysAt(page, [...path, 'then'])) steps.set(id, place)
  }
  return {
    part: parts,
    line: section('lines'),
    opening: section('openings'),
    connection: section('connections'),
    check: section('checks'),
    fill: section('fills'),
    step: steps,
    variant: section('variants'),
  }
}

const keysAt = (page: Page, path: Path): ReadonlyMap<string, Path> => {
  const node = page.node(path)
  return new Map(node?.kind === 'map' ? [...node.entries.keys()].map((key) => [key, [...path, key]]) : [])
}

type WrittenNames = string | number | readonly (string | number)[] | null | undefined

/** A list of names, or one name, as written; nothing is looked up. */
export const listed = (item: Item<WrittenNames>): string[] => item.list().flatMap((one) => one.text() || [])

/** The same with the place of each. */
export const listedPlaces = (item: Item<WrittenNames>): { name: string; at: At }[] =>
  item.list().flatMap((one) => {
    const name = one.text()
    return name ? [{ name, at: one.valueAt }] : []
  })

/** The thing that a name stands for; a name that stands for nothing is told. */
export function one(item: Item<unknown>, names: Names, kind: Kind, name = item.text()): string | undefined {
  if (!name) return undefined
  if (names[kind].has(name)) return name
  tellUnknown(item, name, kind, () => names[kind].keys())
  return undefined
}

export const many = (item: Item<WrittenNames>, names: Names, kind: Kind): string[] => [
  ...new Set(item.list().flatMap((each) => one(each, names, kind) ?? [])),
]

/**
 * Steps are named by parts, checks, fills, added steps and connections. A name that holds one of these (`warm bearing A`) may be a step that a
 * connection makes; it is judged when all steps are known. Other unknown names are told.
 */
export function stepName(
  item: Item<string | number | null | undefined>,
  names: Names,
  name = item.text(),
): string | undefined {
  if (!name) return undefined
  if (isStep(name, names) || phrases(name).some((phrase) => isStep(phrase, names))) return name
  tellUnknown(item, name, 'step', function* () {
    for (const kind of STEPS) yield* names[kind].keys()
  })
  return undefined
}

const STEPS: readonly Kind[] = ['part', 'check', 'fill', 'step', 'connection']
const isStep = (name: string, names: Names): boolean => STEPS.some((kind) => names[kind].has(name))

/** Every run of words inside a name of a few words. */
function phrases(name: string): string[] {
  const words = name.split(' ').slice(0, 12)
  return words.flatMap((_, from) =>
    words.slice(from).map((_word, length) => words.slice(from, from + length + 1).join(' ')),
  )
}

export const stepNames = (item: Item<WrittenNames>, names: Names): string[] => [
  ...new Set(item.list().flatMap((each) => stepName(each, names) ?? [])),
]

/** Beyond so many faults nobody reads hints, and looking for them takes its time. */
const MOST_HINTS = 100

function tellUnknown(item: Item<unknown>, name: string, what: string, all: () => Iterable<string>): void {
  const names = item.page.faults.length < MOST_HINTS ? [...all()] : []
  const few = names.length > 12 ? `${names.slice(0, 12).join(', ')}, …` : names.join(', ')
  item.fault('NAME_NOT_KNOWN', { name: clip(name), what, nearest: nearest(name, names) ?? '', known: few })
}

/** Steps are called by name: a part, a check, a fill, an added step and one that follows cannot share one. */
export function tellSharedNames(page: Page, names: Names): void {
  const seen = new Map<string, { what: string; path: Path }>()
  const separate = [...names.connection].filter(([id]) => page.text(['connections', id, 'own step']) === 'true')
  const given: [what: string, ids: Iterable<readonly [string, Path]>][] = [
    ['part', names.part],
    ['check', names.check],
    ['fill', names.fill],
    ['step', names.step],
    ['connection', separate],
  ]
  for (const [what, ids] of given) {
    for (const [name, path] of ids) {
      const before = seen.get(name)
      if (!before) seen.set(name, { what, path })
      else {
        const first = page.namePlace(before.path).line
        page.fault('NAME_TWICE', { name, what, other: before.what, first }, page.namePlace(path))
      }
    }
  }
}
