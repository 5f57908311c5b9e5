// The plainest way to the best schedule of a crew: every order of starts, every mode and team, and for everything that went
// before whether it has ended by then; times by relaxation. Only for the smallest tests.
import { valueOfCrew } from '../judgeCrew.ts'
import type { Mode, Operation, PlanningProblem } from '../model/problem.ts'
import type { Value } from '../model/sequence.ts'
import { compareValues } from '../relations/compareValues.ts'
import { crewChanges, ownSeconds, turnSeconds } from '../relations/crewChanges.ts'
import { lagConstraints } from '../relations/lagConstraints.ts'
import { needHolds } from '../relations/needs.ts'
import { isAllowed, teamsFor } from '../relations/teams.ts'

interface Begun {
  readonly operation: Operation
  readonly mode: Mode
  readonly op: string
  readonly people: readonly string[]
  /** Places of what has ended before it starts. */
  readonly ended: ReadonlySet<number>
}

export interface ExhaustedCrew {
  readonly best: Value | null
  /** False when there was more to look at than `most`. */
  readonly complete: boolean
}

export function exhaustCrew(problem: PlanningProblem, most = 300_000): ExhaustedCrew {
  const { operations, machines = {} } = problem
  const indexOf = new Map(operations.map(({ id }, at) => [id, at]))
  const lags = lagConstraints(problem, indexOf)
  let best: Value | null = null
  let looked = 0
  const list: Begun[] = []
  const places = new Map<string, number>()

  /** The least times of what has begun so far; null when there are none. */
  const startsOf = (): number[] | null => {
    const changes = crewChanges(problem, list)
    const bounds: (readonly [earlier: number, later: number, least: number])[] = []
    const starts = list.map(() => 0)
    list.forEach(({ mode, people, ended }, place) => {
      const turn_s = turnSeconds(changes[place]!)
      const isTurned = changes[place]!.some(({ what }) => what === 'attitude')
      if (place > 0) bounds.push([place - 1, place, 0])
      for (const person of people) {
        const own_s = ownSeconds(changes[place]!, person) + turn_s
        starts[place] = Math.max(starts[place]!, own_s)
        list.slice(0, place).forEach((other, at) => {
          if (other.people.includes(person)) bounds.push([at, place, other.operation.duration_s.usual + own_s])
        })
      }
      list.slice(0, place).forEach((other, at) => {
        const { usual } = other.operation.duration_s
        if (ended.has(at)) bounds.push([at, place, usual])
        if (isTurned && other.mode.setup.workpiece === mode.setup.workpiece) bounds.push([at, place, usual + turn_s])
      })
    })
    for (const { earlier, later, least_s } of lags) {
      if (earlier === later && least_s > 0) return null
      const [from, to] = [places.get(operations[earlier]!.id), places.get(operations[later]!.id)]
      if (from !== undefined && to !== undefined) bounds.push([from, to, least_s])
    }
    for (let round = 0, moved = true; moved; round++) {
      if (round > list.length + 1) return null
      moved = false
      for (const [earlier, later, least] of bounds) {
        if (starts[earlier]! + least <= starts[later]!) continue
        starts[later] = starts[earlier]! + least
        moved = true
      }
    }
    return starts
  }

  const visit = (): void => {
    if (++looked > most) return
    const starts = startsOf()
    if (!starts) return
    const placed = list.map(({ op, mode, operation, people }, at) => ({
      op,
      mode: mode.id,
      people,
      start_s: starts[at]!,
      end_s: starts[at]! + operation.duration_s.usual,
    }))
    const value = valueOfCrew(placed, list, crewChanges(problem, list))
    // What has begun only costs more with what follows.
    if (best && compareValues(value, best) >= 0) return
    if (list.length === operations.length) {
      best = value
      return
    }
    for (const operation of operations) {
      if (!places.has(operation.id)) begin(operation)
    }
  }

  const begin = (operation: Operation): void => {
    const { id: op, needs, modes } = operation
    for (const mode of modes) {
      const all = [...needs, ...mode.needs]
      if (!isAllowed(problem, mode) || !all.every((need) => needHolds(need, (id) => places.has(id)))) continue
      // Only what a need asks for or a machine is shared with makes a difference by having ended.
      const matters = list.flatMap((other, at) => {
        const asked = all.some(({ anyOf }) => anyOf.some(({ done }) => done.includes(other.op)))
        const shared = Object.keys(mode.machines ?? {}).some((machine) => other.mode.machines?.[machine])
        return asked || shared ? [at] : []
      })
      for (const ended of subsetsOf(matters)) {
        const isDone = (id: string) => places.has(id) && ended.has(places.get(id)!)
        if (!all.every((need) => needHolds(need, isDone, (id) => places.has(id)))) continue
        if (operation.duration_s.usual > 0 && !hasRoom(mode, ended)) continue
        for (const team of teamsFor(problem, mode)) {
          places.set(op, list.length)
          list.push({ operation, mode, op, people: team.map(({ id }) => id), ended })
          visit()
          list.pop()
          places.delete(op)
        }
      }
    }
  }

  /** Whether the machines suffice for what has not ended, and for this mode. */
  const hasRoom = (mode: Mode, ended: ReadonlySet<number>): boolean =>
    Object.entries(mode.machines ?? {}).every(([machine, wanted]) => {
      const used = list.reduce((sum, other, at) => {
        const runs = !ended.has(at) && other.operation.duration_s.usual > 0
        return sum + (runs ? (other.mode.machines?.[machine] ?? 0) : 0)
      }, 0)
      return used + wanted <= machines[machine]!
    })

  visit()
  return { best, complete: looked <= most }
}

function subsetsOf(members: readonly number[]): ReadonlySet<number>[] {
  return members.reduce<ReadonlySet<number>[]>(
    (sets, member) => sets.flatMap((set) => [set, new Set([...set, member])]),
    [new Set()],
  )
}
