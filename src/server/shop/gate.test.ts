import { expect, test } from 'vitest'
import { memoryJournal } from '../../stores/memory/memoryJournal.ts'
import { memoryVault } from '../../stores/vault/memoryVault.ts'
import { openGate } from './gate.ts'
import { openShopBook } from './shopBook.ts'

test('a device that is shut out by one server is out at another that has not heard of it yet', async () => {
  const [journal, vault, now] = [memoryJournal(), memoryVault(), () => 1_773_000_000_000]
  const [here, deaf] = [journal, { ...journal, watch: () => () => {} }]
  const gates = []
  for (const [index, heard] of [here, deaf].entries())
    gates.push(openGate({ vault, now, book: await openShopBook(heard, { device: `server-${index}`, now }) }))
  const [one, other] = gates
  const { code } = await one!.invite('keeper')
  const { device, token } = await one!.enrol({ code, called: 'tablet', from: '10.0.0.7' })
  expect(await other!.deviceOf(token)).toBe(device)
  await one!.shutOut(device, 'keeper')
  expect(await other!.deviceOf(token)).toBe(null)
})
