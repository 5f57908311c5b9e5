// Connections are handed on as they were written, with the place of every value: their kinds read them.
import type { At, Connection } from '../model/unit.ts'
import type { Item } from './item.ts'
import { many, type Names } from './names.ts'
import type { Path } from './page.ts'
import type { WrittenUnit } from './schema.ts'
import { plain } from './shape.ts'
import type { Node } from './tree.ts'

const COMMON = new Set(['kind', 'variants'])

export function readConnections(unit: Item<WrittenUnit>, names: Names): ReadonlyMap<string, Connection> {
  const connections = new Map<string, Connection>()
  for (const [id, connection] of unit.get('connections').entries()) {
    if (!connection.given) {
      connection.fault('KEY_MISSING', {
        key: 'kind',
        where: `connections › ${id}`,
        expected: 'a word such as press fit',
      })
      continue
    }
    const node = connection.page.node(connection.path)
    const given: Record<string, unknown> = {}
    const places = new Map<string, At>()
    if (node?.kind === 'map') {
      for (const [key, entry] of node.entries) {
        const value = plain(entry.node)
        if (COMMON.has(key) || value === null) continue
        given[key] = value
        note(places, connection, [key], entry.node)
      }
    }
    connections.set(id, {
      id,
      at: connection.at,
      kind: connection.get('kind').text() ?? '',
      given,
      places,
      variants: many(connection.get('variants') as Item<string | undefined>, names, 'variant'),
    })
  }
  return connections
}

function note(places: Map<string, At>, connection: Item<unknown>, path: Path, node: Node): void {
  const { line, column } = connection.page.place([...connection.path, ...path])
  places.set(path.join(' › '), { line, column })
  if (node.kind === 'list')
    for (const [index, item] of node.items.entries()) note(places, connection, [...path, index], item)
  if (node.kind === 'map') for (const [key, entry] of node.entries) note(places, connection, [...path, key], entry.node)
}

/**
 * Where a value of a connection was written; where it is missing, the block around it.
 *
 * @param path inside `given`, as a zod issue gives it
 */
export function placeOf(connection: Connection, path: readonly PropertyKey[]): At {
  for (let length = path.length; length > 0; length -= 1) {
    const place = connection.places?.get(path.slice(0, length).map(String).join(' › '))
    if (place) return place
  }
  return connection.at
}
