// The public door of the sequence engine: `matchmark/planning`. What a problem means is told in docs/reference/contract.md.
export { type ClosedProblem, close } from './close.ts'
export type { Relation } from './closing.ts'
export { countSequences } from './countSequences.ts'
export { type Candidate, mayCome, type Obstacle } from './explain/mayCome.ts'
export { type Link, type Why, why } from './explain/why.ts'
export { type Judgement, judge, type ToldStep } from './judge.ts'
export type {
  Alternative,
  ChangeCosts,
  Duration,
  GiveUp,
  Lag,
  LagEvent,
  Mode,
  Need,
  Operation,
  OpId,
  Origin,
  Person,
  PlanningProblem,
  Reason,
  Setup,
  Standing,
  StartState,
} from './model/problem.ts'
export type { Assumption, Conflict, ConflictMember, PlacedStep, PlanResult, Value } from './model/sequence.ts'
export { type PlanOptions, type PlanProgress, plan } from './plan.ts'
export { type Reach, type ReachOptions, reach } from './reach.ts'
export { compareValues } from './relations/compareValues.ts'
export type { Breach } from './relations/rule.ts'
export type { SetUpChange } from './relations/setUpChanges.ts'
export { restOf } from './restOf.ts'
export { type ShutMode, shutModes } from './shutModes.ts'
export { validate } from './validate.ts'
