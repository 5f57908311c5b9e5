// Which part goes on, which one holds still, which one lies outside.
import type { PartId, Unit } from '../../model/unit.ts'
import type { FitGiven } from './given.ts'

export interface Pair {
  /** The part that goes on; missing: not told. */
  readonly mover?: PartId
  readonly other?: PartId
  /** The part that changes temperature, for a hot or cold fit. */
  readonly heated?: PartId
}

/** A fit's two parts as the file tells them: by `moves`, by `onto` of the parts, else what is not the housing moves. */
export function pairOf(given: FitGiven, unit: Unit): Pair {
  const [inner, outer] = [given.shaft?.part, given.bore?.part]
  const mover = moverOf(given, unit)
  if (mover === undefined) return {}
  const across = [given.onto, inner, outer].find((part) => part !== undefined && part !== mover)
  const other = across ?? unit.parts.get(mover)?.onto
  const told = given.fit === 'cold' ? (given.chills ?? inner) : (given.warms ?? outer)
  return { mover, heated: told ?? mover, ...(other !== undefined && { other }) }
}

function moverOf(given: FitGiven, unit: Unit): PartId | undefined {
  if (given.moves !== undefined) return given.moves
  const [inner, outer] = [given.shaft?.part, given.bore?.part]
  if (inner === undefined || outer === undefined) return undefined
  if (unit.parts.get(inner)?.onto === outer) return inner
  if (unit.parts.get(outer)?.onto === inner) return outer
  if (outer === unit.housing) return inner
  return inner === unit.housing ? outer : undefined
}
