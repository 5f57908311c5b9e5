// Which sizes make a float or a preload: from one face to another through the parts that stand against each other.
import type { LineId, Part, PartId, Unit } from '../model/unit.ts'
import { weaker } from './answer.ts'
import { atHome, type Solid } from './shape.ts'
import { exactly, minus, plus, type Span, size } from './span.ts'

/** A face of a part on a line, where it is when the part is home; metres from the datum. */
export interface Face {
  readonly part: PartId
  readonly at: Span
  /** The side that its matter is not on. */
  readonly looks: '-' | '+'
}

/** One size of a loop: between two faces of one part, or the gap (gasket, shims) between two parts that stand against each other. */
export interface LoopTerm {
  readonly parts: readonly [PartId] | readonly [PartId, PartId]
  readonly size: Span
  /** +1 where it leads to the + end, −1 where it leads back. */
  readonly sign: 1 | -1
}

/** Faces that stand against each other may be written down this far apart (gasket, shims, a chamfer); metres. */
const SEAT_SLACK = 0.0012

/** The faces of a part on a line whose place is known, from the - end to the + end; steps inside it that a larger ring hides are none. */
export function facesOf(part: Part, line: LineId, unit: Unit): readonly Face[] {
  const solids = atHome(part, unit).filter((solid) => solid.line === line)
  const faces = solids.flatMap((solid) => {
    const ends = [
      { at: solid.from, looks: '-' as const, beyond: (other: Solid) => other.to },
      { at: solid.to, looks: '+' as const, beyond: (other: Solid) => other.from },
    ]
    return ends.flatMap(({ at, looks, beyond }): readonly Face[] => {
      const isHidden = solids.some((other) => other !== solid && isAt(beyond(other), at) && covers(other, solid))
      return isHidden || !Number.isFinite(at.low + at.high) ? [] : [{ part: part.id, at, looks }]
    })
  })
  return faces.sort((a, b) => a.at.low - b.at.low)
}

const isAt = (a: Span, b: Span): boolean => a.low === b.low && a.high === b.high

/** All of its face lies against the other ring of the same part. */
const covers = (other: Solid, solid: Solid): boolean =>
  other.inside.high <= solid.inside.low && other.outside.low >= solid.outside.high

/**
 * The loop of sizes from one face to another, through the fewest parts that are said to stand against each other; undefined where no chain of seats
 * joins them. The signed sizes add up to the distance from the first face to the second: where both belong to a joint that is still
 * open, that is its float, or below zero its preload.
 *
 * @example loopBetween({ unit, line: '1', from: coverFace, to: bearingFace })?.map(({ parts, sign }) => `${sign} ${parts}`)   // ['-1 cover', '1 box', '-1 bearing']
 */
export function loopBetween({
  unit,
  line,
  from,
  to,
}: {
  unit: Unit
  line: LineId
  from: Face
  to: Face
}): readonly LoopTerm[] | undefined {
  const faces = [...unit.parts.values()].flatMap((part) => facesOf(part, line, unit))
  const start = faces.find((face) => isSame(face, from))
  if (!start) return undefined
  const reached = new Map<Face, readonly Face[]>([[start, [start]]])
  for (const [face, way] of reached) {
    if (isSame(face, to)) return termsOf(way)
    // Through a part and across a joint, in turn.
    const cameFrom = way.at(-2)?.part
    const next = faces.filter(
      (other) =>
        (cameFrom !== face.part && isThrough(face, other)) ||
        ((cameFrom ?? face.part) === face.part && isSeated(face, other, unit)),
    )
    for (const other of next) if (!reached.has(other)) reached.set(other, [...way, other])
  }
  return undefined
}

/** The distance that a loop adds up to, at least and at most; below zero it is a preload. */
export const lengthOf = (terms: readonly LoopTerm[]): Span =>
  terms.reduce<Span>((sum, term) => (term.sign === 1 ? plus(sum, term.size) : minus(sum, term.size)), exactly(0))

const isSame = (a: Face, b: Face): boolean => a.part === b.part && a.looks === b.looks && isAt(a.at, b.at)

const isThrough = (a: Face, b: Face): boolean => a.part === b.part && a !== b

/** They look at each other, they nearly touch, and somebody said that the parts stand against each other. */
function isSeated(a: Face, b: Face, unit: Unit): boolean {
  if (a.part === b.part || a.looks === b.looks || size(minus(a.at, b.at)).high > SEAT_SLACK) return false
  const standsAgainst = (one: PartId, other: PartId) => {
    const part = unit.parts.get(one)
    return part?.seats.includes(other) || part?.stands.some(({ against }) => against === other)
  }
  return Boolean(standsAgainst(a.part, b.part) || standsAgainst(b.part, a.part))
}

function termsOf(way: readonly Face[]): readonly LoopTerm[] {
  return way.slice(1).flatMap((face, index): readonly LoopTerm[] => {
    const before = way[index] as Face
    const sign = face.at.low >= before.at.low ? 1 : -1
    const span = sign === 1 ? minus(face.at, before.at) : minus(before.at, face.at)
    const term = { size: { ...span, standing: weaker(face.at.standing, before.at.standing) }, sign } as const
    if (face.part === before.part) return [{ parts: [face.part], ...term }]
    return span.low === 0 && span.high === 0 ? [] : [{ parts: [before.part, face.part], ...term }]
  })
}
