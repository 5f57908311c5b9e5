// Which diameters the sequence rests on: those of a part are taken away, and the orders that are possible are compared.
import { close } from '../planning/close.ts'
import type { Need, PlanningProblem } from '../planning/model/problem.ts'
import { derive } from '../unit/derive/compile.ts'
import type { LineId, Part, PartId, Ring, Unit } from '../unit/model/unit.ts'
import type { WorkUp } from './workUp.ts'

export interface DecidingSizes {
  readonly part: PartId
  readonly line: LineId
  /** Steps that could stand elsewhere if nobody had measured these. */
  readonly steps: readonly string[]
}

/**
 * The parts whose diameters decide: without them some step has to wait for less. All others could be left unmeasured, for the sequence.
 * A part that is decided by what a person said ("passes", an order) is not among them.
 *
 * @example sizesThatDecide(work).map(({ part }) => part)   // ['shaft', 'wheel', 'cover A']
 */
export function sizesThatDecide({ unit, joints, derivation, job }: WorkUp): readonly DecidingSizes[] {
  const asTold = orders(derivation.problem)
  return [...unit.parts.values()].flatMap((part) =>
    [...part.rings.keys()].flatMap((line) => {
      if (![...(part.rings.get(line) ?? []), ...(part.passing.get(line) ?? [])].some(isMeasured)) return []
      const without = orders(derive(unmeasured(unit, part, line), joints, job?.plant.people ?? 1).problem)
      const steps = [...asTold].filter(([step, needs]) => without.get(step) !== needs).map(([step]) => step)
      return steps.length > 0 ? [{ part: part.id, line, steps }] : []
    }),
  )
}

/** Step → what it has to wait for in the closed needs, without the reasons: equal texts allow the same orders. */
function orders(problem: PlanningProblem): ReadonlyMap<string, string> {
  const plain = (needs: readonly Need[]) =>
    needs
      .map(({ anyOf }) =>
        anyOf
          .map(({ done, notDone }) => `${[...done].sort()} / ${[...notDone].sort()}`)
          .sort()
          .join(' or '),
      )
      .sort()
  return new Map(
    close(problem).problem.operations.map(({ id, needs, modes }) => [
      id,
      JSON.stringify([plain(needs), modes.map((mode) => [mode.id, plain(mode.needs)])]),
    ]),
  )
}

const isMeasured = ({ outside, inside }: Ring): boolean => (outside !== undefined && outside !== 'endless') || !!inside

function unmeasured(unit: Unit, part: Part, line: LineId): Unit {
  const bare = (rings: Part['rings']) =>
    new Map([...rings].map(([each, own]) => [each, each === line ? own.map(withoutDiameters) : own]))
  const changed: Part = { ...part, rings: bare(part.rings), passing: bare(part.passing) }
  return { ...unit, parts: new Map(unit.parts).set(part.id, changed) }
}

function withoutDiameters({ outside, inside: _inside, ...ring }: Ring): Ring {
  return outside === 'endless' ? { ...ring, outside } : ring
}
