// The whole browser is killed the moment a photo is said to be kept: photo and entry are on the device's disk, and go out at the next start.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { AtBench, block, isInStep, photos, picture, seenSoon, take } from './atBench.ts'
import { openProfile } from './bench.ts'

const profile = mkdtempSync(join(tmpdir(), 'matchmark-profile-'))
const at = new AtBench()
let context: BrowserContext | undefined
beforeAll(() => at.open())
afterAll(async () => {
  await context?.close().catch(() => undefined)
  await at.close()
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
})

/** The browser of this profile, told by its own command line; those that it starts have a type. */
function pidOfBrowser(): number {
  for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const words = readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0')
      const isOurs = words.some((word) => word === `--user-data-dir=${profile}`)
      if (isOurs && !words.some((word) => word.startsWith('--type='))) return Number(pid)
    } catch {
      // It has ended meanwhile.
    }
  }
  throw new Error('assert: the browser runs')
}

test('killed three times at that moment, nothing that was said to be kept is lost', async () => {
  await at.begin()
  const taken: string[] = []
  context = await openProfile(profile, 'M. Ashdown')
  let page = await at.newPage(context)
  await at.atStep(page, 'cap A')
  for (const colour of ['#884422', '#225577', '#336644']) {
    await context.setOffline(true)
    const photo = await picture(colour)
    await take(page, () => photos(page).getByText('Take a photo').tap(), photo)
    await photos(page).getByText('The photo is kept.').waitFor()
    process.kill(pidOfBrowser(), 'SIGKILL')
    taken.push(photo.hash)
    await context.close().catch(() => undefined)
    context = await openProfile(profile, 'M. Ashdown')
    await context.setOffline(true)
    page = await at.newPage(context)
    await page.goto(at.stepUrl('cap A'))
    await seenSoon(page, taken.length)
    await block(page)
      .getByText(/^\d\shere, \d\sphotos?$/)
      .waitFor()
  }
  await context.setOffline(false)
  await isInStep(page).waitFor()
  await context.close()
  const { photos: all } = await at.state()
  expect(all.map(({ file }) => file)).toEqual(taken)
  for (const hash of taken) expect((await at.shop.files.read(hash))?.type).toBe('image/jpeg')
  await at.end()
})
