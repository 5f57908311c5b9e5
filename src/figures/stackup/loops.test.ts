// What the figure of drawn loops takes beside the drawing: batches as measured, and sizes that go together.
import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

const LOOP = 'links=case, opens, 40, 0.1 mm; ring, closes, 20, 0.1 mm'

async function gap(...words: string[]) {
  const { out, err } = await say(['figure', 'loop-by-chance', LOOP, 'samples=20000', ...words, '--metric', '--json'])
  expect(err).toBe('')
  const results = JSON.parse(out).results as { name: string; low: number; high: number }[]
  return Object.fromEntries(results.map(({ name, low, high }) => [name, { low: low * 1000, high: high * 1000 }]))
}

test('measured parts take the place of size and tolerance', async () => {
  const drawn = await gap('measured=case, 40.03 mm; case, 40.05 mm; ring, 19.99 mm; ring, 20.01 mm')
  // Two sizes of each, each as likely: mean 20.04, least 40.03 − 20.01, greatest 40.05 − 19.99.
  expect(drawn.mean!.low).toBeCloseTo(20.04, 2)
  expect(drawn['least to greatest drawn']!.low).toBeCloseTo(20.02, 6)
  expect(drawn['least to greatest drawn']!.high).toBeCloseTo(20.06, 6)
})

test('two sides cut in one set-up take nothing from the gap', async () => {
  const alone = await gap()
  // Rectangular, ± 0.1 each: standard deviation 0.1 √(2/3).
  expect(alone['standard deviation']!.low).toBeCloseTo(0.1 * Math.sqrt(2 / 3), 2)
  const together = await gap('correlations=case, ring, 1')
  expect(together['standard deviation']!.low).toBeLessThan(1e-9)
})

test('a name that is no size of the loop is told', async () => {
  const { err, code } = await say(['figure', 'loop-by-chance', LOOP, 'measured=cover, 40.03 mm; cover, 40.05 mm'])
  expect(code).not.toBe(0)
  expect(err).toMatch(/'cover' is no size of this loop/)
  expect(err).toMatch(/case, ring/)
})
