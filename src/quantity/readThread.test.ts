import { expect, test } from 'vitest'
import type { Problem } from '../problem/problem.ts'
import { readThread } from './readThread.ts'

test.each([
  ['M10×1.5', 'metric', 10, 1.5, 'M10×1.5'],
  ['M10x1.5', 'metric', 10, 1.5, 'M10×1.5'],
  ['M10 X 1,25', 'metric', 10, 1.25, 'M10×1.25'],
  ['M10', 'metric', 10, 1.5, 'M10×1.5'],
  ['M3', 'metric', 3, 0.5, 'M3×0.5'],
  ['M64', 'metric', 64, 6, 'M64×6'],
  ['M30×2-6g', 'metric', 30, 2, 'M30×2-6g'],
  ['M20×1.5-LH', 'metric', 20, 1.5, 'M20×1.5-LH'],
  ['3/8-16 UNC', 'unified', 9.525, 1.5875, '3/8-16 UNC'],
  ['1/2-13 UNC', 'unified', 12.7, 25.4 / 13, '1/2-13 UNC'],
  ['1/4-28 UNF', 'unified', 6.35, 25.4 / 28, '1/4-28 UNF'],
  ['1/2-13', 'unified', 12.7, 25.4 / 13, '1/2-13 UNC'],
  ['.375-24', 'unified', 9.525, 25.4 / 24, '3/8-24 UNF'],
  ['0.375-24 unf', 'unified', 9.525, 25.4 / 24, '3/8-24 UNF'],
  ['3/8 UNC', 'unified', 9.525, 1.5875, '3/8-16 UNC'],
  ['1-1/4-7 UNC-2A', 'unified', 31.75, 25.4 / 7, '1-1/4-7 UNC-2A'],
  ['1 1/4"-7 UNC', 'unified', 31.75, 25.4 / 7, '1-1/4-7 UNC'],
  ['½"-13 UNC', 'unified', 12.7, 25.4 / 13, '1/2-13 UNC'],
  ['2-4.5 UNC', 'unified', 50.8, 25.4 / 4.5, '2-4.5 UNC'],
  ['4-4 UNC', 'unified', 101.6, 6.35, '4-4 UNC'],
  ['1-8', 'unified', 25.4, 3.175, '1-8 UNC'],
  ['10-32', 'unified', 4.826, 25.4 / 32, '#10-32 UNF'],
  ['#4-40 UNC', 'unified', 2.8448, 25.4 / 40, '#4-40 UNC'],
  ['No. 6-32', 'unified', 3.5052, 25.4 / 32, '#6-32 UNC'],
  ['1/2-12 BSW', 'whitworth', 12.7, 25.4 / 12, '1/2-12 BSW'],
  ['1/2 Whit', 'whitworth', 12.7, 25.4 / 12, '1/2-12 BSW'],
  ['3/8 BSF', 'whitworth', 9.525, 25.4 / 20, '3/8-20 BSF'],
  ['5/8-24 UNEF', 'unified', 15.875, 25.4 / 24, '5/8-24 UNEF'],
  ['G 1/2', 'pipe', 20.955, 25.4 / 14, 'G 1/2'],
  ['G1-1/4 A', 'pipe', 41.91, 25.4 / 11, 'G 1-1/4 A'],
  ['R 1/2', 'taper pipe', 20.955, 25.4 / 14, 'R 1/2'],
  ['BSPT 3/4', 'taper pipe', 26.441, 25.4 / 14, 'R 3/4'],
  ['R1 LH', 'taper pipe', 33.249, 25.4 / 11, 'R 1 LH'],
  ['2 BA', 'ba', 4.7, 0.81, '2 BA'],
  ['BA 0', 'ba', 6, 1, '0 BA'],
  ['6ba', 'ba', 2.8, 0.53, '6 BA'],
  ['4BA-LH', 'ba', 3.6, 0.66, '4 BA-LH'],
  ['1/2-14 NPT', 'npt', 21.336, 25.4 / 14, '1/2-14 NPT'],
  ['1/8 npt', 'npt', 10.287, 25.4 / 27, '1/8-27 NPT'],
  ['1 1/4" NPT', 'npt', 42.164, 25.4 / 11.5, '1-1/4-11.5 NPT'],
] as const)('%s is read', (text, system, diameter, pitch, designation) => {
  const thread = readThread(text)
  expect(thread.system).toBe(system)
  expect(thread.nominalDiameter * 1000).toBeCloseTo(diameter, 9)
  expect(thread.pitch * 1000).toBeCloseTo(pitch, 9)
  expect(thread.designation).toBe(designation)
  expect(thread.hand).toBe(text.includes('LH') ? 'left' : 'right')
  expect(readThread(designation)).toEqual(thread)
})

// Printed pitches. Source: ISO 228-1 (0.907, 1.337, 1.814, 2.309 mm), as given in an engineers' pocket book, table 4.1.38.
test.each([
  ['G 1/8', '0.907'],
  ['G 3/8', '1.337'],
  ['G 3/4', '1.814'],
  ['G 1', '2.309'],
])('the pitch of %s is the printed one', (text, printed) => {
  expect((readThread(text).pitch * 1000).toFixed(3)).toBe(printed)
})

test.each([
  ['M13', 'THREAD_PITCH_MISSING'],
  ['M10×20', 'THREAD_NO_CORE'],
  ['M10×0', 'THREAD_UNREADABLE'],
  ['M', 'THREAD_UNREADABLE'],
  ['1/2-12 UNC', 'THREAD_NOT_IN_SERIES'],
  ['1/2-12', 'THREAD_SERIES_MISSING'],
  ['1/2', 'THREAD_SERIES_MISSING'],
  ['11/32 UNC', 'THREAD_PITCH_MISSING'],
  ['5/8 UNS', 'THREAD_PITCH_MISSING'],
  ['1/4-2 UN', 'THREAD_NO_CORE'],
  ['#11-24', 'THREAD_UNREADABLE'],
  ['#1/2-13', 'THREAD_UNREADABLE'],
  ['1/2--13', 'THREAD_UNREADABLE'],
  ['G 9', 'THREAD_NOT_IN_SERIES'],
  ['R 9', 'THREAD_NOT_IN_SERIES'],
  ['R 5/8', 'THREAD_NOT_IN_SERIES'],
  ['R 1/2 A', 'THREAD_NOT_IN_SERIES'],
  ['17 BA', 'THREAD_NOT_IN_SERIES'],
  ['BA', 'THREAD_UNREADABLE'],
  ['1/2-13 NPT', 'THREAD_NOT_IN_SERIES'],
  ['5/8 NPT', 'THREAD_NOT_IN_SERIES'],
  ['63.5 mm', 'THREAD_UNREADABLE'],
  ['', 'THREAD_UNREADABLE'],
  ['1-'.repeat(500_000), 'THREAD_UNREADABLE'],
])('%.20s is refused', (text, code) => {
  expect(() => readThread(text)).toThrow(expect.objectContaining({ code }))
})

test('a thread that the series does not have names the one it has', () => {
  let problem: Problem | undefined
  try {
    readThread('1/2-12 UNC')
  } catch (thrown) {
    problem = thrown as Problem
  }
  expect(problem?.message).toBe("'1/2-12 UNC' is not a thread of the series UNC.")
  expect(problem?.next).toBe('Measure the pitch again (UNC has 1/2-13), or name another series.')
})
