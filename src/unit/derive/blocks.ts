// What bars a body on its way home, part by part: needs where sizes say yes, questions where they do not say.
import type { Need } from '../../planning/model/problem.ts'
import type { Contribution } from '../connections/kind.ts'
import type { Block, Encounter } from '../lines/block.ts'
import { atHome, moved, onItsWay, type Solid } from '../lines/shape.ts'
import type { Part, PartId, Unit } from '../model/unit.ts'
import type { Frame } from './frame.ts'
import { oneOf, reason, ring, whileOneIsAway } from './reasons.ts'

/** Something that the sizes do not settle. */
export interface Doubt {
  readonly step: string
  readonly about: PartId
  readonly says: string
}

export interface Barred {
  readonly needs: readonly Need[]
  readonly doubts: readonly Doubt[]
  /** What bars the way for good. */
  readonly dead: readonly string[]
}

/** The answer for one mover and one part that stands. */
export type Judge = (encounter: Encounter) => Block

interface Journey {
  readonly part: Part
  /** The carrier it goes onto. */
  readonly onto: PartId
  readonly place: 'on the bench' | 'in the housing'
  readonly wayId: string
  readonly judge: Judge
}

const related = (a: Part, b: PartId): boolean =>
  [a.slidesOn, a.meshes, a.keys, a.runsOn, a.engages].some((list) => list.includes(b))

/** May the two touch or overlap when `mover` comes home? A press contact only the way it was named. */
function mayTouch(mover: Part, other: Part, joints: Contribution): boolean {
  if (related(mover, other.id) || related(other, mover.id)) return true
  return joints.mayOverlap.some((pair) => pair.mover === mover.id && pair.other === other.id)
}

/** May the two share a place at home, whichever of them moves? */
export const mayTouchAtHome = (a: Part, b: Part, joints: Contribution): boolean =>
  mayTouch(a, b, joints) || mayTouch(b, a, joints)

/** Where a standing part may be, with what has to be so for it to be there. */
interface Stand {
  readonly solids: readonly Solid[]
  readonly where: string
  readonly unless: readonly { readonly done: readonly string[]; readonly notDone: readonly string[] }[]
}

function standsOf(standing: Part, mover: PartId, frame: Frame): readonly Stand[] {
  const home = frame.together(standing.id).flatMap((part) => atHome(part, frame.unit))
  const parking = frame.parking(standing.id)
  const { parkedAt, homeWith } = parking ?? {}
  if (!parkedAt || !homeWith || homeWith === mover) return [{ solids: home, where: '', unless: [] }]
  return [
    { solids: moved(home, parkedAt), where: ' where it is parked', unless: [{ done: [homeWith], notDone: [] }] },
    { solids: home, where: '', unless: [{ done: [], notDone: [homeWith] }] },
  ]
}

function encounterOf(mover: Part, stand: Stand, standing: Part, isHead: boolean, frame: Frame): Encounter {
  const { unit, joints } = frame
  const moving = onItsWay(mover, unit).filter((solid) => isHead || solid.tool || !mover.passing.has(solid.line))
  const home = atHome(mover, unit)
  const body = isHead ? moving : [...home, ...moving.filter((solid) => solid.tool)]
  return {
    moving: body.filter((solid) => !(solid.tool && mover.runsOn.includes(standing.id))),
    movingHome: home,
    standing: stand.solids,
    mayTouch: mayTouch(mover, standing, joints),
  }
}

const sentence = (mover: Part, standing: Part, stand: Stand, block: Block, unit: Unit): string => {
  const [p, q] = block.rings ?? []
  const meets = p && q ? `: ${ring(p, unit)} would meet ${ring(q, unit)}` : ''
  return `${mover.id} cannot pass ${standing.id}${stand.where}${meets}`
}

/** Judges a body's journey against everything that may stand in its frame. */
export function barredBy(journey: Journey, frame: Frame): Barred {
  const { unit } = frame
  const { part, onto, place, wayId, judge } = journey
  const needs: Need[] = []
  const doubts: Doubt[] = []
  const dead: string[] = []
  const body = [part.id, ...frame.hangsOn(part.id)]
  const certain = new Set(place === 'in the housing' ? frame.chain(onto) : [])
  const standers = [unit.housing, ...frame.movers.map((each) => each.id)].filter((id) => !body.includes(id))

  for (const moverId of body) {
    const isHead = moverId === part.id
    const carried = frame
      .chain(moverId)
      .filter((id) => frame.chain(moverId).indexOf(id) < frame.chain(moverId).indexOf(part.id))
    for (const mover of frame.together(moverId)) {
      if (mover.rings.size === 0) continue
      for (const standerId of standers) {
        const stander = unit.parts.get(standerId) as Part
        const link = standerId === unit.housing ? frame.chain(onto) : frame.link(standerId, onto)
        if (
          place === 'on the bench' &&
          frame.chain(onto).length > 0 &&
          frame.chain(onto).every((id) => link.includes(id))
        )
          continue
        for (const stand of standsOf(stander, part.id, frame)) {
          const block = judge(encounterOf(mover, stand, stander, isHead, frame))
          if (block.is === 'no') continue
          const says = sentence(mover, stander, stand, block, unit)
          const away = [...carried, ...link].filter((id) => !certain.has(id))
          const id = `${wayId}: ${mover.id} past ${standerId}${stand.where}`
          if (block.is === 'not known') doubts.push({ step: part.id, about: standerId, says })
          else if (away.length === 0 && stand.unless.length === 0) dead.push(says)
          else {
            const why = reason({
              code: 'BARRED',
              says: `${says}.`,
              origin: 'geometry',
              standing: block.standing,
              facts: { mover: mover.id, standing: standerId },
            })
            needs.push(
              stand.unless.length === 0
                ? whileOneIsAway(id, away, why)
                : oneOf(id, [...away.map((each) => ({ done: [], notDone: [each] })), ...stand.unless], why),
            )
          }
        }
      }
    }
  }
  return { needs, doubts, dead }
}
