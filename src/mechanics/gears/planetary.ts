import { Problem } from '../../problem/problem.ts'
import { newtonMetre } from '../../quantity/constructors.ts'
import { type NewtonMetre, quantity, type RadianPerSecond } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'
import { requireTeeth } from './involuteGear.ts'

export interface PlanetarySpeeds {
  readonly first: RadianPerSecond
  readonly last: RadianPerSecond
  readonly carrier: RadianPerSecond
}

/**
 * The third speed of a planetary gear from two of them, by Willis: what the carrier's rider sees is a plain train.
 *
 * @param basicRatio symbol i_0, turns of the first coaxial gear for one of the last with the carrier held, with sign
 *   (trainRatio); sun to ring of a plain set: − ring teeth / sun teeth
 * @param first, last, carrier symbols ω_1, ω_2, ω_c; give two of them, one direction above zero
 * @returns all three
 * @throws PLANETARY_SPEEDS_WANTED, PLANETARY_RATIO_LOCKED, VALUE_OUTSIDE
 * @source R. Willis, Principles of Mechanism: (ω_1 − ω_c) = i_0 (ω_2 − ω_c)
 * @example willis({ basicRatio: -4, first: rpm(100), last: rpm(0) }).carrier / rpm(1)   // 20
 */
export function willis({
  basicRatio,
  first,
  last,
  carrier,
}: {
  readonly basicRatio: number
  readonly first?: RadianPerSecond
  readonly last?: RadianPerSecond
  readonly carrier?: RadianPerSecond
}): PlanetarySpeeds {
  requireWithin('the basic ratio', basicRatio, { low: -10000, high: 10000, unit: '' })
  const told = { first, last, carrier }
  const known = Object.entries(told).flatMap(([name, value]) => (value === undefined ? [] : [name]))
  if (known.length !== 2) {
    throw new Problem('PLANETARY_SPEEDS_WANTED', { known: known.length ? known.join(', ') : 'none' })
  }
  if (basicRatio === 0 || basicRatio === 1) throw new Problem('PLANETARY_RATIO_LOCKED', { ratio: basicRatio })
  const speed = (value: number) => quantity(value, 'rad/s')
  if (first === undefined) {
    const [b = 0, c = 0] = [last, carrier]
    return { first: speed(c + basicRatio * (b - c)), last: speed(b), carrier: speed(c) }
  }
  if (last === undefined) {
    const c = carrier ?? 0
    return { first, last: speed(c + (first - c) / basicRatio), carrier: speed(c) }
  }
  return { first, last, carrier: speed((first - basicRatio * last) / (1 - basicRatio)) }
}

export interface PlanetarySet extends PlanetarySpeeds {
  readonly planetTeeth: number
  /** Of a planet, seen from the case. */
  readonly planet: RadianPerSecond
  /** Of a planet on its pin, seen from the carrier: what its bearing runs at. */
  readonly planetOnPin: RadianPerSecond
  readonly cautions: readonly string[]
}

/**
 * A plain planetary set of sun, planets and ring: all speeds from two of them. What turns the other way has a speed below
 * zero. Not for stepped planets, nor for planets that mesh in pairs: trainRatio and willis.
 *
 * @param sunTeeth, ringTeeth symbols z_s, z_r
 * @param planetTeeth as counted, at most 2 off half of ring less sun; left out (z_r − z_s) / 2
 * @param planets how many, to see whether they go in at equal steps; left out: not looked at
 * @param sun, ring, carrier speeds; give two
 * @returns speeds, first the sun and last the ring
 * @throws GEAR_TEETH_IMPOSSIBLE, PLANET_TEETH_IMPOSSIBLE, PLANETARY_SPEEDS_WANTED, PLANETARY_RATIO_LOCKED, VALUE_OUTSIDE
 * @source Willis; equal steps where (z_s + z_r) / planets is whole
 * @example planetarySet({ sunTeeth: 20, ringTeeth: 80, sun: rpm(-100), ring: rpm(0) }).planet / rpm(1)   // 33.3
 */
export function planetarySet({
  sunTeeth,
  ringTeeth,
  planetTeeth,
  planets,
  sun,
  ring,
  carrier,
}: {
  readonly sunTeeth: number
  readonly ringTeeth: number
  readonly planetTeeth?: number
  readonly planets?: number
  readonly sun?: RadianPerSecond
  readonly ring?: RadianPerSecond
  readonly carrier?: RadianPerSecond
}): PlanetarySet {
  requireTeeth('The sun', sunTeeth)
  requireTeeth('The ring', ringTeeth, sunTeeth + 2)
  const plain = (ringTeeth - sunTeeth) / 2
  if (planetTeeth !== undefined) requirePlanet({ planetTeeth, sunTeeth, ringTeeth })
  if (planets !== undefined) requireWithin('the number of planets', planets, { low: 1, high: 20, unit: '' })
  const speeds = willis({
    basicRatio: -ringTeeth / sunTeeth,
    ...(sun === undefined ? {} : { first: sun }),
    ...(ring === undefined ? {} : { last: ring }),
    ...(carrier === undefined ? {} : { carrier }),
  })
  const teeth = planetTeeth ?? plain
  const onPin = (-(speeds.first - speeds.carrier) * sunTeeth) / teeth
  const cautions: string[] = []
  if (!Number.isInteger(teeth)) {
    cautions.push(
      'No planet has half a tooth: one was cut with profile shift. Count its teeth; its speed here is rough.',
    )
  }
  if (Math.abs(teeth - plain) > 0.01)
    cautions.push('Planets of other teeth than half the difference are profile shifted.')
  if (planets !== undefined && ((sunTeeth + ringTeeth) % planets !== 0 || !Number.isInteger(planets))) {
    cautions.push('The planets do not go in at equal steps: keep every planet and pin to its own place.')
  }
  cautions.push('Planets that are marked go back to the marks; a set is renewed whole.')
  return {
    ...speeds,
    planetTeeth: teeth,
    planet: quantity(speeds.carrier + onPin, 'rad/s'),
    planetOnPin: quantity(onPin, 'rad/s'),
    cautions,
  }
}

/** A planet that fits between sun and ring; a tooth or two off half their difference is made by profile shift. */
function requirePlanet({
  planetTeeth,
  sunTeeth,
  ringTeeth,
}: Readonly<Record<'planetTeeth' | 'sunTeeth' | 'ringTeeth', number>>): void {
  requireTeeth('The planet', planetTeeth)
  const half = (ringTeeth - sunTeeth) / 2
  const [low, high] = [Math.max(4, Math.ceil(half - 2)), Math.floor(half + 2)]
  if (planetTeeth >= low && planetTeeth <= high) return
  throw new Problem('PLANET_TEETH_IMPOSSIBLE', { received: planetTeeth, sun: sunTeeth, ring: ringTeeth, low, high })
}

/**
 * Teeth of the ring round a sun and a planet, or round a stepped planet: the larger gear meshes with the sun, the other
 * with the ring. One module, no shift.
 *
 * @param sunTeeth symbol z_s
 * @param planetTeeth in mesh with the sun
 * @param ringSidePlanetTeeth in mesh with the ring; left out: the same gear
 * @returns symbol z_r
 * @throws GEAR_TEETH_IMPOSSIBLE
 * @source geometry of coaxial shafts
 * @example coaxialRingTeeth({ sunTeeth: 50, planetTeeth: 20, ringSidePlanetTeeth: 35 })   // 105
 */
export function coaxialRingTeeth({
  sunTeeth,
  planetTeeth,
  ringSidePlanetTeeth = planetTeeth,
}: {
  readonly sunTeeth: number
  readonly planetTeeth: number
  readonly ringSidePlanetTeeth?: number
}): number {
  requireTeeth('The sun', sunTeeth)
  requireTeeth('The planet', planetTeeth)
  requireTeeth('The planet at the ring', ringSidePlanetTeeth)
  return sunTeeth + planetTeeth + ringSidePlanetTeeth
}

/**
 * Torques on the three members of a planetary gear, without losses; together they are zero. What holds the fixed member
 * has to take its share: bolts, dogs, a brake band.
 *
 * @param basicRatio symbol i_0, as for willis
 * @param first symbol T_1, on the first coaxial gear
 * @returns torque on the last gear and on the carrier, above zero the same way round as the first
 * @throws PLANETARY_RATIO_LOCKED, VALUE_OUTSIDE
 * @source equilibrium of torque and power
 * @example planetaryTorques({ basicRatio: -4, first: newtonMetre(10) }).carrier   // -50 N·m
 */
export function planetaryTorques({ basicRatio, first }: { readonly basicRatio: number; readonly first: NewtonMetre }): {
  readonly last: NewtonMetre
  readonly carrier: NewtonMetre
} {
  requireWithin('the basic ratio', basicRatio, { low: -10000, high: 10000, unit: '' })
  if (basicRatio === 0 || basicRatio === 1) throw new Problem('PLANETARY_RATIO_LOCKED', { ratio: basicRatio })
  return { last: newtonMetre(-basicRatio * first), carrier: newtonMetre((basicRatio - 1) * first) }
}
