// Seeded random problems for tests: small, with everything that a problem can have.
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import type {
  Alternative,
  Between,
  Lag,
  Loop,
  Mode,
  Need,
  Operation,
  PlanningProblem,
  Reason,
} from '../model/problem.ts'

export interface Recipe {
  readonly operations: number
  /** Out of ten: how often an operation gets a plain need, one with alternatives, one that keeps another away. */
  readonly plain?: number
  readonly either?: number
  readonly away?: number
  readonly lags?: number
  readonly setups?: boolean
  readonly modes?: number
  /** So many people who work beside each other, with a press and things that go on by themselves. */
  readonly crew?: number
  /** Trial loops; the last operation of each gets a need for the first, and some operations an undoing of their own. */
  readonly loops?: number
  /** Out of ten: how often a set-up names what it would leave open. */
  readonly named?: number
  /** Out of ten: how often an operation stands in the table of costs between neighbours; no table when 0. */
  readonly between?: number
}

export const dice = (seed: number) => {
  const generator = xoroshiro128plus(seed)
  for (let skip = 0; skip < 8; skip++) generator.next()
  return (from: number, to: number): number => uniformInt(generator, from, to)
}

export const because = (says: string): Reason => ({
  code: 'TEST',
  says,
  facts: {},
  origin: 'author',
  standing: 'told',
})

/** A problem whose needs are mostly, not always, consistent: a hidden order makes most of them true. */
export function randomProblem(seed: number, recipe: Recipe): PlanningProblem {
  const roll = dice(seed)
  const {
    operations: size,
    plain = 5,
    either = 3,
    away = 2,
    lags = 2,
    setups = true,
    modes = 2,
    named = 0,
    loops = 0,
    between = 0,
  } = recipe
  const id = (op: number) => `o${op}`
  const hidden = Array.from({ length: size }, (_, op) => op)
  for (let op = size - 1; op > 0; op--) {
    const other = roll(0, op)
    ;[hidden[op], hidden[other]] = [hidden[other]!, hidden[op]!]
  }
  const rank = new Map(hidden.map((op, place) => [op, place]))
  const other = (op: number) => (op + roll(1, size - 1)) % size
  const some = (op: number, earlier: boolean): string[] => {
    for (let tries = 0; tries < 6; tries++) {
      const candidate = other(op)
      const fits = rank.get(candidate)! < rank.get(op)! === earlier
      if (fits || roll(0, 19) === 0) return [id(candidate)]
    }
    return []
  }
  let needs = 0
  const need = (anyOf: Alternative[], says: string): Need => ({
    id: `n${++needs}`,
    anyOf,
    reason: because(says),
    giveUp: roll(0, 3) === 0 ? 'never' : roll(0, 9),
  })
  const alternative = (op: number): Alternative => {
    const kind = roll(0, 2)
    return {
      done: kind === 1 ? [] : [...some(op, true), ...(roll(0, 3) === 0 ? some(op, true) : [])],
      notDone: kind === 0 ? [] : some(op, false),
    }
  }
  const needsOf = (op: number): Need[] => {
    const list: Need[] = []
    if (roll(0, 9) < plain) list.push(need([{ done: some(op, true), notDone: [] }], 'plain'))
    if (roll(0, 9) < either) {
      const anyOf = [alternative(op), alternative(op), ...(roll(0, 2) === 0 ? [alternative(op)] : [])]
      list.push(need(anyOf, 'either'))
    }
    if (roll(0, 9) < away) list.push(need([{ done: [], notDone: some(op, false) }], 'away'))
    return list
  }
  const pick = <T>(list: readonly T[]): T => list[roll(0, list.length - 1)]!
  const asked = <T>(value: T | 'any', list: readonly T[]): T | 'any' =>
    value === 'any' && named > 0 && roll(0, 9) < named ? pick(list) : value
  const mode = (op: number, name: string): Mode => ({
    id: name,
    people: roll(0, 14) === 0 ? 3 : roll(1, 2),
    hazard: pick([0, 0, 0, 0, 1, 2]),
    needs: roll(0, 5) === 0 ? [need([alternative(op), ...(roll(0, 1) ? [alternative(op)] : [])], 'of a mode')] : [],
    setup: setups
      ? {
          workpiece: asked(pick(['any', 'case', 'case', 'shaft']), ['case', 'shaft']),
          attitude: asked(pick(['any', 'end up', 'end down', 'flat']), ['end up', 'flat']),
          station: asked(pick(['any', 'any', 'bench', 'press']), ['bench', 'press']),
          tools: asked(
            pick<readonly string[] | 'any'>(['any', 'any', ['mallet'], ['wrench', 'dial'], ['dial', 'wrench'], []]),
            [['mallet'], ['dial']],
          ),
        }
      : { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' },
  })
  const list: Operation[] = Array.from({ length: size }, (_, op) => {
    const usual = pick([0, 1, 2, 3, 5, 8, 13])
    return {
      id: id(op),
      does: `Do ${op}`,
      duration_s: { low: 0, usual, high: usual + 5 },
      needs: needsOf(op),
      modes: Array.from({ length: roll(0, 9) < modes ? 2 : 1 }, (_, place) => mode(op, `m${place}`)),
    }
  })
  const lag = (place: number): Lag => {
    const from = roll(0, size - 1)
    const to = other(from)
    const kind = roll(0, 3)
    const bounds =
      kind === 0
        ? { min_s: roll(-10, 25) }
        : kind === 1
          ? { max_s: roll(-5, 30) }
          : kind === 2
            ? { min_s: roll(0, 10), max_s: roll(10, 40) }
            : { min_s: -roll(5, 30), max_s: roll(0, 40) }
    return {
      id: `l${place}`,
      from: { op: id(from), edge: pick(['start', 'end']) },
      to: { op: id(to), edge: pick(['start', 'end']) },
      ...bounds,
      reason: because('lag'),
      giveUp: roll(0, 9),
    }
  }
  const dear = named > 0 ? 4 : 1
  const turn = () => ({ s: roll(0, 6 * dear), hazard: pick([0, 0, 1]) })
  const loop = (place: number): Loop => {
    const ends = [roll(0, size - 1), 0]
    ends[1] = other(ends[0]!)
    const [first, last] = ends.sort((one, two) => rank.get(one)! - rank.get(two)!) as [number, number]
    const operation = list[last]!
    list[last] = { ...operation, needs: [...operation.needs, need([{ done: [id(first)], notDone: [] }], 'loop')] }
    // Some of what the first one wanted is of the body, and bars its way out as well.
    const { needs: wanted, ...rest } = list[first]!
    const undone = {
      ...rest,
      needs: wanted.map((each) =>
        roll(0, 1) ? each : { ...each, reason: { ...each.reason, origin: 'geometry' as const } },
      ),
    }
    list[first] = undone
    const usual = roll(0, 9)
    const needs = roll(0, 1) ? [need([{ done: [], notDone: some(first, roll(0, 1) === 0) }], 'undoing')] : []
    if (roll(0, 2) > 0) {
      list[first] = { ...undone, undo: { duration_s: { low: 0, usual, high: 9 }, needs, renews: [], voids: [] } }
    }
    if (roll(0, 1) === 0) list[last] = { ...list[last]!, check: { faultChance: 0, cost: 0, lateCost: 0 } }
    const low = roll(1, 2)
    const tries = { low, usual: low + roll(0, 2), high: low + 2 + roll(0, 3) }
    return { id: `t${place}`, first: id(first), last: id(last), tries, reason: because('loop') }
  }
  const trials = Array.from({ length: loops }, (_, place) => loop(place))
  const table = between > 0 ? { between: betweenOf(list, roll, between) } : {}
  const problem: PlanningProblem = {
    schema: 'matchmark-planning/1',
    operations: list,
    ...(loops > 0 && { loops: trials }),
    lags: Array.from({ length: lags }, (_, place) => lag(place)),
    changes: {
      turn: { case: turn(), shaft: turn() },
      station_s: roll(0, 4 * dear),
      workpiece_s: roll(0, 3 * dear),
      tools_s: roll(0, 3 * dear),
      ...table,
    },
    start:
      setups && roll(0, 1)
        ? { attitudes: { case: 'flat' }, station: 'bench', workpiece: 'shaft', tools: ['mallet'] }
        : { attitudes: {} },
    people: 2,
  }
  return recipe.crew === undefined ? problem : withCrew(problem, recipe.crew, roll)
}

/** The same work for a crew: some modes ask for a skill, some for the press or an oven place, some for nobody. */
function withCrew(
  problem: PlanningProblem,
  people: number,
  roll: (from: number, to: number) => number,
): PlanningProblem {
  const skills = [['fitter', 'turner'], ['fitter'], ['turner'], []]
  const nobody = { workpiece: 'any', attitude: 'any', station: 'any', tools: 'any' } as const
  return {
    ...problem,
    people,
    crew: Array.from({ length: people }, (_, at) => ({
      id: `p${at}`,
      skills: at === 0 && roll(0, 9) > 0 ? skills[0]! : skills[roll(0, 3)]!,
    })),
    machines: { press: 1, oven: 2 },
    operations: problem.operations.map((operation) => ({
      ...operation,
      modes: operation.modes.map((mode) => {
        const kind = roll(0, 9)
        if (kind === 0) return { ...mode, people: 0, setup: nobody, machines: { oven: roll(1, 2) } }
        return {
          ...mode,
          ...(kind < 4 ? { skills: [kind === 1 ? 'turner' : 'fitter'] } : {}),
          ...(kind > 7 ? { machines: { press: 1 } } : {}),
        }
      }),
    })),
  }
}

function betweenOf(
  operations: readonly Operation[],
  roll: (from: number, to: number) => number,
  often: number,
): Between {
  const ops = operations.filter(() => roll(0, 9) < often).map(({ id }) => id)
  return { ops, s: ops.map(() => ops.map(() => (roll(0, 7) === 0 ? null : roll(0, 12)))) }
}
