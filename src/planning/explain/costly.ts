// Which relations cost time: each is left out once and the rest planned anew.
import { type ClosedNeed, type Closing, closing, type Relation } from '../closing.ts'
import type { PlanningProblem, Reason } from '../model/problem.ts'
import type { Value } from '../model/sequence.ts'
import { compareValues } from '../relations/compareValues.ts'
import { keepRelations, relationKey, relationsIn } from '../relations/relationsIn.ts'
import { bestValue } from '../search/bestValue.ts'
import { reasonOf } from './proof.ts'

export interface CostlyRelation {
  readonly relation: Relation
  readonly reason: Reason
  /** How much better the best value would be without it: at least, where it is not proven. */
  readonly gains: Value
  readonly proven: boolean
}

export interface Costly {
  /** Those that cost something, the dearest first. */
  readonly relations: readonly CostlyRelation[]
  /** Relations that were tried, and how many there are. */
  readonly tried: number
  readonly of: number
}

const USUAL_EFFORT = 1_000_000
const EACH = 20_000

/**
 * What each relation costs alone: how much better the best value would be if it were not there. A mode that is left out is done with
 * the hands that there are, its changes of set-up taking no time. What costs nothing alone may still cost something together with
 * another.
 *
 * @param result the best value, such as that of `plan`
 * @param options.effort states for all trials together: lags are tried first, then needs, then modes
 * @example costlyRelations(problem, plan(problem)).relations   // []
 */
export function costlyRelations(
  problem: PlanningProblem,
  result: { readonly value: Value | null },
  { effort = USUAL_EFFORT, late = () => false }: { effort?: number; late?: () => boolean } = {},
): Costly {
  const rank = ({ kind }: Relation) => ['lag', 'need', 'mode'].indexOf(kind)
  const all = relationsIn(problem).sort((one, other) => rank(one) - rank(other))
  const closed = closing(problem)
  const same = formOf(closed)
  const { value } = result
  if (!value) return { relations: [], tried: 0, of: all.length }
  let left = effort
  let tried = 0
  const found: CostlyRelation[] = []
  for (const relation of all) {
    if (left <= 0 || late()) break
    const key = relationKey(relation)
    const trial = keepRelations(problem, (kept) => relationKey(kept) !== key)
    tried++
    // What other relations say as well costs nothing.
    if (relation.kind === 'need' && formOf(closing(trial)) === same) continue
    const { value: without, proven, states } = bestValue(trial, { effort: Math.min(left, EACH), late })
    // Each search costs something, also where it is over at once.
    left -= states + problem.operations.length
    if (!without || compareValues(without, value) >= 0) continue
    const gains: Value = [value[0] - without[0], value[1] - without[1], value[2] - without[2]]
    found.push({ relation, reason: reasonOf(closed, relation), gains, proven })
  }
  return {
    relations: found.sort((one, other) => compareValues(other.gains, one.gains)),
    tried,
    of: all.length,
  }
}

/** The closed needs as text: problems with the same have the same sequences. */
const formOf = ({ before, needs, modes }: Closing): string => {
  const left = (list: readonly ClosedNeed[]) => list.map(({ anyOf }) => anyOf)
  return JSON.stringify([
    before.map((set) => [...set]),
    needs.map(left),
    modes.map((list) => list.map((mode) => [mode.place, left(mode.needs)])),
  ])
}
