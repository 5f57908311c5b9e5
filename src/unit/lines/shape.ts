// A part as rings in space: where each ring is, how far it reaches, which line it turns about.
import type { LineId, Part, PartId, Ring, Unit } from '../model/unit.ts'
import { exactly, type Span, spanOf } from './span.ts'

export interface Solid {
  readonly part: PartId
  readonly line: LineId
  readonly from: Span
  readonly to: Span
  readonly outside: Span
  readonly inside: Span
  /** Where its axis stands, when that is known. */
  readonly y: Span | undefined
  readonly z: Span | undefined
  readonly wall: boolean
  readonly half: 'lower' | 'upper' | undefined
  readonly teeth: boolean
  /** Cut flat: how far it reaches towards another line. */
  readonly flat: ReadonlyMap<LineId, Span>
  /** Set for a tool that goes along, with the part it may rub. */
  readonly tool: string | undefined
}

const ENDLESS: Span = exactly(Infinity)
/** A snap ring in its groove stands proud of the shaft or bore by at least this part of the diameter (common practice, no source). */
const SNAP_RING_PROUD = 0.01

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
    y: place && spanOf(place.y),
    z: place && spanOf(place.z),
    wall,
    half: part.half,
    teeth: ring.teeth ?? false,
    flat: new Map(part.flat.map((cut) => [cut.line, spanOf(cut.distance)])),
    tool,
  }
}

/** A snap ring whose size nobody took still stands proud of what it sits in. */
function proud(solid: Solid, part: Part, unit: Unit): Solid {
  if (part.kind !== 'snap ring' || !part.onto) return solid
  const carrier = unit.parts.get(part.onto)
  const seats = (carrier?.rings.get(solid.line) ?? [])
    .map((ring) => solidOf({ part: carrier as Part, line: solid.line, ring, unit }))
    .filter((seat) => seat.to.high > solid.from.low && seat.from.low < solid.to.high)
  const wall = seats.find((seat) => seat.wall)
  if (wall && solid.inside.low === 0 && solid.inside.high >= wall.inside.low) {
    return { ...solid, inside: { low: 0, high: wall.inside.low * (1 - SNAP_RING_PROUD), standing: 'usual' } }
  }
  if (seats[0] && !wall && solid.outside.high === Infinity) {
    const low = Math.max(...seats.map((seat) => seat.outside.low)) * (1 + SNAP_RING_PROUD)
    return { ...solid, outside: { low, high: Infinity, standing: 'usual' } }
  }
  return solid
}

/** The part at home, as its file gives it. */
export function atHome(part: Part, unit: Unit): readonly Solid[] {
  return [...part.rings].flatMap(([line, rings]) =>
    rings.map((ring) => proud(solidOf({ part, line, ring, unit }), part, unit)),
  )
}

/** The part on its way: sprung or driven where it has such a shape, with its tool. */
export function onItsWay(part: Part, unit: Unit): readonly Solid[] {
  const body = [...new Set([...part.rings.keys(), ...part.passing.keys()])].flatMap((line) => {
    const passing = part.passing.get(line)
    if (passing) return passing.map((ring) => solidOf({ part, line, ring, unit }))
    return (part.rings.get(line) ?? []).map((ring) => proud(solidOf({ part, line, ring, unit }), part, unit))
  })
  const { tool } = part
  if (!tool) return body
  return [...body, ...tool.rings.map((ring) => solidOf({ part, line: tool.line, ring, unit, tool: tool.name }))]
}

/** Moved sideways: where a parked part waits. */
export function moved(solids: readonly Solid[], by: { y: number; z: number }): readonly Solid[] {
  return solids.map((solid) => ({
    ...solid,
    y: solid.y && { ...solid.y, low: solid.y.low + by.y, high: solid.y.high + by.y },
    z: solid.z && { ...solid.z, low: solid.z.low + by.z, high: solid.z.high + by.z },
  }))
}
