import { expect, test } from 'vitest'
import { memoryVault } from '../../stores/vault/memoryVault.ts'
import { countTry, openAgain } from './lockout.ts'

const MINUTE_ms = 60_000

test('each wrong try from the third on doubles the wait, from a quarter of a minute to an hour and no further; the right one forgets them', async () => {
  const vault = memoryVault()
  let now = 0
  const tryAt = (ms: number) => countTry({ vault, name: 'pin/Ada', now: ms })
  const waits: number[] = []
  for (let tries = 0; tries < 14; tries++) {
    await tryAt(now)
    const refused = await tryAt(now).catch(({ code, facts }) => ({ code, seconds: facts.seconds as number }))
    if (!refused) continue
    expect(refused.code).toBe('LOCKED_OUT')
    waits.push(refused.seconds)
    // Not a moment before, and trying meanwhile makes it no longer.
    await expect(tryAt(now + refused.seconds * 1000 - 1)).rejects.toMatchObject({ code: 'LOCKED_OUT' })
    now += refused.seconds * 1000
  }
  expect(waits).toEqual([15, 30, 60, 120, 240, 480, 960, 1_920, 3_600, 3_600, 3_600, 3_600, 3_600])
  await openAgain({ vault, name: 'pin/Ada' })
  for (let tries = 0; tries < 3; tries++) await tryAt(now + MINUTE_ms)
})

test('many at once are no way around it, and another door stays open', async () => {
  const vault = memoryVault()
  const all = await Promise.allSettled(Array.from({ length: 50 }, () => countTry({ vault, name: 'pin/Ada', now: 0 })))
  expect(all.filter(({ status }) => status === 'fulfilled')).toHaveLength(3)
  await countTry({ vault, name: 'pin/Ben', now: 0 })
})
