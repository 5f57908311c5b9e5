// A job and its sequence with all that a book shows of them.
import type { PlanResult } from '../planning/model/sequence.ts'
import type { System } from '../quantity/printQuantity.ts'
import type { Setting } from '../unit/connections/kind.ts'
import { kitOf } from './kit.ts'
import type { KitLine } from './model/kit.ts'
import { verdictsOf } from './verdicts.ts'
import { renewalsOf, settingsOf, type WorkUp } from './workUp.ts'

export interface WorkedOut {
  readonly work: WorkUp
  readonly result: PlanResult
  readonly system: System
  readonly settings: readonly Setting[]
  readonly kit: readonly KitLine[]
  /** Only of a job: a unit alone has no readings. */
  readonly verdicts?: ReturnType<typeof verdictsOf>
}

/** What a book, or the whole answer of `start`, shows besides the sequence. */
export const workedOut = (work: WorkUp, result: PlanResult, system: System): WorkedOut => ({
  work,
  result,
  system,
  settings: settingsOf(work),
  kit: kitOf(work.unit, work.job, renewalsOf(work), system),
  ...(work.job && { verdicts: verdictsOf(work.unit, work.job) }),
})
