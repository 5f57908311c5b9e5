// Small problems written by hand, for tests.
import type { Alternative, Lag, Mode, Need, Operation, PlanningProblem } from '../model/problem.ts'
import { because } from './randomProblem.ts'

export const need = (id: string, ...anyOf: Partial<Alternative>[]): Need => ({
  id,
  anyOf: anyOf.map(({ done = [], notDone = [] }) => ({ done, notDone })),
  reason: because(`Reason of ${id}.`),
  giveUp: 1,
})

export const mode = (setup: Partial<Mode['setup']> = {}, more: Partial<Mode> = {}): Mode => ({
  id: 'only',
  people: 1,
  needs: [],
  setup: { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any', ...setup },
  ...more,
})

export const operation = (id: string, needs: readonly Need[] = [], more: Partial<Operation> = {}): Operation => ({
  id,
  does: `Do ${id}`,
  duration_s: { low: 10, usual: 10, high: 10 },
  modes: [mode()],
  needs,
  ...more,
})

export const lag = (id: string, from: string, to: string, more: Partial<Lag>): Lag => {
  const event = (text: string) => {
    const [op, edge] = text.split(' ') as [string, 'start' | 'end']
    return { op, edge }
  }
  return { id, from: event(from), to: event(to), reason: because(`Reason of ${id}.`), giveUp: 1, ...more }
}

export const problemOf = (operations: readonly Operation[], more: Partial<PlanningProblem> = {}): PlanningProblem => ({
  schema: 'matchmark-planning/1',
  operations,
  lags: [],
  changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 0 },
  start: { attitudes: {} },
  people: 1,
  ...more,
})

/** Operations with plain needs: `chain('a<b', 'b<c')`. */
export function ordered(ids: readonly string[], ...pairs: readonly (readonly [string, string])[]): PlanningProblem {
  return problemOf(
    ids.map((id) =>
      operation(
        id,
        pairs.filter(([, after]) => after === id).map(([before]) => need(`${before}<${id}`, { done: [before] })),
      ),
    ),
  )
}
