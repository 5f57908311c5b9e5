// What cannot be true together. Only these are faults; everything that is merely missing is a question.
import { close } from '../../planning/close.ts'
import { Problem } from '../../problem/problem.ts'
import { depth, homesMeet, sameAxis } from '../lines/meet.ts'
import { atHome, type Solid } from '../lines/shape.ts'
import { TIGHT } from '../lines/span.ts'
import type { Part, PartId, Unit } from '../model/unit.ts'
import { mayTouchAtHome } from './blocks.ts'
import type { Derivation } from './compile.ts'
import { ring, size } from './reasons.ts'

/** Faces that touch may be written down this far apart (gasket, chamfer, a float to be set); metres. */
const SEAT_SLACK = 0.0012

export function contradictionsIn(unit: Unit, derivation: Derivation): readonly Problem[] {
  const circles = carriersThatGoRound(unit)
  if (circles.length > 0) return circles
  const faults = [...sharedPlaces(unit, derivation), ...seatsThatDisagree(unit), ...partsWithoutWay(unit, derivation)]
  return derivation.noWayIn.length > 0 ? faults : [...faults, ...needsThatContradict(unit, derivation)]
}

/** a goes onto b and b onto a: nothing of it stands on the housing. */
function carriersThatGoRound(unit: Unit): readonly Problem[] {
  const told = new Set<PartId>()
  return [...unit.parts.values()].flatMap((part) => {
    const chain: PartId[] = []
    let at: PartId | undefined = part.id
    while (at !== undefined && !chain.includes(at)) {
      chain.push(at)
      at = unit.parts.get(at)?.onto
    }
    if (at !== part.id || told.has(part.id)) return []
    for (const id of chain) told.add(id)
    return [new Problem('CARRIERS_GO_ROUND', { chain: [...chain, part.id].join(' goes onto ') }, placeOf(part, unit))]
  })
}

/**
 * Orders told by hand that go round. Where sizes have a part in it, a fact that nobody wrote down may mend it: then the sequence tells the
 * conflict, and it is no fault.
 */
function needsThatContradict(unit: Unit, { problem }: Derivation): readonly Problem[] {
  const { contradiction } = close(problem)
  if (!contradiction) return []
  const reasons = contradiction.map(({ op, id }) => {
    const operation = problem.operations.find((each) => each.id === op)
    return [...(operation?.needs ?? []), ...problem.lags].find((relation) => relation.id === id)?.reason
  })
  if (!reasons.every((reason) => reason?.origin === 'author')) return []
  const steps = new Set(contradiction.map(({ op }) => op))
  const at = unit.addedOrders.find(({ then }) => steps.has(then))?.at
  const says = [...new Set(reasons.map((reason) => reason?.says))].join(' ')
  return [new Problem('NEEDS_CONTRADICT', { says }, at && { file: unit.file, ...at })]
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
