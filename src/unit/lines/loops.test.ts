import { expect, test } from 'vitest'
import { readUnit } from '../file/readUnit.ts'
import type { Unit } from '../model/unit.ts'
import { type Face, facesOf, lengthOf, loopBetween } from './loops.ts'

const read = (parts: string): Unit => {
  const text = `matchmark: unit/1\nunit: small box\nhousing: box\nsizes: {in: mm, standing: seen}\nlines: {1: {at: [0, 0]}}\nparts:\n${parts}`
  const { unit, faults } = readUnit(text, 'small.unit.yaml')
  if (!unit) throw new Error(faults.map(String).join('\n'))
  return unit
}

const face = (unit: Unit, part: string, at_mm: number, looks: Face['looks']): Face => {
  const found = facesOf(unit.parts.get(part)!, '1', unit).find(
    (each) => each.looks === looks && Math.abs(each.at.low * 1000 - at_mm) < 0.01,
  )
  if (!found) throw new Error(`${part} has no face at ${at_mm}`)
  return found
}

const inMm = (unit: Unit, from: Face, to: Face) =>
  loopBetween({ unit, line: '1', from, to })?.map(({ parts, size, sign }) => [
    parts.join(' to '),
    Number((sign * size.low * 1000).toFixed(3)),
  ])

test('the faces of a part are its steps, seen from the side that is free', () => {
  const unit = read(BEARING)
  const told = (part: string) =>
    facesOf(unit.parts.get(part)!, '1', unit).map(({ at, looks }) => `${Number((at.low * 1000).toFixed(3))}${looks}`)
  expect(told('cover')).toEqual(['-12-', '-0.5+', '5.8+'])
  // The bore of 62 ends against the wall that is bored 50: that shoulder is a face.
  expect(told('box')).toEqual(['0-', '22-', '30+'])
})

// A bearing between a shoulder of its bore and the spigot of a cover: float = depth of the shoulder − bearing − spigot + gasket.
const BEARING = `  box: {wall on 1: "0..22: 62, 22..30: 50"}
  bearing: {line 1: "6..22: 62/30", seats against: box}
  cover: {line 1: "-12..-0.5: 90/40, -0.5..5.8: 62/40", seats against: box}
`

test('a float is the sizes from the spigot round through flange, gasket, box and shoulder to the bearing', () => {
  const unit = read(BEARING)
  const [spigot, outer] = [face(unit, 'cover', 5.8, '+'), face(unit, 'bearing', 6, '-')]
  // By hand: −6.3 spigot, + 0.5 gasket, + 22 depth of the shoulder, − 16 bearing = 0.2.
  expect(inMm(unit, spigot, outer)).toEqual([
    ['cover', -6.3],
    ['cover to box', 0.5],
    ['box', 22],
    ['bearing', -16],
  ])
  expect(lengthOf(loopBetween({ unit, line: '1', from: spigot, to: outer })!).low).toBeCloseTo(0.0002, 9)
})

test('where nobody said what stands against what there is no loop', () => {
  const unit = read(BEARING.replaceAll(', seats against: box', ''))
  expect(inMm(unit, face(unit, 'cover', 5.8, '+'), face(unit, 'bearing', 6, '-'))).toBeUndefined()
})

test('a spacer and two bearings on a shaft: only their widths lie between', () => {
  const unit = read(
    `  box: {}
  shaft: {line 1: "-20..0: 30, 0..5: 40, 5..80: 30"}
  inner: {line 1: "5..23: 62/30", seats against: shaft}
  spacer: {line 1: "23..53: 40/30", seats against: inner}
`.replace('23..53', '23..53'),
  )
  const [collar, end] = [face(unit, 'shaft', 5, '+'), face(unit, 'spacer', 53, '+')]
  expect(inMm(unit, collar, end)).toEqual([
    ['inner', 18],
    ['spacer', 30],
  ])
})

test('a preload is below zero', () => {
  const unit = read(`  box: {wall on 1: "0..22: 62, 22..30: 50"}
  bearing: {line 1: "5.7..22: 62/30", seats against: box}
  cover: {line 1: "-12..0: 90/40, 0..5.8: 62/40", seats against: box}
`)
  const terms = loopBetween({
    unit,
    line: '1',
    from: face(unit, 'cover', 5.8, '+'),
    to: face(unit, 'bearing', 5.7, '-'),
  })!
  expect(lengthOf(terms).low * 1000).toBeCloseTo(-0.1, 9)
})

test('a loop is no better known than its worst size', () => {
  const unit = read(`  box: {wall on 1: "0..22: 62, 22..30: 50"}
  bearing: {line 1: "≈ 6..22: 62/30", seats against: box}
  cover: {line 1: "-12..0: 90/40, 0..5.8: 62/40", seats against: box}
`)
  const terms = loopBetween({
    unit,
    line: '1',
    from: face(unit, 'cover', 5.8, '+'),
    to: face(unit, 'bearing', 6, '-'),
  })!
  expect(lengthOf(terms).standing).toBe('supposed')
})
