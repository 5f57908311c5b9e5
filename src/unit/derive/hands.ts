// What steps want of people, as their unit names it.
import type { Operation } from '../../planning/model/problem.ts'
import { Problem } from '../../problem/problem.ts'
import { nearest } from '../file/nearest.ts'
import type { Unit } from '../model/unit.ts'

/** As many people as the step that wants most: so many are taken to be there where nobody said. */
export const mostHands = ({ hands }: Unit): number => Math.max(1, ...[...hands.values()].map(({ people }) => people))

/** However it is done, a step wants these people. */
export function withHands(step: Operation, { hands }: Unit): Operation {
  const people = hands.get(step.id)?.people
  return people === undefined ? step : { ...step, modes: step.modes.map((mode) => ({ ...mode, people })) }
}

/** Skills count where people are named: without names nobody says who has them. */
export function withSkills(step: Operation, { hands }: Unit): Operation {
  const { skills = [] } = hands.get(step.id) ?? {}
  return skills.length === 0 ? step : { ...step, modes: step.modes.map((mode) => ({ ...mode, skills })) }
}

/** Hands for a step that is not there: NAME_NOT_KNOWN, each at its place. */
export const checkHands = ({ hands, dropped, file }: Unit, steps: ReadonlySet<string>): readonly Problem[] =>
  [...hands].flatMap(([step, { at }]) => {
    if (steps.has(step) || dropped.has(step)) return []
    const known = [...steps].slice(0, 12).join(', ')
    const facts = { key: 'hands', name: step, what: 'step', nearest: nearest(step, steps) ?? '', known }
    return [new Problem('NAME_NOT_KNOWN', facts, { file, line: at.line, column: at.column })]
  })
