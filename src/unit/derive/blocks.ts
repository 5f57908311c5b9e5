// What bars a body on its way home, part by part: needs where sizes say yes, questions where they do not say.
import type { Alternative, Need, Standing } from '../../planning/model/problem.ts'
import type { Contribution } from '../connections/kind.ts'
import type { Block, Encounter } from '../lines/block.ts'
import { atHome, mayMeet, moved, onItsWay, type Solid } from '../lines/shape.ts'
import type { JoinedPlace, Part, PartId, Unit } from '../model/unit.ts'
import type { Frame } from './frame.ts'
import { oneOf, reason, ring, whileOneIsAway } from './reasons.ts'
import type { Judge } from './said.ts'

/** Something that the sizes do not settle. */
export interface Doubt {
  readonly step: string
  readonly about: PartId
  readonly says: string
}

/** What bars a way for good, and how well that is known. */
export interface Bar {
  readonly about: PartId
  readonly says: string
  readonly standing: Standing
}

export interface Barred {
  readonly needs: readonly Need[]
  readonly doubts: readonly Doubt[]
  readonly bars: readonly Bar[]
}

interface Journey {
  readonly part: Part
  /** The carrier it goes onto. */
  readonly onto: PartId
  readonly place: JoinedPlace
  readonly wayId: string
  readonly judge: Judge
}

/** May the two touch or overlap when `mover` comes home? A press contact only the way it was named. */
const mayTouch = (mover: Part, other: Part, joints: Contribution): boolean =>
  mayMeet(mover, other) || joints.mayOverlap.some((pair) => pair.mover === mover.id && pair.other === other.id)

/** May the two share a place at home, whichever of them moves? */
export const mayTouchAtHome = (a: Part, b: Part, joints: Contribution): boolean =>
  mayTouch(a, b, joints) || mayTouch(b, a, joints)

/** A part that moves along, and the steps that have to be done for it to be there. */
interface Traveller {
  readonly mover: Part
  readonly joinedBy: readonly PartId[]
}

function travellersOf({ part }: Journey, frame: Frame): readonly Traveller[] {
  return [part.id, ...frame.hangsOn(part.id)].flatMap((id) => {
    const chain = frame.chain(id)
    const joinedBy = chain.slice(0, chain.indexOf(part.id))
    // What is joined in the housing is not there yet while its carrier is on its way.
    if (joinedBy.some((each) => frame.unit.parts.get(each)?.joined === 'in the housing')) return []
    return frame.together(id).map((mover) => ({ mover, joinedBy }))
  })
}

/** Where a standing part may be, the steps that have to be done for the two to meet there, and what else parts them. */
interface Stand {
  readonly stander: Part
  readonly solids: readonly Solid[]
  readonly where: string
  readonly isParked: boolean
  readonly metBy: readonly PartId[]
  readonly unless: readonly Alternative[]
}

function standsOf(journey: Journey, frame: Frame): readonly Stand[] {
  const { part, onto, place } = journey
  const { housing, parts } = frame.unit
  const body = [part.id, ...frame.hangsOn(part.id)]
  const beneath = frame.chain(onto)
  return [housing, ...frame.movers.map(({ id }) => id)].flatMap((id): readonly Stand[] => {
    if (body.includes(id)) return []
    const metBy = id === housing ? beneath : frame.link(id, onto)
    // On the bench nothing is met that only meets in the housing.
    if (place === 'on the bench' && beneath.length > 0 && beneath.every((each) => metBy.includes(each))) return []
    const standers = id === housing ? [parts.get(housing) as Part] : frame.together(id)
    return standers.flatMap((stander) => {
      const home = atHome(stander, frame.unit)
      return placesOf(id, journey, frame).map(({ by, where, unless }) => ({
        stander,
        solids: by ? moved(home, by) : home,
        where,
        isParked: by !== undefined,
        metBy,
        unless,
      }))
    })
  })
}

interface Place {
  readonly by?: { readonly y: number; readonly z: number }
  readonly where: string
  readonly unless: readonly Alternative[]
}

const AT_HOME: Place = { where: '', unless: [] }

function placesOf(stander: PartId, { part, onto }: Journey, frame: Frame): readonly Place[] {
  const head = frame.chain(stander).at(-1) ?? stander
  const { parkedAt, homeWith, path } = frame.parking(head) ?? {}
  // A chain hangs slack over the joint: what goes through it takes it along.
  if (path === 'loop' && homeWith === part.id) return []
  const joinsIt = frame.chain(onto).includes(head)
  if (!parkedAt || !homeWith || homeWith === part.id || joinsIt) return [AT_HOME]
  return [
    { by: parkedAt, where: ' where it is parked', unless: [{ done: [homeWith], notDone: [] }] },
    { where: '', unless: [{ done: [], notDone: [homeWith] }] },
  ]
}

function encounterOf({ mover }: Traveller, stand: Stand, head: Part, { unit, joints }: Frame): Encounter {
  const movingHome = atHome(mover, unit)
  const moving = onItsWay(mover, unit)
  // What was joined before is sprung back and at rest; only a tool that goes along is still there.
  const body = mover === head ? moving : [...movingHome, ...moving.filter((solid) => solid.tool)]
  return {
    moving: body.filter((solid) => !(solid.tool && mover.runsOn.includes(stand.stander.id))),
    movingHome,
    standing: stand.solids,
    isParked: stand.isParked,
    mayTouch: mayTouch(mover, stand.stander, joints),
  }
}

const sentence = (mover: Part, stand: Stand, block: Block, unit: Unit): string => {
  const [p, q] = block.rings ?? []
  const meets = p && q ? `: ${ring(p, unit)} would meet ${ring(q, unit)}` : ''
  return `${mover.id} cannot pass ${stand.stander.id}${stand.where}${meets}`
}

/** Judges a body's journey against everything that may stand in its frame. */
export function barredBy(journey: Journey, frame: Frame): Barred {
  const { part, onto, place, wayId, judge } = journey
  const needs: Need[] = []
  const doubts: Doubt[] = []
  const bars: Bar[] = []
  const certain = new Set(place === 'in the housing' ? frame.chain(onto) : [])
  const stands = standsOf(journey, frame)

  for (const traveller of travellersOf(journey, frame)) {
    const { mover, joinedBy } = traveller
    for (const stand of stands) {
      const block = judge(encounterOf(traveller, stand, part, frame), mover, stand.stander)
      if (block.is === 'no') continue
      const about = stand.stander.id
      const says = sentence(mover, stand, block, frame.unit)
      if (block.is === 'not known') {
        doubts.push({ step: part.id, about, says })
        continue
      }
      const away = [...joinedBy, ...stand.metBy].filter((id) => !certain.has(id))
      if (away.length === 0 && stand.unless.length === 0) {
        bars.push({ about, says, standing: block.standing })
        continue
      }
      const why = reason({
        code: 'BARRED',
        says: `${says}.`,
        origin: 'geometry',
        standing: block.standing,
        facts: { mover: mover.id, standing: about },
      })
      const id = `${wayId}: ${mover.id} past ${about}${stand.where}`
      const parted = whileOneIsAway(id, away, why)
      needs.push(stand.unless.length ? oneOf(id, [...parted.anyOf, ...stand.unless], why) : parted)
    }
  }
  return { needs, doubts, bars }
}
