// What runs in a thread beside the server: a job folded, worked up, and its sequence found or its book made.
import { readFile } from 'node:fs/promises'
import type { MessagePort } from 'node:worker_threads'
import { workedOut } from '../../job/workedOut.ts'
import { sequenceOf, type WorkUp, workUp } from '../../job/workUp.ts'
import type { Entry } from '../../journal/entry.ts'
import { bookFonts } from '../../paper/documents/bookFonts.ts'
import { jobBook } from '../../paper/documents/jobBook.ts'
import { Problem } from '../../problem/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { asBuilt } from '../../record/asBuilt.ts'
import { fold } from '../../record/fold.ts'
import { jobOf } from '../../record/jobOf.ts'
import type { JobState } from '../../record/state.ts'
import { triedIn } from '../../record/tried.ts'
import { readUnit } from '../../unit/file/readUnit.ts'
import type { WorkInput, WorkKind } from './work.ts'

export interface WorkerTask {
  readonly kind: WorkKind
  readonly input: WorkInput
  readonly port: MessagePort
}

export default async function work({ kind, input, port }: WorkerTask): Promise<unknown> {
  try {
    const entries = JSON.parse(input.entries) as Entry[]
    const { state } = fold(input.job, entries)
    const job = jobOf(state)
    const { unit, faults } = readUnit(input.unit, job.unit)
    if (!unit) throw faults[0] ?? new Error('assert: a unit or its faults')
    const worked = workUp({ unit, job })
    const { effort, seconds } = input
    const result = sequenceOf(worked, {
      ...(effort !== undefined && { effort }),
      ...(seconds !== undefined && { timeLimit_s: seconds, now: () => performance.now() }),
      onProgress: ({ value, bound, states }) => port.postMessage({ value, bound, states }),
    })
    return kind === 'plan' ? result : { html: await bookOf(worked, result, { entries, state, input }), of: job.id }
  } catch (error) {
    // Only plain text crosses to the other side.
    throw error instanceof Problem ? new Error(`${error.message} ${error.next}`) : error
  } finally {
    port.close()
  }
}

async function bookOf(
  work: WorkUp,
  result: ReturnType<typeof sequenceOf>,
  {
    entries,
    state,
    input,
  }: { readonly entries: readonly Entry[]; readonly state: JobState; readonly input: WorkInput },
): Promise<string> {
  const system: System = work.job?.lengthUnit === 'in' ? 'inch' : 'metric'
  const fonts = await bookFonts((file) => readFile(new URL(`./fonts/${file}`, import.meta.url), 'base64'))
  return jobBook({
    ...workedOut(work, result, system),
    built: asBuilt(state),
    pictures: new Map(Object.entries(input.pictures ?? {})),
    tried: triedIn(entries, state),
    date: new Date().toISOString().slice(0, 10),
    fonts,
  })
}
