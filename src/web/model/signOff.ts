// What a step wants beside one signature, and how far that has come: a second person, a photo.
import { Problem } from '../../problem/problem.ts'
import { didIt } from '../../record/didIt.ts'
import type { Saying } from '../../record/entriesOfJob.ts'
import type { Fact, JobState, Signature, StepState } from '../../record/state.ts'
import { isDone, type JobOnSheet, lastCheck, type Mark, markOf } from './jobOnSheet.ts'
import type { StepSheetData } from './workedJob.ts'

type Wanting = Pick<StepSheetData, 'step' | 'wants'>

export type Second =
  /** One name is enough, or nobody has signed it yet. */
  | { readonly is: 'not yet' }
  /** Those who did it cannot be it. */
  | { readonly is: 'wanted'; readonly did: readonly string[] }
  | {
      readonly is: 'given'
      readonly how: 'second person' | 'one person, checked again'
      readonly by: Signature
    }

export function secondOf({ wants }: Wanting, record: StepState | undefined): Second {
  if (record?.second) return { is: 'given', how: record.second.how, by: record.second }
  if (!wants?.secondPerson || !record || !isDone(record)) return { is: 'not yet' }
  return { is: 'wanted', did: [...new Set(record.done.map(({ person }) => person))] }
}

/** Why this person cannot be the second one; undefined where he can. */
export const whyNotSecond = (record: StepState, person: string): Problem | undefined =>
  didIt(record, person) ? new Problem('SECOND_IS_FIRST', { person, step: record.step }) : undefined

/** Photos of a step that are in force, in the order in which they were taken. */
export const photosOf = (state: JobState, step: string): readonly Fact<'photo'>[] =>
  state.photos.filter(({ about }) => about?.step === step)

/** What a photo is still wanted of; undefined where none is wanted, or there is one since the step was last taken apart. */
export function photoWanted(state: JobState, { step, wants }: Wanting): string | undefined {
  if (wants?.photo === undefined) return undefined
  const undone = state.steps.get(step)?.signatures.findLast(({ as }) => as === 'undone')
  const isThere = photosOf(state, step).some((photo) => !undone || isAfter(state, photo, undone))
  return isThere ? undefined : wants.photo
}

type Named = Pick<Fact<'photo'>, 'entry'>

/** By the order in which it happened. */
const isAfter = (state: JobState, one: Named, other: Named): boolean =>
  state.happened.findIndex(({ entry }) => entry === one.entry) >
  state.happened.findIndex(({ entry }) => entry === other.entry)

/**
 * The photo of a check made again: the last one that the person took of the step after he had signed it. One from before shows the work, not
 * that it was looked at again.
 */
export function photoOfRecheck(state: JobState, step: string, person: string): Fact<'photo'> | undefined {
  const signed = state.steps.get(step)?.done.at(-1)
  if (!signed) return undefined
  return photosOf(state, step).findLast((photo) => photo.person === person && isAfter(state, photo, signed))
}

/** The mark of a step with what it wants: what was signed and still waits is to be looked at. */
export function markOfStep(job: JobOnSheet, step: Wanting): Mark {
  const mark = markOf(job, step.step)
  if (mark !== 'done') return mark
  return waitsFor(job, step).length > 0 ? 'look' : mark
}

/** What a step that was signed still waits for. */
export function waitsFor({ state }: JobOnSheet, step: Wanting): readonly ('second person' | 'photo')[] {
  const record = state.steps.get(step.step)
  if (!isDone(record)) return []
  return [
    ...(secondOf(step, record).is === 'wanted' ? (['second person'] as const) : []),
    ...(photoWanted(state, step) === undefined ? [] : (['photo'] as const)),
  ]
}

type Before = (job: JobOnSheet, step: StepSheetData, all: readonly StepSheetData[]) => readonly number[]

/** The steps before one that shuts something, as long as it has not: those of which something holds. */
const beforeShut =
  (holds: (job: JobOnSheet, one: StepSheetData) => boolean): Before =>
  (job, step, all) =>
    (step.wants?.shuts.length ?? 0) === 0 || isDone(job.state.steps.get(step.step))
      ? []
      : all.filter((one) => one.number < step.number && holds(job, one)).map(({ number }) => number)

/** Steps that wait for a second person before what this step shuts hides them. */
export const unseenBefore = beforeShut((job, one) => waitsFor(job, one).includes('second person'))

/** Checks whose last result was not good before what this step shuts hides what they looked at. */
export const badBefore = beforeShut(({ state }, { step }) => lastCheck(state, step)?.result === 'bad')

export const secondSaying = ({ step }: Pick<StepSheetData, 'step'>, sequence: string | undefined): Saying => ({
  kind: 'step-signed',
  body: { step, as: 'second', ...(sequence !== undefined && { sequence }) },
})

/** @param found what was seen or read, in words; empty where nothing is to be said */
export const recheckSaying = (
  step: string,
  { method, found, photo }: { readonly method: string; readonly found: string; readonly photo: string },
): Saying => ({
  kind: 'step-signed',
  body: { step, as: 'recheck', method, photo, ...(found !== '' && { says: found }) },
})
