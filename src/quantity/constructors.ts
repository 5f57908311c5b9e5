// One constructor for each unit that the code itself names. The factors stand in units.ts.
import type { Dimension } from './dimension.ts'
import { findUnit } from './findUnit.ts'
import {
  type CubicMetre,
  type CubicMetrePerSecond,
  type Joule,
  type Kelvin,
  type KelvinDifference,
  type Kilogram,
  type KilogramPerCubicMetre,
  type Metre,
  type MetrePerSecond,
  type Newton,
  type NewtonMetre,
  type NewtonPerMetre,
  type Pascal,
  type PascalSecond,
  type PerKelvin,
  type Quantity,
  quantity,
  type Radian,
  type RadianPerSecond,
  type Second,
  type SquareMetre,
  type SquareMetrePerSecond,
  type Watt,
} from './quantity.ts'

type Make<Q> = (value: number) => Q

/** A constructor from a row of the unit table whose factor is a ratio of two whole numbers that a double holds exactly. */
function make<Unit extends string>(dimension: Dimension, symbol: string, si: Unit): Make<Quantity<Unit>> {
  const { factor } = findUnit(symbol, dimension)
  const times = Number(factor.n)
  const over = Number(factor.d)
  return (value) => quantity((value * times) / over, si)
}

export const metre: Make<Metre> = make('length', 'm', 'm')
export const mm: Make<Metre> = make('length', 'mm', 'm')
export const micrometre: Make<Metre> = make('length', 'µm', 'm')
export const inch: Make<Metre> = make('length', 'in', 'm')
export const thou: Make<Metre> = make('length', 'thou', 'm')
export const squareMetre: Make<SquareMetre> = make('area', 'm²', 'm²')
export const cubicMetre: Make<CubicMetre> = make('volume', 'm³', 'm³')
export const litre: Make<CubicMetre> = make('volume', 'l', 'm³')
export const kilogram: Make<Kilogram> = make('mass', 'kg', 'kg')
export const pound: Make<Kilogram> = make('mass', 'lb', 'kg')
export const second: Make<Second> = make('time', 's', 's')
export const minute: Make<Second> = make('time', 'min', 's')
export const newton: Make<Newton> = make('force', 'N', 'N')
export const lbf: Make<Newton> = make('force', 'lbf', 'N')
export const newtonMetre: Make<NewtonMetre> = make('torque', 'N·m', 'N·m')
export const lbfFoot: Make<NewtonMetre> = make('torque', 'lbf·ft', 'N·m')
export const lbfInch: Make<NewtonMetre> = make('torque', 'lbf·in', 'N·m')
export const pascal: Make<Pascal> = make('pressure', 'Pa', 'Pa')
export const megapascal: Make<Pascal> = make('pressure', 'MPa', 'Pa')
export const psi: Make<Pascal> = make('pressure', 'psi', 'Pa')
export const radian: Make<Radian> = make('angle', 'rad', 'rad')
export const degree: Make<Radian> = (value) => quantity((value * Math.PI) / 180, 'rad')
export const rpm: Make<RadianPerSecond> = (value) => quantity((value * Math.PI) / 30, 'rad/s')
export const kelvin: Make<Kelvin> = make('temperature', 'K', 'K')
export const celsius: Make<Kelvin> = (value) => quantity(value + 273.15, 'K')
export const fahrenheit: Make<Kelvin> = (value) => quantity((value + 459.67) / 1.8, 'K')
export const kelvinDifference: Make<KelvinDifference> = make('temperature difference', 'K', 'ΔK')
export const fahrenheitDifference: Make<KelvinDifference> = make('temperature difference', '°F', 'ΔK')
export const perKelvin: Make<PerKelvin> = make('thermal expansion', '/K', '1/K')
export const metrePerSecond: Make<MetrePerSecond> = make('speed', 'm/s', 'm/s')
export const kilometrePerHour: Make<MetrePerSecond> = make('speed', 'km/h', 'm/s')
export const footPerSecond: Make<MetrePerSecond> = make('speed', 'ft/s', 'm/s')
export const footPerMinute: Make<MetrePerSecond> = make('speed', 'ft/min', 'm/s')
export const milePerHour: Make<MetrePerSecond> = make('speed', 'mph', 'm/s')
export const watt: Make<Watt> = make('power', 'W', 'W')
export const kilowatt: Make<Watt> = make('power', 'kW', 'W')
/** 550 foot-pounds a second. */
export const horsepower: Make<Watt> = (value) => quantity(value * 550 * 12 * inch(1) * lbf(1), 'W')
export const joule: Make<Joule> = make('energy', 'J', 'J')
export const cubicMetrePerSecond: Make<CubicMetrePerSecond> = make('flow', 'm³/s', 'm³/s')
export const litrePerMinute: Make<CubicMetrePerSecond> = make('flow', 'l/min', 'm³/s')
export const usGallonPerMinute: Make<CubicMetrePerSecond> = make('flow', 'US gpm', 'm³/s')
export const squareMetrePerSecond: Make<SquareMetrePerSecond> = make('viscosity', 'm²/s', 'm²/s')
/** One centistoke is one mm²/s. */
export const centistoke: Make<SquareMetrePerSecond> = make('viscosity', 'mm²/s', 'm²/s')
export const pascalSecond: Make<PascalSecond> = make('dynamic viscosity', 'Pa·s', 'Pa·s')
export const kilogramPerCubicMetre: Make<KilogramPerCubicMetre> = make('density', 'kg/m³', 'kg/m³')
export const newtonPerMetre: Make<NewtonPerMetre> = make('stiffness', 'N/m', 'N/m')
