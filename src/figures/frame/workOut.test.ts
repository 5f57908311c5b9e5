import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

test('a range that goes too far is refused by its far end, not by a place between', async () => {
  const { err } = await say(['figure', 'cover-force', 'pressure=0.3..0.5 bar', 'area=1200 cm²'])
  expect(err.replace(/\s+/g, ' ')).toContain('air at 50 kPa')
  expect(err).toContain('6000 N')
  const low = await say(['figure', 'cover-force', 'pressure=-0.1..0.2 bar', 'area=1200 cm²'])
  expect(low.err).toContain('−10 kPa')
})
