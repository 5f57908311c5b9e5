import { metre, squareMetre } from '../../quantity/constructors.ts'
import type { Metre, SquareMetre } from '../../quantity/quantity.ts'
import { below, knownThread, type Taper } from './knownThreads.ts'

export interface ThreadGeometry {
  readonly designation: string
  /** Degrees between the flanks. */
  readonly flankAngle: number
  readonly nominalDiameter: Metre
  readonly pitch: Metre
  /** Symbol d2. Of NPT at the small end of the pipe, symbol E0. */
  readonly pitchDiameter: Metre
  /** Symbol d1. */
  readonly minorDiameter: Metre
  /** Symbol A_s; left out for taper threads, which carry no bolt load. */
  readonly stressArea?: SquareMetre
  /** Change of diameter over length; left out where it is parallel. */
  readonly taper?: number
  readonly source: string
}

/**
 * Basic sizes of a thread by its designation: metric coarse and fine, UNC, UNF, UNEF, BSW, BSF, BA, G, R and NPT. What a
 * sound thread would measure before any tolerance is taken off.
 *
 * @param designation as M10×1.25, 1/2-12 BSW, 2 BA, G 1/2, R 1/2, 1/2-14 NPT
 * @returns pitch and minor diameter, stress area, taper
 * @throws THREAD_UNREADABLE, THREAD_PITCH_MISSING, THREAD_NOT_IN_SERIES, THREAD_SERIES_MISSING
 * @source ISO 724, ASME B1.1, BS 84, BS 93, ISO 228-1, ISO 7-1, ASME B1.20.1 (E0 = D - (0.05 D + 1.1 in) / n)
 * @example threadGeometry('1/2-12 BSW').pitchDiameter   // 0.4466 in
 */
export function threadGeometry(designation: string): ThreadGeometry {
  const thread = knownThread(designation)
  const { form, nominalDiameter, pitch, taper } = thread
  const common = { designation: thread.designation, flankAngle: form.flankAngle, nominalDiameter, pitch }
  if (thread.series === 'NPT') {
    const pitchDiameter = metre(nominalDiameter - 0.05 * nominalDiameter * (pitch / INCH) - 1.1 * pitch)
    return {
      ...common,
      pitchDiameter,
      minorDiameter: metre(pitchDiameter - form.toPitchDiameter * pitch),
      taper: (taper as Taper).rate,
      source: form.source,
    }
  }
  return {
    ...common,
    pitchDiameter: below(thread, form.toPitchDiameter),
    minorDiameter: below(thread, form.toMinorDiameter),
    ...(taper === undefined
      ? { stressArea: squareMetre((Math.PI / 4) * below(thread, form.toStressDiameter) ** 2) }
      : { taper: taper.rate }),
    source: form.source,
  }
}

/** The formula of the standard is in inches. */
const INCH = 0.0254
