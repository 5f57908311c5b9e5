// A tablet of the shop with several people on it: each signs under his own PIN, photos come in by the shop's door, a helper leaves it to others.
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { fold } from '../../record/fold.ts'
import { isInStep, main, photos, picture, seenSoon, take, tapMain } from './atBench.ts'
import { AtDoor } from './atDoor.ts'
import { authorityFrom, homeWith } from './authority.ts'
import { openChromium, SIZES } from './bench.ts'

const door = new AtDoor()
beforeAll(() => door.open())
afterAll(() => door.close())

async function signIn(page: Page, person: string, pin: string): Promise<void> {
  await page.getByRole('button', { name: person }).tap()
  await page.getByLabel('PIN').fill(pin)
  await page.getByText('Sign in', { exact: true }).tap()
}

test('one tablet of the shop: the first signs, a helper is told to leave it, a second rebuilder signs with his own PIN', async () => {
  const address = door.address
  const { gate, journal, files } = door.shop.shop
  await gate.addPerson({ name: 'M. Ashdown', role: 'rebuilder', pin: '4711' }, 'keeper')
  await gate.addPerson({ name: 'J. Tarn', role: 'rebuilder', pin: '2580' }, 'keeper')
  await gate.addPerson({ name: 'B. Yew', role: 'helper', pin: '1357' }, 'keeper')
  const { code } = await gate.invite('keeper')
  const browser = await openChromium(homeWith(door.folder, await authorityFrom(address)))
  const photo = await picture()
  try {
    const context = await browser.newContext(SIZES.tablet)
    const page = await context.newPage()
    page.setDefaultTimeout(20_000)
    page.on('filechooser', () => undefined)
    await page.goto(`${address}/enrol#${encodeURIComponent(code)}`)
    await page.getByLabel('Name of this device').fill('tablet at bench 2')
    await page.getByRole('button', { name: /^Enrol/ }).tap()
    await page.getByText('Who is at the bench?').waitFor()
    await signIn(page, 'M. Ashdown', '4711')
    await page.getByText('Open J41').tap()
    await page.getByText('Adopt it').tap()
    await page.getByText('Go on: step 1').waitFor()
    await page.goto(`${address}/job/J41/build/lock%20cap%20A%20nuts`)
    await take(page, () => photos(page).getByText('Take a photo').tap(), photo)
    await seenSoon(page, 1)
    await tapMain(page)
    await page.getByText('Y: sign it').tap()
    const region = page.getByRole('region', { name: 'Second person' })
    await region.getByText(/M\. Ashdown signed .* cannot be the second person/).waitFor()

    for (const [person, pin] of [
      ['B. Yew', '1357'],
      ['J. Tarn', '2580'],
    ] as const) {
      await region.getByText('Somebody else is here').tap()
      await page.getByText('Somebody else', { exact: true }).tap()
      await signIn(page, person, pin)
      if (person === 'J. Tarn') break
      await region.getByText('B. Yew is a helper and may not sign as the second person.').waitFor()
      expect(await region.getByText('Alone: check it again').count()).toBe(0)
      expect(await main(page).getByText('Sign as the second person').count()).toBe(0)
    }
    await main(page).getByText('Sign as the second person').waitFor()
    await tapMain(page)
    await region.getByText('Looked at and signed by J. Tarn as the second person').waitFor()
    await isInStep(page).waitFor()
  } finally {
    await browser.close()
  }
  const { entries } = await journal.read('J41')
  const { state } = fold(
    'J41',
    entries.map(({ entry }) => entry),
  )
  expect(state.steps.get('lock cap A nuts')).toMatchObject({
    done: [{ person: 'M. Ashdown' }],
    second: { how: 'second person', person: 'J. Tarn' },
  })
  expect((await files.read(photo.hash))?.bytes.length).toBe(photo.buffer.length)
})
