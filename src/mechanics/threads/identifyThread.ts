import { Problem } from '../../problem/problem.ts'
import { inch, metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, shown } from '../limits.ts'
import { type Answer, type Known, type Range, rangeOf } from '../range.ts'
import { below, KNOWN_THREADS, type KnownThread } from './knownThreads.ts'

export interface MeasuredThread {
  /** Outside of the screw over its threads, or the bore of the tapped hole, as measured. */
  readonly diameter: Known<Metre>
  readonly of: 'screw' | 'hole'
  /** By a gauge or over many threads; one of pitch and threadsPerInch. */
  readonly pitch?: Known<Metre>
  readonly threadsPerInch?: Known<number>
  /** Degrees between the flanks by a gauge: 60, 55 or 47.5; left out not known. */
  readonly flankAngle?: number
}

export interface ThreadMatch {
  readonly designation: string
  readonly form: string
  /** Measured less basic diameter, middle to middle. */
  readonly diameterOff: Metre
  /** Measured less nominal pitch. */
  readonly pitchOff: Metre
  readonly says: string
}

export interface IdentifiedThread {
  /** What it can be, best first. */
  readonly matches: readonly ThreadMatch[]
  /** What it is not, though it looks like it and may even start. */
  readonly nearMisses: readonly ThreadMatch[]
  /** yes: one thread only; no: none that is held here; not known: several, told apart as the cautions say. */
  readonly isSure: Answer
  readonly cautions: readonly string[]
}

// Our choice, no source: how far a sound or worn thread may measure from its basic size, and what looks alike.
const PITCH_OFF = 0.015
const SCREW_BELOW = { pitches: 0.2, metres: 1e-4 }
const HOLE_ABOVE = { pitches: 0.25, metres: 1e-4 }
const OVER = 5e-5
const NEAR_PITCH = 0.1
const NEAR_DIAMETER = 0.06
const SHOWN = 6

/**
 * What thread it is, from a measured diameter and pitch, with the ones that it could be mistaken for: 3/8-16 and M10×1.5,
 * 1/2-12 and 1/2-13. A screw measures up to a few tenths below its size, a tapped hole above its minor diameter. Series: M
 * coarse and fine, UNC, UNF, UNEF, BSW, BSF, BA, G, R, NPT.
 *
 * @param diameter of the screw over its threads or of the hole
 * @param of screw or hole
 * @param pitch symbol P
 * @param threadsPerInch in place of the pitch
 * @param flankAngle degrees
 * @returns matches best first, near misses, whether it is sure
 * @throws THREAD_PITCH_NOT_TOLD, VALUE_OUTSIDE, RANGE_TURNED
 * @source the series: ISO 261, ASME B1.1, BS 84, BS 93, ISO 228-1, ISO 7-1, ASME B1.20.1, in part from memory; bounds of what matches are our choice
 * @example identifyThread({ diameter: inch(0.371), of: 'screw', threadsPerInch: 16 }).nearMisses[0].designation   // 'M10×1.5'
 */
export function identifyThread(measured: MeasuredThread): IdentifiedThread {
  const diameter = rangeOf(measured.diameter)
  const pitch = pitchOf(measured)
  requireAboveZero('the diameter', diameter, 'm')
  const judged = KNOWN_THREADS.filter(
    ({ form }) => measured.flankAngle === undefined || Math.abs(form.flankAngle - measured.flankAngle) < 2,
  ).map((thread) => judge(thread, { diameter, pitch, of: measured.of }))
  const matches = ranked(judged.filter(({ fits }) => fits))
  const nearMisses = ranked(judged.filter(({ fits, isNear }) => isNear && !fits)).slice(0, SHOWN)
  return {
    matches: matches.map(({ match }) => match),
    nearMisses: nearMisses.map(({ match }) => match),
    isSure: matches.length === 1 ? 'yes' : matches.length === 0 ? 'no' : 'not known',
    cautions: cautions(matches),
  }
}

function pitchOf({ pitch, threadsPerInch }: MeasuredThread): Range<Metre> {
  if (pitch !== undefined) {
    requireAboveZero('the pitch', pitch, 'm')
    return rangeOf(pitch)
  }
  if (threadsPerInch === undefined) throw new Problem('THREAD_PITCH_NOT_TOLD', {})
  requireAboveZero('the threads per inch', threadsPerInch, '')
  const { low, high } = rangeOf(threadsPerInch)
  return { low: inch(1 / high), high: inch(1 / low) }
}

interface Judged {
  readonly thread: KnownThread
  readonly match: ThreadMatch
  readonly fits: boolean
  readonly isNear: boolean
  /** Shares that both sizes are off, in millionths, so that rounding does not decide the order. */
  readonly badness: number
}

function judge(
  thread: KnownThread,
  {
    diameter,
    pitch,
    of,
  }: { readonly diameter: Range<Metre>; readonly pitch: Range<Metre>; readonly of: 'screw' | 'hole' },
): Judged {
  const basic = of === 'screw' ? thread.nominalDiameter : below(thread, thread.form.toMinorDiameter)
  const slack = of === 'screw' ? SCREW_BELOW : HOLE_ABOVE
  // A taper thread grows and shrinks by a few pitches' worth along its length.
  const reach = slack.pitches * thread.pitch + slack.metres + (thread.taper?.rate ?? 0) * 4 * thread.pitch
  const [under, over] = of === 'screw' ? [reach, OVER] : [OVER, reach]
  const fitsDiameter = diameter.high >= basic - under && diameter.low <= basic + over
  const fitsPitch = pitch.high >= thread.pitch * (1 - PITCH_OFF) && pitch.low <= thread.pitch * (1 + PITCH_OFF)
  const middle = ({ low, high }: Range<Metre>) => (low + high) / 2
  const [diameterOff, pitchOff] = [middle(diameter) - basic, middle(pitch) - thread.pitch]
  const isNear =
    Math.abs(diameterOff) <= NEAR_DIAMETER * basic + reach && Math.abs(pitchOff) <= NEAR_PITCH * thread.pitch
  return {
    thread,
    fits: fitsDiameter && fitsPitch,
    isNear,
    badness: Math.round(1e6 * (Math.abs(diameterOff) / basic + Math.abs(pitchOff) / thread.pitch)),
    match: {
      designation: thread.designation,
      form: thread.form.name,
      diameterOff: metre(diameterOff),
      pitchOff: metre(pitchOff),
      says: says({ thread, diameterOff, pitchOff, basic }),
    },
  }
}

function says({
  thread,
  diameterOff,
  pitchOff,
  basic,
}: {
  readonly thread: KnownThread
  readonly diameterOff: number
  readonly pitchOff: number
  readonly basic: number
}): string {
  const turns = 10
  const drift = Math.abs(turns * pitchOff)
  const pitchSays =
    drift < 5e-5
      ? 'pitch the same'
      : `pitch ${shown(thread.pitch, 'm')}, so that ${turns} threads are ${shown(drift, 'm')} ${pitchOff > 0 ? 'shorter' : 'longer'} than measured`
  const measured = diameterOff < 0 ? 'below' : 'above'
  return `${thread.designation}: measured ${shown(Math.abs(diameterOff), 'm')} ${measured} its ${shown(basic, 'm')}; ${pitchSays}.`
}

function ranked(found: readonly Judged[]): Judged[] {
  return [...found].sort((a, b) => a.badness - b.badness || a.thread.designation.localeCompare(b.thread.designation))
}

function cautions(matches: readonly Judged[]): string[] {
  const angles = new Set(matches.map(({ thread }) => thread.form.flankAngle))
  const said = [
    'A wrong thread starts by hand, binds and strips: try a known screw or nut the whole depth, without force.',
  ]
  if (angles.size > 1)
    said.push(`Hold a gauge to the flanks: ${[...angles].sort((a, b) => b - a).join('°, ')}° tell them apart.`)
  if (matches.some(({ thread }) => thread.taper !== undefined))
    said.push('Measure the diameter at both ends: a pipe thread may be taper, 1 in 16.')
  if (matches.length === 0)
    said.push('None held here: measure the pitch over ten threads again; it may be a special of the maker.')
  return said
}
