// One at a time, across processes: a folder is the lock, because making one either succeeds or fails, never both.
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'

const LOOK_AGAIN_MS = 200
/** A holder writes its number at once; a lock that is older than this and has none was left by a killed process. */
const NAMELESS_MS = 5_000

/** Does the work while holding the lock; waits for whoever holds it, and takes it from a process that is gone. */
export async function withLock(folder, work) {
  let told = false
  while (!take(folder)) {
    if (isLeft(folder) && clear(folder)) continue
    if (!told) console.error('Another start is setting up; waiting for it ...')
    told = true
    await pause(LOOK_AGAIN_MS)
  }
  const release = () => rmSync(folder, { recursive: true, force: true })
  const stop = () => {
    release()
    process.exit(130)
  }
  process.once('exit', release)
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
  try {
    return await work()
  } finally {
    process.off('exit', release)
    process.off('SIGINT', stop)
    process.off('SIGTERM', stop)
    release()
  }
}

function take(folder) {
  try {
    mkdirSync(folder)
  } catch (error) {
    if (error.code === 'EEXIST') return false
    throw error
  }
  writeFileSync(join(folder, 'holder'), String(process.pid))
  return true
}

/** Moves a left lock out of the way; one that somebody took in the meantime is put back. */
function clear(folder) {
  const aside = `${folder}.left-${process.pid}`
  try {
    renameSync(folder, aside)
  } catch {
    return true
  }
  if (!isLeft(aside)) {
    renameSync(aside, folder)
    return false
  }
  rmSync(aside, { recursive: true, force: true })
  return true
}

function isLeft(folder) {
  try {
    const holder = Number(readFileSync(join(folder, 'holder'), 'utf8'))
    if (holder > 0) return !isAlive(holder)
  } catch {
    // It is being made or taken away just now, or was left without a number.
  }
  try {
    return Date.now() - statSync(folder).mtimeMs > NAMELESS_MS
  } catch {
    return false
  }
}

function isAlive(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}
