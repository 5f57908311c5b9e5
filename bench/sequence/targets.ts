// What the search on sequence files is held to, one core of a 2-core machine.
import type { Row } from './files.ts'

/** Tightly ordered: to be proven. */
const TIGHT = ['p43.4', 'ry48p.4', 'rbg109a', 'ft70.4']
const SMALL = 30
const MEDIUM = 125

const isRandom = (name: string): boolean => name.startsWith('R.')

/** The time that an instance has, in seconds. */
export function secondsFor(name: string, operations: number): number {
  if (operations <= SMALL) return 10
  return TIGHT.includes(name) || isRandom(name) || operations > MEDIUM ? 60 : 30
}

/** The targets that the rows miss, in words. */
export function missedTargets(rows: readonly Row[]): string[] {
  const missed: string[] = []
  const within = (row: Row, most: number) => {
    const { above } = row
    if (above === null ? row.published !== null : above > most) {
      missed.push(`${row.name}: ${row.value ?? 'nothing'} is more than ${100 * most} % above the best known.`)
    }
  }
  for (const row of rows) {
    if ((row.operations <= SMALL || TIGHT.includes(row.name)) && !row.proven) {
      missed.push(`${row.name}: not proven in ${row.seconds.toFixed(0)} s.`)
    }
    if (isRandom(row.name)) within(row, /\.(30|60)$/.test(row.name) ? 0 : /\.15$/.test(row.name) ? 0.05 : 1)
    else within(row, row.operations > MEDIUM ? 0.02 : 0.03)
  }
  const medium = rows.filter(({ name, operations, above }) => !isRandom(name) && operations <= MEDIUM && above !== null)
  if (medium.length > 0) {
    const mean = medium.reduce((sum, { above }) => sum + above!, 0) / medium.length
    if (mean > 0.007) missed.push(`The mean is ${(100 * mean).toFixed(2)} % above the best known; 0.7 % are allowed.`)
    const best = medium.filter(({ above }) => above! <= 0).length
    const asked = Math.ceil((14 / 18) * medium.length)
    if (best < asked) missed.push(`${best} of ${medium.length} are at the best known; ${asked} are asked.`)
  }
  return missed
}
