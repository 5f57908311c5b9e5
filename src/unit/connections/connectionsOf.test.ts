import { expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import type { Part, Unit } from '../model/unit.ts'
import { connectionsOf } from './connectionsOf.ts'
import { winchUnit } from './winchBox.example.ts'

const faults = (connections: string) => connectionsOf(winchUnit(connections)).faults.map(printProblem)
const ids = (connections: string) =>
  connectionsOf(winchUnit(connections)).connections.map(({ connection }) => connection.id)

test('a kind that is not known is named with its place and the nearest name', () => {
  expect(faults('  ring: {kind: snap rng, ring: wheel ring}')).toEqual([
    "winch-box.unit.yaml:32:3: 'snap rng' is no kind of connection (at 'ring'). Did you mean 'snap ring'? Known kinds: gasket, bearing shims, engagement, cylindrical fit, snap ring, lip seal, fasteners. What each asks for: docs/reference/connections.md.",
  ])
})

test('a key that is not known is named with the nearest one, and the rest still counts', () => {
  const text = '  bolts: {kind: fasteners, hold: lid, holds: lid, own stp: true, thread: M10}'
  expect(faults(text)[1]).toContain(
    "'own stp' is nothing that a connection of the kind 'fasteners' knows (at 'bolts'). Did you mean 'own step'?",
  )
  expect(ids(text)).toContain('bolts')
})

test('a key inside a block is found as well', () => {
  const [fault] = faults('  bolts: {kind: fasteners, holds: lid, lock: {with: wire, own stap: true}}')
  expect(fault).toContain("'own stap' is nothing")
  expect(fault).toContain("Did you mean 'own step'?")
})

test('a value that cannot be read counts as not given', () => {
  const text = '  bolts: {kind: fasteners, holds: lid, torque: 25 kg}'
  expect(faults(text)[0]).toMatch(
    /^winch-box.unit.yaml:32:\d+: 'torque' of 'bolts' cannot be read, received "25 kg": 'kg'/,
  )
  expect(ids(text)).toContain('bolts')
})

test('a connection without what it cannot do without is left out, and says so', () => {
  const text = '  joint: {kind: gasket, free: 0.5}'
  expect(faults(text)[0]).toContain("'joint' is a connection of the kind 'gasket' without 'squeezed by'.")
  expect(ids(text)).not.toContain('joint')
})

test('a part that is not in the unit is named with the nearest', () => {
  expect(faults('  bolts: {kind: fasteners, holds: ldi}')[0]).toContain(
    "names the part 'ldi', which is not in the unit. Did you mean 'lid'?",
  )
})

test('words at parts become connections, or leave to overlap, or ask', () => {
  const unit = winchUnit()
  const { connections, overlaps, questions } = connectionsOf(unit)
  expect(connections.map(({ connection }) => connection.id)).toEqual([
    'wheel ring: snap ring',
    'cover shims: shims',
    'seal: lip seal',
    'lid gasket: gasket',
    'lid screws: fasteners',
  ])
  expect(overlaps).toEqual([{ mover: 'wheel key', other: 'shaft' }])
  expect(questions).toEqual([])
})

test('a gasket on the housing that goes with nothing is a question, and an unknown word a fault', () => {
  const { goesWith: _, ...loose } = { ...winchUnit().parts.get('lid gasket') } as Part
  const { questions } = connectionsOf(withPart(loose))
  expect(questions.map(({ asks }) => asks)).toEqual(['With which part does lid gasket go in? Give `goes with`.'])
  const [fault] = connectionsOf(withPart({ ...loose, kind: 'gaskett' })).faults
  expect(fault?.message).toBe("'gaskett' is no word for how 'lid gasket' is connected. Did you mean 'gasket'?")
})

test('a word yields to the connection in full of the same joint, and only to that', () => {
  expect(ids('  ring in groove: {kind: snap ring, ring: wheel ring, keeps: wheel}')).not.toContain(
    'wheel ring: snap ring',
  )
  const unit = winchUnit('  seat in the box: {kind: press fit, shaft: bearing A.outside, bore: box.bore A}')
  const bearing = { ...unit.parts.get('bearing A'), kind: 'hot fit' } as Part
  const both = connectionsOf({ ...unit, parts: new Map([...unit.parts, ['bearing A', bearing]]) })
  expect(both.connections.map(({ connection }) => connection.id)).toContain('bearing A: hot fit')
})

test('a connection may name its kind by the word: press fit is a cylindrical fit that is pressed', () => {
  const { connections } = connectionsOf(winchUnit('  seat: {kind: press fit, moves: wheel}'))
  expect(connections[0]?.kind.name).toBe('cylindrical fit')
  expect(connections[0]?.given).toEqual({ fit: 'press', moves: 'wheel' })
})

function withPart(part: Part): Unit {
  const unit = winchUnit()
  return { ...unit, parts: new Map([...unit.parts, [part.id, part]]) }
}
