import { metre, newtonMetre } from '../../quantity/constructors.ts'
import type { Metre, NewtonMetre, Pascal } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'

export interface KeySection {
  /** Symbol D. */
  readonly shaft: Metre
  /** Symbol b. */
  readonly width: Metre
  /** Symbol h; half of it bears on the hub. */
  readonly height: Metre
  /** Symbol S_s: strength in shear of the weakest of key, shaft and hub. */
  readonly shearStrength: Pascal
  /** Symbol S_c: strength in compression of the weakest. */
  readonly bearingStrength: Pascal
}

/**
 * Length that a key needs for a torque, so that it neither shears nor crushes its side. Even load, no shock but what the
 * safety covers; longer than 1.5 D it does not bear evenly.
 *
 * @param torque symbol T
 * @param section of the key and the shaft, with strengths
 * @param safety symbol n, 1 to 10
 * @returns length for shear and for crushing; the longer counts
 * @throws VALUE_OUTSIDE
 * @source Wentzell, Machine Design, Example 15.1; Shigley, 9th ed., Example 7-6: F = 2 T / D on b L and on h L / 2
 * @example keyLength({ torque: lbfInch(180), section: { shaft: inch(0.5), width: inch(0.125), height: inch(0.125), shearStrength: psi(30500), bearingStrength: psi(51000) }, safety: 2.5 }).forShear   // 0.472 in
 */
export function keyLength({
  torque,
  section,
  safety,
}: {
  readonly torque: NewtonMetre
  readonly section: KeySection
  readonly safety: number
}): { readonly forShear: Metre; readonly forCrushing: Metre } {
  requireAboveZero('the torque', torque, 'N·m')
  requireWithin('the safety', safety, { low: 1, high: 10, unit: '' })
  requireSection(section)
  const force = (2 * torque * safety) / section.shaft
  return {
    forShear: metre(force / (section.width * section.shearStrength)),
    forCrushing: metre(force / ((section.height / 2) * section.bearingStrength)),
  }
}

/**
 * Torque that a key of a given length carries before it shears or crushes.
 *
 * @param length symbol L in contact
 * @param section of the key and the shaft, with strengths
 * @returns torque by shear and by crushing; the lower counts
 * @throws VALUE_OUTSIDE
 * @source T = r a l τ and the same for the side; Shigley, 9th ed., section 7-7
 * @example keyTorque({ length: mm(37.5), section: { shaft: mm(50), width: mm(12.5), height: mm(12.5), shearStrength: megapascal(200), bearingStrength: megapascal(300) } }).byShear   // 2344 N·m
 */
export function keyTorque({ length, section }: { readonly length: Metre; readonly section: KeySection }): {
  readonly byShear: NewtonMetre
  readonly byCrushing: NewtonMetre
} {
  requireAboveZero('the length of the key', length, 'm')
  requireSection(section)
  const radius = section.shaft / 2
  return {
    byShear: newtonMetre(radius * section.width * length * section.shearStrength),
    byCrushing: newtonMetre(radius * (section.height / 2) * length * section.bearingStrength),
  }
}

function requireSection({ shaft, width, height, shearStrength, bearingStrength }: KeySection): void {
  requireAboveZero('the shaft', shaft, 'm')
  requireAboveZero('the width of the key', width, 'm')
  requireAboveZero('the height of the key', height, 'm')
  requireAboveZero('the shear strength', shearStrength, 'Pa')
  requireAboveZero('the strength in compression', bearingStrength, 'Pa')
}
