// What a planning problem has to be before anything is computed from it.
import { Problem } from '../problem/problem.ts'
import { hasBit } from './bitSet.ts'
import { closing } from './closing.ts'
import type { Between, Mode, Need, PlanningProblem } from './model/problem.ts'
import { worksTogether } from './relations/teams.ts'

const MOST_OPERATIONS = 10_000
const MOST_RELATIONS = 40_000
const MOST_SECONDS = 10_000_000
const MOST_HAZARD = 1_000
const MOST_MACHINES = 1_000
const MOST_PEOPLE = 4
const MOST_TRIES = 100

/**
 * Everything that is wrong with a problem, in the order of its parts; an empty list when it can be planned.
 *
 * Limits: 10,000 operations, 40,000 needs and lags, 10,000,000 seconds (116 days) and 1,000 points of hazard for each number.
 *
 * @example validate(problem)   // []
 */
export function validate(problem: PlanningProblem): Problem[] {
  const found: Problem[] = []
  const wrong = (...of: ConstructorParameters<typeof Problem>) => {
    found.push(new Problem(...of))
  }
  if (problem.schema !== 'matchmark-planning/1') wrong('PLANNING_SCHEMA', { received: String(problem.schema) })
  const { operations, lags, changes, crew, machines = {} } = problem
  if (operations.length > MOST_OPERATIONS) {
    wrong('PLANNING_TOO_LARGE', { what: 'operations', received: operations.length, most: MOST_OPERATIONS })
  }
  const relations = operations.reduce(
    (sum, { needs, modes }) => sum + needs.length + modes.reduce((count, mode) => count + mode.needs.length, 0),
    lags.length,
  )
  if (relations > MOST_RELATIONS) {
    wrong('PLANNING_TOO_LARGE', { what: 'needs and lags', received: relations, most: MOST_RELATIONS })
  }
  if (found.length > 0) return found
  const ids = new Set<string>()
  for (const { id } of operations) {
    if (ids.has(id)) wrong('PLANNING_DUPLICATE', { what: 'operation', id, where: 'the problem' })
    ids.add(id)
  }

  const whole = (where: string, what: string, value: number, least: number, most: number) => {
    if (Number.isInteger(value) && value >= least && value <= most) return
    const expected = `a whole number from ${least} to ${most}`
    wrong('PLANNING_NUMBER', { where, what, received: String(value), expected })
  }
  const from0 = (where: string, what: string, value: number, most: number) => {
    if (value >= 0 && value <= most) return
    wrong('PLANNING_NUMBER', { where, what, received: String(value), expected: `a number from 0 to ${most}` })
  }
  const giveUp = (where: string, cost: number | 'never') => {
    if (cost === 'never' || (Number.isFinite(cost) && cost >= 0)) return
    const expected = "a number from 0, or 'never'"
    wrong('PLANNING_NUMBER', { where, what: 'giveUp', received: String(cost), expected })
  }
  const known = (where: string, id: string) => {
    if (!ids.has(id)) wrong('PLANNING_UNKNOWN_OPERATION', { where, id })
  }
  const needIds = new Set<string>()
  const checkNeeds = (op: string, needs: readonly Need[], ofUndoing = false) => {
    for (const need of needs) {
      const where = `The need '${need.id}' of '${op}'`
      if (needIds.has(need.id)) wrong('PLANNING_DUPLICATE', { what: 'need', id: need.id, where: 'the problem' })
      needIds.add(need.id)
      giveUp(where, need.giveUp)
      for (const { done, notDone } of need.anyOf) {
        for (const id of [...done, ...notDone]) {
          known(where, id)
          if (id === op && !ofUndoing) wrong('PLANNING_OWN_NEED', { where })
        }
      }
    }
  }

  const checkSharing = (where: string, { id, people, skills = [], machines: wanted = {}, setup }: Mode) => {
    if (!crew && skills.length > 0) wrong('PLANNING_NO_CREW', { where, mode: id, skills: skills.join(', ') })
    for (const [machine, count] of Object.entries(wanted)) {
      whole(where, `the number of '${machine}' in '${id}'`, count, 1, MOST_MACHINES)
      if (!Object.hasOwn(machines, machine)) wrong('PLANNING_UNKNOWN_MACHINE', { where, mode: id, machine })
    }
    const asked = [setup.workpiece, setup.attitude, setup.station, setup.tools].some((named) => named !== 'any')
    if (people === 0 && (asked || skills.length > 0)) wrong('PLANNING_BY_ITSELF', { where, mode: id })
  }

  for (const operation of operations) {
    const where = `The operation '${operation.id}'`
    const spans = [operation.duration_s, ...(operation.undo ? [operation.undo.duration_s] : [])]
    for (const { low, usual, high } of spans) {
      whole(where, 'a duration in seconds', usual, 0, MOST_SECONDS)
      whole(where, 'the low duration', low, 0, MOST_SECONDS)
      whole(where, 'the high duration', high, 0, MOST_SECONDS)
      if (low > usual || usual > high) {
        const received = `${low}, ${usual}, ${high}`
        wrong('PLANNING_NUMBER', { where, what: 'low, usual, high', received, expected: 'rising' })
      }
    }
    if (operation.modes.length === 0) wrong('PLANNING_NO_MODE', { where })
    const modeIds = new Set<string>()
    checkNeeds(operation.id, operation.needs)
    for (const mode of operation.modes) {
      if (modeIds.has(mode.id)) wrong('PLANNING_DUPLICATE', { what: 'mode', id: mode.id, where: `'${operation.id}'` })
      modeIds.add(mode.id)
      whole(where, `the number of people in '${mode.id}'`, mode.people, crew ? 0 : 1, 1_000)
      checkSharing(where, mode)
      if (mode.hazard !== undefined) whole(where, `the hazard of '${mode.id}'`, mode.hazard, 0, MOST_HAZARD)
      checkNeeds(operation.id, mode.needs)
    }
    if (operation.check) {
      const { faultChance, cost, lateCost } = operation.check
      from0(where, 'check.faultChance', faultChance, 1)
      from0(where, 'check.cost', cost, MOST_SECONDS)
      from0(where, 'check.lateCost', lateCost, MOST_SECONDS)
    }
    for (const id of operation.undo?.voids ?? []) known(`The undoing of '${operation.id}'`, id)
    if (operation.undo) checkNeeds(operation.id, operation.undo.needs, true)
  }

  const lagIds = new Set<string>()
  for (const lag of lags) {
    const where = `The lag '${lag.id}'`
    if (lagIds.has(lag.id)) wrong('PLANNING_DUPLICATE', { what: 'lag', id: lag.id, where: 'the problem' })
    lagIds.add(lag.id)
    known(where, lag.from.op)
    known(where, lag.to.op)
    giveUp(where, lag.giveUp)
    if (lag.min_s !== undefined) whole(where, 'min_s', lag.min_s, -MOST_SECONDS, MOST_SECONDS)
    if (lag.max_s !== undefined) whole(where, 'max_s', lag.max_s, -MOST_SECONDS, MOST_SECONDS)
  }

  const loopIds = new Set<string>()
  for (const { id, first, last, tries } of problem.loops ?? []) {
    const where = `The loop '${id}'`
    if (loopIds.has(id)) wrong('PLANNING_DUPLICATE', { what: 'loop', id, where: 'the problem' })
    loopIds.add(id)
    known(where, first)
    known(where, last)
    whole(where, 'the low number of tries', tries.low, 1, MOST_TRIES)
    whole(where, 'the usual number of tries', tries.usual, tries.low, MOST_TRIES)
    whole(where, 'the high number of tries', tries.high, tries.usual, MOST_TRIES)
  }

  whole('The changes', 'station_s', changes.station_s, 0, MOST_SECONDS)
  whole('The changes', 'workpiece_s', changes.workpiece_s, 0, MOST_SECONDS)
  whole('The changes', 'tools_s', changes.tools_s, 0, MOST_SECONDS)
  for (const [workpiece, turn] of Object.entries(changes.turn)) {
    const where = `Turning '${workpiece}' over`
    whole(where, 's', turn.s, 0, MOST_SECONDS)
    whole(where, 'hazard', turn.hazard, 0, MOST_HAZARD)
  }
  if (changes.between) found.push(...validateBetween(changes.between, ids))
  if (changes.between && worksTogether(problem)) wrong('PLANNING_BETWEEN_CREW')
  whole('The problem', 'people', problem.people, 1, 1_000)
  for (const [machine, count] of Object.entries(machines)) {
    whole('The machines', `the number of '${machine}'`, count, 1, MOST_MACHINES)
  }
  if (crew) {
    whole('The crew', 'the number of people', crew.length, 1, MOST_PEOPLE)
    if (crew.length !== problem.people) {
      const expected = `${crew.length}, as many as the crew`
      wrong('PLANNING_NUMBER', { where: 'The problem', what: 'people', received: String(problem.people), expected })
    }
    const named = new Set<string>()
    for (const { id } of crew) {
      if (named.has(id)) wrong('PLANNING_DUPLICATE', { what: 'person', id, where: 'the crew' })
      named.add(id)
    }
  }
  if (found.length === 0 && problem.loops?.length) {
    const { before, indexOf, contradiction } = closing(problem)
    for (const { id, first, last } of contradiction ? [] : problem.loops) {
      if (!hasBit(before[indexOf.get(last)!]!, indexOf.get(first)!)) {
        wrong('PLANNING_LOOP_OPEN', { loop: id, first, last })
      }
    }
  }
  return found
}

/** A table of costs has a row and a column for each of its operations, each of them in the problem and named once. */
function validateBetween({ ops, s }: Between, ids: ReadonlySet<string>): Problem[] {
  const where = 'The table between operations'
  const found: Problem[] = []
  const size = ops.length
  const named = new Set<string>()
  for (const id of ops) {
    if (!ids.has(id)) found.push(new Problem('PLANNING_UNKNOWN_OPERATION', { where, id }))
    if (named.has(id))
      found.push(new Problem('PLANNING_DUPLICATE', { what: 'operation', id, where: 'changes.between' }))
    named.add(id)
  }
  if (s.length !== size) {
    return [...found, new Problem('PLANNING_NOT_SQUARE', { where, received: `${s.length} rows`, operations: size })]
  }
  const expected = `a whole number from 0 to ${MOST_SECONDS}, or null`
  s.forEach((row, at) => {
    const of = `${where}, row '${ops[at]}'`
    if (row.length !== size) {
      found.push(new Problem('PLANNING_NOT_SQUARE', { where: of, received: `${row.length} columns`, operations: size }))
      return
    }
    row.forEach((seconds, column) => {
      if (seconds === null || (Number.isInteger(seconds) && seconds >= 0 && seconds <= MOST_SECONDS)) return
      const what = `what '${ops[column]}' costs right after it`
      found.push(new Problem('PLANNING_NUMBER', { where: of, what, received: String(seconds), expected }))
    })
  })
  return found
}

/** @throws the first problem that `validate` finds */
export function assertValid(problem: PlanningProblem): void {
  const [first] = validate(problem)
  if (first) throw first
}
