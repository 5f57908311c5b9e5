// Two housings described by another hand, with their true rules: the derived needs allow exactly the orders that the rules allow.
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { connectionsOf } from '../connections/connectionsOf.ts'
import { contributionOf } from '../connections/contributionOf.ts'
import { derive } from '../derive/compile.ts'
import { contradictionsIn } from '../derive/contradictions.ts'
import { readUnit } from '../file/readUnit.ts'
import { compare, firstBreach, type Names, type RulesFile, stepName } from './rules.ts'

const beside = (file: string) => readFileSync(fileURLToPath(new URL(file, import.meta.url)), 'utf8')

const NAMES: Record<string, Names> = {
  'tail-box': {
    'wheel-parked': 'wheel',
    'check-ring': 'wheel ring turns',
    'bearing-A': 'bearing A',
    'bearing-B': 'bearing B',
    'cover-A': 'cover A',
    'cap-B': 'cap B',
    'check-float': 'float',
    'check-backlash': 'backlash',
    fill: 'oil',
  },
  'yard-shunter': {
    'input-in': 'input shaft',
    'cluster-in': 'cluster',
    'washer-front': 'front thrust washer',
    'washer-rear': 'rear thrust washer',
    'check-cluster-float': 'cluster float',
    rollers: 'pilot rollers',
    retainer: 'bearing retainer',
    'tail-nut': 'ring nut',
    'bend-tab': 'tab',
    'check-backlash': 'backlash',
    'check-select': 'selecting',
    fill: 'oil',
  },
}

describe.each(Object.entries(NAMES))('%s', (name, names) => {
  const rules = parse(beside(`${name}.rules.yaml`)) as RulesFile
  const { unit, faults } = readUnit(beside(`${name}.unit.yaml`), `${name}.unit.yaml`)
  if (!unit) throw new Error(faults.map((fault) => fault.message).join('\n'))
  const connections = connectionsOf(unit)
  const derivation = derive(unit, contributionOf(connections, unit))
  const { problem } = derivation

  test('is read without a fault or a contradiction', () => {
    expect([...faults, ...connections.faults, ...contradictionsIn(unit, derivation)].map(String)).toEqual([])
  })

  test('has the steps of the rules and no others', () => {
    const steps = problem.operations.map((operation) => operation.id)
    expect(steps.toSorted()).toEqual(rules.operations.map(({ id }) => stepName(id, names)).toSorted())
  })

  test('every must rule follows from the derived needs, and they forbid no order that the rules allow', () => {
    const { derived, truth, both, notDerived } = compare(problem, rules, names)
    expect(truth).toBe(rules.results.feasible_orders_must)
    expect(notDerived).toEqual([])
    expect(both).toBe(truth)
    expect(derived).toBe(truth)
  })

  test.each(rules.feasible.map(({ id, order }) => [id, order] as const))('%s, a good order, passes', (_, order) => {
    expect(firstBreach(problem, order, names)).toBeUndefined()
  })

  test.each(rules.failing.map((each) => [each.id, each] as const))(
    '%s, a failing order, is refused at its step for its reason',
    (_, { order, at, breaks }) => {
      const breach = firstBreach(problem, order, names)
      expect(breach?.step).toBe(stepName(at, names))
      // For the reason told: the needs that refuse it speak of the steps that the broken rules speak of.
      const broken = rules.rules.filter(({ id }) => breaks.includes(id))
      const spokenOf = broken.flatMap(({ any_of }) =>
        any_of.flatMap((each) => [...(each.done ?? []), ...(each.not_done ?? [])]),
      )
      expect(spokenOf.map((id) => stepName(id, names)).some((step) => breach?.about.includes(step))).toBe(true)
    },
  )

  test('no more than 15 % of the needs were declared by hand', () => {
    const { all, byHand } = derivation.needs
    console.log(`${name}: ${all} needs, ${byHand} declared by hand`)
    expect(byHand / all).toBeLessThan(0.15)
  })
})
