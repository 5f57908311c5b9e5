// What a person said about two parts, and what a stacking list tells where nobody measured: both come before the sizes.
import { type Answer, all, any, NO, NOT_KNOWN, YES } from '../lines/answer.ts'
import { type Block, type Encounter, sweeps } from '../lines/block.ts'
import { minus, size } from '../lines/span.ts'
import type { End, Part, Unit } from '../model/unit.ts'

/** The answer for one mover and one part that stands. */
export type Judge = (encounter: Encounter, mover: Part, standing: Part) => Block

/** A seat may be written down up to a millimetre off (gasket, chamfer). */
const SEAT_SLACK = 0.001

/**
 * Along a line: "passes" and "does not pass" win over sizes; a face that stands against another cannot be passed where sizes leave it open; parts
 * without sizes are asked about where the stacking list puts one between the other and its end.
 */
export function said(geometry: (encounter: Encounter) => Block, from: End | undefined, unit: Unit): Judge {
  if (!from) return geometry
  return (encounter, mover, standing) => {
    const word = unit.passings.find((each) => each.mover === mover.id && each.past === standing.id)
    if (word?.passes) return { ...NO, standing: word.standing }
    if (word) {
      return all([{ ...YES, standing: word.standing }, onTheWay(encounter, mover, standing, from, unit)])
    }
    const block = geometry(encounter)
    if (block.is === 'not known' && standAgainst(encounter, mover, standing, from)) {
      return { ...block, is: 'yes', standing: 'told' }
    }
    if (block.is !== 'no' || shareALine(encounter)) return block
    return isStackedOnTheWay(mover, standing, from, unit) ? NOT_KNOWN : block
  }
}

const shareALine = ({ moving, standing }: Encounter): boolean =>
  moving.some((p) => standing.some((q) => q.line === p.line))

/** Does it stand between the mover's home and the end that it comes from? */
function onTheWay({ moving, standing }: Encounter, mover: Part, stander: Part, from: End, unit: Unit): Answer {
  const swept = moving.flatMap((p) => standing.filter((q) => q.line === p.line).map((q) => sweeps[from](p, q)))
  if (swept.length) return any(swept)
  const isStacked = [...unit.lines.values()].some(({ stack }) => stack.includes(mover.id) && stack.includes(stander.id))
  if (!isStacked) return NOT_KNOWN
  return isStackedOnTheWay(mover, stander, from, unit) ? YES : NO
}

const isStackedOnTheWay = (mover: Part, stander: Part, from: End, unit: Unit): boolean =>
  [...unit.lines.values()].some(({ stack }) => {
    const [own, its] = [stack.indexOf(mover.id), stack.indexOf(stander.id)]
    return own >= 0 && its >= 0 && (from === '+' ? its > own : its < own)
  })

/** One of the two is said to stand against the other, and by their faces it can only do so on the side that the mover comes from. */
function standAgainst({ movingHome, standing }: Encounter, mover: Part, stander: Part, from: End): boolean {
  if (!stander.seats.includes(mover.id) && !mover.seats.includes(stander.id)) return false
  const gaps = (end: End) =>
    movingHome.flatMap((p) =>
      standing
        .filter((q) => q.line === p.line)
        .map((q) => size(end === '+' ? minus(q.from, p.to) : minus(p.from, q.to))),
    )
  const nearest = Math.min(...gaps(from).map(({ high }) => high))
  const other = Math.min(...gaps(from === '+' ? '-' : '+').map(({ low }) => low))
  return nearest <= SEAT_SLACK && nearest < other
}
