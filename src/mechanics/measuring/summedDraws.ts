// Sums of many random draws, fast: two draws from each 32-bit number, up to ten in one go, each from a table of equal shares.
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator'
import { type Distribution, drawAt, spreadOf } from './sampler.ts'

/** A distribution and how many times over its draw counts in the sum. */
export interface Term {
  readonly distribution: Distribution
  readonly times: number
}

/** Values of equal share that stand for a shape: few enough that the tables of several shapes stay in the fast store. */
const VALUES = 1 << 13
const LAST = VALUES - 1
/** Of a curve the first and the last are open: what falls there is drawn from the curve itself. */
const OPEN_CHANCE = 2 / VALUES
const DRAWS = 2 ** 32

interface Table {
  /** Each of equal share; not a number where it is open. */
  readonly values: Float64Array
  /** The curve, for the open ends; measured sizes have none. */
  readonly quantile?: Quantile
}
type Quantile = (share: number) => number

/** Tables of the standard shapes, made once. */
const TABLES = new WeakMap<Quantile, Table>()
const NOTHING: Table = { values: new Float64Array(VALUES) }

interface Tabled {
  readonly table: Table
  readonly scale: number
}

/**
 * Puts the sum of a fresh draw of every term into every place. A term's draw is one of 8192 values of equal share, the
 * outermost of which are drawn from the curve itself. Against the curve the share below any size is off by no more than
 * 7e-5 for one term and far less for a sum, mean and spread by less than a hundred-thousandth of the spread, and nothing
 * beyond the outermost 8192nd. Even the hundred million samples that are allowed scatter by more.
 *
 * @example summedDraws([{ distribution: { shape: 'measured', readings: [3] }, times: -2 }]).length   // 2
 */
export function summedDraws(terms: readonly Term[]): (into: Float64Array, generator: RandomGenerator) => void {
  const told = terms.map(tabled)
  const shift = told.reduce((sum, of) => sum + of.shift, 0)
  // Neighbours with one table keep it in the fast store.
  const tables = [...new Set(told.map(({ table }) => table))]
  const members = tables.flatMap((table) => told.filter((of) => of.table === table))
  const ten = members.length > 8 ? filled(members.slice(0, 10), 10) : undefined
  const groups = grouped(members.slice(ten ? 10 : 0))
  return (into, generator) => {
    if (ten) putTen(ten, shift, into, generator)
    else into.fill(shift)
    for (const group of groups) {
      if (group.length === 4) addFour(group, into, generator)
      else addTwo(group, into, generator)
    }
    for (let at = 0; at < into.length; at++) {
      if (Number.isNaN(into[at])) into[at] = shift + sumWithOpen(members, generator)
    }
  }
}

/** Fours, and at the end a pair. */
function grouped(members: readonly Tabled[]): readonly (readonly Tabled[])[] {
  const groups: (readonly Tabled[])[] = []
  for (let from = 0; from < members.length; from += 4) {
    const group = members.slice(from, from + 4)
    groups.push(filled(group, group.length > 2 ? 4 : 2))
  }
  return groups
}

function filled(group: readonly Tabled[], size: number): readonly Tabled[] {
  return [...group, ...Array<Tabled>(size - group.length).fill({ table: NOTHING, scale: 0 })]
}

// The places of two draws in one number are its upper 13 bits and the 13 below; the lowest six, the generator's weakest
// among them, are left. Numbers stand in the loops below, not names for them: they are a tenth slower with names (bench monteCarlo).

function putTen(group: readonly Tabled[], shift: number, into: Float64Array, generator: RandomGenerator): void {
  const [a, b, c, d, e, f, g, h, i, j] = group.map(({ table }) => table.values) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const [timesA, timesB, timesC, timesD, timesE, timesF, timesG, timesH, timesI, timesJ] = group.map(
    ({ scale }) => scale,
  ) as [number, number, number, number, number, number, number, number, number, number]
  for (let at = 0; at < into.length; at++) {
    const first = generator.next()
    const second = generator.next()
    const third = generator.next()
    const fourth = generator.next()
    const fifth = generator.next()
    into[at] =
      shift +
      timesA * (a[first >>> 19] as number) +
      timesB * (b[(first >>> 6) & 0x1fff] as number) +
      timesC * (c[second >>> 19] as number) +
      timesD * (d[(second >>> 6) & 0x1fff] as number) +
      timesE * (e[third >>> 19] as number) +
      timesF * (f[(third >>> 6) & 0x1fff] as number) +
      timesG * (g[fourth >>> 19] as number) +
      timesH * (h[(fourth >>> 6) & 0x1fff] as number) +
      timesI * (i[fifth >>> 19] as number) +
      timesJ * (j[(fifth >>> 6) & 0x1fff] as number)
  }
}

function addFour(group: readonly Tabled[], into: Float64Array, generator: RandomGenerator): void {
  const [a, b, c, d] = group.map(({ table }) => table.values) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const [timesA, timesB, timesC, timesD] = group.map(({ scale }) => scale) as [number, number, number, number]
  for (let at = 0; at < into.length; at++) {
    const first = generator.next()
    const second = generator.next()
    into[at] =
      (into[at] as number) +
      timesA * (a[first >>> 19] as number) +
      timesB * (b[(first >>> 6) & 0x1fff] as number) +
      timesC * (c[second >>> 19] as number) +
      timesD * (d[(second >>> 6) & 0x1fff] as number)
  }
}

function addTwo(group: readonly Tabled[], into: Float64Array, generator: RandomGenerator): void {
  const [a, b] = group.map(({ table }) => table.values) as [Float64Array, Float64Array]
  const [timesA, timesB] = group.map(({ scale }) => scale) as [number, number]
  for (let at = 0; at < into.length; at++) {
    const first = generator.next()
    into[at] =
      (into[at] as number) + timesA * (a[first >>> 19] as number) + timesB * (b[(first >>> 6) & 0x1fff] as number)
  }
}

/**
 * A sum of which at least one draw falls into an open end: which curve is the first to do so is drawn by its chance; the
 * curves before it fall between their ends, those after it anywhere.
 */
function sumWithOpen(members: readonly Tabled[], generator: RandomGenerator): number {
  const draw = () => (generator.next() >>> 0) / DRAWS
  const curves = members.filter(({ table }) => table.quantile).length
  // Share u of the chance that one of them is open: the first one is where the chance up to it reaches u.
  const isClosed = 1 - draw() * (1 - (1 - OPEN_CHANCE) ** curves)
  const first = Math.floor(Math.log(isClosed) / Math.log(1 - OPEN_CHANCE))
  let [sum, curve] = [0, 0]
  for (const { table, scale } of members) {
    const { values, quantile } = table
    let place = Math.floor(draw() * VALUES)
    if (quantile) {
      if (curve === first) place = draw() < 0.5 ? 0 : LAST
      while (curve < first && (place === 0 || place === LAST)) place = Math.floor(draw() * VALUES)
      curve++
    }
    const value = values[place] as number
    sum += scale * (quantile && Number.isNaN(value) ? drawAt(quantile, ((place + draw()) / VALUES) * DRAWS) : value)
  }
  return sum
}

/** A table of a distribution, what its values are to be multiplied with, and what is to be added. */
function tabled({ distribution, times }: Term): Tabled & { readonly shift: number } {
  if (distribution.shape === 'measured') {
    return { table: tableOfReadings(distribution.readings), scale: times, shift: 0 }
  }
  const { quantile, middle, stretch } = spreadOf(distribution)
  const table = TABLES.get(quantile) ?? tableOfCurve(quantile)
  TABLES.set(quantile, table)
  return { table, scale: times * stretch, shift: times * middle }
}

/** Each value is the mean of the curve over its share, by sixteen places in it. */
function tableOfCurve(quantile: Quantile): Table {
  const values = new Float64Array(VALUES).fill(Number.NaN)
  for (let place = 1; place < LAST; place++) {
    let sum = 0
    for (let part = 0.5; part < 16; part++) sum += drawAt(quantile, ((place + part / 16) / VALUES) * DRAWS)
    values[place] = sum / 16
  }
  return { values, quantile }
}

/** Every reading as often as any other, to one place of the table; in order, so that no share below a size is off by more. */
function tableOfReadings(readings: readonly number[]): Table {
  const sorted = Float64Array.from(readings).sort()
  const placeOf = (at: number) => Math.round((at * VALUES) / sorted.length)
  const values = new Float64Array(VALUES)
  for (const [at, reading] of sorted.entries()) values.fill(reading, placeOf(at), placeOf(at + 1))
  return { values }
}
