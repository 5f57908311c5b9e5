// The rule of set-ups for a crew: what each step finds set up otherwise (docs/reference/contract.md, section 8).
import type { Mode, PlanningProblem } from '../model/problem.ts'
import { isLifted } from './relationsIn.ts'
import { printTools, type SetUpChange } from './setUpChanges.ts'

export interface ManyHands {
  readonly mode: Mode
  readonly people?: readonly string[]
}

interface Hands {
  readonly workpiece: string | undefined
  readonly station: string | undefined
  readonly tools: string | undefined
}

/** For each step, in the order of starts: the turn-over, made once, and the changes of each person at it. */
export function crewChanges({ changes, start }: PlanningProblem, sequence: readonly ManyHands[]): SetUpChange[][] {
  const attitudes = new Map(Object.entries(start.attitudes))
  const atStart: Hands = {
    workpiece: start.workpiece,
    station: start.station,
    tools: start.tools === undefined ? undefined : printTools(start.tools),
  }
  const handsOf = new Map<string, Hands>()
  return sequence.map(({ mode, people = [] }) => {
    const { workpiece, attitude, station, tools } = mode.setup
    const list: SetUpChange[] = []
    if (workpiece !== 'any' && attitude !== 'any') {
      const lies = attitudes.get(workpiece)
      if (lies !== undefined && lies !== attitude) {
        const turn = Object.hasOwn(changes.turn, workpiece) ? changes.turn[workpiece]! : { s: 0, hazard: 0 }
        list.push({ what: 'attitude', from: lies, to: attitude, s: turn.s, hazard: turn.hazard, workpiece })
      }
      attitudes.set(workpiece, attitude)
    }
    const asked = { workpiece, station, tools: tools === 'any' ? 'any' : printTools(tools) }
    const costs = { workpiece: changes.workpiece_s, station: changes.station_s, tools: changes.tools_s }
    for (const person of people) {
      const has = handsOf.get(person) ?? atStart
      for (const what of ['workpiece', 'station', 'tools'] as const) {
        const from = has[what]
        if (asked[what] === 'any' || from === undefined || from === asked[what]) continue
        list.push({ what, from, to: asked[what], s: costs[what], hazard: 0, person })
      }
      const takes = (what: keyof Hands) => (asked[what] === 'any' ? has[what] : asked[what])
      handsOf.set(person, { workpiece: takes('workpiece'), station: takes('station'), tools: takes('tools') })
    }
    return isLifted(mode) ? list.map((change) => ({ ...change, s: 0 })) : list
  })
}

/** Seconds of a step's turn-over, and of one person's own changes. */
export const turnSeconds = (changes: readonly SetUpChange[]): number =>
  changes.reduce((sum, { what, s }) => sum + (what === 'attitude' ? s : 0), 0)

export const ownSeconds = (changes: readonly SetUpChange[], person: string): number =>
  changes.reduce((sum, change) => sum + (change.person === person ? change.s : 0), 0)
