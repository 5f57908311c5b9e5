// What cannot be true together. Only these are faults; everything that is merely missing is a question.
import { Problem } from '../../problem/problem.ts'
import { depth, homesMeet, sameAxis } from '../lines/meet.ts'
import { atHome, type Solid } from '../lines/shape.ts'
import { TIGHT } from '../lines/span.ts'
import type { Part, Unit } from '../model/unit.ts'
import { mayTouchAtHome } from './blocks.ts'
import type { Derivation } from './compile.ts'
import { ring, size } from './reasons.ts'

/** Faces that touch may be written down this far apart (gasket, chamfer, a float to be set); metres. */
const SEAT_SLACK = 0.0012

export function contradictionsIn(unit: Unit, derivation: Derivation): readonly Problem[] {
  return [...sharedPlaces(unit, derivation), ...seatsThatDisagree(unit), ...partsWithoutWay(unit, derivation)]
}

const placeOf = (part: Part, unit: Unit) => ({ file: unit.file, line: part.at.line, column: part.at.column })

function sharedPlaces(unit: Unit, { frame }: Derivation): readonly Problem[] {
  const parts = [...unit.parts.values()]
  return parts.flatMap((part, index) =>
    parts.slice(index + 1).flatMap((other) => {
      if (mayTouchAtHome(part, other, frame.joints)) return []
      for (const p of atHome(part, unit)) {
        for (const q of atHome(other, unit)) {
          const meet = homesMeet(p, q)
          const doubtful = meet.standing === 'supposed' || meet.standing === 'usual'
          const isFit = sameAxis(p, q) && !(depth(p, q).low > TIGHT)
          if (meet.is !== 'yes' || doubtful || isFit) continue
          const facts = { part: part.id, other: other.id, ring: ring(p, unit), otherRing: ring(q, unit) }
          return [new Problem('PARTS_SHARE_A_PLACE', facts, placeOf(other, unit))]
        }
      }
      return []
    }),
  )
}

function seatsThatDisagree(unit: Unit): readonly Problem[] {
  return [...unit.parts.values()].flatMap((part) =>
    part.seats.flatMap((name) => {
      const other = unit.parts.get(name)
      if (!other) return []
      const gaps = [...part.rings.keys()].flatMap((line) =>
        atHome(part, unit)
          .filter((p) => p.line === line)
          .flatMap((p) =>
            atHome(other, unit)
              .filter((q) => q.line === line)
              .flatMap((q) => [gap(p.from, q.to), gap(p.to, q.from)]),
          ),
      )
      if (gaps.length === 0 || !gaps.every(Number.isFinite)) return []
      const nearest = Math.min(...gaps)
      if (nearest <= SEAT_SLACK) return []
      const off = size({ low: nearest, high: nearest, standing: 'seen' }, unit)
      return [
        new Problem(
          'SEATS_DISAGREE',
          { part: part.id, other: name, off: `${off} ${unit.lengthUnit}` },
          placeOf(part, unit),
        ),
      ]
    }),
  )
}

/** The least distance that the two faces can have. */
const gap = (a: Solid['from'], b: Solid['from']): number => Math.max(0, a.low - b.high, b.low - a.high)

function partsWithoutWay(unit: Unit, { noWayIn }: Derivation): readonly Problem[] {
  return noWayIn.map(({ part, bars }) => {
    const at = unit.parts.get(part)
    return new Problem('NO_WAY_IN', { part, bars: bars.join('; ') }, at && placeOf(at, unit))
  })
}
