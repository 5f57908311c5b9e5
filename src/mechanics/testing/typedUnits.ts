// How a shop types its readings, for inchAndMetric.test.ts. Arguments are always metric: mm, µm, N, N·m, MPa, °C, …
import {
  celsius,
  cubicMetre,
  fahrenheit,
  fahrenheitDifference,
  inch,
  kelvinDifference,
  kilogram,
  lbf,
  lbfFoot,
  litre,
  megapascal,
  micrometre,
  mm,
  newton,
  newtonMetre,
  newtonPerMetre,
  perKelvin,
  pound,
  psi,
  squareMetre,
  thou,
} from '../../quantity/constructors.ts'
import type {
  CubicMetre,
  Kelvin,
  KelvinDifference,
  Kilogram,
  Metre,
  Newton,
  NewtonMetre,
  NewtonPerMetre,
  Pascal,
  PerKelvin,
  SquareMetre,
} from '../../quantity/quantity.ts'
import { readQuantity } from '../../quantity/readQuantity.ts'
import * as mechanics from '../index.ts'

export interface TypedUnits {
  readonly mm: (value: number) => Metre
  readonly um: (value: number) => Metre
  readonly N: (value: number) => Newton
  readonly Nm: (value: number) => NewtonMetre
  readonly MPa: (value: number) => Pascal
  readonly Nmm: (value: number) => NewtonPerMetre
  readonly kg: (value: number) => Kilogram
  readonly mm2: (value: number) => SquareMetre
  readonly cm2: (value: number) => SquareMetre
  readonly litre: (value: number) => CubicMetre
  readonly at: (value: number) => Kelvin
  readonly warmer: (value: number) => KelvinDifference
  readonly perKelvin: (value: number) => PerKelvin
  readonly litrePerMinute: (value: number) => mechanics.CubicMetrePerSecond
  readonly metrePerSecond: (value: number) => mechanics.MetrePerSecond
}

/** One case for each calculation; s is a scale about 1 so that no number is special. */
export type Cases = Readonly<Record<string, (u: TypedUnits, s: number) => unknown>>

export const METRIC: TypedUnits = {
  mm,
  um: micrometre,
  N: newton,
  Nm: newtonMetre,
  MPa: megapascal,
  Nmm: (value) => newtonPerMetre(value * 1000),
  kg: kilogram,
  mm2: (value) => squareMetre(value / 1e6),
  cm2: (value) => squareMetre(value / 1e4),
  litre,
  at: celsius,
  warmer: kelvinDifference,
  perKelvin,
  litrePerMinute: mechanics.litrePerMinute,
  metrePerSecond: mechanics.metrePerSecond,
}

// The definitions, not the constructors under test: 1 in = 25.4 mm, 1 lbf = 0.45359237 × 9.80665 N, 1 US gallon = 231 in³.
// NIST SP 811 (2008), appendix B.8, prints them.
const POUND = 0.453_592_37
const POUND_FORCE = POUND * 9.806_65
const GALLON_IN_LITRES = 231 * 0.254 ** 3

export const INCH: TypedUnits = {
  mm: (value) => inch(value / 25.4),
  um: (value) => thou(value / 25.4),
  N: (value) => lbf(value / POUND_FORCE),
  Nm: (value) => lbfFoot(value / (POUND_FORCE * 0.3048)),
  MPa: (value) => psi((value * 25.4 ** 2) / POUND_FORCE),
  Nmm: (value) => newtonPerMetre(((value * 25.4) / POUND_FORCE) * (lbf(1) / inch(1))),
  kg: (value) => pound(value / POUND),
  mm2: (value) => squareMetre((value / 25.4 ** 2) * inch(1) ** 2),
  cm2: (value) => squareMetre((value / 2.54 ** 2) * inch(1) ** 2),
  litre: (value) => cubicMetre(231 * (value / GALLON_IN_LITRES) * inch(1) ** 3),
  at: (value) => fahrenheit(value * 1.8 + 32),
  warmer: (value) => fahrenheitDifference(value * 1.8),
  perKelvin: (value) => readQuantity(`${((value * 1e6) / 1.8).toFixed(12)} ppm/°F`, { as: 'thermal expansion' }),
  litrePerMinute: (value) => mechanics.usGallonPerMinute(value / GALLON_IN_LITRES),
  metrePerSecond: (value) => mechanics.footPerSecond(value / 0.3048),
}
