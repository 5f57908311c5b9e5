// A job file becomes entries of the journal, and its unit file lies beside it.
import { randomUUID } from 'node:crypto'
import type { Job } from '../../job/model/job.ts'
import { nextEntry, type Tail } from '../../journal/chain.ts'
import type { At, Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import type { PlacedStep, PlanResult } from '../../planning/model/sequence.ts'
import { entriesOfJob, type Saying } from '../../record/entriesOfJob.ts'
import type { Files } from '../../stores/files/files.ts'
import { sha256Of } from '../../stores/files/lookAt.ts'
import { mustBeJob } from '../keep/mustBeJob.ts'

export interface JobBrought {
  readonly job: Job
  /** The text of the unit file. */
  readonly unit: string
  /** Adopted with it, where one was found. */
  readonly sequence?: PlanResult
}

/**
 * Writes a job into the journal, unless there is one of its number already.
 *
 * @returns whether it was new
 * @throws STREAM_NOT_YOURS for one that is called as the shop's own stream
 */
export async function importJob(
  { job, unit, sequence }: JobBrought,
  { journal, files, now, person }: { journal: Journal; files: Files; now: () => number; person: string },
): Promise<boolean> {
  mustBeJob(job.id)
  const there = await journal.read(job.id, { limit: 1 })
  if (there.entries.length > 0) return false
  const bytes = new TextEncoder().encode(unit)
  const { sha256 } = await files.put(sha256Of(bytes), bytes)
  const device = `import-${randomUUID()}`
  let tail: Tail | undefined
  let clock: At | undefined
  const entries: Entry[] = []
  for (const saying of [...entriesOfJob(job, sha256), ...adopted(sequence, sha256)]) {
    const said = { id: randomUUID(), stream: job.id, person, device, ...saying }
    const made = nextEntry(said, { tail, clock, now_ms: now() })
    tail = made.tail
    clock = made.clock
    entries.push(made.entry)
  }
  await journal.put(entries)
  return true
}

function adopted(sequence: PlanResult | undefined, unit: string): Saying[] {
  if (!sequence?.value) return []
  const step = ({ op, mode, start_s, end_s }: PlacedStep) => ({ step: op, mode, start_s, end_s })
  const [hazard, elapsed, changes] = sequence.value
  const body = {
    steps: sequence.steps.map(step),
    unit,
    value: [hazard, elapsed, changes] as [number, number, number],
    proven: sequence.proven,
  }
  return [{ kind: 'sequence-adopted', body }]
}
