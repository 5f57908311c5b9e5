// What the record has of the checks, of the tries of settings and of the bolts that were counted. SI; times are milliseconds since 1970.

interface Range {
  readonly low: number
  readonly high: number
}

interface ByHand {
  readonly person: string
  readonly ms: number
}

/** What was read, and of which quantity. */
export interface ReadTold extends Range {
  readonly dimension: 'length' | 'angle' | 'force' | 'torque' | 'temperature' | 'pressure' | 'time' | 'mass' | 'number'
}

export interface CheckTold extends ByHand {
  readonly check: string
  readonly read?: ReadTold
  readonly result: 'good' | 'bad' | 'not known'
  readonly with?: string
}

export interface TryTold extends ByHand {
  /** What is set. */
  readonly of: string
  readonly number: number
  /** What was in, in words. */
  readonly tried: string
  /** m */
  readonly pack?: Range
  readonly read?: ReadTold
  readonly result: 'good' | 'bad' | 'not known'
  readonly with?: string
  /** It was taken back, and stays to be seen. */
  readonly takenBack?: ByHand
}

export interface TightenedTold extends ByHand {
  readonly step: string
  readonly stages: readonly {
    readonly connection: string
    readonly stage: number
    readonly says: string
    readonly count: number
    readonly of: number
    readonly rest?: boolean
    readonly with?: string
  }[]
  /** Why not all were counted. */
  readonly uncounted?: string
}

export interface Tried {
  /** Every result that stands, in the order in which it came: a second one beside the first. */
  readonly checks: readonly CheckTold[]
  readonly tries: readonly TryTold[]
  /** By the signatures that stand. */
  readonly tightened: readonly TightenedTold[]
}
