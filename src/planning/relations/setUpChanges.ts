// The rule of set-ups: what each step of a sequence finds set up otherwise, and what changing it costs.
import type { Mode, PlanningProblem, StartState } from '../model/problem.ts'
import { isLifted } from './relationsIn.ts'

export interface Choice {
  readonly op: string
  readonly mode: Mode
}

export interface SetUpChange {
  readonly what: 'attitude' | 'workpiece' | 'station' | 'tools'
  readonly from: string
  readonly to: string
  readonly s: number
  readonly hazard: number
  /** The workpiece that is turned over. */
  readonly workpiece?: string
}

const print = (tools: readonly string[]): string => [...new Set(tools)].sort().join(', ') || 'none'

/** For each step, the changes of set-up that come before it (docs/reference/contract.md, section 2). */
export function setUpChanges(problem: PlanningProblem, sequence: readonly Choice[]): SetUpChange[][] {
  const { changes, start } = problem
  const attitudes = new Map(Object.entries(start.attitudes))
  let atHand = start.workpiece
  let station = start.station
  let tools = start.tools === undefined ? undefined : print(start.tools)
  return sequence.map(({ mode }) => {
    const { setup } = mode
    const list: SetUpChange[] = []
    if (setup.workpiece !== 'any') {
      const { workpiece } = setup
      if (setup.attitude !== 'any') {
        const lies = attitudes.get(workpiece)
        if (lies !== undefined && lies !== setup.attitude) {
          const turn = Object.hasOwn(changes.turn, workpiece) ? changes.turn[workpiece]! : { s: 0, hazard: 0 }
          list.push({ what: 'attitude', from: lies, to: setup.attitude, s: turn.s, hazard: turn.hazard, workpiece })
        }
        attitudes.set(workpiece, setup.attitude)
      }
      if (atHand !== undefined && atHand !== workpiece) {
        list.push({ what: 'workpiece', from: atHand, to: workpiece, s: changes.workpiece_s, hazard: 0 })
      }
      atHand = workpiece
    }
    if (setup.station !== 'any') {
      if (station !== undefined && station !== setup.station) {
        list.push({ what: 'station', from: station, to: setup.station, s: changes.station_s, hazard: 0 })
      }
      station = setup.station
    }
    if (setup.tools !== 'any') {
      const wanted = print(setup.tools)
      if (tools !== undefined && tools !== wanted) {
        list.push({ what: 'tools', from: tools, to: wanted, s: changes.tools_s, hazard: 0 })
      }
      tools = wanted
    }
    return isLifted(mode) ? list.map((change) => ({ ...change, s: 0 })) : list
  })
}

/** How the set-up stands after some steps. */
export function setUpAfter({ start }: PlanningProblem, sequence: readonly Choice[]): StartState {
  let { attitudes, workpiece, station, tools } = start
  for (const {
    mode: { setup },
  } of sequence) {
    if (setup.workpiece !== 'any') {
      workpiece = setup.workpiece
      if (setup.attitude !== 'any') attitudes = { ...attitudes, [workpiece]: setup.attitude }
    }
    if (setup.station !== 'any') station = setup.station
    if (setup.tools !== 'any') tools = setup.tools
  }
  return {
    attitudes,
    ...(workpiece !== undefined && { workpiece }),
    ...(station !== undefined && { station }),
    ...(tools !== undefined && { tools }),
  }
}
