// The second person of a step, as the device keeps and sends it.
import { expect, test } from 'vitest'
import { fold } from '../../record/fold.ts'
import { Writer } from '../../stores/testing/writer.ts'
import { benchFor, inStep, TestShop } from './testing/testShop.ts'

const signed = (as?: 'second') => [{ kind: 'step-signed' as const, body: { step: 'lock', ...(as && { as }) } }]

test('the one who did it is refused as its second person, without any network', async () => {
  const shop = new TestShop()
  shop.is = 'away'
  const { bench, journal } = await benchFor(shop)
  await bench.put('J41', signed())
  await expect(bench.put('J41', signed('second'))).rejects.toMatchObject({
    code: 'SECOND_IS_FIRST',
    message: "M. Ashdown signed 'lock' and cannot be the second person too.",
  })
  expect((await journal.read('J41')).entries).toHaveLength(1)
  bench.setPerson('J. Tarn')
  await bench.put('J41', signed('second'))
  const entries = bench.snapshot().streams.get('J41') ?? []
  expect(fold('J41', entries).state.steps.get('lock')?.second).toMatchObject({ person: 'J. Tarn' })
})

test('a helper is refused before it is kept: what the shop would not take would stand in the way of all the rest', async () => {
  const shop = new TestShop()
  const people = [
    { name: 'M. Ashdown', role: 'rebuilder' },
    { name: 'B. Yew', role: 'helper' },
  ] as const
  shop.me = { device: 'tablet-3', person: 'B. Yew', enrolled: true, people }
  const { bench, journal } = await benchFor(shop)
  await inStep(bench, 'in step')
  await bench.put('J41', signed())
  bench.setPerson('B. Yew')
  await expect(bench.put('J41', signed('second'))).rejects.toMatchObject({ code: 'ROLE_MAY_NOT' })
  await bench.put('J41', [{ kind: 'note', body: { says: 'looked at it' } }])
  expect((await journal.read('J41')).entries).toHaveLength(2)
})

test('given in good faith while apart, by the one who had signed it elsewhere: taken back by itself, and nothing stands in the way', async () => {
  const shop = new TestShop()
  const tablet = new Writer('another tablet', 'J41', 'M. Ashdown')
  const mate = new Writer('third tablet', 'J41', 'J. Tarn')
  tablet.now_ms = Date.now()
  mate.now_ms = Date.now()
  await shop.journal.put([mate.write('step-signed', { step: 'lock' })])
  const { bench } = await benchFor(shop)
  await inStep(bench, 'in step')
  // Meanwhile he signed it on another tablet, too, which was away.
  await shop.journal.put([tablet.write('step-signed', { step: 'lock' })])
  shop.is = 'away'
  await bench.put('J41', signed('second'))
  await bench.put('J41', [{ kind: 'note', body: { says: 'after it' } }])
  shop.is = 'here'
  await inStep(bench, 'in step')
  await expect.poll(() => bench.snapshot().waiting.size).toBe(0)
  const { state } = fold(
    'J41',
    (await shop.journal.read('J41')).entries.map(({ entry }) => entry),
  )
  expect(state.steps.get('lock')?.second).toBeUndefined()
  expect(state.notes.map(({ says }) => says)).toEqual(['after it'])
  expect(state.happened.filter(({ withdrawnBy }) => withdrawnBy !== undefined)).toHaveLength(1)
})
