// Bushes, taper seats and repair sleeves.
import {
  boreBeforeReaming,
  bushClosing,
  interferenceOfDrawUp,
  repairSleeve,
  taperDrawUp,
  taperForces,
} from '../../mechanics/index.ts'
import { exact, known, knownNumber, limits, list, material, optional, rows, text, told } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { type Lines, say, sayAnswer, sayWords } from '../frame/say.ts'

const taper = told(knownNumber, 'change of diameter over length, as 1:12')

export const BUSHES = [
  figure({
    name: 'bush-closing',
    asks: 'How much does a bush close in when it is pressed home?',
    of: ['bushClosing'],
    inputs: {
      seat: exact('length'),
      bore: known('length'),
      housingOutside: known('length'),
      interference: known('length'),
      bush: material,
      housing: material,
    },
    work: bushClosing,
    answers: ({ boreInPlace, closing, pressure, staysElastic }) => ({
      'bore once it is in': say('length', boreInPlace),
      'closes by': say('length', closing),
      'grip pressure': say('pressure', pressure),
      'stays elastic': sayAnswer(staysElastic, 'no'),
    }),
    words: 'grip pressure from the interference; closing = 2 × pressure × seat² × bore ÷ (modulus × (seat² − bore²))',
    example:
      'seat=50 mm bore=40.00..40.02 mm housing-outside=90 mm interference=30..40 µm bush=bronze housing="grey iron"',
  }),
  figure({
    name: 'bore-before-reaming',
    asks: 'To what do I bore the bush so that the reamer finds enough and not too much?',
    of: ['boreBeforeReaming'],
    inputs: { finished: limits('length'), closing: limits('length'), allowance: optional(limits('length')) },
    work: boreBeforeReaming,
    answers: (bore) => ({
      'bore before pressing': say('length', bore),
      'cannot be told': sayWords(
        bore
          ? undefined
          : 'the closing is known too coarsely for that allowance: measure the bush in place and bore it there',
      ),
    }),
    words: 'bore = finished bore + closing − what the reamer should find',
    example: 'finished=40.025..40.050 mm closing=0.02..0.04 mm',
  }),
  figure({
    name: 'taper-draw-up',
    asks: 'How far do I draw a tapered hub up from first touch?',
    of: ['taperDrawUp'],
    inputs: { interference: known('length'), taper },
    work: taperDrawUp,
    answers: (way) => ({ 'draw up from first touch': say('length', way) }),
    words: 'way = interference ÷ taper',
    example: 'interference=50..60 µm taper=1:12',
  }),
  figure({
    name: 'taper-interference',
    asks: 'How tight has a tapered hub become from the way it was drawn up?',
    of: ['interferenceOfDrawUp'],
    inputs: { drawUp: known('length'), taper },
    work: interferenceOfDrawUp,
    answers: (tight) => ({ interference: say('length', tight) }),
    words: 'interference = way × taper',
    example: 'draw-up=0.030 in taper=1:16',
  }),
  figure({
    name: 'taper-forces',
    asks: 'How hard must the nut pull a taper up, and does it let go by itself?',
    of: ['taperForces'],
    inputs: {
      meanDiameter: told(exact('length'), 'mean diameter of the seat'),
      length: exact('length'),
      pressure: told(known('pressure'), 'grip pressure wanted: figure press-pressure gives it'),
      taper,
      friction: told(knownNumber, 'friction of the seat: figure friction gives it'),
    },
    work: taperForces,
    answers: ({ drawUpForce, releaseForce, holdsItself, halfAngle }) => ({
      'force to draw it up': say('force', drawUpForce),
      'force to pull it off (below zero it jumps off)': say('force', releaseForce),
      'stays on with its nut off': sayAnswer(holdsItself),
      'half the angle of the cone': say('angle', halfAngle),
    }),
    words: 'force = π × mean diameter × length × pressure × (friction ± slope of half the taper)',
    example: 'mean-diameter=50 mm length=60 mm pressure=40 MPa taper=1:12 friction=0.1..0.15',
  }),
  figure({
    name: 'repair-sleeve',
    asks: 'Which repair sleeve goes over my worn seal track?',
    of: ['repairSleeve'],
    inputs: {
      readings: told(list(exact('length')), 'three or more diameters, round the shaft where the sleeve will sit'),
      sleeves: told(
        rows({
          name: told(text, 'as in the list'),
          shaft: told(limits('length'), 'shaft diameters it goes onto, low to high'),
          wall: told(exact('length'), 'thickness of its wall'),
          width: told(exact('length'), 'its length'),
        }),
        'the maker’s list',
      ),
      width: told(exact('length'), 'width of track needed'),
      mostTurned: optional(exact('length')),
    },
    work: repairSleeve,
    answers: ({ shaft, outOfRound, choices }): Lines => ({
      'shaft, mean': say('length', shaft),
      'out of round': say('length', outOfRound),
      ...Object.fromEntries(
        choices.flatMap(({ name, shaftWork, turnTo, track }) => [
          [`sleeve ${name}, track then`, say('length', track)],
          [`sleeve ${name}, shaft first`, sayWords(shaftWork === 'none' ? 'nothing to be done' : 'turn it down')],
          [`sleeve ${name}, turn to`, say('length', turnTo)],
        ]),
      ),
      'no sleeve goes on': sayWords(choices.length > 0 ? undefined : 'none of the list; see the cautions', true),
    }),
    words: 'mean of the readings against each sleeve’s range; track = shaft + 2 × wall',
    example:
      'readings=49.98, 50.00, 49.99 mm width=10 mm sleeves="A, 49.92..50.08 mm, 0.28 mm, 14 mm; B, 49.60..49.75 mm, 0.28 mm, 14 mm"',
  }),
]
