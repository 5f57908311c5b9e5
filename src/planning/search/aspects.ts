// Set-ups as independent aspects: the station, the tools in hand, the workpiece at hand, and the attitude of each workpiece.
// Each aspect that a mode names and that stands otherwise costs one change; an unknown aspect costs nothing.
import type { PlanningProblem, Setup } from '../model/problem.ts'

export interface Aspect {
  readonly name: string
  readonly seconds: number
  readonly hazard: number
  /** The value before the first operation; −1 while unknown. */
  readonly start: number
  readonly values: readonly string[]
}

/** What a mode names: for each aspect the value, or −1 where it asks for nothing. */
export type Demand = Int32Array

export interface Aspects {
  readonly aspects: readonly Aspect[]
  readonly demandOf: (setup: Setup) => Demand
}

/** The name of a set of tools: their order does not matter. */
export const toolsName = (tools: readonly string[]): string => JSON.stringify([...new Set(tools)].sort())

const named = (setup: Setup): (readonly [aspect: string, value: string])[] => {
  const list: (readonly [string, string])[] = []
  if (setup.workpiece !== 'any') {
    list.push(['at hand', setup.workpiece])
    if (setup.attitude !== 'any') list.push([`attitude ${setup.workpiece}`, setup.attitude])
  }
  if (setup.station !== 'any') list.push(['station', setup.station])
  if (setup.tools !== 'any') list.push(['tools', toolsName(setup.tools)])
  return list
}

/** The aspects that can ever cost a change; those that only ever take one value are left out. */
export function aspectsOf(problem: PlanningProblem): Aspects {
  const { changes, start } = problem
  const values = new Map<string, string[]>()
  const enter = (aspect: string, value: string) => {
    const list = values.get(aspect) ?? []
    if (!list.includes(value)) list.push(value)
    values.set(aspect, list)
  }
  const begin = new Map<string, string>()
  for (const [workpiece, attitude] of Object.entries(start.attitudes)) begin.set(`attitude ${workpiece}`, attitude)
  if (start.station !== undefined) begin.set('station', start.station)
  if (start.workpiece !== undefined) begin.set('at hand', start.workpiece)
  if (start.tools !== undefined) begin.set('tools', toolsName(start.tools))
  for (const [aspect, value] of begin) enter(aspect, value)
  for (const { modes } of problem.operations)
    for (const mode of modes) for (const [aspect, value] of named(mode.setup)) enter(aspect, value)

  const cost = (aspect: string) => {
    if (aspect === 'station') return { seconds: changes.station_s, hazard: 0 }
    if (aspect === 'at hand') return { seconds: changes.workpiece_s, hazard: 0 }
    if (aspect === 'tools') return { seconds: changes.tools_s, hazard: 0 }
    const workpiece = aspect.slice('attitude '.length)
    const turn = Object.hasOwn(changes.turn, workpiece) ? changes.turn[workpiece]! : { s: 0, hazard: 0 }
    return { seconds: turn.s, hazard: turn.hazard }
  }
  const aspects = [...values]
    .filter(([, list]) => list.length > 1)
    .map(([name, list]): Aspect => {
      const first = begin.get(name)
      return { name, values: list, start: first === undefined ? -1 : list.indexOf(first), ...cost(name) }
    })
  const place = new Map(aspects.map(({ name }, at) => [name, at]))
  return {
    aspects,
    demandOf: (setup) => {
      const demand = new Int32Array(aspects.length).fill(-1)
      for (const [aspect, value] of named(setup)) {
        const at = place.get(aspect)
        if (at !== undefined) demand[at] = aspects[at]!.values.indexOf(value)
      }
      return demand
    },
  }
}
