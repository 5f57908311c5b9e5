// Small units for tests: written as a file would be, derived, and tried with an order of steps.
import type { Need, PlanningProblem } from '../../../planning/model/problem.ts'
import { printProblem } from '../../../problem/problem.ts'
import { connectionsOf } from '../../connections/connectionsOf.ts'
import { contributionOf } from '../../connections/contributionOf.ts'
import { readUnit } from '../../file/readUnit.ts'
import type { Unit } from '../../model/unit.ts'
import { type Derivation, derive } from '../compile.ts'
import { contradictionsIn } from '../contradictions.ts'
import { questionsIn } from '../questions.ts'

export interface Small {
  readonly unit: Unit
  readonly derivation: Derivation
  /** What refuses the order, step by step: "step: sentence". Empty: it may be built so. */
  readonly refuses: (...order: readonly string[]) => readonly string[]
  /** The ways of a part that are left, by name. */
  readonly waysOf: (part: string) => readonly string[]
  readonly doubts: readonly string[]
  readonly contradictions: readonly string[]
  readonly questions: readonly string[]
}

/** Derives what stands under the heading that all small units share. */
export function small(body: string): Small {
  const head = 'matchmark: unit/1\nunit: small box\ninvented: true\nsizes: {in: mm, standing: seen}\nhousing: box\n'
  const { unit, faults } = readUnit(head + body, 'small.unit.yaml')
  if (!unit) throw new Error(faults.map(printProblem).join('\n'))
  const connections = connectionsOf(unit)
  if (connections.faults.length) throw new Error(connections.faults.map(printProblem).join('\n'))
  const derivation = derive(unit, contributionOf(connections, unit))
  const asked = connections.connections.flatMap(({ connection, kind, given }) => kind.asks(connection, given, unit))
  return {
    unit,
    derivation,
    refuses: (...order) => refusals(derivation.problem, order),
    waysOf: (part) => derivation.ways.flatMap((way) => (way.part === part && way.mode ? [way.id] : [])),
    doubts: derivation.doubts.map(({ says }) => says),
    contradictions: contradictionsIn(unit, derivation).map(({ message }) => message),
    questions: questionsIn(unit, derivation, [...asked, ...connections.questions]).map(({ asks }) => asks),
  }
}

function refusals({ operations }: PlanningProblem, order: readonly string[]): readonly string[] {
  const missing = operations.filter(({ id }) => !order.includes(id)).map(({ id }) => id)
  const unknown = order.filter((step) => !operations.some(({ id }) => id === step))
  if (missing.length || unknown.length) throw new Error(`not in the order: ${missing}; not in the unit: ${unknown}`)
  const done = new Set<string>()
  const broken = (needs: readonly Need[]) =>
    needs.filter(
      ({ anyOf }) =>
        !anyOf.some((each) => each.done.every((id) => done.has(id)) && !each.notDone.some((id) => done.has(id))),
    )
  return order.flatMap((step) => {
    const { needs, modes } = operations.find(({ id }) => id === step)!
    const inModes = modes.map((mode) => broken(mode.needs))
    // Where every way is barred, what bars the last of them speaks for all.
    const ofWays = inModes.some((each) => each.length === 0) ? [] : (inModes.at(-1) ?? [])
    const says = [...broken(needs), ...ofWays].map((need) => `${step}: ${need.reason.says}`)
    done.add(step)
    return [...new Set(says)]
  })
}
