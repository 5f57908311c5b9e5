// The machine of the examples and tests of this room: the tail box of the slate mill, invented like all of the Hollinscar Quarry Railway.

import { readJob } from '../../job/file/readJob.ts'
import { kitOf } from '../../job/kit.ts'
import { verdictsOf } from '../../job/verdicts.ts'
import { renewalsOf, sequenceOf, settingsOf, workUp } from '../../job/workUp.ts'
import { printProblem } from '../../problem/problem.ts'
import type { System } from '../../quantity/printQuantity.ts'
import { readUnit } from '../../unit/file/readUnit.ts'
import type { Unit } from '../../unit/model/unit.ts'
import type { JobBookInput } from '../documents/jobBookInput.ts'

/** @param change what to write instead of what: to try a name or a size */
export function tailBox(change: (text: string) => string = (text) => text): Unit {
  const { unit, faults } = readUnit(change(TAIL_BOX), 'tail-box.unit.yaml')
  if (!unit) throw new Error(faults.map(printProblem).join('\n'))
  return unit
}

/** A job on it, worked up as the command line does. */
export function tailBoxBook(change?: (text: string) => string, system: System = 'metric'): JobBookInput {
  const { job, faults } = readJob(change ? change(JOB) : JOB, 'j52.job.yaml')
  if (!job) throw new Error(faults.map(printProblem).join('\n'))
  const work = workUp({ unit: tailBox(change), job })
  return {
    work,
    result: sequenceOf(work, { effort: 200_000 }),
    settings: settingsOf(work),
    kit: kitOf(work.unit, job, renewalsOf(work), system),
    verdicts: verdictsOf(work.unit, job),
    system,
    date: '25 November 2026',
    person: 'M. Ashdown',
  }
}

const TAIL_BOX = `matchmark: unit/1
unit: tail box of the slate mill
invented: true
about: Carries the tail end of the mill's main shaft and drives the feed through one pair of wheels. Invented, as all of the Hollinscar Quarry Railway.
revision: B
sizes: {in: mm, standing: seen, source: calipers}
housing: box
lines:
  1: {at: [0, 0], ends: [outside A, outside B], datum: machined outside face of wall A}
  2: {at: [-94, 0], ends: [outside A, wall B]}
openings:
  top: {size: 112 × 150}
  bore A: {line: 1, end: "-"}
  bore B: {line: 1, end: +}
  bore C: {line: 2, end: "-"}
  drain: {}
  hole A: {in: cover A}
  filler: {in: lid}
parts:
  box:
    material: grey iron
    mass: ≈ 41
    look: casting
    wall on 1: "0..23: 80.010, 23..25.65: 83.5, 25.65..28: 80.010, 148..176: 72.015"
    wall on 2: "0..28: 90.02, 148..176: closed"
    features:
      bore A: {size: 80.01, new: 80.000..80.019, worn: ..80.030, source: works drawing HQ-52 (invented), what: seat of bearing A}
  shaft:
    material: steel
    mass: 2.4
    look: shaft
    life: inspect
    number: HQ-52/1
    line 1: "-74..-16: 30, -16..4: 38, 4..23: 40.012, 23..36: 54, 36..82: 45.99, 82..83.85: 43.5, 83.85..88: 46, 88..153: 42, 153..170: 35.010, 170..171.6: 33, 171.6..175: 35.010"
    features:
      seat A: {size: 40.012, new: 40.002..40.018, worn: 39.995.., source: works drawing HQ-52 (invented), what: seat of bearing A}
      seat B: {size: 35.010, new: 35.002..35.018, worn: 34.995.., source: works drawing HQ-52 (invented), what: seat of bearing B}
      track: {size: 38.00, new: 37.938..38.000, worn: 37.850.., source: works drawing HQ-52 (invented), what: where the lip of the seal runs}
    takes: 10 min
    cautions: ["2.4 kg and the wheel with it: lower it with a strap, fingers out of the bore"]
  wheel key: {onto: shaft, kind: key, look: key, mass: 0.04, line 1: "38..78: 53/46", keys: wheel}
  wheel:
    onto: shaft
    slides on: shaft
    material: steel, case hardened
    mass: 3.6
    look: gear
    life: inspect
    line 1: "36..82: 72/46, 38..74: 136/46 teeth"
    way: {park through: top, path: by hand, held by: strap, home with: shaft}
  wheel ring:
    onto: shaft
    kind: snap ring
    life: renew
    mass: 0.02
    line 1: "82..83.75: 62/43.5"
    passing: "82..83.75: 66/46"
    reach: top
    supply: {from: bearing factor, price: £0.80, lead: from stock}
  wall ring:
    kind: snap ring
    life: renew
    comes from: outside A
    line 1: "23..25.5: 83.5/62"
    passing: "23..25.5: 80.01/58"
  bearing A:
    onto: shaft
    joined: in the housing
    look: bearing
    life: inspect
    number: "6208"
    mass: 0.37
    line 1: "5..23: 80/40"
    supply: {from: bearing factor, price: £19, lead: 3 days}
    features: {bore: {size: 40.00, new: 39.988..40.000, source: "ISO 492, normal class (from memory)"}}
  bearing B:
    onto: shaft
    joined: in the housing
    look: bearing
    life: inspect
    number: "6207"
    mass: 0.29
    line 1: "153..170: 72/35"
    supply: {from: bearing factor, price: £17, lead: 3 days}
    features: {bore: {size: 35.00, new: 34.988..35.000, source: "ISO 492, normal class (from memory)"}}
  end ring:
    onto: shaft
    kind: snap ring
    life: renew
    line 1: "170..171.5: 50/33"
    passing: "170..171.5: 50/35.01"
  cover A:
    mass: 1.9
    material: grey iron
    look: casting
    closes: bore A
    line 1: "-22..-8: 120/55, -8..-0.4: 120/46, -0.4..4.9: 80/46"
    flat: {towards line: 2, at: 46}
    note: The drain groove looks down.
  cover A gasket: {life: renew, look: gasket, material: gasket paper, line 1: "-0.4..0: 120/80", flat: {towards line: 2, at: 46}}
  cover A screws: {pieces: 6, look: fastener, mass: 0.12}
  seal:
    onto: cover A
    kind: lip seal
    look: seal
    life: renew
    closes: hole A
    runs on: shaft
    line 1: "-16..-8: 55/38"
    tool: {sleeve: "-16..-8: 31/30.2"}
    supply: {from: seal merchant, price: £4.20}
  coupling key: {onto: shaft, kind: key, look: key, line 1: "-70..-25: 36/30"}
  cap B: {mass: 1.1, closes: bore B, line 1: "172.4..176.4: 72/50, 176.4..190: 110"}
  cap B gasket: {life: renew, look: gasket, material: gasket paper}
  cap B screws: {pieces: 4, look: fastener, mass: 0.08}
  cartridge:
    mass: 5.2
    closes: bore C
    meshes: wheel
    line 2: "-10..0: 130, 0..26: 90, 26..40: 40, 40..76: 68 teeth"
    flat: {towards line: 1, at: 46}
  lid: {closes: top}
  drain plug: {closes: drain, kind: plug}
  filler plug: {onto: lid, closes: filler, kind: plug}
connections:
  seat of bearing A: {kind: cylindrical fit, fit: hot, shaft: shaft.seat A, bore: bearing A.bore, moves: bearing A, hub outside: 48, length: 18, heated part: "bearing, metal cage", source: works sheet HQ-52/S (invented)}
  seat of bearing B: {kind: cylindrical fit, fit: press, shaft: shaft.seat B, bore: bearing B.bore, moves: bearing B, hub outside: 43, length: 17, surfaces: oiled}
  cover A fixing:
    kind: fasteners
    holds: cover A
    into: box
    screws: cover A screws
    thread: M8
    grade: 8.8
    condition: dry
    stages: [10 N·m, 22 N·m]
    circle: 100
    pieces: 6
    first angle: 30
    lengths: {A: {length: 30, holes: [1, 2, 4, 5]}, B: {length: 45, holes: [3, 6]}}
    own step: true
    takes: 6 min
  cap B fixing: {kind: fasteners, holds: cap B, into: box, screws: cap B screws, thread: M8, grade: 8.8, condition: dry, torque: 20 N·m, circle: 92, pieces: 4}
  paper under cap B: {kind: gasket, gasket: cap B gasket, squeezed by: cap B, against: box}
  paper under cover A: {kind: gasket, gasket: cover A gasket, squeezed by: cover A, against: box, free: 0.45, squeezed: 0.40, holes: the drain groove}
  lip of the seal: {kind: lip seal, seal: seal, in: cover A, runs on: shaft.track, lip to: the oil, over: the coupling keyway}
  lid joint: {kind: gasket, squeezed by: lid, against: box, sealant: {what: joint sealant, open time: 20 min, cure: 1 h, cure before: oil}, source: the tube of the invented sealant}
checks:
  wheel ring turns: {does: Turn the wheel ring in its groove, wants: [wheel ring], reach: top}
  float: {does: Read the end float at the coupling end, wants: [bearing A, bearing B, cover A], without: [seal], limit: 0.05..0.15 mm, takes: 6 min, tools: [dial gauge], source: works sheet HQ-52/S (invented)}
  backlash: {does: Read the backlash at three places, wants: [wheel, bearing A, bearing B, cartridge], reach: top, limit: 0.12..0.20 mm, takes: 6 min, tools: [dial gauge], source: works sheet HQ-52/S (invented)}
fills:
  oil: {litres: 1.6, what: gear oil, through: filler, stands above: [bore A, bore B, bore C, drain]}
lies:
  upright: [wheel, shaft, wheel ring, wheel ring turns, cartridge, backlash, lid, oil, filler plug]
  wall A up: [bearing A, cover A, cover A fixing, float, seal]
  wall B up: [bearing B, end ring, cap B]
turning: {takes: 4 min, hazard: 1}
sets: {wheel and cartridge: {parts: [wheel, cartridge], why: run together}}
`

const JOB = `matchmark: job/1
job: J52
invented: true
unit: tail-box.unit.yaml
owner: Hollinscar Quarry Railway
sizes: {in: mm}
as found:
  bearing A: {where: shelf 3, condition: blue at the inner ring, decision: renew}
  wheel: {where: bag 12, condition: two teeth chipped at the edge}
  seal: {where: thrown away, condition: hard}
readings:
  - {part: shaft, feature: seat A, reads: 40.012, with: micrometer 25-50, at: 20 °C, by: M. Ashdown, date: 2026-11-20}
  - {part: shaft, feature: seat A, reads: 39.998, with: micrometer 25-50, at: 20 °C, by: M. Ashdown, date: 2026-11-20}
  - {part: shaft, feature: track, reads: 37.78, with: micrometer 25-50, by: M. Ashdown, date: 2026-11-20}
  - {part: box, feature: bore A, reads: 80.012, with: bore gauge 50-100, by: M. Ashdown, date: 2026-11-21}
  - {part: bearing A, feature: bore, reads: 39.994, with: bore gauge 35-50, by: M. Ashdown, date: 2026-11-21}
plant:
  people: 2
  press: {rating: 100 kN}
  oven: {up to: 150 °C}
  instruments:
    micrometer 25-50: {uncertainty: 0.003 mm, due: 2027-03-01}
    bore gauge 50-100: {uncertainty: 0.004 mm}
done: []
`
