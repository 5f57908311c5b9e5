// Keys and splines.
import {
  inchKey,
  involuteSpline,
  keyLength,
  keyTorque,
  parallelKey,
  splineBearingTorque,
  splineShearTorque,
  straightSpline,
} from '../../mechanics/index.ts'
import { choice, choiceOf, exact, number, optional, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say, sayWords } from '../frame/say.ts'

const section = {
  shaft: told(exact('length'), 'diameter of the shaft'),
  width: told(exact('length'), 'width of the key'),
  height: told(exact('length'), 'height of the key; half of it bears on the hub'),
  shearStrength: told(exact('pressure'), 'strength in shear of the weakest of key, shaft and hub'),
  bearingStrength: told(exact('pressure'), 'strength in compression of the weakest of them'),
}

export const KEYS = [
  figure({
    name: 'key',
    asks: 'Which metric key and grooves belong to this shaft?',
    of: ['parallelKey'],
    inputs: { shaft: told(exact('length'), 'diameter of the shaft') },
    work: ({ shaft }) => parallelKey(shaft),
    answers: ({ width, height, shaftDepth, hubDepth }) => ({
      width: say('length', width),
      height: say('length', height),
      'depth in the shaft': say('length', shaftDepth),
      'depth in the hub': say('length', hubDepth),
    }),
    words: 'looked up by the diameter of the shaft',
    example: 'shaft=54 mm',
  }),
  figure({
    name: 'inch-key',
    asks: 'Which inch key and grooves belong to this shaft, measured over the groove?',
    of: ['inchKey'],
    inputs: { shaft: told(exact('length'), 'diameter of the shaft'), form: optional(choice('square', 'rectangular')) },
    work: inchKey,
    answers: ({ width, height, overShaft, overHub }) => ({
      width: say('length', width),
      height: say('length', height),
      'bottom of groove to far side of shaft': say('length', overShaft),
      'bottom of groove to far side of bore': say('length', overHub),
    }),
    words:
      'key looked up by the diameter of the shaft; (diameter − height ± √(diameter² − width²)) ÷ 2 for the grooves',
    example: 'shaft=1-1/2 in',
  }),
  figure({
    name: 'key-length',
    asks: 'How long must the key be for this torque?',
    of: ['keyLength'],
    inputs: { torque: exact('torque'), safety: number, ...section },
    work: ({ torque, safety, ...rest }) => keyLength({ torque, safety, section: rest }),
    answers: ({ forShear, forCrushing }) => ({
      'length so that it does not shear': say('length', forShear),
      'length so that its side is not crushed': say('length', forCrushing),
    }),
    words: 'length = 2 × torque × safety ÷ (shaft × width × shear strength), and the same with half the height',
    example:
      'torque=180..200 lbf·in safety=2.5 shaft=1/2 in width=1/8 in height=1/8 in shear-strength=30500 psi bearing-strength=51000 psi',
  }),
  figure({
    name: 'key-torque',
    asks: 'Which torque does this key carry before it shears or crushes?',
    of: ['keyTorque'],
    inputs: { length: exact('length'), ...section },
    work: ({ length, ...rest }) => keyTorque({ length, section: rest }),
    answers: ({ byShear, byCrushing }) => ({
      'torque that shears it': say('torque', byShear),
      'torque that crushes its side': say('torque', byCrushing),
    }),
    words: 'torque = half the shaft × length × width × shear strength, and the same with half the height',
    example: 'length=50 mm shaft=50 mm width=14 mm height=9 mm shear-strength=200 MPa bearing-strength=300 MPa',
  }),
  figure({
    name: 'straight-spline',
    asks: 'Which standard spline is this, and how wide was it new?',
    of: ['straightSpline'],
    inputs: { splines: whole, minorDiameter: exact('length'), majorDiameter: exact('length') },
    work: straightSpline,
    answers: ({ series, splines, minorDiameter, majorDiameter, width }) => ({
      series: sayWords(`${splines} splines, ${series} series`),
      'over the tips': say('length', majorDiameter),
      'in the roots': say('length', minorDiameter),
      'width of a spline': say('length', width),
    }),
    words: 'looked up by the number of splines and both diameters',
    example: 'splines=8 minor-diameter=35.95 mm major-diameter=41.9 mm',
  }),
  figure({
    name: 'involute-spline',
    asks: 'What are the sizes of this involute spline?',
    of: ['involuteSpline'],
    inputs: {
      module: exact('length'),
      teeth: whole,
      pressureAngle: told(choiceOf({ '30°': 30, '37.5°': 37.5, '45°': 45 } as const), 'pressure angle'),
    },
    work: involuteSpline,
    answers: (spline) => ({
      'pitch diameter': say('length', spline.pitchDiameter),
      'over the tips of the shaft': say('length', spline.shaftMajor),
      'root of the shaft': say('length', spline.shaftMinor),
      'root of the hub': say('length', spline.hubMajor),
      'thickness of a tooth': say('length', spline.thickness),
      'base diameter': say('length', spline.baseDiameter),
    }),
    words: 'pitch diameter = module × teeth; tips and roots by shares of the module that go with the pressure angle',
    example: 'module=2 mm teeth=20 pressure-angle=30°',
  }),
  figure({
    name: 'spline-shear',
    asks: 'At which torque do the teeth of a spline shear off?',
    of: ['splineShearTorque'],
    inputs: {
      majorDiameter: exact('length'),
      length: told(exact('length'), 'length in contact'),
      shearStrength: exact('pressure'),
      safety: number,
    },
    work: splineShearTorque,
    answers: (torque) => ({ torque: say('torque', torque) }),
    words: 'torque = shear strength × π × major diameter² × length ÷ 16 ÷ safety: half the teeth carry',
    example: 'major-diameter=1 in length=2 in shear-strength=30500 psi safety=2',
  }),
  figure({
    name: 'spline-wear',
    asks: 'Which torque do the sides of a spline bear without wearing fast?',
    of: ['splineBearingTorque'],
    inputs: {
      splines: whole,
      minorDiameter: told(exact('length'), 'where the sides begin to touch'),
      majorDiameter: told(exact('length'), 'where they end'),
      length: told(exact('length'), 'length in contact'),
      pressure: exact('pressure'),
      share: optional(number),
    },
    work: splineBearingTorque,
    answers: (torque) => ({ torque: say('torque', torque) }),
    words: 'torque = share that carries × splines × height × length × pressure × mean radius',
    example: 'splines=10 minor-diameter=72 mm major-diameter=82 mm length=80 mm pressure=7 MPa',
  }),
]
