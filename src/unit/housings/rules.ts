// Rules written by hand for a housing, as needs of the same steps, so that derived and true orders can be compared exactly.
import { close } from '../../planning/close.ts'
import { countSequences } from '../../planning/countSequences.ts'
import type { Need, PlanningProblem } from '../../planning/model/problem.ts'

export interface Rule {
  readonly id: string
  readonly op: string
  readonly any_of: readonly { readonly done?: readonly string[]; readonly not_done?: readonly string[] }[]
  readonly strength: 'must' | 'wise'
  readonly why: string
}

export interface RulesFile {
  readonly operations: readonly { readonly id: string }[]
  readonly rules: readonly Rule[]
  readonly feasible: readonly { readonly id: string; readonly order: readonly string[] }[]
  readonly failing: readonly {
    readonly id: string
    readonly at: string
    readonly breaks: readonly string[]
    readonly order: readonly string[]
  }[]
  readonly results: { readonly feasible_orders_must: string }
}

/** The name of a step in the unit file for the name of an operation in the rules. */
export type Names = Readonly<Record<string, string>>

export const stepName = (id: string, names: Names): string => names[id] ?? id.replaceAll('-', ' ')

export const needOf = (rule: Rule, names: Names): Need => ({
  id: rule.id,
  anyOf: rule.any_of.map((each) => ({
    done: (each.done ?? []).map((id) => stepName(id, names)),
    notDone: (each.not_done ?? []).map((id) => stepName(id, names)),
  })),
  reason: { code: 'RULE', says: rule.why, facts: {}, origin: 'author', standing: 'told' },
  giveUp: 'never',
})

export const withNeeds = (
  problem: PlanningProblem,
  added: readonly (readonly [step: string, need: Need])[],
): PlanningProblem => ({
  ...problem,
  operations: problem.operations.map((operation) => ({
    ...operation,
    needs: [...operation.needs, ...added.filter(([step]) => step === operation.id).map(([, need]) => need)],
  })),
})

/** The same steps with no needs of their own: only the rules. */
export const bare = (problem: PlanningProblem): PlanningProblem => ({
  ...problem,
  lags: [],
  operations: problem.operations.map((operation) => ({
    ...operation,
    needs: [],
    modes: operation.modes.slice(0, 1).map((mode) => ({ ...mode, needs: [] })),
  })),
})

export interface Comparison {
  readonly derived: string
  readonly truth: string
  /** Orders that both allow. */
  readonly both: string
  /** Must rules that the derived needs do not bring. */
  readonly notDerived: readonly string[]
}

export function compare(problem: PlanningProblem, file: RulesFile, names: Names): Comparison {
  const must = file.rules.filter((rule) => rule.strength === 'must')
  const added = must.map((rule) => [stepName(rule.op, names), needOf(rule, names)] as const)
  const derived = countSequences(problem)
  return {
    derived,
    truth: countSequences(withNeeds(bare(problem), added)),
    both: countSequences(withNeeds(problem, added)),
    notDerived: must
      .filter((_, index) => countSequences(withNeeds(problem, [added[index] as (typeof added)[number]])) !== derived)
      .map((rule) => rule.id),
  }
}

export interface Breach {
  readonly step: string
  readonly says: readonly string[]
  /** The steps that the refusing needs speak of. */
  readonly about: readonly string[]
}

/** The first step of an order that the closed needs refuse, with the sentences of what refuses it. */
export function firstBreach(problem: PlanningProblem, order: readonly string[], names: Names): Breach | undefined {
  const closed = close(problem).problem
  const done = new Set<string>()
  for (const step of order.map((id) => stepName(id, names))) {
    const operation = closed.operations.find((each) => each.id === step)
    if (!operation) return { step, says: ['There is no such step.'], about: [] }
    const holds = (need: Need) =>
      need.anyOf.some((each) => each.done.every((id) => done.has(id)) && !each.notDone.some((id) => done.has(id)))
    const broken = operation.needs.filter((need) => !holds(need))
    const open = operation.modes.filter((mode) => mode.needs.every(holds))
    if (broken.length || open.length === 0) {
      const inModes = open.length ? [] : operation.modes.flatMap((mode) => mode.needs.filter((need) => !holds(need)))
      const refusing = [...broken, ...inModes]
      return {
        step,
        says: refusing.map((need) => need.reason.says),
        about: refusing.flatMap((need) => need.anyOf.flatMap((each) => [...each.done, ...each.notDone])),
      }
    }
    done.add(step)
  }
  return undefined
}
