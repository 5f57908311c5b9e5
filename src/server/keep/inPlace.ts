// How a restored record comes into the place of the one that is there: by renames in the shop's own folder, of which any may be the last thing
// that this machine did. Whoever opens the folder next goes on where it was broken off.
import { mkdir, open, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { join } from 'node:path'

export const JOURNAL_FILE = 'journal.db'
export const KEYS_FILE = 'keys.db'
export const FILES_FOLDER = 'files'

/** With what SQLite lays beside its files: a log of another file, left behind, would be played into the restored one. */
const RECORD = [...[JOURNAL_FILE, KEYS_FILE].flatMap((name) => [name, `${name}-wal`, `${name}-shm`]), FILES_FOLDER]

/** Being filled: nothing that counts yet. Named so, it is whole and what is there goes aside: the point of no return. Then it goes in. */
const [FILLING, WHOLE, GOING_IN] = ['restoring.new', 'restoring', 'restoring.in'] as const
const ASIDE = 'aside.txt'

/** Moves a file or a folder; tests hand in one that stops the machine. */
export type Move = (from: string, to: string) => Promise<void>

/** An empty folder to fill. The caller has the shop's folder alone. */
export async function fillingIn(folder: string): Promise<string> {
  const filling = join(folder, FILLING)
  await rm(filling, { recursive: true, force: true })
  await mkdir(filling, { mode: 0o700 })
  return filling
}

/** @returns where what was there lies now; null when there was nothing. The caller has the shop's folder alone. */
export async function putInPlace(folder: string, now: number, move: Move = rename): Promise<string | null> {
  const aside = `before-${new Date(now).toISOString().replace(/[:.]/g, '-')}`
  await writeFile(join(folder, FILLING, ASIDE), aside, { flush: true })
  await settled(join(folder, FILLING))
  await move(join(folder, FILLING), join(folder, WHOLE))
  await goOn(folder, move)
  return (await isThere(join(folder, aside))) ? join(folder, aside) : null
}

/** Whether something was broken off here that has to be finished first. */
export const isBrokenOff = async (folder: string): Promise<boolean> => {
  const names: readonly string[] = await readdir(folder).catch(() => [])
  return [FILLING, WHOLE, GOING_IN].some((name) => names.includes(name))
}

/** Finishes what was broken off; does nothing where nothing was. The caller has the shop's folder alone. */
export async function goOn(folder: string, move: Move = rename): Promise<void> {
  await rm(join(folder, FILLING), { recursive: true, force: true })
  await settled(folder)
  const there = join(folder, WHOLE)
  if (await isThere(there)) {
    const aside = join(folder, await readFile(join(there, ASIDE), 'utf8'))
    for (const name of RECORD) {
      if (!(await isThere(join(folder, name)))) continue
      await mkdir(aside, { recursive: true, mode: 0o700 })
      await move(join(folder, name), join(aside, name))
    }
    await settled(folder)
    await move(there, join(folder, GOING_IN))
  }
  const goingIn = join(folder, GOING_IN)
  if (!(await isThere(goingIn))) return
  for (const name of RECORD) if (await isThere(join(goingIn, name))) await move(join(goingIn, name), join(folder, name))
  await settled(folder)
  await rm(goingIn, { recursive: true, force: true })
}

const isThere = async (path: string): Promise<boolean> => (await stat(path).catch(() => null)) !== null

/** The names in a folder reach the disk. */
async function settled(folder: string): Promise<void> {
  const opened = await open(folder, 'r')
  // Some systems cannot do it for a folder.
  await opened.sync().catch(() => {})
  await opened.close()
}
