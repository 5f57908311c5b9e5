import { metre } from '../../quantity/constructors.ts'
import type { Metre } from '../../quantity/quantity.ts'
import { requireAboveZero, requireWithin } from '../limits.ts'
import { type Known, type Range, rangeOf } from '../range.ts'

export interface MeasuredFit {
  /** Measured shaft diameter. */
  readonly shaft: Known<Metre>
  /** Measured bore diameter, at the same temperature. */
  readonly bore: Known<Metre>
  /** Symbol Rz of the shaft surface; left out where it was not measured. */
  readonly shaftRoughness?: Known<Metre>
  /** Symbol Rz of the bore surface; left out where it was not measured. */
  readonly boreRoughness?: Known<Metre>
}

export interface Interference {
  /** Shaft less bore, as measured. Below zero it is clearance. */
  readonly measured: Range<Metre>
  /** What the peaks of both surfaces give away when they are pressed flat. */
  readonly roughnessLoss: Range<Metre>
  /** What is left to grip with. */
  readonly effective: Range<Metre>
  readonly cautions: readonly string[]
  readonly source: string
}

/** The two editions of DIN 7190 differ: 0.8 of both roughnesses in the earlier one, 0.4 in that of 2017. Both are kept. */
const LOSS_SHARE = { low: 0.4, high: 0.8 }

/**
 * Interference from the sizes that were measured, not from the drawing, and what is left of it once the rough peaks
 * are pressed flat. Shaft and bore at one temperature; sizes that are half known give a range.
 *
 * @param shaft, bore diameters, each a number or a range
 * @param shaftRoughness, boreRoughness symbol Rz (about 4 to 6 times Ra); not given counts as smooth, with a caution
 * @returns measured and effective interference
 * @throws VALUE_OUTSIDE
 * @source DIN 7190-1:2017 (loss 0.4 (Rz + Rz)) and its earlier edition (0.8 (Rz + Rz)), both read at second hand
 * @example interference({ shaft: mm(50.05), bore: mm(50.01) }).effective.low   // 40 µm
 */
export function interference({ shaft, bore, shaftRoughness, boreRoughness }: MeasuredFit): Interference {
  requireAboveZero('the shaft', shaft, 'm')
  requireAboveZero('the bore', bore, 'm')
  const smooth = metre(0)
  const rough = [shaftRoughness ?? smooth, boreRoughness ?? smooth].map(rangeOf)
  for (const surface of rough) requireWithin('a roughness Rz', surface, { low: 0, high: 0.001, unit: 'm' })
  const [s, b] = [rangeOf(shaft), rangeOf(bore)]
  const measured = { low: metre(s.low - b.high), high: metre(s.high - b.low) }
  const roughnessLoss = {
    low: metre(rough.reduce((sum, { low }) => sum + LOSS_SHARE.low * low, 0)),
    high: metre(rough.reduce((sum, { high }) => sum + LOSS_SHARE.high * high, 0)),
  }
  const isSmooth = shaftRoughness === undefined || boreRoughness === undefined
  return {
    measured,
    roughnessLoss,
    effective: { low: metre(measured.low - roughnessLoss.high), high: metre(measured.high - roughnessLoss.low) },
    cautions: isSmooth ? ['Roughness was not given for both surfaces: a rough one grips less than this says.'] : [],
    source: 'difference of the measured sizes; roughness loss 0.4 to 0.8 of both Rz after DIN 7190 (two editions)',
  }
}
