// The job book of a file: worked out once, written as one page that needs nothing else.
import { join } from 'node:path'
import type { WorkedOut } from '../job/workedOut.ts'
import type { WorkUp } from '../job/workUp.ts'
import { bookFonts } from '../paper/documents/bookFonts.ts'
import { jobBook } from '../paper/documents/jobBook.ts'
import type { Io } from './io.ts'

/**
 * Writes the book into a folder.
 *
 * @returns the path of its file
 * @throws FILE_UNWRITABLE
 */
export async function writeJobBook(out: WorkedOut, { into, io }: { into: string; io: Io }): Promise<string> {
  const fonts = await bookFonts(async (file) => Buffer.from(await io.font(file)).toString('base64'))
  const html = jobBook({ ...out, date: io.today(), fonts })
  const path = join(into, `${fileNameOf(out.work)}.html`)
  await io.files.write(path, html)
  return path
}

/** A name that every file system takes, made from the job's or the unit's. */
const fileNameOf = ({ job, unit }: WorkUp): string =>
  (job?.id ?? unit.name)
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60) || 'job-book'
