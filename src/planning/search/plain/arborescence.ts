// The spanning bound: from the start every node is reached over a cheapest tree of arcs, however often one node is left. With what the
// tree is worth comes how much each set of nodes that it has to enter is worth: what the search keeps of it.
import type { PlainProblem } from './plainProblem.ts'

/** Works out trees for changing prices, in memory that is taken once. */
export class Arborescence {
  /** The sets of the last tree: nodes first, then each set after those that it holds. */
  sets = 0
  /** What entering each set is worth. Above 0 for sets of several nodes; any number for single ones. */
  readonly worth: Float64Array
  /** The set right around each set; −1 when there is none. */
  readonly around: Int32Array
  /** For each node, the one from which the tree enters it. */
  readonly parent: Int32Array
  readonly #size: number
  readonly #nodes: number
  /** For each set still open, the cheapest arc into it from each node, and where that arc ends. */
  readonly #rows: Float64Array
  readonly #heads: Int32Array
  readonly #rowOf: Int32Array
  readonly #setOf: Int32Array
  readonly #state: Uint8Array
  readonly #tail: Int32Array
  readonly #head: Int32Array
  readonly #next: Int32Array
  readonly #first: Int32Array
  readonly #last: Int32Array
  /** The cheapest arcs into the parts of a circle that is being closed. */
  readonly #merged: Float64Array
  readonly #mergedHeads: Int32Array

  constructor({ size, nodes }: Pick<PlainProblem, 'size' | 'nodes'>) {
    const most = 2 * nodes
    this.#size = size
    this.#nodes = nodes
    this.worth = new Float64Array(most)
    this.around = new Int32Array(most)
    this.parent = new Int32Array(nodes)
    this.#rows = new Float64Array(nodes * nodes)
    this.#heads = new Int32Array(nodes * nodes)
    this.#rowOf = new Int32Array(most)
    this.#setOf = new Int32Array(nodes)
    this.#state = new Uint8Array(most)
    this.#tail = new Int32Array(most)
    this.#head = new Int32Array(most)
    this.#next = new Int32Array(nodes)
    this.#first = new Int32Array(most)
    this.#last = new Int32Array(most)
    this.#merged = new Float64Array(nodes)
    this.#mergedHeads = new Int32Array(nodes)
  }

  /**
   * The cheapest tree from the start to all nodes; infinite when there is none.
   *
   * @param into by column (to), then row (from): what the arc costs, infinite where there is none
   * @param leave prices taken off every arc, by the node it leaves
   * @source J. Edmonds, Optimum branchings, J. Res. Nat. Bur. Standards 71B (1967) 233-240; the path that grows and closes circles as
   *   in R. E. Tarjan, Finding optimum branchings, Networks 7 (1977) 25-35
   */
  solve(into: Float64Array, leave: Float64Array): number {
    const nodes = this.#nodes
    const root = this.#size
    const rows = this.#rows
    const heads = this.#heads
    for (let node = 0; node < nodes; node++) {
      const at = node * nodes
      for (let from = 0; from < nodes; from++) rows[at + from] = into[at + from]! - leave[from]!
      heads.fill(node, at, at + nodes)
      this.#rowOf[node] = node
      this.#setOf[node] = node
      this.#state[node] = OPEN
      this.around[node] = -1
      this.#first[node] = node
      this.#last[node] = node
      this.#next[node] = -1
      this.worth[node] = 0
    }
    this.sets = nodes
    this.#state[root] = DONE
    let sum = 0
    const path: number[] = []
    for (let begin = 0; begin < nodes; begin++) {
      let set = this.#setOf[begin]!
      if (this.#state[set] === DONE) continue
      path.length = 0
      for (;;) {
        path.push(set)
        this.#state[set] = ON_PATH
        const least = this.#choose(set)
        if (least === Number.POSITIVE_INFINITY) return least
        sum += least
        const from = this.#setOf[this.#tail[set]!]!
        if (this.#state[from] === DONE) break
        set = this.#state[from] === ON_PATH ? this.#close(path, from) : from
      }
      for (const each of path) this.#state[each] = DONE
    }
    this.#unfold()
    return sum
  }

  /** The cheapest arc into a set; what it costs is taken off all arcs into it. */
  #choose(set: number): number {
    const nodes = this.#nodes
    const at = this.#rowOf[set]! * nodes
    const rows = this.#rows
    const setOf = this.#setOf
    let least = Number.POSITIVE_INFINITY
    let tail = -1
    for (let from = 0; from < nodes; from++) {
      if (rows[at + from]! < least && setOf[from] !== set) {
        least = rows[at + from]!
        tail = from
      }
    }
    if (tail < 0) return least
    this.#tail[set] = tail
    this.#head[set] = this.#heads[at + tail]!
    this.worth[set] = least
    return least
  }

  /** Makes one set of all on the path from `first` on. */
  #close(path: number[], first: number): number {
    const nodes = this.#nodes
    const rows = this.#rows
    const heads = this.#heads
    const set = this.sets++
    const at = this.#rowOf[first]! * nodes
    this.#rowOf[set] = this.#rowOf[first]!
    this.around[set] = -1
    this.#first[set] = -1
    const merged = this.#merged.fill(Number.POSITIVE_INFINITY)
    const mergedHeads = this.#mergedHeads
    for (let part = -1; part !== first; ) {
      part = path.pop()!
      const worth = this.worth[part]!
      const partAt = this.#rowOf[part]! * nodes
      for (let from = 0; from < nodes; from++) {
        const cost = rows[partAt + from]! - worth
        if (cost < merged[from]!) {
          merged[from] = cost
          mergedHeads[from] = heads[partAt + from]!
        }
      }
      this.around[part] = set
      if (this.#first[set]! < 0) this.#first[set] = this.#first[part]!
      else this.#next[this.#last[set]!] = this.#first[part]!
      this.#last[set] = this.#last[part]!
    }
    rows.set(merged, at)
    heads.set(mergedHeads, at)
    for (let node = this.#first[set]!; node >= 0; node = this.#next[node]!) this.#setOf[node] = set
    return set
  }

  /** The arcs of the tree: a set is entered once, and where it is entered, its parts need no entry of their own. */
  #unfold(): void {
    this.#state.fill(OPEN, 0, this.sets)
    for (let set = this.sets - 1; set >= 0; set--) {
      if (set === this.#size || this.#state[set] === DONE) continue
      const head = this.#head[set]!
      this.parent[head] = this.#tail[set]!
      for (let inside = head; ; inside = this.around[inside]!) {
        this.#state[inside] = DONE
        if (inside === set) break
      }
    }
    this.parent[this.#size] = -1
  }
}

const OPEN = 0
const ON_PATH = 1
const DONE = 2
