// A job as its entries have it, with what its sheets ask of it again and again.

import type { Job } from '../../job/model/job.ts'
import { hourOf } from '../../journal/clock.ts'
import type { Entry } from '../../journal/entry.ts'
import { fold } from '../../record/fold.ts'
import { jobOf } from '../../record/jobOf.ts'
import { type SettingTry, settingTries } from '../../record/settingTries.ts'
import type { JobState, StepState } from '../../record/state.ts'
import type { StepTimes } from './clocks.ts'
import { type Slip, slipsOf } from './slips.ts'
import type { Stage, StageState } from './stages.ts'

export interface JobOnSheet {
  readonly number: string
  readonly state: JobState
  readonly job: Job
  readonly slips: ReadonlyMap<string, readonly Slip[]>
  /** Of all settings, in their order, those taken back too. */
  readonly tries: readonly SettingTry[]
  /** Changes when something does from which the job is worked out: not when a step is signed. */
  readonly key: string
}

const WORKED_FROM = new Set([
  'job-opened',
  'unit-adopted',
  'part-seen',
  'reading',
  'finding',
  'sequence-adopted',
  'withdrawn',
])

/** @param entries of one job */
export function jobOnSheet(number: string, entries: readonly Entry[]): JobOnSheet {
  const { state } = fold(number, entries)
  const from = entries.filter(({ kind }) => WORKED_FROM.has(kind))
  return {
    number,
    state,
    job: jobOf(state),
    slips: slipsOf(entries, state),
    tries: settingTries(entries, state),
    key: `${number} ${from.length} ${from.at(-1)?.id ?? ''} ${state.unit?.unit ?? ''} ${state.sequence?.entry ?? ''}`,
  }
}

export type Mark = 'to do' | 'in hand' | 'done' | 'look'

export function markOf({ state }: JobOnSheet, step: string): Mark {
  const here = state.steps.get(step)
  if (!here || here.stands === 'undone') return 'to do'
  if (here.stands === 'started') return 'in hand'
  return isLook(state, step) ? 'look' : 'done'
}

/** Somebody should look: two hands signed it, or it was signed on a bad check. */
export const isLook = (state: JobState, step: string): boolean =>
  state.looks.some(({ what, about }) => what === 'signed twice' && about === step) ||
  (state.steps.get(step)?.stands === 'done' && lastCheck(state, step)?.result === 'bad')

export const checksOf = (state: JobState, check: string) => state.checks.filter((one) => one.check === check)
export const lastCheck = (state: JobState, check: string) => checksOf(state, check).at(-1)

export const isDone = (step: StepState | undefined): boolean => step?.stands === 'done'

/** When a step was begun and signed, first of each. */
export function timesOf({ state }: JobOnSheet, step: string): StepTimes | undefined {
  const here = state.steps.get(step)
  if (!here) return undefined
  const [started_ms, ended_ms] = [here.starts[0], here.done[0]].map((fact) => fact && hourOf(fact.at))
  return { ...(started_ms !== undefined && { started_ms }), ...(ended_ms !== undefined && { ended_ms }) }
}

/** What is open in a job, each once. */
export const looksIn = ({ state }: JobOnSheet): number => {
  const steps = [...state.steps.values()].filter(({ step }) => isLook(state, step)).length
  return steps + state.looks.filter(({ what }) => what !== 'signed twice').length
}

/** How far the stages have come, by what stands in the journal. */
export function stagesOf({ state }: JobOnSheet): Readonly<Partial<Record<Stage, StageState>>> {
  const { unit, parts, readings, sequence, steps, tries, checks } = state
  const all = [...parts.values()]
  const has = (is: boolean, isAll: boolean): StageState => (isAll ? 'done' : is ? 'in hand' : 'to come')
  const decided = all.filter(({ decision }) => decision).length
  const ids = sequence?.steps.map(({ step }) => step) ?? []
  const signed = ids.filter((id) => isDone(steps.get(id))).length
  return {
    'book in': has(true, unit !== undefined),
    strip: has(
      all.length > 0,
      all.length > 0 && all.every(({ where }) => where !== undefined && where !== 'not known'),
    ),
    inspect: has(readings.length > 0, false),
    decide: has(decided > 0, all.length > 0 && decided === all.length),
    kit: has(
      all.some((part) => part.in.length > 0),
      false,
    ),
    set: has(tries.length > 0, false),
    sequence: has(sequence !== undefined, sequence !== undefined),
    build: has([...steps.values()].length > 0, ids.length > 0 && signed === ids.length),
    prove: has(checks.length > 0, false),
  }
}

/** The first step of the sequence that is not signed; undefined when all are, or when no sequence stands. */
export const stepInHand = ({ state }: JobOnSheet): string | undefined =>
  state.sequence?.steps.find(({ step }) => !isDone(state.steps.get(step)))?.step
