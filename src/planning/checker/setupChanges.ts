// Contract, section 2: what it takes to set up for each mode of a sequence.
import type { PlanningProblem, Setup } from '../model/problem.ts'

/** What has to be done before one operation so that its mode finds everything as it asks. */
export interface SetupChange {
  readonly s: number
  readonly hazard: number
  readonly changes: number
}

const sameTools = (some: readonly string[], others: readonly string[]): boolean =>
  some.every((tool) => others.includes(tool)) && others.every((tool) => some.includes(tool))

/**
 * The changes of set-up before each of the set-ups, in their order. Naming what was unknown costs nothing; `any` asks
 * for nothing and leaves things as they are; an attitude without a workpiece is not read.
 */
export function setupChanges(problem: PlanningProblem, setups: readonly Setup[]): readonly SetupChange[] {
  const { changes: costs, start } = problem
  const attitudes = new Map(Object.entries(start.attitudes))
  let { workpiece, station, tools } = start

  return setups.map((setup) => {
    let s = 0
    let hazard = 0
    let changes = 0

    if (setup.workpiece !== 'any') {
      if (setup.attitude !== 'any') {
        const lies = attitudes.get(setup.workpiece)
        if (lies !== undefined && lies !== setup.attitude) {
          const turn = Object.hasOwn(costs.turn, setup.workpiece) ? costs.turn[setup.workpiece] : undefined
          s += turn?.s ?? 0
          hazard += turn?.hazard ?? 0
          changes += 1
        }
        attitudes.set(setup.workpiece, setup.attitude)
      }
      if (workpiece !== undefined && workpiece !== setup.workpiece) {
        s += costs.workpiece_s
        changes += 1
      }
      workpiece = setup.workpiece
    }

    if (setup.station !== 'any') {
      if (station !== undefined && station !== setup.station) {
        s += costs.station_s
        changes += 1
      }
      station = setup.station
    }

    if (setup.tools !== 'any') {
      if (tools !== undefined && !sameTools(tools, setup.tools)) {
        s += costs.tools_s
        changes += 1
      }
      tools = setup.tools
    }

    return { s, hazard, changes }
  })
}
