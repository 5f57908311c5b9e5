// Why nothing can be done: a set of relations that allow no sequence together, of which each one is to blame.
import { canBeDone } from './canBeDone.ts'
import { type Closing, closing, type Relation } from './closing.ts'
import { reasonOf, relationsOf } from './explain/proof.ts'
import type { GiveUp, PlanningProblem } from './model/problem.ts'
import type { Conflict, ConflictMember } from './model/sequence.ts'
import { keepRelations, relationKey, relationsIn } from './relations/relationsIn.ts'

export interface ConflictLimits {
  /** States that may be looked at, all trials together. */
  readonly effort: number
  readonly late?: () => boolean
}

/**
 * An irreducible conflict of a valid problem that cannot be done; null when it can, or when neither was found out within the
 * effort. Relations that are `never` given up may be members; they are never among the cheapest.
 */
export function findConflict(
  problem: PlanningProblem,
  { effort, late = () => false }: ConflictLimits,
): Conflict | null {
  let left = effort
  let certain = true
  /** Whether these relations together allow no sequence. What cannot be found out counts as allowed, and is noted. */
  const clash = (kept: readonly Relation[]): boolean => {
    const keys = new Set(kept.map(relationKey))
    const trial = keepRelations(problem, (relation) => keys.has(relationKey(relation)))
    const { answer, states } = canBeDone(trial, { effort: Math.max(0, left), late })
    left -= states
    if (answer === 'not known') certain = false
    return answer === 'no'
  }

  const closed = closing(problem)
  let suspects = relationsIn(problem)
  if (closed.contradiction) {
    const named = new Set(relationsOf(closed, closed.contradiction).map(relationKey))
    suspects = suspects.filter((relation) => named.has(relationKey(relation)))
  }
  if (!clash(suspects)) return null
  certain = true
  const members = explain(clash, [], false, suspects)
  return worded(closed, members, certain)
}

/**
 * The relations among `suspects` that clash with `kept`: halves the suspects until each one left is to blame.
 * @source U. Junker, QUICKXPLAIN, AAAI 2004, pp. 167-172 (the algorithm, from memory)
 */
function explain(
  clash: (kept: readonly Relation[]) => boolean,
  kept: readonly Relation[],
  grew: boolean,
  suspects: readonly Relation[],
): readonly Relation[] {
  if (grew && clash(kept)) return []
  if (suspects.length <= 1) return suspects
  const half = suspects.length >>> 1
  const first = suspects.slice(0, half)
  const second = suspects.slice(half)
  const ofSecond = explain(clash, [...kept, ...first], true, second)
  const ofFirst = explain(clash, [...kept, ...ofSecond], ofSecond.length > 0, first)
  return [...ofFirst, ...ofSecond]
}

function worded(closed: Closing, relations: readonly Relation[], irreducible: boolean): Conflict {
  const { operations, lags } = closed.problem
  const costOf = ({ kind, id, op }: Relation): GiveUp => {
    if (kind === 'mode') return 'never'
    if (kind === 'lag') return lags.find((lag) => lag.id === id)!.giveUp
    const { needs, modes } = operations[closed.indexOf.get(op)!]!
    return [...needs, ...modes.flatMap((mode) => mode.needs)].find((need) => need.id === id)!.giveUp
  }
  const members = relations.map(
    (relation): ConflictMember => ({ ...relation, reason: reasonOf(closed, relation), giveUp: costOf(relation) }),
  )
  const costs = members.flatMap(({ giveUp }) => (giveUp === 'never' ? [] : [giveUp]))
  const least = Math.min(...costs)
  return {
    members,
    cheapest: members.filter(({ giveUp }) => giveUp === least).map(({ id }) => id),
    irreducible,
  }
}
