// The unit is in the type. One generic brand; every constructor refuses NaN and infinity.
import { Problem } from '../problem/problem.ts'

declare const unit: unique symbol

/** A number in the SI unit named by `Unit`. Only the constructors of this room make one. */
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit }

export type Metre = Quantity<'m'>
export type SquareMetre = Quantity<'m²'>
export type CubicMetre = Quantity<'m³'>
export type Kilogram = Quantity<'kg'>
export type Second = Quantity<'s'>
export type Newton = Quantity<'N'>
export type NewtonMetre = Quantity<'N·m'>
export type Pascal = Quantity<'Pa'>
export type Radian = Quantity<'rad'>
export type RadianPerSecond = Quantity<'rad/s'>
/** A temperature on the absolute scale. */
export type Kelvin = Quantity<'K'>
/** A difference between two temperatures: it has no 32 and no 273.15. */
export type KelvinDifference = Quantity<'ΔK'>
/** Linear thermal expansion. */
export type PerKelvin = Quantity<'1/K'>
/** Along a line. */
export type MetrePerSecond = Quantity<'m/s'>
export type Watt = Quantity<'W'>
export type Joule = Quantity<'J'>
/** What flows, by volume. */
export type CubicMetrePerSecond = Quantity<'m³/s'>
/** Kinematic viscosity, symbol ν: the one that an oil is sold by. */
export type SquareMetrePerSecond = Quantity<'m²/s'>
/** Dynamic viscosity, symbol µ. */
export type PascalSecond = Quantity<'Pa·s'>
export type KilogramPerCubicMetre = Quantity<'kg/m³'>
/** Stiffness along a line: force over the way that it gives. */
export type NewtonPerMetre = Quantity<'N/m'>

/** Makes a quantity from a number that is already in the SI unit. */
export function quantity<Unit extends string>(value: number, name: Unit): Quantity<Unit> {
  if (!Number.isFinite(value)) throw new Problem('NOT_A_NUMBER', { unit: name, received: String(value) })
  return value as Quantity<Unit>
}
