import type { Dimension } from './dimension.ts'
import { findUnit } from './findUnit.ts'
import { parseSpan, type Side } from './parseSpan.ts'
import type { Unit } from './units.ts'

/**
 * The units that a person wrote in a quantity, in their order: to answer in the system that was asked in.
 *
 * @throws the QUANTITY_… problems of a text that cannot be read, UNIT_UNKNOWN, QUANTITY_WRONG_DIMENSION
 * @example unitsWritten('2-3 thou', 'length')[0].symbol   // 'thou'
 */
export function unitsWritten(text: string, as: Dimension): readonly Unit[] {
  const span = parseSpan(text)
  const of = (side: Side | undefined) =>
    (side?.amounts ?? []).flatMap(({ pieces }) =>
      pieces.flatMap(({ unit, unitColumn }) => (unit === undefined ? [] : [findUnit(unit, as, unitColumn)])),
    )
  return [...of(span.first), ...of(span.second)]
}
