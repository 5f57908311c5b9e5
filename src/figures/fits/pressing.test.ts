import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

test('a fit that cannot be pressed home below its stop load is no good answer', async () => {
  const asked = ['figure', 'press-fit', 'joint-diameter=50 mm', 'length=40 mm', 'hub-outside=60 mm', 'hub=grey iron']
  const tight = await say([...asked, 'interference=80..120 µm', 'shaft=steel'])
  expect(tight.out).toContain('even at the loosest')
  expect(tight.code).toBe(1)
  expect((await say([...asked, 'interference=15..20 µm', 'shaft=steel'])).code).toBe(0)
})
