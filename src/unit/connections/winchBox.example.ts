// The machine of the examples in docs/reference/connections.md: invented, as everything of the Hollinscar Quarry Railway.
import { printProblem } from '../../problem/problem.ts'
import { celsius } from '../../quantity/constructors.ts'
import { readUnit } from '../file/readUnit.ts'
import type { Unit } from '../model/unit.ts'
import { type Connected, connectionsOf } from './connectionsOf.ts'
import type { Contribution, Setting, ShopFacts } from './kind.ts'

/** The unit with these connections (YAML, indented by two); a fault of the file stops the test. */
export function winchUnit(connections = ''): Unit {
  const { unit, faults } = readUnit(winchBox(connections && `connections:\n${connections}`), 'winch-box.unit.yaml')
  if (!unit) throw new Error(faults.map(printProblem).join('\n'))
  return unit
}

/** A connection of that unit, read by its kind. */
export function connected(unit: Unit, id: string): Connected {
  const { connections, faults } = connectionsOf(unit)
  const found = connections.find(({ connection }) => connection.id === id)
  if (!found) throw new Error(`no ${id}: ${faults.map(printProblem).join('\n')}`)
  return found
}

/** What the first connection of these lines adds to the sequence. */
export function contribution(connections: string, id = firstName(connections)): Contribution {
  const unit = winchUnit(connections)
  const { connection, kind, given } = connected(unit, id)
  return kind.steps(connection, given, unit)
}

/** The setting of the first connection of these lines, in a shop at 20 °C. */
export function setting(connections: string, shop: Partial<ShopFacts> = {}): Setting {
  const unit = winchUnit(connections)
  const { connection, kind, given } = connected(unit, firstName(connections))
  const facts = { shims: [], roomTemperature_K: celsius(20), measured: new Set<string>(), ...shop }
  const [found] = kind.settings(connection, given, unit, facts)
  if (!found) throw new Error('no setting')
  return found
}

const firstName = (connections: string): string => /^ *([^:]+):/.exec(connections)?.[1] ?? ''

const winchBox = (connections: string): string => `matchmark: unit/1
unit: winch box of the incline
invented: true
sizes: {in: mm, standing: seen, source: calipers}
housing: box
openings: {top: , bore A: , drain: }
parts:
  box: {material: grey iron class 30, features: {bore A: 90.02, bush bore: 30.0, depth A: 24.60}}
  shaft: {material: mild steel, features: {seat A: 40.014, seat W: 50.04, seal track: 38}}
  wheel: {onto: shaft, material: mild steel, joined: on the bench, features: {bore: 50.0}}
  bearing A: {onto: shaft, look: bearing, joined: on the bench, features: {bore: 39.994, outside: 90.0, width: 20.0}}
  bush: {onto: box, material: bronze, features: {outside: 30.03}}
  wheel ring: {onto: shaft, kind: snap ring, features: {thickness: 1.75}}
  cover A: {onto: box, closes: bore A, features: {spigot: 5.02, pocket: 62.0}}
  cover shims: {goes with: cover A, kind: shims}
  seal: {onto: cover A, kind: lip seal, runs on: shaft}
  wheel key: {onto: shaft, kind: key, keys: wheel}
  sliding dog: {slides on: shaft, features: {bore: 30.0}}
  lid: {onto: box, closes: top}
  lid gasket: {goes with: lid, kind: gasket}
  lid screws: {goes with: lid, kind: fasteners, pieces: 6}
  tabs: {goes with: lid}
  drain plug: {onto: box, closes: drain, kind: plug}
checks:
  float: {does: Read the float, wants: [bearing A, cover A], without: seal, limit: 0.05..0.15 mm, settles: float of the shaft}
  dry fit: {trial: cover A, wants: bearing A}
  lever: {does: Work the lever, wants: lid, settles: finger of the lid}
fills:
  oil: {litres: 4, stands above: [bore A, drain]}
  grease: {what: grease for the rope sheave}
${connections}`
