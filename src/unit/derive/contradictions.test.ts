import { describe, expect, test } from 'vitest'
import { small } from './testing/smallUnit.ts'

const LINE = 'lines: {1: {at: [0, 0], ends: [front, rear]}, 2: {at: [50, 0], ends: [front, rear]}}\n'
const contradictions = (parts: string) => small(`${LINE}parts:\n  box: {}\n${parts}`).contradictions

describe('two parts in one place', () => {
  test('are told with both rings', () => {
    expect(contradictions('  a: {line 1: "0..20: 40"}\n  b: {line 1: "10..30: 60/35"}\n')).toEqual([
      'At home a (Ø 40 at 0..20) and b (Ø 60/35 at 10..30) would be in the same place.',
    ])
  })

  test('a tight fit is none, nor what touches', () => {
    expect(contradictions('  a: {line 1: "0..20: 40.05"}\n  b: {line 1: "10..30: 60/40"}\n')).toEqual([])
    expect(contradictions('  a: {line 1: "0..20: 40"}\n  b: {line 1: "20..30: 60/35"}\n')).toEqual([])
  })

  test('what may touch is none: teeth, what slides, what a key drives', () => {
    const teeth = (meshes: string) =>
      contradictions(`  a: {look: gear, line 1: "0..20: 54"${meshes}}\n  b: {look: gear, line 2: "0..20: 54"}\n`)
    expect(teeth('')).toHaveLength(1)
    expect(teeth(', meshes: b')).toEqual([])
    const key = (keys: string) =>
      contradictions(`  k: {line 1: "0..20: 40/30"${keys}}\n  b: {line 1: "0..30: 60/35"}\n`)
    expect(key('')).toHaveLength(1)
    expect(key(', keys: b')).toEqual([])
  })

  test('a size that is only a guess contradicts nothing', () => {
    expect(contradictions('  a: {line 1: "0..20: ≈ 40"}\n  b: {line 1: "10..30: 60/35"}\n')).toEqual([])
  })

  test('nor does a shape that nobody said is round, from another line', () => {
    expect(contradictions('  a: {line 1: "0..20: 60"}\n  b: {line 2: "0..20: 60"}\n')).toEqual([])
  })

  test('a cap and its pedestal are none', () => {
    expect(
      contradictions(
        '  cap: {half: upper, line 1: "0..20: 60/40"}\n  pedestal: {half: lower, line 1: "0..20: 60/40"}\n',
      ),
    ).toEqual([])
  })
})

describe('a seat', () => {
  const seat = (from: number) =>
    contradictions(
      `  bearing: {line 1: "0..20: 62/30"}\n  plate: {line 1: "${from}..40: 90/50", seats against: bearing}\n`,
    )

  test('may be a gasket away', () => {
    expect([seat(20), seat(21)]).toEqual([[], []])
  })

  test('that the sizes contradict is told, with how far they are apart', () => {
    expect(seat(23)).toEqual([
      'plate is said to stand against bearing, but by its sizes the nearest faces are 3 mm apart.',
    ])
  })
})

test('a part that no way brings home is told with what bars each end', () => {
  const told = contradictions('  wheel: {line 1: "10..20: 80", comes from: front}\n').concat(
    small(`${LINE}parts:\n  box: {wall on 1: "0..5: 40, 30..35: 50"}\n  wheel: {line 1: "10..20: 80"}\n`)
      .contradictions,
  )
  expect(told).toEqual([
    'No way brings wheel home. from front: wheel cannot pass box: Ø 80 at 10..20 would meet bore Ø 40 at 0..5; ' +
      'from rear: wheel cannot pass box: Ø 80 at 10..20 would meet bore Ø 50 at 30..35.',
  ])
})
