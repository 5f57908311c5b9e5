// What a calculation asks for: how each input is written and what it becomes.
import { type ThreadGeometry, threadGeometry } from '../../mechanics/index.ts'
import { MATERIALS } from '../../mechanics/materials.ts'
import { Problem } from '../../problem/problem.ts'
import { clip } from '../../quantity/clip.ts'
import { inch } from '../../quantity/constructors.ts'
import type { Dimension, Dimensions } from '../../quantity/dimension.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { readPlainNumber } from '../../quantity/readPlainNumber.ts'
import { type Range, readRange } from '../../quantity/readQuantity.ts'
import type { Unit } from '../../quantity/units.ts'
import { unitsWritten } from '../../quantity/unitsWritten.ts'

/** A range that the calculation itself does not take: the frame works it at its ends and between. */
export interface Spanned {
  readonly low: number
  readonly high: number
  /** Teeth and bolts come in whole numbers: every one between is worked. */
  readonly isWhole: boolean
}

/** What was read: the value, the span to go through, and the system of its units. */
export interface Read<T> {
  readonly value?: T
  readonly span?: Spanned
  readonly systems: readonly Unit['system'][]
}

export interface Ask<T> {
  /** How it is written, for people: `length, as 30.02 mm`. */
  readonly wants: string
  /** What it is, where the calculation's own docstring says too little. */
  readonly what?: string
  readonly read: (text: string) => Read<T>
  /** It may be left out; the calculation then takes what its docstring says. */
  readonly isOptional?: boolean
  /** Left out it is taken at its worst. */
  readonly worst?: { readonly value: T; readonly says: string }
  /** For the columns of a table: bare numbers take the unit of their neighbours. */
  readonly dimension?: Dimension
}
export type Asks = Readonly<Record<string, Ask<unknown>>>
export type Optional<T> = Ask<T> & { readonly isOptional: true }

type ValueOf<A> = A extends Ask<infer T> ? T : never
type OptionalKeys<A extends Asks> = {
  [K in keyof A]: A[K] extends { readonly isOptional: true } ? K : never
}[keyof A]
/** The inputs that a set of asks gives, as the calculation takes them. */
export type Given<A extends Asks> = { readonly [K in Exclude<keyof A, OptionalKeys<A>>]: ValueOf<A[K]> } & {
  readonly [K in OptionalKeys<A>]?: ValueOf<A[K]>
}

const EXAMPLES: Readonly<Record<Dimension, string>> = {
  length: '30.02 mm or 1-3/16 in',
  area: '84 mm²',
  volume: '2.5 l',
  mass: '42 kg or 90 lb',
  time: '30 min',
  force: '12 kN or 2500 lbf',
  torque: '60 N·m or 45 lbf·ft',
  pressure: '14 MPa or 2000 psi',
  angle: "20° or 12° 30'",
  temperature: '20 °C or 68 °F',
  'temperature difference': '40 °C',
  'speed of rotation': '960 rpm',
  'thermal expansion': '11.5 µm/m·K',
  speed: '1.5 m/s or 300 ft/min',
  power: '15 kW or 20 hp',
  energy: '120 J',
  flow: '12 l/min or 3 US gpm',
  viscosity: '46 mm²/s',
  'dynamic viscosity': '30 mPa·s',
  density: '870 kg/m³',
  stiffness: '500 kN/mm',
}

const measured = (text: string, as: Dimension, unit?: string): Range<number> & { systems: Unit['system'][] } => {
  const { low, high } = readRange(text, { as, ...(unit !== undefined && { unit }) })
  return { low, high, systems: unitsWritten(text, as).map(({ system }) => system) }
}

/** One number with its unit. A range that is given all the same is worked at its ends and between. */
export const exact = <D extends Dimension>(as: D): Ask<Dimensions[D]> => ({
  wants: `${as}, as ${EXAMPLES[as]}`,
  dimension: as,
  read: (text) => {
    const { low, high, systems } = measured(text, as)
    return low === high ? { value: low as Dimensions[D], systems } : { span: { low, high, isWhole: false }, systems }
  },
})

/** A number or a range with its unit, for a calculation that takes ranges itself. */
export const known = <D extends Dimension>(as: D): Ask<Dimensions[D] | Range<Dimensions[D]>> => ({
  wants: `${as} or a range of it, as ${EXAMPLES[as]}`,
  dimension: as,
  read: (text) => {
    const { low, high, systems } = measured(text, as)
    return { value: (low === high ? low : { low, high }) as Dimensions[D], systems }
  },
})

/** Threads per inch as people write them behind the number. */
const PER_INCH = /^(.*\d)\s*(?:t\.?p\.?i\.?|threads? (?:per|to the|an) inch)$/i
const THREAD_PITCH = 'pitch, as 1.5 mm or 12 tpi'

/** The pitch that so many threads per inch have; the finer thread has the lower pitch. */
function measuredPitch(text: string): ReturnType<typeof measured> {
  const [, count] = PER_INCH.exec(text.trim()) ?? []
  if (count === undefined) return measured(text, 'length')
  const { low, high } = readPlainNumber(count)
  if (!(low > 0)) throw refused(text, 'has no thread in an inch', 'Count the threads along one inch, as 12 tpi.')
  return { low: inch(1 / high), high: inch(1 / low), systems: ['inch'] }
}

/** The pitch of a thread: a length, or threads per inch. */
export const pitch: Ask<Metre> = {
  ...exact('length'),
  wants: THREAD_PITCH,
  read: (text) => {
    const { low, high, systems } = measuredPitch(text)
    return low === high ? { value: low as Metre, systems } : { span: { low, high, isWhole: false }, systems }
  },
}

/** The pitch of a thread, or a range of it. */
export const knownPitch: Ask<Metre | Range<Metre>> = {
  ...known('length'),
  wants: THREAD_PITCH,
  read: (text) => {
    const { low, high, systems } = measuredPitch(text)
    return { value: (low === high ? low : { low, high }) as Metre, systems }
  },
}

/** Two limits, written as a range. */
export const limits = <D extends Dimension>(as: D): Ask<Range<Dimensions[D]>> => ({
  wants: `${as}, low to high, as 0.05..0.10 ${as === 'length' ? 'mm' : '…'}`,
  dimension: as,
  read: (text) => {
    const { low, high, systems } = measured(text, as)
    return { value: { low, high } as Range<Dimensions[D]>, systems }
  },
})

/** A plain number, a share or a taper. */
export const number: Ask<number> = {
  wants: 'number, as 1.5, 90 % or 1:12',
  read: (text) => {
    const { low, high } = readPlainNumber(text)
    return low === high ? { value: low, systems: [] } : { span: { low, high, isWhole: false }, systems: [] }
  },
}

export const knownNumber: Ask<number | Range<number>> = {
  wants: 'number or range, as 0.12..0.16 or 1:12',
  read: (text) => {
    const { low, high } = readPlainNumber(text)
    return { value: low === high ? low : { low, high }, systems: [] }
  },
}

/** Teeth, bolts, layers. */
export const whole: Ask<number> = {
  wants: 'whole number, as 20',
  read: (text) => {
    const { low, high } = readPlainNumber(text)
    if (!Number.isInteger(low) || !Number.isInteger(high)) throw refused(text, 'is no whole number', 'Count again.')
    return low === high ? { value: low, systems: [] } : { span: { low, high, isWhole: true }, systems: [] }
  },
}

export const text: Ask<string> = {
  wants: 'words',
  read: (written) => ({ value: written.trim(), systems: [] }),
}

const same = (written: string): string =>
  written
    .toLowerCase()
    .replace(/[\s,_-]+/g, ' ')
    .trim()

/** One of the words. The keys are what people write, the values what the calculation takes. */
export function choice<const Word extends string>(...words: readonly Word[]): Ask<Word> {
  return {
    wants: words.join(' | '),
    read: (written) => {
      const word = words.find((each) => same(each) === same(written))
      if (word === undefined)
        throw refused(written, 'is not one of the words held here', `Write one of: ${words.join(' | ')}.`)
      return { value: word, systems: [] }
    },
  }
}

/** One of the words, standing for something else than a text. */
export function choiceOf<const Meaning>(words: Readonly<Record<string, Meaning>>): Ask<Meaning> {
  const ask = choice(...Object.keys(words))
  return { wants: ask.wants, read: (written) => ({ value: words[ask.read(written).value!]!, systems: [] }) }
}

export const yesNo: Ask<boolean> = choiceOf({ yes: true, no: false })

const MATERIAL = choice(...MATERIALS.map(({ name }) => name))
/** A material by its name, for an input that may be left out: the calculation says what it then takes. */
export const ownMaterial: Ask<string> = { ...MATERIAL, wants: `material: ${MATERIAL.wants}` }
/** A material by its name; left out it is the worst of all. */
export const material: Ask<string> = {
  ...ownMaterial,
  worst: { value: 'unknown', says: `not told; taken at the worst of all materials held here` },
}

/** A screw thread by its designation. */
export const thread: Ask<ThreadGeometry> = {
  wants: 'thread, as M10×1.5, 3/8-16 UNC, 1/2 BSW, 2 BA, G 1/2',
  read: (written) => ({
    value: threadGeometry(written),
    systems: [/^\s*M/i.test(written) ? 'metric' : 'inch'],
  }),
}

export const optional = <T>(ask: Ask<T>): Optional<T> => ({ ...ask, isOptional: true })

/** The same ask with its own words of what it is. */
export const told = <A extends Ask<never> | Ask<unknown>>(ask: A, what: string): A => ({ ...ask, what })

/** Left out it is taken at this, and the answer says so. */
export const atWorst = <T>(ask: Ask<T>, value: NoInfer<T>, says: string): Ask<T> => ({ ...ask, worst: { value, says } })

/** Several of the same with commas between (semicolons where the numbers have decimal commas). The last unit counts for all. */
export function list<T>(ask: Ask<T>): Ask<readonly T[]> {
  return {
    wants: `list with commas: ${ask.wants}`,
    read: (written) => {
      const items = parted(written, written.includes(';') ? ';' : ',')
      const reads = items.map((item) => ask.read(withUnit(item, items, ask.dimension)))
      return { value: reads.map(single), systems: reads.flatMap(({ systems }) => systems) }
    },
  }
}

/** A small table: rows with semicolons between, columns with commas. A column that may be left out is `?`, empty, or cut off at the end. */
export function rows<A extends Asks>(columns: A): Ask<readonly Given<A>[]> {
  const names = Object.keys(columns)
  return {
    wants: `rows with semicolons, each: ${names.map((name) => (columns[name]!.isOptional ? `[${spaced(name)}]` : spaced(name))).join(', ')} (${names.map((name) => `${spaced(name)}: ${columns[name]!.what ?? columns[name]!.wants}`).join('; ')})`,
    read: (written) => {
      const table = parted(written, ';').map((row) => parted(row, ','))
      const systems: Unit['system'][] = []
      const value = table.map((cells, at) => {
        if (cells.length > names.length) {
          throw refused(cells.join(', '), `has ${cells.length} columns`, `A row has: ${names.map(spaced).join(', ')}.`)
        }
        const row: Record<string, unknown> = {}
        names.forEach((name, column) => {
          const ask = columns[name]!
          const cell = cells[column] ?? ''
          if (cell === '' || cell === '?') {
            if (ask.isOptional) return
            if (ask.worst) {
              row[name] = ask.worst.value
              return
            }
            throw refused(cells.join(', '), `has no ${spaced(name)} in row ${at + 1}`, `Wanted is ${ask.wants}.`)
          }
          const beside = [...table.flat(), ...cells]
          const read = ask.read(withUnit(cell, beside, ask.dimension))
          systems.push(...read.systems)
          row[name] = single(read)
        })
        return row as Given<A>
      })
      return { value, systems }
    },
  }
}

const parted = (written: string, by: string): string[] => written.split(by).map((part) => part.trim())

/** `jointDiameter` → `joint diameter`. */
export const spaced = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)

const refused = (written: string, why: string, next: string) =>
  new Problem('FIGURE_INPUT', { key: `'${clip(written)}'`, says: `this ${why}.`, next })

/** A list holds numbers, not ranges that somebody would have to go through. */
function single<T>({ value, span }: Read<T>): T {
  if (span)
    throw refused(
      `${span.low}..${span.high}`,
      'range stands in a list that takes single numbers',
      'Give one number for each.',
    )
  return value as T
}

/** A bare number with the last unit that is written beside it. */
function withUnit(item: string, beside: readonly string[], as: Dimension | undefined): string {
  if (!as || unitOf(item, as) !== undefined) return item
  const unit = beside.map((each) => unitOf(each, as)).findLast((each) => each !== undefined)
  return unit === undefined || !/\d/.test(item) ? item : `${item} ${unit}`
}

function unitOf(item: string, as: Dimension): string | undefined {
  try {
    return unitsWritten(item, as).at(-1)?.symbol
  } catch {
    return undefined
  }
}
