// The shop's authority and the server's certificate, kept in a folder that only its owner may read.
import { mkdir, open, readFile, rename } from 'node:fs/promises'
import { join } from 'node:path'
import { type Certified, certifyServer, daysLeft, isFrom, isPair, namesOf, newAuthority } from './authority.ts'

/** Where they are kept, in the folder of the shop. */
export const AUTHORITY_FOLDER = 'authority'

/** What a tablet shows when it is asked whether to trust. */
export const SHOP_NAME = 'Matchmark shop'

/** Renewed this many days before the end. */
const EARLY_DAYS = 30

export interface ShopCertificates {
  readonly authority: Certified
  readonly server: Certified
}

export interface CertificatesAsked {
  readonly folder: string
  readonly shop: string
  readonly names: readonly string[]
  readonly now: number
}

/**
 * Those of the folder; made where they are missing. The server's is made anew when its names have changed, its time is nearly up or it is not
 * from this authority; the authority only when its time is up, and then every tablet has to get the new one.
 */
export async function keepCertificates({ folder, shop, names, now }: CertificatesAsked): Promise<ShopCertificates> {
  await mkdir(folder, { recursive: true, mode: 0o700 })
  let authority = await read(folder, 'authority')
  if (!authority || daysLeft(authority.certificate, now) < 0) {
    authority = await newAuthority({ shop, now })
    await write(folder, 'authority', authority)
  }
  const known = await read(folder, 'server')
  const vouched = new Set(known ? namesOf(known.certificate) : [])
  const early = Math.min(EARLY_DAYS, daysLeft(authority.certificate, now) - 1)
  const stillGood =
    known &&
    isPair(known) &&
    isFrom(authority.certificate, known.certificate) &&
    daysLeft(known.certificate, now) > early &&
    names.every((name) => vouched.has(name))
  if (stillGood) return { authority, server: known }
  const server = await certifyServer({ authority, names, now })
  await write(folder, 'server', server)
  return { authority, server }
}

async function read(folder: string, name: string): Promise<Certified | null> {
  try {
    const [certificate, key] = await Promise.all(
      ['pem', 'key'].map((ending) => readFile(join(folder, `${name}.${ending}`), 'utf8')),
    )
    return { certificate: certificate!, key: key! }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw error
  }
}

/** The key first: a certificate is never there without it. */
async function write(folder: string, name: string, { certificate, key }: Certified): Promise<void> {
  for (const [ending, text] of [
    ['key', key],
    ['pem', certificate],
  ] as const) {
    const path = join(folder, `${name}.${ending}`)
    const file = await open(`${path}.new`, 'w', 0o600)
    await file.writeFile(text)
    await file.sync()
    await file.close()
    await rename(`${path}.new`, path)
  }
}
