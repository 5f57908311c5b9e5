// What bars what in a case that is split: half bores, caps, wheels that come down beside their mates, what hangs loose over the joint.
import { expect, test } from 'vitest'
import { connectionsOf } from '../connections/connectionsOf.ts'
import { contributionOf } from '../connections/contributionOf.ts'
import { readUnit } from '../file/readUnit.ts'
import { derive } from './compile.ts'
import { contradictionsIn } from './contradictions.ts'

const HEAD = `matchmark: unit/1
unit: split case
housing: lower
lines:
  1: {at: [0, 0], ends: [left, right]}
  2: {at: [-30, -40]}
openings: {joint: {split: true}, bore 1: {line: 1, end: left}}
parts:
  lower: {half: lower, wall on 1: "0..20: 60, 100..120: 60", wall on 2: "0..20: 20, 80..100: 20"}
`
const SHAFT = `  shaft: {line 1: "-10..90: 30, 40..60: 50 teeth", way: {path: across the split, through: joint}}\n`
const CAP = `  cap: {half: upper, line 1: "0..20: 100/60", way: {path: across the split, through: joint}}\n`
const UPPER = `  upper: {half: upper, wall on 1: "100..120: 60", closes: joint, way: {path: across the split, through: joint}}\n`

function derived(parts: string) {
  const { unit, faults } = readUnit(HEAD + parts, 'split.yaml')
  if (!unit) throw new Error(faults.map(String).join('\n'))
  const derivation = derive(unit, contributionOf(connectionsOf(unit), unit))
  const step = (id: string) => derivation.problem.operations.find((operation) => operation.id === id)!
  const says = (id: string) => step(id).needs.map(({ reason }) => reason.says)
  return { faults: contradictionsIn(unit, derivation).map(String), step, says }
}

test('a cap and its pedestal, the upper case and the lower, meet at the split and are no fault', () => {
  expect(derived(CAP + UPPER).faults).toEqual([])
})

test('nothing is laid in under a cap, however small it is', () => {
  expect(derived(SHAFT + CAP).says('shaft')).toContain(
    'shaft cannot pass cap: Ø 30 at −10..90 would meet Ø 100/60 at 0..20.',
  )
})

test('a wheel does not come down past its mate: that would be deeper than the mesh', () => {
  const wheel = `  wheel: {line 2: "42..58: 60/10 teeth", meshes: shaft, way: {path: across the split, through: joint}}\n`
  const { says, faults } = derived(SHAFT + wheel)
  expect(faults).toEqual([])
  expect(says('wheel')).toContain('wheel cannot pass shaft: Ø 60/10 at 42..58 would meet Ø 50 at 40..60.')
  expect(says('shaft').filter((said) => said.includes('wheel'))).toEqual([])
})

test('a chain that hangs over the joint is taken along by the shaft that it goes home with, and goes on no later', () => {
  const chain = `  chain: {line 1: "70..80: 60/40", way: {park through: joint, path: loop, held by: a wire, home with: shaft}}\n`
  const { says } = derived(SHAFT + chain)
  expect(says('shaft')).toEqual(['shaft brings chain home: it has to be parked first.'])
  expect(says('chain')).toContain('chain cannot pass shaft: Ø 60/40 at 70..80 would meet Ø 30 at −10..90.')
})

const CLUSTER = `  spindle: {line 2: "0..100: 19.99"}
  cluster: {line 2: "30..50: 60/24 teeth", way: {park through: joint, path: tilt, resting: on the floor, parked at: [0, -5], home with: spindle}}
  bush: {onto: cluster, kind: press fit, joined: on the bench, line 2: "30..50: 24/20", slides on: spindle}
`
test('what is pressed into a body on the bench does not meet it where it will be parked', () => {
  const { faults, says } = derived(CLUSTER)
  expect(faults).toEqual([])
  expect(says('bush')).toEqual(['bush goes onto cluster on the bench.'])
})

test('a part of a parked body is home when the body is brought home', () => {
  const check = `checks: {float: {wants: bush}}\n`
  const { step } = derived(CLUSTER + check)
  expect(step('float').needs.map(({ anyOf }) => anyOf)).toEqual([
    [{ done: ['bush', 'cluster', 'spindle'], notDone: [] }],
  ])
})

test('what is joined in the housing does not travel with its carrier, and work on it is work in the housing', () => {
  const nut = `  nut: {onto: shaft, joined: in the housing, comes from: left, line 1: "-8..-2: 40..200/30"}\n`
  const cover = `  cover: {closes: bore 1, line 1: "-30..-20: 120"}\n`
  const { says, step } = derived(
    `${SHAFT + nut + cover}  ring: {onto: shaft, kind: hot fit, joined: in the housing, comes from: left, line 1: "22..30: 45/30"}\n`,
  )
  expect(says('shaft').filter((said) => said.includes('nut'))).toEqual([])
  const feel = step('feel ring seated')
  expect(feel.modes.map(({ setup }) => setup.workpiece)).toEqual(['lower'])
  expect(says('feel ring seated')).toContain('feel ring seated goes through the bore 1, which cover shuts.')
})

test('the bench work on a cover that is joined in the housing is done on the cover', () => {
  const cover = `  cover: {onto: upper, joined: in the housing, line 1: "-30..-20: 120/31"}\n  seal: {onto: cover, joined: on the bench}\n`
  const { step } = derived(UPPER + cover)
  expect(step('seal').modes.map(({ setup }) => setup.workpiece)).toEqual(['cover'])
})

test('the lock of a fixing inside the case is closed while the case is open', () => {
  const connections = `connections:\n  nuts: {kind: fasteners, holds: cap, own step: true, pieces: 2, lock: {with: tabs, own step: true}}\n`
  const { says } = derived(CAP + UPPER + connections)
  expect(says('lock nuts')).toContain('lock nuts goes through the joint, which upper shuts.')
})
