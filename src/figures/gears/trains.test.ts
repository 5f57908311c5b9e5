// What figures of trains say: a planet's bearing runs at another speed than the planet shows.
import { expect, test } from 'vitest'
import { say } from '../../cli/testing/desk.ts'

const rpm = (2 * Math.PI) / 60
async function speeds(...words: string[]) {
  const { out, err } = await say(['figure', 'planetary-speeds', 'sun-teeth=20', 'ring-teeth=80', ...words, '--json'])
  expect(err).toBe('')
  const results = JSON.parse(out).results as { name: string; low: number }[]
  return Object.fromEntries(results.map(({ name, low }) => [name, low / rpm]))
}

// Worked by hand: planets of 30; pin = −(sun − carrier) 20 / 30; seen from the case carrier + pin.
test.each([
  ['ring held', ['sun=100 rpm', 'ring=0 rpm'], { carrier: 20, pin: -160 / 3, seen: -100 / 3 }],
  ['sun held', ['sun=0 rpm', 'ring=100 rpm'], { carrier: 80, pin: 160 / 3, seen: 400 / 3 }],
  ['carrier held', ['sun=100 rpm', 'carrier=0 rpm'], { carrier: 0, pin: -200 / 3, seen: -200 / 3 }],
  ['two driven', ['sun=100 rpm', 'ring=50 rpm'], { carrier: 60, pin: -80 / 3, seen: 100 / 3 }],
])('%s', async (_name, words, { carrier, pin, seen }) => {
  const found = await speeds(...words)
  expect(found.carrier).toBeCloseTo(carrier, 6)
  expect(found['a planet on its pin']).toBeCloseTo(pin, 6)
  expect(found['a planet, seen from the case']).toBeCloseTo(seen, 6)
})
