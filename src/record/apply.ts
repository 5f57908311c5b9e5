// What each kind of entry adds to the state. Members are replaced, never changed, so that a state that was handed out stays as it is.
import type { Body, Entry, Kind } from '../journal/entry.ts'
import { didIt } from './didIt.ts'
import type { Fact, Happened, Look, Opened, PartState, ReadingState, Said, StepState } from './state.ts'

type Shim = NonNullable<Body<'job-opened'>['shims']>[number]

/** The state while it is being built. */
export interface Building {
  opened: Omit<Opened, 'shims'> & { readonly shims: Map<string, Shim> }
  unit: Fact<'unit-adopted'> | undefined
  sequence: Fact<'sequence-adopted'> | undefined
  readonly parts: Map<string, PartState>
  readonly readings: ReadingState[]
  readonly steps: Map<string, StepState>
  readonly sequences: Fact<'sequence-adopted'>[]
  readonly findings: Fact<'finding'>[]
  readonly checks: Fact<'check-result'>[]
  readonly tries: Fact<'setting-try'>[]
  readonly photos: Fact<'photo'>[]
  readonly notes: Fact<'note'>[]
  readonly looks: Look[]
  readonly happened: Happened[]
}

export const emptyBuilding = (): Building => ({
  opened: { shims: new Map() },
  unit: undefined,
  sequence: undefined,
  parts: new Map(),
  readings: [],
  steps: new Map(),
  sequences: [],
  findings: [],
  checks: [],
  tries: [],
  photos: [],
  notes: [],
  looks: [],
  happened: [],
})

export const saidBy = ({ id, person, device, at }: Entry): Said => ({ entry: id, person, device, at })

const factOf = <K extends Kind>(entry: Entry<K>): Fact<K> => ({ ...saidBy(entry as Entry), ...entry.body }) as Fact<K>

/** A mark names so many entries at most, the last among them. Who signs one step a thousand times makes a thousand marks, and not a million names. */
const MOST_NAMED = 20

function look(building: Building, what: Look['what'], about: string, all: readonly Said[]): void {
  const facts = all.length > MOST_NAMED ? [...all.slice(0, MOST_NAMED - 1), all.at(-1)!] : all
  building.looks.push({
    what,
    about,
    entries: facts.map(({ entry }) => entry),
    people: [...new Set(facts.map(({ person }) => person))],
  })
}

const APPLY: { readonly [K in Kind]: (building: Building, fact: Fact<K>) => void } = {
  'job-opened'(building, fact) {
    const { entry: _, person: __, device: ___, at: ____, shims = [], ...said } = fact
    for (const shim of shims) building.opened.shims.set(shim.id, shim)
    building.opened = { ...building.opened, ...said }
  },
  'unit-adopted'(building, fact) {
    const before = building.unit
    if (before && before.unit !== fact.unit && building.steps.size > 0)
      look(building, 'unit changed', fact.file, [before, fact])
    building.unit = fact
  },
  'part-seen'(building, fact) {
    const { part, where, condition, decision, why, when, entry, person, device, at } = fact
    const said: Said = { entry, person, device, at }
    const before = partOf(building, part)
    const decided = before.decision
    if (decision && decided && decided.decision !== decision && decided.person !== person && !why)
      look(building, 'decided otherwise', part, [decided, said])
    building.parts.set(part, {
      ...before,
      ...(where !== undefined && { where }),
      ...(condition !== undefined && {
        conditions: [...before.conditions, { ...said, condition, ...(when && { when }) }],
      }),
      ...(decision && { decision: { ...said, decision, ...(why !== undefined && { why }) } }),
    })
  },
  reading: (building, fact) => void building.readings.push(fact),
  finding(building, fact) {
    building.findings.push(fact)
  },
  photo: (building, fact) => void building.photos.push(fact),
  'sequence-adopted'(building, fact) {
    const before = building.sequence
    if (before && fact.from !== before.entry) look(building, 'two sequences', fact.entry, [before, fact])
    const left = [...building.steps.values()].filter(({ stands }) => stands === 'started')
    for (const { step, starts } of left) {
      const others = starts.filter(({ person }) => person !== fact.person)
      if (before && others.length > 0) look(building, 'sequence changed', step, [...others, fact])
    }
    building.sequence = fact
    building.sequences.push(fact)
  },
  'step-started'(building, fact) {
    const before = building.steps.get(fact.step) ?? freshStep(fact.step)
    lookAtSequence(building, fact)
    building.steps.set(fact.step, {
      ...before,
      stands: before.stands === 'done' ? 'done' : 'started',
      starts: [...before.starts, fact],
    })
  },
  'step-signed'(building, fact) {
    const before = building.steps.get(fact.step) ?? freshStep(fact.step)
    const step = { ...before, signatures: [...before.signatures, fact] }
    building.steps.set(fact.step, SIGN[fact.as ?? 'done'](building, step, fact))
  },
  'check-result': (building, fact) => void building.checks.push(fact),
  'setting-try': (building, fact) => void building.tries.push(fact),
  'part-in'(building, fact) {
    const before = partOf(building, fact.part)
    const { where } = fact
    building.parts.set(fact.part, {
      ...before,
      ...(where !== undefined && { where }),
      in: [...before.in, fact],
    })
  },
  note: (building, fact) => void building.notes.push(fact),
  withdrawn() {},
}

type Sign = (building: Building, step: StepState, fact: Fact<'step-signed'>) => StepState

const SIGN: Readonly<Record<NonNullable<Fact<'step-signed'>['as']>, Sign>> = {
  done(building, step, fact) {
    const done = [...step.done, fact]
    const other = step.done.find(({ person, device }) => person !== fact.person || device !== fact.device)
    if (other) {
      const rest = done.slice(0, MOST_NAMED - 2).filter((one) => one !== other)
      look(building, 'signed twice', step.step, done.length > MOST_NAMED ? [...rest, other, fact] : done)
    }
    lookAtSequence(building, fact)
    const { second, ...rest } = step
    const own = second?.how === 'second person' && second.person === fact.person
    if (own) look(building, 'same hand', step.step, [second, fact])
    return { ...rest, ...(second && !own && { second }), stands: 'done', done }
  },
  second(building, step, fact) {
    // The hands that did it cannot vouch for it; whoever signed first in fold order does not matter.
    if (!didIt(step, fact.person)) return { ...step, second: { ...fact, how: 'second person' } }
    look(building, 'same hand', step.step, [...step.done.filter(({ person }) => person === fact.person), fact])
    return step
  },
  recheck(building, step, fact) {
    if (fact.method !== undefined && fact.photo !== undefined)
      return { ...step, second: step.second ?? { ...fact, how: 'one person, checked again' } }
    look(building, 'check again without method or photo', step.step, [fact])
    return step
  },
  undone: (_, { second: __, ...step }) => ({ ...step, stands: 'undone', starts: [], done: [] }),
}

/** The person had another sequence before him than the one in force. */
function lookAtSequence(building: Building, fact: Fact<'step-started'> | Fact<'step-signed'>): void {
  const { sequence } = building
  if (sequence && fact.sequence !== undefined && fact.sequence !== sequence.entry)
    look(building, 'sequence changed', fact.step, [sequence, fact])
}

const partOf = (building: Building, part: string): PartState =>
  building.parts.get(part) ?? { part, conditions: [], in: [] }

const freshStep = (step: string): StepState => ({ step, stands: 'started', starts: [], done: [], signatures: [] })

/** Adds one entry that is in force. */
export function apply(building: Building, entry: Entry): void {
  const add = APPLY[entry.kind] as (building: Building, fact: Fact<Kind>) => void
  add(building, factOf(entry) as Fact<Kind>)
}
