// Shafts and pins: stress, run-out, taper.
import { materialOf, pinShear, pinTorque, shaftStress, splitRunOut, taperOf } from '../../mechanics/index.ts'
import { micrometre } from '../../quantity/constructors.ts'
import { choiceOf, exact, known, knownNumber, list, material, optional, rows, told } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { margin, say, sayAnswer, sayNumber } from '../frame/say.ts'

/** Below it a shaft runs true and has no high side; the angle would be what rounding left. */
const NOTHING = micrometre(0.01)

const shearStrength = told(
  exact('pressure'),
  'strength in shear: 0.58 of the yield strength before it bends, 0.8 of the tensile strength of steel as it breaks (figure material has both); of a pin that has to shear give the range',
)

const SHEARS = [
  'This is where it shears, not what it may carry: knocks and many turns shear it at far less. A pin that is meant to shear is renewed with the maker’s own; a stronger one moves the break to what is dear.',
]

export const SHAFTS = [
  figure({
    name: 'shaft-stress',
    asks: 'Does this shaft still stand its torque and bending?',
    of: ['shaftStress'],
    inputs: {
      diameter: known('length'),
      bore: optional(exact('length')),
      torque: known('torque'),
      bendingMoment: optional(known('torque')),
      notch: optional(knownNumber),
      yieldStrength: optional(told(known('pressure'), 'yield strength of the shaft; left out that of the material')),
      material,
    },
    work: ({ yieldStrength, material, ...rest }) => {
      const strength = yieldStrength ?? materialOf(material).yieldStrength
      return { strength, ...shaftStress({ ...rest, yieldStrength: strength }) }
    },
    answers: ({ torsion, bending, together, staysElastic, strength }) => ({
      'stress by torsion': say('pressure', torsion),
      'stress by bending': say('pressure', bending),
      'both together (von Mises)': say('pressure', together),
      'stays below yield': sayAnswer(staysElastic, 'no'),
      'below yield by': margin('pressure', { value: together, limit: strength }),
      'yield strength that was taken': say('pressure', strength),
    }),
    words:
      'torsion = 16 × torque ÷ (π × diameter³); bending = 32 × moment ÷ (π × diameter³); together √(bending² + 3 × torsion²)',
    cautions: [
      'A keyway, a shoulder or a bend that turns with the shaft breaks it at far less: give the notch.',
      'Gears, chains and belts bend a shaft as well as they turn it, often harder: give the bending moment.',
    ],
    example: 'diameter=39.6..40 mm torque=500 N·m bending-moment=300 N·m notch=1.5..2 yield-strength=300 MPa',
  }),
  figure({
    name: 'pin-shear',
    asks: 'At which force does a pin shear?',
    of: ['pinShear'],
    inputs: {
      diameter: exact('length'),
      shearStrength,
      planes: told(
        choiceOf({ one: 1, two: 2 } as const),
        'one for a pin that joins two parts, two for one through a shaft',
      ),
    },
    work: pinShear,
    answers: (force) => ({ 'shears at': say('force', force) }),
    cautions: SHEARS,
    words: 'force = planes × section of the pin × shear strength',
    example: 'diameter=8 mm shear-strength=280..320 MPa planes=two',
  }),
  figure({
    name: 'pin-torque',
    asks: 'At which torque does a pin across a shaft shear?',
    of: ['pinTorque'],
    inputs: {
      pin: told(exact('length'), 'diameter of the pin'),
      shaft: told(exact('length'), 'diameter of the shaft where the hub ends on it'),
      shearStrength,
    },
    work: pinTorque,
    answers: (torque) => ({ 'shears at': say('torque', torque) }),
    cautions: SHEARS,
    words: 'torque = section of the pin × shear strength × diameter of the shaft',
    example: 'pin=5/16 in shaft=1-1/2 in shear-strength=45 ksi',
  }),
  figure({
    name: 'run-out',
    asks: 'Is the shaft bent, oval or just rough, from dial readings round it?',
    of: ['splitRunOut'],
    inputs: { readings: list(exact('length')) },
    work: ({ readings }) => splitRunOut(readings),
    answers: ({ total, eccentricity, highAt, ovality, rest }) => ({
      'total run-out': say('length', total),
      'off its axis (bend or bad centre)': say('length', eccentricity),
      'highest at, from the first reading': eccentricity > NOTHING ? say('angle', highAt) : undefined,
      ovality: say('length', ovality),
      'neither of them': say('length', rest),
    }),
    words: 'what goes round once a turn is bend, what goes round twice is ovality, what is left is form and dirt',
    example: 'readings=20, 10, -10, -25, -12, 9 µm',
  }),
  figure({
    name: 'journal-taper',
    asks: 'Is the journal tapered, or worn in the middle?',
    of: ['taperOf'],
    inputs: {
      stations: rows({
        along: told(exact('length'), 'distance along the part'),
        diameter: told(exact('length'), 'diameter there'),
      }),
    },
    work: ({ stations }) => taperOf(stations),
    answers: ({ taper, offStraight }) => ({
      'taper, on the diameter for a length of one': sayNumber(taper),
      'most off a straight taper': say('length', offStraight),
    }),
    words: 'a straight line through the diameters by least squares; the rest is what departs from it',
    example: 'stations="0 mm, 50.00 mm; 50 mm, 49.99 mm; 100 mm, 50.02 mm"',
  }),
]
