import { lbfInch, newtonMetre } from '../../quantity/constructors.ts'
import type { Newton, NewtonMetre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Answer, type Known, type Range, rangeOf, spread } from '../range.ts'
import { rollingTorque, type StringAndDrum, scaleReading } from './rollingTorque.ts'

/** Of both bearings: one new one makes the pair new. */
export type BearingState = 'new' | 'used'

interface UsualDrag extends Readonly<Record<BearingState, Range<NewtonMetre>>> {
  readonly source: string
}

/** What manuals print, seal not fitted and no gear in mesh. Other machines differ: an order of size, not a setting. */
const USUAL = {
  'pinion of a light axle': {
    new: { low: lbfInch(20), high: lbfInch(32) },
    used: { low: lbfInch(8), high: lbfInch(15) },
    source: 'repair manual of a pick-up truck, 1988: 20 to 25 or 24 to 32 lbf·in new, 8 to 12 or 10 to 15 used (read)',
  },
  'pinion of a small machine': {
    new: { low: newtonMetre(0.9), high: newtonMetre(1.8) },
    used: { low: newtonMetre(0.45), high: newtonMetre(0.9) },
    source: 'service page of a maker of building machines: 6 to 12 lbf·in new, 3 to 6 used (read)',
  },
  'pinion of a transaxle': {
    new: { low: newtonMetre(2), high: newtonMetre(4) },
    used: { low: newtonMetre(0.3), high: newtonMetre(0.6) },
    source: "guide to a sports car's transaxle (from memory)",
  },
  'side bearings of a transaxle': {
    new: { low: lbfInch(18), high: lbfInch(18) },
    used: { low: lbfInch(9), high: lbfInch(9) },
    source: "manual of a small car's transaxle: 18 lbf·in new, 9 used (from memory)",
  },
} as const satisfies Readonly<Record<string, UsualDrag>>

export type DragPlace = keyof typeof USUAL

/**
 * Rolling torque that manuals print for such a place: to see whether a reading is of the right order. Used bearings drag
 * 15 to 60 % as much as new ones. Nothing to set by: the maker's manual is.
 *
 * @param place pinion of a light axle, pinion of a small machine, pinion of a transaxle, side bearings of a transaxle
 * @param bearings new or used
 * @returns range as printed, with its manual
 * @source the manuals named in the answer
 * @example usualRollingTorque({ place: 'pinion of a light axle', bearings: 'new' }).torque.low   // 20 lbf·in
 */
export function usualRollingTorque({
  place,
  bearings,
}: {
  readonly place: DragPlace
  readonly bearings: BearingState
}): { readonly torque: Range<NewtonMetre>; readonly source: string } {
  const row = USUAL[place]
  return { torque: row[bearings], source: row.source }
}

export interface RollingTorqueVerdict {
  /** Of the bearings alone, the seal's drag taken off. */
  readonly torque: Range<NewtonMetre>
  /** The maker's range that it was held against; left out where he gave none for these bearings. */
  readonly wanted?: Range<NewtonMetre>
  /** What the scale has to read for that range, the seal's drag in it. */
  readonly scale?: Range<Newton>
  readonly isRight: Answer
  readonly says: string
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * Whether the preload of a pair of taper bearings is right, by its rolling torque: string and scale to torque, the drag of
 * a seal taken off, held against the maker's range for new or for used bearings. Read it while it turns steadily, no
 * gear in mesh, oiled, rollers seated by about 20 turns both ways. Without the maker's range for these very bearings
 * nothing is told to be right.
 *
 * @param force symbol F, steady reading of the scale
 * @param drumDiameter, stringDiameter as for rollingTorque
 * @param sealDrag of the seal by itself, read on the shaft before it had preload; left out 0: the seal is not fitted
 * @param bearings new or used; left out not known: then it has to be right for both
 * @param forNew, forUsed the maker's ranges of torque, seal not fitted
 * @returns torque of the bearings, verdict, and what the scale has to read
 * @throws VALUE_OUTSIDE, RANGE_TURNED, DRUM_TOO_DOUBTFUL
 * @source statics; new and used apart, seal off, about 20 turns: manuals of axles and transaxles; no range for used ones is
 *   made from that for new ones, for manuals differ in it from 15 to 60 %
 * @example rollingTorqueVerdict({ force: lbf(10), drumDiameter: inch(4), bearings: 'used', forNew: { low: lbfInch(20), high: lbfInch(32) }, forUsed: { low: lbfInch(8), high: lbfInch(15) } }).isRight   // 'no'
 */
export function rollingTorqueVerdict({
  force,
  sealDrag = NO_DRAG,
  bearings,
  forNew,
  forUsed,
  ...drum
}: StringAndDrum & {
  readonly force: Known<Newton>
  readonly sealDrag?: Known<NewtonMetre>
  readonly bearings?: BearingState
  readonly forNew?: Range<NewtonMetre>
  readonly forUsed?: Range<NewtonMetre>
}): RollingTorqueVerdict {
  const read = rollingTorque({ force, ...drum })
  requireWithin('the drag of the seal', sealDrag, { low: 0, high: read.low, unit: 'N·m' })
  for (const range of [forNew, forUsed]) if (range) requireAboveZero("the maker's rolling torque", range, 'N·m')
  const torque = spread({ read, sealDrag }, (exact) => newtonMetre(exact.read - exact.sealDrag))
  const wanted = bearings === 'new' ? forNew : bearings === 'used' ? forUsed : undefined
  const judged = wanted ? [wanted] : bearings === undefined ? [forNew, forUsed] : []
  const places = judged.map((range) => range && placeOf(torque, range))
  const isRight = sameOf(places.map((place) => place && ANSWERS[place]))
  const seal = rangeOf(sealDrag)
  return {
    torque,
    ...(wanted
      ? {
          wanted,
          scale: scaleReading({
            torque: { low: newtonMetre(wanted.low + seal.high), high: newtonMetre(wanted.high + seal.low) },
            ...drum,
          }),
        }
      : {}),
    isRight,
    says: says({ bearings, place: wanted && placeOf(torque, wanted), isRight, hasOther: Boolean(forNew ?? forUsed) }),
    cautions: cautions({ bearings, isTight: places[0] === 'above' || places[1] === 'above' }),
    source: 'statics; the ranges are those that were given',
  }
}

type Place = 'below' | 'within' | 'above' | 'across'
const ANSWERS = { below: 'no', within: 'yes', above: 'no', across: 'not known' } as const

function placeOf(torque: Range<NewtonMetre>, wanted: Range<NewtonMetre>): Place {
  const { low, high } = rangeOf(wanted)
  const hair = 1e-9
  if (torque.high < low - hair) return 'below'
  if (torque.low > high + hair) return 'above'
  return torque.low >= low - hair && torque.high <= high + hair ? 'within' : 'across'
}

/** What all of them answer; nothing known of one leaves it open. */
function sameOf(answers: readonly (Answer | undefined)[]): Answer {
  const [first] = answers
  return first !== undefined && answers.every((answer) => answer === first) ? first : 'not known'
}

const SAYS: Readonly<Record<Place, string>> = {
  below: 'too slack for the range: draw it up, seat the rollers, read again',
  within: 'within the range',
  above: 'too tight for the range: it would run hot',
  across: 'the reading is too coarse to say: a finer scale, a thinner drum, or the seal off',
}

function says(told: {
  readonly bearings: BearingState | undefined
  readonly place: Place | undefined
  readonly isRight: Answer
  readonly hasOther: boolean
}): string {
  if (told.place) return SAYS[told.place]
  if (told.bearings === undefined) {
    if (told.isRight === 'no') return 'right neither for new bearings nor for used ones'
    return told.isRight === 'yes' ? 'within both ranges' : 'are the bearings new or used? Their ranges differ'
  }
  return told.hasOther
    ? `the range that was given is not for ${told.bearings} bearings: look for theirs in the manual`
    : `no range of the maker for ${told.bearings} bearings: look it up, and note what was found before stripping`
}

function cautions(told: { readonly bearings: BearingState | undefined; readonly isTight: boolean }): string[] {
  const said = ['The steady reading counts, not the one as it breaks away; no gear in mesh, bearings oiled.']
  if (told.bearings !== 'new') {
    said.push(
      'Used bearings: found lower than the figure for used ones, set to the figure; found higher, set back to what was found (manual of a four-wheel-drive axle).',
    )
  }
  if (told.isTight) said.push('Never slacken a nut on a crush sleeve: a new sleeve, and draw up again.')
  return said
}

const NO_DRAG = newtonMetre(0)
