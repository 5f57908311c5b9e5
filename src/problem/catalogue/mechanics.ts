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
  FIT_OF_CLASSES_UNREADABLE: {
    says: ({ received }) => `'${received}' is not a hole and a shaft.`,
    next: 'Write the class of the hole with its capital, a stroke, and that of the shaft, as H7/s6.',
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
    next: 'Leave out shims of the same thickness beyond what one pack can hold, and give readings to the micrometre or the tenth of a thou.',
    http: 422,
  },
  KEY_NOT_TABLED: {
    says: ({ shaft }) => `No parallel key is held here for a shaft of ${shaft}.`,
    next: 'The table runs over 6 up to 130 mm. Measure the key and both grooves.',
    http: 422,
  },
  // gears
  GEAR_TEETH_IMPOSSIBLE: {
    says: ({ what, received, fewest, most }) =>
      `${what} has to have a whole number of teeth from ${fewest} to ${most}, not ${received}.`,
    next: 'Mark the first tooth and count again.',
    http: 422,
  },
  GEAR_CENTRES_TOO_CLOSE: {
    says: ({ received, least }) =>
      `Gears of these teeth do not run at ${received}: their base circles meet at ${least}.`,
    next: 'Measure from shaft to shaft and add half of each shaft; count the teeth and check the module and the shifts.',
    http: 422,
  },
  GEAR_PIN_MISFIT: {
    says: ({ pin, why }) => `A pin of ${pin} does not measure this gear: ${why}.`,
    next: ({ take }) => `Take a pin of about ${take}.`,
    http: 422,
  },
  GEAR_SPAN_MISFIT: {
    says: ({ across, touch, low, high }) =>
      `Across ${across} teeth the jaws touch at a diameter of ${touch}; the flanks run from ${low} to ${high}.`,
    next: ({ take }) => `Measure across ${take} teeth.`,
    http: 422,
  },
  GEAR_READING_IMPOSSIBLE: {
    says: ({ reading, what }) => `A reading of ${reading} ${what} does not belong to a gear of these teeth and module.`,
    next: 'Count the teeth and those between the jaws; then check the module: figure which-gear.',
    http: 422,
  },
  GEAR_NOTHING_MEASURED: {
    says: () => 'Neither an outside diameter nor a span was given: the number of teeth alone tells no pitch.',
    next: 'Measure over the tips, and across some teeth and one more.',
    http: 422,
  },
  BEVEL_TRIES_WITHOUT_RATIO: {
    says: ({ change, move, doubt }) =>
      `The backlash changed by ${change} over ${move} of shim, and the readings may be out by ${doubt}: that gives no ratio.`,
    next: 'Reseat the bearings, turn the gears, and read the last try again; then move by more.',
    http: 422,
  },
  BEVEL_TRIES_MISSING: {
    says: ({ received }) => `Different shims tried: ${received}, and no ratio: nothing to work the next shim from.`,
    next: 'Note two tries with different shims, or give the ratio from the angles of the gears: figure bevel-backlash-ratio.',
    http: 422,
  },
  PINION_MARK_UNIT_UNKNOWN: {
    says: ({ received }) => `The unit of the depth mark is not known (${received}); it is not written on the gear.`,
    next: ({ units }) => `Find it in the book of the machine and give one of: ${units}.`,
    http: 422,
  },
  PINION_SHIM_SEAT_UNKNOWN: {
    says: ({ received }) =>
      `Where the depth shim sits is not known (${received}), so the sign of the mark is not either.`,
    next: ({ seats }) => `Look at the pinion and give one of: ${seats}.`,
    http: 422,
  },
  PLANETARY_SPEEDS_WANTED: {
    says: ({ known }) => `Two of the three speeds have to be known, the third follows; known here: ${known}.`,
    next: 'Give two of first gear (the sun), last gear (the ring) and carrier; a member that is held has the speed 0.',
    http: 422,
  },
  GEARS_DO_NOT_TOUCH: {
    says: ({ received, gap }) =>
      `At ${received} between centres these gears do not touch: the tips end ${gap} short of each other.`,
    next: 'Measure the tips and the centres again; of a ring the tip diameter is the inner one.',
    http: 422,
  },
  PLANET_TEETH_IMPOSSIBLE: {
    says: ({ received, sun, ring, low, high }) =>
      `A planet of ${received} teeth cannot stand between a sun of ${sun} and a ring of ${ring}: plain planets have ${low} to ${high}.`,
    next: 'Count again. Stepped planets, or two that mesh with each other, are no plain set: figure gear-train gives their basic ratio, figure planetary-by-ratio the speeds.',
    http: 422,
  },
  PLANETARY_RATIO_LOCKED: {
    says: ({ ratio }) => `With a basic ratio of ${ratio} these two speeds leave the third one open, or contradict it.`,
    next: 'Check the teeth: a set with a basic ratio of 1 turns as one, and one of 0 is none.',
    http: 422,
  },
  TOOTH_FORM_UNKNOWN: {
    says: ({ received, forms }) => `'${received}' is not a tooth form held here. Held are: ${forms}.`,
    next: 'Take the one nearest and weaker: 14.5 full is the weakest.',
    http: 422,
  },
  // bearings
  DRUM_TOO_DOUBTFUL: {
    says: ({ arm, torque }) => `With a drum and string of ${arm} no reading surely gives a torque of ${torque}.`,
    next: 'Measure drum and string closer.',
    http: 422,
  },
  THRUST_FACTOR_WANTED: {
    says: ({ received }) => `The thrust wants either the maker's Y or his K; told here: ${received}.`,
    next: 'Give the one that the catalogue of this bearing prints. Without either: figure equivalent-load-taper gives Y from the contact angle.',
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
  THREAD_PITCH_NOT_TOLD: {
    says: () => 'Neither pitch nor threads per inch was given.',
    next: 'Measure over ten threads and divide by ten, or hold a thread gauge to it.',
    http: 422,
  },
  THREAD_TAKES_NO_LOAD: {
    says: ({ received }) => `${received} is a pipe thread: it seals, and holds no load that can be reckoned here.`,
    next: 'Give the thread of the screw or stud that holds the joint.',
    http: 422,
  },
  // shafts
  INCH_KEY_NOT_TABLED: {
    says: ({ shaft }) => `No inch key is held here for a shaft of ${shaft}.`,
    next: 'The table runs over 5/16 up to 6 1/2 in. Measure the key and both grooves.',
    http: 422,
  },
  SPLINE_NOT_TABLED: {
    says: ({ splines, minor, major }) => `No standard shaft held here has ${splines} splines, ${minor} by ${major}.`,
    next: 'Measure again over the tips and in the roots; try the metric series (ISO 14) and the inch one (SAE). Else work from the sizes.',
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
  // measuring, stackup, hydraulics, lifting
  READINGS_TOO_FEW: {
    says: ({ what, received, expected }) => `${received} readings for ${what}; it takes ${expected} or more.`,
    next: 'Take more readings, each set up anew.',
    http: 422,
  },
  LIMITS_MISSING: {
    says: () => 'There is no limit to judge by.',
    next: 'Give a lower or an upper limit, or both, with where they come from.',
    http: 422,
  },
  NAME_NOT_THERE: {
    says: ({ received, expected }) => `'${received}' cannot go together with another: the names are ${expected}.`,
    next: 'Name two different ones of the list, spelt as they stand there.',
    http: 422,
  },
  CORRELATIONS_IMPOSSIBLE: {
    says: () => 'These correlations contradict each other: no parts can go together like this.',
    next: 'If a goes with b and b with c, then a goes with c too. Bring the coefficients nearer to 0.',
    http: 422,
  },
  VISCOSITY_POINTS_WRONG: {
    says: () => 'These two points of the oil sheet make no oil: it has to be thinner where it is warmer.',
    next: 'Give two different temperatures, usually 40 and 100 °C, each with its viscosity in mm²/s.',
    http: 422,
  },
  LINKAGE_DOES_NOT_CLOSE: {
    says: ({ received, expected }) =>
      `A ram of ${received} does not reach: between its pins it has to stay ${expected}.`,
    next: 'Measure the ram between its pins, in and out, and both radii from the pivot.',
    http: 422,
  },
  AIR_TEST_TOO_HIGH: {
    says: ({ received, ceiling, force }) =>
      `A leak test with air at ${received} is above the ceiling of ${ceiling}: the cover would be thrown with ${force}.`,
    next: 'Test with less, or fill with oil or water and test with that.',
    http: 422,
  },
  SLUNG_BELOW_CENTRE: {
    says: ({ eye, centre }) =>
      `An eye at ${eye} is not above the centre of mass at ${centre}: it may turn over as it lifts.`,
    next: 'Take hold above the centre of mass, or let a competent person sling it another way.',
    http: 422,
  },
  SLING_LEG_FLAT: {
    says: ({ name, angle }) => `The sling leg ${name} stands at ${angle} above level; below 30° none is worked out.`,
    next: 'Raise the hook with longer legs, or use a spreader.',
    http: 422,
  },
  HOOK_SHORT_OF_CENTRE: {
    says: ({ hook, centre }) =>
      `The hoist may hang ${hook} from the edge and the centre of mass lies up to ${centre} from it: the hoist would lift the whole unit, which then swings, instead of turning it.`,
    next: 'Take hold beyond the centre of mass, at the far side from the edge that it turns about.',
    http: 422,
  },
  CENTRE_OUTSIDE_SLING: {
    says: () => 'The centre of mass is not between the eyes: some leg would have to push.',
    next: 'Move an eye to the other side of the centre of mass, or find the centre again.',
    http: 422,
  },
  EYEBOLT_WITHOUT_SHOULDER: {
    says: ({ angle }) =>
      `An eyebolt without a shoulder is for straight pull alone, not for ${angle} off its axis: it bends and breaks.`,
    next: 'Take a shouldered eyebolt or a swivel ring, or a spreader that pulls straight.',
    http: 422,
  },
  LIFT_TOO_OFTEN: {
    says: ({ received, duration }) =>
      `Nobody lifts by hand ${received} times a minute for ${duration}: the limit is 0 kg.`,
    next: 'Lift less often or for a shorter time, or use a hoist.',
    http: 422,
  },
  FORMULA_FAILS: {
    says: () => 'The formula gives no number for some of the drawn values.',
    next: 'Narrow the spreads: a draw may have crossed zero under a fraction or a root.',
    http: 422,
  },
  DATE_UNREADABLE: {
    says: ({ received }) => `'${received}' is no day of the calendar.`,
    next: 'Write year, month and day as 2026-03-31.',
    http: 422,
  },
  // times
  NOTHING_TOLD: {
    says: ({ what, wants }) => `Nothing is told of ${what}: it takes one ${wants} or more.`,
    next: 'Tell at least one.',
    http: 422,
  },
  WORK_TWICE: {
    says: ({ name }) => `'${name}' is told twice.`,
    next: 'Give each work its own name: what comes after them has to say which one it waits for.',
    http: 422,
  },
  WORK_NOT_THERE: {
    says: ({ name, received, expected }) =>
      `'${name}' waits for '${received}', which is not told. Told are: ${expected}.`,
    next: 'Spell it as it stands there, or tell that work too.',
    http: 422,
  },
  WORK_IN_CIRCLE: {
    says: ({ names }) => `These wait for each other, so that none can begin: ${names}.`,
    next: 'Look at what each comes after, and take out what need not wait.',
    http: 422,
  },
})
