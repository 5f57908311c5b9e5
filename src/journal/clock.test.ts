import fc from 'fast-check'
import { expect, test } from 'vitest'
import { nextEntry } from './chain.ts'
import { compareAt, hourOf, latest, MOST_MS, tick } from './clock.ts'
import type { At } from './entry.ts'

test('the time of day is taken where it is later; a clock that stands, or was set back, counts on', () => {
  expect(tick(undefined, 1000.7)).toEqual({ ms: 1000, n: 0 })
  expect(tick({ ms: 1000, n: 5 }, 1001)).toEqual({ ms: 1001, n: 0 })
  expect(tick({ ms: 1000, n: 5 }, 1000)).toEqual({ ms: 1000, n: 6 })
  expect(tick({ ms: 1_795_000_000_000, n: 0 }, 0)).toEqual({ ms: 1_795_000_000_000, n: 1, own: 0 })
  expect(tick({ ms: 1_795_000_000_000, n: 0 }, 1_794_999_940_000)).toEqual({ ms: 1_795_000_000_000, n: 1 })
  expect(tick(undefined, -5)).toEqual({ ms: 0, n: 0 })
})

// The properties that Kulkarni et al., Logical Physical Clocks (2014), prove of their clock: what happened before has the smaller time
// (theorem 1), and the clock is the time of day or one that was seen (theorem 2).
test('what a device writes is later than all it has written and seen, whatever its clock says (seed 5)', () => {
  const events = fc.array(fc.tuple(fc.nat(2), fc.integer({ min: 0, max: 50 }), fc.option(fc.nat(2))), { maxLength: 60 })
  fc.assert(
    fc.property(events, (all) => {
      const clocks: (At | undefined)[] = [undefined, undefined, undefined]
      const given = new Set<number>()
      for (const [device, now, from] of all) {
        const seen = from === null ? undefined : clocks[from]
        const before = seen ? latest(clocks[device], seen) : clocks[device]
        const at = tick(before, now)
        given.add(now)
        if (before) expect(compareAt(at, before)).toBeGreaterThan(0)
        expect(given.has(at.ms)).toBe(true)
        expect(at.ms).toBeGreaterThanOrEqual(now)
        clocks[device] = at
      }
    }),
    { seed: 5, numRuns: 300 },
  )
})

test('one clock that is set to 2099 pulls the order along and leaves the others their hours', () => {
  const year2099 = Date.UTC(2099, 0, 1)
  const today = Date.UTC(2026, 2, 14, 9)
  const wild = tick(undefined, year2099)
  const mine = tick(latest(undefined, wild), today)
  const next = tick(latest(mine, wild), today + 5_000)
  expect([compareAt(wild, mine), compareAt(mine, next)].map(Math.sign)).toEqual([-1, -1])
  expect([wild, mine, next].map(hourOf)).toEqual([year2099, today, today + 5_000])
  // Put right, or never having seen it: as ever.
  expect(hourOf(tick(undefined, today))).toBe(today)
})

test.each([
  ['a count that is at its end', { ms: 1_795_000_000_000, n: Number.MAX_SAFE_INTEGER }, 1],
  ['the last millisecond', { ms: MOST_MS, n: 3 }, 1],
  ['the last time that there is', { ms: MOST_MS, n: Number.MAX_SAFE_INTEGER }, 0],
])('whoever sends %s does not keep the others from writing', (_what, wild, later) => {
  const said = { id: '00000000-0000-4000-8000-000000000000', stream: 'J41', kind: 'note', person: 'Ada' } as const
  const write = (clock: At) =>
    nextEntry({ ...said, body: { says: 'x' }, device: 'tablet' }, { tail: undefined, clock, now_ms: 1_773_000_000_000 })
  const { clock } = write(latest(undefined, wild))
  expect([Math.sign(compareAt(clock, wild)), hourOf(clock)]).toEqual([later, 1_773_000_000_000])
  expect(compareAt(write(clock).clock, clock)).toBe(later)
})
