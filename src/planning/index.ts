// The public door of the sequence engine: `matchmark/planning`. What a problem means is told in docs/reference/contract.md.
export { type Approach, approach } from './approach.ts'
export { type ClosedProblem, close } from './close.ts'
export type { Relation } from './closing.ts'
export { countSequences } from './countSequences.ts'
export { type CountEstimate, estimateSequences } from './estimateSequences.ts'
export { type Closes, closesIn } from './explain/closes.ts'
export { type Costly, type CostlyRelation, costlyRelations } from './explain/costly.ts'
export { type Difference, differences } from './explain/differences.ts'
export { type Candidate, mayCome, type Obstacle } from './explain/mayCome.ts'
export { type Slack, slackOf } from './explain/slack.ts'
export { type Link, type Why, why } from './explain/why.ts'
export {
  type Fault,
  type HoldOptions,
  type HoldPlan,
  type HoldPoint,
  holdPoints,
  type Range,
} from './guard/holdPoints.ts'
export { type Judgement, judge, type ToldStep } from './judge.ts'
export type {
  Alternative,
  Between,
  ChangeCosts,
  Duration,
  GiveUp,
  Lag,
  LagEvent,
  Loop,
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
export type {
  Assumption,
  Conflict,
  ConflictMember,
  LoopTry,
  PlacedStep,
  PlanResult,
  Tries,
  Value,
} from './model/sequence.ts'
export { type PlanOptions, type PlanProgress, plan } from './plan.ts'
export { type Reach, type ReachOptions, reach, takeBack } from './reach.ts'
export { compareValues } from './relations/compareValues.ts'
export type { Breach } from './relations/rule.ts'
export type { SetUpChange } from './relations/setUpChanges.ts'
export { type Repair, type RepairOptions, repair } from './repair.ts'
export { type NewFacts, type Replan, type ReplanOptions, replan } from './replan.ts'
export { restOf } from './restOf.ts'
export { type ShutMode, shutModes } from './shutModes.ts'
export { readSequenceFile } from './tsplib.ts'
export { validate } from './validate.ts'
