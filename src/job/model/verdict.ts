// What a reading is worth against the limits of its feature.
import type { Metre } from '../../quantity/quantity.ts'
import type { Known, Limit, PartId } from '../../unit/model/unit.ts'
import type { Reading } from './job.ts'

/**
 * `within` the limits for new (or the only limits there are) · `worn, usable`: outside new, inside worn · `out` of every limit
 * that is told · `not known`: no limit, no reading, or a limit nearer than the uncertainty of the instrument.
 */
export type Judgement = 'within' | 'worn, usable' | 'out' | 'not known'

export interface ReadingVerdict {
  readonly part: PartId
  readonly feature: string
  /** What the feature is for, in the words of the unit file. */
  readonly what?: string
  readonly reading: Reading
  readonly uncertainty?: Known<Metre>
  readonly limitNew?: Limit
  readonly limitWorn?: Limit
  readonly is: Judgement
  /** Why, where it is not simply within. */
  readonly because?: string
}

/** A feature with limits that nobody has measured in this job. */
export interface Unmeasured {
  readonly part: PartId
  readonly feature: string
  readonly what?: string
  readonly limitNew?: Limit
  readonly limitWorn?: Limit
}

export interface Verdicts {
  /** In the order of the job file. */
  readonly readings: readonly ReadingVerdict[]
  readonly unmeasured: readonly Unmeasured[]
}
