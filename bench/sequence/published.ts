// What is published about an instance: a best-known.csv beside the file.
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'

export interface Published {
  readonly value: number
  /** Whether the value is published as the least there is. */
  readonly proven: boolean
  readonly bound: number | null
}

/** The line of an instance in the best-known.csv beside its file; null when there is none. */
export function publishedBeside(file: string, name: string): Published | null {
  const table = join(dirname(file), 'best-known.csv')
  if (!existsSync(table)) return null
  const [head = '', ...lines] = readFileSync(table, 'utf8').split(/\r?\n/)
  const columns = head.split(',')
  const cell = (cells: readonly string[], column: string): string => cells[columns.indexOf(column)]?.trim() ?? ''
  for (const line of lines) {
    // The columns before the source hold no commas.
    const cells = line.split(',')
    if (cell(cells, 'instance') !== name) continue
    const value = Number(cell(cells, 'best_known_value'))
    if (cell(cells, 'best_known_value') === '' || !Number.isFinite(value)) return null
    const bound = cell(cells, 'published_lower_bound')
    return { value, proven: cell(cells, 'proven_optimal') === 'yes', bound: bound === '' ? null : Number(bound) }
  }
  return null
}
