// Bevel gears in space. A crown gear with flat flanks rolls on the two pitch cones and cuts the flanks of both; the wheel
// is then moved along its axis and turned until its flanks meet the pinion's. Nothing here knows a backlash formula.
import { describe, expect, test } from 'vitest'
import { degree, metre, mm, type radian } from '../../quantity/constructors.ts'
import { bevelBacklashChange, bevelBacklashRatio, wheelMoveKeepingBacklash } from './bevelMove.ts'
import { pitchCones } from './bevelPair.ts'

type Vector = readonly [number, number, number]

const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
const times = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by]
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
const unit = (a: Vector) => times(a, 1 / Math.hypot(...a))

function turn(vector: Vector, { about, by }: { about: Vector; by: number }): Vector {
  const along = times(about, dot(about, vector) * (1 - Math.cos(by)))
  return add(add(times(vector, Math.cos(by)), times(cross(about, vector), Math.sin(by))), along)
}

/** Along the line where the cones touch, square to the pitch plane, and along the pitch plane. */
const [ELEMENT, UP] = [
  [1, 0, 0],
  [0, 0, 1],
] as const satisfies readonly Vector[]
const ACROSS: Vector = cross(UP, ELEMENT)

interface Pair {
  readonly pinionTeeth: number
  readonly wheelTeeth: number
  readonly pressureAngle: ReturnType<typeof radian>
  readonly shaftAngle: ReturnType<typeof radian>
}

const axisOf = (cone: number, side: 1 | -1): Vector =>
  add(times(ELEMENT, Math.cos(cone)), times(UP, side * Math.sin(cone)))

/**
 * One flank as directions from the apex, in the frame of its gear. The crown's flank plane touches the gear's along the
 * line nearest to the element about which the two roll. `at`: how far from that element the trace of the flank stands.
 */
function flankOf(
  { cone, side, hand, at, pair }: { cone: number; side: 1 | -1; hand: 1 | -1; at: number; pair: Pair },
  rolls: readonly number[],
): Vector[] {
  const axis = axisOf(cone, side)
  return rolls.map((roll) => {
    const trace = turn(ACROSS, { about: UP, by: at + roll })
    const normal = add(times(trace, hand * Math.cos(pair.pressureAngle)), times(UP, Math.sin(pair.pressureAngle)))
    const touch = unit(add(ELEMENT, times(normal, -dot(ELEMENT, normal))))
    return turn(touch, { about: axis, by: (-side * roll) / Math.sin(cone) })
  })
}

const range = (from: number, to: number, steps: number) =>
  Array.from({ length: steps + 1 }, (_, index) => from + ((to - from) * index) / steps)

/**
 * Free travel of the wheel along its outer pitch circle, after both gears were moved along their axes: with one flank
 * after the other touching at the pitch line, or away from it.
 */
function travel(
  pair: Pair,
  moved: { pinion: number; wheel: number },
  { outer, face, away = 0 }: { outer: number; face: number; away?: number },
): number {
  const { pinionCone, wheelCone } = pitchCones(pair)
  const [pinionAxis, wheelAxis] = [axisOf(pinionCone, 1), axisOf(wheelCone, -1)]
  const start = unit(add(ELEMENT, times(pinionAxis, -dot(ELEMENT, pinionAxis))))
  const polar = (vector: Vector) => ({
    from: Math.acos(dot(unit(vector), pinionAxis)),
    round: Math.atan2(dot(vector, cross(pinionAxis, start)), dot(vector, start)),
  })
  const apart = add(times(wheelAxis, moved.wheel), times(pinionAxis, -moved.pinion))
  const free = ([1, -1] as const).map((hand) => {
    const wall = flankOf({ cone: pinionCone, side: 1, hand, at: hand * away, pair }, range(-0.06, 0.06, 4000))
      .map(polar)
      .sort((a, b) => a.from - b.from)
    const wallAt = (from: number) => {
      let [low, high] = [0, wall.length - 1]
      if (from < wall[low]!.from || from > wall[high]!.from) return undefined
      while (high - low > 1) {
        const middle = (low + high) >> 1
        if (wall[middle]!.from > from) high = middle
        else low = middle
      }
      const share = (from - wall[low]!.from) / (wall[high]!.from - wall[low]!.from || 1)
      return wall[low]!.round + share * (wall[high]!.round - wall[low]!.round)
    }
    const tooth = flankOf({ cone: wheelCone, side: -1, hand, at: hand * away, pair }, range(-0.03, 0.03, 120))
    const room = (by: number) => {
      let least = Number.POSITIVE_INFINITY
      for (const distance of range(outer - face, outer, 6))
        for (const direction of tooth) {
          const point = add(turn(times(direction, distance), { about: wheelAxis, by: -hand * by }), apart)
          const { from, round } = polar(point)
          const at = wallAt(from)
          if (at !== undefined) least = Math.min(least, hand * (at - round))
        }
      return least
    }
    let [low, high] = [-0.01, 0.01]
    for (let step = 0; step < 40; step++) {
      const middle = (low + high) / 2
      if (room(middle) > 0) low = middle
      else high = middle
    }
    return low
  })
  return (free[0]! + free[1]!) * outer * Math.sin(wheelCone)
}

const PAIRS: readonly (readonly [name: string, pair: Pair])[] = [
  ['1:1, 20°', { pinionTeeth: 20, wheelTeeth: 20, pressureAngle: degree(20), shaftAngle: degree(90) }],
  ['4:1, 20°', { pinionTeeth: 10, wheelTeeth: 40, pressureAngle: degree(20), shaftAngle: degree(90) }],
  ['3:1, 14.5°', { pinionTeeth: 15, wheelTeeth: 45, pressureAngle: degree(14.5), shaftAngle: degree(90) }],
  ['2:1, shafts at 70°', { pinionTeeth: 16, wheelTeeth: 32, pressureAngle: degree(20), shaftAngle: degree(70) }],
]

describe.each(PAIRS)('straight bevel %s', (_name, pair) => {
  const size = { outer: mm(90), face: mm(25) }
  const { pinionCone, wheelCone } = pitchCones(pair)
  const { pressureAngle } = pair

  test('has no backlash where both apexes meet', () => {
    expect(Math.abs(travel(pair, { pinion: 0, wheel: 0 }, size))).toBeLessThan(mm(0.0005))
  })

  test('gains what is told when the wheel moves out, and when the pinion does', () => {
    const told = bevelBacklashChange({ move: mm(0.1), pressureAngle, coneAngle: wheelCone }).low
    expect(travel(pair, { pinion: 0, wheel: mm(0.1) }, size) / told).toBeCloseTo(1, 2)
    const byPinion = bevelBacklashChange({
      move: mm(0.1),
      pressureAngle,
      coneAngle: pinionCone,
    }).low
    expect(travel(pair, { pinion: mm(0.1), wheel: 0 }, size) / byPinion).toBeCloseTo(1, 2)
  })

  test('away from the pitch line it gains more or less by what the taper gives, and as told in the mean', () => {
    const away = (Math.PI * Math.sin(wheelCone)) / (2 * pair.wheelTeeth)
    const gains = [away, -away].map(
      (at) => travel(pair, { pinion: 0, wheel: mm(0.1) }, { ...size, away: at }) / mm(0.1),
    )
    const told = bevelBacklashRatio({ pressureAngle, coneAngle: wheelCone }).low
    expect((gains[0]! + gains[1]!) / 2 / told).toBeCloseTo(1, 2)
    const taper = (Math.PI * Math.sin(wheelCone) * Math.cos(wheelCone)) / pair.wheelTeeth
    expect((gains[0]! - gains[1]!) / 2 / taper).toBeCloseTo(1, 1)
  })

  test('keeps its backlash when the wheel follows the pinion as told', () => {
    const before = travel(pair, { pinion: 0, wheel: mm(0.2) }, size)
    const pinionMove = mm(-0.1)
    const { low } = wheelMoveKeepingBacklash({ pinionMove, pinionCone, wheelCone })
    const after = travel(pair, { pinion: pinionMove, wheel: metre(mm(0.2) + low) }, size)
    expect(Math.abs(after - before)).toBeLessThan(0.01 * before)
  })
})

// The flanks of a spiral gear at the pitch line, as planes in space, all along the face.
test.each([
  [35, 20, 10, 41],
  [30, 20, 15, 45],
  [20, 14.5, 18, 36],
])(
  'spiral bevel of %i°, pressure angle %s°: first contact gives what is told',
  (spiral, pressure, pinionTeeth, wheelTeeth) => {
    const { wheelCone } = pitchCones({ pinionTeeth, wheelTeeth })
    const axis = axisOf(wheelCone, -1)
    const move = mm(0.1)
    const outer = mm(90)
    const free = ([1, -1] as const).map((hand) => {
      const trace = turn(ELEMENT, { about: UP, by: degree(spiral) })
      const normal = add(
        times(cross(UP, trace), hand * Math.cos(degree(pressure))),
        times(UP, Math.sin(degree(pressure))),
      )
      // Turn until the first point of the face meets its mate.
      const turns = range(0.7 * outer, outer, 20).map((distance) => {
        const swing = cross(times(axis, -hand), times(ELEMENT, distance))
        return -dot(times(axis, move), normal) / dot(swing, normal)
      })
      return Math.min(...turns)
    })
    const travelled = (free[0]! + free[1]!) * outer * Math.sin(wheelCone)
    const ratio = bevelBacklashRatio({
      pressureAngle: degree(pressure),
      coneAngle: wheelCone,
      spiralAngle: degree(spiral),
    })
    expect(travelled / move).toBeCloseTo(ratio.low, 9)
  },
)
