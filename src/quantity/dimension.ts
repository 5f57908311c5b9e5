// The kinds of quantity that can be read and printed, and the type that each has inside.
import type {
  CubicMetre,
  Kelvin,
  KelvinDifference,
  Kilogram,
  Metre,
  Newton,
  NewtonMetre,
  Pascal,
  PerKelvin,
  Radian,
  RadianPerSecond,
  Second,
  SquareMetre,
} from './quantity.ts'

/** Dimension → the type of its values. `readQuantity(text, {as: 'length'})` is a `Metre`. */
export interface Dimensions {
  readonly length: Metre
  readonly area: SquareMetre
  readonly volume: CubicMetre
  readonly mass: Kilogram
  readonly time: Second
  readonly force: Newton
  readonly torque: NewtonMetre
  readonly pressure: Pascal
  readonly angle: Radian
  readonly temperature: Kelvin
  /** Has no 32 and no 273.15. */
  readonly 'temperature difference': KelvinDifference
  readonly 'speed of rotation': RadianPerSecond
  readonly 'thermal expansion': PerKelvin
}

export type Dimension = keyof Dimensions
