import { metre, radian } from '../../quantity/constructors.ts'
import type { Metre, Radian } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'

export interface SplitRunOut {
  /** Largest less smallest reading: what the dial shows. */
  readonly total: Metre
  /** How far the middle of this section lies off the axis it turned on: bend or a bad centre. Half of its run-out. */
  readonly eccentricity: Metre
  /** Where the dial reads highest by that, from the first reading in the sense the shaft was turned. */
  readonly highAt: Radian
  /** Difference of the largest and the smallest diameter by ovality. */
  readonly ovality: Metre
  /** Largest departure that is neither: three lobes, chatter, dirt, a nick. */
  readonly rest: Metre
}

/**
 * What the run-out of one section is made of: a bent or badly centred shaft moves the dial once a turn, an oval one twice.
 * Readings evenly spaced over one turn, the last one before the first comes again; the dial on one side, the shaft on its
 * bearings or centres. Straighten only what is bent.
 *
 * @param readings of the dial, 6 or more, low to high as the shaft pushes it
 * @returns total, eccentricity, ovality and what is left over
 * @throws VALUE_OUTSIDE
 * @source first and second harmonic of the readings (least squares on even spacing)
 * @example splitRunOut([mm(0.02), mm(0.01), mm(-0.01), mm(-0.02), mm(-0.01), mm(0.01)]).eccentricity   // 0.02 mm
 */
export function splitRunOut(readings: readonly Metre[]): SplitRunOut {
  requireWithin('the number of readings', readings.length, { low: 6, high: 10000, unit: '' })
  const count = readings.length
  const mean = readings.reduce((sum, reading) => sum + reading, 0) / count
  const harmonic = (order: number) => {
    const angle = (at: number) => (2 * Math.PI * order * at) / count
    const cosine = (2 / count) * readings.reduce((sum, reading, at) => sum + reading * Math.cos(angle(at)), 0)
    const sine = (2 / count) * readings.reduce((sum, reading, at) => sum + reading * Math.sin(angle(at)), 0)
    return {
      size: Math.hypot(cosine, sine),
      phase: Math.atan2(sine, cosine),
      at: (index: number) => cosine * Math.cos(angle(index)) + sine * Math.sin(angle(index)),
    }
  }
  const [once, twice] = [harmonic(1), harmonic(2)]
  const left = readings.map((reading, at) => Math.abs(reading - mean - once.at(at) - twice.at(at)))
  return {
    total: metre(Math.max(...readings) - Math.min(...readings)),
    eccentricity: metre(once.size),
    highAt: radian(once.phase < 0 ? once.phase + 2 * Math.PI : once.phase),
    ovality: metre(4 * twice.size),
    rest: metre(Math.max(...left)),
  }
}

export interface Taper {
  /** Change of diameter over length; above zero it grows from the first station to the last. */
  readonly taper: number
  /** Largest departure of a station from the straight taper: barrel, waist, or wear in the middle. */
  readonly offStraight: Metre
}

/**
 * Taper of a journal or bore from diameters along it, and whether it is worn in the middle.
 *
 * @param stations distance along the part and diameter there, 2 or more at different places
 * @returns taper and what is not taper
 * @throws VALUE_OUTSIDE
 * @source straight line by least squares
 * @example taperOf([{ along: mm(0), diameter: mm(50) }, { along: mm(100), diameter: mm(50.02) }]).taper   // 0.0002
 */
export function taperOf(stations: readonly { readonly along: Metre; readonly diameter: Metre }[]): Taper {
  requireWithin('the number of stations', stations.length, { low: 2, high: 10000, unit: '' })
  const count = stations.length
  const [x, y] = [
    stations.reduce((sum, { along }) => sum + along, 0) / count,
    stations.reduce((sum, { diameter }) => sum + diameter, 0) / count,
  ]
  const wide = stations.reduce((sum, { along }) => sum + (along - x) ** 2, 0)
  requireWithin('the spacing of the stations', Math.sqrt(wide), { low: 1e-4, high: 100, unit: 'm' })
  const taper = stations.reduce((sum, { along, diameter }) => sum + (along - x) * (diameter - y), 0) / wide
  const off = stations.map(({ along, diameter }) => Math.abs(diameter - y - taper * (along - x)))
  return { taper, offStraight: metre(Math.max(...off)) }
}
