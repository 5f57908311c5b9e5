// A peer for small sequence files: the same model as an integer programme, solved by HiGHS (npm `highs`), with its time.
import { createRequire } from 'node:module'
import type { PlanningProblem } from '../../src/planning/model/problem.ts'

/** Larger ones only spend the time. */
export const PEER_NODES = 50

interface Solver {
  solve(model: string, options: { time_limit: number }): { Status: string; ObjectiveValue: number }
}

let loaded: Promise<Solver> | undefined
const solver = (): Promise<Solver> => {
  // Not bundled: the package looks for its own file beside it.
  const load: () => Promise<Solver> = createRequire(import.meta.url)('highs')
  loaded ??= load()
  return loaded
}

export async function peerValue(
  problem: PlanningProblem,
  limit_s: number,
): Promise<{ value: number | null; proven: boolean; seconds: number } | null> {
  try {
    const highs = await solver()
    const begin = performance.now()
    const { Status, ObjectiveValue } = highs.solve(modelOf(problem), { time_limit: limit_s })
    const seconds = (performance.now() - begin) / 1000
    const proven = Status === 'Optimal'
    const found = proven || (Number.isFinite(ObjectiveValue) && Status.startsWith('Time limit'))
    return { value: found ? Math.round(ObjectiveValue) : null, proven, seconds }
  } catch (error) {
    console.error(`  highs: ${(error as Error).message}`)
    return null
  }
}

/**
 * The model of C. E. Miller, A. W. Tucker, R. A. Zemlin (J. ACM 7, 1960, 326-329): x for neighbours, u for places, and a row for each
 * pair whose order is certain.
 */
function modelOf({ operations, changes }: PlanningProblem): string {
  const size = operations.length
  const { ops, s } = changes.between!
  const indexOf = new Map(ops.map((id, at) => [id, at]))
  const certain = operations.flatMap(({ id, needs }) =>
    needs.flatMap(({ anyOf }) => anyOf[0]!.done.map((before) => [indexOf.get(before)!, indexOf.get(id)!] as const)),
  )
  const isAfter = new Set(certain.map(([before, after]) => `${after} ${before}`))
  const arcs: (readonly [from: number, to: number, cost: number])[] = []
  s.forEach((row, from) => {
    row.forEach((cost, to) => {
      if (from !== to && cost !== null && !isAfter.has(`${from} ${to}`)) arcs.push([from, to, cost])
    })
  })
  const sum = (terms: readonly string[]): string => terms.join(' + ') || '0 u0'
  const list = Array.from({ length: size }, (_, op) => op)
  const into = list.map((op) => [`s${op}`, ...arcs.filter(([, to]) => to === op).map(([from]) => `x${from}_${op}`)])
  const outOf = list.map((op) => [`e${op}`, ...arcs.filter(([from]) => from === op).map(([, to]) => `x${op}_${to}`)])
  return [
    'Minimize',
    ` obj: ${sum(arcs.map(([from, to, cost]) => `${cost} x${from}_${to}`))}`,
    'Subject To',
    ...into.map((terms) => ` ${sum(terms)} = 1`),
    ...outOf.map((terms) => ` ${sum(terms)} = 1`),
    ` ${sum(list.map((op) => `s${op}`))} = 1`,
    ` ${sum(list.map((op) => `e${op}`))} = 1`,
    ...arcs.map(([from, to]) => ` u${to} - u${from} - ${size} x${from}_${to} >= ${1 - size}`),
    ...certain.map(([before, after]) => ` u${after} - u${before} >= 1`),
    'Bounds',
    ...list.map((op) => ` 0 <= u${op} <= ${size - 1}`),
    'Binary',
    ` ${[...arcs.map(([from, to]) => `x${from}_${to}`), ...list.flatMap((op) => [`s${op}`, `e${op}`])].join(' ')}`,
    'End',
  ].join('\n')
}
