import { expect, test } from 'vitest'
import { KNOWN_THREADS, knownThread } from './knownThreads.ts'

test('every designation is held once and is read back as itself', () => {
  const names = KNOWN_THREADS.map(({ designation }) => designation)
  expect(new Set(names).size).toBe(names.length)
  for (const thread of KNOWN_THREADS) expect(knownThread(thread.designation)).toEqual(thread)
})

test('BA follows its rule: each pitch 0.9 of the one before, d = 6 p^1.2, both to two figures (read at two pages)', () => {
  for (let number = 0; number <= 16; number += 1) {
    const { pitch, nominalDiameter } = knownThread(`${number} BA`)
    const exact = 0.9 ** number
    expect(pitch * 1000).toBeCloseTo(Number(exact.toPrecision(2)), 9)
    expect(nominalDiameter * 1000).toBeCloseTo(Number((6 * exact ** 1.2).toPrecision(2)), 9)
  }
})

test('the trade’s other spellings', () => {
  expect(knownThread('2BA').designation).toBe('2 BA')
  expect(knownThread('BSPT 3/4').designation).toBe('R 3/4')
  expect(knownThread('1/2-14 NPT').series).toBe('NPT')
  expect(knownThread('5/8-24 UNEF').series).toBe('UNEF')
  expect(() => knownThread('99 BA')).toThrow()
})
