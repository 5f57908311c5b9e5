// A closed problem as the search wants it: operations by number, needs as bit masks, set-ups and lags numbered.
import { Problem } from '../../problem/problem.ts'
import { addBit, type BitSet, emptySet, hasBit, membersOf, setOf, sizeOf, takeOut, wordsFor } from '../bitSet.ts'
import type { ClosedNeed, Closing } from '../closing.ts'
import { lagConstraints } from '../relations/lagConstraints.ts'
import { isLifted } from '../relations/relationsIn.ts'
import { aspectsOf, type Demand } from './aspects.ts'
import { type Between, betweenOf, mostBetween } from './between.ts'
import { Setups } from './setups.ts'
import { watch } from './timeIsUp.ts'

/** An alternative as masks over all operations. */
interface Masks {
  readonly done: BitSet
  readonly notDone: BitSet
}

export type MaskedNeed = readonly Masks[]

export interface SearchMode {
  readonly op: number
  /** Its place among the modes of the operation in the problem. */
  readonly place: number
  readonly hazard: number
  readonly demand: number
  /** False for a mode that was taken out of a conflict: its changes take no time. */
  readonly changesTakeTime: boolean
  readonly needs: readonly MaskedNeed[]
}

/** start(later) − start(earlier) ≥ least. */
export interface Bound {
  readonly later: number
  readonly earlier: number
  readonly least: number
}

export interface Instance {
  readonly closing: Closing
  readonly size: number
  readonly words: number
  readonly durations: Int32Array
  /** For each operation, what certainly comes right before it: the rest follows, done-sets being closed downwards. */
  readonly rightBefore: readonly (readonly number[])[]
  readonly needs: readonly (readonly MaskedNeed[])[]
  readonly modes: readonly SearchMode[]
  readonly modesOf: readonly (readonly number[])[]
  readonly leastHazard: Int32Array
  readonly setups: Setups
  readonly demands: readonly Demand[]
  /** Costs between neighbours; null where none are told. */
  readonly between: Between | null
  readonly bounds: readonly Bound[]
  readonly boundsOf: readonly (readonly Bound[])[]
  /** Operations whose being done takes an alternative away from this many others, while those are not done. */
  readonly blocks: readonly BitSet[]
  /** Lexicographic triples as one number: (hazard · elapsedRange + elapsed) · changesRange + changes. */
  readonly elapsedRange: number
  readonly changesRange: number
  /** Whether the time is up: preparations that take long ask. */
  readonly late: () => boolean
}

/** One constraint for each pair of starts, without those that the certain order gives anyway. */
function tightestBounds(closing: Closing, durations: Int32Array): Bound[] {
  const tightest = new Map<string, Bound>()
  for (const { later, earlier, least_s } of lagConstraints(closing.problem, closing.indexOf)) {
    if (later === earlier) continue
    if (hasBit(closing.before[later]!, earlier) && least_s <= durations[earlier]!) continue
    const key = `${later} ${earlier}`
    const known = tightest.get(key)
    if (!known || known.least < least_s) tightest.set(key, { later, earlier, least: least_s })
  }
  return [...tightest.values()]
}

/** The certain order without what follows from the rest of it. */
function rightBeforeOf({ before }: Closing, late: () => boolean): number[][] {
  const check = watch(late)
  const rank = before.map(sizeOf)
  // What has most before it comes first, so that whatever is left when its turn comes follows from nothing else.
  const ranked = [...before.keys()].sort((one, other) => rank[other]! - rank[one]!)
  return before.map((set) => {
    check()
    const rest = set.slice()
    const right: number[] = []
    for (const earlier of ranked) {
      if (!hasBit(rest, earlier)) continue
      right.push(earlier)
      takeOut(rest, before[earlier]!)
    }
    return right.sort((one, other) => one - other)
  })
}

const MOST_CHANGES = 4
/** Times are kept in 32 bits, with room for sums. */
const MOST_ELAPSED = 500_000_000

/**
 * The problem has to be valid and its closing without contradiction.
 * @throws PLANNING_RANGE when the numbers are too large to be compared exactly
 */
export function instanceOf(closing: Closing, late: () => boolean = () => false): Instance {
  const { problem } = closing
  const size = problem.operations.length
  const durations = Int32Array.from(problem.operations, ({ duration_s }) => duration_s.usual)
  const masked = (need: ClosedNeed): MaskedNeed =>
    need.anyOf.map(({ done, notDone }) => ({ done: setOf(size, done), notDone: setOf(size, notDone) }))
  const blocks = problem.operations.map(() => emptySet(size))
  const noteBlocks = (owner: number, list: readonly ClosedNeed[]) => {
    for (const { anyOf } of list) for (const { notDone } of anyOf) for (const op of notDone) addBit(blocks[op]!, owner)
  }

  const { aspects, demandOf } = aspectsOf(problem)
  const between = betweenOf(closing)
  const demands: Demand[] = []
  const demandNumbers = new Map<string, number>()
  const numberOf = (demand: Demand): number => {
    const key = demand.join()
    const known = demandNumbers.get(key)
    if (known !== undefined) return known
    demandNumbers.set(key, demands.length)
    return demands.push(demand) - 1
  }
  const modes: SearchMode[] = []
  const modesOf = problem.operations.map((operation, op) => {
    noteBlocks(op, closing.needs[op]!)
    return closing.modes[op]!.map(({ place, needs }) => {
      const mode = operation.modes[place]!
      noteBlocks(op, needs)
      return (
        modes.push({
          op,
          place,
          hazard: mode.hazard ?? 0,
          demand: numberOf(between ? Int32Array.from([...demandOf(mode.setup), op]) : demandOf(mode.setup)),
          changesTakeTime: !isLifted(mode),
          needs: needs.map(masked),
        }) - 1
      )
    })
  })

  const bounds = tightestBounds(closing, durations)
  const boundsOf: Bound[][] = problem.operations.map(() => [])
  for (const bound of bounds) {
    boundsOf[bound.later]!.push(bound)
    boundsOf[bound.earlier]!.push(bound)
  }
  // One step changes at most the workpiece, the station, the tools and one attitude.
  const changeSeconds = [...aspects.map(({ seconds }) => seconds)]
    .sort((one, other) => other - one)
    .slice(0, MOST_CHANGES)
    .reduce((sum, seconds) => sum + seconds, 0)
  const changeHazard = aspects.reduce((most, { hazard }) => Math.max(most, hazard), 0)
  const elapsed =
    durations.reduce((sum, duration) => sum + duration, 0) +
    size * changeSeconds +
    (between ? mostBetween(between) : 0) +
    lagConstraints(problem, closing.indexOf).reduce((sum, { least_s }) => sum + Math.abs(least_s), 0)
  const most = problem.operations.reduce(
    (sum, operation) => sum + operation.modes.reduce((top, { hazard }) => Math.max(top, hazard ?? 0), 0),
    size * changeHazard,
  )
  const elapsedRange = elapsed + 1
  const changesRange = size * Math.min(MOST_CHANGES, aspects.length) + 1
  const hazardRange = most + 1
  if (hazardRange * elapsedRange * changesRange > Number.MAX_SAFE_INTEGER || elapsedRange > MOST_ELAPSED) {
    throw new Problem('PLANNING_RANGE', { elapsed, hazard: most })
  }
  return {
    closing,
    size,
    words: wordsFor(size),
    durations,
    rightBefore: rightBeforeOf(closing, late),
    needs: closing.needs.map((list) => list.map(masked)),
    modes,
    modesOf,
    leastHazard: Int32Array.from(modesOf, (list) => Math.min(...list.map((mode) => modes[mode]!.hazard))),
    setups: new Setups(aspects, demands, between),
    demands,
    between,
    bounds,
    boundsOf,
    blocks,
    elapsedRange,
    changesRange,
    late,
  }
}

/** Total duration of a set of operations. */
export const workOf = (instance: Instance, set: BitSet): number =>
  membersOf(set).reduce((sum, op) => sum + instance.durations[op]!, 0)
