import { Problem } from '../../problem/problem.ts'
import { degree, metre, mm, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { type Known, type Range, rangeOf } from '../range.ts'
import { requireTeeth, transverseGear } from './involuteGear.ts'
import { TOOTH_SERIES, type ToothSeries } from './pitchSeries.ts'
import { spanOf } from './spanSize.ts'

/** A span as read. */
export interface SpanReading {
  /** Teeth between the jaws. */
  readonly across: number
  readonly reading: Known<Metre>
}

export interface GearCandidate {
  /** As 'module 4' or 'diametral pitch 6 stub'. */
  readonly name: string
  readonly module: Metre
  readonly pressureAngle: Radian
  /** In modules. */
  readonly addendum: number
  /** Symbol x, by the outside diameter, else by the span; in modules. */
  readonly shift: number
  /** Thinner than that shift makes the teeth: backlash allowance and wear; only where both were measured. */
  readonly thinner?: Metre
  /** How well it agrees with the readings. */
  readonly why: string
}

export interface GearIdentity {
  /** What the readings allow without profile shift, the likeliest first; where nothing does, what they allow with one. */
  readonly fits: readonly GearCandidate[]
  /** What lies nearest and is not it, with the difference; or could only be it with a shift, or a fault in a reading. */
  readonly nearMisses: readonly GearCandidate[]
  /** From two spans: of wear, tips and shift it knows nothing. */
  readonly normalBasePitch?: Range<Metre>
  readonly cautions: readonly string[]
  readonly source: string
}

/** Usual first. 15° and 22.5° are met on old and on special gears. */
const ANGLES: readonly { readonly angle: Radian; readonly seldom: number }[] = [
  { angle: degree(20), seldom: 0 },
  { angle: degree(14.5), seldom: 0.2 },
  { angle: degree(15), seldom: 2 },
  { angle: degree(25), seldom: 2 },
  { angle: degree(22.5), seldom: 2 },
]

/** In modules: how far a shift goes, what wear and allowance take, what a turned tip takes (common practice, no source). */
const SHIFTS = { low: -0.6, high: 1.1 }
const THINNER = { low: -0.08, high: 0.3 }
const AS_DRAWN = 0.04
const MOST_FITS = 6
const MOST_MISSES = 6

/**
 * What a gear is, from its teeth counted and what was measured: outside diameter, spans, best both and two spans. Two
 * spans one tooth apart give the base pitch, which neither wear nor shift nor turned tips can falsify; the outside
 * diameter then gives the shift, and the rest of the span the thinning. Candidates are the series of modules,
 * diametral pitches (full and stub) and circular pitches.
 *
 * @param teeth symbol z
 * @param outsideDiameter symbol d_a, over the tips; of an odd number of teeth see outsideDiameterOfOdd
 * @param spans symbol W_k with k each
 * @param helixAngle symbol β; left out 0
 * @param doubt what a reading may be out, plus or minus, on top of its range; left out 0.05 mm
 * @returns what fits, and the near misses with the difference that rules them out
 * @throws GEAR_TEETH_IMPOSSIBLE, GEAR_NOTHING_MEASURED, VALUE_OUTSIDE, RANGE_TURNED
 * @source ISO 21771 (diameters, span); ISO 54 (modules)
 * @example identifyGear({ teeth: 30, outsideDiameter: inch(3.2) }).fits[0].name   // 'diametral pitch 10'
 */
export function identifyGear({
  teeth,
  outsideDiameter,
  spans = [],
  helixAngle = radian(0),
  doubt = mm(0.05),
}: {
  readonly teeth: number
  readonly outsideDiameter?: Known<Metre>
  readonly spans?: readonly SpanReading[]
  readonly helixAngle?: Radian
  readonly doubt?: Metre
}): GearIdentity {
  requireTeeth('The gear', teeth)
  requireWithin('the doubt of a reading', doubt, { low: 0, high: 0.01, unit: 'm' })
  if (outsideDiameter === undefined && spans.length === 0) throw new Problem('GEAR_NOTHING_MEASURED')
  if (outsideDiameter !== undefined) requireAboveZero('the outside diameter', outsideDiameter, 'm')
  for (const { across, reading } of spans) {
    requireWithin('the teeth between the jaws', across, { low: 1, high: teeth / 2, unit: '' })
    requireAboveZero(`the span across ${across}`, reading, 'm')
  }
  const outside = outsideDiameter && widen(rangeOf(outsideDiameter), doubt)
  const read = spans.map(({ across, reading }) => ({ across, reading: widen(rangeOf(reading), doubt) }))
  const basePitch = basePitchOf(read)
  // Spans know nothing of how tall the teeth are.
  const told = outside ? TOOTH_SERIES : TOOTH_SERIES.filter(({ addendum }) => addendum === 1)
  const judged = told.flatMap((series) =>
    (read.length > 0 ? ANGLES : ANGLES.slice(0, 1)).map(({ angle, seldom }) =>
      judge(series, { teeth, angle, helixAngle, seldom, outside, read, basePitch }),
    ),
  )
  const ranked = (rank: Judged['rank']) =>
    judged.filter((one) => one.rank === rank).sort((a, b) => a.penalty - b.penalty)
  const [asDrawn, shifted, missed] = [ranked('as drawn'), ranked('shifted'), ranked('miss')]
  const fits = asDrawn.length > 0 ? asDrawn : shifted.slice(0, MOST_FITS)
  const misses = asDrawn.length > 0 ? [...shifted, ...missed] : missed
  return {
    fits: fits.map(({ candidate }) => candidate),
    nearMisses: misses.slice(0, MOST_MISSES).map(({ candidate }) => candidate),
    ...(basePitch ? { normalBasePitch: basePitch } : {}),
    cautions: cautions({
      teeth,
      fits: asDrawn.length,
      hasOutside: outside !== undefined,
      spans: read.length,
      basePitch,
    }),
    source:
      'diameters and span of ISO 21771 against the pitches of ISO 54 and the usual diametral and circular pitches',
  }
}

/**
 * Outside diameter of a gear with an odd number of teeth from a reading with wide flat jaws: one tip on the one side,
 * two on the other.
 *
 * @param teeth symbol z, odd
 * @param reading between the jaws
 * @returns symbol d_a
 * @throws GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE
 * @source geometry; from 100 teeth on the difference is below 0.03 %
 * @example outsideDiameterOfOdd({ teeth: 15, reading: mm(50) })   // 50.552 mm
 */
export function outsideDiameterOfOdd({ teeth, reading }: { readonly teeth: number; readonly reading: Metre }): Metre {
  requireTeeth('The gear', teeth)
  requireAboveZero('the reading', reading, 'm')
  return metre(teeth % 2 === 0 ? reading : (2 * reading) / (1 + Math.cos(Math.PI / teeth)))
}

interface Evidence {
  readonly teeth: number
  readonly angle: Radian
  readonly helixAngle: Radian
  readonly seldom: number
  readonly outside: Range<Metre> | undefined
  readonly read: readonly { readonly across: number; readonly reading: Range<Metre> }[]
  readonly basePitch: Range<Metre> | undefined
}

interface Judged {
  readonly candidate: GearCandidate
  readonly rank: 'as drawn' | 'shifted' | 'miss'
  readonly penalty: number
}

function judge(series: ToothSeries, evidence: Evidence): Judged {
  const { module, addendum } = series
  const { teeth, angle, helixAngle, outside, read, basePitch } = evidence
  const gear = transverseGear({ module, teeth, pressureAngle: angle, helixAngle })
  const drawn = gear.pitchDiameter + 2 * module * addendum
  const byTip = outside && scale(outside, (value) => (value - drawn) / (2 * module))
  const bySpan = meet(
    read.map(({ across, reading }) =>
      scale(reading, (value) => (value - spanOf(gear, across)) / (2 * module * Math.sin(angle))),
    ),
  )
  const thinning = byTip && bySpan && { low: byTip.low - bySpan.high, high: byTip.high - bySpan.low }
  const shift = byTip ?? bySpan
  const middle = shift ? (shift.low + shift.high) / 2 : 0
  const thin = thinning ? (thinning.low + thinning.high) / 2 : 0
  // Without the tip, wear and shift cannot be told apart: wear alone takes it below.
  const asDrawn = byTip ? { low: -AS_DRAWN, high: AS_DRAWN } : { low: -THINNER.high, high: AS_DRAWN }
  const gaps = {
    pitch: basePitch ? gapTo(basePitch, gear.normalBasePitch) : 0,
    agree: bySpan && bySpan.low > bySpan.high ? (bySpan.low - bySpan.high) * module : 0,
    thinning: thinning ? distance(thinning, THINNER) * module : 0,
    shift: shift ? distance(shift, SHIFTS) * module : 0,
    asDrawn: shift ? distance(shift, asDrawn) * module : 0,
  }
  const off = gaps.pitch + gaps.agree + gaps.thinning + gaps.shift
  const rank = off > 0 ? 'miss' : gaps.asDrawn > 0 ? 'shifted' : 'as drawn'
  const priors = 0.05 * module * (series.seldom + evidence.seldom)
  const penalty =
    rank === 'miss'
      ? off + gaps.asDrawn + priors + (outside ? Math.abs(gapTo(outside, drawn)) : 0)
      : module * (Math.abs(middle) + 0.3 * Math.abs(thin)) + priors
  const angleSaid = read.length > 0 ? `, ${Number(((angle * 180) / Math.PI).toFixed(2))}°` : ''
  return {
    rank,
    penalty,
    candidate: {
      name: `${series.name}${angleSaid}`,
      module,
      pressureAngle: angle,
      addendum,
      shift: middle,
      ...(thinning ? { thinner: metre(2 * module * thin * Math.tan(angle)) } : {}),
      why: why(),
    },
  }

  function why(): string {
    const said: string[] = []
    if (outside) said.push(`without shift ${size(drawn)} outside, ${difference(drawn, outside)}`)
    if (basePitch) said.push(`base pitch ${size(gear.normalBasePitch)}, ${difference(gear.normalBasePitch, basePitch)}`)
    else if (!outside && read[0]) {
      const span = spanOf(gear, read[0].across)
      said.push(`span across ${read[0].across} ${size(span)}, ${difference(span, read[0].reading)}`)
    }
    if (rank === 'shifted') said.push(`it would have a profile shift of ${middle.toFixed(2).replace('-', '−')}`)
    if (rank !== 'miss' && thinning) {
      const thinner = 2 * module * thin * Math.tan(angle)
      said.push(`teeth ${size(Math.abs(thinner))} ${thinner < 0 ? 'thicker' : 'thinner'} than that`)
    }
    if (gaps.thinning > 0)
      said.push(thin > 0 ? 'teeth too thin even for worn ones' : 'teeth thicker than the tips allow')
    if (gaps.agree > 0 && gaps.pitch === 0) said.push('the spans contradict each other')
    return said.join('; ')
  }
}

const size = (value: number) => shown(Number(value.toFixed(5)), 'm')

function difference(drawn: number, read: Range<Metre>): string {
  const gap = gapTo(read, drawn)
  if (gap === 0) return 'as read'
  const by = (read.low + read.high) / 2 - drawn
  return `read ${size(Math.abs(by))} ${by > 0 ? 'more' : 'less'}`
}

const widen = (range: Range<Metre>, by: Metre): Range<Metre> => ({
  low: metre(range.low - by),
  high: metre(range.high + by),
})

const scale = (range: Range<Metre>, by: (value: number) => number) => ({ low: by(range.low), high: by(range.high) })

/** What all ranges have in common; turned round where they have nothing. */
function meet(ranges: readonly { low: number; high: number }[]): { low: number; high: number } | undefined {
  if (ranges.length === 0) return undefined
  return { low: Math.max(...ranges.map(({ low }) => low)), high: Math.min(...ranges.map(({ high }) => high)) }
}

const gapTo = ({ low, high }: { low: number; high: number }, value: number) => Math.max(0, low - value, value - high)

const distance = (range: { low: number; high: number }, allowed: { low: number; high: number }) =>
  Math.max(0, allowed.low - range.high, range.low - allowed.high)

/** The two spans farthest apart: the error of a reading counts least there. */
function basePitchOf(
  read: readonly { readonly across: number; readonly reading: Range<Metre> }[],
): Range<Metre> | undefined {
  const sorted = [...read].sort((a, b) => a.across - b.across)
  const [first, last] = [sorted[0], sorted[sorted.length - 1]]
  if (!first || !last || first.across === last.across) return undefined
  const teeth = last.across - first.across
  return {
    low: metre((last.reading.low - first.reading.high) / teeth),
    high: metre((last.reading.high - first.reading.low) / teeth),
  }
}

function cautions(told: {
  readonly teeth: number
  readonly fits: number
  readonly hasOutside: boolean
  readonly spans: number
  readonly basePitch: Range<Metre> | undefined
}): string[] {
  const said: string[] = []
  if (told.hasOutside && told.teeth % 2 === 1) {
    said.push('Odd number of teeth: flat jaws read too little over the tips; correct it with outsideDiameterOfOdd.')
  }
  if (told.spans === 0) said.push('The pressure angle is not known from the outside diameter: measure a span.')
  if (told.basePitch === undefined) {
    said.push(
      'Measure a second span, one tooth more: the difference is the base pitch and knows nothing of wear or shift.',
    )
  }
  if (told.fits > 1)
    said.push('More than one fits: lay the mate or a gear of known pitch against it, or measure closer.')
  if (told.fits === 0)
    said.push('Nothing fits without a profile shift: count again, and see whether the tips were turned.')
  if (!told.hasOutside)
    said.push('Shift and wear cannot be told apart from a span alone: measure over the tips as well.')
  return said
}
