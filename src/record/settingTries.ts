// The tries of the settings of a job, in their order, those that were taken back too; and how a try is written down.
import type { At, Body, Entry } from '../journal/entry.ts'
import type { Saying } from './entriesOfJob.ts'
import type { JobState, Said } from './state.ts'

type Value = NonNullable<Body<'setting-try'>['values']>[number]

/** What was in, as the person said it. */
export interface Fitted {
  /** Stock shims by their id. */
  readonly shims?: readonly string[]
  /** Of the pack, m, measured as a whole or added up. */
  readonly pack_m?: number
  /** Of the nut since the try before, rad; slackened above zero. */
  readonly turned_rad?: number
  /** Of the nut's thread, m. */
  readonly lead_m?: number
  /** The same in words, for whoever reads the record. */
  readonly tried: string
}

export interface SettingTry extends Said {
  /** 1, 2, 3 … of its setting; a try that was taken back has the number of the one that came in its place. */
  readonly number: number
  /** What is set. */
  readonly of: string
  readonly check?: string
  readonly with?: string
  readonly tried: string
  readonly shims: readonly string[]
  readonly result: Body<'setting-try'>['result']
  readonly says?: string
  /** What was read; missing where it could not be. */
  readonly read?: Value
  readonly pack?: Value
  /** Since the try before, rad. */
  readonly turned?: Value
  readonly lead?: Value
  /** The result of the check that was entered with it: what takes back one takes back both. */
  readonly resultEntry?: string
  readonly takenBack?: { readonly person: string; readonly at: At }
}

const PACK = 'pack'
const TURNED = 'nut turned'
const LEAD = 'lead of the nut'

/** A try as an entry. The first value is what was read. */
export function tryEntry(said: {
  readonly of: string
  readonly check: string
  readonly read: Value | undefined
  readonly result: Body<'setting-try'>['result']
  readonly instrument: string | undefined
  readonly fitted: Fitted
}): Saying & { readonly kind: 'setting-try' } {
  const { of, check, read, result, instrument, fitted } = said
  const { shims, pack_m, turned_rad, lead_m, tried } = fitted
  const value = (what: string, as: Value['of'], size: number | undefined, standing: Value['standing']): Value[] =>
    size === undefined ? [] : [{ what, of: as, low: size, high: size, standing }]
  return {
    kind: 'setting-try',
    body: {
      connection: of,
      check,
      ...(instrument !== undefined && { with: instrument }),
      tried,
      ...(shims && shims.length > 0 && { shims: [...shims] }),
      values: [
        ...(read ? [read] : []),
        ...value(PACK, 'length', pack_m, 'seen'),
        ...value(TURNED, 'angle', turned_rad, 'seen'),
        ...value(LEAD, 'length', lead_m, 'told'),
      ],
      result,
    },
  }
}

const SAID_OF_THE_MOVE: readonly string[] = [PACK, TURNED, LEAD]

/**
 * Every try of a job in fold order.
 *
 * @param entries of one job, in any order
 * @param state what they fold to
 */
export function settingTries(
  entries: readonly Entry[],
  { happened }: Pick<JobState, 'happened'>,
): readonly SettingTry[] {
  const byId = new Map(entries.map((entry) => [entry.id, entry]))
  const numbers = new Map<string, number>()
  const nextOf = nextOfDevice(happened)
  return happened.flatMap(({ entry: id, withdrawnBy, ...said }, index): readonly SettingTry[] => {
    const entry = byId.get(id)
    if (entry?.kind !== 'setting-try') return []
    const { connection: of, values = [], shims = [], ...body } = entry.body
    const number = (numbers.get(of) ?? 0) + 1
    if (withdrawnBy === undefined) numbers.set(of, number)
    const taker = withdrawnBy === undefined ? undefined : byId.get(withdrawnBy)
    const named = (what: string) => values.find((value) => value.what === what)
    const read = values.find(({ what }) => !SAID_OF_THE_MOVE.includes(what))
    const [pack, turned, lead] = [named(PACK), named(TURNED), named(LEAD)]
    // A device writes one after the other: what it wrote next, it wrote together with this.
    const next = nextOf[index]
    const result = next === undefined ? undefined : byId.get(next)
    return [
      {
        entry: id,
        person: said.person,
        device: said.device,
        at: said.at,
        ...body,
        number,
        of,
        shims,
        ...(read && { read }),
        ...(pack && { pack }),
        ...(turned && { turned }),
        ...(lead && { lead }),
        ...(result?.kind === 'check-result' && result.body.check === body.check && { resultEntry: result.id }),
        ...(taker && { takenBack: { person: taker.person, at: taker.at } }),
      },
    ]
  })
}

/** For each entry, the one that its device wrote next. */
function nextOfDevice(happened: JobState['happened']): readonly (string | undefined)[] {
  const later = new Map<string, string>()
  const next: (string | undefined)[] = new Array(happened.length)
  for (let at = happened.length - 1; at >= 0; at--) {
    const { device, entry } = happened[at]!
    next[at] = later.get(device)
    later.set(device, entry)
  }
  return next
}
