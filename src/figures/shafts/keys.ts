// Keys and splines.
import {
  inchKey,
  inchSpline,
  involuteSpline,
  keyLength,
  keyTorque,
  parallelKey,
  splineBearingTorque,
  splineBetweenPins,
  splineOverPins,
  splineShearTorque,
  splineSpace,
  splineThickness,
  straightSpline,
} from '../../mechanics/index.ts'
import { choice, choiceOf, exact, known, number, optional, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say, sayWords } from '../frame/say.ts'

const section = {
  shaft: told(exact('length'), 'diameter of the shaft'),
  width: told(exact('length'), 'width of the key'),
  height: told(exact('length'), 'height of the key; half of it bears on the hub'),
  shearStrength: told(
    exact('pressure'),
    'strength in shear of the weakest of key, shaft and hub: 0.58 of its yield strength, which figure material has',
  ),
  bearingStrength: told(exact('pressure'), 'strength in compression of the weakest of them: its yield strength'),
}

const pressureAngle = told(choiceOf({ '30°': 30, '37.5°': 37.5, '45°': 45 } as const), 'pressure angle')
const pinned = {
  module: told(exact('length'), 'module; one inch ÷ diametral pitch'),
  teeth: told(whole, 'number of teeth'),
  pressureAngle,
}
const shaftPin = told(exact('length'), 'diameter of the pin as measured; 1.92 modules is usual')
const hubPin = told(exact('length'), 'diameter of the pin as measured; 1.728 modules is usual')

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
    cautions: ['A shaft of an inch size has an inch key, not this one: figure inch-key.'],
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
    cautions: [
      'Nothing is in hand in this: it is where the key fails. Work it with a half to a third of it, with less for knocks or turning both ways (common practice, no source).',
      'What is longer than one and a half shaft diameters does not bear evenly.',
    ],
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
      module: pinned.module,
      teeth: whole,
      pressureAngle,
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
    name: 'inch-spline',
    asks: 'Which straight-sided inch spline is this, and what was it made for?',
    of: ['inchSpline'],
    inputs: { splines: whole, majorDiameter: exact('length'), minorDiameter: exact('length') },
    work: inchSpline,
    answers: ({ fit, width, minorDiameter, height }) => ({
      'made for': sayWords(fit === 'permanent' ? 'a permanent fit' : fit),
      'width of a spline': say('length', width),
      'in the roots, as made': say('length', minorDiameter),
      'height that bears': say('length', height),
    }),
    words: 'shares of the major diameter that go with the number of splines; the depth tells the fit',
    example: 'splines=6 major-diameter=1-1/2 in minor-diameter=1.274 in',
  }),
  figure({
    name: 'spline-over-pins',
    asks: 'What should an involute spline shaft measure over pins?',
    of: ['splineOverPins'],
    inputs: {
      ...pinned,
      pin: shaftPin,
      thickness: optional(told(known('length'), 'of a tooth along the pitch circle; left out half the pitch, unworn')),
    },
    work: splineOverPins,
    answers: (size) => ({ 'over the pins': say('length', size) }),
    words: 'the pin rests where the involute of the space is as wide as it; size = twice its centre circle + pin',
    example: 'module=2.5 mm teeth=24 pressure-angle=30° pin=4.8 mm',
  }),
  figure({
    name: 'spline-between-pins',
    asks: 'What should an involute spline hub measure between pins?',
    of: ['splineBetweenPins'],
    inputs: {
      ...pinned,
      pin: hubPin,
      space: optional(
        told(known('length'), 'width of a space along the pitch circle; left out half the pitch, unworn'),
      ),
    },
    work: splineBetweenPins,
    answers: (size) => ({ 'between the pins': say('length', size) }),
    words: 'as spline-over-pins with the teeth inward',
    example: 'module=2.5 mm teeth=24 pressure-angle=30° pin=4.32 mm',
  }),
  figure({
    name: 'spline-thickness',
    asks: 'How thick are the teeth of a spline shaft by this reading over pins?',
    of: ['splineThickness'],
    inputs: { ...pinned, pin: shaftPin, reading: told(known('length'), 'over the pins as read') },
    work: splineThickness,
    answers: (thickness) => ({ 'thickness of a tooth': say('length', thickness) }),
    words: 'spline-over-pins turned round; what is missing to half the pitch is allowance and wear together',
    example: 'module=2.5 mm teeth=24 pressure-angle=30° pin=4.8 mm reading=66.95..67 mm',
  }),
  figure({
    name: 'spline-space',
    asks: 'How wide are the spaces of a spline hub by this reading between pins?',
    of: ['splineSpace'],
    inputs: { ...pinned, pin: hubPin, reading: told(known('length'), 'between the pins as read') },
    work: splineSpace,
    answers: (space) => ({ 'width of a space': say('length', space) }),
    words: 'spline-between-pins turned round',
    example: 'module=2.5 mm teeth=24 pressure-angle=30° pin=4.32 mm reading=53..53.1 mm',
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
