import { expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { readUnit } from '../file/readUnit.ts'
import { placed } from './placed.ts'

const unitWith = (parts: string) => {
  const text = `matchmark: unit/1
unit: idler of the incline winch
invented: true
sizes: {in: mm, standing: seen}
housing: box
lines: {1: {}}
parts:
  box: {wall on 1: "0..20: 52"}
  shaft: {line 1: "0..40: 30, 40..60: 36", features: {collar: {size: 40}}}
${parts}`
  const { unit, faults } = readUnit(text, 'idler.unit.yaml')
  if (!unit) throw new Error(faults.map(printProblem).join('\n'))
  return placed(unit)
}

const firstRing = (result: ReturnType<typeof unitWith>, part: string) =>
  result.unit.parts.get(part)?.rings.get('1')?.[0]

test('a part written in its own measure stands where its face meets the other, a gasket apart', () => {
  const result = unitWith(
    '  spacer: {onto: shaft, line 1: "0..10: 40/30", stands: {face: 10, against: shaft, at: 40, gap: -0.4}}',
  )
  expect(result.faults).toEqual([])
  expect(firstRing(result, 'spacer')?.from?.low).toBeCloseTo(0.0296, 12)
  expect(firstRing(result, 'spacer')?.to?.high).toBeCloseTo(0.0396, 12)
})

test('a seat may be a feature, and seats stand on seats', () => {
  const result =
    unitWith(`  spacer: {onto: shaft, line 1: "0..10: 40/30", stands: {face: 10, against: shaft, at: shaft.collar}}
  ring: {onto: shaft, line 1: "0..2: 40/30", stands: {face: 2, against: spacer, at: 0}}`)
  expect(firstRing(result, 'ring')?.from?.low).toBeCloseTo(0.028, 12)
})

test('a size that nobody took leaves the position not known', () => {
  const result = unitWith(
    '  spacer: {onto: shaft, line 1: "0..10: 40/30", stands: {face: 10, against: shaft, at: "?"}}',
  )
  expect(firstRing(result, 'spacer')?.from).toBeUndefined()
})

test('two seats of one part that disagree are a fault at its place', () => {
  const { faults } = unitWith(`  spacer:
    onto: shaft
    line 1: "0..10: 40/30"
    stands: [{face: 10, against: shaft, at: 40}, {face: 0, against: box, at: 20}]`)
  expect(faults.map(printProblem)).toEqual([
    'idler.unit.yaml:10:3: spacer stands against shaft and against box, but the two seats put it 10 mm apart. Measure both faces again, or leave out the seat that is not one.',
  ])
})

test('seats that go round are a fault, not a hang', () => {
  const { faults } = unitWith(`  a: {line 1: "0..10: 40/30", stands: {face: 10, against: b, at: 0}}
  b: {line 1: "0..10: 40/30", stands: {face: 10, against: a, at: 0}}`)
  expect(faults[0]?.code).toBe('SEATS_GO_ROUND')
})
