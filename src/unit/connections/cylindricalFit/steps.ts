import { minute } from '../../../quantity/constructors.ts'
import type { Connection, Known, PartId, Unit } from '../../model/unit.ts'
import { usualTime } from '../amounts.ts'
import type { ClockDraft, Contribution, StepDraft } from '../kind.ts'
import { NOTHING } from '../nothing.ts'
import { usualOrder } from '../order.ts'
import type { FitGiven } from './given.ts'
import { pairOf } from './pair.ts'

const SHEET = "bearing maker's temperature sheet: 8 hours at most at the limit"
const USUAL = 'common practice, no source'

/**
 * A loose fit adds nothing. A pressed one may overlap and wants the press on the bench. A hot or cold one is three steps:
 * warm (or chill) X, X itself, feel X seated when it has come back to room temperature.
 */
export function steps(_connection: Connection, given: FitGiven, unit: Unit): Contribution {
  const { mover, other, heated } = pairOf(given, unit)
  if (mover === undefined || given.fit === undefined || given.fit === 'loose') return NOTHING
  const mayOverlap = other === undefined ? [] : [{ mover, other }]
  if (given.fit === 'press') {
    return {
      ...NOTHING,
      mayOverlap,
      noReturns: pulledOff(mover, unit),
      stations: [{ part: mover, station: 'press', joined: 'on the bench' }],
      within: [
        { part: mover, does: `Press ${mover} on square, load on the ring that is being fitted, up to its face.` },
      ],
    }
  }
  const cold = given.fit === 'cold'
  const ready = `${cold ? 'chill' : 'warm'} ${heated}`
  const feel = `feel ${mover} seated`
  return {
    ...NOTHING,
    mayOverlap,
    noReturns: pulledOff(mover, unit),
    steps: [readying({ id: ready, heated: heated ?? mover, mover, cold }), feeling(feel, mover)],
    orders: [
      usualOrder(ready, mover, cold ? `${heated} goes in while it is cold.` : `${heated} goes on while it is hot.`),
      usualOrder(mover, feel, `${mover} moves while it comes back to room temperature: the seat is felt after that.`),
    ],
    clocks: [
      grip({ ready, mover, heated: heated ?? mover }, given, unit),
      backToRoom(mover, feel, given['feel after']),
    ],
    within: [
      {
        part: mover,
        does: cold
          ? `Wipe the frost off ${heated} and put ${mover} home without a stop: at most 2 min.`
          : `Drop ${mover} home without a stop: out of the oven to home at most 2 min.`,
      },
      { part: mover, does: `Hold ${mover} against its shoulder until it grips.` },
    ],
  }
}

/** A bearing comes off a tight seat by its rolling parts: renewed after that (trade practice, army overhaul manuals). */
const pulledOff = (mover: PartId, unit: Unit): Contribution['noReturns'] =>
  unit.parts.get(mover)?.look === 'bearing' ? [{ part: mover, says: `Pulled off again, ${mover} is renewed.` }] : []

function readying(of: { id: string; heated: PartId; mover: PartId; cold: boolean }): StepDraft {
  return {
    id: of.id,
    does: of.cold ? `Put ${of.heated} in the cold box to soak` : `Put ${of.heated} in the oven to soak`,
    as: of.mover,
    takes: usualTime(2),
    tools: of.cold ? ['cold gloves', 'thermometer'] : ['gloves', 'thermometer'],
    station: of.cold ? 'cold box' : 'oven',
    reach: [],
    // What is warmed may be the body it goes onto: then that body is set up, and not left where it lies.
    ...(of.heated === of.mover && { apart: true }),
  }
}

const feeling = (id: string, mover: PartId): StepDraft => ({
  id,
  does: `Feel that ${mover} is seated, at room temperature: a 0.0015 in feeler must not enter behind it`,
  as: mover,
  takes: usualTime(3),
  tools: ['feeler 0.0015 in'],
  reach: [],
})

/** Soaked through at least; then not longer than the part stands it, or than the shop wants it kept ready. */
function grip(of: { ready: string; mover: PartId; heated: PartId }, given: FitGiven, unit: Unit): ClockDraft {
  const { ready, mover, heated } = of
  const least = given.soak?.high ?? minute(30)
  const isBearing = given['heated part']?.startsWith('bearing') ?? unit.parts.get(heated)?.look === 'bearing'
  const hotBearing = given.fit === 'hot' && isBearing && given['ready for'] === undefined
  const most =
    given['soak at most']?.low ?? (hotBearing ? minute(8 * 60) : least + (given['ready for']?.low ?? minute(10)))
  const told = given.soak !== undefined && (given['soak at most'] ?? given['ready for']) !== undefined
  return {
    id: `${ready}: ready`,
    from: { step: ready, edge: 'end' },
    to: { step: mover, edge: 'start' },
    least_s: least,
    most_s: Math.max(least, most),
    says: `${heated} soaks at least ${minutes(least)} to be through, and is used within ${minutes(Math.max(least, most))}.`,
    standing: told ? 'told' : 'usual',
    source: told ? (given.source ?? 'no source') : hotBearing ? SHEET : USUAL,
  }
}

function backToRoom(mover: PartId, feel: string, told: Known<number> | undefined): ClockDraft {
  const least = told?.high ?? minute(20)
  return {
    id: `${feel}: at room temperature`,
    from: { step: mover, edge: 'end' },
    to: { step: feel, edge: 'start' },
    least_s: least,
    says: `${mover} is felt after it is back at room temperature, ${minutes(least)} at least.`,
    standing: told ? told.standing : 'usual',
    source: told?.source ?? USUAL,
  }
}

const minutes = (seconds: number): string => `${Math.round(seconds / 60)} min`
