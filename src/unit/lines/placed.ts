// Positions that come from seats: a part whose rings are written in its own measure stands where its face meets another's.
import { Problem } from '../../problem/problem.ts'
import type { Metre } from '../../quantity/quantity.ts'
import type { Known, Part, PartId, Ring, Stand, Unit } from '../model/unit.ts'
import { weaker } from './answer.ts'

/** Two seats of one part may disagree by this much before it is a fault (metres): more than a burr, less than any shim. */
const SEATS_AGREE = 5e-5

export interface Placed {
  readonly unit: Unit
  readonly faults: readonly Problem[]
}

interface Offset {
  readonly by: Known<Metre>
  readonly against: PartId
}

/**
 * The unit with every part on its line where its seats put it. A part without `stands` is written from the datum face already. A seat whose
 * sizes are not all known leaves the part's position not known.
 *
 * @returns faults: two seats of one part that disagree, seats that go round in a circle
 */
export function placed(unit: Unit): Placed {
  const faults: Problem[] = []
  const offsets = new Map<PartId, Known<Metre> | 'not known'>()
  const open = new Set<PartId>()

  const offsetOf = (id: PartId): Known<Metre> | 'not known' => {
    const known = offsets.get(id)
    if (known) return known
    const part = unit.parts.get(id)
    if (!part || part.stands.length === 0) return NOWHERE_ELSE
    if (open.has(id)) {
      faults.push(new Problem('SEATS_GO_ROUND', { part: id }, placeOf(part, unit)))
      return 'not known'
    }
    open.add(id)
    const found = part.stands.flatMap((stand) => offsetBy(stand, offsetOf(stand.against), unit) ?? [])
    open.delete(id)
    const [first, ...others] = found
    for (const other of others) {
      const apart = Math.max(other.by.low - (first as Offset).by.high, (first as Offset).by.low - other.by.high)
      if (apart > SEATS_AGREE) {
        const facts = { part: id, first: (first as Offset).against, second: other.against, apart: millimetres(apart) }
        faults.push(new Problem('TWO_SEATS_DISAGREE', facts, placeOf(part, unit)))
      }
    }
    const offset = first?.by ?? 'not known'
    offsets.set(id, offset)
    return offset
  }

  const parts = new Map(
    [...unit.parts].map(([id, part]) => [id, part.stands.length ? moved(part, offsetOf(id)) : part]),
  )
  return { unit: { ...unit, parts }, faults }
}

const NOWHERE_ELSE: Known<Metre> = { low: 0 as Metre, high: 0 as Metre, standing: 'seen' }

const placeOf = (part: Part, unit: Unit) => ({ file: unit.file, ...part.at })

const millimetres = (metres: number): string => `${Number((metres * 1000).toFixed(3))} mm`

/** A size of a stand: written out, or a feature that the job may have measured. */
function sizeOf(size: Stand['face'], unit: Unit): Known<Metre> | undefined {
  if (size === undefined || typeof size !== 'string') return size
  const dot = size.indexOf('.')
  const features = unit.parts.get(size.slice(0, dot).trim())?.features
  return features?.find(({ id }) => id === size.slice(dot + 1).trim())?.size
}

const add = (a: Known<Metre>, b: Known<Metre>, sign: 1 | -1 = 1): Known<Metre> => ({
  low: (a.low + sign * (sign === 1 ? b.low : b.high)) as Metre,
  high: (a.high + sign * (sign === 1 ? b.high : b.low)) as Metre,
  standing: weaker(a.standing, b.standing),
})

function offsetBy(stand: Stand, carrier: Known<Metre> | 'not known', unit: Unit): Offset | undefined {
  const [face, at] = [sizeOf(stand.face, unit), sizeOf(stand.at, unit)]
  const gap = stand.apart ? sizeOf(stand.gap, unit) : NOWHERE_ELSE
  if (!face || !at || !gap || carrier === 'not known') return undefined
  return { by: add(add(add(carrier, at), gap), face, -1), against: stand.against }
}

function moved(part: Part, offset: Known<Metre> | 'not known'): Part {
  const shift = (rings: readonly Ring[]): readonly Ring[] =>
    rings.map(({ from, to, ...ring }) =>
      offset === 'not known'
        ? ring
        : { ...ring, ...(from && { from: add(from, offset) }), ...(to && { to: add(to, offset) }) },
    )
  const all = (lines: Part['rings']) => new Map([...lines].map(([line, rings]) => [line, shift(rings)]))
  return {
    ...part,
    rings: all(part.rings),
    passing: all(part.passing),
    ...(part.tool ? { tool: { ...part.tool, rings: shift(part.tool.rings) } } : {}),
  }
}
