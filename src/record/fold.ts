// From entries to the state of a job: the same in the browser, on the server and years later.
import type { Entry } from '../journal/entry.ts'
import { compareEntries } from '../journal/foldOrder.ts'
import { apply, type Building, emptyBuilding, saidBy } from './apply.ts'
import type { Happened, JobState, Look, ReadingState } from './state.ts'
import { withdrawals } from './withdrawals.ts'

/** A state with what is wanted to fold on from it. A cache: it may be thrown away at any time. */
export interface Folded {
  readonly state: JobState
  /** For foldOn alone. */
  readonly resume: { readonly building: Building; readonly last: Entry | undefined; readonly seen: Seen }
}

/** Device → number in its chain → the first entry that has it. */
type Seen = ReadonlyMap<string, ReadonlyMap<number, string>>

/**
 * Folds all entries of one job. Any order, and any entry more than once, gives the same state.
 *
 * @param entries of one stream
 */
export function fold(stream: string, entries: Iterable<Entry>): Folded {
  const once = new Map<string, Entry>()
  for (const entry of entries) once.set(entry.id, entry)
  return run(stream, emptyBuilding(), undefined, new Map(), [...once.values()].sort(compareEntries))
}

/**
 * Folds further entries onto a state, when that gives the same as folding all. Undefined when it does not: an entry came late and belongs
 * before what is folded, or takes out of force something that is. Then fold all of them again. The state given stays as it is.
 *
 * @param later entries that were not folded yet
 */
export function foldOn({ state, resume }: Folded, later: readonly Entry[]): Folded | undefined {
  const { building, last, seen } = resume
  const sorted = [...later].sort(compareEntries)
  const first = sorted[0]
  if (first && last && compareEntries(last, first) >= 0) return undefined
  const own = new Set(sorted.map(({ id }) => id))
  if (sorted.some((entry) => entry.kind === 'withdrawn' && !own.has(entry.body.of))) return undefined
  return run(state.stream, copyOf(building), last, seen, sorted)
}

function run(
  stream: string,
  building: Building,
  last: Entry | undefined,
  before: Seen,
  sorted: readonly Entry[],
): Folded {
  const taken = withdrawals(sorted)
  const seen = new Map([...before].map(([device, numbers]) => [device, new Map(numbers)]))
  for (const entry of sorted) {
    const by = taken.get(entry.id)
    const line: Happened = { ...saidBy(entry), kind: entry.kind, ...(by !== undefined && { withdrawnBy: by }) }
    building.happened.push(line)
    lookAtNumber(building, seen, entry)
    if (by === undefined) apply(building, entry)
  }
  const resume = { building, last: sorted.at(-1) ?? last, seen }
  return { state: stateOf(stream, building), resume }
}

/** Withdrawn or not: a device that gives one number to two entries was copied or put back from a backup. */
function lookAtNumber(building: Building, seen: Map<string, Map<number, string>>, entry: Entry): void {
  const own = seen.get(entry.device) ?? new Map<number, string>()
  seen.set(entry.device, own)
  const first = own.get(entry.seq)
  if (first === undefined) {
    own.set(entry.seq, entry.id)
    return
  }
  const other = building.happened.find((line) => line.entry === first)
  const people = [...new Set([other?.person ?? entry.person, entry.person])]
  const look: Look = { what: 'two entries with one number', about: entry.device, entries: [first, entry.id], people }
  building.looks.push(look)
}

const copyOf = (building: Building): Building => ({
  ...building,
  opened: { ...building.opened, shims: new Map(building.opened.shims) },
  parts: new Map(building.parts),
  readings: [...building.readings],
  steps: new Map(building.steps),
  sequences: [...building.sequences],
  findings: [...building.findings],
  checks: [...building.checks],
  tries: [...building.tries],
  photos: [...building.photos],
  notes: [...building.notes],
  looks: [...building.looks],
  happened: [...building.happened],
})

function stateOf(stream: string, building: Building): JobState {
  const { unit, sequence, readings, ...rest } = building
  return {
    stream,
    ...rest,
    readings: withRulings(readings, rest.findings),
    ...(unit && { unit }),
    ...(sequence && { sequence }),
  }
}

/** Which of several readings of a feature is to be used: the last finding that names one decides. */
function withRulings(readings: readonly ReadingState[], findings: JobState['findings']): readonly ReadingState[] {
  const rulings = findings.filter(({ rules }) => rules !== undefined)
  if (rulings.length === 0) return [...readings]
  const byId = new Map(readings.map((reading) => [reading.entry, reading]))
  const chosen = new Map<string, { readonly entry: string; readonly because: JobState['findings'][number] }>()
  for (const because of rulings) {
    const reading = byId.get(because.rules!)
    // A reading that is withdrawn, or has not come yet, rules nothing.
    if (reading) chosen.set(`${reading.part}\n${reading.feature}`, { entry: reading.entry, because })
  }
  return readings.map((reading) => {
    const choice = chosen.get(`${reading.part}\n${reading.feature}`)
    if (!choice) return reading
    const { entry, person, device, at, says } = choice.because
    return {
      ...reading,
      rules: choice.entry === reading.entry ? 'this' : 'another',
      because: { entry, person, device, at, says },
    }
  })
}
