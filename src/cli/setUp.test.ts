// scripts/lock.mjs: what several starts at once rely on.
import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'

const folder = mkdtempSync(join(tmpdir(), 'matchmark-lock-'))
afterAll(() => rmSync(folder, { recursive: true }))
const module = new URL('../../scripts/lock.mjs', import.meta.url).href

/** A process that writes into a log when it comes in and when it goes out. */
function worker(lock: string, log: string): Promise<number | null> {
  const program = `
    import { appendFileSync } from 'node:fs'
    import { withLock } from '${module}'
    await withLock(${JSON.stringify(lock)}, async () => {
      appendFileSync(${JSON.stringify(log)}, 'in\\n')
      await new Promise((resolve) => setTimeout(resolve, 50))
      appendFileSync(${JSON.stringify(log)}, 'out\\n')
    })`
  const child = spawn(process.execPath, ['--input-type=module', '--eval', program], { stdio: 'ignore' })
  return new Promise((resolve) => child.once('exit', resolve))
}

test('of five starts at once each works alone, and the lock is gone afterwards', async () => {
  const [lock, log] = [join(folder, 'lock'), join(folder, 'log')]
  expect(await Promise.all(Array.from({ length: 5 }, () => worker(lock, log)))).toEqual([0, 0, 0, 0, 0])
  expect(readFileSync(log, 'utf8')).toBe('in\nout\n'.repeat(5))
  expect(existsSync(lock)).toBe(false)
})

test('a lock left by a process that is gone is taken over', async () => {
  const [lock, log] = [join(folder, 'left'), join(folder, 'left.log')]
  const gone = spawn(process.execPath, ['--eval', ''])
  await new Promise((resolve) => gone.once('exit', resolve))
  mkdirSync(lock)
  writeFileSync(join(lock, 'holder'), String(gone.pid))
  expect(await worker(lock, log)).toBe(0)
  expect(readFileSync(log, 'utf8')).toBe('in\nout\n')
})
