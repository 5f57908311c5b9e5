// Who of a crew can do an operation in a mode, and why nobody can (docs/reference/contract.md, section 8).
import { Problem } from '../../problem/problem.ts'
import type { Mode, Person, PlanningProblem } from '../model/problem.ts'

/** Whether operations may go on beside each other: several people, or something that goes on by itself. */
export const worksTogether = ({ crew, operations }: PlanningProblem): boolean =>
  crew !== undefined && (crew.length > 1 || operations.some(({ modes }) => modes.some(({ people }) => people === 0)))

/**
 * Some answers are worked out for one person only.
 * @throws PLANNING_ONE_PERSON where several work together
 */
export function assertOnePerson(problem: PlanningProblem, what: string): void {
  if (worksTogether(problem)) throw new Problem('PLANNING_ONE_PERSON', { what })
}

/** Every choice of so many people, in the order in which they stand. */
export function choicesOf<T>(people: readonly T[], wanted: number): T[][] {
  if (wanted === 0) return [[]]
  return people.flatMap((person, place) =>
    choicesOf(people.slice(place + 1), wanted - 1).map((others) => [person, ...others]),
  )
}

/** Whether these people have the skills that a mode asks for among them. */
export const haveSkills = (people: readonly Person[], { skills = [] }: Mode): boolean =>
  skills.every((skill) => people.some((person) => person.skills.includes(skill)))

/** The teams of a crew that can do an operation in a mode, machines aside. */
export const teamsFor = ({ crew = [] }: PlanningProblem, mode: Mode): Person[][] =>
  choicesOf(crew, mode.people).filter((team) => haveSkills(team, mode))

/**
 * Why a mode is not allowed, as what it asks for and what there is; null when it is allowed.
 */
export function whyShut(problem: PlanningProblem, mode: Mode): string | null {
  const { people, crew, machines = {} } = problem
  if (mode.people > people) return `${mode.people} people where there are ${people}`
  for (const [machine, wanted] of Object.entries(mode.machines ?? {})) {
    const there = Object.hasOwn(machines, machine) ? machines[machine]! : 0
    if (wanted > there) return `${wanted} of the machine '${machine}' where there are ${there}`
  }
  if (!crew) return null
  const unknown = (mode.skills ?? []).find((skill) => !crew.some(({ skills }) => skills.includes(skill)))
  if (unknown !== undefined) return `the skill '${unknown}', which nobody of the crew has`
  if (teamsFor(problem, mode).length > 0) return null
  return `the skills ${(mode.skills ?? []).map((skill) => `'${skill}'`).join(' and ')} among ${mode.people} of the crew`
}

export const isAllowed = (problem: PlanningProblem, mode: Mode): boolean => whyShut(problem, mode) === null
