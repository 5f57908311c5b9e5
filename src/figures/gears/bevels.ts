// Bevel gears: blanks, shims, marks.
import {
  bevelBacklashChange,
  bevelBacklashRatio,
  learnBacklashRatio,
  nextBevelShim,
  pinionShimForMark,
  pitchCones,
  spiralBevelPair,
  straightBevelPair,
  wheelMoveKeepingBacklash,
} from '../../mechanics/index.ts'
import { choice, exact, known, knownNumber, limits, number, optional, rows, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say, sayNumber, sayWords } from '../frame/say.ts'

const teeth = { pinionTeeth: told(whole, 'teeth of the pinion'), wheelTeeth: told(whole, 'teeth of the wheel') }
const shaftAngle = optional(told(exact('angle'), 'angle between the shafts; left out 90°'))
const moving = {
  pressureAngle: told(known('angle'), 'pressure angle; a range where it is not known: 14.5..20°'),
  coneAngle: told(exact('angle'), 'pitch cone of the gear that is moved: figure pitch-cones gives it'),
  spiralAngle: optional(told(known('angle'), 'spiral angle; left out 0°, straight teeth')),
}
const tries = told(
  rows({ shim: told(exact('length'), 'that was in'), backlash: told(known('length'), 'that was read') }),
  'shim and backlash of each try, in their order',
)
const readingStep = optional(exact('length'))
const blankLines = ({ coneDistance, ratio, meanModule, pinion, wheel }: ReturnType<typeof straightBevelPair>) => ({
  ratio: sayNumber(ratio),
  'cone distance': say('length', coneDistance),
  'module at the middle of the face': say('length', meanModule),
  ...gearLines('pinion', pinion),
  ...gearLines('wheel', wheel),
})
const gearLines = (name: string, gear: ReturnType<typeof straightBevelPair>['pinion']) => ({
  [`${name}: pitch cone`]: say('angle', gear.coneAngle),
  [`${name}: face cone of the blank`]: say('angle', gear.faceAngle),
  [`${name}: root cone`]: say('angle', gear.rootAngle),
  [`${name}: pitch diameter`]: say('length', gear.pitchDiameter),
  [`${name}: mean diameter`]: say('length', gear.meanDiameter),
  [`${name}: outside diameter`]: say('length', gear.outsideDiameter),
  [`${name}: height above the pitch cone`]: say('length', gear.addendum),
  [`${name}: depth below it`]: say('length', gear.dedendum),
  [`${name}: axes to outer tips`]: say('length', gear.crown),
})

export const BEVELS = [
  figure({
    name: 'pitch-cones',
    asks: 'What are the pitch cones of this bevel pair?',
    of: ['pitchCones'],
    inputs: { ...teeth, shaftAngle },
    work: pitchCones,
    answers: ({ pinionCone, wheelCone }) => ({ pinion: say('angle', pinionCone), wheel: say('angle', wheelCone) }),
    words: 'tangent of the wheel’s cone = wheel teeth ÷ pinion teeth, for shafts at 90°',
    example: 'pinion-teeth=10 wheel-teeth=40',
  }),
  figure({
    name: 'bevel-pair',
    asks: 'What are the sizes of this straight bevel pair?',
    of: ['straightBevelPair'],
    inputs: {
      module: told(exact('length'), 'module at the outer end'),
      ...teeth,
      shaftAngle,
      faceWidth: told(exact('length'), 'face width'),
      addendum: optional(exact('length')),
      dedendum: optional(exact('length')),
    },
    work: straightBevelPair,
    answers: blankLines,
    words:
      'cones by the teeth; cone distance = half the pitch diameter ÷ sine of the cone; blanks by the heights of the teeth',
    example: 'module=6 mm pinion-teeth=30 wheel-teeth=45 face-width=40 mm',
  }),
  figure({
    name: 'spiral-bevel-pair',
    asks: 'What are the sizes of this spiral bevel pair, cut the usual way?',
    of: ['spiralBevelPair'],
    inputs: {
      module: told(exact('length'), 'module at the outer end'),
      ...teeth,
      faceWidth: told(exact('length'), 'face width'),
      spiralAngle: exact('angle'),
    },
    work: spiralBevelPair,
    answers: blankLines,
    words: 'as bevel-pair, with the long teeth of the pinion that such gears were cut with',
    example: 'module=4 mm pinion-teeth=15 wheel-teeth=45 face-width=28 mm spiral-angle=35°',
  }),
  figure({
    name: 'bevel-backlash-ratio',
    asks: 'How much backlash does a bevel gear gain for each unit it is moved?',
    of: ['bevelBacklashRatio'],
    inputs: moving,
    work: bevelBacklashRatio,
    answers: (ratio) => ({ 'backlash for each unit of shim': sayNumber(ratio) }),
    words: 'ratio = 2 × tangent of the pressure angle × sine of the cone ÷ cosine of the spiral',
    example: 'pressure-angle=14.5..20° cone-angle=75.96°',
  }),
  figure({
    name: 'bevel-backlash-change',
    asks: 'How much backlash does this move of a bevel gear add?',
    of: ['bevelBacklashChange'],
    inputs: { move: known('length'), ...moving },
    work: bevelBacklashChange,
    answers: (change) => ({ 'backlash changes by': say('length', change) }),
    words: 'change = move × ratio of figure bevel-backlash-ratio',
    example: 'move=4 thou pressure-angle=20° cone-angle=63.435°',
  }),
  figure({
    name: 'wheel-follows-pinion',
    asks: 'How far must the wheel follow when I move the pinion for depth?',
    of: ['wheelMoveKeepingBacklash'],
    inputs: {
      pinionMove: told(known('length'), 'along the pinion’s axis, out of mesh above zero'),
      pinionCone: told(exact('angle'), 'pitch cone of the pinion: figure pitch-cones gives it'),
      wheelCone: told(exact('angle'), 'pitch cone of the wheel'),
    },
    work: wheelMoveKeepingBacklash,
    answers: (move) => ({ 'move the wheel (out of mesh above zero)': say('length', move) }),
    words: 'move of the wheel = − move of the pinion × sine of its cone ÷ sine of the wheel’s cone',
    example: 'pinion-move=-0.10 mm pinion-cone=14.04° wheel-cone=75.96°',
  }),
  figure({
    name: 'learn-backlash-ratio',
    asks: 'What does shim do to the backlash of this very gearcase, by my tries?',
    of: ['learnBacklashRatio'],
    inputs: { tries, readingStep },
    work: learnBacklashRatio,
    answers: ({ ratio }) => ({ 'backlash for each unit of shim': sayNumber(ratio) }),
    words: 'slope of the straight line through the tries; its range is what the step of the dial can hide',
    example: 'tries="1.00 mm, 0.40 mm; 1.20 mm, 0.26 mm"',
  }),
  figure({
    name: 'next-bevel-shim',
    asks: 'Which shim do I try next for the backlash I want?',
    of: ['nextBevelShim'],
    inputs: { tries, target: limits('length'), ratio: optional(knownNumber), readingStep },
    work: nextBevelShim,
    answers: ({ shim, sure, possible, ratio }) => ({
      'try a shim of': say('length', shim),
      'shims that surely fit': say('length', sure),
      'shims that may fit': say('length', possible),
      'backlash for each unit of shim': sayNumber(ratio),
    }),
    words: 'next shim = last shim + (middle of the target − last backlash) ÷ ratio',
    example: 'tries="1.00 mm, 0.40 mm; 1.20 mm, 0.26 mm" target=0.13..0.18 mm',
  }),
  figure({
    name: 'pinion-mark-shim',
    asks: 'Which depth shim does a pinion with another depth mark need?',
    of: ['pinionShimForMark'],
    inputs: {
      shim: told(exact('length'), 'that belonged to the old pinion, as measured'),
      oldMark: told(number, 'as etched, with its sign'),
      newMark: told(number, 'as etched, with its sign'),
      markUnit: optional(
        told(
          choice('thou', 'hundredths of a millimetre', 'thousandths of a millimetre'),
          'unit of the marks, from the machine’s book; without it the answer is refused',
        ),
      ),
      shimSeat: optional(
        told(
          choice(
            'between head and bearing',
            'behind the cup of the head bearing',
            'under the flange of the bearing sleeve',
          ),
          'where the shim sits; without it the answer is refused',
        ),
      ),
    },
    work: pinionShimForMark,
    answers: ({ shim, change, says }) => ({
      'new shim': say('length', shim),
      'thicker by': say('length', change),
      rule: sayWords(says),
    }),
    words: 'new shim = old shim ± (old mark − new mark) × unit of the mark, the sign by where the shim sits',
    example:
      'shim=1.50 mm old-mark=2 new-mark=-3 mark-unit="hundredths of a millimetre" shim-seat="between head and bearing"',
  }),
]
