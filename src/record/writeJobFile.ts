// A job as a file again, for people and for programs that read files.
import { stringify } from 'yaml'
import type { Job, Reading, StockShim } from '../job/model/job.ts'
import type { Dimension } from '../quantity/dimension.ts'
import { findUnit } from '../quantity/findUnit.ts'
import { readKnown, type Standing } from '../quantity/known.ts'
import type { Known } from '../unit/model/unit.ts'
import { jobOf } from './jobOf.ts'
import type { JobState } from './state.ts'

export interface JobWritten {
  readonly text: string
  /** What a job file has no place for, in sentences: it stays in the record and goes with an archive. */
  readonly left: readonly string[]
}

/**
 * The job file of a state. Read again it is the same job: the same sizes to the last bit, the same steps done.
 *
 * @example writeJobFile(fold('J41', entries).state).left   // ['3 photos.']
 */
export function writeJobFile(state: JobState): JobWritten {
  const job = jobOf(state)
  const left = leftOut(state)
  const write = writerFor(job, left)
  const { plant } = job
  const lines = [
    'matchmark: job/1',
    `job: ${plain(job.id)}`,
    ...(job.invented ? ['invented: true'] : []),
    `unit: ${plain(job.unit)}`,
    ...field('serial', job.serial),
    ...field('variant', job.variant),
    ...field('owner', job.owner),
    ...field('note', job.note),
    `sizes: ${plain({ in: job.lengthUnit, ...(job.sizesStanding !== 'seen' && { standing: job.sizesStanding }) })}`,
    ...block(
      'as found:',
      [...job.asFound.values()].map(({ part, at: _, ...said }) => `  ${plain(part)}: ${plain(said)}`),
    ),
    ...block(
      'readings:',
      job.readings.map((reading) => `  - ${plain(write.reading(reading))}`),
    ),
    ...block(
      'shims in stock:',
      job.shims.map((shim) => `  - ${plain(write.shim(shim))}`),
    ),
    'plant:',
    ...(plant.crew
      ? [
          '  people:',
          ...plant.crew.map(({ name, skills }) => `    - ${plain({ name, ...(skills.length > 0 && { skills }) })}`),
        ]
      : plant.people === undefined
        ? []
        : [`  people: ${plant.people}`]),
    ...(plant.room ? [`  room: ${plain(write.value(plant.room, 'temperature', '°C', 'told', 'the room'))}`] : []),
    ...(plant.press
      ? [`  press: ${plain(write.named('rating', plant.press.rating, 'force', 'kN', 'the press'))}`]
      : []),
    ...(plant.oven ? [`  oven: ${plain(write.named('up to', plant.oven.upTo, 'temperature', '°C', 'the oven'))}`] : []),
    ...block(
      '  instruments:',
      [...plant.instruments].map(([id, { uncertainty, due }]) => {
        const about = write.named('uncertainty', uncertainty, 'length', job.lengthUnit, id)
        return `    ${plain(id)}: ${plain({ ...about, ...(due !== undefined && { due }) })}`
      }),
    ),
    ...block(
      '  wrenches:',
      plant.wrenches.map(
        ({ name, range }) => `    - ${plain({ name, ...write.named('range', range, 'torque', 'N·m', name) })}`,
      ),
    ),
    ...(job.done.length > 0 ? [`done: ${plain(job.done.map(({ step }) => step))}`] : []),
  ]
  return { text: `${lines.join('\n')}\n`, left }
}

/** One value of YAML on one line, quoted where it must be. */
const plain = (value: unknown): string =>
  stringify(value, {
    collectionStyle: 'flow',
    lineWidth: 0,
    defaultStringType: 'PLAIN',
    defaultKeyType: 'PLAIN',
  }).trimEnd()

/** A text of several lines must stand on one here. */
const field = (key: string, text: string | undefined): string[] =>
  text === undefined ? [] : [`${key}: ${text.includes('\n') ? JSON.stringify(text) : plain(text)}`]

const block = (head: string, lines: readonly string[]): readonly string[] => (lines.length > 0 ? [head, ...lines] : [])

function writerFor(job: Job, left: string[]) {
  const { lengthUnit, sizesStanding } = job
  const value = (known: Known<number>, as: Dimension, unit: string, standing: Standing, what: string): string => {
    if (known.standing !== standing && known.standing !== 'supposed')
      left.push(`That ${what} stands as '${known.standing}': in a job file it stands as '${standing}'.`)
    if (known.source !== undefined) left.push(`The source of ${what}: ${known.source}.`)
    const mark = known.standing === 'supposed' && standing !== 'supposed' ? '≈ ' : ''
    const ends = known.low === known.high ? [known.low] : [known.low, known.high]
    return `${mark}${ends.map((end) => exactText(end, as, unit)).join('..')} ${unit}`
  }
  const named = (key: string, known: Known<number> | undefined, as: Dimension, unit: string, what: string) =>
    known ? { [key]: value(known, as, unit, 'told', what) } : {}
  const size = (known: Known<number>, standing: Standing, what: string) =>
    value(known, 'length', lengthUnit, standing, what)
  return {
    value,
    named,
    reading({ part, feature, reads, temperature, where, by, date, ...rest }: Reading) {
      const what = `${feature} of ${part}`
      return {
        part,
        feature,
        reads: reads ? size(reads, sizesStanding, what) : '?',
        ...(rest.with !== undefined && { with: rest.with }),
        ...(temperature && { at: value(temperature, 'temperature', '°C', 'seen', `the temperature at ${what}`) }),
        ...(where !== undefined && { where }),
        ...(by !== undefined && { by }),
        ...(date !== undefined && { date }),
      }
    },
    shim: ({ id, reads, nominal, for: use }: StockShim) => ({
      id,
      ...(reads && { reads: size(reads, sizesStanding, `shim ${id}`) }),
      ...(nominal && { nominal: size(nominal, 'told', `the label of shim ${id}`) }),
      ...(use !== undefined && { for: use }),
    }),
  }
}

/** The fewest digits that are read back as the same double. */
function exactText(value: number, as: Dimension, unit: string): string {
  const row = findUnit(unit, as)
  const shift = as === 'temperature' ? 273.15 : 0
  const scaled = shift ? value - shift : (value * Number(row.factor.d)) / Number(row.factor.n)
  for (let digits = 1; digits <= 21; digits += 1) {
    const text = decimal(Number(scaled.toPrecision(Math.min(digits, 17))), scaled, digits)
    const read = readKnown(`${text} ${unit}`, { as, unit, standing: 'told' })
    if (read !== 'unknown' && read.low === value) return text
  }
  return decimal(scaled, scaled, 21)
}

/** Without an exponent, which nobody writes on a job sheet. */
function decimal(rounded: number, exact: number, digits: number): string {
  const text = digits <= 17 ? String(rounded) : exact.toFixed(Math.min(digits, 20))
  return text.includes('e') ? rounded.toFixed(20).replace(/0+$/, '').replace(/\.$/, '') : text
}

/** What the file has no place for. */
function leftOut(state: JobState): string[] {
  const count = (number: number, one: string, many: string) =>
    number === 0 ? [] : [`${number} ${number === 1 ? one : many}.`]
  const over = state.readings.filter(({ rules }) => rules === 'another')
  return [
    ...over.map(({ part, feature }) => `A reading of ${feature} of ${part} that another one rules over.`),
    ...count(state.findings.length, 'finding', 'findings'),
    ...count(state.photos.length, 'photo', 'photos'),
    ...count(state.notes.length, 'note', 'notes'),
    ...count(state.checks.length, 'check', 'checks'),
    ...count(state.tries.length, 'setting try', 'setting tries'),
    ...count(state.sequences.length, 'sequence', 'sequences'),
    ...count([...state.parts.values()].flatMap((part) => part.in).length, 'part that came in', 'parts that came in'),
    ...count(
      [...state.steps.values()].filter(({ done }) => done.some(({ tightened }) => tightened)).length,
      'step with its bolts counted',
      'steps with their bolts counted',
    ),
    ...count(
      [...state.steps.values()].filter(({ stands }) => stands !== 'done').length,
      'step begun or undone',
      'steps begun or undone',
    ),
    ...count(
      state.happened.filter(({ withdrawnBy }) => withdrawnBy !== undefined).length,
      'withdrawn entry',
      'withdrawn entries',
    ),
  ]
}
