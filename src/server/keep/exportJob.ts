// A job leaves the shop, or comes in, as one sealed file.
import { type JobFile, sealJob, type Verified, verifyJob } from '../../journal/archive/jobArchive.ts'
import { publicKeyOf } from '../../journal/archive/sealed.ts'
import { Problem } from '../../problem/problem.ts'
import { filesNamed } from '../../record/filesNamed.ts'
import { ENDINGS } from '../../stores/files/files.ts'
import { lookAt } from '../../stores/files/lookAt.ts'
import type { OpenShop } from '../openShop.ts'
import { allOf } from './allOf.ts'
import { mustBeJob } from './mustBeJob.ts'
import { putAll } from './putAll.ts'
import { shopKey } from './shopKey.ts'

export interface Exported {
  readonly bytes: Uint8Array
  readonly entries: number
  readonly files: number
  /** Hashes that entries name and that are not here. */
  readonly missing: readonly string[]
}

/** @throws NOT_HERE when there is no such job · STREAM_NOT_YOURS for the shop itself */
export async function exportJob(
  { journal, files, vault }: Pick<OpenShop, 'journal' | 'files' | 'vault'>,
  job: string,
  now: number,
): Promise<Exported> {
  mustBeJob(job)
  const entries = (await allOf(journal, job)).map(({ entry }) => entry)
  if (entries.length === 0) throw new Problem('NOT_HERE', { what: `job '${job}'` })
  const found: JobFile[] = []
  const missing: string[] = []
  for (const sha256 of filesNamed(entries)) {
    const file = await files.read(sha256)
    if (file) found.push({ sha256, ending: ENDINGS[file.type], bytes: file.bytes })
    else missing.push(sha256)
  }
  const bytes = sealJob({ job, sealed_ms: now, entries, files: found }, await shopKey(vault))
  return { bytes, entries: entries.length, files: found.length, missing }
}

export interface Imported {
  readonly verified: Verified
  /** Entries that were not here before. */
  readonly fresh: number
}

/**
 * Takes a sealed job in. One that is here already grows by what it lacks.
 *
 * @param key only from the shop with this public key, where one is named
 * @throws ARCHIVE_BROKEN when anything is wrong with it · ARCHIVE_OF_OTHERS · ARCHIVE_SPEAKS_FOR_US · STREAM_NOT_YOURS
 */
export async function importArchive(
  shop: OpenShop,
  { bytes, file, key }: { bytes: Uint8Array; file: string; key?: string | undefined },
): Promise<Imported> {
  const { journal, files } = shop
  const verified = verifyJob(bytes)
  const [fault] = verified.faults
  if (fault || !verified.about)
    throw new Problem('ARCHIVE_BROKEN', { file, reason: fault?.says ?? 'it has no manifest' })
  mustBeJob(verified.about.job)
  if (key !== undefined && verified.key !== key)
    throw new Problem('ARCHIVE_OF_OTHERS', { file, received: verified.key ?? 'none', expected: key })
  for (const one of verified.files) lookAt(one.sha256, one.bytes)
  if (key === undefined) await mustNotSpeakForUs(shop, verified, file)
  const before = Math.max(0, ...(await journal.streams()).map(({ position }) => position))
  for (const one of verified.files) await files.put(one.sha256, one.bytes)
  const entries = verified.entries.map(({ entry }) => entry)
  const receipts = await putAll(journal, entries)
  // Positions rise: what was here before has one of before.
  return { verified, fresh: receipts.filter(({ position }) => position > before).length }
}

/**
 * What our own devices said comes from them. A stranger who has one of our archives knows their names and can seal what he likes under them,
 * signatures too; so such an entry comes in from elsewhere only where it is here already, or where somebody vouches for the key.
 */
async function mustNotSpeakForUs(
  { journal, vault, book }: OpenShop,
  { about, key, entries }: Verified,
  file: string,
): Promise<void> {
  const ofOurs = entries.filter(({ entry }) => book.shop.devices.has(entry.device))
  if (ofOurs.length === 0 || key === publicKeyOf(await shopKey(vault))) return
  const here = new Set((await allOf(journal, about!.job)).map(({ hash }) => hash))
  const fresh = ofOurs.find(({ hash }) => !here.has(hash))
  if (fresh) {
    const { device, person } = fresh.entry
    throw new Problem('ARCHIVE_SPEAKS_FOR_US', { file, device, person, key: key ?? 'none' })
  }
}
