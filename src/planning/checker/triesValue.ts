// Contract, section 7: what a sequence is worth with the tries of its loops.
import type { Loop, Need, Operation, OpId, PlanningProblem } from '../model/problem.ts'
import type { PlacedStep, Value } from '../model/sequence.ts'
import { needHolds } from './needHolds.ts'
import { type ResolvedStep, resolveOrder } from './resolveStep.ts'
import { sequenceValue } from './sequenceValue.ts'
import { setupChanges } from './setupChanges.ts'

const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0)

/**
 * The value of a sequence when each loop is done so often.
 * @throws RangeError when a step is not in the problem, or a loop names what the sequence leaves out
 */
export function triesValue(
  problem: PlanningProblem,
  steps: readonly PlacedStep[],
  which: 'low' | 'usual' | 'high',
): Value {
  const line = resolveOrder(problem, steps)
  const list: ResolvedStep[] = []
  let trying_s = 0
  line.forEach((step) => {
    list.push(step)
    for (const loop of problem.loops ?? []) {
      if (loop.last !== step.operation.id) continue
      const again = repeated(line, loop)
      for (let round = 1; round < loop.tries[which]; round++) {
        list.push(...again)
        trying_s += total(again.map(({ operation }) => undoing(operation) + operation.duration_s.usual))
      }
    }
  })
  const [, elapsed_s] = sequenceValue(problem, steps)
  const once = setupChanges(
    problem,
    line.map(({ mode }) => mode.setup),
  )
  const all = setupChanges(
    problem,
    list.map(({ mode }) => mode.setup),
  )
  const more_s = total(all.map(({ s }) => s)) - total(once.map(({ s }) => s))
  return [
    total(list.map(({ mode }) => mode.hazard ?? 0)) + total(all.map(({ hazard }) => hazard)),
    elapsed_s + trying_s + more_s,
    total(all.map(({ changes }) => changes)),
  ]
}

function undoing({ undo, check, duration_s }: Operation): number {
  if (undo) return undo.duration_s.usual
  return check ? 0 : duration_s.usual
}

/** What comes off with the first operation of a loop, and its last one, in the order of the sequence. */
function repeated(line: readonly ResolvedStep[], { first, last }: Loop): readonly ResolvedStep[] {
  const end = line.findIndex(({ operation }) => operation.id === last)
  if (end < 0 || !line.some(({ operation }) => operation.id === first)) {
    throw new RangeError(`The sequence leaves out '${first}' or '${last}', which a loop names.`)
  }
  const stretch = line.slice(0, end + 1)
  const ids = stretch.map(({ operation }) => operation.id)
  let off = new Set<OpId>([first])
  for (;;) {
    const leaning = stretch.filter(({ operation, mode }, place) => {
      const before = new Set(ids.slice(0, place))
      return [...operation.needs, ...mode.needs].some(({ anyOf }) => {
        const met = anyOf.filter((alternative) => needHolds({ anyOf: [alternative] }, before))
        return met.length > 0 && met.every(({ done }) => done.some((id) => off.has(id)))
      })
    })
    const inTheWay = stretch
      .filter(({ operation }) => off.has(operation.id))
      .flatMap(needsOfUndoing)
      .flatMap(({ anyOf }) =>
        ids.filter((id) => anyOf.length > 0 && anyOf.every(({ notDone }) => notDone.includes(id))),
      )
    const next = new Set([...off, ...leaning.map(({ operation }) => operation.id), ...inTheWay])
    if (next.size === off.size) break
    off = next
  }
  return stretch.filter(({ operation }) => off.has(operation.id) || operation.id === last)
}

function needsOfUndoing({ operation: { undo, needs }, mode }: ResolvedStep): readonly Need[] {
  if (undo && undo.needs.length > 0) return undo.needs
  return [...needs, ...mode.needs].filter(({ reason }) => ['geometry', 'connection'].includes(reason.origin))
}
