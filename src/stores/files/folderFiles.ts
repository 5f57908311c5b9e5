// Files in a folder, two letters of their hash to a drawer. A file is there whole or not at all.
import { randomBytes } from 'node:crypto'
import { mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { Problem } from '../../problem/problem.ts'
import { ENDINGS, type FileAbout, type Files, type FoundFile } from './files.ts'
import { lookAt } from './lookAt.ts'
import { makeSmall } from './makeSmall.ts'

const TYPES = Object.entries(ENDINGS).map(([type, ending]) => ({ type: type as keyof typeof ENDINGS, ending }))

/** @param folder made where it is not there */
export function folderFiles(folder: string): Files {
  const drawer = (sha256: string) => join(folder, sha256.slice(0, 2))
  const pathOf = ({ sha256, type }: Pick<FileAbout, 'sha256' | 'type'>) =>
    join(drawer(sha256), `${sha256}.${ENDINGS[type]}`)
  const smallPath = (sha256: string) => join(folder, 'small', sha256.slice(0, 2), `${sha256}.jpg`)

  async function find(sha256: string): Promise<FoundFile | null> {
    if (!/^[0-9a-f]{64}$/.test(sha256)) return null
    for (const { type } of TYPES) {
      const bytes = await readIfThere(pathOf({ sha256, type }))
      if (bytes) return { bytes, type }
    }
    return null
  }

  return {
    async put(sha256, bytes) {
      const about = lookAt(sha256, bytes)
      if (!(await isThere(pathOf(about)))) await writeWhole(pathOf(about), bytes)
      return about
    },
    read: find,
    async small(sha256) {
      const kept = /^[0-9a-f]{64}$/.test(sha256) ? await readIfThere(smallPath(sha256)) : null
      if (kept) return { bytes: kept, type: 'image/jpeg' }
      const whole = await find(sha256)
      const small = whole && (await makeSmall(whole))
      if (small) await writeWhole(smallPath(sha256), small.bytes)
      return small
    },
    async list() {
      const all: FileAbout[] = []
      for (const name of (await namesIn(folder)).filter((one) => /^[0-9a-f]{2}$/.test(one))) {
        for (const file of await namesIn(join(folder, name))) {
          // The whole name: one that ends otherwise was never finished, or is none of ours.
          const [, sha256, ending] = /^([0-9a-f]{64})\.([a-z]+)$/.exec(file) ?? []
          const known = TYPES.find((one) => one.ending === ending)
          if (!known || sha256 === undefined) continue
          all.push({ sha256, type: known.type, size: (await stat(join(folder, name, file))).size })
        }
      }
      return all
    },
  }
}

async function readIfThere(path: string): Promise<Uint8Array | null> {
  try {
    return await readFile(path)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw error
  }
}

const isThere = async (path: string): Promise<boolean> => (await stat(path).catch(() => null)) !== null

async function namesIn(folder: string): Promise<string[]> {
  return (await readdir(folder).catch(() => [])).sort()
}

/** Beside first, then onto the disk, then by its name, then the name onto the disk. */
async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const beside = `${path}.${randomBytes(6).toString('hex')}.new`
  try {
    await mkdir(dirname(path), { recursive: true })
    const file = await open(beside, 'wx', 0o644)
    try {
      await file.writeFile(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(beside, path)
    const folder = await open(dirname(path), 'r')
    await folder.sync().catch(() => {})
    await folder.close()
  } catch (error) {
    await rm(beside, { force: true }).catch(() => {})
    throw fileProblem(error as NodeJS.ErrnoException, dirname(path))
  }
}

function fileProblem(error: NodeJS.ErrnoException, folder: string): Error {
  const { code = '' } = error
  if (code === 'ENOSPC' || code === 'EFBIG' || code === 'EDQUOT')
    return new Problem('STORE_FULL', { store: folder, reason: 'the disk is full' })
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM')
    return new Problem('STORE_READ_ONLY', { store: folder, reason: code })
  return error
}
