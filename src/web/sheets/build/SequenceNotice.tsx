// The sequence was changed while somebody stood at the bench: it is shown, and stays until it was seen.
import { hourOf } from '../../../journal/clock.ts'
import type { JobOnSheet } from '../../model/jobOnSheet.ts'
import { sayWhen } from '../../model/sayWhen.ts'
import { Action } from '../../parts/Action.tsx'
import { Mark } from '../../parts/Mark.tsx'
import { useBenchState } from '../../sync/BenchContext.tsx'
import { words } from '../../words/words.ts'
import { useDraft } from '../useDraft.ts'
import css from './Build.module.css'

export function SequenceNotice({ job, step, now_ms }: { job: JobOnSheet; step: string; now_ms: number }) {
  const [seen, setSeen] = useDraft(`${job.number} sequence seen`)
  const { device } = useBenchState()
  const { sequence, sequences } = job.state
  if (!sequence) return null
  const last = sequences.find(({ entry }) => entry === seen)
  if (!last || (last.entry !== sequence.entry && sequence.device === device)) {
    // The first sequence that this device builds by is no change, and who has changed it here knows.
    queueMicrotask(() => setSeen(sequence.entry))
    return null
  }
  if (last.entry === sequence.entry) return null
  const place = (of: typeof sequence) => of.steps.findIndex((one) => one.step === step) + 1
  const [was, is] = [place(last), place(sequence)]
  const texts = words.build
  return (
    <div className={css.notice} role="alert">
      <p>
        <Mark name="look" />
        <span>
          <b>{texts.changed(sequence.person, sayWhen(hourOf(sequence.at), now_ms))}</b>{' '}
          {is === 0 ? texts.changedGone : was === is ? texts.changedSame : texts.changedTo(was, is)}
        </span>
      </p>
      <Action onDo={() => setSeen(sequence.entry)}>{texts.changedSeen}</Action>
    </div>
  )
}
