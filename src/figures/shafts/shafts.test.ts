import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

const namesOf = async (readings: string) => {
  const { out } = await say(['figure', 'run-out', `readings=${readings}`, '--json'])
  return JSON.parse(out).results.map(({ name }: { name: string }) => name)
}

test('a shaft that is oval but not bent has no high side to straighten', async () => {
  const high = 'highest at, from the first reading'
  expect(await namesOf('10, 0, -10, 0, 10, 0, -10, 0 µm')).not.toContain(high)
  expect(await namesOf('20, 10, -10, -25, -12, 9 µm')).toContain(high)
})
