// `export JOB -o FILE`: a job leaves the shop in one file.

import { Problem } from '../../problem/problem.ts'
import { fold } from '../../record/fold.ts'
import { writeJobFile } from '../../record/writeJobFile.ts'
import { allOf } from '../../server/keep/allOf.ts'
import { exportJob } from '../../server/keep/exportJob.ts'
import { type OpenShop, openShop } from '../../server/openShop.ts'
import { type Asked, jsonLine } from '../asked.ts'
import type { ExitCode, Io } from '../io.ts'
import { counted } from '../words/timeWords.ts'

export interface KeptAsked extends Asked {
  /** The folder of the shop. */
  readonly in: string
  readonly store?: string
}

export async function exportOne(
  io: Io,
  job: string,
  asked: KeptAsked & { readonly into: string; readonly plain: boolean },
): Promise<ExitCode> {
  const shop = await openShop({ folder: asked.in, store: asked.store, old: true }, io.clock)
  try {
    return asked.plain ? await plainFile(io, shop, job, asked) : await sealedFile(io, shop, job, asked)
  } finally {
    await shop.close()
  }
}

async function sealedFile(
  io: Io,
  shop: OpenShop,
  job: string,
  { into, json }: { into: string; json: boolean },
): Promise<ExitCode> {
  const { bytes, entries, files, missing } = await exportJob(shop, job, io.clock())
  await io.files.writeBytes(into, bytes)
  if (json) io.out(jsonLine({ schema: 'matchmark-export/1', job, file: into, entries, files, missing }))
  else io.out(`${into}: ${counted(entries, 'entry', 'entries')} and ${counted(files, 'file')} of ${job}, sealed.`)
  for (const hash of missing) io.err(`The file ${hash} is named by an entry and is not here; it is not in the archive.`)
  return 0
}

async function plainFile(
  io: Io,
  shop: OpenShop,
  job: string,
  { into, json }: { into: string; json: boolean },
): Promise<ExitCode> {
  const entries = (await allOf(shop.journal, job)).map(({ entry }) => entry)
  if (entries.length === 0) throw new Problem('NOT_HERE', { what: `job '${job}'` })
  const { text, left } = writeJobFile(fold(job, entries).state)
  await io.files.write(into, text)
  if (json)
    io.out(jsonLine({ schema: 'matchmark-export/1', job, file: into, entries: entries.length, files: 0, missing: [] }))
  else io.out(`${into}: ${job} as a job file.`)
  for (const what of left) io.err(`Left out, since a job file has no place for it: ${what}`)
  return 0
}
