// The one thing to do at a step: worked out from what stands, from what is typed and from the clocks. Buttons and keys ask the same.

import type { Body } from '../../journal/entry.ts'
import type { Saying } from '../../record/entriesOfJob.ts'
import type { StepState } from '../../record/state.ts'
import type { RunningClock } from './clocks.ts'
import type { Typed } from './liveLimit.ts'
import type { NextBolt } from './tightening.ts'
import type { StepSheetData } from './workedJob.ts'

export type Act =
  /** Begin it: a clock starts. A ring that has not soaked through grips half way: too early is asked about. */
  | { readonly act: 'begin'; readonly clock: string; readonly wait_s?: number }
  /** The next bolt, in its order and stage. */
  | { readonly act: 'tighten'; readonly bolt: NextBolt }
  /** A reading is wanted and not typed yet, or cannot be understood. */
  | { readonly act: 'type' }
  /** Take the reading; `signs` says that the step is signed with it. */
  | { readonly act: 'take'; readonly text: string; readonly signs: boolean }
  | { readonly act: 'sign'; readonly why: Hesitation | undefined }
  | { readonly act: 'done' }

/** What asks for a second, different action. */
export type Hesitation =
  | { readonly is: 'no return' }
  | { readonly is: 'bad'; readonly says: string }
  | { readonly is: 'early'; readonly wait_s: number }

export interface Standing {
  readonly step: StepSheetData
  readonly record: StepState | undefined
  /** The last result of its check. */
  readonly result: 'good' | 'bad' | 'not known' | undefined
  readonly typed: Typed
  readonly running: readonly RunningClock[]
  /** The next bolt of its maps; missing when all are tight, or are not counted. */
  readonly bolt?: NextBolt | undefined
}

export function nextAct({ step, record, result, typed, running, bolt }: Standing): Act {
  if (record?.stands === 'done') return { act: 'done' }
  const begun = record?.stands === 'started' && record.starts.length > 0
  const starting = step.clocks.find(({ from }) => from.op === step.step && from.edge === 'start')
  if (starting && !begun) {
    const wait_s = waitFor(step, running)
    return { act: 'begin', clock: firstSentence(starting.says), ...(wait_s > 0 && { wait_s }) }
  }
  if (bolt) return { act: 'tighten', bolt }
  if (step.check?.limit && typed.kind === 'figure')
    return { act: 'take', text: typed.text, signs: typed.judged.is === 'within' && step.noReturn === undefined }
  if (step.check?.limit && result === undefined) return { act: 'type' }
  return { act: 'sign', why: hesitation({ step, result, running }) }
}

function hesitation({ step, result, running }: Pick<Standing, 'step' | 'result' | 'running'>): Hesitation | undefined {
  if (result === 'bad' || result === 'not known') return { is: 'bad', says: result }
  const wait_s = waitFor(step, running)
  if (wait_s > 0) return { is: 'early', wait_s }
  return step.noReturn === undefined ? undefined : { is: 'no return' }
}

const waitFor = (step: StepSheetData, running: readonly RunningClock[]): number =>
  Math.max(0, ...running.filter(({ clock }) => clock.to.op === step.step).map(({ wait_s }) => wait_s))

/** The rest is said with the cautions and the clock; an action is read at a glance. */
const firstSentence = (text: string): string => /^.*?\.(?= |$)/.exec(text)?.[0] ?? text

/** A check without a figure is answered; one that was not good is looked at again once it is mended, and both answers stand. */
export const isAnswered = (step: StepSheetData, result: Standing['result']): boolean =>
  step.check !== undefined && step.check.limit === undefined && result !== 'good'

/** The entries of a reading of a check. */
export function resultOf(
  step: StepSheetData,
  { typed, instrument }: { readonly typed: Typed; readonly instrument: string | undefined },
): (Saying & { readonly kind: 'check-result' }) | undefined {
  if (!step.check || typed.kind !== 'figure') return undefined
  const { value, judged } = typed
  return {
    kind: 'check-result',
    body: {
      check: step.check.id,
      result: judged.is === 'within' ? 'good' : judged.is === 'out' ? 'bad' : 'not known',
      values: [
        {
          what: step.check.settles ?? step.check.id,
          of: step.check.measures,
          low: value,
          high: value,
          standing: 'seen',
        },
      ],
      ...(instrument !== undefined && { with: instrument }),
    },
  }
}

/** The signature of a step under the sequence that the person had before him, with what is said of its bolts. */
export const signatureOf = (
  step: StepSheetData,
  sequence: string | undefined,
  bolts: Pick<Body<'step-signed'>, 'tightened' | 'uncounted'> = {},
): Saying => ({
  kind: 'step-signed',
  body: { step: step.step, as: 'done', mode: step.mode, ...(sequence !== undefined && { sequence }), ...bolts },
})

export const beginningOf = (step: StepSheetData, sequence: string | undefined): Saying => ({
  kind: 'step-started',
  body: { step: step.step, mode: step.mode, ...(sequence !== undefined && { sequence }) },
})
