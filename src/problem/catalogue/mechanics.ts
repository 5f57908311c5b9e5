// Problems of the calculations: inputs outside what a formula is true for.
import { table } from '../entry.ts'

export const MECHANICS = table({
  VALUE_OUTSIDE: {
    says: ({ what, received, expected }) => `For this calculation ${what} has to be ${expected}, not ${received}.`,
    next: 'Check the reading and its unit. Outside these limits the formula is not true.',
    http: 422,
  },
  RANGE_TURNED: {
    says: ({ low, high }) => `A range has its low end first: ${low} is above ${high} (in SI units).`,
    next: 'Turn the two round.',
    http: 422,
  },
  THREAD_PITCH_IMPOSSIBLE: {
    says: ({ pitch, diameter }) => `A ${diameter} thread cannot have a pitch of ${pitch}.`,
    next: 'Give the distance between two threads, not threads per inch: 16 tpi is 1.5875 mm.',
    http: 422,
  },
  TOLERANCE_CLASS_UNKNOWN: {
    says: ({ received }) => `'${received}' is not a tolerance class of ISO 286 that is held here.`,
    next: 'Write the letter and the grade, as H7 for a hole or k6 for a shaft.',
    http: 422,
  },
  TOLERANCE_CLASS_NOT_TABLED: {
    says: ({ received, size }) => `ISO 286 gives no limits for ${received} at ${size}.`,
    next: 'Give the limits from the drawing, or take a class that the standard has at this size.',
    http: 422,
  },
  HUB_INSIDE_SHAFT: {
    says: ({ hub, joint, bore }) =>
      `A hub of ${hub} outside, a joint of ${joint} and a shaft bore of ${bore} do not go round each other.`,
    next: 'The hub outside has to be larger than the joint, and the bore of a hollow shaft smaller.',
    http: 422,
  },
  FIT_WITHOUT_INTERFERENCE: {
    says: ({ interference }) =>
      `These sizes leave no interference: at most ${interference} after the roughness is pressed flat.`,
    next: 'Measure the shaft and the bore again. A fit without interference carries nothing by friction.',
    http: 422,
  },
  SHIM_TARGET_BELOW_ZERO: {
    says: ({ high }) => `The wanted shim is ${high} at most: there is no room for any shim.`,
    next: 'Check the signs of the loop and the readings. If they are right, a face has to be cut back.',
    http: 422,
  },
  SHIM_STOCK_TOO_LARGE: {
    says: ({ received, expected }) => `${received} shims to choose from; at most ${expected} can be searched.`,
    next: 'Leave out shims of the same thickness beyond what one pack can hold.',
    http: 422,
  },
  KEY_NOT_TABLED: {
    says: ({ shaft }) => `No parallel key is held here for a shaft of ${shaft}.`,
    next: 'The table runs over 6 up to 130 mm. Measure the key and both grooves.',
    http: 422,
  },
  // fits
  INCH_FIT_UNKNOWN: {
    says: ({ received }) => `'${received}' is not a class of fit of ANSI B4.1.`,
    next: 'Write RC1 to RC9, LC1 to LC11, LT1 to LT6, LN1 to LN3 or FN1 to FN5.',
    http: 422,
  },
  INCH_FIT_NOT_TABLED: {
    says: ({ received, size }) => `ANSI B4.1 gives no limits for ${received} at ${size}.`,
    next: 'Give the limits from the drawing. The tables run up to 19.69 in; LT3 and LT4 start above 0.24 in, FN3 above 0.95 in.',
    http: 422,
  },
  // threads
  THREAD_TAPER_NOT_DRILLED: {
    says: ({ received }) => `${received} is a taper thread: one drill does not make its hole.`,
    next: "Drill and ream to the tap maker's list.",
    http: 422,
  },
  THREAD_PITCH_NOT_TOLD: {
    says: () => 'Neither pitch nor threads per inch was given.',
    next: 'Measure over ten threads and divide by ten, or hold a thread gauge to it.',
    http: 422,
  },
  // shafts
  INCH_KEY_NOT_TABLED: {
    says: ({ shaft }) => `No inch key is held here for a shaft of ${shaft}.`,
    next: 'The table runs over 5/16 up to 6 1/2 in. Measure the key and both grooves.',
    http: 422,
  },
  SPLINE_NOT_TABLED: {
    says: ({ splines, minor, major }) => `ISO 14 has no shaft of ${splines} splines, ${minor} by ${major}.`,
    next: 'Measure again over the tips and in the roots. Older and inch splines are not held here: work from the sizes.',
    http: 422,
  },
  SNAP_RING_NOT_TABLED: {
    says: ({ on, diameter }) => `No snap ring is held here for a ${on} of ${diameter}.`,
    next: 'Give the nominal size (DIN 471 3 to 130 mm, DIN 472 8 to 130 mm), or measure ring and groove.',
    http: 422,
  },
  O_RING_NOT_HELD: {
    says: ({ received }) => `'${received}' is no O-ring of AS568 that is held here.`,
    next: 'Write the three digits, as 210; or measure inside diameter and cord.',
    http: 422,
  },
})
