// The contribution of a connection that adds nothing; a kind names only what it does add.
import type { Contribution } from './kind.ts'

export const NOTHING: Contribution = {
  steps: [],
  orders: [],
  clocks: [],
  loops: [],
  within: [],
  fast: [],
  closing: [],
  carried: [],
  mayOverlap: [],
  stations: [],
  noReturns: [],
  renewals: [],
}
