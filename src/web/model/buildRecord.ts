// What was said of each step of a job, in the order in which it is folded, with what was taken back still to be seen.
import type { Body, Entry, Kind } from '../../journal/entry.ts'

export interface Said<K extends Kind = Kind> {
  readonly id: string
  readonly kind: K
  readonly body: Body<K>
  readonly person: string
  readonly device: string
  readonly at_ms: number
  /** Who took it back and when; missing: it is in force. */
  readonly takenBack?: { readonly person: string; readonly at_ms: number }
}

export interface StepRecord {
  readonly state: 'to do' | 'in hand' | 'done'
  /** Several people signed it, or it was signed on a bad check. */
  readonly isLook: boolean
  readonly started: readonly Said<'step-started'>[]
  readonly signed: readonly Said<'step-signed'>[]
  readonly results: readonly Said<'check-result'>[]
  readonly wasUndone: boolean
}

export interface AdoptedSequence {
  readonly id: string
  readonly steps: readonly { readonly step: string; readonly mode?: string }[]
  readonly person: string
  readonly at_ms: number
}

export interface BuildRecord {
  readonly steps: ReadonlyMap<string, StepRecord>
  readonly readings: ReadonlyMap<string, readonly Said<'reading'>[]>
  readonly sequence?: AdoptedSequence
  readonly isInForce: (id: string) => boolean
}

const NOTHING: StepRecord = { state: 'to do', isLook: false, started: [], signed: [], results: [], wasUndone: false }

export const recordOf = (record: BuildRecord, step: string): StepRecord => record.steps.get(step) ?? NOTHING

/** @param entries of one job, in fold order */
export function buildRecord(entries: readonly Entry[]): BuildRecord {
  const takers = takersOf(entries)
  const said = <K extends Kind>(entry: Entry<K>): Said<K> => {
    const taker = takers.get(entry.id)
    const { id, kind, body, person, device, at } = entry as Entry
    return {
      id,
      kind,
      body,
      person,
      device,
      at_ms: at.ms,
      ...(taker && { takenBack: { person: taker.person, at_ms: taker.at.ms } }),
    } as Said<K>
  }
  const steps = new Map<string, { started: Said<'step-started'>[]; signed: Said<'step-signed'>[]; results: Said<'check-result'>[] }>()
  const of = (step: string) => {
    const here = steps.get(step) ?? { started: [], signed: [], results: [] }
    steps.set(step, here)
    return here
  }
  const readings = new Map<string, Said<'reading'>[]>()
  let sequence: AdoptedSequence | undefined
  for (const entry of entries) {
    if (entry.kind === 'step-started') of(entry.body.step).started.push(said(entry))
    else if (entry.kind === 'step-signed') of(entry.body.step).signed.push(said(entry))
    else if (entry.kind === 'check-result') of(entry.body.check).results.push(said(entry))
    else if (entry.kind === 'reading') {
      const key = `${entry.body.part}.${entry.body.feature}`
      readings.set(key, [...(readings.get(key) ?? []), said(entry)])
    } else if (entry.kind === 'sequence-adopted' && !takers.has(entry.id)) {
      const { id, body, person, at } = entry
      sequence = { id, steps: body.steps, person, at_ms: at.ms }
    }
  }
  return {
    steps: new Map([...steps].map(([step, here]) => [step, stepRecord(here)])),
    readings,
    ...(sequence && { sequence }),
    isInForce: (id) => !takers.has(id),
  }
}

function stepRecord({ started, signed, results }: Pick<StepRecord, 'started' | 'signed' | 'results'>): StepRecord {
  const standing = signed.filter(({ takenBack }) => !takenBack)
  const undoneAt = standing.findLastIndex(({ body }) => body.as === 'undone')
  const since = standing.slice(undoneAt + 1)
  const dones = since.filter(({ body }) => (body.as ?? 'done') === 'done')
  const undone_ms = standing[undoneAt]?.at_ms ?? Number.NEGATIVE_INFINITY
  const begun = started.some(({ takenBack, at_ms }) => !takenBack && at_ms >= undone_ms)
  const last = results.findLast(({ takenBack, at_ms }) => !takenBack && at_ms >= undone_ms)
  const isDone = dones.length > 0
  return {
    state: isDone ? 'done' : begun ? 'in hand' : 'to do',
    isLook: new Set(dones.map(({ person }) => person)).size > 1 || (isDone && last?.body.result === 'bad'),
    started,
    signed,
    results,
    wasUndone: undoneAt >= 0 && !isDone,
  }
}

/** For each entry that is out of force, the withdrawal that holds. A withdrawal that was itself taken back does not. */
function takersOf(entries: readonly Entry[]): ReadonlyMap<string, Entry<'withdrawn'>> {
  const withdrawals = entries.filter((entry) => entry.kind === 'withdrawn')
  const takers = new Map<string, Entry<'withdrawn'>>()
  // The last word first: what takes back a withdrawal comes after it.
  for (const entry of withdrawals.toReversed()) if (!takers.has(entry.id)) takers.set(entry.body.of, entry)
  return takers
}
