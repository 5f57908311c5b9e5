// What the tries of its loops make of the value of a sequence (docs/reference/contract.md, section 7).
import type { Loop, OpId, PlanningProblem } from '../model/problem.ts'
import type { LoopTry, Tries, Value } from '../model/sequence.ts'
import { type Choice, setUpChanges } from './setUpChanges.ts'
import { standsOn, undoSeconds } from './standsOn.ts'

/**
 * The value for the low, usual and high number of tries; null where the problem has no loops.
 *
 * @param once the value with each done once
 */
export function triesOf(problem: PlanningProblem, sequence: readonly Choice[], once: Value): Tries | null {
  if (!problem.loops?.length) return null
  const places = new Map(sequence.map(({ op }, place) => [op, place]))
  const rounds = problem.loops.map((loop): Round => {
    const [from, upTo] = [places.get(loop.first)!, places.get(loop.last)!]
    const again = [...new Set([...standsOn(problem, sequence, { from, upTo }), upTo])].sort((one, other) => one - other)
    return { loop, upTo, again }
  })
  const valueFor = (which: 'low' | 'usual' | 'high') =>
    valueWith(problem, sequence, { once, rounds, further: ({ tries }) => tries[which] - 1 })
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  return {
    low: valueFor('low'),
    usual: valueFor('usual'),
    high: valueFor('high'),
    loops: rounds.map(({ loop, again }): LoopTry => {
      const ops = again.map((place) => operations.get(sequence[place]!.op)!)
      const further = (each: Loop) => (each === loop ? 1 : 0)
      return {
        id: loop.id,
        again: ops.map(({ id }) => id),
        renews: [...new Set(ops.flatMap(({ undo }) => undo?.renews ?? []))],
        noReturn: ops.filter(({ noReturn }) => noReturn !== undefined).map(({ id }) => id),
        try_s: valueWith(problem, sequence, { once, rounds, further })[1] - once[1],
      }
    }),
  }
}

interface Round {
  readonly loop: Loop
  /** Place of its last operation. */
  readonly upTo: number
  /** Places of what comes off and is done again. */
  readonly again: readonly number[]
}

function valueWith(
  problem: PlanningProblem,
  sequence: readonly Choice[],
  { once, rounds, further }: { once: Value; rounds: readonly Round[]; further: (loop: Loop) => number },
): Value {
  const operations = new Map(problem.operations.map((operation) => [operation.id, operation]))
  const seconds = (op: OpId) => undoSeconds(operations.get(op)!) + operations.get(op)!.duration_s.usual
  const longer = sequence.flatMap((choice, place) => [
    choice,
    ...rounds
      .filter(({ upTo }) => upTo === place)
      .flatMap(({ loop, again }) => Array.from({ length: further(loop) }, () => again).flat())
      .map((at) => sequence[at]!),
  ])
  const [short, long] = [sequence, longer].map((list) => {
    const changes = setUpChanges(problem, list).flat()
    return {
      hazard:
        list.reduce((sum, { mode }) => sum + (mode.hazard ?? 0), 0) +
        changes.reduce((sum, change) => sum + change.hazard, 0),
      s: changes.reduce((sum, { s }) => sum + s, 0),
      changes: changes.length,
    }
  }) as [Sums, Sums]
  const trying = rounds.reduce(
    (sum, { loop, again }) => sum + further(loop) * again.reduce((all, at) => all + seconds(sequence[at]!.op), 0),
    0,
  )
  return [
    once[0] + long.hazard - short.hazard,
    once[1] + trying + long.s - short.s,
    once[2] + long.changes - short.changes,
  ]
}

interface Sums {
  readonly hazard: number
  readonly s: number
  readonly changes: number
}
