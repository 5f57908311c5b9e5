// Planning problems that carry nothing but what a test or a published case is about.
import type { Alternative, Lag, Need, Operation, PlanningProblem, Reason } from '../model/problem.ts'

const bareReason = (says: string): Reason => ({ code: 'RULE', says, facts: {}, origin: 'author', standing: 'told' })

/** A need that is never given up and has only its id to say. */
export function bareNeed(id: string, anyOf: readonly Partial<Alternative>[]): Need {
  return {
    id,
    anyOf: anyOf.map(({ done = [], notDone = [] }) => ({ done, notDone })),
    reason: bareReason(`Rule ${id}.`),
    giveUp: 'never',
  }
}

/** A lag between two starts, likewise. */
export function bareLag(id: string, from: string, to: string, bounds: Pick<Lag, 'min_s' | 'max_s'>): Lag {
  return {
    id,
    from: { op: from, edge: 'start' },
    to: { op: to, edge: 'start' },
    ...bounds,
    reason: bareReason(`Lag ${id}.`),
    giveUp: 'never',
  }
}

/** An operation of so many seconds in one mode that asks for nothing. */
export function bareOperation(id: string, usual: number, fields: Partial<Operation> = {}): Operation {
  const setup = { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' } as const
  const modes = [{ id: 'plain', setup, people: 1, needs: [] }]
  return { id, does: `Do ${id}`, duration_s: { low: usual, usual, high: usual }, modes, needs: [], ...fields }
}

/** A problem for one person without lags and with free changes, unless told otherwise. */
export function bareProblem(operations: readonly Operation[], fields: Partial<PlanningProblem> = {}): PlanningProblem {
  return {
    schema: 'matchmark-planning/1',
    operations,
    lags: [],
    changes: { turn: {}, station_s: 0, workpiece_s: 0, tools_s: 0 },
    start: { attitudes: {} },
    people: 1,
    ...fields,
  }
}

/** Operations of one second, where each pair says what comes before what. */
export function precedenceProblem(
  ids: readonly string[],
  pairs: readonly (readonly [before: string, after: string])[],
): PlanningProblem {
  return bareProblem(
    ids.map((id) => {
      const needs = pairs
        .filter(([, after]) => after === id)
        .map(([before]) => bareNeed(`${before} before ${id}`, [{ done: [before] }]))
      return bareOperation(id, 1, { needs })
    }),
  )
}
