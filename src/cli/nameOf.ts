// Names as a person types them at a bench: capitals, hyphens and a part of a name will do where it is clear what is meant.
import { Problem } from '../problem/problem.ts'
import { nearest } from '../unit/file/nearest.ts'

export interface Named {
  readonly id: string
  /** What else it is known by, such as the sentence of a step. */
  readonly also?: string
}

export interface LookUp {
  /** `part`, `step`: for the sentence when it is not there. */
  readonly what: string
  readonly file: string
}

/** A name without what a person may leave out or type otherwise. */
export const plain = (name: string): string =>
  name
    .toLowerCase()
    .normalize('NFC')
    .replace(/[-_\s“”"']+/g, ' ')
    .trim()

const FEW = 8

/**
 * The id that is meant: the name itself, or the one name it can stand for.
 *
 * @throws NO_SUCH_NAME with the nearest name, NAME_NOT_CLEAR with those it may be
 * @example nameOf('Bearing-A', [{ id: 'bearing A' }, { id: 'bearing B' }], { what: 'part', file: 'box.unit.yaml' })   // 'bearing A'
 */
export function nameOf(name: string, known: readonly Named[], { what, file }: LookUp): string {
  const found = meant(name, known)
  if (found.length === 1) return found[0]!
  if (found.length > 1) {
    throw new Problem('NAME_NOT_CLEAR', { name, what, several: listed(found) })
  }
  const ids = known.map(({ id }) => id)
  throw new Problem('NO_SUCH_NAME', { name, what, file, nearest: nearest(name, ids) ?? '', known: listed(ids) })
}

/** Every id that a name may stand for: exactly, as plain words, as a part of the name; the first of these that finds any. */
export function meant(name: string, known: readonly Named[]): readonly string[] {
  if (known.some(({ id }) => id === name)) return [name]
  const wanted = plain(name)
  if (wanted === '') return []
  const where = (fits: (text: string) => boolean) =>
    known.filter(({ id, also }) => fits(plain(id)) || (also !== undefined && fits(plain(also)))).map(({ id }) => id)
  const same = where((text) => text === wanted)
  return same.length > 0 ? same : where((text) => ` ${text}`.includes(` ${wanted}`))
}

const listed = (ids: readonly string[]): string =>
  ids.length > FEW ? `${ids.slice(0, FEW).join(', ')} and ${ids.length - FEW} more` : ids.join(', ')
