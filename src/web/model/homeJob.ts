// A job as Home has it: how far it is, what is next, what it waits for, what somebody should look at. From its entries alone.
import type { Look } from '../../record/state.ts'
import { isDone, isLook, type JobOnSheet, lastCheck, stepInHand } from './jobOnSheet.ts'
import type { Stage } from './stages.ts'
import type { ClockSheet } from './workedJob.ts'

export interface ToLookAt {
  readonly what: Look['what'] | 'signed on a bad check'
  readonly about: string
  readonly people: readonly string[]
  /** Where it is a step of the sequence that stands. */
  readonly step?: string
}

export interface HomeJob {
  readonly number: string
  readonly unit: string
  /** Serial and owner, as far as they were told. */
  readonly about: readonly string[]
  readonly isInvented: boolean
  readonly stage: Stage
  readonly signed: number
  readonly of: number
  /** The step in hand; missing where none is left or no sequence stands. */
  readonly next?: { readonly step: string; readonly number: number }
  /** Who has begun a step and not signed it. */
  readonly begun: readonly { readonly step: string; readonly person: string }[]
  readonly looks: readonly ToLookAt[]
  /** Renewed, and nothing has come in for them yet. */
  readonly toGet: readonly string[]
  /** Nobody knows where they are. */
  readonly lost: readonly string[]
  /** ms; when something was last said of it */
  readonly touched_ms: number
}

export function homeJob(job: JobOnSheet): HomeJob {
  const { state, number } = job
  const steps = state.sequence?.steps.map(({ step }) => step) ?? []
  const step = stepInHand(job)
  const inSequence = new Set(steps)
  const parts = [...state.parts.values()]
  const signedBad = [...state.steps.values()].filter(
    (one) => isLook(state, one.step) && lastCheck(state, one.step)?.result === 'bad' && isDone(one),
  )
  return {
    number,
    unit: unitName(job),
    about: [state.opened.serial, job.job.owner].filter((one) => one !== undefined),
    isInvented: state.opened.invented === true,
    stage: state.sequence ? 'build' : 'sequence',
    signed: steps.filter((id) => isDone(state.steps.get(id))).length,
    of: steps.length,
    ...(step !== undefined && { next: { step, number: steps.indexOf(step) + 1 } }),
    begun: [...state.steps.values()].flatMap((one) =>
      one.stands === 'started' && one.starts[0] ? [{ step: one.step, person: one.starts[0].person }] : [],
    ),
    looks: [
      ...state.looks.map(({ what, about, people }) => ({
        what,
        about,
        people,
        ...(inSequence.has(about) && { step: about }),
      })),
      ...signedBad.map((one) => ({
        what: 'signed on a bad check' as const,
        about: one.step,
        people: one.done.map(({ person }) => person),
        ...(inSequence.has(one.step) && { step: one.step }),
      })),
    ],
    toGet: parts.filter((part) => part.decision?.decision === 'renew' && part.in.length === 0).map(({ part }) => part),
    // What is renewed need not be found.
    lost: parts
      .filter(({ where, decision }) => decision?.decision !== 'renew' && (where === 'missing' || where === 'not known'))
      .map(({ part }) => part),
    touched_ms: state.happened.at(-1)?.at.ms ?? 0,
  }
}

/**
 * The step to go on with: where a clock runs, the one that was begun with it, or the one that it runs towards; else the step in hand.
 *
 * @param clock the most pressing one of this job
 */
export function goOnWith(
  { next, begun }: HomeJob,
  clock: Pick<ClockSheet, 'from' | 'to'> | undefined,
): { readonly step: string; readonly hasClock: boolean; readonly number?: number } | undefined {
  if (clock) {
    const step = begun.some((one) => one.step === clock.from.op) ? clock.from.op : clock.to.op
    return { step, hasClock: true, ...(next?.step === step && { number: next.number }) }
  }
  return next && { ...next, hasClock: false }
}

/** `reversing-gearcase.unit.yaml` says what it is of. */
function unitName({ job, number }: JobOnSheet): string {
  const name = (job.unit.split('/').at(-1) ?? '').replace(/\.unit\.ya?ml$/, '').replaceAll('-', ' ')
  return name === '' ? number : name.slice(0, 1).toUpperCase() + name.slice(1)
}
