import type { Metre } from '../../quantity/quantity.ts'
import { requireWithin } from '../limits.ts'

/** Upper end of the bore in mm and the class; a steel shaft, normal load, inner ring turning. */
const SHAFTS = {
  ball: [
    [18, 'j5'],
    [100, 'k5'],
    [140, 'm5'],
    [200, 'm6'],
    [280, 'n6'],
  ],
  roller: [
    [40, 'k5'],
    [65, 'm5'],
    [100, 'm6'],
    [140, 'n6'],
    [280, 'p6'],
  ],
  'loose inner ring': [
    [25, 'k6'],
    [500, 'm6'],
  ],
} as const

const HOUSINGS = {
  'outer ring stands': 'H7',
  'outer ring turns, light load': 'M7',
  'outer ring turns, normal load': 'N7',
  'outer ring turns, heavy load or thin wall': 'P7',
} as const

export interface Seat {
  /** ISO 286 class for limitDeviations and fitOfClasses. */
  readonly toleranceClass: string
  readonly source: string
}

/**
 * Tolerance class that a bearing's shaft seat usually has, for when its drawing is lost. The book of the machine and the
 * bearing maker come first; a seat that was good for fifty years was right.
 *
 * @param bore symbol d, up to 280 mm (a loose inner ring up to 500 mm)
 * @param kind ball, roller, or a loose inner ring of a needle bearing (also a wear sleeve)
 * @param innerTurns false where the load stands still against the inner ring: g6, so that it can be set
 * @returns class with its source
 * @throws VALUE_OUTSIDE
 * @source bearing makers' catalogues, normal load (from memory); loose inner rings k6 and m6: a maker's product page (read)
 * @example shaftSeat({ bore: mm(40), kind: 'ball', innerTurns: true }).toleranceClass   // 'k5'
 */
export function shaftSeat({
  bore,
  kind,
  innerTurns,
}: {
  readonly bore: Metre
  readonly kind: keyof typeof SHAFTS
  readonly innerTurns: boolean
}): Seat {
  const rows: readonly (readonly [number, string])[] = SHAFTS[kind]
  requireWithin('the bore', bore, { low: 0.001, high: (rows[rows.length - 1]?.[0] ?? 0) / 1000 + 1e-9, unit: 'm' })
  const found = rows.find(([upTo]) => bore * 1000 <= upTo + 1e-6)?.[1] ?? ''
  if (kind === 'loose inner ring') return { toleranceClass: found, source: "a bearing maker's product page (read)" }
  return { toleranceClass: innerTurns ? found : 'g6', source: 'bearing makers’ catalogues, normal load; from memory' }
}

/**
 * Tolerance class that a bearing's housing seat usually has.
 *
 * @param duty whether the outer ring turns against the load, and how heavy that is
 * @returns class with its source
 * @source bearing makers' catalogues (from memory)
 * @example housingSeat('outer ring stands').toleranceClass   // 'H7'
 */
export function housingSeat(duty: keyof typeof HOUSINGS): Seat {
  return { toleranceClass: HOUSINGS[duty], source: 'bearing makers’ catalogues; from memory' }
}
