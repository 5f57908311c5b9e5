// Photos in real Chromium against the real server: taken without a network, kept over a killed page, sent, seen by others, taken back.
import { createHash } from 'node:crypto'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { verifyJob } from '../../journal/archive/jobArchive.ts'
import { exportJob } from '../../server/keep/exportJob.ts'
import { memoryVault } from '../../stores/vault/memoryVault.ts'
import { AtBench, block, isInStep, main, photos, picture, seen, seenSoon, take, tapMain } from './atBench.ts'
import { looksWell } from './looksWell.ts'

const at = new AtBench()
beforeAll(() => at.open())
afterAll(() => at.close())
beforeEach(() => at.begin())
afterEach(() => at.end())

const CLOSING = 'sealant joint'

test('a tablet without a network: taken, seen at once, kept over a reload and a killed page, and at the shop with its small picture when it is back', async () => {
  const page = await at.page({ size: 'tablet', person: 'M. Ashdown' })
  await at.atStep(page, CLOSING)
  const photo = await picture()
  const context = page.context()
  await context.setOffline(true)
  await photos(page).getByText('A photo is wanted: the open case from above').waitFor()
  await take(page, () => tapMain(page), photo)
  await photos(page).getByText('The photo is kept.').waitFor()
  await seenSoon(page, 1)
  // What was wanted is there: the step itself is the thing to do.
  await main(page).getByText('Begin this step').waitFor()
  expect(await page.getByText('A photo is wanted').count()).toBe(0)
  await block(page).getByText('1 here, 1 photo').waitFor()
  await page.reload()
  await seenSoon(page, 1)

  // The page is killed as by a tablet that runs out of memory.
  const second = await picture('#225577')
  await take(page, () => photos(page).getByText('Take a photo').tap(), second)
  await seenSoon(page, 2)
  const cdp = await context.newCDPSession(page)
  const crashed = page.waitForEvent('crash')
  void cdp.send('Page.crash').catch(() => undefined)
  await crashed
  await page.close()
  const anew = await at.newPage(context)
  await anew.goto(at.stepUrl(CLOSING))
  await seenSoon(anew, 2)
  await block(anew).getByText('2 here, 2 photos').waitFor()
  expect(await at.shop.files.list()).toHaveLength(1)

  await context.setOffline(false)
  await isInStep(anew).waitFor()
  for (const { hash } of [photo, second]) {
    const whole = await at.shop.files.read(hash)
    expect(
      createHash('sha256')
        .update(whole?.bytes ?? '')
        .digest('hex'),
    ).toBe(hash)
    expect((await at.shop.files.small(hash))?.type).toBe('image/jpeg')
  }
  // What leaves the shop as a sealed file has them too.
  const sealed = await exportJob({ ...at.shop, vault: memoryVault() }, 'J41', Date.now())
  expect(sealed.missing).toEqual([])
  const { faults, files } = verifyJob(sealed.bytes)
  expect(faults).toEqual([])
  expect(files.map(({ sha256 }) => sha256)).toEqual(expect.arrayContaining([photo.hash, second.hash]))
  const { photos: all } = await at.state()
  expect(all.map(({ file, type, size, about, person }) => [file, type, size, about?.step, person])).toEqual([
    [photo.hash, 'image/jpeg', photo.buffer.length, CLOSING, 'M. Ashdown'],
    [second.hash, 'image/jpeg', second.buffer.length, CLOSING, 'M. Ashdown'],
  ])
})

test('another browser sees it small and large, small without the network too; taken back it is wanted again', async () => {
  const tablet = await at.page({ size: 'tablet', person: 'M. Ashdown' })
  await at.atStep(tablet, CLOSING)
  const photo = await picture()
  await take(tablet, () => tapMain(tablet), photo)
  await isInStep(tablet).waitFor()

  const laptop = await at.page({ size: 'laptop', person: 'J. Tarn' })
  await at.atStep(laptop, CLOSING)
  await seenSoon(laptop, 1)
  const large = laptop.getByRole('dialog')
  await laptop.context().setOffline(true)
  await laptop.reload()
  await seenSoon(laptop, 1)
  await photos(laptop)
    .getByRole('button', { name: /open it large/ })
    .click()
  await large.getByText('Only the small picture is here').waitFor()
  await laptop.keyboard.press('Escape')
  await large.waitFor({ state: 'detached' })
  await laptop.context().setOffline(false)
  await isInStep(laptop).waitFor()

  await photos(laptop)
    .getByRole('button', { name: /open it large/ })
    .click()
  // Turned as it was held: 1600 by 1200, its own words say a quarter turn.
  await expect
    .poll(() =>
      large
        .locator('img')
        .evaluate((image) => [(image as HTMLImageElement).naturalWidth, (image as HTMLImageElement).naturalHeight]),
    )
    .toEqual([1200, 1600])
  await large.getByText('Close').click()
  await large.waitFor({ state: 'detached' })

  await photos(tablet).getByText('Take back').tap()
  await tablet.getByText(/a photo: taken back by M\. Ashdown/).waitFor()
  await photos(tablet).getByText('A photo is wanted').waitFor()
  await photos(laptop).getByText('A photo is wanted').waitFor()
  const state = await at.state()
  expect(state.photos).toEqual([])
  expect(state.happened.filter(({ kind }) => kind === 'photo')).toHaveLength(1)
})

test('signed without the photo that is wanted: not refused, and it stays to be looked at until there is one', async () => {
  const page = await at.page({ size: 'phone', person: 'J. Tarn' })
  await at.atStep(page, 'top cover')
  await main(page).getByText('Take a photo').waitFor()
  await page.getByText('Go on without it').tap()
  await tapMain(page)
  await expect.poll(async () => (await at.state()).steps.get('top cover')?.stands).toBe('done')
  await page.goto(at.stepUrl('top cover'))
  await photos(page).getByText('A photo is wanted: the inside, before top is shut.').waitFor()
  await block(page).getByText('1 look').waitFor()
  await take(page, () => photos(page).getByText('Take a photo').tap(), await picture())
  await block(page).getByText('none', { exact: true }).waitFor()
})

test('what is no picture, or too large, is refused in the shop’s own words, and a full device says so; nothing is kept', async () => {
  const page = await at.page({ size: 'tablet', person: 'M. Ashdown' })
  await at.atStep(page, CLOSING)
  const ask = () => main(page).click()
  await take(page, ask, { name: 'photo.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture at all') })
  await page.getByRole('alert').getByText('what is kept is a JPEG, PNG or WebP picture').waitFor()
  const bytes = (await picture()).buffer
  await take(page, ask, {
    name: 'photo.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.concat([bytes, Buffer.alloc(25 * 2 ** 20)]),
  })
  await page.getByRole('alert').getByText('at most 26214400 are kept').waitFor()
  await take(page, ask, { name: 'photo.jpg', mimeType: 'image/jpeg', buffer: bytes.subarray(0, 40) })
  await page.getByRole('alert').getByText('The picture cannot be opened').waitFor()
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      if (this.name === 'files') throw new DOMException('no room', 'QuotaExceededError')
      return put.apply(this, given)
    }
  })
  await take(page, ask, await picture())
  await page.getByRole('alert').getByText('The record (this device) cannot grow: no room').waitFor()
  expect(await seen(page)).toBe(0)
  await isInStep(page).waitFor()
  expect((await at.state()).photos).toEqual([])
})

test('by keyboard alone: taken, opened large, closed, taken back', async () => {
  const page = await at.page({ size: 'laptop', person: 'J. Tarn' })
  await at.atStep(page, 'cap A')
  await take(page, () => page.keyboard.press('c'), await picture())
  await seenSoon(page, 1)
  const focused = page.locator(':focus')
  const tabTo = async (name: RegExp) => {
    for (let press = 0; press < 120; press += 1) {
      await page.keyboard.press('Tab')
      const text = `${await focused.getAttribute('aria-label').catch(() => '')} ${await focused.textContent().catch(() => '')}`
      if (name.test(text)) return
    }
    throw new Error(`Tab never came to ${name}`)
  }
  await page.getByRole('heading', { level: 1 }).focus()
  await tabTo(/open it large/)
  await page.keyboard.press('Enter')
  const large = page.getByRole('dialog')
  await large.waitFor()
  // The keys of the sheet are still while it is open.
  await page.keyboard.press('n')
  expect(page.url()).toBe(at.stepUrl('cap A'))
  await page.keyboard.press('Escape')
  await large.waitFor({ state: 'detached' })
  await tabTo(/^ ?(null)? ?Take back/)
  await page.keyboard.press('Enter')
  await page.getByText(/a photo: taken back by J\. Tarn/).waitFor()
})

test.each([
  ['tablet', 'light'],
  ['phone', 'dark'],
] as const)('axe finds nothing serious in photos on a %s in the %s', async (size, scheme) => {
  const page = await at.page({ size, person: 'M. Ashdown', scheme })
  await at.atStep(page, CLOSING)
  await looksWell(page)
  await take(page, () => tapMain(page), await picture())
  await seenSoon(page, 1)
  const target = await photos(page).getByText('Take a photo').locator('xpath=ancestor-or-self::button').boundingBox()
  expect(Math.min(target?.width ?? 0, target?.height ?? 0)).toBeGreaterThanOrEqual(48)
  await looksWell(page)
  await photos(page)
    .getByRole('button', { name: /open it large/ })
    .tap()
  await page.getByRole('dialog').locator('img').waitFor()
  await looksWell(page)
})
