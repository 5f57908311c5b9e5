import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  degree,
  footPerMinute,
  inch,
  kilometrePerHour,
  kilowatt,
  milePerHour,
  mm,
  newtonMetre,
  rpm,
} from '../../quantity/constructors.ts'
import { MATERIALS } from '../materials.ts'
import { differential } from './differential.ts'
import { gearTrain, trainRatio } from './gearTrain.ts'
import { roadSpeed, ropeSpeed } from './outputSpeed.ts'
import { planetarySet, planetaryTorques, willis } from './planetary.ts'
import { torqueOfPower } from './speedAndPower.ts'
import { toothStrength } from './toothStrength.ts'
import { wormDrive, wormSet } from './wormSet.ts'

test('an idler turns the direction round and leaves the ratio', () => {
  expect(
    trainRatio([
      { driver: 20, driven: 33 },
      { driver: 33, driven: 60 },
    ]),
  ).toBeCloseTo(3, 12)
  expect(trainRatio([{ driver: 20, driven: 60 }])).toBeCloseTo(-3, 12)
  expect(gearTrain({ meshes: [{ driver: 20, driven: 60 }], speed: rpm(300) }).direction).toBe('opposite')
})

test('shafts that cross leave the direction open; a train loses torque at every mesh', () => {
  const crossing = gearTrain({
    meshes: [{ driver: 10, driven: 40, kind: 'bevel' }],
    speed: rpm(400),
    torque: newtonMetre(10),
  })
  expect(crossing.direction).toBe('not known')
  expect(crossing.speed).toBeCloseTo(rpm(100), 12)
  expect(crossing.torque?.high).toBeLessThan(40)
  expect(crossing.torque?.low).toBeLessThan(crossing.torque?.high ?? 0)
  expect(() => gearTrain({ meshes: [], speed: rpm(1) })).toThrow('the number of meshes')
  expect(() => trainRatio([{ driver: 20, driven: 40, kind: 'belt' as 'chain' }])).toThrow(
    'mesh 1 has to be one of external',
  )
  expect(() => trainRatio([{ driver: 1, driven: 40 }])).toThrow('The driver of mesh 1')
  expect(trainRatio([{ driver: 1, driven: 40, kind: 'worm' }])).toBe(-40)
})

test('Willis: any two speeds give the third back (seed 4)', () => {
  const turns = fc.double({ min: -3000, max: 3000, noNaN: true })
  fc.assert(
    fc.property(fc.constantFrom(-4, -1, 0.25, 2.5, 7), turns, turns, (basicRatio, a, b) => {
      const all = willis({ basicRatio, first: rpm(a), carrier: rpm(b) })
      expect(willis({ basicRatio, last: all.last, carrier: all.carrier }).first).toBeCloseTo(rpm(a), 6)
      expect(willis({ basicRatio, first: all.first, last: all.last }).carrier).toBeCloseTo(rpm(b), 6)
    }),
    { seed: 4 },
  )
})

test('torques of a planetary gear add to nothing and carry no power over', () => {
  const { last, carrier } = planetaryTorques({ basicRatio: -4, first: newtonMetre(10) })
  expect(10 + last + carrier).toBeCloseTo(0, 12)
  const speeds = willis({ basicRatio: -4, first: rpm(100), last: rpm(-7) })
  expect(10 * speeds.first + last * speeds.last + carrier * speeds.carrier).toBeCloseTo(0, 9)
})

test('one speed too few or too many is refused, and a set that turns as one', () => {
  expect(() => willis({ basicRatio: -4, first: rpm(1) })).toThrow('known here: first')
  expect(() => willis({ basicRatio: -4, first: rpm(1), last: rpm(1), carrier: rpm(1) })).toThrow('Two of the three')
  expect(() => willis({ basicRatio: 1, first: rpm(1), last: rpm(2) })).toThrow('basic ratio of 1')
})

test('planets that do not go in at equal steps keep their places', () => {
  const say = (planets: number) =>
    planetarySet({ sunTeeth: 20, ringTeeth: 70, planets, sun: rpm(1), ring: rpm(0) }).cautions.join(' ')
  expect(say(3)).not.toContain('equal steps')
  expect(say(4)).toContain('equal steps')
})

test('one wheel held: the other turns twice as fast, on half the torque', () => {
  const open = differential({ carrier: rpm(100), side: rpm(0), torque: newtonMetre(500) })
  expect(open.other).toBeCloseTo(rpm(200), 12)
  expect(open.torque).toBe(250)
})

test('road speed: 336 inches and miles, the old rule of thumb (from memory: mph = turns × tyre diameter in / 336 / ratio)', () => {
  const { low } = roadSpeed({ shaftSpeed: rpm(2000), ratio: 4, rollingRadius: inch(14) })
  expect(low / milePerHour(1)).toBeCloseTo((2000 * 28) / 336.135 / 4, 3)
  const range = roadSpeed({
    shaftSpeed: rpm(2000),
    ratio: 4,
    rollingRadius: { low: mm(340), high: mm(356) },
    slip: { low: 0, high: 0.1 },
  })
  expect(range.low / kilometrePerHour(1)).toBeCloseTo(500 * 2 * Math.PI * 0.34 * 0.9 * 0.06, 6)
})

test('rope comes in faster from every layer, and slower over a pulley block', () => {
  const drum = { drumSpeed: rpm(10), drumDiameter: mm(300), ropeDiameter: mm(16) }
  const first = ropeSpeed({ ...drum, layer: 1 })
  expect(first.low).toBeCloseTo((Math.PI * 0.316) / 6, 9)
  expect(first.high).toBe(first.low)
  const third = ropeSpeed({ ...drum, layer: 3 })
  expect(third.low).toBeGreaterThan(first.low)
  expect(third.high).toBeCloseTo((Math.PI * (0.316 + 0.064)) / 6, 9)
  expect(ropeSpeed({ ...drum, layer: 1, falls: 4 }).low).toBeCloseTo(first.low / 4, 12)
})

test('a single-start worm holds when dry and may creep when oiled: not known', () => {
  const { leadAngle } = wormSet({ module: mm(4), starts: 1, wormDiameter: mm(40), wheelTeeth: 40 })
  const told = { leadAngle, pressureAngle: degree(20) }
  expect(wormDrive(told).isSelfLocking).toBe('not known')
  expect(wormDrive({ ...told, friction: 0.15 }).isSelfLocking).toBe('yes')
  expect(wormDrive({ ...told, friction: 0.02 }).isSelfLocking).toBe('no')
  // A worm that holds loses more than half (textbook).
  expect(wormDrive({ ...told, friction: 0.11 }).efficiency.high).toBeLessThan(0.5)
  expect(wormDrive(told).cautions.join(' ')).toContain('Never trust a worm')
})

test('torque of a power: refuses a shaft that stands', () => {
  expect(torqueOfPower({ power: kilowatt(1), speed: rpm(1000) })).toBeCloseTo(9.549, 3)
  expect(() => torqueOfPower({ power: kilowatt(1), speed: rpm(0) })).toThrow('the speed')
})

const gear = { module: mm(5), teeth: 20, faceWidth: mm(50), speed: rpm(100) }

test('what is not known of a tooth is taken at its worst, and said', () => {
  const unknown = toothStrength(gear)
  const known = toothStrength({ ...gear, form: '20 full', made: 'cut', material: 'mild steel' })
  expect(unknown.load.high).toBeLessThan(known.load.low)
  expect(unknown.cautions.join(' ')).toContain('an unknown metal')
  for (const { name } of MATERIALS) {
    const named = toothStrength({ ...gear, material: name })
    expect(unknown.load.low, name).toBeLessThanOrEqual(named.load.low)
  }
  expect(unknown.cautions.join(' ')).toContain('14.5° full depth')
  expect(unknown.cautions.join(' ')).toContain('Teeth taken as cast')
  for (const { cautions } of [unknown, known]) expect(cautions[0]).toContain('It passes no gear')
})

test('more teeth are stronger, speed weakens, and between the rows of the table it lies between', () => {
  const at = (teeth: number) =>
    toothStrength({ ...gear, teeth, speed: rpm(1), form: '20 full', made: 'cut' }).formFactor
  expect(at(21)).toBeGreaterThan(at(20))
  expect(at(21)).toBeLessThan(at(22))
  expect(at(1000)).toBe(0.472)
  expect(toothStrength({ ...gear, speed: rpm(1000) }).load.low).toBeLessThan(toothStrength(gear).load.low)
})

test('refuses a form that is not held, few teeth, and cast teeth that run too fast', () => {
  expect(() => toothStrength({ ...gear, form: 'cycloid' })).toThrow("'cycloid' is not a tooth form held here")
  expect(() => toothStrength({ ...gear, teeth: 9 })).toThrow('from 12 to 2000')
  expect(() => toothStrength({ ...gear, speed: rpm(4000) })).toThrow('the speed at the pitch circle of cast teeth')
  expect(footPerMinute(2000)).toBeCloseTo(10.16, 9)
})

test('a planet runs on its pin at what the carrier sees, not the case', () => {
  const { planet, planetOnPin, carrier } = planetarySet({ sunTeeth: 20, ringTeeth: 80, sun: rpm(100), ring: rpm(0) })
  expect(planetOnPin / rpm(1)).toBeCloseTo((-80 * 20) / 30, 9)
  expect(planet).toBeCloseTo(planetOnPin + carrier, 12)
  // Rolls in the ring that is held: carrier × ring ÷ planet the other way.
  expect(planetOnPin / carrier).toBeCloseTo(-80 / 30, 9)
})

test('half a tooth in the planet is told', () => {
  const odd = planetarySet({ sunTeeth: 21, ringTeeth: 80, sun: rpm(100), ring: rpm(0) })
  expect(odd.cautions.join(' ')).toMatch(/Count its teeth/)
})

/** Speed of a point of one body where it meets another, by the radii of the pitch circles: nothing here knows of Willis. */
const rim = (body: { turns: number; centre: number; centreTurns: number }, at: number) =>
  body.centreTurns * body.centre + body.turns * (at - body.centre)

test('sun, planet and ring do not slip on each other, whichever two speeds are told (seed 44)', () => {
  const turns = fc.double({ min: -2000, max: 2000, noNaN: true })
  const teeth = fc.tuple(fc.integer({ min: 12, max: 60 }), fc.integer({ min: 10, max: 50 }))
  const told = fc.constantFrom(['sun', 'ring'], ['sun', 'carrier'], ['ring', 'carrier'])
  fc.assert(
    fc.property(teeth, told, turns, turns, fc.boolean(), ([sunTeeth, planetTeeth], [one, two], a, b, held) => {
      const ringTeeth = sunTeeth + 2 * planetTeeth
      const speeds = { [one!]: rpm(a), [two!]: rpm(held ? 0 : b) }
      const set = planetarySet({ sunTeeth, ringTeeth, ...speeds })
      expect(set.planetTeeth).toBe(planetTeeth)
      const planet = { turns: set.planet, centre: sunTeeth + planetTeeth, centreTurns: set.carrier }
      const wheel = (turns: number) => ({ turns, centre: 0, centreTurns: 0 })
      expect(rim(planet, sunTeeth)).toBeCloseTo(rim(wheel(set.first), sunTeeth), 6)
      expect(rim(planet, ringTeeth)).toBeCloseTo(rim(wheel(set.last), ringTeeth), 6)
      // What its bearing runs at is the turn that somebody sees who rides on the carrier.
      expect(set.planetOnPin).toBeCloseTo(set.planet - set.carrier, 9)
      for (const [name, given] of Object.entries(speeds)) {
        expect({ sun: set.first, ring: set.last, carrier: set.carrier }[name]).toBeCloseTo(given, 6)
      }
    }),
    { seed: 44 },
  )
})

test('a planet cut with another tooth passes as many teeth of the sun as of the ring (counted)', () => {
  const set = planetarySet({ sunTeeth: 21, ringTeeth: 80, planetTeeth: 29, sun: rpm(100), ring: rpm(-7) })
  expect(-21 * (set.first - set.carrier)).toBeCloseTo(29 * set.planetOnPin, 9)
  expect(80 * (set.last - set.carrier)).toBeCloseTo(29 * set.planetOnPin, 9)
})

test('a planet that cannot stand between sun and ring is refused: stepped planets are another set', () => {
  const told = { sunTeeth: 20, ringTeeth: 80, sun: rpm(100), ring: rpm(0) }
  expect(() => planetarySet({ ...told, planetTeeth: 10 })).toThrow('plain planets have 28 to 32')
  expect(planetarySet({ ...told, planetTeeth: 29 }).cautions.join(' ')).toContain('profile shifted')
})

test('stepped planets by Willis do not slip either: rolled from pitch circle to pitch circle (seed 45)', () => {
  const turns = fc.double({ min: -1500, max: 1500, noNaN: true })
  const size = fc.integer({ min: 12, max: 40 })
  fc.assert(
    fc.property(size, size, size, turns, turns, (sunTeeth, first, second, sun, carrier) => {
      const ring = sunTeeth + first + second
      const basicRatio = trainRatio([
        { driver: sunTeeth, driven: first },
        { driver: second, driven: ring, kind: 'internal' },
      ])
      const set = willis({ basicRatio, first: rpm(sun), carrier: rpm(carrier) })
      const pin = sunTeeth + first
      // The planet's turn from the sun, then the rim that it gives the ring.
      const planet = (rpm(sun) * sunTeeth - set.carrier * pin) / (sunTeeth - pin)
      expect(rim({ turns: planet, centre: pin, centreTurns: set.carrier }, ring)).toBeCloseTo(set.last * ring, 6)
    }),
    { seed: 45 },
  )
})

test('a torque told the other way round leaves low below high, and loses as much', () => {
  const told = { meshes: [{ driver: 20, driven: 50 }], speed: rpm(-100) }
  const [there, back] = [1, -1].map((way) => gearTrain({ ...told, torque: newtonMetre(40 * way) }).torque!)
  expect(back!.low).toBeCloseTo(-there!.high, 12)
  expect(back!.high).toBeCloseTo(-there!.low, 12)
})
