// Several people at one job: who they are, and what there is one of that they wait for.

import type { Mode, Need, Operation, OpId, Person, PlanningProblem } from '../../planning/model/problem.ts'
import type { Unit } from '../model/unit.ts'
import { withSkills } from './hands.ts'

/** Stations of which a shop has one: who wants it while another is at it waits. */
const ONE_OF_EACH = ['press', 'oven', 'cold box']

/**
 * The problem for people who work beside each other. One person changes nothing but that he is asked for the skills that steps want; a number of
 * people without names changes nothing: then one person works, who may call the others to hand.
 *
 * There is one of each station but the bench. All may work at the housing at once; at a smaller piece there is room for one, and what lies at
 * another station cannot be worked at on the bench. What must be away when a step starts stays away until that step has ended. What soaks or cools goes on by its clock and asks for no hands: the oven is taken only
 * while it is loaded, for it holds more than one part.
 *
 * @param crew one to four people
 */
export function withCrew(
  problem: PlanningProblem,
  { crew, unit }: { crew: readonly Person[] | undefined; unit: Unit },
): PlanningProblem {
  if (!crew) return problem
  const skilled = problem.operations.map((step) => withSkills(step, unit))
  if (crew.length < 2) {
    const asksForSkills = [...unit.hands.values()].some(({ skills }) => skills.length > 0)
    return asksForSkills ? { ...problem, operations: skilled, crew } : problem
  }
  const machines: Record<string, number> = {}
  const at = (mode: Mode): Mode => {
    const { station, workpiece } = mode.setup
    const taken: Record<string, number> = {}
    const isApart = ONE_OF_EACH.includes(station)
    if (isApart) taken[station] = machines[station] = 1
    if (workpiece !== 'any') {
      const room = workpiece === unit.housing ? crew.length : 1
      machines[roomAt(workpiece)] = room
      taken[roomAt(workpiece)] = isApart ? room : Math.min(room, Math.max(1, mode.people))
    }
    return Object.keys(taken).length > 0 ? { ...mode, machines: taken } : mode
  }
  const operations = skilled.map((operation) => ({ ...operation, modes: operation.modes.map(at) }))
  return { ...problem, operations: awayThroughout(operations), people: crew.length, crew, machines }
}

/**
 * A need is judged when its step starts; of one person that is enough. Of several, nobody may begin to fit what bars a step while that step
 * goes on: the float is read without the seal until it has been read.
 */
function awayThroughout(operations: readonly Operation[]): readonly Operation[] {
  const waits = new Map<OpId, Map<OpId, Need>>()
  for (const { id, needs, modes } of operations) {
    for (const need of [...needs, ...modes.flatMap((mode) => mode.needs)]) {
      for (const bar of new Set(need.anyOf.flatMap(({ notDone }) => notDone))) {
        const known = waits.get(bar) ?? new Map<OpId, Need>()
        const isCertain = needs.includes(need) && need.anyOf.length === 1
        if (bar !== id && (isCertain || !known.has(id))) known.set(id, notDuring(id, bar, need, isCertain))
        waits.set(bar, known)
      }
    }
  }
  return operations.map((operation) => ({
    ...operation,
    needs: [...operation.needs, ...(waits.get(operation.id)?.values() ?? [])],
  }))
}

const notDuring = (step: OpId, bar: OpId, { reason, giveUp }: Need, isCertain: boolean): Need => ({
  id: `${bar}: not during ${step}`,
  anyOf: [{ done: [step], notDone: [] }, ...(isCertain ? [] : [{ done: [], notDone: [step] }])],
  reason,
  giveUp,
})

const roomAt = (workpiece: string): string => `room at ${workpiece}`
