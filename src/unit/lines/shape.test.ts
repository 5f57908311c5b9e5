import { describe, expect, test } from 'vitest'
import { readUnit } from '../file/readUnit.ts'
import { atHome, onItsWay } from './shape.ts'

const shapes = (parts: string, box = '{}') => {
  const text = `matchmark: unit/1\nunit: small box\nhousing: box\nsizes: {in: mm, standing: seen}\nlines: {1: {at: [0, 0]}}\nparts:\n  box: ${box}\n${parts}`
  const { unit, faults } = readUnit(text, 'small.unit.yaml')
  if (!unit) throw new Error(faults.map(String).join('\n'))
  const mm = ({ low, high }: { low: number; high: number }) =>
    [low, high].map((each) => Number((each * 1000).toFixed(3)))
  const of = (solids: ReturnType<typeof atHome>) =>
    solids.map(({ outside, inside }) => ({ outside: mm(outside), inside: mm(inside), standing: inside.standing }))
  return {
    home: (part: string) => of(atHome(unit.parts.get(part)!, unit)),
    way: (part: string) => of(onItsWay(unit.parts.get(part)!, unit)),
  }
}

describe('a hole that nobody measured', () => {
  test('is as large at least as what runs through it, less a tight fit', () => {
    const { home } = shapes('  shaft: {line 1: "0..50: 30"}\n  plate: {line 1: "20..26: 90/?"}\n')
    expect(home('plate')).toEqual([{ outside: [90, 90], inside: [29.8, 90], standing: 'told' }])
  })

  test('is smaller than what stands against its face', () => {
    const { home } = shapes(
      '  bearing: {line 1: "0..20: 62/30"}\n  plate: {line 1: "20..26: 90/?", seats against: bearing}\n',
    )
    expect(home('plate')).toEqual([{ outside: [90, 90], inside: [0, 62], standing: 'told' }])
  })

  test('is no better known than what bounds it', () => {
    const { home } = shapes('  shaft: {line 1: "0..50: ≈ 30"}\n  plate: {line 1: "20..26: 90/?"}\n')
    expect(home('plate')[0]?.standing).toBe('supposed')
  })

  test('is not bounded by what it may lie in: a key, a mate', () => {
    const key = shapes('  key: {kind: key, line 1: "0..50: 36/30"}\n  wheel: {line 1: "20..26: 90/?"}\n')
    expect(key.home('wheel')[0]?.inside).toEqual([0, 90])
    const mate = shapes('  shaft: {line 1: "0..50: 30"}\n  wheel: {slides on: shaft, line 1: "20..26: 90/?"}\n')
    expect(mate.home('wheel')[0]?.inside).toEqual([0, 90])
  })
})

describe('a snap ring', () => {
  const GROOVED = '  shaft: {line 1: "0..20: 30, 20..22: 28, 22..40: 30"}\n'

  test('on a shaft is opened over the land, and is so much wider outside', () => {
    const { home, way } = shapes(`${GROOVED}  ring: {onto: shaft, kind: snap ring, line 1: "20..22: 40/28"}\n`)
    expect(home('ring')).toEqual([{ outside: [40, 40], inside: [28, 28], standing: 'seen' }])
    expect(way('ring')).toEqual([{ outside: [42, 42], inside: [30, 30], standing: 'usual' }])
  })

  test('in a bore is squeezed through it, and is so much narrower inside', () => {
    const { way } = shapes(
      '  ring: {kind: snap ring, line 1: "20..22: 65/52"}\n',
      '{wall on 1: "0..20: 62, 20..22: 65, 22..30: 62"}',
    )
    expect(way('ring')).toEqual([{ outside: [62, 62], inside: [49, 49], standing: 'usual' }])
  })

  test('without sizes stands proud by 6 % at least of the diameter', () => {
    const { home } = shapes(`${GROOVED}  ring: {onto: shaft, kind: snap ring, line 1: "20..22: ?"}\n`)
    expect(home('ring')).toEqual([{ outside: [31.8, 57], inside: [27.8, 30], standing: 'usual' }])
  })

  test('moves in the shape that was written for its way', () => {
    const { way } = shapes(
      `${GROOVED}  ring: {onto: shaft, kind: snap ring, line 1: "20..22: 40/28", passing: "20..22: 44/31"}\n`,
    )
    expect(way('ring')).toEqual([{ outside: [44, 44], inside: [31, 31], standing: 'seen' }])
  })
})
