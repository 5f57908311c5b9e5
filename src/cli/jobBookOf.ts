// The job book of a file: worked out once, written as one page that needs nothing else.
import { join } from 'node:path'
import { kitOf } from '../job/kit.ts'
import type { KitLine } from '../job/model/kit.ts'
import { verdictsOf } from '../job/verdicts.ts'
import { renewalsOf, settingsOf, type WorkUp } from '../job/workUp.ts'
import { jobBook } from '../paper/documents/jobBook.ts'
import type { PlanResult } from '../planning/model/sequence.ts'
import type { System } from '../quantity/printQuantity.ts'
import type { Setting } from '../unit/connections/kind.ts'
import type { Io } from './io.ts'

/** The files that scripts/build.mjs lays beside the program. */
const FONTS = {
  words: 'atkinson-hyperlegible-next-latin-wght-normal.woff2',
  figures: 'atkinson-hyperlegible-mono-latin-wght-normal.woff2',
}

export interface WorkedOut {
  readonly work: WorkUp
  readonly result: PlanResult
  readonly system: System
  readonly settings: readonly Setting[]
  readonly kit: readonly KitLine[]
}

/** What a book, or the whole answer of `start`, shows besides the sequence. */
export function workedOut(work: WorkUp, result: PlanResult, system: System): WorkedOut {
  return { work, result, system, settings: settingsOf(work), kit: kitOf(work.unit, work.job, renewalsOf(work), system) }
}

/**
 * Writes the book into a folder.
 *
 * @returns the path of its file
 * @throws FILE_UNWRITABLE
 */
export async function writeJobBook(out: WorkedOut, { into, io }: { into: string; io: Io }): Promise<string> {
  const [words, figures] = await Promise.all([io.font(FONTS.words), io.font(FONTS.figures)])
  const { work } = out
  const html = jobBook({
    ...out,
    ...(work.job && { verdicts: verdictsOf(work.unit, work.job) }),
    date: io.today(),
    fonts: { words: base64(words), figures: base64(figures) },
  })
  const path = join(into, `${fileNameOf(work)}.html`)
  await io.files.write(path, html)
  return path
}

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64')

/** A name that every file system takes, made from the job's or the unit's. */
const fileNameOf = ({ job, unit }: WorkUp): string =>
  (job?.id ?? unit.name)
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60) || 'job-book'
