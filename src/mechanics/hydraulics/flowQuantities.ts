// Quantities that only flowing oil needs, and their units.
import { inch, litre } from '../../quantity/constructors.ts'
import { type Quantity, quantity } from '../../quantity/quantity.ts'
import { type MetrePerSecond, metrePerSecond, type Watt } from '../gears/speedAndPower.ts'

export { type MetrePerSecond, metrePerSecond, type Watt }

export type CubicMetrePerSecond = Quantity<'m³/s'>
/** Dynamic viscosity, symbol µ. */
export type PascalSecond = Quantity<'Pa·s'>
/** Kinematic viscosity, symbol ν. */
export type SquareMetrePerSecond = Quantity<'m²/s'>
export type KilogramPerCubicMetre = Quantity<'kg/m³'>
export type Joule = Quantity<'J'>

/** @example footPerSecond(10)   // 3.048 m/s */
export const footPerSecond = (value: number): MetrePerSecond => metrePerSecond(value * inch(12))
/** @example cubicMetrePerSecond(0.001)   // 0.001 m³/s */
export const cubicMetrePerSecond = (value: number): CubicMetrePerSecond => quantity(value, 'm³/s')
/** @example litrePerMinute(60)   // 0.001 m³/s */
export const litrePerMinute = (value: number): CubicMetrePerSecond => cubicMetrePerSecond(litre(value) / 60)
/** @example usGallonPerMinute(10)   // 37.85 l/min */
export const usGallonPerMinute = (value: number): CubicMetrePerSecond =>
  cubicMetrePerSecond((value * 231 * inch(1) ** 3) / 60)
/** @example pascalSecond(0.03)   // 0.03 Pa·s */
export const pascalSecond = (value: number): PascalSecond => quantity(value, 'Pa·s')
/** @example squareMetrePerSecond(0.0001)   // 100 mm²/s */
export const squareMetrePerSecond = (value: number): SquareMetrePerSecond => quantity(value, 'm²/s')
/**
 * One centistoke is one mm²/s.
 *
 * @example centistoke(46)   // 46 mm²/s
 */
export const centistoke = (value: number): SquareMetrePerSecond => squareMetrePerSecond(value / 1e6)
/** @example kilogramPerCubicMetre(870)   // 870 kg/m³ */
export const kilogramPerCubicMetre = (value: number): KilogramPerCubicMetre => quantity(value, 'kg/m³')
/** @example watt(1500)   // 1.5 kW */
export const watt = (value: number): Watt => quantity(value, 'W')
/** @example joule(12)   // 12 J */
export const joule = (value: number): Joule => quantity(value, 'J')
