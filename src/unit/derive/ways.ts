// The ways of each part: generated along its lines, dead ones struck out; declared ones as they were told.
import type { Mode, Need } from '../../planning/model/problem.ts'
import { NO, YES } from '../lines/answer.ts'
import { type Block, blocksAcross, blocksAlong, covers, type Encounter, threads } from '../lines/block.ts'
import type { DeclaredWay, End, JoinedPlace, Part, PartId } from '../model/unit.ts'
import { barredBy, type Doubt, type Judge } from './blocks.ts'
import { ASSEMBLY_BENCH } from './durations.ts'
import type { Frame } from './frame.ts'
import type { Openings } from './openings.ts'
import { oneOf, reason, whileOneIsAway } from './reasons.ts'

/** One way of one part: how it is said, whether it is dead and why, or the mode it becomes. */
export interface Way {
  readonly part: PartId
  readonly id: string
  readonly path: Path
  readonly from?: End
  readonly through?: string
  readonly place: JoinedPlace
  readonly declared?: DeclaredWay
  readonly mode?: Mode
  readonly dead: readonly string[]
  readonly doubts: readonly Doubt[]
}

type Path = DeclaredWay['path'] | 'into its keyway'

interface Trip {
  readonly path: Path
  readonly from?: End
  readonly declared?: DeclaredWay
}

/** Presses and hot fits are not left to geometry: until someone says, they are put together on the bench. */
const BENCH_UNTIL_TOLD = new Set(['press fit', 'hot fit'])

export function waysOf(part: Part, frame: Frame, openings: Openings): readonly Way[] {
  return tripsOf(part, frame).flatMap((trip) =>
    placesOf(part, trip, frame).map((place) => wayOf({ part, trip, place, frame, openings })),
  )
}

function tripsOf(part: Part, frame: Frame): readonly Trip[] {
  if (part.ways.length) {
    return part.ways.flatMap((declared): readonly Trip[] => {
      if (declared.path !== 'along the line') return [{ path: declared.path, declared }]
      const from = declared.from ?? part.end
      return (from ? [from] : (['-', '+'] as const)).map((end) => ({ path: declared.path, from: end, declared }))
    })
  }
  if (part.kind === 'key') return [{ path: 'into its keyway' }]
  const lies = part.rings.size > 0 || [...frame.unit.lines.values()].some((line) => line.stack.includes(part.id))
  if (!lies) return [{ path: 'by hand' }]
  return (part.end ? [part.end] : (['-', '+'] as const)).map((from) => ({ path: 'along the line', from }))
}

function placesOf(part: Part, trip: Trip, frame: Frame): readonly JoinedPlace[] {
  const carrier = onto(part, frame)
  if (carrier === frame.unit.housing) return ['in the housing']
  const told = trip.declared?.joined ?? part.joined
  if (told) return [told]
  if (part.kind && BENCH_UNTIL_TOLD.has(part.kind)) return ['on the bench']
  return ['on the bench', 'in the housing']
}

const onto = (part: Part, frame: Frame): PartId => frame.chain(part.id)[1] ?? frame.unit.housing

const endWord = (part: Part, from: End, frame: Frame): string => {
  const line = frame.unit.lines.get([...part.rings.keys()][0] ?? '')
  return line ? line.ends[from === '-' ? 0 : 1] : `the ${from} end`
}

function wayName(part: Part, trip: Trip, place: JoinedPlace, frame: Frame): string {
  const where = onto(part, frame) === frame.unit.housing ? '' : `, ${place}`
  if (trip.path === 'along the line' && trip.from) return `from ${endWord(part, trip.from, frame)}${where}`
  const through = trip.declared?.through ? ` through ${trip.declared.through}` : ''
  const parked = trip.declared?.homeWith ? ', parked' : ''
  return `${trip.path}${through}${parked}${where}`
}

/** What a person said about two parts wins over sizes; a face that stands against another cannot be passed. */
function said(part: Part, from: End | undefined, frame: Frame, geometry: (encounter: Encounter) => Block): Judge {
  const { passings, parts } = frame.unit
  return (encounter) => {
    const mover = encounter.movingHome[0]?.part ?? part.id
    const stander = encounter.standing[0]?.part
    const word = passings.find((each) => each.mover === mover && each.past === stander)
    if (word) return { ...(word.passes ? NO : YES), standing: word.standing }
    const block = geometry(encounter)
    if (block.is === 'yes' || !stander || !from) return block
    const stands = parts.get(stander)
    if (!stands?.seats.includes(mover) || block.is === 'no') return block
    const [p, q] = block.rings ?? []
    const towards =
      p && q && (from === '+' ? q.from.low >= p.to.low - SEAT_SLACK : q.to.high <= p.from.high + SEAT_SLACK)
    return towards ? { ...block, is: 'yes', standing: 'told' } : block
  }
}

/** A seat may be written down up to a millimetre off (gasket, chamfer). */
const SEAT_SLACK = 0.001

function wayOf({
  part,
  trip,
  place,
  frame,
  openings,
}: {
  part: Part
  trip: Trip
  place: JoinedPlace
  frame: Frame
  openings: Openings
}): Way {
  const { unit } = frame
  const id = wayName(part, trip, place, frame)
  const wayId = `${part.id} ${id}`
  const carrier = onto(part, frame)
  const judge = said(part, trip.from, frame, geometryOf(trip))
  const barred = barredBy({ part, onto: carrier, place, wayId, judge }, frame)
  const stacked = stackedBetween(part, trip, frame)
  const needs: Need[] = [
    ...barred.needs,
    ...placeNeeds(part, place, frame, wayId),
    ...endOpenings(part, trip, frame, openings),
  ]

  const { declared } = trip
  if (declared?.through) {
    needs.push(...openings.open({ opening: declared.through, step: part.id, whatFor: part.id }))
  }
  for (const away of declared?.clear ?? []) {
    const says = `${part.id} gets in only while ${away} is away${declared?.why ? ` (${declared.why})` : ''}.`
    const why = reason({ code: 'CLEAR', says, origin: 'geometry', standing: 'told', facts: { part: part.id, away } })
    needs.push(whileOneIsAway(`${wayId}: ${away} away`, frame.chain(away), why))
  }
  if (declared?.homeWith) {
    const says = `${part.id} is parked first; ${declared.homeWith} brings it home.`
    const why = reason({ code: 'PARKED', says, origin: 'geometry', standing: 'told', facts: { part: part.id } })
    needs.push(oneOf(`${wayId}: parked before ${declared.homeWith}`, [{ done: [], notDone: [declared.homeWith] }], why))
  }

  const inHousing = place === 'in the housing'
  const workpiece = inHousing ? unit.housing : (frame.chain(carrier).at(-1) ?? unit.housing)
  const mode: Mode = {
    id,
    setup: {
      workpiece,
      attitude: inHousing ? (unit.lies.get(part.id) ?? 'any') : 'any',
      station:
        frame.joints.stations.find((each) => each.part === part.id && each.joined === place)?.station ?? ASSEMBLY_BENCH,
      tools: part.tools.length ? [...part.tools] : 'any',
    },
    people: 1,
    needs: [...needs],
  }
  const dead = barred.dead
  return {
    part: part.id,
    id,
    path: trip.path,
    ...(trip.from ? { from: trip.from } : {}),
    ...(declared?.through ? { through: declared.through } : {}),
    place,
    ...(declared ? { declared } : {}),
    ...(dead.length ? {} : { mode }),
    dead,
    doubts: [...barred.doubts, ...stacked.doubts],
  }
}

function geometryOf({ path, from }: Trip): (encounter: Encounter) => Block {
  switch (path) {
    case 'along the line':
      return (encounter) => blocksAlong(encounter, from as End)
    case 'across the split':
      return blocksAcross
    case 'into its keyway':
      return covers
    default:
      return threads
  }
}

function placeNeeds(part: Part, place: JoinedPlace, frame: Frame, wayId: string): readonly Need[] {
  const carrier = onto(part, frame)
  const chain = frame.chain(carrier)
  if (chain.length === 0) return []
  const why = (says: string) =>
    reason({
      code: 'PLACE',
      says,
      origin: 'geometry',
      standing: 'told',
      facts: { part: part.id, onto: carrier, place },
    })
  if (place === 'on the bench') {
    return [whileOneIsAway(`${wayId}: bench`, chain, why(`${part.id} goes onto ${carrier} on the bench.`))]
  }
  return [
    oneOf(
      `${wayId}: housing`,
      [{ done: [...chain], notDone: [] }],
      why(`${part.id} goes onto ${carrier} once that is in place.`),
    ),
  ]
}

/** A cover whose sizes nobody took still shuts the end of the line that it is said to close. */
function endOpenings(part: Part, trip: Trip, frame: Frame, openings: Openings): readonly Need[] {
  if (trip.path !== 'along the line' || onto(part, frame) !== frame.unit.housing) return []
  const lines = [...part.rings.keys()]
  const crossed = [...frame.unit.openings.values()].filter(
    (opening) => opening.end === trip.from && opening.lines.some((line) => lines.includes(line)),
  )
  return crossed.flatMap((opening) => {
    const unsized = openings.closers(opening.id).filter((closer) => {
      const rings = frame.unit.parts.get(closer)?.rings
      return closer !== part.id && !part.closes.includes(opening.id) && !lines.some((line) => rings?.has(line))
    })
    return unsized.map((closer) =>
      whileOneIsAway(
        `${part.id}: ${opening.id} open of ${closer}`,
        frame.chain(closer),
        reason({
          code: 'OPENING',
          says: `${part.id} comes through the ${opening.id}, which ${closer} shuts.`,
          origin: 'geometry',
          standing: 'usual',
          facts: { opening: opening.id },
        }),
      ),
    )
  })
}

/** Without sizes the stacking list says what stands between a part and an end; whether it passes is told or asked. */
function stackedBetween(part: Part, trip: Trip, frame: Frame): { needs: readonly Need[]; doubts: readonly Doubt[] } {
  if (trip.path !== 'along the line' || part.rings.size > 0) return { needs: [], doubts: [] }
  const needs: Need[] = []
  const doubts: Doubt[] = []
  for (const line of frame.unit.lines.values()) {
    const at = line.stack.indexOf(part.id)
    if (at < 0) continue
    const end = line.ends[trip.from === '-' ? 0 : 1]
    for (const other of trip.from === '-' ? line.stack.slice(0, at) : line.stack.slice(at + 1)) {
      if (frame.hangsOn(part.id).includes(other)) continue
      const word = frame.unit.passings.find((each) => each.mover === part.id && each.past === other)
      const says = `${part.id} cannot pass ${other} from ${end}`
      if (!word) doubts.push({ step: part.id, about: other, says })
      else if (!word.passes) {
        const why = reason({
          code: 'BARRED',
          says: `${says}.`,
          origin: 'geometry',
          standing: word.standing,
          facts: { mover: part.id, standing: other },
        })
        needs.push(whileOneIsAway(`${part.id} past ${other} from ${end}`, frame.link(other, onto(part, frame)), why))
      }
    }
  }
  return { needs, doubts }
}
