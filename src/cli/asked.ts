// What every command may be asked besides its own.
import type { System } from '../quantity/printQuantity.ts'
import { shownJson } from './shown.ts'

export interface Asked {
  /** The answer for machines instead of the text for people. */
  readonly json: boolean
  /** Missing: the units of the file. */
  readonly system?: System
  /** The variant of the unit; missing: as the job says, else the first. */
  readonly variant?: string
}

/** One line of JSON for machines. */
export const jsonLine = (answer: object): string => shownJson(JSON.stringify(answer))
