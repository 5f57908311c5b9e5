// The ways of each part: generated along its lines, dead ones struck out; declared ones as they were told.
import type { Mode, Need, Standing } from '../../planning/model/problem.ts'
import { isFirm, stronger, weaker } from '../lines/answer.ts'
import { type Block, blocksAcross, blocksAlong, covers, type Encounter, threads } from '../lines/block.ts'
import type { DeclaredWay, End, JoinedPlace, Part, PartId } from '../model/unit.ts'
import { type Bar, barredBy, type Doubt } from './blocks.ts'
import { ASSEMBLY_BENCH } from './durations.ts'
import type { Frame } from './frame.ts'
import type { Openings } from './openings.ts'
import { oneOf, reason, restingOn, whileOneIsAway } from './reasons.ts'
import { said } from './said.ts'

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

/** A way with the mode that it becomes unless it is struck out. */
interface Tried {
  readonly way: Omit<Way, 'dead' | 'mode'>
  readonly mode: Mode
  readonly bars: readonly Bar[]
}

export function waysOf(part: Part, frame: Frame, openings: Openings): readonly Way[] {
  const trips = tripsOf(part, frame)
  const isAssumed = trips.some((trip) => isPlaceAssumed(part, trip, frame))
  const tried = trips.flatMap((trip) =>
    placesOf(part, trip, frame).map((place) => wayOf({ part, trip, place, frame, openings })),
  )
  return struckOut(tried, isAssumed ? 'usual' : 'seen')
}

/**
 * Ways that are barred for good fall. What the ways that are left ask is no better known than what bars the others. A bar that is only
 * usual or supposed never takes the last way away: it is asked about.
 */
function struckOut(tried: readonly Tried[], assumed: Standing): readonly Way[] {
  const barred = ({ bars }: Tried): Standing => bars.map(({ standing }) => standing).reduce(stronger, 'supposed')
  const open = tried.filter(({ bars }) => bars.length === 0)
  const live = open.length ? open : tried.filter((each) => !isFirm(barred(each)))
  const grounds = tried
    .filter((each) => !live.includes(each))
    .map(barred)
    .reduce(weaker, assumed)
  return tried.map((each): Way => {
    const { way, mode, bars } = each
    if (!live.includes(each)) return { ...way, dead: bars.map(({ says }) => says) }
    return {
      ...way,
      mode: { ...mode, needs: mode.needs.map((need) => restingOn(need, grounds)) },
      dead: [],
      doubts: [...way.doubts, ...bars.map(({ about, says }) => ({ step: way.part, about, says }))],
    }
  })
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
  if (!liesOnALine(part, frame)) return [{ path: 'by hand' }]
  return (part.end ? [part.end] : (['-', '+'] as const)).map((from) => ({ path: 'along the line', from }))
}

/** The part or anything that hangs on it has rings or stands in a stacking list: then it goes along its line. */
function liesOnALine(part: Part, { unit, hangsOn, together }: Frame): boolean {
  const stacked = new Set([...unit.lines.values()].flatMap((line) => line.stack))
  return [part.id, ...hangsOn(part.id)]
    .flatMap(together)
    .some(({ id, rings, passing, tool }) => rings.size + passing.size > 0 || tool || stacked.has(id))
}

function placesOf(part: Part, trip: Trip, frame: Frame): readonly JoinedPlace[] {
  const carrier = onto(part, frame)
  if (carrier === frame.unit.housing) return ['in the housing']
  const told = trip.declared?.joined ?? part.joined
  if (told) return [told]
  return isPlaceAssumed(part, trip, frame) ? ['on the bench'] : ['on the bench', 'in the housing']
}

function isPlaceAssumed(part: Part, trip: Trip, frame: Frame): boolean {
  const told = trip.declared?.joined ?? part.joined
  return !told && onto(part, frame) !== frame.unit.housing && BENCH_UNTIL_TOLD.has(part.kind ?? '')
}

const onto = (part: Part, frame: Frame): PartId => frame.chain(part.id)[1] ?? frame.unit.housing

function endWord(part: Part, from: End, { unit, hangsOn, together }: Frame): string {
  const body = [part.id, ...hangsOn(part.id)].flatMap(together)
  const measured = body.flatMap(({ rings, passing }) => [...rings.keys(), ...passing.keys()])
  const line =
    unit.lines.get(measured[0] ?? '') ?? [...unit.lines.values()].find(({ stack }) => stack.includes(part.id))
  return line ? line.ends[from === '-' ? 0 : 1] : `the ${from} end`
}

function wayName(part: Part, trip: Trip, place: JoinedPlace, frame: Frame): string {
  const where = onto(part, frame) === frame.unit.housing ? '' : `, ${place}`
  if (trip.path === 'along the line' && trip.from) return `from ${endWord(part, trip.from, frame)}${where}`
  const through = trip.declared?.through ? ` through ${trip.declared.through}` : ''
  const parked = trip.declared?.homeWith ? ', parked' : ''
  return `${trip.path}${through}${parked}${where}`
}

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
}): Tried {
  const { unit } = frame
  const id = wayName(part, trip, place, frame)
  const wayId = `${part.id} ${id}`
  const carrier = onto(part, frame)
  const judge = said(geometryOf(trip), trip.from, unit)
  const barred = barredBy({ part, onto: carrier, place, wayId, judge }, frame)
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
  const workpiece = inHousing ? unit.housing : frame.benchBody(carrier)
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
  const way = {
    part: part.id,
    id,
    path: trip.path,
    ...(trip.from ? { from: trip.from } : {}),
    ...(declared?.through ? { through: declared.through } : {}),
    place,
    ...(declared ? { declared } : {}),
    doubts: barred.doubts,
  }
  return { way, mode, bars: barred.bars }
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
