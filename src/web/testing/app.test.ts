// The app in real Chromium against the real server: the sample job built at the sizes of a shop's devices.
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import type { Entry } from '../../journal/entry.ts'
import type { Journal } from '../../journal/journal.ts'
import { fold } from '../../record/fold.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { builtApp, device, openChromium, type ShopWithSample, type SIZES, shopWithSample } from './bench.ts'
import { looksWell } from './looksWell.ts'

let app: Awaited<ReturnType<typeof builtApp>>
let browser: Browser
let shop: ShopWithSample
let opened: BrowserContext[] = []
const complaints: string[] = []

beforeAll(async () => {
  app = await builtApp()
  browser = await openChromium()
})
afterAll(async () => {
  await browser?.close()
  app?.remove()
})
beforeEach(async () => {
  shop = await shopWithSample(app.dir)
  complaints.length = 0
})
afterEach(async () => {
  await Promise.all(opened.map((context) => context.close()))
  opened = []
  await shop.close()
  expect(complaints).toEqual([])
})

async function at(size: keyof typeof SIZES, person: string, scheme: 'light' | 'dark' = 'light'): Promise<Page> {
  const context = await device(browser, { size, person, scheme })
  opened.push(context)
  const page = await context.newPage()
  page.setDefaultTimeout(15_000)
  page.on('pageerror', ({ message }) => complaints.push(message))
  page.on('console', (message) => {
    const isNetwork = /ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_NETWORK/.test(message.text())
    if (message.type() === 'error' && !isNetwork) complaints.push(message.text())
  })
  return page
}

async function state(journal: Journal) {
  const entries: Entry[] = []
  let after = 0
  for (;;) {
    const part = await journal.read('J41', { after })
    if (part.entries.length === 0) break
    entries.push(...part.entries.map(({ entry }) => entry))
    after = part.position
  }
  return fold('J41', entries).state
}

const says = async (what: Locator): Promise<string> => (await what.textContent()) ?? ''
const main = (page: Page) => page.locator('#main-action button, #main-action a').first()
const count = async (page: Page) =>
  Number(((await says(page.locator('h1').locator('xpath=..'))).match(/Step (\d+)/) ?? [])[1])

/** Good readings, as people say them. */
const READINGS: Readonly<Record<string, string>> = {
  'cluster float': '0.3',
  'wheel float': '10 thou',
  'jack float': '0.11',
  'input float': '3 thou',
  'forward backlash': '0.2',
  'reverse backlash': '1/64 in+1 thou',
  'chain slack': '3/8 in',
}

interface Hand {
  tap(what: string): Promise<void>
  main(): Promise<void>
  type(text: string): Promise<void>
  yes(): Promise<void>
  allTight(): Promise<void>
  without(): Promise<void>
}

const finger = (page: Page): Hand => ({
  tap: (what) => page.getByText(what, { exact: true }).tap(),
  async main() {
    // Nobody taps what has stood there for less than a fifth of a second.
    await page.waitForTimeout(200)
    await main(page).tap({ force: true })
  },
  async type(text) {
    for (const [key] of text.matchAll(/(?<= ?)(thou|in|mm)|[^ ]/g)) {
      const name = { '/': 'over', '+': 'plus', '-': 'minus', '.': 'point', ' ': 'blank' }[key] ?? key
      await page.getByRole('group', { name: 'Keypad' }).getByRole('button', { name, exact: true }).tap()
    }
  },
  yes: () => page.getByText(/^Y: (sign|begin) it/).tap(),
  allTight: () => page.getByText('All are tight').tap(),
  without: () => page.getByText('Go on without it').tap(),
})

const keys = (page: Page): Hand => ({
  tap: async () => {
    throw new Error('assert: no finger here')
  },
  main: () => page.keyboard.press('s'),
  async type(text) {
    // Out of a field that has the focus already, into it by its own key, and what stands in it is written over.
    await page.keyboard.press('Escape')
    await page.keyboard.press('r')
    await page.keyboard.press('Control+a')
    await page.keyboard.type(text)
    await page.keyboard.press('Escape')
  },
  yes: () => page.keyboard.press('y'),
  allTight: () => page.keyboard.press('a'),
  without: () => page.keyboard.press('g'),
})

/** Does the step at hand, whatever it wants. */
async function doStep(page: Page, hand: Hand): Promise<void> {
  const url = page.url()
  for (let act = 0; act < 5; act += 1) {
    const text = await says(main(page))
    if (/All steps are signed/.test(text)) return
    if (await page.getByRole('alertdialog').isVisible()) await hand.yes()
    else if (text.startsWith('Take a photo')) await hand.without()
    else if (text.startsWith('Type the reading')) {
      const step = decodeURIComponent(url.split('/').at(-1) ?? '')
      await hand.type(READINGS[step] ?? '')
    } else if (/^Bolt/.test(text) && !/cap A nuts/.test(decodeURIComponent(url))) {
      await hand.allTight()
    } else {
      await hand.main()
      const isAsked = await page
        .getByRole('alertdialog')
        .isVisible()
        .catch(() => false)
      if (isAsked) await hand.yes()
    }
    try {
      await page.waitForFunction(
        ([was, said]) =>
          location.href !== was || document.querySelector('#main-action button, #main-action a')?.textContent !== said,
        [url, text] as const,
        { timeout: 700 },
      )
    } catch {
      // A question may have come a moment later.
      if (await page.getByRole('alertdialog').isVisible()) await hand.yes()
    }
    if (page.url() !== url) return
    if (/All steps are signed/.test(await says(main(page)))) return
  }
  throw new Error(
    `step was not signed: ${url}: ${await says(main(page))}; typed: ${await page.evaluate(() => document.querySelector('input')?.value)}; ${await says(page.locator('#reading-echo'))}`,
  )
}

async function open(page: Page): Promise<void> {
  await page.goto(shop.url)
  await page.getByText('Open J41').click()
}

async function adopt(page: Page): Promise<void> {
  await page.getByText('Adopt it').click()
  await page.getByText('Go on: step 1').click()
  await page.getByText('Sign step 1').waitFor()
}

const isInStep = (page: Page) => page.getByRole('region', { name: 'Title block' }).getByText('in step', { exact: true })

test('a tablet by touch: built with the network cut half way until the end, then back, while a second browser signs other steps', async () => {
  const tablet = await at('tablet', 'M. Ashdown')
  await open(tablet)
  await adopt(tablet)
  const hand = finger(tablet)
  while ((await count(tablet)) < 40) await doStep(tablet, hand)
  await isInStep(tablet).waitFor()

  const laptop = await at('laptop', 'J. Tarn')
  await laptop.goto(`${shop.url}/job/J41/build/${encodeURIComponent('bend the output tab')}`)
  await main(laptop).waitFor()

  await tablet.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  const cutAt = await count(tablet)
  await tablet.context().setOffline(true)
  await tablet.reload()
  await main(tablet).waitFor()
  expect(await count(tablet)).toBe(cutAt)

  // The other one works meanwhile: three steps of his own and one that both will sign.
  const other = keys(laptop)
  for (const step of ['bend the output tab', 'drain plug', 'bend the jack tab', 'dipstick']) {
    await laptop.goto(`${shop.url}/job/J41/build/${encodeURIComponent(step)}`)
    await main(laptop).waitFor()
    await doStep(laptop, other)
  }
  await isInStep(laptop).waitFor()

  for (;;) {
    await doStep(tablet, hand)
    if (/All steps are signed/.test(await says(main(tablet)))) break
  }
  const here = await says(tablet.getByRole('region', { name: 'Title block' }).getByText(/^\d+ here$/))
  expect(Number(here.split(' ')[0])).toBeGreaterThanOrEqual(40)
  const before = await state(shop.journal)
  expect(before.steps.get('oil')).toBeUndefined()

  await tablet.context().setOffline(false)
  await isInStep(tablet).waitFor()
  const after = await state(shop.journal)
  const ids = after.sequence?.steps.map(({ step }) => step) ?? []
  expect(ids).toHaveLength(80)
  expect(ids.filter((id) => after.steps.get(id)?.stands !== 'done')).toEqual([])
  expect(new Set(after.steps.get('drain plug')?.done.map(({ person }) => person))).toEqual(
    new Set(['M. Ashdown', 'J. Tarn']),
  )
  expect(
    after.looks
      .filter(({ what }) => what === 'signed twice')
      .map(({ about }) => about)
      .sort(),
  ).toContain('drain plug')

  // The other browser has it all too, and shows what both signed.
  await laptop.goto(`${shop.url}/job/J41/build/${encodeURIComponent('drain plug')}`)
  await laptop.getByText('Two people signed this step').waitFor()
})

test('a telephone by keyboard alone: every step signed', async () => {
  const phone = await at('phone', 'J. Tarn')
  await phone.goto(shop.url)
  await phone.getByText('Open J41').waitFor()
  // Nothing but Tab and Enter to get there.
  await tabTo(phone, /Open J41/)
  await phone.keyboard.press('Enter')
  await phone.getByText('Adopt it').waitFor()
  await tabTo(phone, /Adopt it/)
  await phone.keyboard.press('Enter')
  await phone.getByText('Go on: step 1').waitFor()
  await tabTo(phone, /Go on: step 1/)
  await phone.keyboard.press('Enter')
  await phone.getByText('Sign step 1').waitFor()
  const hand = keys(phone)
  // Steps that wait for a second person stay on the sheet: one act more each.
  for (let act = 0; act < 90 && !/All steps are signed/.test(await says(main(phone))); act += 1)
    await doStep(phone, hand)
  expect(await says(main(phone))).toMatch(/All steps are signed/)
  await isInStep(phone).waitFor()
  const { steps, sequence } = await state(shop.journal)
  expect(sequence?.steps.filter(({ step }) => steps.get(step)?.stands !== 'done')).toEqual([])
})

/** Tab until what has the focus says so, and is seen to have it. */
async function tabTo(page: Page, text: RegExp): Promise<void> {
  for (let press = 0; press < 120; press += 1) {
    await page.keyboard.press('Tab')
    const focused = page.locator(':focus')
    if ((await focused.count()) > 0 && text.test(await says(focused))) {
      expect(await focused.evaluate((element) => getComputedStyle(element).outlineWidth)).toBe('3px')
      return
    }
  }
  throw new Error(`Tab never came to ${text}`)
}

test('a reading: echoed in both systems, judged while it is typed, kept over a reload, a second one beside it, a slip taken back', async () => {
  const page = await at('laptop', 'M. Ashdown')
  await open(page)
  await page.getByText('Adopt it').click()
  await page.getByText('Go on: step 1').waitFor()
  await page.goto(`${shop.url}/job/J41/build/${encodeURIComponent('jack float')}`)
  const field = page.locator('#reading')
  await field.fill('.0043 in')
  await expect.poll(() => page.locator('#reading-echo').textContent()).toMatch(/0\.109 mm\s*4\.3 thou\s*within/)
  await field.fill('9 thou')
  await expect.poll(() => page.locator('#reading-echo').textContent()).toMatch(/out\s*over by 0\.029 mm/)
  await field.fill('12 bananas')
  await expect.poll(() => page.locator('#reading-echo').textContent()).toMatch(/bananas/)
  await field.fill('9 thou')
  await page.reload()
  await expect.poll(() => field.inputValue()).toBe('9 thou')
  await page.keyboard.press('s')
  await page.getByText('Sign it as it is').waitFor()
  await field.fill('0.11')
  await field.press('Enter')
  await page.getByText('Take back').first().waitFor({ state: 'detached' })
  await page.goto(`${shop.url}/job/J41/build/${encodeURIComponent('jack float')}`)
  await page.getByRole('region', { name: 'Readings' }).getByRole('listitem').filter({ hasText: '0.11 mm' }).waitFor()
  const { checks } = await state(shop.journal)
  expect(checks.map(({ result }) => result)).toEqual(['bad', 'good'])
  await page.getByRole('region', { name: 'Readings' }).getByText('Take back').first().click()
  await page.getByText(/0\.229 mm: taken back by M\. Ashdown/).waitFor()
  await expect.poll(async () => (await state(shop.journal)).checks.map(({ result }) => result)).toEqual(['good'])
})

test('the sequence changed under somebody’s feet is shown', async () => {
  const page = await at('tablet', 'M. Ashdown')
  await open(page)
  await adopt(page)
  await isInStep(page).waitFor()
  const { sequence } = await state(shop.journal)
  const steps = [...(sequence?.steps ?? [])]
  const [first, second] = steps
  if (!first || !second || !sequence) throw new Error('assert: a sequence was adopted')
  const office = new Writer('another office', 'J41', 'J. Tarn')
  office.now_ms = Date.now()
  await shop.journal.put([
    office.write('sequence-adopted', { steps: [second, first, ...steps.slice(2)], from: sequence.entry }),
  ])
  await page.getByText('The sequence was changed by J. Tarn').waitFor()
  await page.getByText('This step was number 1; now it is number 2.').waitFor()
  await page.getByText('I have seen it').tap()
  await page.getByText('The sequence was changed by').waitFor({ state: 'detached' })
})

test('worked out anew from what stands: the rest is planned, and whoever has adopted it is not told that it changed', async () => {
  const page = await at('laptop', 'M. Ashdown')
  await open(page)
  await adopt(page)
  const hand = keys(page)
  while ((await count(page)) < 3) await doStep(page, hand)
  await page.getByRole('link', { name: /^Sequence/ }).click()
  await page.getByText('Work out anew').click()
  await page.getByText('Worked out anew; not adopted yet').waitFor()
  await page.getByText('Adopt it').click()
  await page.getByText('Go on: step 1').click()
  await page.getByText('Step 1 of').waitFor()
  expect(await page.getByText('The sequence was changed').count()).toBe(0)
  await expect.poll(async () => (await state(shop.journal)).sequences.length).toBe(2)
  const { sequence, looks, steps } = await state(shop.journal)
  expect((sequence?.steps.length ?? 0) + steps.size).toBe(80)
  expect(looks).toEqual([])
})

test('what the device cannot keep is told, and nothing goes on', async () => {
  const page = await at('tablet', 'M. Ashdown')
  await open(page)
  await adopt(page)
  await page.evaluate(() => {
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('no room', 'QuotaExceededError')
    }
  })
  await finger(page).main()
  await page.getByRole('alert').getByText('It could not be kept').waitFor()
  expect(await count(page)).toBe(1)
  expect((await state(shop.journal)).steps.size).toBe(0)
})

test.each([
  ['tablet', 'light'],
  ['phone', 'dark'],
] as const)('axe finds nothing serious on a %s in the %s', async (size, scheme) => {
  const page = await at(size, 'M. Ashdown', scheme)
  await page.goto(shop.url)
  await page.getByText('Open J41').waitFor()
  await looksWell(page)
  await page.getByText('Open J41').tap()
  await page.getByText('Adopt it').waitFor()
  await looksWell(page)
  await adopt(page)
  await page.locator('figure svg').first().waitFor()
  await looksWell(page)
  await page.goto(`${shop.url}/job/J41/build/${encodeURIComponent('jack float')}`)
  await page.getByText('Type the reading first').waitFor()
  await page.locator('figure svg').first().waitFor()
  await looksWell(page)
  await page.goto(`${shop.url}/device`)
  await page.getByText('At the bench: M. Ashdown').waitFor()
  await looksWell(page)
})
