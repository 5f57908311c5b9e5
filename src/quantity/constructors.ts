// One constructor for each unit people write. Exact factors from their definitions (NIST SP 811, appendix B.8).
import {
  type Kelvin,
  type KelvinDifference,
  type Kilogram,
  type Metre,
  type Newton,
  type NewtonMetre,
  type Pascal,
  type PerKelvin,
  quantity,
  type Radian,
  type Second,
  type SquareMetre,
} from './quantity.ts'

const INCH_MM = 25.4
const POUND_KG = 0.45359237
const STANDARD_GRAVITY = 9.80665
const LBF_N = POUND_KG * STANDARD_GRAVITY

export const metre = (value: number): Metre => quantity(value, 'm')
export const mm = (value: number): Metre => quantity(value / 1000, 'm')
export const micrometre = (value: number): Metre => quantity(value / 1e6, 'm')
export const inch = (value: number): Metre => quantity((value * INCH_MM) / 1000, 'm')
export const thou = (value: number): Metre => quantity((value * INCH_MM) / 1e6, 'm')
export const squareMetre = (value: number): SquareMetre => quantity(value, 'm²')
export const kilogram = (value: number): Kilogram => quantity(value, 'kg')
export const pound = (value: number): Kilogram => quantity(value * POUND_KG, 'kg')
export const second = (value: number): Second => quantity(value, 's')
export const minute = (value: number): Second => quantity(value * 60, 's')
export const newton = (value: number): Newton => quantity(value, 'N')
export const lbf = (value: number): Newton => quantity(value * LBF_N, 'N')
export const newtonMetre = (value: number): NewtonMetre => quantity(value, 'N·m')
export const lbfFoot = (value: number): NewtonMetre => quantity((value * LBF_N * INCH_MM * 12) / 1000, 'N·m')
export const lbfInch = (value: number): NewtonMetre => quantity((value * LBF_N * INCH_MM) / 1000, 'N·m')
export const pascal = (value: number): Pascal => quantity(value, 'Pa')
export const megapascal = (value: number): Pascal => quantity(value * 1e6, 'Pa')
export const psi = (value: number): Pascal => quantity((value * LBF_N * 1e6) / (INCH_MM * INCH_MM), 'Pa')
export const radian = (value: number): Radian => quantity(value, 'rad')
export const degree = (value: number): Radian => quantity((value * Math.PI) / 180, 'rad')
export const kelvin = (value: number): Kelvin => quantity(value, 'K')
export const celsius = (value: number): Kelvin => quantity(value + 273.15, 'K')
export const fahrenheit = (value: number): Kelvin => quantity((value + 459.67) / 1.8, 'K')
export const kelvinDifference = (value: number): KelvinDifference => quantity(value, 'ΔK')
export const fahrenheitDifference = (value: number): KelvinDifference => quantity(value / 1.8, 'ΔK')
export const perKelvin = (value: number): PerKelvin => quantity(value, '1/K')
