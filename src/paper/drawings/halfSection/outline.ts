// The outline of rings seen in section: rectangles that touch or overlap become closed loops without inner edges.

/** A rectangle in a half plane: along the axis and away from it. Any unit, the same for all. */
export interface Cell {
  readonly x0: number
  readonly x1: number
  readonly r0: number
  readonly r1: number
}

export type Loop = readonly { readonly x: number; readonly r: number }[]

/** Below this two stations are one: a hundredth of a micrometre. */
const SAME = 1e-8

function stations(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted.filter((value, index) => index === 0 || value - (sorted[index - 1] ?? 0) > SAME)
}

const covers = (cell: Cell, x: number, r: number): boolean => cell.x0 < x && x < cell.x1 && cell.r0 < r && r < cell.r1

/**
 * Closed loops around the union of `cells`, less what lies in `without`. Material lies to the right hand of the way round
 * (x to the right, r upwards), holes included; no vertex stands in the middle of a straight edge.
 *
 * @example outlineOf([{x0: 0, x1: 1, r0: 0, r1: 1}, {x0: 1, x1: 2, r0: 0, r1: 1}]).length   // 1
 */
export function outlineOf(cells: readonly Cell[], without: readonly Cell[] = []): readonly Loop[] {
  const all = [...cells, ...without]
  const xs = stations(all.flatMap((cell) => [cell.x0, cell.x1]))
  const rs = stations(all.flatMap((cell) => [cell.r0, cell.r1]))
  const filled = (i: number, j: number): boolean => {
    const [xa, xb, ra, rb] = [xs[i], xs[i + 1], rs[j], rs[j + 1]]
    if (xa === undefined || xb === undefined || ra === undefined || rb === undefined) return false
    const [x, r] = [(xa + xb) / 2, (ra + rb) / 2]
    return cells.some((cell) => covers(cell, x, r)) && !without.some((cell) => covers(cell, x, r))
  }

  // Directed edges of the grid between filled and empty, keyed by where they start.
  const edges = new Map<string, [number, number][]>()
  const add = (fromI: number, fromJ: number, toI: number, toJ: number) => {
    const key = `${fromI},${fromJ}`
    edges.set(key, [...(edges.get(key) ?? []), [toI, toJ]])
  }
  for (let i = 0; i < xs.length - 1; i += 1) {
    for (let j = 0; j < rs.length - 1; j += 1) {
      if (!filled(i, j)) continue
      if (!filled(i, j + 1)) add(i, j + 1, i + 1, j + 1)
      if (!filled(i + 1, j)) add(i + 1, j + 1, i + 1, j)
      if (!filled(i, j - 1)) add(i + 1, j, i, j)
      if (!filled(i - 1, j)) add(i, j, i, j + 1)
    }
  }

  const loops: Loop[] = []
  for (const start of edges.keys()) {
    while (edges.get(start)?.length) {
      const corners: [number, number][] = []
      let at = start
      for (let next = edges.get(at)?.shift(); next; next = edges.get(at)?.shift()) {
        corners.push(next)
        at = next.join(',')
        if (at === start) break
      }
      loops.push(straightened(corners.map(([i, j]) => ({ x: xs[i] ?? 0, r: rs[j] ?? 0 }))))
    }
  }
  return loops
}

const straightened = (loop: Loop): Loop =>
  loop.filter((point, index) => {
    const before = loop.at(index - 1) ?? point
    const after = loop[(index + 1) % loop.length] ?? point
    return !((before.x === point.x && point.x === after.x) || (before.r === point.r && point.r === after.r))
  })
