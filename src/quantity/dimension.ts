// The kinds of quantity that can be read and printed, and the type that each has inside.
import type {
  CubicMetre,
  CubicMetrePerSecond,
  Joule,
  Kelvin,
  KelvinDifference,
  Kilogram,
  KilogramPerCubicMetre,
  Metre,
  MetrePerSecond,
  Newton,
  NewtonMetre,
  NewtonPerMetre,
  Pascal,
  PascalSecond,
  PerKelvin,
  Radian,
  RadianPerSecond,
  Second,
  SquareMetre,
  SquareMetrePerSecond,
  Watt,
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
  readonly speed: MetrePerSecond
  readonly power: Watt
  readonly energy: Joule
  readonly flow: CubicMetrePerSecond
  /** Kinematic: the one that an oil is sold by. */
  readonly viscosity: SquareMetrePerSecond
  readonly 'dynamic viscosity': PascalSecond
  readonly density: KilogramPerCubicMetre
  readonly stiffness: NewtonPerMetre
}

export type Dimension = keyof Dimensions
