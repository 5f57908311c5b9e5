// Contract, section 7: what a crew adds to the rules, written from that section and from nothing else.
import type { Mode, Need, Person, PlanningProblem } from '../model/problem.ts'
import type { PlacedStep, Value } from '../model/sequence.ts'
import type { Breach } from './breach.ts'
import { type ResolvedStep, resolveStep } from './resolveStep.ts'

/** A crew of one with nothing that goes on by itself is the one person of section 3. */
export const isCrew = ({ crew, operations }: PlanningProblem): boolean =>
  crew !== undefined && (crew.length !== 1 || operations.some(({ modes }) => modes.some(({ people }) => people === 0)))

/** Whether these people have among them every skill that the mode names. */
const covers = (people: readonly Person[], mode: Mode): boolean =>
  (mode.skills ?? []).every((skill) => people.some(({ skills }) => skills.includes(skill)))

const teams = (people: readonly Person[], size: number): readonly (readonly Person[])[] => {
  if (size === 0) return [[]]
  if (people.length < size) return []
  const [first, ...rest] = people
  return [...teams(rest, size - 1).map((team) => [first!, ...team]), ...teams(rest, size)]
}

/** Whether somebody can do an operation in this mode: enough people with the skills, machines within their capacity. */
export function modeIsOpen({ crew, people, machines = {} }: PlanningProblem, mode: Mode): boolean {
  const enough = Object.entries(mode.machines ?? {}).every(([machine, wanted]) => wanted <= (machines[machine] ?? 0))
  if (!enough || mode.people > people) return false
  return crew === undefined || teams(crew, mode.people).some((team) => covers(team, mode))
}

interface CrewStep extends ResolvedStep {
  readonly step: PlacedStep
}

/** The changes that one step asks for: each person's own seconds, and the turn-over of the workpiece if there is one. */
interface StepChanges {
  readonly own: ReadonlyMap<string, number>
  readonly turn: { readonly s: number; readonly hazard: number } | null
  readonly count: number
}

interface Hands {
  workpiece: string | undefined
  station: string | undefined
  tools: readonly string[] | undefined
}

const sameSet = (some: readonly string[], others: readonly string[]): boolean =>
  some.every((item) => others.includes(item)) && others.every((item) => some.includes(item))

/** What every step finds set up otherwise: the attitude of a workpiece for all, the rest for each person. */
function changesOf({ changes, start }: PlanningProblem, list: readonly CrewStep[]): readonly StepChanges[] {
  const attitudes = new Map(Object.entries(start.attitudes))
  const handsOf = new Map<string, Hands>()
  return list.map(({ mode: { setup }, step }) => {
    const own = new Map<string, number>()
    let turn: StepChanges['turn'] = null
    let count = 0
    if (setup.workpiece !== 'any' && setup.attitude !== 'any') {
      const lies = attitudes.get(setup.workpiece)
      if (lies !== undefined && lies !== setup.attitude) {
        turn = Object.hasOwn(changes.turn, setup.workpiece) ? changes.turn[setup.workpiece]! : { s: 0, hazard: 0 }
        count += 1
      }
      attitudes.set(setup.workpiece, setup.attitude)
    }
    for (const person of step.people ?? []) {
      const { workpiece, station, tools } = handsOf.get(person) ?? {
        workpiece: start.workpiece,
        station: start.station,
        tools: start.tools,
      }
      const costs: number[] = []
      if (setup.workpiece !== 'any' && workpiece !== undefined && workpiece !== setup.workpiece) {
        costs.push(changes.workpiece_s)
      }
      if (setup.station !== 'any' && station !== undefined && station !== setup.station) costs.push(changes.station_s)
      if (setup.tools !== 'any' && tools !== undefined && !sameSet(tools, setup.tools)) costs.push(changes.tools_s)
      own.set(
        person,
        costs.reduce((sum, cost) => sum + cost, 0),
      )
      count += costs.length
      handsOf.set(person, {
        workpiece: setup.workpiece === 'any' ? workpiece : setup.workpiece,
        station: setup.station === 'any' ? station : setup.station,
        tools: setup.tools === 'any' ? tools : setup.tools,
      })
    }
    return { own, turn, count }
  })
}

/** The steps that name something that the problem has. */
const resolved = (problem: PlanningProblem, steps: readonly PlacedStep[]): readonly CrewStep[] =>
  steps.flatMap((step) => {
    const found = resolveStep(problem, step)
    return found ? [{ ...found, step }] : []
  })

/** Every breach of section 7 in a list of steps with whole seconds: who, when each is ready, workpieces, machines, needs. */
export function crewBreaches(problem: PlanningProblem, steps: readonly PlacedStep[]): Breach[] {
  const list = resolved(problem, steps)
  return [...team(problem, list), ...starts(problem, list), ...machines(problem, list), ...needs(list)]
}

function team({ crew = [] }: PlanningProblem, list: readonly CrewStep[]): Breach[] {
  return list.flatMap(({ step: { op, people = [] }, mode }): Breach[] => {
    const breach = (says: string): Breach[] => [{ kind: 'people', op, id: mode.id, says }]
    const stranger = people.find((id) => !crew.some((person) => person.id === id))
    if (stranger !== undefined) return breach(`'${op}' names '${stranger}', who is not of the crew.`)
    if (new Set(people).size !== people.length) return breach(`'${op}' names somebody twice.`)
    if (people.length !== mode.people) {
      return breach(`'${op}' in mode '${mode.id}' wants ${mode.people} people; ${people.length} are at it.`)
    }
    const at = crew.filter(({ id }) => people.includes(id))
    const lacking = (mode.skills ?? []).filter((skill) => !at.some(({ skills }) => skills.includes(skill)))
    if (lacking.length === 0) return []
    return breach(`'${op}' in mode '${mode.id}' asks for ${lacking.join(', ')}; nobody of those at it has that.`)
  })
}

function starts(problem: PlanningProblem, list: readonly CrewStep[]): Breach[] {
  const breaches: Breach[] = []
  const changes = changesOf(problem, list)
  list.forEach(({ operation, mode, step: { op, start_s, end_s, people = [] } }, place) => {
    const { usual } = operation.duration_s
    if (end_s - start_s !== usual) {
      const says = `'${op}' takes ${end_s - start_s} s here and ${usual} s in the problem.`
      breaches.push({ kind: 'duration', op, says })
    }
    const before = list.slice(0, place)
    const late = (ready_s: number, says: string) => {
      if (start_s < ready_s) breaches.push({ kind: 'too early', op, says: `'${op}' starts at ${start_s} s; ${says}` })
    }
    late(0, 'the work begins at 0 s.')
    const last = before.at(-1)
    if (last) late(last.step.start_s, `it is listed after '${last.step.op}', which starts at ${last.step.start_s} s.`)
    const { own, turn } = changes[place]!
    for (const person of people) {
      const free = Math.max(
        0,
        ...before.filter(({ step }) => step.people?.includes(person)).map(({ step }) => step.end_s),
      )
      const ready_s = free + (own.get(person) ?? 0) + (turn?.s ?? 0)
      late(ready_s, `${person} is not ready for it before ${ready_s} s.`)
    }
    if (!turn) return
    for (const { step, mode: other } of before) {
      if (other.setup.workpiece !== mode.setup.workpiece) continue
      const ready_s = step.end_s + turn.s
      late(ready_s, `'${mode.setup.workpiece}' is turned over for it and not free of '${step.op}' before ${ready_s} s.`)
    }
  })
  return breaches
}

function machines(problem: PlanningProblem, list: readonly CrewStep[]): Breach[] {
  return Object.entries(problem.machines ?? {}).flatMap(([machine, there]) => {
    const wants = ({ mode }: CrewStep): number => mode.machines?.[machine] ?? 0
    return list.flatMap((one): Breach[] => {
      const { op, start_s, end_s } = one.step
      if (wants(one) === 0 || end_s <= start_s) return []
      const wanted = list
        .filter(({ step }) => step.start_s <= start_s && start_s < step.end_s)
        .reduce((sum, other) => sum + wants(other), 0)
      if (wanted <= there) return []
      const says = `When '${op}' starts at ${start_s} s, ${wanted} of '${machine}' are wanted; there are ${there}.`
      return [{ kind: 'machine', op, id: machine, says }]
    })
  })
}

function needs(list: readonly CrewStep[]): Breach[] {
  return list.flatMap(({ operation, mode, step: { op, start_s } }, place) => {
    const before = list.slice(0, place)
    const ended = (id: string) => before.some(({ step }) => step.op === id && step.end_s <= start_s)
    const started = (id: string) => before.some(({ step }) => step.op === id)
    const holds = ({ anyOf }: Need) => anyOf.some(({ done, notDone }) => done.every(ended) && !notDone.some(started))
    return [...operation.needs, ...mode.needs]
      .filter((need) => !holds(need))
      .map(
        ({ id, reason }): Breach => ({
          kind: 'need',
          op,
          id,
          says: `'${op}' cannot start here ('${id}'): ${reason.says}`,
        }),
      )
  })
}

/** The value of a crew's list: hazards of modes and turn-overs, the latest end, everybody's changes and the turn-overs. */
export function crewValue(problem: PlanningProblem, steps: readonly PlacedStep[]): Value {
  const list = resolved(problem, steps)
  const changes = changesOf(problem, list)
  return [
    list.reduce((sum, { mode }) => sum + (mode.hazard ?? 0), 0) +
      changes.reduce((sum, { turn }) => sum + (turn?.hazard ?? 0), 0),
    Math.max(0, ...steps.map(({ end_s }) => end_s)),
    changes.reduce((sum, { count }) => sum + count, 0),
  ]
}
