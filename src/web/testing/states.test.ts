// What the sheets say and keep when things are not as they should be: absurd readings, addresses of nothing, a shop that is away or has a
// fault, small and turned sheets, two windows, paper.
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { builtApp, device, openChromium, type ShopWithSample, type SIZES, shopWithSample } from './bench.ts'

let app: Awaited<ReturnType<typeof builtApp>>
let browser: Browser
let shop: ShopWithSample
let opened: BrowserContext[] = []

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
})
afterEach(async () => {
  await Promise.all(opened.map((context) => context.close()))
  opened = []
  await shop.close()
})

async function at(size: keyof typeof SIZES, viewport?: { width: number; height: number }): Promise<Page> {
  const context = await device(browser, { size, person: 'M. Ashdown' })
  opened.push(context)
  const page = await context.newPage()
  page.setDefaultTimeout(15_000)
  if (viewport) await page.setViewportSize(viewport)
  return page
}

async function adopted(page: Page): Promise<void> {
  await page.goto(shop.url)
  await page.getByText('Open J41').click()
  await page.getByText('Adopt it').click()
  await page.getByText('Go on: step 1').waitFor()
}

const toStep = async (page: Page, step: string): Promise<void> => {
  await page.goto(`${shop.url}/job/J41/build/${encodeURIComponent(step)}`)
  await page.locator('#main-action').waitFor()
}

const checks = async () =>
  (await shop.journal.read('J41', { after: 0, limit: 10_000 })).entries.flatMap(({ entry }) =>
    entry.kind === 'check-result' ? [entry.body] : [],
  )

test('on a telephone what has to be before the eyes stands above the signature, without scrolling', async () => {
  const page = await at('phone', { width: 360, height: 740 })
  await adopted(page)
  for (const [step, text] of [
    ['cluster bushes', '1562 N'],
    ['jack bearing B', '4596 N'],
    ['warm jack bearing A', '101.6 °C'],
    ['keep plate', 'S1 + S2 = 0.626 mm'],
    ['joint bolts', '25 · 45 · 65 N·m'],
  ] as const) {
    await toStep(page, step)
    const figure = page.getByRole('region', { name: 'Have before you' }).getByText(text)
    const [its, action] = [await figure.boundingBox(), await page.locator('#main-action').boundingBox()]
    expect(its && action && its.y + its.height <= action.y, `${step}: ${text}`).toBe(true)
  }
  await toStep(page, 'cluster bushes')
  await page.getByText('may go over 1562 N').waitFor()
})

test('a reading that can hardly be meant is asked about once, and taken when it is confirmed', async () => {
  const page = await at('laptop')
  await adopted(page)
  await toStep(page, 'jack float')
  const field = page.locator('#reading')
  await field.fill('4.3')
  await field.press('Enter')
  await page.getByText('4.3 mm is 22 times the limit of 0.2 mm. Meant in thou? That is 0.109 mm.').waitFor()
  await page.getByRole('button', { name: 'It is 4.3 thou' }).click()
  expect(await field.inputValue()).toBe('4.3 thou')
  await field.fill('-5')
  await field.press('Enter')
  await page.getByText('−5 mm is less than nothing.').waitFor()
  await page.keyboard.press('Escape')
  await page.getByRole('alertdialog').waitFor({ state: 'detached' })
  expect(await field.inputValue()).toBe('-5')
  expect(await checks()).toEqual([])
  await field.fill('500')
  await field.press('Enter')
  await page.getByText(/500 mm is 2,500 times the limit/).waitFor()
  await page.keyboard.press('y')
  await expect.poll(async () => (await checks()).map(({ result }) => result)).toEqual(['bad'])
})

test('an address at which nothing stands says so and leads back', async () => {
  const page = await at('tablet')
  await page.goto(`${shop.url}/nowhere`)
  await page.getByRole('heading', { name: 'There is no such sheet' }).waitFor()
  await page.getByText('“/nowhere”').waitFor()
  await page.getByRole('link', { name: 'To the jobs' }).click()
  await page.getByText('Open J41').waitFor()
})

test('away from the shop: a job and a book that are not here say so; a book that was opened can be read', async () => {
  const page = await at('phone')
  await page.goto(shop.url)
  await page.getByText('Open J41').waitFor()
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true)
  await page.goto(`${shop.url}/books`)
  expect(await page.title()).toBe('Job books')
  await page.context().setOffline(true)
  await page.goto(`${shop.url}/job/J99/sequence`)
  await page.getByRole('heading', { name: 'Job J99 is not on this device.' }).waitFor()
  await page.getByText('The shop is not reached now.').waitFor()
  await page.goto(`${shop.url}/books`)
  expect(await page.title()).toBe('Job books')
  await page.goto(`${shop.url}/books/J7.html`)
  await page.getByRole('heading', { name: 'The job books are not on this device' }).waitFor()
})

test('a fault of the shop is told in its words; what is signed meanwhile is kept and goes out', async () => {
  const context = await browser.newContext({ serviceWorkers: 'block' })
  opened.push(context)
  await context.addInitScript(() => localStorage.setItem('matchmark person', 'M. Ashdown'))
  const page = await context.newPage()
  await adopted(page)
  await page.getByRole('region', { name: 'Title block' }).getByText('in step', { exact: true }).waitFor()
  const problem = { problem: { code: 'X', says: 'The disk of the shop is full.', next: 'Make room on it.' } }
  await page.route('**/api/**', (route) => route.fulfill({ status: 500, json: problem }))
  await page.getByText('Go on: step 1').click()
  await page.getByText('Sign step 1').click()
  await page.getByText('Sign step 2').waitFor()
  await page.getByRole('region', { name: 'Title block' }).getByText('1 here').click()
  await page.getByText('The disk of the shop is full. Make room on it.').waitFor()
  await page.unroute('**/api/**')
  await page.getByText('Send now').click()
  await page.getByText('Nothing waits to be sent.').waitFor()
})

test('where nothing can be kept it is said before anything is entered', async () => {
  const page = await at('tablet')
  await page.addInitScript(() => {
    indexedDB.open = () => {
      throw new DOMException('denied', 'SecurityError')
    }
  })
  await page.goto(shop.url)
  await page.getByRole('heading', { name: 'Nothing can be kept on this device' }).waitFor()
})

test('two windows on one device: what one signs the other shows, and each step is signed once', async () => {
  const page = await at('tablet')
  await adopted(page)
  const other = await page.context().newPage()
  await Promise.all([toStep(page, 'cluster bushes'), toStep(other, 'cluster bushes')])
  await Promise.all([page, other].map((one) => one.getByText('Sign step 1').waitFor()))
  await page.getByText('Sign step 1').click()
  await other.getByText('Next: step 2').waitFor()
  await toStep(other, 'cluster bushes')
  expect(await other.getByText(/^Signed by M. Ashdown/).count()).toBe(1)
})

const SHEETS = ['/', '/job/J41/sequence', '/job/J41/build/jack%20bearing%20B', '/job/J41/build/jack%20float', '/device']

test.each([
  ['a telephone on its side', { width: 844, height: 390 }],
  ['a laptop at twice its size', { width: 720, height: 450 }],
  ['a telephone at twice its size', { width: 195, height: 422 }],
  ['a tablet held upright', { width: 768, height: 1024 }],
] as const)('on %s nothing lies over anything else, and a glove hits what it aims at', async (_, viewport) => {
  const page = await at('tablet', viewport)
  await adopted(page)
  for (const sheet of SHEETS) {
    await page.goto(shop.url + sheet)
    await page.locator('h1, h2').first().waitFor()
    await page.waitForTimeout(600)
    const found = await page.evaluate(() => {
      const box = (name: string) => document.querySelector(name)?.getBoundingClientRect()
      const action = box('section[aria-label="To be done"]')
      const head = box('main h1, main h2')
      const small = [...document.querySelectorAll<HTMLElement>('button, a, select, summary')]
        .filter((one) => one.offsetParent !== null && !one.closest('[aria-label="Stages of the job"]'))
        .filter((one) => one.tabIndex >= 0 && one.textContent !== 'To what is to be done')
        .filter((one) => one.getBoundingClientRect().height < 48)
        .map((one) => one.textContent)
      return {
        overlaps:
          !!action && !!head && head.bottom > action.top && head.top < action.bottom && head.right > action.left,
        small,
        wider: document.documentElement.scrollWidth - innerWidth,
      }
    })
    expect({ sheet, ...found }).toEqual({ sheet, overlaps: false, small: [], wider: 0 })
  }
})

test('a drawing as large as the sheet: opened, brought nearer and closed by keys, and the focus comes back', async () => {
  const page = await at('laptop')
  await adopted(page)
  // The sheet as it stands, and not while it is made anew for the sequence that was just adopted.
  await page.goto(`${shop.url}/job/J41/sequence`)
  const larger = page.getByRole('button', { name: 'Larger: Line 1' })
  await larger.waitFor()
  await larger.focus()
  await page.keyboard.press('Enter')
  const dialog = page.getByRole('dialog', { name: 'Line 1' })
  const drawing = dialog.locator('svg.d')
  await drawing.waitFor()
  const width = async () => (await drawing.boundingBox())?.width ?? 0
  const was = await width()
  await page.keyboard.press('+')
  await expect.poll(width).toBeGreaterThan(was * 1.3)
  await page.keyboard.press('Escape')
  await dialog.waitFor({ state: 'detached' })
  expect(await larger.evaluate((element) => element === document.activeElement)).toBe(true)
})

test('by keyboard the first stop leads to what is to be done', async () => {
  const page = await at('laptop')
  await adopted(page)
  await page.goto(`${shop.url}/job/J41/sequence`)
  await page.getByText('Go on: step 1').waitFor()
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await expect.poll(() => page.locator(':focus').textContent()).toMatch(/^Go on: step 1/)
})

test('on paper a sheet stands whole: nothing scrolls, no action, the title block at its end', async () => {
  const page = await at('laptop')
  await adopted(page)
  await toStep(page, 'jack bearing B')
  await page.emulateMedia({ media: 'print' })
  const printed = await page.evaluate(() => {
    const style = (name: string) => getComputedStyle(document.querySelector(name) ?? document.body)
    const foot = document.querySelector('footer')?.getBoundingClientRect()
    const last = document.querySelector('aside')?.getBoundingClientRect()
    return {
      overflow: style('main').overflow,
      actions: style('section[aria-label="To be done"]').display,
      isLast: !!foot && !!last && foot.top >= last.bottom - 1,
    }
  })
  expect(printed).toEqual({ overflow: 'visible', actions: 'none', isLast: true })
})
