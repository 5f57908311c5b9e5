// What the desk wants of a job: what to get, what to set, what was read, what proves it. Plain data, printed for the person.
import { kitOf } from '../../job/kit.ts'
import type { KitLine } from '../../job/model/kit.ts'
import type { Judgement, ReadingVerdict, Unmeasured, Verdicts } from '../../job/model/verdict.ts'
import { renewalsOf, type WorkUp } from '../../job/workUp.ts'
import { figureText, limitText } from '../../paper/figureText.ts'
import type { System } from '../../quantity/printQuantity.ts'
import type { Limit } from '../../unit/model/unit.ts'
import type { CheckSheet, SettingSheet } from './workedJob.ts'

export interface ReadingRow {
  readonly part: string
  readonly feature: string
  readonly what?: string
  /** Missing: it was tried and could not be read. */
  readonly reads?: string
  readonly limits: string
  readonly is: Judgement
  readonly because?: string
  readonly how: string
}

export interface DeskSheet {
  readonly kit: readonly KitLine[]
  /** With the figures that judge only the strength of the parts. */
  readonly settings: readonly SettingSheet[]
  readonly readings: readonly ReadingRow[]
  /** Sizes with limits that nobody measured in this job. */
  readonly unmeasured: readonly Pick<ReadingRow, 'part' | 'feature' | 'what' | 'limits'>[]
  readonly checks: readonly (CheckSheet & { readonly does: string })[]
}

export const kitLines = (work: WorkUp, system: System): readonly KitLine[] =>
  kitOf(work.unit, work.job, renewalsOf(work), system)

type Limits = Pick<ReadingVerdict, 'limitNew' | 'limitWorn'>

function limitsText({ limitNew, limitWorn }: Limits, system: System): string {
  const one = (word: string, limit: Limit | undefined): string[] => {
    const { low, high } = limit ?? {}
    const bounds = { ...(low !== undefined && { low }), ...(high !== undefined && { high }) }
    const text = limit && limitText(bounds, 'length', system)
    return text === undefined ? [] : [`${word} ${text}${limit?.source === undefined ? '' : ` (${limit.source})`}`]
  }
  return [...one('new', limitNew), ...one('worn', limitWorn)].join('; ')
}

export const readingRows = ({ readings }: Verdicts, system: System): readonly ReadingRow[] =>
  readings.map(({ part, feature, what, reading, is, because, ...limits }) => ({
    part,
    feature,
    ...(what !== undefined && { what }),
    ...(reading.reads && { reads: figureText(reading.reads, 'length', system) }),
    limits: limitsText(limits, system),
    is,
    ...(because !== undefined && { because }),
    how: [reading.where, reading.with, reading.by, reading.date].filter((text) => text !== undefined).join(', '),
  }))

export const unmeasuredRows = ({ unmeasured }: Verdicts, system: System): DeskSheet['unmeasured'] =>
  unmeasured.map((one: Unmeasured) => ({
    part: one.part,
    feature: one.feature,
    ...(one.what !== undefined && { what: one.what }),
    limits: limitsText(one, system),
  }))
