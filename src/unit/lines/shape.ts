// A part as rings in space: where each ring is, how far it reaches, which line it turns about.
import type { LineId, Part, PartId, Ring, Unit } from '../model/unit.ts'
import { weaker } from './answer.ts'
import { exactly, larger, less, minus, plus, type Span, smaller, spanOf, TIGHT } from './span.ts'

export interface Aside {
  readonly y: number
  readonly z: number
}

export interface Solid {
  readonly part: PartId
  readonly line: LineId
  readonly from: Span
  readonly to: Span
  readonly outside: Span
  readonly inside: Span
  /** Where its line stands, when that is known. */
  readonly place: { readonly y: Span; readonly z: Span } | undefined
  /** How far its axis stands beside its line: to the right and up, metres. */
  readonly aside: Aside
  readonly wall: boolean
  /** Turned, and so as far out all round as its diameter says; of a casting or a plate nobody knows. */
  readonly round: boolean
  readonly half: 'lower' | 'upper' | undefined
  readonly teeth: boolean
  /** Cut flat: how far it reaches towards another line. */
  readonly flat: ReadonlyMap<LineId, Span>
  /** Set for a tool that goes along, with the part it may rub. */
  readonly tool: string | undefined
}

const ENDLESS: Span = exactly(Infinity)
const ON_ITS_LINE: Aside = { y: 0, z: 0 }
const TURNED: ReadonlySet<Part['look']> = new Set(['shaft', 'gear', 'bearing', 'ring', 'seal'] as const)
/**
 * A snap ring stands proud of its shaft or bore by at least 6 % of the diameter and, over the spread lugs, by no more than 90 % of the diameter; its groove is
 * no deeper than 10 % (after DIN 471 and DIN 472, from memory).
 */
const SNAP_RING_PROUD = 0.06
const SNAP_RING_REACH = 0.9
const SNAP_RING_GROOVE = 0.9

function solidOf({
  part,
  line,
  ring,
  unit,
  tool,
}: {
  part: Part
  line: LineId
  ring: Ring
  unit: Unit
  tool?: string
}): Solid {
  const place = unit.lines.get(line)?.place
  const wall = ring.outside === 'endless'
  const outsideGiven = ring.outside === 'endless' ? undefined : ring.outside
  const inside = spanOf(ring.inside, 0, outsideGiven?.high ?? Infinity)
  const outside = wall ? ENDLESS : spanOf(outsideGiven, inside.low, Infinity)
  return {
    part: part.id,
    line,
    from: spanOf(ring.from),
    to: spanOf(ring.to),
    outside,
    inside,
    place: place && { y: spanOf(place.y), z: spanOf(place.z) },
    aside: ON_ITS_LINE,
    wall,
    round: ring.teeth === true || TURNED.has(part.look),
    half: part.half,
    teeth: ring.teeth ?? false,
    flat: new Map(part.flat.map((cut) => [cut.line, spanOf(cut.distance)])),
    tool,
  }
}

/** Sizes that nobody took still have bounds: what shares the stretch at home has to fit inside, and what it stands against cannot pass. */
function bounded(solid: Solid, part: Part, unit: Unit): Solid {
  if (!openInside(solid)) return solid
  const onTheLine = (other: Part) => given(other, unit).filter((each) => each.line === solid.line)
  const shares = (other: Solid) => less(solid.from, other.to).is === 'yes' && less(other.from, solid.to).is === 'yes'
  const within = [...unit.parts.values()]
    .filter((other) => other !== part && other.kind !== 'key' && part.kind !== 'key' && !mayMeet(part, other))
    .flatMap(onTheLine)
    .filter((other) => shares(other) && other.outside.high < solid.outside.low)
  const against = part.seats.flatMap((name) => unit.parts.get(name) ?? []).flatMap(onTheLine)
  const low = Math.max(solid.inside.low, ...within.map((other) => other.outside.low - TIGHT))
  const high = against.length
    ? Math.min(solid.inside.high, Math.max(...against.map((other) => other.outside.high)))
    : solid.inside.high
  if (low > high) return solid
  const from = [solid.outside, ...[...within, ...against].map((other) => other.outside)].map(({ standing }) => standing)
  return { ...solid, inside: { low, high, standing: from.reduce(weaker, 'told') } }
}

const names = (part: Part, other: Part): boolean =>
  [part.slidesOn, part.meshes, part.keys, part.runsOn, part.engages].some((list) => list.includes(other.id))

/** A person says that the two touch or lie in each other at home. */
export const mayMeet = (a: Part, b: Part): boolean => names(a, b) || names(b, a)

const openInside = (solid: Solid): boolean => solid.inside.low !== solid.inside.high && !solid.wall

/** A snap ring whose size nobody took still stands proud of what it sits in, and not far. */
function proud(solid: Solid, part: Part, unit: Unit): Solid {
  const seat = snapSeat(solid, part, unit)
  if (!seat) return solid
  if (seat.wall && solid.inside.low < solid.inside.high) {
    return {
      ...solid,
      inside: {
        low: seat.inside.low * (1 - SNAP_RING_REACH),
        high: seat.inside.low * (1 - SNAP_RING_PROUD),
        standing: 'usual',
      },
    }
  }
  if (!seat.wall && solid.outside.high === Infinity) {
    const { low, high } = seat.outside
    const outside: Span = { low: low * (1 + SNAP_RING_PROUD), high: high * (1 + SNAP_RING_REACH), standing: 'usual' }
    return { ...solid, outside, inside: { low: low * SNAP_RING_GROOVE, high, standing: 'usual' } }
  }
  return solid
}

/** Spread or squeezed, a snap ring passes the shaft or bore that it is made for, and is so much wider or narrower throughout. */
function sprung(solid: Solid, part: Part, unit: Unit): Solid {
  const seat = snapSeat(solid, part, unit)
  if (!seat) return solid
  const { inside, outside } = solid
  const nothing = exactly(0, 'usual')
  if (seat.wall) {
    const squeezed = larger(nothing, minus(outside, seat.inside))
    return { ...solid, outside: smaller(outside, seat.inside), inside: larger(nothing, minus(inside, squeezed)) }
  }
  const spread = larger(nothing, minus(seat.outside, inside))
  return { ...solid, inside: larger(larger(inside, seat.outside), nothing), outside: plus(outside, spread) }
}

/** The shaft or bore beside the groove of a snap ring. */
function snapSeat(solid: Solid, part: Part, unit: Unit): Solid | undefined {
  if (part.kind !== 'snap ring') return undefined
  const near = given(unit.parts.get(part.onto ?? unit.housing), unit).filter(
    (seat) =>
      seat.line === solid.line && seat.to.high >= solid.from.low - LAND && seat.from.low <= solid.to.high + LAND,
  )
  const walls = near.filter((seat) => seat.wall)
  if (walls.length) return walls.reduce((a, b) => (a.inside.low <= b.inside.low ? a : b))
  return near.length ? near.reduce((a, b) => (a.outside.high >= b.outside.high ? a : b)) : undefined
}

/** How far beside the ring the land of its groove is looked for; metres. */
const LAND = 0.0005

/** The rings as the file gives them. */
const given = (part: Part | undefined, unit: Unit): readonly Solid[] =>
  part ? [...part.rings].flatMap(([line, rings]) => rings.map((ring) => solidOf({ part, line, ring, unit }))) : []

const homes = new WeakMap<Unit, Map<PartId, readonly Solid[]>>()
const ways = new WeakMap<Unit, Map<PartId, readonly Solid[]>>()

function once(
  memo: WeakMap<Unit, Map<PartId, readonly Solid[]>>,
  part: Part,
  unit: Unit,
  make: () => readonly Solid[],
) {
  const known = memo.get(unit) ?? new Map<PartId, readonly Solid[]>()
  memo.set(unit, known)
  const solids = known.get(part.id) ?? make()
  known.set(part.id, solids)
  return solids
}

/** The part at home: as its file gives it, with bounds for what the file leaves out. */
export const atHome = (part: Part, unit: Unit): readonly Solid[] =>
  once(homes, part, unit, () => given(part, unit).map((solid) => bounded(proud(solid, part, unit), part, unit)))

/** The part on its way: sprung or driven where it has such a shape, with its tool. */
export const onItsWay = (part: Part, unit: Unit): readonly Solid[] =>
  once(ways, part, unit, () => travelling(part, unit))

function travelling(part: Part, unit: Unit): readonly Solid[] {
  const lines = [...new Set([...part.rings.keys(), ...part.passing.keys()])]
  const body = lines.flatMap((line) => {
    const passing = part.passing.get(line)
    if (passing) return passing.map((ring) => solidOf({ part, line, ring, unit }))
    return atHome(part, unit)
      .filter((solid) => solid.line === line)
      .map((solid) => sprung(solid, part, unit))
  })
  const { tool } = part
  if (!tool) return body
  return [...body, ...tool.rings.map((ring) => solidOf({ part, line: tool.line, ring, unit, tool: tool.name }))]
}

/** Moved sideways: where a parked part waits. */
export const moved = (solids: readonly Solid[], by: Aside): readonly Solid[] =>
  solids.map((solid) => ({ ...solid, aside: { y: solid.aside.y + by.y, z: solid.aside.z + by.z } }))
