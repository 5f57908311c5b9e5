// Judges a finished sequence against docs/reference/contract.md, written from that page and from nothing else.
import type { LagEvent, OpId, PlanningProblem } from '../model/problem.ts'
import type { PlacedStep, Value } from '../model/sequence.ts'
import { betweenSeconds } from './betweenSeconds.ts'
import type { Breach } from './breach.ts'
import { crewBreaches, crewValue, isCrew, modeIsOpen } from './crewRules.ts'
import { leastTimes } from './leastTimes.ts'
import { needHolds } from './needHolds.ts'
import { resolveStep } from './resolveStep.ts'
import { sequenceValue } from './sequenceValue.ts'
import { setupChanges } from './setupChanges.ts'
import { triesValue } from './triesValue.ts'

/** A sequence with its times, and the value somebody says it has. */
export interface ClaimedSequence {
  readonly steps: readonly PlacedStep[]
  readonly value?: Value | null
  /** The values that somebody says it has with the tries of its loops. */
  readonly tries?: { readonly low: Value; readonly usual: Value; readonly high: Value }
}

export interface Verdict {
  readonly right: boolean
  readonly breaches: readonly Breach[]
  /** Worked out anew from the steps; null where they name something wrong or are not complete. */
  readonly value: Value | null
  /** The least elapsed time that this order allows with these modes; null where there are no times or no full order, and for a crew. */
  readonly leastElapsed_s: number | null
}

/** Every breach of the contract in a sequence, in the order of the page: roll call, modes, needs, neighbours, times, lags, value. */
export function checkSequence(problem: PlanningProblem, claimed: ClaimedSequence): Verdict {
  const { steps } = claimed
  const names = [...rollCall(problem, steps), ...modes(problem, steps)]
  const complete = names.every(({ kind }) => kind === 'people')
  const together = isCrew(problem)
  const fractions = together ? notWhole(steps) : []
  const rest = together
    ? [...fractions, ...(fractions.length > 0 ? [] : crewBreaches(problem, steps))]
    : [...needs(problem, steps), ...neighbours(problem, steps), ...times(problem, steps)]
  const breaches = [...names, ...rest, ...lags(problem, steps)]
  const whole = breaches.every(({ kind }) => kind !== 'not whole seconds')
  const worth = together ? crewValue : sequenceValue
  const value = complete && whole ? worth(problem, steps) : null
  breaches.push(...claim(claimed.value ?? null, value))
  const least = complete && !together ? leastTimes(problem, steps) : undefined
  if (claimed.tries && value && breaches.length === 0) breaches.push(...claimOfTries(problem, claimed, claimed.tries))
  return {
    right: breaches.length === 0,
    breaches,
    value,
    leastElapsed_s: least ? (least.at(-1)?.end_s ?? 0) : null,
  }
}

/** Every operation exactly once. */
function rollCall({ operations }: PlanningProblem, steps: readonly PlacedStep[]): Breach[] {
  const breaches: Breach[] = []
  const listed = new Set<OpId>()
  for (const { op } of steps) {
    if (!operations.some(({ id }) => id === op)) {
      breaches.push({ kind: 'unknown operation', op, says: `The problem has no operation '${op}'.` })
    } else if (listed.has(op)) {
      breaches.push({ kind: 'done twice', op, says: `'${op}' is listed again; every operation is done exactly once.` })
    }
    listed.add(op)
  }
  for (const { id: op } of operations) {
    if (!listed.has(op)) breaches.push({ kind: 'missing operation', op, says: `'${op}' is left out.` })
  }
  return breaches
}

/** The chosen modes exist and there are people enough for them. */
function modes(problem: PlanningProblem, steps: readonly PlacedStep[]): Breach[] {
  return steps.flatMap((step): Breach[] => {
    const { op, mode: id } = step
    if (!problem.operations.some((operation) => operation.id === op)) return []
    const resolved = resolveStep(problem, step)
    if (!resolved) return [{ kind: 'unknown mode', op, id, says: `'${op}' has no mode '${id}'.` }]
    const { people } = resolved.mode
    if (people > problem.people) {
      const says = `'${op}' in mode '${id}' wants ${people} people; there are ${problem.people}.`
      return [{ kind: 'people', op, id, says }]
    }
    if (modeIsOpen(problem, resolved.mode)) return []
    return [{ kind: 'people', op, id, says: `'${op}' in mode '${id}' is open to nobody: skills or machines lack.` }]
  })
}

/** The needs of each operation and of its chosen mode hold where it stands. */
function needs(problem: PlanningProblem, steps: readonly PlacedStep[]): Breach[] {
  return steps.flatMap((step, place) => {
    const resolved = resolveStep(problem, step)
    if (!resolved) return []
    const before = new Set(steps.slice(0, place).map(({ op }) => op))
    return [...resolved.operation.needs, ...resolved.mode.needs]
      .filter((need) => !needHolds(need, before))
      .map(
        ({ id, reason }): Breach => ({
          kind: 'need',
          op: step.op,
          id,
          says: `'${step.op}' cannot start here ('${id}'): ${reason.says}`,
        }),
      )
  })
}

function notWhole(steps: readonly PlacedStep[]): Breach[] {
  return steps
    .filter(({ start_s, end_s }) => !Number.isSafeInteger(start_s) || !Number.isSafeInteger(end_s))
    .map(({ op, start_s, end_s }) => ({
      kind: 'not whole seconds',
      op,
      says: `'${op}' runs from ${start_s} s to ${end_s} s; times are whole seconds.`,
    }))
}

/** None comes right after one that it never comes right after. */
function neighbours(problem: PlanningProblem, steps: readonly PlacedStep[]): Breach[] {
  const order = steps.map(({ op }) => op)
  return betweenSeconds(problem, order).flatMap((seconds, place): Breach[] => {
    const op = order[place]!
    if (seconds !== null) return []
    return [{ kind: 'never right after', op, says: `'${op}' never comes right after '${order[place - 1]}'.` }]
  })
}

/** Whole seconds, the usual duration, and one person who sets up and works on one operation after the other. */
function times(problem: PlanningProblem, steps: readonly PlacedStep[]): Breach[] {
  const breaches: Breach[] = []
  const known = steps.filter((step) => resolveStep(problem, step))
  const changes = setupChanges(
    problem,
    known.map((step) => resolveStep(problem, step)!.mode.setup),
  )
  const between = betweenSeconds(
    problem,
    known.map(({ op }) => op),
  )
  let free_s = 0
  known.forEach((step, place) => {
    const { op, start_s, end_s } = step
    if (!Number.isSafeInteger(start_s) || !Number.isSafeInteger(end_s)) {
      breaches.push({
        kind: 'not whole seconds',
        op,
        says: `'${op}' runs from ${start_s} s to ${end_s} s; times are whole seconds.`,
      })
      return
    }
    const { usual } = resolveStep(problem, step)!.operation.duration_s
    if (end_s - start_s !== usual) {
      breaches.push({
        kind: 'duration',
        op,
        says: `'${op}' takes ${end_s - start_s} s here and ${usual} s in the problem.`,
      })
    }
    const ready_s = free_s + changes[place]!.s + (between[place] ?? 0)
    if (start_s < ready_s) {
      breaches.push({
        kind: 'too early',
        op,
        says: `'${op}' starts at ${start_s} s; nobody is ready for it before ${ready_s} s.`,
      })
    }
    free_s = end_s
  })
  return breaches
}

/** Each lag lies between its bounds. A lag whose operations are not both there is not judged: the roll call names them. */
function lags(problem: PlanningProblem, steps: readonly PlacedStep[]): Breach[] {
  const timeOf = ({ op, edge }: LagEvent): number | undefined => {
    const step = steps.find((candidate) => candidate.op === op)
    return step && (edge === 'start' ? step.start_s : step.end_s)
  }
  return problem.lags.flatMap(({ id, from, to, min_s = -Infinity, max_s = Infinity, reason }): Breach[] => {
    const [begin, finish] = [timeOf(from), timeOf(to)]
    if (begin === undefined || finish === undefined) return []
    const gap = finish - begin
    if (min_s <= gap && gap <= max_s) return []
    const bound = gap < min_s ? `at least ${min_s} s` : `at most ${max_s} s`
    const span = `from the ${from.edge} of '${from.op}' to the ${to.edge} of '${to.op}'`
    return [
      { kind: 'lag', op: to.op, id, says: `It is ${gap} s ${span}; it has to be ${bound} ('${id}'): ${reason.says}` },
    ]
  })
}

/** The value that was claimed is the value that comes out. */
function claim(claimed: Value | null, value: Value | null): Breach[] {
  if (!claimed || !value || claimed.every((part, index) => part === value[index])) return []
  return [
    { kind: 'value', says: `The value claimed is (${claimed.join(', ')}); it comes out as (${value.join(', ')}).` },
  ]
}

/** So are those that were claimed for its tries. */
function claimOfTries(
  problem: PlanningProblem,
  { steps }: ClaimedSequence,
  tries: NonNullable<ClaimedSequence['tries']>,
): Breach[] {
  return (['low', 'usual', 'high'] as const).flatMap((which): Breach[] => {
    const value = triesValue(problem, steps, which)
    if (tries[which].every((part, index) => part === value[index])) return []
    const says = `With the ${which} number of tries the value claimed is (${tries[which].join(', ')}); it comes out as (${value.join(', ')}).`
    return [{ kind: 'tries', says }]
  })
}
