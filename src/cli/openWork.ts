// A unit or a job file becomes what is worked up from it. A job names its unit, which lies beside it.
import { dirname, join } from 'node:path'
import { type WorkUp, workUp } from '../job/workUp.ts'
import { readUnit } from '../unit/file/readUnit.ts'
import type { Asked } from './asked.ts'
import { Faults } from './faults.ts'
import type { Io } from './io.ts'
import { nameOf } from './nameOf.ts'

/** The first key says what the file is; what says neither is read as a unit, and told so. */
const IS_JOB = /^["']?matchmark["']?[ \t]*:[ \t]*["']?job\b/m

/**
 * @throws Faults when anything in the files cannot be read; FILE_UNREADABLE, FILE_IS_FOLDER, FILE_NOT_TEXT, FILE_TOO_LARGE;
 *   NO_SUCH_NAME when the unit has no such variant
 */
export async function openWork(file: string, { files, err }: Pick<Io, 'files' | 'err'>, asked: Asked): Promise<WorkUp> {
  const text = await files.read(file)
  const job = IS_JOB.test(text) ? await jobOf(text, file) : undefined
  const unitFile = job ? join(dirname(file), job.unit) : file
  const unit = unitOf(job ? await files.read(unitFile) : text, unitFile)
  const variant = asked.variant && nameOf(asked.variant, unit.variants, { what: 'variant', file: unitFile })
  const work = workUp({ unit, job, variant })
  if (!asked.json) work.taken.forEach(err)
  return work
}

async function jobOf(text: string, file: string) {
  const { readJob } = await import('../job/file/readJob.ts')
  const { job, faults } = readJob(text, file)
  if (!job) throw new Faults(faults)
  return job
}

function unitOf(text: string, file: string) {
  const { unit, faults } = readUnit(text, file)
  if (!unit) throw new Faults(faults)
  return unit
}
