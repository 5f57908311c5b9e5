import { Problem } from '../../problem/problem.ts'
import { footPerMinute, megapascal, metre, newton, newtonMetre } from '../../quantity/constructors.ts'
import {
  type Metre,
  type MetrePerSecond,
  type Newton,
  type NewtonMetre,
  type Pascal,
  quantity,
  type RadianPerSecond,
  type Watt,
} from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin, shown } from '../limits.ts'
import { isUnknown, type MaterialName, materialOf } from '../materials.ts'
import { type Known, type Range, rangeOf, spread } from '../range.ts'
import { requireTeeth } from './involuteGear.ts'
import { circleSpeed } from './speedAndPower.ts'

/** Lewis form factor Y by teeth, load at the tip. From memory; some rows of the first read in public tables. */
const FORMS: Readonly<Record<string, readonly (readonly [teeth: number, factor: number])[]>> = {
  // Shigley, table 14-2: 20°, full depth.
  '20 full': [
    [12, 0.245],
    [13, 0.261],
    [14, 0.277],
    [15, 0.29],
    [16, 0.296],
    [17, 0.303],
    [18, 0.309],
    [19, 0.314],
    [20, 0.322],
    [22, 0.331],
    [24, 0.337],
    [26, 0.346],
    [28, 0.353],
    [30, 0.359],
    [34, 0.371],
    [38, 0.384],
    [43, 0.397],
    [50, 0.409],
    [60, 0.422],
    [75, 0.435],
    [100, 0.447],
    [150, 0.46],
    [300, 0.472],
  ],
  // Lewis, π (0.124 − 0.684 / z): 14.5°, full depth.
  '14.5 full': [12, 14, 16, 20, 25, 30, 40, 60, 100, 300].map((teeth) => [teeth, Math.PI * (0.124 - 0.684 / teeth)]),
  // Lewis, π (0.175 − 0.95 / z), the lower of two printed constants: 20° stub.
  '20 stub': [12, 14, 16, 20, 25, 30, 40, 60, 100, 300].map((teeth) => [teeth, Math.PI * (0.175 - 0.95 / teeth)]),
}

export type ToothForm = '20 full' | '14.5 full' | '20 stub'

/** Barth's velocity factor (600 + V) / 600 and (1200 + V) / 1200 with V in feet a minute, up to the speed it is used for. */
const MAKES = {
  cast: { slow: footPerMinute(600), fastest: footPerMinute(2000) },
  cut: { slow: footPerMinute(1200), fastest: footPerMinute(4000) },
} as const

export interface ToothStrength {
  /** Symbol Y. */
  readonly formFactor: number
  readonly pitchSpeed: MetrePerSecond
  /** Symbol K_v: what the speed makes of a load. */
  readonly velocityFactor: number
  /** Static stress that was taken as safe. */
  readonly safeStress: Range<Pascal>
  /** Symbol F_t, along the pitch circle: a safe load, if the limits below hold. */
  readonly load: Range<Newton>
  readonly torque: Range<NewtonMetre>
  readonly power: Range<Watt>
  readonly cautions: readonly string[]
  readonly source: string
}

/**
 * Rough bending strength of spur teeth: the oldest method of the books, to see whether a gear was ever enough or what a
 * repair gear of another material does. It knows nothing of pitting, wear, shocks, misalignment, the fillet, a weld or a
 * crack: it passes no gear, and lifts nobody.
 *
 * @param module symbol m
 * @param teeth symbol z, 12 or more; of a helical or bevel gear the method is not for
 * @param faceWidth symbol b, that carries; at most 5 circular pitches
 * @param form '20 full', '14.5 full' or '20 stub'; left out the weakest, 14.5 full
 * @param made 'cast' or 'cut'; left out the worse, cast
 * @param speed symbol ω, of this gear
 * @param material by name; left out: not known, taken as weak as the weakest of all held here
 * @param safeStress static stress that is safe; left out a third of the least yield strength, of brittle iron a third of
 *   its least tensile strength
 * @returns safe load, torque and power
 * @throws TOOTH_FORM_UNKNOWN, GEAR_TEETH_IMPOSSIBLE, VALUE_OUTSIDE, RANGE_TURNED
 * @source W. Lewis (1892) with Barth's factor: F = σ b m Y / K_v; Shigley, 9th ed., section 14-1
 * @example toothStrength({ module: moduleFromDiametralPitch(8), teeth: 16, faceWidth: inch(1.5), form: '20 full', made: 'cut', speed: rpm(1200), safeStress: psi(10000) }).load.low   // 364 lbf
 */
export function toothStrength({
  module,
  teeth,
  faceWidth,
  form = '14.5 full',
  made = 'cast',
  speed,
  material,
  safeStress,
}: {
  readonly module: Metre
  readonly teeth: number
  readonly faceWidth: Metre
  readonly form?: ToothForm | (string & {})
  readonly made?: 'cast' | 'cut'
  readonly speed: RadianPerSecond
  readonly material?: MaterialName | (string & {})
  readonly safeStress?: Known<Pascal>
}): ToothStrength {
  requireTeeth('The gear', teeth, 12)
  requireWithin('the module', module, { low: 5e-5, high: 0.2, unit: 'm' })
  requireWithin('the face width', faceWidth, { low: module, high: 5 * Math.PI * module, unit: 'm' })
  const formFactor = factorOf(form, teeth)
  const stress = safeStress === undefined ? safeStressOf(material) : rangeOf(safeStress)
  requireAboveZero('the safe stress', stress, 'Pa')
  requireWithin('the safe stress', stress, { low: 0, high: megapascal(1000), unit: 'Pa' })
  const radius = (module * teeth) / 2
  const pitchSpeed = circleSpeed({ diameter: metre(2 * radius), speed })
  const make = MAKES[made === 'cut' ? 'cut' : 'cast']
  requireWithin(`the speed at the pitch circle of ${made} teeth`, pitchSpeed, {
    low: 0,
    high: make.fastest,
    unit: 'm/s',
  })
  const velocityFactor = (make.slow + pitchSpeed) / make.slow
  const load = spread({ stress }, (exact) => newton((exact.stress * faceWidth * module * formFactor) / velocityFactor))
  return {
    formFactor,
    pitchSpeed,
    velocityFactor,
    safeStress: stress,
    load,
    torque: { low: newtonMetre(load.low * radius), high: newtonMetre(load.high * radius) },
    power: { low: quantity(load.low * pitchSpeed, 'W'), high: quantity(load.high * pitchSpeed, 'W') },
    cautions: cautions({ material, safeStress, form, made }),
    source: 'Lewis form factor, Barth velocity factor (Shigley, 9th ed., section 14-1; factors from memory)',
  }
}

function factorOf(form: string, teeth: number): number {
  const rows = Object.hasOwn(FORMS, form) ? FORMS[form] : undefined
  if (!rows) throw new Problem('TOOTH_FORM_UNKNOWN', { received: form, forms: Object.keys(FORMS).join(', ') })
  const above = rows.findIndex(([count]) => count >= teeth)
  const [high, highFactor] = rows[above < 0 ? rows.length - 1 : above] ?? [0, 0]
  const [low, lowFactor] = rows[Math.max(0, above - 1)] ?? [0, 0]
  if (above <= 0 || high === teeth) return highFactor
  // The factor is nearly straight over 1 / z.
  return lowFactor + ((1 / low - 1 / teeth) / (1 / low - 1 / high)) * (highFactor - lowFactor)
}

function safeStressOf(named: string | undefined): Range<Pascal> {
  const material = materialOf(named ?? 'unknown')
  const { brittle, yieldStrength, tensileStrength } = material
  const least = (brittle && !isUnknown(material) ? tensileStrength : yieldStrength).low
  return { low: megapascal(least / 3e6), high: megapascal(least / 3e6) }
}

function cautions(told: {
  readonly material: string | undefined
  readonly safeStress: Known<Pascal> | undefined
  readonly form: string
  readonly made: string
}): string[] {
  const said = [
    'ROUGH: bending of a sound, new, straight tooth with the whole load at its tip. It passes no gear for use.',
    'Not in it: pitting, wear, hardening, shocks, reversing, teeth that bear at one end only, welds, cracks, starting torque.',
    'Divide by what the service asks: 1.25 to 2 for shocks (common practice, no source). Hoists and brakes: their own rules and a competent person.',
  ]
  if (told.safeStress === undefined) {
    const { name } = materialOf(told.material ?? 'unknown')
    const stress = shown(safeStressOf(told.material).low, 'Pa')
    said.push(
      `Safe stress ${stress}: a third of the least strength of ${name === 'unknown' ? 'an unknown metal' : name}.`,
    )
  }
  if (told.form === '14.5 full')
    said.push('Teeth taken as 14.5° full depth, the weakest form, unless you know it is that.')
  if (told.made === 'cast') said.push('Teeth taken as cast, the worst of speed.')
  return said
}
