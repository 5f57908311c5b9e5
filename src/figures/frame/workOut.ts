// From what was typed to an answer, half known or not.
import { Problem } from '../../problem/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { type Ask, type Spanned, spaced } from './ask.ts'
import type { Figure } from './figure.ts'
import { inSystem, problemInSystem } from './inSystem.ts'
import { noteOf } from './note.ts'
import { printMeasure } from './printMeasure.ts'
import type { Lines, Measure, Said, Words } from './say.ts'

export interface Line {
  readonly name: string
  /** As people say it. */
  readonly says: string
  /** In SI; null for words. */
  readonly low: number | null
  readonly high: number | null
  /** null for words. */
  readonly dimension: Measure['as'] | null
}

export interface FigureResult {
  readonly given: readonly { readonly key: string; readonly text: string }[]
  /** What is needed before anything can be said; then there are no results. */
  readonly missing: readonly { readonly key: string; readonly wants: string }[]
  readonly results: readonly Line[]
  readonly margins: readonly Line[]
  /** What was not told, and what was taken for it. */
  readonly taken: readonly string[]
  readonly cautions: readonly string[]
  readonly sources: readonly string[]
  readonly system: System
  /** Something speaks against the work. */
  readonly isBad: boolean
}

/** The word that is typed for an input: `jointDiameter` → `joint-diameter`. */
export const keyOf = (name: string): string => spaced(name).replaceAll(' ', '-')

/**
 * Works a figure out from what was typed.
 *
 * @param typed key as typed by `keyOf` → text; `?` is the same as not told
 * @param system of the answer; left out: the one most of the units were written in
 * @throws FIGURE_INPUT where a text cannot be read; FIGURE_TURNED; FIGURE_ENDLESS; the problems of the calculation itself
 */
export function workOut(
  figure: Figure,
  { typed, system }: { readonly typed: ReadonlyMap<string, string>; readonly system?: System | undefined },
): FigureResult {
  const { inputs } = figure
  const given: Record<string, unknown> = {}
  const spans: Record<string, Spanned> = {}
  const systems: string[] = []
  const missing: { key: string; wants: string }[] = []
  const taken: string[] = []
  for (const [name, ask] of Object.entries(inputs)) {
    const text = typed.get(keyOf(name))?.trim()
    if (text === undefined || text === '?' || text === '') {
      if (ask.worst) {
        given[name] = ask.worst.value
        taken.push(`${spaced(name)}: ${ask.worst.says}`)
      } else if (ask.isOptional) taken.push(...leftOut(figure, name))
      else missing.push({ key: keyOf(name), wants: [whatOf(figure, name), ask.wants].filter(Boolean).join(': ') })
      continue
    }
    const read = reading(name, ask, text)
    systems.push(...read.systems)
    if (read.span) spans[name] = read.span
    else given[name] = read.value
  }
  const chosen = system ?? systemOf(systems)
  const base = {
    given: [...typed].map(([key, text]) => ({ key, text })),
    missing,
    system: chosen,
  }
  const sources = [noteOf(figure.of[0]).source]
  if (missing.length > 0) {
    return { ...base, results: [], margins: [], taken: [], cautions: [], sources, isBad: true }
  }
  const places = placesIn(spans)
  const all = refusing({ typed, system: chosen }, () =>
    answersAt(places, (place) => figure.answer({ ...given, ...place })),
  )
  const lines = merged(all.map((each) => each.lines))
  const shown = lines.map(([name, said]) => ({ said, line: lineOf(name, said, chosen) }))
  const isMargin = (said: Measure | Words) => said.kind === 'measure' && said.isMargin === true
  return {
    ...base,
    results: shown.filter(({ said }) => !isMargin(said)).map(({ line }) => line),
    margins: shown.filter(({ said }) => isMargin(said)).map(({ line }) => line),
    taken: [...taken, ...goneThrough(spans, places.length)].map((says) => inSystem(says, chosen)),
    cautions: unique([...(figure.cautions ?? []), ...all.flatMap(({ cautions }) => cautions)]).map((caution) =>
      inSystem(caution, chosen),
    ),
    sources: unique([...sources, ...all.map(({ source }) => source)]),
    isBad: lines.some(([, said]) => said.kind === 'words' && said.isBad),
  }
}

/** The answer at every place; where one is refused the high end speaks, if it is refused as well. */
function answersAt<Place, T>(places: readonly Place[], answer: (place: Place) => T): readonly T[] {
  try {
    return places.map(answer)
  } catch (error) {
    answer(places.at(-1) as Place)
    throw error
  }
}

/** What the calculation says of values that it made or joined itself is said of what was typed. */
const OF_WHAT_WAS_TYPED = { RANGE_TURNED: 'FIGURE_TURNED', NOT_A_NUMBER: 'FIGURE_ENDLESS' } as const

function refusing<T>({ typed, system }: { typed: ReadonlyMap<string, string>; system: System }, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof Problem)) throw error
    const code = OF_WHAT_WAS_TYPED[error.code as keyof typeof OF_WHAT_WAS_TYPED]
    if (code) throw new Problem(code, { given: [...typed].map((pair) => pair.join('=')).join(', ') })
    throw problemInSystem(error, system)
  }
}

/** What an input is, in words. */
export function whatOf({ inputs, of }: Figure, name: string): string {
  return inputs[name]!.what ?? noteOf(of[0]).params[name] ?? ''
}

function reading(name: string, ask: Ask<unknown>, text: string) {
  try {
    return ask.read(text)
  } catch (error) {
    if (!(error instanceof Problem)) throw error
    throw new Problem('FIGURE_INPUT', { key: keyOf(name), says: error.message, next: error.next })
  }
}

/** What the calculation takes for an input that was left out, as its docstring has it. */
function leftOut(figure: Figure, name: string): string[] {
  const says = /left out:? (.*)$/.exec(whatOf(figure, name))?.[1]
  return says ? [`${spaced(name)}: not told, so ${says}`] : []
}

const systemOf = (systems: readonly string[]): System => {
  const count = (system: string) => systems.filter((each) => each === system).length
  return count('inch') > count('metric') ? 'inch' : 'metric'
}

const INSIDE = 7
const MOST_PLACES = 2000

/** Every corner of the ranges and evenly spaced places between, as close as a fixed number of places allows. */
function placesIn(spans: Readonly<Record<string, Spanned>>): Readonly<Record<string, number>>[] {
  const names = Object.keys(spans)
  const steps = Math.max(1, Math.min(INSIDE + 1, Math.floor(MOST_PLACES ** (1 / Math.max(1, names.length))) - 1))
  let places: Record<string, number>[] = [{}]
  for (const name of names) {
    const { low, high, isWhole } = spans[name]!
    const values = Array.from({ length: steps + 1 }, (_, at) => low + ((high - low) * at) / steps)
    const worked = isWhole ? everyWhole(low, high) : values
    places = places.flatMap((place) => worked.map((value) => ({ ...place, [name]: value })))
  }
  return places
}

const MOST_WHOLE = 200
const everyWhole = (low: number, high: number): number[] =>
  Array.from({ length: Math.min(high - low, MOST_WHOLE) + 1 }, (_, at) => (at < MOST_WHOLE ? low + at : high))

function goneThrough(spans: Readonly<Record<string, Spanned>>, places: number): string[] {
  const names = Object.keys(spans).map(spaced)
  if (names.length === 0) return []
  return [`the range of ${names.join(' and ')}: worked at its ends and between, ${places} places in all`]
}

/** One line from the lines of every place: the lowest and the highest, or what all of them say. */
function merged(all: readonly Lines[]): [name: string, said: Measure | Words][] {
  const names = unique(all.flatMap((lines) => Object.keys(lines)))
  return names.flatMap((name): [string, Measure | Words][] => {
    const each = all.map((lines) => lines[name]).filter((said): said is NonNullable<Said> => said !== undefined)
    const [first] = each
    if (!first) return []
    if (first.kind === 'words') {
      const words = unique(each.map((said) => (said as Words).says))
      const isAnswer = words.every((says) => ['yes', 'no', 'not known'].includes(says))
      const says = words.length > 1 && isAnswer ? 'not known' : words.join(' / ')
      return [[name, { ...first, says, isBad: words.length === 1 && first.isBad }]]
    }
    const measures = each as Measure[]
    const [low, high] = [Math.min(...measures.map((said) => said.low)), Math.max(...measures.map((said) => said.high))]
    return [[name, { ...first, low, high }]]
  })
}

function lineOf(name: string, said: Measure | Words, system: System): Line {
  if (said.kind === 'words') return { name, says: inSystem(said.says, system), low: null, high: null, dimension: null }
  return { name, says: printMeasure(said, system), low: said.low, high: said.high, dimension: said.as }
}

const unique = <T>(values: readonly (T | undefined)[]): T[] => [...new Set(values)].filter((each) => each !== undefined)
