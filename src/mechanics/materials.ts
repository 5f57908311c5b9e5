// Density and specific heat are handbook ranges from memory throughout. Elastic constants, expansion, weight, heat and strength of what old machines are made of, as ranges.
import { megapascal, perKelvin } from '../quantity/constructors.ts'
import { type Pascal, type PerKelvin, type Quantity, quantity } from '../quantity/quantity.ts'
import type { Range } from './range.ts'

export interface Material {
  readonly name: string
  /** Symbol E. */
  readonly youngsModulus: Range<Pascal>
  /** Symbol ν. */
  readonly poissonRatio: Range<number>
  /** Symbol α, near room temperature. */
  readonly expansion: Range<PerKelvin>
  /** Symbol R_e or R_p0.2; a brittle iron has none that counts. */
  readonly yieldStrength: Range<Pascal>
  /** Symbol R_m. */
  readonly tensileStrength: Range<Pascal>
  /** Symbol ρ. */
  readonly density: Range<Quantity<'kg/m³'>>
  /** Symbol c, near room temperature. */
  readonly specificHeat: Range<Quantity<'J/(kg·K)'>>
  /** Brittle: judged by its greatest tension against the tensile strength; it gives no warning. */
  readonly brittle: boolean
  readonly source: string
}

const mpa = (low: number, high: number) => ({ low: megapascal(low), high: megapascal(high) })
const gpa = (low: number, high: number) => mpa(low * 1000, high * 1000)
const perMillion = (low: number, high: number) => ({ low: perKelvin(low / 1e6), high: perKelvin(high / 1e6) })

const kgPerCubicMetre = (low: number, high: number) => ({ low: quantity(low, 'kg/m³'), high: quantity(high, 'kg/m³') })
/** For each degree. */
const joulePerKilogram = (low: number, high: number) => ({
  low: quantity(low, 'J/(kg·K)'),
  high: quantity(high, 'J/(kg·K)'),
})

const COURSE_TABLE =
  'property table after Gere, Mechanics of Materials, 5th ed. (course page read: moduli, Poisson ratio, expansion); strengths from memory'
const MEMORY = 'handbook ranges from memory; measure hardness or ask the maker where it matters'

const material = (name: string, rest: Omit<Material, 'name'>): Material => ({ name, ...rest })

const TABLE = {
  steel: material('steel', {
    density: kgPerCubicMetre(7750, 7900),
    specificHeat: joulePerKilogram(450, 500),
    youngsModulus: gpa(190, 212),
    poissonRatio: { low: 0.27, high: 0.3 },
    expansion: perMillion(10.8, 12.5),
    yieldStrength: mpa(200, 900),
    tensileStrength: mpa(340, 1100),
    brittle: false,
    source: `Dowling, Mechanical Behavior of Materials, Table 5.2 (mild steel 212 GPa, 0.293, read); rest: ${MEMORY}`,
  }),
  'mild steel': material('mild steel', {
    density: kgPerCubicMetre(7800, 7880),
    specificHeat: joulePerKilogram(460, 490),
    youngsModulus: gpa(200, 212),
    poissonRatio: { low: 0.28, high: 0.3 },
    expansion: perMillion(11.3, 12.5),
    yieldStrength: mpa(200, 350),
    tensileStrength: mpa(340, 520),
    brittle: false,
    source: `Dowling, Mechanical Behavior of Materials, Table 5.2 (212 GPa, 0.293, read); rest: ${MEMORY}`,
  }),
  'medium carbon steel': material('medium carbon steel', {
    density: kgPerCubicMetre(7800, 7880),
    specificHeat: joulePerKilogram(460, 490),
    youngsModulus: gpa(200, 212),
    poissonRatio: { low: 0.28, high: 0.3 },
    expansion: perMillion(11, 12.3),
    yieldStrength: mpa(300, 550),
    tensileStrength: mpa(540, 750),
    brittle: false,
    source: MEMORY,
  }),
  'bearing steel': material('bearing steel', {
    density: kgPerCubicMetre(7750, 7850),
    specificHeat: joulePerKilogram(450, 480),
    youngsModulus: gpa(200, 212),
    poissonRatio: { low: 0.28, high: 0.3 },
    expansion: perMillion(11.5, 12.5),
    yieldStrength: mpa(1200, 2000),
    tensileStrength: mpa(1500, 2300),
    brittle: false,
    source: MEMORY,
  }),
  'cast steel': material('cast steel', {
    density: kgPerCubicMetre(7750, 7880),
    specificHeat: joulePerKilogram(450, 490),
    youngsModulus: gpa(190, 210),
    poissonRatio: { low: 0.27, high: 0.3 },
    expansion: perMillion(10.8, 12.5),
    yieldStrength: mpa(200, 420),
    tensileStrength: mpa(380, 650),
    brittle: false,
    source: MEMORY,
  }),
  'grey iron': material('grey iron', {
    density: kgPerCubicMetre(6900, 7400),
    specificHeat: joulePerKilogram(460, 550),
    youngsModulus: gpa(66, 140),
    poissonRatio: { low: 0.2, high: 0.3 },
    expansion: perMillion(9.9, 12),
    yieldStrength: mpa(65, 200),
    tensileStrength: mpa(100, 300),
    brittle: true,
    source: `${COURSE_TABLE}; modulus low end ASTM A48 class 20, 66 to 97 GPa (data page read)`,
  }),
  'grey iron class 20': material('grey iron class 20', {
    density: kgPerCubicMetre(6900, 7200),
    specificHeat: joulePerKilogram(460, 550),
    youngsModulus: gpa(66, 97),
    poissonRatio: { low: 0.2, high: 0.3 },
    expansion: perMillion(9.9, 12),
    yieldStrength: mpa(90, 100),
    tensileStrength: mpa(138, 155),
    brittle: true,
    source: 'ASTM A48 class 20: 20 ksi least tensile strength; modulus 66 to 97 GPa (data page read)',
  }),
  'grey iron class 30': material('grey iron class 30', {
    density: kgPerCubicMetre(7000, 7300),
    specificHeat: joulePerKilogram(460, 550),
    youngsModulus: gpa(90, 113),
    poissonRatio: { low: 0.2, high: 0.3 },
    expansion: perMillion(9.9, 12),
    yieldStrength: mpa(130, 160),
    tensileStrength: mpa(207, 240),
    brittle: true,
    source: `ASTM A48 class 30: 30 ksi least tensile strength (foundry page read); modulus: ${MEMORY}`,
  }),
  'grey iron class 40': material('grey iron class 40', {
    density: kgPerCubicMetre(7100, 7400),
    specificHeat: joulePerKilogram(460, 550),
    youngsModulus: gpa(110, 140),
    poissonRatio: { low: 0.2, high: 0.3 },
    expansion: perMillion(9.9, 12),
    yieldStrength: mpa(180, 220),
    tensileStrength: mpa(276, 300),
    brittle: true,
    source: `ASTM A48 class 40: 40 ksi least tensile strength (foundry page read); modulus: ${MEMORY}`,
  }),
  'malleable iron': material('malleable iron', {
    density: kgPerCubicMetre(7200, 7450),
    specificHeat: joulePerKilogram(460, 550),
    youngsModulus: gpa(160, 180),
    poissonRatio: { low: 0.25, high: 0.28 },
    expansion: perMillion(10.6, 13.5),
    yieldStrength: mpa(205, 345),
    tensileStrength: mpa(275, 485),
    brittle: false,
    source: `ASTM A47 grade 32510: 50 ksi tensile, 32.5 ksi yield at least (a bolt maker's page read); cupola malleable, ASTM A197, 40 and 30 ksi (from memory); rest: ${MEMORY}`,
  }),
  'ductile iron': material('ductile iron', {
    density: kgPerCubicMetre(7000, 7300),
    specificHeat: joulePerKilogram(460, 550),
    youngsModulus: gpa(159, 176),
    poissonRatio: { low: 0.27, high: 0.29 },
    expansion: perMillion(10.6, 12.5),
    yieldStrength: mpa(250, 480),
    tensileStrength: mpa(400, 690),
    brittle: false,
    source: `ASTM A536 grade 60-40-18: 60 ksi tensile, 40 ksi yield at least (a bolt maker's page read); low ends below that, rest: ${MEMORY}`,
  }),
  'wrought iron': material('wrought iron', {
    density: kgPerCubicMetre(7600, 7850),
    specificHeat: joulePerKilogram(450, 480),
    youngsModulus: gpa(180, 200),
    poissonRatio: { low: 0.27, high: 0.3 },
    expansion: perMillion(11, 12.2),
    yieldStrength: mpa(138, 221),
    tensileStrength: mpa(234, 372),
    brittle: false,
    source: `wrought iron: tensile 34 to 54 ksi, yield up to 32, modulus 28,000 (data page read), yield from 20 ksi (Watertown Arsenal, 1900, a page read); rest: ${MEMORY}`,
  }),
  bronze: material('bronze', {
    density: kgPerCubicMetre(7400, 8900),
    specificHeat: joulePerKilogram(350, 440),
    youngsModulus: gpa(96, 120),
    poissonRatio: { low: 0.34, high: 0.34 },
    expansion: perMillion(18, 21),
    yieldStrength: mpa(80, 200),
    tensileStrength: mpa(180, 330),
    brittle: false,
    source: COURSE_TABLE,
  }),
  brass: material('brass', {
    density: kgPerCubicMetre(8300, 8750),
    specificHeat: joulePerKilogram(370, 400),
    youngsModulus: gpa(96, 110),
    poissonRatio: { low: 0.34, high: 0.35 },
    expansion: perMillion(19, 21.2),
    yieldStrength: mpa(70, 400),
    tensileStrength: mpa(200, 500),
    brittle: false,
    source: `Dowling, Mechanical Behavior of Materials, Table 5.2 (70Cu-30Zn 101 GPa, 0.350, read); rest: ${MEMORY}`,
  }),
  aluminium: material('aluminium', {
    density: kgPerCubicMetre(2640, 2830),
    specificHeat: joulePerKilogram(860, 970),
    youngsModulus: gpa(70, 79),
    poissonRatio: { low: 0.33, high: 0.345 },
    expansion: perMillion(22, 24),
    yieldStrength: mpa(80, 300),
    tensileStrength: mpa(130, 350),
    brittle: false,
    source: COURSE_TABLE,
  }),
  unknown: material('unknown', {
    density: kgPerCubicMetre(2640, 8900),
    specificHeat: joulePerKilogram(350, 970),
    youngsModulus: gpa(66, 212),
    poissonRatio: { low: 0.2, high: 0.35 },
    expansion: perMillion(9.9, 24),
    yieldStrength: mpa(65, 2000),
    tensileStrength: mpa(100, 2300),
    brittle: true,
    source: 'not known: the worst of all materials held here',
  }),
} as const satisfies Record<string, Material>

export type MaterialName = keyof typeof TABLE

/** Every material held here. */
export const MATERIALS: readonly Material[] = Object.values(TABLE)

/**
 * A material by its name, or the one given in full. A name that is not held here is taken at its worst: brittle and as
 * weak as the weakest grey iron.
 *
 * @source the source line of each material
 * @example materialOf('bronze').expansion.low   // 0.000018 1/K
 * @example materialOf('old pot metal').name   // unknown
 */
export function materialOf(named: Material | MaterialName | (string & {})): Material {
  if (typeof named !== 'string') return named
  return Object.hasOwn(TABLE, named) ? TABLE[named as MaterialName] : TABLE.unknown
}

/** Nobody knows what it is: it may be brittle or not. */
export const isUnknown = (material: Material): boolean => material === TABLE.unknown
