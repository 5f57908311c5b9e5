// ANSI B4.1 as data: what each class is made of. Limits in thousandths of an inch.
// Read in Machinery's Handbook, 27th ed. (FN up to 3.94 in) and 31st ed. (RC; LT1 to LT5 and LN whole; FN from 4.73 in) and, LC6
// to LC11 up to 1.19 in, at an engineering page; the other rows from memory.

/** Ends of the steps of nominal size in inches, all classes but FN: above one, up to and including the next. */
export const STEPS = [0.12, 0.24, 0.4, 0.71, 1.19, 1.97, 3.15, 4.73, 7.09, 9.85, 12.41, 15.75, 19.69] as const
/** Ends of the steps of FN. */
// biome-ignore format: a table reads as a table
export const FORCE_STEPS = [
  0.12, 0.24, 0.4, 0.56, 0.71, 0.95, 1.19, 1.58, 1.97, 2.56, 3.15, 3.94, 4.73, 5.52, 6.3, 7.09, 7.88, 8.86, 9.85, 11.03,
  12.41, 13.98, 15.75, 17.72, 19.69,
] as const

/** Standard tolerances by grade along STEPS. */
// biome-ignore format: a table reads as a table
const GRADES: Readonly<Record<number, readonly number[]>> = {
  4: [0.15, 0.15, 0.15, 0.2, 0.25, 0.3, 0.3, 0.4, 0.5, 0.6, 0.6, 0.7, 0.8],
  5: [0.2, 0.2, 0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1],
  6: [0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.7, 0.9, 1, 1.2, 1.2, 1.4, 1.6],
  7: [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5],
  8: [0.6, 0.7, 0.9, 1, 1.2, 1.6, 1.8, 2.2, 2.5, 2.8, 3, 3.5, 4],
  9: [1, 1.2, 1.4, 1.6, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 6],
  10: [1.6, 1.8, 2.2, 2.8, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10],
  11: [2.5, 3, 3.5, 4, 5, 6, 7, 9, 10, 12, 12, 14, 16],
  12: [4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 22, 25],
  13: [6, 7, 9, 10, 12, 16, 18, 22, 25, 28, 30, 35, 40],
}

/** Least clearance along STEPS. */
// biome-ignore format: a table reads as a table
const CLEARANCE = {
  none: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  g: [0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.6, 0.8, 1, 1.2],
  'g of LC5': [0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.6, 0.7, 0.7, 0.8],
  f: [0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 2, 2.5, 3, 4],
  'f of LC6': [0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 2, 2.2, 2.5, 2.8],
  e: [0.6, 0.8, 1, 1.2, 1.6, 2, 2.5, 3, 3.5, 4, 5, 6, 8],
  'e of LC7': [0.6, 0.8, 1, 1.2, 1.6, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5],
  d: [1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12],
  'd of LC8': [1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 7, 7, 8, 9],
  c: [2.5, 2.8, 3, 3.5, 4.5, 5, 6, 7, 8, 10, 12, 14, 16],
  RC9: [4, 4.5, 5, 6, 7, 8, 9, 10, 12, 15, 18, 22, 25],
  LC10: [4, 4.5, 5, 6, 7, 8, 10, 11, 12, 16, 20, 22, 25],
  LC11: [5, 6, 7, 8, 10, 12, 14, 16, 18, 22, 28, 30, 35],
} as const

/** Clearance classes: grade of the hole, grade of the shaft, least clearance. */
const CLEARANCE_CLASSES: Readonly<Record<string, readonly [number, number, keyof typeof CLEARANCE]>> = {
  RC1: [5, 4, 'g'],
  RC2: [6, 5, 'g'],
  RC3: [7, 6, 'f'],
  RC4: [8, 7, 'f'],
  RC5: [8, 7, 'e'],
  RC6: [9, 8, 'e'],
  RC7: [9, 8, 'd'],
  RC8: [10, 9, 'c'],
  RC9: [11, 10, 'RC9'],
  LC1: [6, 5, 'none'],
  LC2: [7, 6, 'none'],
  LC3: [8, 7, 'none'],
  LC4: [10, 9, 'none'],
  LC5: [7, 6, 'g of LC5'],
  LC6: [9, 8, 'f of LC6'],
  LC7: [10, 9, 'e of LC7'],
  LC8: [10, 9, 'd of LC8'],
  LC9: [11, 10, 'c'],
  LC10: [12, 12, 'LC10'],
  LC11: [13, 13, 'LC11'],
}

const N = Number.NaN
/** Transition and interference classes: grade of the hole, then upper and lower limit of the shaft along the steps. */
// biome-ignore format: a table reads as a table
const TIGHT_CLASSES: Readonly<Record<string, readonly [number, readonly number[], readonly number[]]>> = {
  LT1: [7, [0.12, 0.15, 0.2, 0.2, 0.25, 0.3, 0.3, 0.4, 0.5, 0.6, 0.6, 0.7, 0.8], [-0.12, -0.15, -0.2, -0.2, -0.25, -0.3, -0.3, -0.4, -0.5, -0.6, -0.6, -0.7, -0.8]],
  LT2: [8, [0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1, 1.2], [-0.2, -0.25, -0.3, -0.35, -0.4, -0.5, -0.6, -0.7, -0.8, -0.9, -1, -1, -1.2]],
  LT3: [7, [N, N, 0.5, 0.5, 0.6, 0.7, 0.8, 1, 1.1, 1.4, 1.4, 1.6, 1.8], [N, N, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.2, 0.2, 0.2, 0.2]],
  LT4: [8, [N, N, 0.7, 0.8, 0.9, 1.1, 1.3, 1.5, 1.7, 2, 2.2, 2.4, 2.7], [N, N, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.2, 0.2, 0.2, 0.2]],
  LT5: [7, [0.5, 0.6, 0.8, 0.9, 1.1, 1.3, 1.5, 1.9, 2.2, 2.6, 2.6, 3, 3.4], [0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4, 1.4, 1.6, 1.8]],
  LT6: [7, [0.65, 0.8, 1, 1.2, 1.4, 1.7, 2, 2.4, 2.8, 3.2, 3.4, 3.8, 4.3], [0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.2, 1.4, 1.4, 1.6, 1.8]],
  LN1: [6, [0.45, 0.5, 0.65, 0.8, 1, 1.1, 1.3, 1.6, 1.9, 2.2, 2.3, 2.6, 2.8], [0.25, 0.3, 0.4, 0.4, 0.5, 0.6, 0.8, 1, 1.2, 1.4, 1.4, 1.6, 1.8]],
  LN2: [7, [0.65, 0.8, 1, 1.1, 1.3, 1.6, 2.1, 2.5, 2.8, 3.2, 3.4, 3.9, 4.4], [0.4, 0.5, 0.6, 0.7, 0.8, 1, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8]],
  LN3: [7, [0.75, 0.9, 1.2, 1.4, 1.7, 2, 2.3, 2.9, 3.5, 4.2, 4.7, 5.9, 6.6], [0.5, 0.6, 0.8, 1, 1.2, 1.4, 1.6, 2, 2.5, 3, 3.5, 4.5, 5]],
  FN1: [6, [0.5, 0.6, 0.75, 0.8, 0.9, 1.1, 1.2, 1.3, 1.4, 1.8, 1.9, 2.4, 2.6, 2.9, 3.2, 3.5, 3.8, 4.3, 4.3, 4.9, 4.9, 5.5, 6.1, 7, 7], [0.3, 0.4, 0.5, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.3, 1.4, 1.8, 2, 2.2, 2.5, 2.8, 3, 3.5, 3.5, 4, 4, 4.5, 5, 6, 6]],
  FN2: [7, [0.85, 1, 1.4, 1.6, 1.6, 1.9, 1.9, 2.4, 2.4, 2.7, 2.9, 3.7, 3.9, 4.5, 5, 5.5, 6.2, 6.2, 7.2, 7.2, 8.2, 9.4, 9.4, 10.6, 11.6], [0.6, 0.7, 1, 1.2, 1.2, 1.4, 1.4, 1.8, 1.8, 2, 2.2, 2.8, 3, 3.5, 4, 4.5, 5, 5, 6, 6, 7, 8, 8, 9, 10]],
  FN3: [7, [N, N, N, N, N, N, 2.1, 2.6, 2.8, 3.2, 3.7, 4.4, 4.9, 6, 6, 7, 8.2, 8.2, 9.2, 10.2, 10.2, 11.4, 13.4, 13.6, 15.6], [N, N, N, N, N, N, 1.6, 2, 2.2, 2.5, 3, 3.5, 4, 5, 5, 6, 7, 7, 8, 9, 9, 10, 12, 12, 14]],
  FN4: [7, [0.95, 1.2, 1.6, 1.8, 1.8, 2.1, 2.3, 3.1, 3.4, 4.2, 4.7, 5.9, 6.9, 8, 8, 9, 10.2, 11.2, 13.2, 13.2, 15.2, 17.4, 19.4, 21.6, 23.6], [0.7, 0.9, 1.2, 1.4, 1.4, 1.6, 1.8, 2.5, 2.8, 3.5, 4, 5, 6, 7, 7, 8, 9, 10, 12, 12, 14, 16, 18, 20, 22]],
  FN5: [8, [1.3, 1.7, 2, 2.3, 2.5, 3, 3.3, 4, 5, 6.2, 7.2, 8.4, 9.4, 11.6, 13.6, 13.6, 15.8, 17.8, 17.8, 20, 22, 24.2, 27.2, 30.5, 32.5], [0.9, 1.2, 1.4, 1.6, 1.8, 2.2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 12, 14, 16, 16, 18, 20, 22, 25, 28, 30]],
}

/** One shaft that does not follow its grade: RC9 over 0.12 up to 0.24 in is 1.5 wide, not 1.8 (Handbook, 31st ed., read). */
const EXCEPTIONS: Readonly<Record<string, readonly [number, number]>> = { 'RC9 0.24': [-4.5, -6] }

/** Classes of ANSI B4.1 held here. */
export const INCH_CLASSES: readonly string[] = [...Object.keys(CLEARANCE_CLASSES), ...Object.keys(TIGHT_CLASSES)]

export interface InchLimits {
  readonly holeUpper: number
  readonly shaftUpper: number
  readonly shaftLower: number
}

/**
 * Limits of hole and shaft of a class in thousandths of an inch; undefined where ANSI B4.1 gives none.
 *
 * @example inchLimits({ inches: 1.5, fit: 'RC4' }).shaftLower   // -2
 */
export function inchLimits({ inches, fit }: { readonly inches: number; readonly fit: string }): InchLimits | undefined {
  const stepOf = (steps: readonly number[]) => (inches > 0 ? steps.findIndex((end) => inches <= end + 1e-9) : -1)
  const step = stepOf(STEPS)
  const loose = Object.hasOwn(CLEARANCE_CLASSES, fit) ? CLEARANCE_CLASSES[fit] : undefined
  if (loose && step >= 0) {
    const [holeGrade, shaftGrade, clearance] = loose
    const exception = EXCEPTIONS[`${fit} ${STEPS[step]}`]
    const least = CLEARANCE[clearance][step] as number
    const [shaftUpper, shaftLower] = exception ?? [-least, -least - (GRADES[shaftGrade]?.[step] as number)]
    return { holeUpper: GRADES[holeGrade]?.[step] as number, shaftUpper, shaftLower }
  }
  const tight = Object.hasOwn(TIGHT_CLASSES, fit) ? TIGHT_CLASSES[fit] : undefined
  if (!tight || step < 0) return undefined
  const [holeGrade, uppers, lowers] = tight
  const at = fit.startsWith('FN') ? stepOf(FORCE_STEPS) : step
  const [shaftUpper, shaftLower] = [uppers[at] as number, lowers[at] as number]
  if (Number.isNaN(shaftUpper)) return undefined
  return { holeUpper: GRADES[holeGrade]?.[step] as number, shaftUpper, shaftLower }
}
