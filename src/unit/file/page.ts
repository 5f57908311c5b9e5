// A read file in two forms at once: the typed values, and for every path in them the place where they were written.

import type { ProblemCode } from '../../problem/catalogue.ts'
import type { Facts } from '../../problem/facts.ts'
import { type Place, Problem } from '../../problem/problem.ts'
import { type Node, offsetInScalar, type Tree } from './tree.ts'

export type Path = readonly (string | number)[]

/** The file being read and the faults found in it so far. */
export class Page {
  readonly faults: Problem[]
  private readonly tree: Tree

  constructor(tree: Tree) {
    this.tree = tree
    this.faults = tree.faults
  }

  /** Where the value of a path stands; of a block its name; of what is missing the nearest block around it. */
  place(path: Path, letter?: number): Place {
    let node = this.tree.root
    let offset = node?.start ?? 0
    for (const step of path) {
      const entry = node?.kind === 'map' ? node.entries.get(String(step)) : undefined
      const item = node?.kind === 'list' ? node.items[Number(step)] : undefined
      if (!entry && !item) return this.tree.place(offset)
      node = entry?.node ?? item
      offset = entry && !(node?.kind === 'scalar' && node.raw) ? entry.keyStart : (node?.start ?? offset)
    }
    if (letter !== undefined && node?.kind === 'scalar') offset = offsetInScalar(node, letter)
    return this.tree.place(offset)
  }

  /** Where the name of a path's last step stands. */
  namePlace(path: Path): Place {
    const around = this.node(path.slice(0, -1))
    const entry = around?.kind === 'map' ? around.entries.get(String(path.at(-1))) : undefined
    return entry ? this.tree.place(entry.keyStart) : this.place(path)
  }

  /** A scalar as it was written. */
  text(path: Path): string | undefined {
    const node = this.node(path)
    return node?.kind === 'scalar' ? node.text.trim() : undefined
  }

  node(path: Path): Node | undefined {
    let node = this.tree.root
    for (const step of path) {
      node =
        node?.kind === 'map'
          ? node.entries.get(String(step))?.node
          : node?.kind === 'list'
            ? node.items[Number(step)]
            : undefined
    }
    return node
  }

  /** Whether the file says that it is of this form; told when it does not. */
  isForm(expected: string): boolean {
    const { root } = this.tree
    if (!root) {
      if (this.faults.length === 0) this.fault('FILE_EMPTY', { expected: `'matchmark: ${expected}'` }, this.place([]))
      return false
    }
    const received = this.text(['matchmark']) ?? ''
    if (received === expected) return true
    this.fault('FILE_OTHER_FORM', { received, expected }, this.place(['matchmark']))
    return false
  }

  fault(code: ProblemCode, facts: Facts, place: Place): void {
    this.faults.push(new Problem(code, facts, place))
  }
}

const MOST_FAULTS = 100

/** Faults in the order of the file, no more than a person can use. */
export function inOrder(faults: readonly Problem[]): readonly Problem[] {
  const sorted = [...faults].sort(
    ({ place: a }, { place: b }) => (a?.line ?? 0) - (b?.line ?? 0) || (a?.column ?? 0) - (b?.column ?? 0),
  )
  if (sorted.length <= MOST_FAULTS) return sorted
  const more = new Problem('FILE_MORE_FAULTS', { more: sorted.length - MOST_FAULTS }, sorted[MOST_FAULTS]?.place)
  return [...sorted.slice(0, MOST_FAULTS), more]
}
