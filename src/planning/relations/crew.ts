// The rule of a crew: who is at a step, when each is ready for it, workpieces that are turned, machines that are shared.
import type { PlanningProblem } from '../model/problem.ts'
import { crewChanges, ownSeconds, turnSeconds } from './crewChanges.ts'
import { type Breach, type JudgedStep, listing, naming, type Rule } from './rule.ts'
import { haveSkills, whyShut } from './teams.ts'

type TimedStep = JudgedStep & { readonly start_s: number; readonly end_s: number; readonly people: readonly string[] }

/** Steps of a crew have times; without them the rule has nothing to judge but the modes. */
const isTimed = (step: JudgedStep): step is TimedStep =>
  step.start_s !== undefined && step.end_s !== undefined && step.people !== undefined

export const crew: Rule = {
  name: 'crew',
  hard: true,
  breaches: (problem, sequence) => {
    const name = naming(problem)
    const shut = sequence.flatMap(({ op, mode }): Breach[] => {
      const why = whyShut(problem, mode)
      return why === null ? [] : [breach(op, `${name(op)} in the way '${mode.id}' wants ${why}.`, { mode: mode.id })]
    })
    if (!sequence.every(isTimed)) return shut
    return [...shut, ...teams(problem, sequence), ...starts(problem, sequence), ...machines(problem, sequence)]
  },
}

const breach = (op: string, says: string, facts: Breach['facts']): Breach => ({ rule: 'crew', id: op, op, says, facts })

function teams(problem: PlanningProblem, sequence: readonly TimedStep[]): Breach[] {
  const name = naming(problem)
  const { crew: all = [] } = problem
  return sequence.flatMap(({ op, mode, people }): Breach[] => {
    const tell = (says: string) => [breach(op, says, { mode: mode.id, people })]
    const strangers = people.filter((id) => !all.some((person) => person.id === id))
    if (strangers.length > 0) return tell(`${name(op)} names ${listing(strangers)}, who are not of the crew.`)
    const team = all.filter(({ id }) => people.includes(id))
    if (team.length !== mode.people || people.length !== mode.people) {
      return tell(`${name(op)} in the way '${mode.id}' wants ${mode.people} people; there are ${team.length} at it.`)
    }
    if (haveSkills(team, mode)) return []
    return tell(`${name(op)} asks for ${listing(mode.skills ?? [])}, which ${listing(people)} lack among them.`)
  })
}

function starts(problem: PlanningProblem, sequence: readonly TimedStep[]): Breach[] {
  const name = naming(problem)
  const durations = new Map(problem.operations.map(({ id, duration_s }) => [id, duration_s.usual]))
  const changes = crewChanges(problem, sequence)
  return sequence.flatMap(({ op, mode, start_s, end_s, people }, place) => {
    const found: Breach[] = []
    const notBefore = (earliest_s: number, why: string) => {
      if (start_s >= earliest_s) return
      found.push(breach(op, `${name(op)} starts at ${start_s} s, but ${why} ${earliest_s} s.`, { start_s, earliest_s }))
    }
    const duration_s = durations.get(op)!
    if (end_s - start_s !== duration_s) {
      const says = `${name(op)} takes ${duration_s} s, not ${end_s - start_s} s.`
      found.push(breach(op, says, { duration_s, told_s: end_s - start_s }))
    }
    const before = sequence.slice(0, place)
    notBefore(0, 'the work begins at')
    const last = before.at(-1)
    if (last) notBefore(last.start_s, `stands after ${name(last.op)}, which starts at`)
    const turn_s = turnSeconds(changes[place]!)
    for (const person of people) {
      const free_s = before.reduce(
        (latest, step) => (step.people.includes(person) ? Math.max(latest, step.end_s) : latest),
        0,
      )
      notBefore(free_s + ownSeconds(changes[place]!, person) + turn_s, `${person} is free and set up at`)
    }
    if (!changes[place]!.some(({ what }) => what === 'attitude')) return found
    for (const step of before) {
      if (step.mode.setup.workpiece !== mode.setup.workpiece) continue
      notBefore(step.end_s + turn_s, `after ${name(step.op)} the ${mode.setup.workpiece} is turned over at`)
    }
    return found
  })
}

function machines(problem: PlanningProblem, sequence: readonly TimedStep[]): Breach[] {
  const name = naming(problem)
  return Object.entries(problem.machines ?? {}).flatMap(([machine, there]) => {
    const users = sequence.filter(({ mode, start_s, end_s }) => mode.machines?.[machine] && end_s > start_s)
    return users.flatMap(({ op, start_s }): Breach[] => {
      const atOnce = users.filter((other) => other.start_s <= start_s && start_s < other.end_s)
      const wanted = atOnce.reduce((sum, { mode }) => sum + mode.machines![machine]!, 0)
      if (wanted <= there) return []
      const says = `When ${name(op)} starts, ${wanted} of the machine '${machine}' are wanted; there are ${there}.`
      return [breach(op, says, { machine, wanted, there, with: atOnce.map((step) => step.op) })]
    })
  })
}
