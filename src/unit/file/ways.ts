// Declared ways of a part, and the straight columns that hand, tool or eye wants free.
import { mm } from '../../quantity/constructors.ts'
import { quantity } from '../../quantity/quantity.ts'
import type { Column, DeclaredWay, Line, LineId, Opening, OpeningId } from '../model/unit.ts'
import type { Item } from './item.ts'
import { readEnd } from './lines.ts'
import { many, type Names, one } from './names.ts'
import type { WrittenColumn, WrittenPart, WrittenWay } from './schemaPart.ts'
import { exact, type Sizes } from './values.ts'

/** What the parts of a file are read against. */
export interface Around {
  readonly names: Names
  readonly sizes: Sizes
  readonly lines: ReadonlyMap<LineId, Line>
  readonly openings: ReadonlyMap<OpeningId, Opening>
}

/** @param own the lines that the part has rings on */
export function readWays(part: Item<WrittenPart | null>, own: readonly Line[], around: Around): readonly DeclaredWay[] {
  return part
    .get('way')
    .list()
    .map((way) => readWay(way, own, around, part.key))
}

function readWay(
  way: Item<WrittenWay>,
  own: readonly Line[],
  { names, sizes, openings }: Around,
  part: string,
): DeclaredWay {
  const straight = one(way.get('through'), names, 'opening')
  const parked = one(way.get('park through'), names, 'opening')
  const through = straight ?? parked
  const homeWith = one(way.get('home with'), names, 'part')
  if (way.get('through').given && way.get('park through').given) way.fault('WAY_TWO_DOORS', { part })
  if (way.get('park through').given && !way.get('home with').given) way.fault('WAY_PARKED_FOR_EVER', { part })
  const from = readEnd(way.get('from'), own)
  const split = through !== undefined && openings.get(through)?.split
  const [y, z] = way
    .get('parked at')
    .list()
    .map((each) => exact(each, sizes))
  const { path, joined } = way.value
  const [heldBy, resting, why] = [way.get('held by').text(), way.get('resting').text(), way.get('why').text()]
  return {
    at: way.at,
    path: path ?? (from ? 'along the line' : split ? 'across the split' : 'by hand'),
    clear: many(way.get('clear'), names, 'part'),
    ...(through && { through }),
    ...(from && { from }),
    ...(joined && { joined }),
    ...(homeWith && { homeWith }),
    ...(heldBy && { heldBy }),
    ...(resting && { resting }),
    ...(y !== undefined && z !== undefined && { parkedAt: { y, z } }),
    ...(why && { why }),
  }
}

export function readColumns(part: Item<WrittenPart | null>, own: readonly Line[], around: Around): readonly Column[] {
  return part
    .get('columns')
    .list()
    .flatMap((column) => readColumn(column, own, around))
}

function readColumn(column: Item<WrittenColumn>, own: readonly Line[], { names, sizes, lines }: Around): Column[] {
  const named = one(column.get('line'), names, 'line')
  const line = named ? lines.get(named) : lineOf(column, own, lines, "Add 'line' to it.")
  const from = readEnd(column.get('from'), line ? [line] : [])
  const diameter = exact(column.get('diameter'), sizes)
  const x = exact(column.get('x'), sizes)
  const places = columnPlaces(column, sizes)
  if (!line || !from || diameter === undefined || x === undefined) return []
  const what = column.get('for').text() || 'tool'
  return places.map((place) => ({ at: column.at, line: line.id, diameter, x, from, for: what, ...place }))
}

function columnPlaces(column: Item<WrittenColumn>, sizes: Sizes): Pick<Column, 'y' | 'z'>[] {
  if (column.get('at').given) {
    const [y, z] = column
      .get('at')
      .list()
      .map((each) => exact(each, sizes))
    return y === undefined || z === undefined ? [] : [{ y, z }]
  }
  if (!column.get('circle').given) {
    column.fault('KEY_MISSING', {
      key: 'at',
      where: 'columns',
      expected: '[to the right, up], or circle and angles',
    })
    return []
  }
  const circle = exact(column.get('circle'), sizes) ?? mm(0)
  const angles = column.value.angles ?? []
  if (angles.length === 0) {
    column.fault('KEY_MISSING', {
      key: 'angles',
      where: 'columns',
      expected: '[45, 135], degrees from the right towards up',
    })
  }
  return angles.map((degrees) => {
    const angle = (degrees * Math.PI) / 180
    return { y: quantity((circle / 2) * Math.cos(angle), 'm'), z: quantity((circle / 2) * Math.sin(angle), 'm') }
  })
}

/** The one line of a part: the only one it has rings on, or the only one there is. Told when there are several. */
export function lineOf(
  item: Item<unknown>,
  own: readonly Line[],
  lines: ReadonlyMap<LineId, Line>,
  how: string,
): Line | undefined {
  const choice = own.length > 0 ? own : [...lines.values()]
  if (choice.length === 1) return choice[0]
  item.fault('LINE_NOT_CLEAR', { lines: choice.map(({ id }) => id).join(', ') || 'none', how })
  return undefined
}
