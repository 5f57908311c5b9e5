import { expect, test } from 'vitest'
import { clockText, hoursText, runningClocks } from './clocks.ts'
import type { ClockSheet, StepSheetData } from './workedJob.ts'

const clock = (given: Partial<ClockSheet>): ClockSheet => ({
  id: 'open',
  from: { op: 'spread', edge: 'start' },
  to: { op: 'bolts', edge: 'end' },
  says: 'The sealant is open 40 min.',
  standing: 'told',
  ...given,
})
const steps = (...clocks: ClockSheet[]): readonly StepSheetData[] => [{ clocks } as unknown as StepSheetData]
const MIN = 60_000

test('a clock runs from the beginning of one step to the end of the other', () => {
  const open = clock({ max_s: 2400 })
  const at = (times: Record<string, { started_ms?: number; ended_ms?: number }>, now: number) =>
    runningClocks(steps(open), (step) => times[step], now)
  expect(at({}, 0)).toEqual([])
  expect(at({ spread: { started_ms: 0 } }, 10 * MIN)).toMatchObject([{ run_s: 600, wait_s: 0, left_s: 1800 }])
  expect(at({ spread: { started_ms: 0 } }, 50 * MIN)).toMatchObject([{ left_s: -600 }])
  expect(at({ spread: { started_ms: 0 }, bolts: { started_ms: 1 } }, 10 * MIN)).toHaveLength(1)
  expect(at({ spread: { started_ms: 0 }, bolts: { ended_ms: 1 } }, 10 * MIN)).toEqual([])
})

test('a step that was signed without having been begun began no later than that', () => {
  const [running] = runningClocks(
    steps(clock({ max_s: 2400 })),
    (step) => (step === 'spread' ? { ended_ms: 0 } : undefined),
    MIN,
  )
  expect(running?.run_s).toBe(60)
})

test('what presses most stands first, what only has to be waited for last', () => {
  const cure = clock({ id: 'cure', min_s: 7200 })
  const open = clock({ id: 'open', max_s: 2400 })
  const soak = clock({ id: 'soak', min_s: 1800, max_s: 3600 })
  const running = runningClocks(
    steps(cure, soak, open),
    (step) => (step === 'spread' ? { started_ms: 0 } : undefined),
    10 * MIN,
  )
  expect(running.map((one) => one.clock.id)).toEqual(['open', 'soak', 'cure'])
  expect(running[2]).toMatchObject({ wait_s: 6600 })
})

test.each([
  [440, '7:20'],
  [59, '0:59'],
  [-61, '1:01'],
  [3661, '1:01:01'],
])('%i seconds read %s', (s, text) => {
  expect(clockText(s)).toBe(text)
})

test('a long time is rounded up to the minute', () => {
  expect(hoursText(31_630)).toBe('8:48')
  expect(hoursText(216_000)).toBe('60:00')
})
