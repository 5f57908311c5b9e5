// Threads that do not come to an end by themselves.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, expect, test } from 'vitest'
import { newMeasures } from '../app/measures.ts'
import { localWork, MOST_WAITING, threadRunner } from './localWork.ts'
import type { Work } from './work.ts'

const home = mkdtempSync(join(tmpdir(), 'matchmark-work-'))
afterAll(() => rmSync(home, { recursive: true }))
const file = join(home, 'worker.mjs')
// For ever, unless the job is called otherwise.
writeFileSync(
  file,
  `export default ({ input: { job }, port }) => {
  port.postMessage({ at: job })
  while (job === 'endless');
  port.close()
  return job
}`,
)
const open = () => localWork(threadRunner({ worker: pathToFileURL(file), measures: newMeasures(), grace_s: 0.3 }))

async function ended(work: Work, id: string) {
  for (;;) {
    const status = await work.status(id)
    if (status?.state !== 'waiting' && status?.state !== 'running') return status
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
}
const input = (job: string, seconds = 600) => ({ job, unit: '', entries: '[]', seconds })

test('work that does not end in its time is ended, told so, and the next one is done', async () => {
  const work = open()
  const endless = await work.start('plan', input('endless', 0.2))
  const after = await work.start('plan', input('short'))
  expect(await ended(work, endless)).toEqual({ state: 'failed', says: 'It was not done within 0.2 s.' })
  expect(await ended(work, after)).toEqual({ state: 'done', result: 'short' })
  await work.close()
}, 20_000)

test('work that waits its turn has its whole time when it comes, and goes at once when it is not wanted any more', async () => {
  const work = open()
  const first = await work.start('plan', input('endless', 0.6))
  const [patient, unwanted, last] = [
    await work.start('plan', input('short', 0.1)),
    await work.start('plan', input('short')),
    await work.start('plan', input('short')),
  ]
  expect(await work.stop(unwanted)).toBe(true)
  expect(await ended(work, unwanted)).toEqual({ state: 'stopped' })
  expect((await work.status(first))?.state).not.toBe('failed')
  await ended(work, first)
  expect(await ended(work, patient)).toEqual({ state: 'done', result: 'short' })
  expect(await ended(work, last)).toEqual({ state: 'done', result: 'short' })
  await work.close()
}, 20_000)

test('work that runs for ever is stopped when it is asked to, and a server that closes does not wait for it', async () => {
  const work = open()
  const endless = await work.start('plan', input('endless'))
  while ((await work.status(endless))?.state !== 'running') await new Promise((resolve) => setTimeout(resolve, 10))
  expect(await work.stop(endless)).toBe(true)
  expect(await ended(work, endless)).toEqual({ state: 'stopped' })
  await work.start('plan', input('endless'))
  const began = performance.now()
  await work.close()
  expect(performance.now() - began).toBeLessThan(3_000)
}, 20_000)

test('so much work waits and no more: whoever asks for plans without end does not fill the memory', async () => {
  const work = open()
  const started = []
  for (let count = 0; count < MOST_WAITING; count++) started.push(await work.start('plan', input('endless')))
  await expect(work.start('plan', input('short'))).rejects.toMatchObject({ code: 'TOO_MANY_ASKED' })
  for (const id of started) await work.stop(id)
  for (const id of started) expect(await ended(work, id)).toEqual({ state: 'stopped' })
  expect(await ended(work, await work.start('plan', input('short')))).toEqual({ state: 'done', result: 'short' })
  await work.close()
}, 20_000)
