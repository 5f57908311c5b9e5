import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { printProblem } from '../../problem/problem.ts'
import { readUnit } from '../../unit/file/readUnit.ts'
import { tailBox } from '../../unit/file/tailBox.example.ts'
import { checkJobAgainst } from '../checkJobAgainst.ts'
import { withReadings } from '../withReadings.ts'
import { readJob } from './readJob.ts'

const JOB = `matchmark: job/1
job: J41
invented: true
unit: tail-box.unit.yaml
serial: 1187
owner: Hollinscar Quarry Railway
sizes: {in: mm}
as found:
  bearing A: {where: shelf 3, condition: blue at the inner ring, decision: renew}
  seal:
readings:
  - {part: shaft, feature: seat A, reads: 40.012, with: micrometer 25-50, at: 20 °C, by: M. Ashdown, date: 2026-11-20}
  - {part: shaft, feature: seat A, reads: 40.009, with: micrometer 25-50, where: across the keyway}
  - {part: shaft, feature: seat B, reads: "?"}
shims in stock:
  - {id: S1, reads: 0.102, nominal: 0.10, for: cover A}
plant:
  people: 2
  room: 18 °C
  press: {rating: 100 kN}
  oven: {up to: 150 °C}
  instruments: {micrometer 25-50: {uncertainty: 0.003 mm, due: 2027-03-01}}
  wrenches: [{name: click wrench, range: 20..100 N·m}]
done: [wheel key, warm bearing A]
`
const unit = readUnit(tailBox, 'tail-box.unit.yaml').unit!
const faults = (text: string) => {
  const { job, faults: found } = readJob(text, 'j.yaml')
  return [...found, ...(job ? checkJobAgainst(unit, job) : [])].map(printProblem)
}
const HEAD = 'matchmark: job/1\njob: J41\nunit: tail-box.unit.yaml\n'

test('the job file is read as it was written', () => {
  const { job } = readJob(JOB, 'j41.job.yaml')
  expect(job).toMatchObject({
    id: 'J41',
    invented: true,
    unit: 'tail-box.unit.yaml',
    serial: '1187',
    owner: 'Hollinscar Quarry Railway',
    shims: [
      {
        id: 'S1',
        reads: { low: 0.000102, standing: 'seen' },
        nominal: { low: 0.0001, standing: 'told' },
        for: 'cover A',
      },
    ],
    plant: {
      people: 2,
      room: { low: 291.15 },
      press: { rating: { low: 100_000 } },
      oven: { upTo: { high: 423.15 } },
      wrenches: [{ name: 'click wrench', range: { low: 20, high: 100 } }],
    },
    done: [{ step: 'wheel key' }, { step: 'warm bearing A', at: { line: 24, column: 19 } }],
  })
  expect(job!.asFound.get('bearing A')).toMatchObject({
    where: 'shelf 3',
    condition: 'blue at the inner ring',
    decision: 'renew',
  })
  expect(job!.plant.instruments.get('micrometer 25-50')).toMatchObject({
    uncertainty: { low: 0.000003 },
    due: '2027-03-01',
  })
  expect(job!.readings).toHaveLength(3)
  expect(job!.readings[0]).toMatchObject({
    part: 'shaft',
    feature: 'seat A',
    reads: { low: 0.040012, standing: 'seen' },
    temperature: { low: 293.15 },
  })
  expect(checkJobAgainst(unit, job!)).toEqual([])
})

test('readings take the place of the size; several give the range; what could not be read changes nothing', () => {
  const measured = withReadings(unit, readJob(JOB, 'j41.job.yaml').job!)
  const [seatA, seatB] = measured.parts.get('shaft')!.features
  expect(seatA!.size).toEqual({
    low: 0.040009,
    high: 0.040012,
    standing: 'seen',
    source: 'micrometer 25-50, at 20 °C, M. Ashdown, 2026-11-20; micrometer 25-50, across the keyway',
  })
  expect(seatA!.limitNew).toEqual(unit.parts.get('shaft')!.features[0]!.limitNew)
  expect(seatB).toBe(unit.parts.get('shaft')!.features[1])
  expect(unit.parts.get('shaft')!.features[0]!.size!.source).toBe('calipers')
})

test('a guessed reading stays a guess', () => {
  const { job } = readJob(`${HEAD}readings: {part: shaft, feature: seat A, reads: ≈ 40}\n`, 'j.yaml')
  expect(withReadings(unit, job!).parts.get('shaft')!.features[0]!.size).toMatchObject({
    low: 0.04,
    standing: 'supposed',
    source: 'reading of the job',
  })
})

test('what the unit does not have is told at its place', () => {
  expect(
    faults(
      `${HEAD}as found: {bearing AA: {}}\nreadings:\n  - {part: shaft, feature: seat a1}\n  - {part: axle, feature: seat A}\nshims in stock: [{id: S1, for: cover AA}]\nvariant: lat\n`,
    ),
  ).toEqual([
    "j.yaml:4:12: 'as found' names 'bearing AA', which is no part of tail-box.unit.yaml; did you mean 'bearing A'? Known are: box, shaft, wheel key, wheel, wheel ring, wall ring, bearing A, bearing B, end ring, cover A, seal, coupling key, ….",
    "j.yaml:6:5: 'feature' names 'seat a1', which is no feature of 'shaft' of tail-box.unit.yaml; did you mean 'seat A'? Known are: seat A, seat B.",
    "j.yaml:7:5: 'part' names 'axle', which is no part of tail-box.unit.yaml. Known are: box, shaft, wheel key, wheel, wheel ring, wall ring, bearing A, bearing B, end ring, cover A, seal, coupling key, ….",
    "j.yaml:8:18: 'for' names 'cover AA', which is no part or connection of tail-box.unit.yaml; did you mean 'cover A'? Known are: box, shaft, wheel key, wheel, wheel ring, wall ring, bearing A, bearing B, end ring, cover A, seal, coupling key, ….",
    "j.yaml:9:10: 'variant' names 'lat', which is no variant of tail-box.unit.yaml; did you mean 'late'? Known are: early, late.",
  ])
  expect(faults(`${HEAD}serial: B7\n`)).toEqual([
    "j.yaml:4:9: The serial number B7 belongs to no single variant of the unit (early ..1204, late 1205..). Look at the plate again, widen the serials in the unit file, or write 'variant' instead.",
  ])
})

test('a faulty job file is told whole, never thrown', () => {
  expect(
    faults(
      `${HEAD}redings: []\nreadings:\n  - {part: shaft, reads: 4 kg}\nplant: {people: 0, press: {rating: 3 mm}}\n`,
    ),
  ).toEqual([
    "j.yaml:4:1: 'redings' is not known here; did you mean 'readings'? Write it that way, or take it out.",
    "j.yaml:6:5: 'feature' is missing in readings › 1. Write 'feature:' and a name.",
    "j.yaml:6:28: 'kg' (kilogram) is a unit of mass, not of length. Write the length in one of m, cm, mm, µm, in, ft, thou, µin.",
    "j.yaml:7:17: 'people' is '0'; expected a whole number, 1 or more. Write it that way, or leave it out when it is not known.",
    "j.yaml:7:38: 'mm' (millimetre) is a unit of length, not of force. Write the force in one of N, kN, kgf, tf, lbf, ozf, long tonf, short tonf.",
  ])
  expect(faults('matchmark: unit/1')).toEqual([
    "j.yaml:1:12: This file says 'matchmark: unit/1'; expected 'matchmark: job/1'. Give the file of the right form, or write the form in its first line.",
  ])
  for (let length = 0; length < JOB.length; length += 7) {
    const { job, faults: found } = readJob(JOB.slice(0, length), 'cut.yaml')
    expect(found.length === 0).toBe(job !== undefined)
  }
})

test('people are a number, or one to four by name with what they can do', () => {
  const plant = (people: string) => readJob(`${HEAD}plant: {people: ${people}}\n`, 'j.yaml')
  expect(plant('3').job!.plant).toMatchObject({ people: 3 })
  expect(plant('3').job!.plant.crew).toBeUndefined()
  expect(plant('[{name: M. Ashdown, skills: [fitter, press]}, {name: J. Tarn}]').job!.plant).toMatchObject({
    people: 2,
    crew: [
      { name: 'M. Ashdown', skills: ['fitter', 'press'] },
      { name: 'J. Tarn', skills: [] },
    ],
  })
  const told = (people: string) => plant(people).faults.map(printProblem)
  const next = 'Write it that way, or leave it out when it is not known.'
  expect(told('[]')).toEqual([`j.yaml:4:9: 'people' is a list of 0; expected 1 to 4 people by name. ${next}`])
  expect(told('[{name: A}, {name: B}, {name: C}, {name: D}, {name: E}]')).toEqual([
    `j.yaml:4:9: 'people' is a list of 5; expected 1 to 4 people by name. ${next}`,
  ])
  expect(told('[{name: A}, {name: A}]')).toEqual([
    `j.yaml:4:36: 'name' is 'A' again; expected each person once. ${next}`,
  ])
  expect(told('[{skills: press}]')).toEqual([
    "j.yaml:4:18: 'name' is missing in plant › people › 1. Write 'name:' and a name.",
  ])
  expect(told('two')).toEqual([
    `j.yaml:4:17: 'people' is 'two'; expected a number of people, or a list of {name: M. Ashdown, skills: [fitter, press]}. ${next}`,
  ])
})

test('the job file of the reference page is read', () => {
  const page = readFileSync(new URL('../../../docs/reference/unit-file.md', import.meta.url), 'utf8')
  const [, example = ''] = /```yaml\n(matchmark: job\/1\n.*?)```/s.exec(page) ?? []
  const { job, faults: found } = readJob(example, 'unit-file.md')
  expect(found.map(printProblem)).toEqual([])
  expect(job!.readings[0]).toMatchObject({ part: 'shaft', feature: 'seat A', with: 'micrometer 25-50' })
})
