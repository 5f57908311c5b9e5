// The clocks of each job that was opened on this device, so that Home can show the ones that run without working any job up.
import type { ClockSheet, WorkedJob } from '../model/workedJob.ts'
import { draft, keepDraft } from '../sync/drafts.ts'

const key = (job: string) => `${job} clocks`

export function keepClocks(job: string, { steps }: WorkedJob): void {
  keepDraft(key(job), JSON.stringify(steps.flatMap(({ clocks }) => clocks)))
}

export function clocksOf(job: string): readonly ClockSheet[] {
  const kept = draft(key(job))
  return kept === undefined ? [] : (JSON.parse(kept) as ClockSheet[])
}
