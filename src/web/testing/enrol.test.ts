// A second device comes into the shop over https, at an address that is not localhost, and starts without a network from then on.
import { afterAll, beforeAll, expect, test } from 'vitest'
import { AtDoor } from './atDoor.ts'
import { authorityFrom, homeWith } from './authority.ts'
import { openChromium, SIZES } from './bench.ts'

const door = new AtDoor()
beforeAll(() => door.open())
afterAll(() => door.close())

test('enrolled over https, a tablet signs, starts without a network and is in step again', async () => {
  const address = door.address
  await door.shop.shop.gate.addPerson({ name: 'M. Ashdown', role: 'rebuilder', pin: '4711' }, 'keeper')
  const { code } = await door.shop.shop.gate.invite('keeper')
  const stranger = await openChromium(homeWith(door.folder, null))
  try {
    const page = await stranger.newPage()
    await expect(page.goto(`${address}/enrol`)).rejects.toThrow('ERR_CERT_AUTHORITY_INVALID')
  } finally {
    await stranger.close()
  }
  const browser = await openChromium(homeWith(door.folder, await authorityFrom(address)))
  try {
    const context = await browser.newContext(SIZES.tablet)
    const page = await context.newPage()
    page.setDefaultTimeout(20_000)
    await page.goto(`${address}/enrol#${encodeURIComponent(code)}`)
    await page.getByLabel('Name of this device').fill('tablet at bench 2')
    await page.getByRole('button', { name: /^Enrol/ }).tap()
    await page.getByText('Who is at the bench?').waitFor()
    await page.getByText('M. Ashdown').tap()
    await page.getByLabel('PIN').fill('0000')
    await page.getByText('Sign in', { exact: true }).tap()
    await page.getByRole('alert').waitFor()
    await page.getByLabel('PIN').fill('4711')
    await page.getByText('Sign in', { exact: true }).tap()
    await page.getByText('Open J41').tap()
    await page.getByText('Adopt it').tap()
    await page.getByText('Go on: step 1').tap()
    await page.getByText('Sign step 1').waitFor()
    await page.waitForTimeout(300)
    await page.getByText('Sign step 1').tap()
    await page.getByText('Sign step 2').waitFor()
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
    await page.getByText('in step', { exact: true }).waitFor()

    await context.setOffline(true)
    await page.reload()
    await page.getByText('Sign step 2').waitFor()
    await page.waitForTimeout(300)
    await page.getByText('Sign step 2').tap()
    await page.getByText('1 here').waitFor()
    await page.getByText('Step 3 of').waitFor()
    await context.setOffline(false)
    await page.getByText('in step', { exact: true }).waitFor()

    // Shut out while it is away: what is signed meanwhile is not lost with its name.
    const first = [...door.shop.shop.book.shop.devices.keys()][0] ?? ''
    await context.setOffline(true)
    await page.waitForTimeout(300)
    // Past it there is no way back: a short tap asks.
    await page.getByText('Sign step 3').tap()
    await page.getByText('Y: sign it').tap()
    await page.getByText('1 here').waitFor()
    await door.shop.shop.gate.shutOut(first, 'keeper')
    await context.setOffline(false)
    await page.getByText('not let in', { exact: true }).waitFor()
    const again = await door.shop.shop.gate.invite('keeper')
    await page.goto(`${address}/enrol#${encodeURIComponent(again.code)}`)
    await page.getByLabel('Name of this device').fill('tablet at bench 2, again')
    await page.getByRole('button', { name: /^Enrol/ }).tap()
    await page.getByText('written under a name that the shop shut out').waitFor()
    if (await page.getByText('Somebody else').isVisible()) await page.getByText('Somebody else').tap()
    await page.getByRole('button', { name: 'M. Ashdown' }).tap()
    await page.getByLabel('PIN').fill('4711')
    await page.getByText('Sign in', { exact: true }).tap()
    await page.goto(`${address}/device`)
    await page.getByText('Say them again').tap()
    await page.getByText('Nothing waits to be sent.').waitFor()
  } finally {
    await browser.close()
  }
  const { entries } = await door.shop.shop.journal.read('J41')
  const signed = entries.flatMap(({ entry }) => (entry.kind === 'step-signed' ? [entry] : []))
  expect(signed.map(({ body }) => body.step)).toHaveLength(3)
  expect(new Set(signed.map(({ body }) => body.step)).size).toBe(3)
  expect(new Set(signed.map(({ device }) => device))).toEqual(new Set(door.shop.shop.book.shop.devices.keys()))
  expect(new Set(signed.map(({ person }) => person))).toEqual(new Set(['M. Ashdown']))
})
