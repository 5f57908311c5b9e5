// What tests of the app share: a shop, devices in it, the sample job with its sequence adopted, a picture.
import { createHash } from 'node:crypto'
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core'
import sharp from 'sharp'
import { expect } from 'vitest'
import type { Entry } from '../../journal/entry.ts'
import { fold } from '../../record/fold.ts'
import { builtApp, type Device, device, openChromium, type ShopWithSample, shopWithSample } from './bench.ts'

export class AtBench {
  app!: Awaited<ReturnType<typeof builtApp>>
  browser!: Browser
  shop!: ShopWithSample
  #opened: BrowserContext[] = []
  readonly #complaints: string[] = []

  async open(): Promise<void> {
    this.app = await builtApp()
    this.browser = await openChromium()
  }

  async close(): Promise<void> {
    await this.browser?.close()
    this.app?.remove()
  }

  async begin(): Promise<void> {
    this.shop = await shopWithSample(this.app.dir)
    this.#complaints.length = 0
  }

  async end(): Promise<void> {
    await Promise.all(this.#opened.map((context) => context.close()))
    this.#opened = []
    await this.shop.close()
    expect(this.#complaints).toEqual([])
  }

  async page(what: Device): Promise<Page> {
    const context = await device(this.browser, what)
    this.#opened.push(context)
    return this.newPage(context)
  }

  async newPage(context: BrowserContext): Promise<Page> {
    const page = await context.newPage()
    page.setDefaultTimeout(15_000)
    // Cameras are answered from the first one on, however fast it is opened.
    page.on('filechooser', () => undefined)
    page.on('pageerror', ({ message }) => this.#complaints.push(message))
    page.on('console', (message) => {
      const isNetwork = /ERR_INTERNET_DISCONNECTED|Failed to load resource|ERR_NETWORK/.test(message.text())
      if (message.type() === 'error' && !isNetwork) this.#complaints.push(message.text())
    })
    return page
  }

  stepUrl = (step: string): string => `${this.shop.url}/job/J41/build/${encodeURIComponent(step)}`

  /** The sequence adopted, and the sheet of a step before this device; the app is kept on it. */
  async atStep(page: Page, step: string): Promise<void> {
    await page.goto(this.shop.url)
    const job = page.getByText('Open J41')
    await job.or(page.getByText('Go on: J41')).first().waitFor()
    if (await job.isVisible()) {
      await job.click()
      await page.getByText('Adopt it').click()
      await page.getByText('Go on: step 1').waitFor()
    }
    await page.goto(this.stepUrl(step))
    await main(page).waitFor()
    await isInStep(page).waitFor()
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  }

  /** What the shop has of the job. */
  async entries(): Promise<readonly Entry[]> {
    const entries: Entry[] = []
    for (let after = 0; ; ) {
      const part = await this.shop.journal.read('J41', { after })
      if (part.entries.length === 0) return entries
      entries.push(...part.entries.map(({ entry }) => entry))
      after = part.position
    }
  }

  state = async () => fold('J41', await this.entries()).state
}

export const main = (page: Page): Locator => page.locator('#main-action button, #main-action a').first()
export const block = (page: Page): Locator => page.getByRole('region', { name: 'Title block' })
export const isInStep = (page: Page): Locator => block(page).getByText('in step', { exact: true })

/** A tap; nobody taps what has stood there for less than a fifth of a second. */
export async function tapMain(page: Page): Promise<void> {
  await page.waitForTimeout(250)
  await main(page).click()
}

export interface TestPicture {
  readonly name: string
  readonly mimeType: string
  readonly buffer: Buffer
  readonly hash: string
}

/** A photo as a bench camera takes it: large, and turned by what is written beside it. */
export async function picture(colour = '#884422'): Promise<TestPicture> {
  const buffer = await sharp({ create: { width: 1600, height: 1200, channels: 3, background: colour } })
    .composite([
      {
        input: Buffer.from(
          '<svg width="1600" height="1200"><circle cx="800" cy="600" r="380" fill="#c9ccd0"/><circle cx="800" cy="600" r="150" fill="#30353a"/></svg>',
        ),
      },
    ])
    .withMetadata({ orientation: 6 })
    .jpeg({ quality: 92 })
    .toBuffer()
  return { name: 'photo.jpg', mimeType: 'image/jpeg', buffer, hash: createHash('sha256').update(buffer).digest('hex') }
}

/** Answers the camera that `ask` opens. */
export async function take(page: Page, ask: () => Promise<void>, file: Omit<TestPicture, 'hash'>): Promise<void> {
  const [camera] = await Promise.all([page.waitForEvent('filechooser'), ask()])
  await camera.setFiles({ name: file.name, mimeType: file.mimeType, buffer: file.buffer })
}

export const photos = (page: Page): Locator => page.getByRole('region', { name: 'Photos' })

/** The small pictures that are seen, not only there. */
export const seen = (page: Page): Promise<number> =>
  photos(page)
    .locator('img')
    .evaluateAll((all) => all.filter((one) => (one as HTMLImageElement).naturalWidth > 0).length)

export const seenSoon = (page: Page, count: number): Promise<void> =>
  expect.poll(() => seen(page), { timeout: 15_000 }).toBe(count)
