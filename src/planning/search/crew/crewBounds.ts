// What no crew can beat: the longest path, and the work of people, skills and machines between the soonest start and the shortest rest.
import type { Spans } from './times.ts'
import type { Resource, Workshop } from './workshop.ts'

/**
 * Seconds that a resource needs for all that has to be done with it: for every choice of “not before” and “so long still after”
 * the work of the operations that neither start sooner nor end later, shared by as many as there are.
 */
function workBound({ capacity, wanted }: Resource, durations: Int32Array, { heads, tails }: Spans): number {
  const users = [...wanted.keys()].filter((op) => wanted[op]! > 0 && durations[op]! > 0)
  const rest = (op: number) => tails[op]! - durations[op]!
  const byHead = [...users].sort((one, other) => heads[other]! - heads[one]!)
  let bound = 0
  for (const after of new Set(users.map(rest))) {
    let work = 0
    for (const op of byHead) {
      if (rest(op) < after) continue
      work += wanted[op]! * durations[op]!
      bound = Math.max(bound, heads[op]! + Math.ceil(work / capacity) + after)
    }
  }
  return bound
}

/** The least elapsed seconds that follow from needs, lags and the work to be shared. */
export function elapsedBound({ durations, resources }: Workshop, spans: Spans): number {
  const path = spans.heads.reduce((end, head, op) => Math.max(end, head + spans.tails[op]!), 0)
  return resources.reduce((bound, resource) => Math.max(bound, workBound(resource, durations, spans)), path)
}

/** The fewest changes: attitudes that have to be taken, and names that somebody has to take up. */
export function changesBound({ ways, start, people, turns }: Workshop): number {
  /** What every way of an operation names. */
  const forced = (named: (way: (typeof ways)[number][number]) => number, list: (typeof ways)[number]): number => {
    const [first] = list
    const name = first ? named(first) : -1
    return list.every((way) => named(way) === name) ? name : -1
  }
  let bound = 0
  for (const workpiece of turns.keys()) {
    const attitudes = new Set<number>()
    for (const list of ways) {
      if (forced((way) => way.workpiece, list) !== workpiece) continue
      const attitude = forced((way) => way.attitude, list)
      if (attitude >= 0) attitudes.add(attitude)
    }
    if (start.attitudes[workpiece]! >= 0) attitudes.add(start.attitudes[workpiece]!)
    bound += Math.max(0, attitudes.size - 1)
  }
  for (const aspect of ['workpiece', 'station', 'tools'] as const) {
    const names = new Set(ways.map((list) => forced((way) => way[aspect], list)).filter((name) => name >= 0))
    const first = start[aspect]
    bound += first >= 0 ? names.size - (names.has(first) ? 1 : 0) : Math.max(0, names.size - people)
  }
  return bound
}
