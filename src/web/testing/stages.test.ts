// Every stage of a job leads to what stands of it, or says that it has no sheet; in real Chromium, also without a network.
import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import AxeBuilder from 'axe-core'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { newMeasures } from '../../server/app/measures.ts'
import { localWork, threadRunner } from '../../server/work/localWork.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { builtApp, device, openChromium, type ShopWithSample, type SIZES, shopWithSample } from './bench.ts'

let app: Awaited<ReturnType<typeof builtApp>>
let browser: Browser
let shop: ShopWithSample
const complaints: string[] = []

beforeAll(async () => {
  app = await builtApp()
  browser = await openChromium()
  const worker = new URL('../../../dist/worker.js', import.meta.url)
  expect(existsSync(worker), 'dist/worker.js: npm run build').toBe(true)
  shop = await shopWithSample(app.dir, localWork(threadRunner({ worker, measures: newMeasures() })))
  const office = new Writer('office 2', 'J41', 'J. Tarn')
  office.now_ms = Date.now() - 60_000
  const value = { what: 'cluster float', of: 'length' as const, low: 0.0006, high: 0.0006, standing: 'seen' as const }
  await shop.journal.put([
    office.write('finding', { says: 'The howl comes from the worn washer.' }),
    office.write('part-in', { part: 'jack bearing A', pieces: 1, from: 'bearing factor' }),
    office.write('check-result', { check: 'cluster float', result: 'bad', values: [value] }),
    office.write('setting-try', { connection: 'input setting', check: 'input float', tried: 'S1 + S2', result: 'bad' }),
  ])
})
afterAll(async () => {
  await browser?.close()
  await shop?.close()
  app?.remove()
})

/** What each stage has to show of the sample. */
const SHOWS: Readonly<Record<string, readonly string[]>> = {
  'Book in': [
    'Hollinscar Quarry Railway',
    '1187',
    'late',
    'Jumps out of reverse under load',
    'bore gauge 60-100',
    '0.528 mm',
  ],
  Strip: ['in the V blocks', 'had to be pulled', 'where it lies is not known'],
  Inspect: ['The howl comes from the worn washer.', 'groove', '10.72 mm', 'out', 'Still unmeasured'],
  Decide: ['Renew (', 'worn hollow'],
  Kit: ['Rejected (', 'jack bearing A', '1 came in: J. Tarn', '£19', 'gear oil'],
  Set: ['Tries: input setting', 'S1 + S2', 'hot fit: jack bearing A and jackshaft', 'pack wanted', 'Source'],
  Prove: ['cluster float', '0.6 mm', 'Not good', 'limit 0.05 to 0.10 mm', 'not made yet', 'air test'],
  'Hand over': ['0 of 11 checks good', 'matchmark export J41 -o J41.sealed', 'Job books', 'It has no sheet yet.'],
}

async function walk(page: Page, stage: string): Promise<string> {
  const line = page.getByRole('navigation', { name: 'Stages of the job' })
  const link = line.getByRole('link', { name: new RegExp(`^${stage},`) })
  // On a telephone only the neighbours are shown: the address leads there as well.
  if (await link.isVisible()) await link.click()
  else await page.goto(`${shop.url}/job/J41/${stage.toLowerCase().replaceAll(' ', '-')}`)
  await line.locator('[aria-current="step"]').getByText(stage, { exact: true }).waitFor()
  await page.locator('main h1').waitFor()
  await page.getByText('This sheet shows what stands').waitFor()
  return (await page.locator('main').textContent()) ?? ''
}

async function seriousFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(AxeBuilder.source)
  return page.evaluate(async () => {
    type Found = { violations: { id: string; impact: string; nodes: { html: string }[] }[] }
    const { axe } = window as unknown as { axe: { run: () => Promise<Found> } }
    const { violations } = await axe.run()
    return violations
      .filter(({ impact }) => impact === 'serious' || impact === 'critical')
      .map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
  })
}

test.each([
  ['tablet', 'light'],
  ['phone', 'dark'],
] as const)(
  'every stage on a %s, %s: what stands of it, nothing serious for axe, and without a network',
  async (size: keyof typeof SIZES, scheme) => {
    const context = await device(browser, { size, person: 'M. Ashdown', scheme })
    const page = await context.newPage()
    page.setDefaultTimeout(20_000)
    page.on('pageerror', ({ message }) => complaints.push(message))
    await page.goto(`${shop.url}/job/J41/sequence`)
    await page.getByText('Adopt it').waitFor()
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
    for (const [stage, texts] of Object.entries(SHOWS)) {
      const shown = await walk(page, stage)
      for (const text of texts) expect(shown, `${stage}: ${text}`).toContain(text)
      expect(await seriousFaults(page), stage).toEqual([])
      const tooWide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)
      expect(tooWide, `${stage} is wider than the sheet`).toBe(false)
    }
    const line = page.getByRole('navigation', { name: 'Stages of the job' })
    expect(await line.getByText('Teach').count()).toBe(1)
    expect(await line.getByRole('link', { name: /Teach/ }).count()).toBe(0)
    expect(await line.textContent()).toContain('Teach, no sheet yet')

    await context.setOffline(true)
    await page.goto(`${shop.url}/job/J41/kit`)
    await page.getByText('Rejected (').waitFor()
    await context.close()
    expect(complaints).toEqual([])
  },
)

test('the job book is made by the shop from the record and kept on the device; without a network that is said', async () => {
  const context = await device(browser, { size: 'laptop', person: 'M. Ashdown' })
  const page = await context.newPage()
  page.setDefaultTimeout(30_000)
  await page.goto(`${shop.url}/job/J41/hand-over`)
  const coming = page.waitForEvent('download')
  await page.getByText('Make the job book from the record').click()
  const book = await coming
  expect(book.suggestedFilename()).toBe('job book J41.html')
  const html = await readFile(await book.path(), 'utf8')
  expect(html).toContain('As checked, set and tightened')
  expect(html).toContain('S1 + S2')
  await page.getByText('Made: job book J41.html').waitFor()
  await context.setOffline(true)
  await page.getByText('Make the job book from the record').click()
  await page.getByText('the shop is not reached now').waitFor()
  await context.close()
})
