// One unit, or one job, worked out as far as facts go without a search: what every edge starts from.
import { type MassSum, massSum } from '../mechanics/lifting/massSum.ts'
import type { PlanningProblem } from '../planning/model/problem.ts'
import type { PlanResult } from '../planning/model/sequence.ts'
import { type PlanOptions, plan } from '../planning/plan.ts'
import { restOf } from '../planning/restOf.ts'
import type { Problem } from '../problem/problem.ts'
import { type Connections, connectionsOf } from '../unit/connections/connectionsOf.ts'
import { contributionOf } from '../unit/connections/contributionOf.ts'
import type { Contribution, Question, Renewal, Setting, ShopFacts } from '../unit/connections/kind.ts'
import { type Derivation, derive } from '../unit/derive/compile.ts'
import { contradictionsIn } from '../unit/derive/contradictions.ts'
import { withCrew } from '../unit/derive/crew.ts'
import { checkHands } from '../unit/derive/hands.ts'
import { questionsIn } from '../unit/derive/questions.ts'
import { placed } from '../unit/lines/placed.ts'
import type { Unit } from '../unit/model/unit.ts'
import { forVariant, variantOf } from '../unit/variants.ts'
import { checkDone, checkJobAgainst } from './checkJobAgainst.ts'
import type { Job } from './model/job.ts'
import { withReadings } from './withReadings.ts'

export interface WorkUp {
  /** The unit as this job has it: its variant, its readings. */
  readonly unit: Unit
  readonly job?: Job
  readonly variant?: string
  /** What was taken because nobody said otherwise. */
  readonly taken: readonly string[]
  readonly connections: Connections
  readonly joints: Contribution
  readonly derivation: Derivation
  /** What is left to do: the whole unit less the steps that stand. */
  readonly problem: PlanningProblem
  /** Faults of the work: what cannot be true together, or speaks of what is not there. */
  readonly faults: readonly Problem[]
  readonly questions: readonly Question[]
}

const ROOM_K = 293.15

/**
 * Works a unit out, for a job when there is one.
 *
 * @example workUp({ unit }).derivation.problem.operations.length   // 20
 */
export function workUp({
  unit: written,
  job,
  variant: asked,
}: {
  unit: Unit
  job?: Job | undefined
  variant?: string | undefined
}): WorkUp {
  const jobFaults = job ? checkJobAgainst(written, job) : []
  const { variant, taken } = chosenVariant(written, job, asked)
  const ofVariant = variant === undefined ? written : forVariant(written, variant)
  const { unit, faults: seatFaults } = placed(job ? withReadings(ofVariant, job) : ofVariant)
  const connections = connectionsOf(unit)
  const joints = contributionOf(connections, unit)
  const derived = derive(unit, joints, job?.plant.people)
  const crew = job?.plant.crew?.map(({ name, skills }) => ({ id: name, skills }))
  const derivation = { ...derived, problem: withCrew(derived.problem, { crew, unit }) }
  const steps = new Set(derivation.problem.operations.map(({ id }) => id))
  const done = (job?.done ?? []).map(({ step }) => step).filter((step) => steps.has(step))
  const asks = connections.connections.flatMap(({ connection, kind, given }) => kind.asks(connection, given, unit))
  return {
    unit,
    ...(job ? { job } : {}),
    ...(variant === undefined ? {} : { variant }),
    taken,
    connections,
    joints,
    derivation,
    problem: done.length ? restOf(derivation.problem, done) : derivation.problem,
    faults: [
      ...jobFaults,
      ...(job ? checkDone(written, job, steps) : []),
      ...checkHands(unit, steps),
      ...connections.faults,
      ...seatFaults,
      ...contradictionsIn(unit, derivation),
    ],
    questions: questionsIn(unit, derivation, [...asks, ...connections.questions]),
  }
}

function chosenVariant(
  unit: Unit,
  job: Job | undefined,
  asked: string | undefined,
): { variant: string | undefined; taken: readonly string[] } {
  const told = asked ?? job?.variant ?? (job?.serial === undefined ? undefined : variantOf(unit, job.serial)?.id)
  if (told !== undefined || unit.variants.length === 0) return { variant: told, taken: [] }
  const [first] = unit.variants
  const why = job?.serial === undefined ? 'no serial number was given' : `the serial number ${job.serial} picks none`
  return { variant: first?.id, taken: [`The variant ${first?.id} was taken: ${why}.`] }
}

/** The best sequence of what is left to do. */
export const sequenceOf = (work: WorkUp, options: PlanOptions = {}): PlanResult => plan(work.problem, options)

/** What to set at each connection, from readings where there are some. */
export function settingsOf({ connections, unit, job }: WorkUp): readonly Setting[] {
  const shop = shopOf(job)
  return connections.connections.flatMap(({ connection, kind, given }) => kind.settings(connection, given, unit, shop))
}

/** What the connections always want new. */
export const renewalsOf = ({ joints }: WorkUp): readonly Renewal[] => joints.renewals

function shopOf(job: Job | undefined): ShopFacts {
  const { room, press, oven } = job?.plant ?? {}
  return {
    shims: (job?.shims ?? []).flatMap(({ id, reads, nominal, for: keptFor }) => {
      const thickness = reads ?? nominal
      if (!thickness) return []
      return [
        {
          id,
          thickness,
          ...(keptFor === undefined ? {} : { for: keptFor }),
          ...(nominal ? { nominal: nominal.low } : {}),
        },
      ]
    }),
    ...(press?.rating ? { pressRating_N: press.rating.low } : {}),
    ...(oven?.upTo ? { ovenUpTo_K: oven.upTo.low } : {}),
    roomTemperature_K: room?.low ?? ROOM_K,
    measured: new Set(
      (job?.readings ?? []).filter(({ reads }) => reads).map(({ part, feature }) => `${part}.${feature}`),
    ),
  }
}

/** What the whole unit weighs; known in part it says at least so much, and no centre of mass. */
export const massOf = ({ unit }: WorkUp): MassSum =>
  massSum(
    [...unit.parts.values()].map(({ id, mass }) => ({
      name: id,
      ...(mass ? { mass: { low: mass.low, high: mass.high } } : {}),
    })),
  )
