// A closed problem as the search for a crew wants it: for every operation its ways (a mode and a team), what has to wait for
// what, and the resources that are shared.
import { hasBit } from '../../bitSet.ts'
import type { Closing } from '../../closing.ts'
import type { Need } from '../../model/problem.ts'
import { lagConstraints } from '../../relations/lagConstraints.ts'
import { isLifted } from '../../relations/relationsIn.ts'
import { teamsFor } from '../../relations/teams.ts'
import { aspectsOf, toolsName } from '../aspects.ts'
import { type Instance, instanceOf, type MaskedNeed } from '../instance.ts'

/** A mode done by certain people. Names are numbers; −1 asks for nothing. */
export interface Way {
  readonly op: number
  /** Place of the mode among those of the operation. */
  readonly place: number
  readonly team: readonly number[]
  readonly hazard: number
  readonly workpiece: number
  readonly attitude: number
  readonly station: number
  readonly tools: number
  /** Pairs of machine and number. */
  readonly machines: readonly (readonly [machine: number, wanted: number])[]
  readonly needs: readonly CrewNeed[]
  /** The same as the closing left them, for asking what may start as if one after another. */
  readonly masks: readonly MaskedNeed[]
}

export type CrewNeed = readonly { readonly done: readonly number[]; readonly notDone: readonly number[] }[]

/** start(later) ≥ start(earlier) + least. */
export interface Arc {
  readonly earlier: number
  readonly later: number
  readonly least: number
}

/** What cannot be in more hands than there are, whoever is chosen: a machine, the people, the holders of a skill. */
export interface Resource {
  readonly capacity: number
  /** By operation: the least that any of its ways takes. */
  readonly wanted: Int32Array
}

export interface Workshop {
  readonly closing: Closing
  /** The order of starts as if one after another: for asking what may start next. */
  readonly instance: Instance
  readonly size: number
  readonly durations: Int32Array
  readonly ways: readonly (readonly Way[])[]
  /** Needs that arcs cannot say. */
  readonly needs: readonly (readonly CrewNeed[])[]
  readonly arcs: readonly Arc[]
  /** Whether an arc ties an operation to one that may start after it. */
  readonly hasTies: boolean
  readonly people: number
  readonly machines: readonly number[]
  readonly resources: readonly Resource[]
  /** Whether any change of set-up can ever be asked for. */
  readonly hasChanges: boolean
  readonly turns: readonly { readonly s: number; readonly hazard: number }[]
  readonly start: {
    readonly attitudes: Int32Array
    readonly workpiece: number
    readonly station: number
    readonly tools: number
  }
  readonly change_s: { readonly workpiece: number; readonly station: number; readonly tools: number }
}

/** Gives each name a number, in the order in which they are met. */
class Names {
  readonly #numbers = new Map<string, number>()
  of(name: string | undefined): number {
    if (name === undefined) return -1
    const known = this.#numbers.get(name)
    if (known !== undefined) return known
    this.#numbers.set(name, this.#numbers.size)
    return this.#numbers.size - 1
  }
  list(): string[] {
    return [...this.#numbers.keys()]
  }
}

/** The problem has to be valid and its closing without contradiction. */
export function workshopOf(closing: Closing, late: () => boolean = () => false): Workshop {
  const { problem, indexOf } = closing
  const { crew = [], changes, start } = problem
  const durations = Int32Array.from(problem.operations, ({ duration_s }) => duration_s.usual)
  const instance = instanceOf(closing, late)
  const machineNames = Object.keys(problem.machines ?? {})
  const numbered = (need: Need): CrewNeed =>
    need.anyOf.map(({ done, notDone }) => ({
      done: done.map((id) => indexOf.get(id)!),
      notDone: notDone.map((id) => indexOf.get(id)!),
    }))

  const [workpieces, attitudes, stations, tools] = [new Names(), new Names(), new Names(), new Names()]
  for (const workpiece of Object.keys(start.attitudes)) workpieces.of(workpiece)
  const ways = problem.operations.map((operation, op) =>
    closing.modes[op]!.flatMap(({ place }, at) => {
      const mode = operation.modes[place]!
      const { setup } = mode
      const workpiece = workpieces.of(setup.workpiece === 'any' ? undefined : setup.workpiece)
      const asks = {
        op,
        place,
        hazard: mode.hazard ?? 0,
        workpiece,
        attitude: workpiece < 0 || setup.attitude === 'any' ? -1 : attitudes.of(setup.attitude),
        station: stations.of(setup.station === 'any' ? undefined : setup.station),
        tools: tools.of(setup.tools === 'any' ? undefined : toolsName(setup.tools)),
        machines: Object.entries(mode.machines ?? {}).map(
          ([machine, wanted]) => [machineNames.indexOf(machine), wanted] as const,
        ),
        needs: mode.needs.map(numbered),
        masks: instance.modes[instance.modesOf[op]![at]!]!.needs,
      }
      if (isLifted(mode)) return [{ ...asks, team: [], machines: [] }]
      return teamsFor(problem, mode).map((team): Way => ({ ...asks, team: team.map((person) => crew.indexOf(person)) }))
    }),
  )

  const arcs: Arc[] = lagConstraints(problem, indexOf).flatMap(({ later, earlier, least_s }) =>
    later === earlier ? [] : [{ later, earlier, least: least_s }],
  )
  const needs = problem.operations.map((operation, op) =>
    operation.needs.flatMap((told) => {
      const need = numbered(told)
      if (need.length > 1) return [need]
      for (const { done, notDone } of need) {
        for (const earlier of done) arcs.push({ earlier, later: op, least: durations[earlier]! })
        for (const later of notDone) arcs.push({ earlier: op, later, least: 0 })
      }
      return []
    }),
  )
  for (const [later, list] of instance.rightBefore.entries()) {
    for (const earlier of list) arcs.push({ earlier, later, least: 0 })
  }

  const startAttitudes = new Int32Array(Math.max(1, workpieces.list().length)).fill(-1)
  workpieces.list().forEach((name, at) => {
    startAttitudes[at] = attitudes.of(Object.hasOwn(start.attitudes, name) ? start.attitudes[name] : undefined)
  })
  return {
    closing,
    instance,
    size: durations.length,
    durations,
    ways,
    needs,
    arcs: tightest(arcs),
    hasTies: arcs.some(({ earlier, later }) => !hasBit(closing.before[later]!, earlier)),
    people: crew.length,
    machines: machineNames.map((name) => problem.machines![name]!),
    resources: resourcesOf(closing, ways),
    hasChanges: aspectsOf(problem).aspects.length > 0,
    turns: workpieces
      .list()
      .map((name) => (Object.hasOwn(changes.turn, name) ? changes.turn[name]! : { s: 0, hazard: 0 })),
    start: {
      attitudes: startAttitudes,
      workpiece: workpieces.of(start.workpiece),
      station: stations.of(start.station),
      tools: tools.of(start.tools === undefined ? undefined : toolsName(start.tools)),
    },
    change_s: { workpiece: changes.workpiece_s, station: changes.station_s, tools: changes.tools_s },
  }
}

/** One arc for each pair. */
function tightest(arcs: readonly Arc[]): Arc[] {
  const known = new Map<string, Arc>()
  for (const arc of arcs) {
    const key = `${arc.earlier} ${arc.later}`
    const other = known.get(key)
    if (!other || other.least < arc.least) known.set(key, arc)
  }
  return [...known.values()]
}

function resourcesOf({ problem }: Closing, ways: readonly (readonly Way[])[]): Resource[] {
  const { crew = [], machines = {}, operations } = problem
  const least = (wanted: (way: Way) => number): Int32Array =>
    Int32Array.from(ways, (list) => (list.length === 0 ? 0 : Math.min(...list.map(wanted))))
  const skills = [...new Set(crew.flatMap((person) => person.skills))]
  return [
    ...Object.values(machines).map((capacity, machine) => ({
      capacity,
      wanted: least((way) => way.machines.find(([at]) => at === machine)?.[1] ?? 0),
    })),
    ...(crew.length > 0 ? [{ capacity: crew.length, wanted: least(({ team }) => team.length) }] : []),
    ...skills.map((skill) => {
      const holders = crew.filter((person) => person.skills.includes(skill)).length
      const asks = ({ op, place, team }: Way) =>
        team.length > 0 && operations[op]!.modes[place]!.skills?.includes(skill)
      return { capacity: holders, wanted: least((way) => (asks(way) ? 1 : 0)) }
    }),
  ].filter(({ wanted }) => wanted.some((count) => count > 0))
}
