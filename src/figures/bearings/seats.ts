// Seats of rolling bearings and the clearance that they leave.
import { bearingBore, bearingSeat, clearanceLeft, housingSeat, shaftSeat } from '../../mechanics/index.ts'
import { choice, exact, known, optional, ownMaterial, text, told, yesNo } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say, sayAnswer, sayWords } from '../frame/say.ts'

export const BEARING_SEATS = [
  figure({
    name: 'shaft-seat',
    asks: 'Which tolerance does the shaft seat of this bearing usually have?',
    of: ['shaftSeat'],
    inputs: {
      bore: exact('length'),
      kind: choice('ball', 'roller', 'loose inner ring'),
      innerTurns: told(yesNo, 'whether the load goes round on the inner ring, as with a turning shaft'),
    },
    work: shaftSeat,
    answers: ({ toleranceClass }) => ({ 'tolerance class of the shaft': sayWords(toleranceClass) }),
    words: 'looked up: the usual class by bore and load; figure limits gives its sizes',
    example: 'bore=40 mm kind=ball inner-turns=yes',
  }),
  figure({
    name: 'housing-seat',
    asks: 'Which tolerance does the housing seat of a bearing usually have?',
    of: ['housingSeat'],
    inputs: {
      duty: choice(
        'outer ring stands',
        'outer ring turns, light load',
        'outer ring turns, normal load',
        'outer ring turns, heavy load or thin wall',
      ),
    },
    work: ({ duty }) => housingSeat(duty),
    answers: ({ toleranceClass }) => ({ 'tolerance class of the bore': sayWords(toleranceClass) }),
    words: 'looked up: the usual class by how the outer ring is loaded',
    example: 'duty="outer ring stands"',
  }),
  figure({
    name: 'bearing-bore',
    asks: 'What may the bore of a new metric bearing measure?',
    of: ['bearingBore'],
    inputs: { bore: exact('length'), tolerance: choice('Normal', 'class 5') },
    work: bearingBore,
    answers: ({ upper, lower }, { bore }) => ({
      'bore, least to most': say('length', { low: (bore + lower) as typeof bore, high: (bore + upper) as typeof bore }),
    }),
    words: 'nominal bore and its deviations, looked up',
    example: 'bore=40 mm tolerance=Normal',
  }),
  figure({
    name: 'bearing-seat',
    asks: 'How tight is a new bearing on a shaft made to this class?',
    of: ['bearingSeat'],
    inputs: {
      bore: exact('length'),
      tolerance: choice('Normal', 'class 5'),
      shaftClass: told(text, 'tolerance class of the shaft, as k6'),
    },
    work: bearingSeat,
    answers: (interference) => ({ 'interference (below zero clearance)': say('length', interference) }),
    words: 'interference = limits of the shaft − limits of the bore, loosest to tightest pair',
    example: 'bore=40 mm tolerance=Normal shaft-class=k6',
  }),
  figure({
    name: 'clearance-left',
    asks: 'How much of the bearing’s own clearance is left once it is on its seats and warm?',
    of: ['clearanceLeft'],
    inputs: {
      clearance: known('length'),
      bore: told(exact('length'), 'bore of the bearing'),
      innerRaceway: exact('length'),
      outside: told(exact('length'), 'outside diameter of the bearing'),
      outerRaceway: exact('length'),
      shaftInterference: known('length'),
      housingInterference: known('length'),
      shaftBore: optional(told(exact('length'), 'bore of a hollow shaft; left out solid')),
      housingOutside: optional(exact('length')),
      shaft: optional(told(ownMaterial, 'left out steel')),
      housing: optional(told(ownMaterial, 'left out grey iron')),
      innerWarmer: optional(known('temperature difference')),
    },
    work: clearanceLeft,
    answers: ({ left, staysFree, innerGrowth, outerClosing, heatLoss }) => ({
      'clearance left (below zero preload)': say('length', left),
      'stays free': sayAnswer(staysFree, 'no'),
      'inner raceway grows': say('length', innerGrowth),
      'outer raceway closes': say('length', outerClosing),
      'warmth takes': say('length', heatLoss),
    }),
    words:
      'clearance left = clearance as bought − growth of the inner raceway − closing of the outer one − what warmth takes',
    example:
      'clearance=20..40 µm bore=50 mm inner-raceway=60 mm outside=90 mm outer-raceway=80 mm shaft-interference=10..25 µm housing-interference=0 µm inner-warmer=10 °C',
  }),
]
