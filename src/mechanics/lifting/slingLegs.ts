import { Problem } from '../../problem/problem.ts'
import { kilogram, metre, newton, radian } from '../../quantity/constructors.ts'
import type { Kilogram, Metre, Newton, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { type Known, rangeOf } from '../range.ts'
import type { Place } from './centreOfMass.ts'
import { RATED_GEAR } from './ratedGear.ts'
import { FLATTEST_LEG } from './slingFactor.ts'
import { GRAVITY } from './tipping.ts'

/** Where a leg takes hold, in the axes of the unit. */
export interface SlingPoint {
  readonly name: string
  readonly x: Metre
  readonly y: Metre
  readonly z: Metre
}

export interface SlingLeg {
  readonly name: string
  /** The most that this leg can get. */
  readonly tension: Newton
  /** The same as a mass, as the plate of a sling, a shackle or an eye tells it, for the way in which it is pulled here. */
  readonly plate: Kilogram
  /** The flattest that it can stand above level. */
  readonly angle: Radian
  /** Wanted for the unit to hang level, with the centre of mass in the middle of what is known. */
  readonly length: Metre
}

export interface SlingLegs {
  readonly legs: readonly SlingLeg[]
  readonly cautions: readonly string[]
}

type Vector = readonly [number, number, number]

/**
 * What each leg of a sling carries when the unit hangs level below one hook, with its centre of mass where it is and not
 * in the middle. Four legs on a stiff unit: two or three may carry all, whatever their lengths are said to be, so each leg
 * gets the most of all ways to hang.
 *
 * @param mass symbol m, the whole; where it is known only in part, weigh it first
 * @param centre centre of mass, as from centreOfMass; in the axes of the unit, z upwards
 * @param points two to four eyes, all above the centre of mass
 * @param hookHeight of the hook above the highest eye
 * @returns tension, angle and length of each leg
 * @throws VALUE_OUTSIDE, RANGE_TURNED, SLUNG_BELOW_CENTRE, SLING_LEG_FLAT, CENTRE_OUTSIDE_SLING
 * @source statics of forces through one point; for one centre the most of each leg lies at a corner of all ways to hang; over a
 *   range of centres it is tried all over the range
 * @example slingLegs({ mass: kilogram(1000), centre: { x: mm(0), y: mm(0), z: mm(0) }, points: [{ name: 'a', x: mm(-500), y: mm(0), z: mm(300) }, { name: 'b', x: mm(500), y: mm(0), z: mm(300) }], hookHeight: mm(500) }).legs[0].tension   // 6934 N
 */
export function slingLegs({
  mass,
  centre,
  points,
  hookHeight,
}: {
  readonly mass: Known<Kilogram>
  readonly centre: Place
  readonly points: readonly SlingPoint[]
  readonly hookHeight: Metre
}): SlingLegs {
  requireAboveZero('the mass', mass, 'kg')
  requireWithin('the mass', mass, { low: 0, high: 1e6, unit: 'kg' })
  requireAboveZero('the height of the hook', hookHeight, 'm')
  requireWithin('the number of sling legs', points.length, { low: 2, high: 4, unit: '' })
  const highest = Math.max(...points.map(({ z }) => z))
  const lowest = Math.min(...points.map(({ z }) => z))
  const centreTop = rangeOf(centre.z).high
  if (lowest <= centreTop) {
    throw new Problem('SLUNG_BELOW_CENTRE', { eye: shown(lowest, 'm'), centre: shown(centreTop, 'm') })
  }
  const weight = rangeOf(mass).high * GRAVITY
  const legsAt = (x: number, y: number) => legsBelow({ hook: [x, y, highest + hookHeight], points, weight })
  const all = centresToTry(centre, points).map(([x, y]) => legsAt(x, y))
  const middle = legsAt(middleOf(centre.x), middleOf(centre.y))
  const legs = points.map(({ name }, at) => {
    const tension = newton(Math.max(...all.map((legs) => legs[at]?.tension as number)))
    return {
      name,
      tension,
      plate: kilogram(tension / GRAVITY),
      angle: radian(Math.min(...all.map((legs) => legs[at]?.angle as number))),
      length: metre(middle[at]?.length as number),
    }
  })
  const flat = legs.find(({ angle }) => angle < FLATTEST_LEG - 1e-9)
  if (flat) throw new Problem('SLING_LEG_FLAT', { name: flat.name, angle: shown(flat.angle, 'rad') })
  const swing = points.length === 2 ? swingOf(centre, points as readonly [SlingPoint, SlingPoint]) : 0
  if (swing > STEEPEST_SWING) throw new Problem('CENTRE_OUTSIDE_SLING')
  return { legs, cautions: cautions({ legs, count: points.length, swing }) }
}

/** Steps of a grid over what is known of the centre, on top of the places where another set of legs begins to hold. */
const STEPS = 12

/**
 * Centres of mass to hang the unit by in thought. A leg is not loaded most at a corner of what is known of the centre: of
 * four legs others take over as the centre crosses a line between two eyes.
 */
function centresToTry({ x, y }: Place, points: readonly SlingPoint[]): readonly Plan[] {
  const [along, across] = [rangeOf(x), rangeOf(y)]
  const within = ([px, py]: Plan) =>
    px >= along.low - 1e-12 && px <= along.high + 1e-12 && py >= across.low - 1e-12 && py <= across.high + 1e-12
  const grid = stepsOf(along).flatMap((px) => stepsOf(across).map((py): Plan => [px, py]))
  if (grid.length === 1) return grid
  const edges: readonly Line[] = [
    [along.low, across.low, 1, 0],
    [along.low, across.high, 1, 0],
    [along.low, across.low, 0, 1],
    [along.high, across.low, 0, 1],
  ]
  const between = points.flatMap((a, at) => points.slice(at + 1).map((b): Line => [a.x, a.y, b.x - a.x, b.y - a.y]))
  const crossings = between.flatMap((line, at) =>
    [...edges, ...between.slice(at + 1)].flatMap((other) => crossingOf(line, other)),
  )
  return [...grid, ...crossings.filter(within)]
}

type Plan = readonly [x: number, y: number]
type Line = readonly [x: number, y: number, dx: number, dy: number]

function crossingOf([x, y, dx, dy]: Line, [u, v, du, dv]: Line): readonly Plan[] {
  const slant = dx * dv - dy * du
  if (Math.abs(slant) < 1e-12) return []
  const along = ((u - x) * dv - (v - y) * du) / slant
  return [[x + along * dx, y + along * dy]]
}

const stepsOf = ({ low, high }: { readonly low: number; readonly high: number }): readonly number[] =>
  low === high ? [low] : Array.from({ length: STEPS + 1 }, (_, at) => low + ((high - low) * at) / STEPS)
const middleOf = (known: Known<Metre>): number => (rangeOf(known).low + rangeOf(known).high) / 2

interface Hanging {
  readonly hook: Vector
  readonly points: readonly SlingPoint[]
  readonly weight: number
}

function legsBelow({ hook, points, weight }: Hanging) {
  // Two legs: the unit swings until its centre hangs below the line between the eyes.
  const top = points.length === 2 ? aboveLine(hook, points as readonly [SlingPoint, SlingPoint]) : hook
  const legs = points.map(({ x, y, z }): Vector => [top[0] - x, top[1] - y, top[2] - z])
  const lengths = legs.map((leg) => Math.hypot(...leg))
  const tensions = mostOfEach(
    legs.map((leg, at) => scaled(leg, 1 / (lengths[at] as number))),
    weight,
  )
  return legs.map((leg, at) => ({
    tension: tensions[at] as number,
    angle: Math.asin(leg[2] / (lengths[at] as number)),
    length: lengths[at] as number,
  }))
}

function aboveLine([x, y, z]: Vector, [a, b]: readonly [SlingPoint, SlingPoint]): Vector {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const along = ((x - a.x) * dx + (y - a.y) * dy) / (dx ** 2 + dy ** 2)
  return [a.x + along * dx, a.y + along * dy, z]
}

/** Most tension of each leg over all ways in which two or three of them hold the weight. */
function mostOfEach(directions: readonly Vector[], weight: number): readonly number[] {
  const most = directions.map(() => Number.NEGATIVE_INFINITY)
  for (const holding of choicesOf(directions.length)) {
    const tensions = holding.length === 2 ? holdByTwo(directions, holding) : holdByThree(directions, holding)
    if (!tensions?.every((tension) => tension >= -1e-9)) continue
    for (const at of directions.keys()) {
      const share = tensions[holding.indexOf(at)] ?? 0
      most[at] = Math.max(most[at] as number, Math.max(0, share) * weight)
    }
  }
  if (!most.every(Number.isFinite)) throw new Problem('CENTRE_OUTSIDE_SLING')
  return most
}

function choicesOf(count: number): readonly (readonly number[])[] {
  if (count === 2) return [[0, 1]]
  const places = Array.from({ length: count }, (_, at) => at)
  return places.flatMap((a) => places.flatMap((b) => places.flatMap((c) => (a < b && b < c ? [[a, b, c]] : []))))
}

/** Further than this a unit on two legs does not hang but lies on its side. */
const STEEPEST_SWING = Math.PI / 4

/** How far a unit on two legs swings about the line of its eyes until its centre hangs below it. */
function swingOf({ x, y, z }: Place, [a, b]: readonly [SlingPoint, SlingPoint]): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const length = Math.hypot(dx, dy)
  const swings = ends(x).flatMap((along) =>
    ends(y).flatMap((across) => {
      const beside = Math.abs((along - a.x) * dy - (across - a.y) * dx) / length
      const share = ((along - a.x) * dx + (across - a.y) * dy) / length ** 2
      return ends(z).map((up) => Math.atan2(beside, a.z + share * (b.z - a.z) - up))
    }),
  )
  return Math.max(...swings)
}

const ends = (known: Known<Metre>): readonly number[] => Object.values(rangeOf(known))

/** Tensions for a weight of one: both legs and the weight lie in one upright plane. */
function holdByTwo(directions: readonly Vector[], [first, second]: readonly number[]): readonly number[] | undefined {
  const [a, b] = [directions[first as number] as Vector, directions[second as number] as Vector]
  const [out, back] = [Math.hypot(a[0], a[1]), Math.hypot(b[0], b[1])]
  if (a[0] * b[0] + a[1] * b[1] > 1e-12) return undefined
  if (out + back < 1e-12) return [0.5 / a[2], 0.5 / b[2]]
  const turned = a[2] * back + b[2] * out
  return [back / turned, out / turned]
}

function holdByThree(directions: readonly Vector[], holding: readonly number[]): readonly number[] | undefined {
  const [a, b, c] = holding.map((at) => directions[at] as Vector) as [Vector, Vector, Vector]
  const whole = triple(a, b, c)
  if (Math.abs(whole) < 1e-9) return undefined
  const up: Vector = [0, 0, 1]
  return [triple(up, b, c) / whole, triple(a, up, c) / whole, triple(a, b, up) / whole]
}

const scaled = ([x, y, z]: Vector, by: number): Vector => [x * by, y * by, z * by]
const triple = (a: Vector, b: Vector, c: Vector): number =>
  a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])

function cautions({
  legs,
  count,
  swing,
}: {
  readonly legs: readonly SlingLeg[]
  readonly count: number
  readonly swing: number
}): string[] {
  const flat = legs.filter(({ angle }) => angle < Math.PI / 4).map(({ name }) => name)
  const longest = Math.max(...legs.map(({ length }) => length))
  const differ = legs.some(({ length }) => length < 0.98 * longest)
  return [
    ...(count === 2
      ? [
          `Two legs: it swings about the line of the eyes until its centre hangs below it, here by ${shown(Math.round((swing * 180) / Math.PI) * (Math.PI / 180), 'rad')} at most.`,
        ]
      : []),
    ...(count === 4 ? ['Four legs on a stiff unit: each is taken as if only two or three of them carried.'] : []),
    ...(flat.length ? [`Flatter than 45°: ${flat.join(', ')}. Raise the hook or take a spreader.`] : []),
    ...(differ
      ? ['The legs have to differ in length for it to hang level; with equal legs it tilts and the loads change.']
      : []),
    'An eye that is pulled at a slant keeps only a share of what its plate says: eyeboltShare.',
    ...RATED_GEAR,
  ]
}
