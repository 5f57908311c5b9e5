// The pictures of docs/screens, made anew with SCREENS=1: real sheets of the sample job, no drawings of drawings.
import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, test } from 'vitest'
import { builtApp, type Device, device, openChromium, shopWithSample } from './bench.ts'

const INTO = fileURLToPath(new URL('../../../docs/screens/', import.meta.url))
const isWanted = process.env.SCREENS !== undefined

let app: Awaited<ReturnType<typeof builtApp>>
let shop: Awaited<ReturnType<typeof shopWithSample>>
let browser: Awaited<ReturnType<typeof openChromium>>
beforeAll(async () => {
  if (!isWanted) return
  app = await builtApp()
  shop = await shopWithSample(app.dir)
  browser = await openChromium()
})
afterAll(async () => {
  await browser?.close()
  await shop?.close()
  app?.remove()
})

async function keep(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined))
  await page.waitForTimeout(600)
  await sharp(await page.screenshot())
    .png({ palette: true, colours: 32, effort: 10 })
    .toFile(`${INTO}${name}.png`)
}

test.runIf(isWanted)('the sheets as they are', async () => {
  mkdirSync(INTO, { recursive: true })
  const on = async (what: Omit<Device, 'person'>) => {
    const context = await device(browser, { ...what, person: 'M. Ashdown' })
    return context.newPage()
  }
  const step = (page: Page, id: string) => page.goto(`${shop.url}/job/J41/build/${encodeURIComponent(id)}`)
  const drawn = (page: Page) => page.locator('figure svg').first().waitFor()

  const tablet = await on({ size: 'tablet' })
  await tablet.goto(shop.url)
  await tablet.getByText('Open J41').click()
  await tablet.getByText('Adopt it').click()
  await tablet.getByText('Go on: step 1').click()
  for (let number = 1; number <= 2; number += 1) {
    await tablet.getByText(`Sign step ${number}`, { exact: true }).click()
    await tablet.getByText(`Step ${number + 1} of`).waitFor()
    // A finger that comes at once is taken for a bounce.
    await tablet.waitForTimeout(250)
  }
  await step(tablet, 'lock cap A nuts')
  await drawn(tablet)
  await keep(tablet, 'second-tablet')
  await step(tablet, 'sealant joint')
  await tablet.getByText('Take a photo').first().waitFor()
  await keep(tablet, 'photo-tablet')
  await tablet.getByText('Go on without it').click()
  await tablet.getByText('Begin this step').click()
  await tablet.getByText('Sign step 61').waitFor()
  await drawn(tablet)
  await keep(tablet, 'clock-tablet')
  await step(tablet, 'joint bolts')
  for (let bolt = 0; bolt < 19; bolt += 1) {
    await tablet.locator('#main-action button').first().click()
    await tablet.waitForTimeout(40)
  }
  await drawn(tablet)
  await keep(tablet, 'bolts-tablet')
  for (const done of ['keep plate', 'keep plate fixing']) {
    await step(tablet, done)
    if (done === 'keep plate fixing') await tablet.getByText('All are tight').click()
    await tablet.getByText(/^Sign step \d+$/).click()
    await tablet.waitForURL((url) => !url.pathname.endsWith(encodeURIComponent(done)))
  }
  await step(tablet, 'input float')
  await tablet.getByRole('button', { name: /^S1 / }).click()
  await tablet.getByRole('button', { name: /^S2 / }).click()
  await tablet.locator('#reading').fill('0.03')
  await tablet.getByText('Take 0.03 mm').click()
  await tablet.getByText('It comes off again: 2 steps').waitFor()
  await tablet.getByRole('region', { name: 'Tries' }).evaluate((region) => region.scrollIntoView())
  await keep(tablet, 'tries-tablet')
  await tablet.goto(`${shop.url}/job/J41/kit`)
  await tablet.getByText('Rejected (').waitFor()
  await keep(tablet, 'kit-tablet')
  await tablet.goto(shop.url)
  await keep(tablet, 'home-tablet')

  const phone = await on({ size: 'phone' })
  await step(phone, 'jack float')
  await phone.locator('#reading').fill('4.3 thou')
  await drawn(phone)
  await keep(phone, 'reading-phone')
  await step(phone, 'jack bearing B')
  await drawn(phone)
  await keep(phone, 'press-phone')
  await phone.goto(`${shop.url}/device`)
  await keep(phone, 'device-phone')

  const laptop = await on({ size: 'laptop', scheme: 'dark' })
  await laptop.goto(`${shop.url}/job/J41/sequence`)
  await laptop.getByText('Jack bearing B onto jackshaft').click()
  await drawn(laptop)
  await keep(laptop, 'sequence-laptop')
  await laptop.goto(`${shop.url}/job/J41/sequence`)
  await laptop.getByRole('button', { name: 'Larger: Line 2' }).click()
  await laptop.locator('dialog svg').first().waitFor()
  await keep(laptop, 'drawing-laptop')
})
