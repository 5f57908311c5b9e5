// The second person in real Chromium: two browsers, one tablet for two, and somebody who is alone.
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { AtBench, block, isInStep, main, photos, picture, seenSoon, take, tapMain } from './atBench.ts'
import { looksWell } from './looksWell.ts'

const at = new AtBench()
beforeAll(() => at.open())
afterAll(() => at.close())
beforeEach(() => at.begin())
afterEach(() => at.end())

const LOCK = 'lock cap A nuts'
const REFUSED = /M\. Ashdown signed 'lock cap A nuts' and cannot be the second person too/
type Page = Awaited<ReturnType<typeof at.page>>
const region = (page: Page) => page.getByRole('region', { name: 'Second person' })
const secondIn = async () => (await at.state()).steps.get(LOCK)?.second

/** A bent tab is a point of no return: it is asked for with a key of its own. */
async function signLock(page: Page): Promise<void> {
  await tapMain(page)
  await page.getByText('Y: sign it').click()
  await region(page).getByText('A second person is wanted.').waitFor()
}

test('two browsers: one signs, is told who is wanted, and the other looks and signs by keyboard', async () => {
  const tablet = await at.page({ size: 'tablet', person: 'M. Ashdown' })
  await at.atStep(tablet, LOCK)
  await region(tablet).getByText('Two people sign this step').waitFor()
  await signLock(tablet)
  await region(tablet).getByText(REFUSED).waitFor()
  await region(tablet)
    .getByText(/Let somebody else look and sign/)
    .waitFor()
  await block(tablet).getByText('1 look').waitFor()
  // It holds nobody up.
  await main(tablet).getByText('Next: step').waitFor()

  const laptop = await at.page({ size: 'laptop', person: 'J. Tarn' })
  await at.atStep(laptop, LOCK)
  await region(laptop).getByText('J. Tarn can look at it and sign.').waitFor()
  await main(laptop).getByText('Sign as the second person').waitFor()
  await looksWell(laptop)
  await laptop.keyboard.press('s')
  await region(laptop).getByText('Looked at and signed by J. Tarn as the second person').waitFor()
  await region(tablet).getByText('Looked at and signed by J. Tarn as the second person').waitFor()
  await block(tablet).getByText('none', { exact: true }).waitFor()
  expect(await secondIn()).toMatchObject({ how: 'second person', person: 'J. Tarn' })

  await region(laptop).getByText('Take back').click()
  await region(tablet).getByText('A second person is wanted.').waitFor()
})

test('one tablet for two, without a network: the other says who he is on the sheet of the device and signs', async () => {
  const tablet = await at.page({ size: 'upright', person: 'M. Ashdown' })
  await at.atStep(tablet, LOCK)
  await tablet.context().setOffline(true)
  await signLock(tablet)
  await region(tablet).getByText(REFUSED).waitFor()
  await looksWell(tablet)
  await region(tablet).getByText('Somebody else is here').tap()
  await tablet.getByText('Somebody else', { exact: true }).tap()
  await tablet.getByLabel('Name, as on a drawing').fill('J. Tarn')
  await tablet.getByText('This is me').tap()
  await main(tablet).getByText('Sign as the second person').waitFor()
  await tapMain(tablet)
  await region(tablet).getByText('Looked at and signed by J. Tarn as the second person').waitFor()
  await tablet.context().setOffline(false)
  await isInStep(tablet).waitFor()
  const { steps } = await at.state()
  expect(steps.get(LOCK)).toMatchObject({
    done: [{ person: 'M. Ashdown' }],
    second: { how: 'second person', person: 'J. Tarn' },
  })
})

test('alone, without a network: checked again later by another method with a photo, recorded and shown as one person', async () => {
  const phone = await at.page({ size: 'phone', person: 'M. Ashdown' })
  await at.atStep(phone, LOCK)
  // A photo of the work is none of its being looked at again.
  await take(phone, () => photos(phone).getByText('Take a photo').tap(), await picture())
  await seenSoon(phone, 1)
  await phone.context().setOffline(true)
  await signLock(phone)
  await region(phone).getByText('Alone: check it again').tap()
  const sign = region(phone).getByRole('button', { name: /^Sign: one person/ })
  await region(phone).getByText('A photo that was taken after the signature is wanted.').waitFor()
  await region(phone)
    .getByLabel(/^Method, other than the first/)
    .fill('feeler under both tabs')
  expect(await sign.getAttribute('aria-disabled')).toBe('true')
  // What is typed outlives the page.
  await phone.reload()
  await region(phone).getByText('Alone: check it again').tap()
  expect(
    await region(phone)
      .getByLabel(/^Method/)
      .inputValue(),
  ).toBe('feeler under both tabs')
  await region(phone).getByLabel('What was found or read').fill('0.05 does not enter')
  const after = await picture('#336644')
  await take(phone, () => region(phone).getByText('Take a photo').tap(), after)
  await region(phone)
    .getByText(/^With the photo of/)
    .waitFor()
  await looksWell(phone)
  await sign.tap()
  await region(phone)
    .getByText(/One person, checked again: M\. Ashdown/)
    .waitFor()
  await region(phone).getByText('feeler under both tabs: 0.05 does not enter').waitFor()
  await phone.getByRole('link', { name: /^Sequence/ }).click()
  await phone
    .getByRole('listitem')
    .filter({ hasText: 'Turn up the tabs of lock plate A' })
    .getByText('one person, checked again')
    .waitFor()

  await phone.context().setOffline(false)
  await isInStep(phone).waitFor()
  expect(await secondIn()).toMatchObject({
    how: 'one person, checked again',
    person: 'M. Ashdown',
    method: 'feeler under both tabs',
    says: '0.05 does not enter',
    photo: after.hash,
  })
  expect((await at.shop.files.read(after.hash))?.bytes.length).toBe(after.buffer.length)
})

test('what shuts the case tells which locks nobody else has looked at', async () => {
  const tablet = await at.page({ size: 'tablet', person: 'M. Ashdown' })
  await at.atStep(tablet, LOCK)
  await signLock(tablet)
  const number = /Step (\d+) of/.exec((await tablet.locator('h1').locator('xpath=..').textContent()) ?? '')?.[1]
  await tablet.goto(at.stepUrl('sealant joint'))
  await tablet
    .getByRole('region', { name: 'Before joint is shut' })
    .getByText(`Nobody else has looked at ${number} yet, and nobody sees it again once joint is shut.`)
    .waitFor()
})
