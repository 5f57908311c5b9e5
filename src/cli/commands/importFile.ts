// `import FILE`: a sealed job, or a job file with its unit, comes into the shop.
import { dirname, join } from 'node:path'
import { readJob } from '../../job/file/readJob.ts'
import { importJob } from '../../server/jobs/importJob.ts'
import { importArchive } from '../../server/keep/exportJob.ts'
import { type OpenShop, openShop } from '../../server/openShop.ts'
import { KEEPER } from '../../server/shop/who.ts'
import { readUnit } from '../../unit/file/readUnit.ts'
import { jsonLine } from '../asked.ts'
import { Faults } from '../faults.ts'
import type { ExitCode, Io } from '../io.ts'
import { counted } from '../words/timeWords.ts'
import type { KeptAsked } from './exportJob.ts'

const ZIP = [0x50, 0x4b]

export async function importFile(
  io: Io,
  file: string,
  asked: KeptAsked & { readonly from?: string },
): Promise<ExitCode> {
  const bytes = await io.files.readBytes(file)
  const shop = await openShop({ folder: asked.in, store: asked.store }, io.clock)
  try {
    const isSealed = ZIP.every((byte, place) => bytes[place] === byte)
    const { job, fresh } = isSealed
      ? await sealedJob(shop, { bytes, file, key: asked.from })
      : await jobFile(io, shop, file)
    if (asked.json) io.out(jsonLine({ schema: 'matchmark-import/1', job, fresh }))
    else
      io.out(
        fresh === 0
          ? `${job} was here already; nothing was new.`
          : `${job}: ${counted(fresh, 'new entry', 'new entries')}.`,
      )
  } finally {
    await shop.close()
  }
  return 0
}

async function sealedJob(shop: OpenShop, asked: Parameters<typeof importArchive>[1]) {
  const { verified, fresh } = await importArchive(shop, asked)
  return { job: verified.about!.job, fresh }
}

async function jobFile(io: Io, shop: OpenShop, file: string): Promise<{ job: string; fresh: number }> {
  const { job, faults } = readJob(await io.files.read(file), file)
  if (!job) throw new Faults(faults)
  const unitFile = join(dirname(file), job.unit)
  const unit = await io.files.read(unitFile)
  const read = readUnit(unit, unitFile)
  if (!read.unit) throw new Faults(read.faults)
  const isNew = await importJob({ job, unit }, { ...shop, now: io.clock, person: KEEPER })
  return { job: job.id, fresh: isNew ? (await shop.journal.read(job.id)).entries.length : 0 }
}
