// The sample job as entries of one device.
import { readFileSync } from 'node:fs'
import { readJob } from '../../job/file/readJob.ts'
import { hashOfText } from '../../journal/canonicalForm.ts'
import type { Entry } from '../../journal/entry.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { readUnit } from '../../unit/file/readUnit.ts'
import { entriesOfJob } from '../entriesOfJob.ts'

const text = (file: string): string =>
  readFileSync(new URL(`../../../examples/quarry-railway/${file}`, import.meta.url), 'utf8')

export const JOB_TEXT = text('J41.job.yaml')
export const UNIT_TEXT = text('reversing-gearcase.unit.yaml')

/** The job and the unit as their files have them. */
export function sample() {
  const { job, faults } = readJob(JOB_TEXT, 'J41.job.yaml')
  const { unit } = readUnit(UNIT_TEXT, 'reversing-gearcase.unit.yaml')
  if (!job || !unit) throw new Error(`the sample cannot be read: ${faults.join(' ')}`)
  return { job, unit }
}

export function sampleEntries(writer = new Writer('office')): readonly Entry[] {
  return entriesOfJob(sample().job, hashOfText(UNIT_TEXT)).map(({ kind, body }) => writer.write(kind, body as never))
}
