import type { Follow, Line, LineId, Part, PartId, Passing, Ring } from '../model/unit.ts'
import { readFeatures } from './features.ts'
import { Item } from './item.ts'
import { readEnd } from './lines.ts'
import { listed, many, type Names, one, stepNames } from './names.ts'
import { readRings, readWall } from './rings.ts'
import type { WrittenUnit } from './schema.ts'
import { LINE_KEY, type WrittenPart } from './schemaPart.ts'
import { readStands } from './stands.ts'
import { known, lengths, minutes } from './values.ts'
import { type Around, lineOf, readColumns, readWays } from './ways.ts'

type PartItem = Item<WrittenPart | null>

/** The parts in the order of the file; the housing is one of them, written or not. */
export function readParts(unit: Item<WrittenUnit>, housing: PartId, around: Around): ReadonlyMap<PartId, Part> {
  const parts = new Map<PartId, Part>()
  for (const [id, part] of unit.get('parts').entries()) parts.set(id, readPart(id, part, around))
  if (!parts.has(housing)) parts.set(housing, readPart(housing, new Item(unit.page, ['housing'], null), around))
  return parts
}

function readPart(id: PartId, part: PartItem, around: Around): Part {
  const { names, sizes, lines } = around
  const rings = ringsBy(part, ['line', 'wall on'], around)
  const own = [...rings.keys()].flatMap((line) => lines.get(line) ?? [])
  const passing = new Map(ringsBy(part, ['passing on'], around))
  const bare = part.get('passing')
  if (bare.given) {
    const line = lineOf(bare, own, lines, "Write 'passing on' and the line.")
    if (line) passing.set(line.id, readRings(bare, sizes))
  }
  const ends = own.length > 0 ? own : [...lines.values()]
  const end = readEnd(part.get('comes from'), ends)
  const { life, look, joined, half, pieces } = part.value ?? {}
  const text = (item: Item<string | number | undefined>) => item.text() || undefined
  const supply = part.get('supply')
  const parts = (key: 'seats against' | 'slides on' | 'meshes' | 'keys' | 'runs on' | 'engages') =>
    many(part.get(key), names, 'part')
  const tool = readTool(part, own, around)
  return {
    id,
    at: part.at,
    pieces: pieces ?? 1,
    ...drop({
      material: text(part.get('material')),
      mass: known(part.get('mass'), { as: 'mass', unit: 'kg', standing: 'told' }),
      life,
      from: text(supply.get('from')),
      price: text(supply.get('price')),
      lead: text(supply.get('lead')),
      number: text(part.get('number')),
      note: text(part.get('note')),
      look,
      onto: one(part.get('onto'), names, 'part'),
      joined,
      kind: text(part.get('kind')),
      goesWith: one(part.get('goes with'), names, 'part'),
      half,
      end,
      takes: known(part.get('takes'), minutes),
      tool,
    }),
    rings,
    passing,
    flat: part
      .get('flat')
      .list()
      .flatMap((flat) => {
        const line = one(flat.get('towards line'), names, 'line')
        const distance = known(flat.get('at'), lengths(sizes))
        return line && distance ? [{ line, distance }] : []
      }),
    ways: readWays(part, ends, around),
    stands: readStands(part, around),
    seats: parts('seats against'),
    slidesOn: parts('slides on'),
    meshes: parts('meshes'),
    keys: parts('keys'),
    runsOn: parts('runs on'),
    engages: parts('engages'),
    watched: part
      .get('watched')
      .list()
      .flatMap((watched) => {
        const meets = one(watched.get('meets'), names, 'part')
        const through = one(watched.get('through'), names, 'opening')
        return meets && through ? [{ meets, through }] : []
      }),
    closes: many(part.get('closes'), names, 'opening'),
    reach: many(part.get('reach'), names, 'opening'),
    columns: readColumns(part, own, around),
    looseUntil: stepNames(part.get('loose until'), names),
    features: readFeatures(part, sizes),
    tools: listed(part.get('tools')),
    follows: part
      .get('then')
      .entries()
      .map(([follow, item]) => readFollow(follow, item, names)),
    cautions: listed(part.get('cautions')),
    variants: many(part.get('variants'), names, 'variant'),
  }
}

/** Leaves out what is not known, as the model does. */
function drop<T extends Record<string, unknown>>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>
  }
}

/** The rings under the keys that carry a line's name: `line 1`, `wall on 1`, `passing on 1`. */
function ringsBy(
  part: PartItem,
  kinds: readonly string[],
  { names, sizes }: Around,
): ReadonlyMap<LineId, readonly Ring[]> {
  const found = new Map<LineId, readonly Ring[]>()
  for (const [key, item] of part.entries()) {
    const [, kind = '', line = ''] = LINE_KEY.exec(key) ?? []
    if (!kinds.includes(kind)) continue
    one(item, names, 'line', line)
    const rings = kind === 'wall on' ? readWall(item, sizes) : readRings(item, sizes)
    found.set(line, [...(found.get(line) ?? []), ...rings])
  }
  return found
}

function readTool(part: PartItem, own: readonly Line[], { sizes, lines }: Around): Part['tool'] {
  const [tool] = part.get('tool').entries()
  if (!tool) return undefined
  const line = lineOf(tool[1], own, lines, 'Give the part its rings on one line; the tool goes along it.')
  return line && { name: tool[0], line: line.id, rings: readRings(tool[1], sizes) }
}

function readFollow(
  id: string,
  item: Item<{ does?: unknown } | null | undefined | string | number>,
  names: Names,
): Follow {
  const follow = item as Item<NonNullable<WrittenPart['then']>[string]>
  const takes = known(follow.get('takes'), minutes)
  const noReturn = follow.get('no way back').text()
  return {
    id,
    at: follow.at,
    does: follow.get('does').text() || sentence(id),
    ...(takes && { takes }),
    tools: listed(follow.get('tools')),
    reach: many(follow.get('reach'), names, 'opening'),
    ...(noReturn && { noReturn }),
  }
}

/** A step's name as a sentence: `bend the tab` → `Bend the tab`. */
export const sentence = (name: string): string => `${name.charAt(0).toUpperCase()}${name.slice(1)}`

/** `passes` and `does not pass` of every part: on each line that both are on, otherwise on the lines that the mover goes along. */
export function readPassings(
  unit: Item<WrittenUnit>,
  parts: ReadonlyMap<PartId, Part>,
  around: Around,
): readonly Passing[] {
  const { names, lines } = around
  const linesOf = (part: PartId) =>
    [...lines.values()].filter(({ id, stack }) => stack.includes(part) || parts.get(part)?.rings.has(id))

  const read = (item: Item<string | number>, mover: PartId, passes: boolean): Passing[] => {
    const past = one(item, names, 'part')
    if (!past) return []
    const [own, its] = [linesOf(mover), linesOf(past)]
    const both = own.filter((line) => its.includes(line))
    const along = [both, own, its].find(({ length }) => length > 0)
    const on =
      along ?? [lineOf(item, [], lines, "Put both into the 'stack' of their line.")].flatMap((line) => line ?? [])
    return on.map(({ id }) => ({ at: item.valueAt, line: id, mover, past, passes, standing: 'seen' }))
  }

  return unit
    .get('parts')
    .entries()
    .flatMap(([mover, part]) =>
      (['passes', 'does not pass'] as const).flatMap((key) =>
        part
          .get(key)
          .list()
          .flatMap((item) => read(item, mover, key === 'passes')),
      ),
    )
}
