// The tries of a setting as a sheet shows them: what was in, what was read, what came off between, what to try next.
import { figureText } from '../../paper/figureText.ts'
import { Problem } from '../../problem/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { readQuantity } from '../../quantity/readQuantity.ts'
import type { Saying } from '../../record/entriesOfJob.ts'
import { type Fitted, type SettingTry, tryEntry } from '../../record/settingTries.ts'
import type { JobState, Said } from '../../record/state.ts'
import type { JobOnSheet } from './jobOnSheet.ts'
import { BARE, type Judged, judgeSize } from './liveLimit.ts'
import type { TrySheet } from './trySheets.ts'
import type { StepSheetData } from './workedJob.ts'

/** What is said to be in, while it is being said: kept on the device until the try is read. */
export interface FittedDraft {
  readonly by: 'shims' | 'nut'
  readonly ids: readonly string[]
  /** As typed: the pack as a whole, the turn, the lead. */
  readonly pack: string
  readonly turn: string
  readonly lead: string
}

export const NO_DRAFT: FittedDraft = { by: 'shims', ids: [], pack: '', turn: '', lead: '' }

export type FittedSaid =
  | { readonly is: 'nothing' }
  | { readonly is: 'unclear'; readonly says: string; readonly next: string }
  | { readonly is: 'said'; readonly fitted: Fitted; readonly text: string }

/** What a draft says. Shims chosen by name add up; a pack measured as a whole counts before their sum. */
export function fittedOf(draft: FittedDraft, { shims }: Pick<TrySheet, 'shims'>, system: System): FittedSaid {
  const typed = (text: string, as: 'length' | 'angle') =>
    text.trim() === '' ? undefined : readQuantity(text, { as, unit: BARE[as][system] })
  const printed = (value: number, as: 'length' | 'angle') => figureText({ low: value, high: value }, as, system)
  try {
    if (draft.by === 'nut') {
      const [turned, lead] = [typed(draft.turn, 'angle'), typed(draft.lead, 'length')]
      if (turned === undefined) return { is: 'nothing' }
      const way = turned < 0 ? 'nut tightened by' : 'nut slackened by'
      const tried = turned === 0 ? 'nut left as it was' : `${way} ${printed(Math.abs(turned), 'angle')}`
      return {
        is: 'said',
        fitted: { turned_rad: turned, ...(lead !== undefined && { lead_m: lead }), tried },
        text: tried,
      }
    }
    const chosen = shims.filter(({ id }) => draft.ids.includes(id))
    const whole = typed(draft.pack, 'length')
    if (chosen.length === 0 && whole === undefined) return { is: 'nothing' }
    const pack_m = whole ?? chosen.reduce((sum, { thickness_m }) => sum + thickness_m, 0)
    const names = chosen.map(({ id }) => id)
    const tried = names.length > 0 ? names.join(' + ') : 'a pack'
    return {
      is: 'said',
      fitted: { ...(names.length > 0 && { shims: names }), pack_m, tried },
      text: `${tried} = ${printed(pack_m, 'length')}`,
    }
  } catch (error) {
    if (error instanceof Problem) return { is: 'unclear', says: error.message, next: error.next }
    throw error
  }
}

export interface TryRow {
  readonly is: 'try'
  readonly made: SettingTry
  readonly fitted: string
  readonly read: string | undefined
  readonly judged: Judged | undefined
}

/** Between two tries it came off again. */
export interface OffRow extends Said {
  readonly is: 'off'
  readonly steps: readonly string[]
  /** All that was entered with it. */
  readonly entries: readonly string[]
}

export interface TriesView {
  readonly rows: readonly (TryRow | OffRow)[]
  /** Of the next one. */
  readonly number: number
  /** Those in force. */
  readonly standing: readonly SettingTry[]
  /** What is in since the last try, where nothing came off since; what a second reading is of. */
  readonly stillIn: SettingTry | undefined
  /** The results of the check that belong to a try. */
  readonly resultEntries: ReadonlySet<string>
}

interface Given {
  readonly job: JobOnSheet
  readonly sheet: TrySheet
  readonly system: System
  readonly instruments: readonly { readonly name: string; readonly uncertainty_m?: number }[]
}

export function triesView({ job, sheet, system, instruments }: Given): TriesView {
  const uncertaintyOf = (name: string | undefined) => instruments.find((one) => one.name === name)?.uncertainty_m ?? 0
  const made = job.tries.filter(({ of }) => of === sheet.of)
  const standing = made.filter(({ takenBack }) => !takenBack)
  const rows = made.map(
    (one): TryRow => ({
      is: 'try',
      made: one,
      fitted: fittedText(one, system),
      read: one.read && figureText(one.read, figureDimension(one.read.of), system),
      judged:
        one.read?.of === 'length' && sheet.isLength
          ? judgeSize(one.read.high, { as: 'length', limit: sheet.limit, system, uncertainty: uncertaintyOf(one.with) })
          : undefined,
    }),
  )
  const offs = offRows(job.state, sheet)
  const order = new Map(job.state.happened.map(({ entry }, index) => [entry, index]))
  const placeOf = (row: TryRow | OffRow) => order.get(row.is === 'try' ? row.made.entry : row.entry) ?? 0
  const all = [...rows, ...offs].sort((one, other) => placeOf(one) - placeOf(other))
  const lastStanding = all.findLast((row) => row.is === 'off' || !row.made.takenBack)
  return {
    rows: all,
    number: standing.length + 1,
    standing,
    stillIn: lastStanding?.is === 'try' ? lastStanding.made : undefined,
    resultEntries: new Set(made.flatMap(({ resultEntry }) => (resultEntry === undefined ? [] : [resultEntry]))),
  }
}

const figureDimension = (of: NonNullable<SettingTry['read']>['of']) =>
  of === 'volume' || of === 'count' ? 'number' : of

/** `S1 + S2 = 0.626 mm`; what nobody said is said so. */
function fittedText({ tried, pack }: SettingTry, system: System): string {
  return pack ? `${tried} = ${figureText(pack, 'length', system)}` : tried
}

/** Every time that the setting came off again, with what was said to be taken apart in one go with it. */
function offRows({ steps, happened }: JobState, { first }: TrySheet): readonly OffRow[] {
  if (first === undefined) return []
  const undone = new Map(
    [...steps.values()].flatMap(({ step, signatures }) =>
      signatures.filter(({ as }) => as === 'undone').map(({ entry }) => [entry, step] as const),
    ),
  )
  return (steps.get(first)?.signatures ?? []).flatMap(({ entry, person, device, at, as }): readonly OffRow[] => {
    if (as !== 'undone') return []
    const own = happened.filter((line) => line.device === device)
    const here = own.findIndex((line) => line.entry === entry)
    const before = own.slice(0, here + 1).toReversed()
    const stop = before.findIndex((line) => !undone.has(line.entry))
    const together = (stop < 0 ? before : before.slice(0, stop)).toReversed()
    const entries = together.map((line) => line.entry)
    return [{ is: 'off', entry, person, device, at, entries, steps: entries.map((one) => undone.get(one)!) }]
  })
}

/**
 * The last result of the check of a step. One that was read before the step was undone, or before the setting came off for another try, says
 * nothing of what stands now.
 */
export function resultNow(
  { steps, happened, checks }: JobState,
  { step, check, tries }: Pick<StepSheetData, 'step' | 'check' | 'tries'>,
): 'good' | 'bad' | 'not known' | undefined {
  const last = check && checks.findLast((one) => one.check === check.id)
  if (!last) return undefined
  const undone = [step, ...(tries?.first === undefined ? [] : [tries.first])].flatMap((id) =>
    (steps.get(id)?.signatures ?? []).filter(({ as }) => as === 'undone').map(({ entry }) => entry),
  )
  if (undone.length === 0) return last.result
  const order = new Map(happened.map(({ entry }, index) => [entry, index]))
  const isOld = undone.some((entry) => order.get(entry)! > order.get(last.entry)!)
  return isOld ? undefined : last.result
}

/**
 * The try that goes with a reading of the check. A pack of shims is tried at every reading; what may be set by other means only where
 * somebody said what was in, or did so before.
 */
export function tryOf(
  said: Saying & { readonly kind: 'check-result' },
  { sheet, view, fitted }: { readonly sheet: TrySheet; readonly view: TriesView; readonly fitted: FittedSaid },
): readonly Saying[] {
  const { check, values, result, with: instrument } = said.body
  if (check !== sheet.check) return []
  if (fitted.is !== 'said' && !sheet.isShims && view.number === 1) return []
  return [
    tryEntry({
      of: sheet.of,
      check,
      read: values?.[0],
      result,
      instrument,
      fitted: fitted.is === 'said' ? fitted.fitted : asBefore(view.stillIn),
    }),
  ]
}

const NOT_TOLD = 'not told what is in'

/** Nothing came off since: the same is in. */
function asBefore(last: SettingTry | undefined): Fitted {
  if (!last) return { tried: NOT_TOLD }
  return {
    tried: last.tried,
    ...(last.shims.length > 0 && { shims: last.shims }),
    ...(last.pack && { pack_m: last.pack.low }),
    ...(last.turned && { turned_rad: 0 }),
  }
}

/** What has to be entered when it comes off again: each step undone, in the order in which it comes off. */
export const offSayings = (steps: readonly string[]): readonly Saying[] =>
  steps.map((step) => ({ kind: 'step-signed', body: { step, as: 'undone' } }))
