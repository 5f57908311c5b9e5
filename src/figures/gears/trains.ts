// Trains, planetary gears, differentials, worms; speeds and power.
import {
  circleSpeed,
  coaxialRingTeeth,
  differential,
  gearTrain,
  planetarySet,
  planetaryTorques,
  roadSpeed,
  ropeSpeed,
  torqueOfPower,
  trainRatio,
  willis,
  wormDrive,
  wormSet,
} from '../../mechanics/index.ts'
import { choice, exact, known, knownNumber, number, optional, rows, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { type Lines, say, sayAnswer, sayNumber, sayShare, sayWords } from '../frame/say.ts'

const speed = exact('speed of rotation')
const meshes = told(
  rows({
    driver: told(whole, 'teeth of the driver, of a worm its starts'),
    driven: told(whole, 'teeth of the driven'),
    kind: optional(
      told(
        choice('external', 'internal', 'bevel', 'worm', 'chain'),
        'external, internal, bevel, worm or chain; left out external',
      ),
    ),
  }),
  'every mesh in the order of the drive',
)
const basicRatio = told(
  number,
  'turns of the first gear for one of the last with the carrier held, with its sign: − ring teeth ÷ sun teeth; of stepped planets the ratio with its sign that figure gear-train gives',
)

export const TRAINS = [
  figure({
    name: 'gear-train',
    asks: 'What ratio, speed and torque come out of this train?',
    of: ['gearTrain', 'trainRatio'],
    inputs: {
      meshes,
      speed: told(speed, 'of the first shaft'),
      torque: optional(told(known('torque'), 'in the first shaft; left out no torque is worked')),
      efficiency: optional(knownNumber),
    },
    work: (given) => ({ ...gearTrain(given), signed: trainRatio(given.meshes) }),
    answers: ({ ratio, direction, speed: last, torque, signed }) => ({
      'turns of the first for one of the last': sayNumber(ratio),
      'the last turns': sayWords(
        direction === 'not known'
          ? 'on a shaft that crosses: no direction to compare'
          : `in the ${direction} direction`,
      ),
      'speed of the last shaft': say('speed of rotation', last),
      'torque in the last shaft': say('torque', torque),
      'ratio with its sign': sayNumber(signed),
    }),
    words: 'ratio = teeth of the driven gears multiplied ÷ those of the drivers; torque × ratio × efficiency',
    example: 'meshes="20, 50; 25, 75; 26, 65" speed=975 rpm torque=40..45 N·m',
  }),
  figure({
    name: 'planetary-speeds',
    asks: 'How fast do sun, ring, carrier and planets turn?',
    of: ['planetarySet', 'willis'],
    inputs: {
      sunTeeth: told(whole, 'teeth of the sun'),
      ringTeeth: told(whole, 'teeth of the ring'),
      planetTeeth: optional(whole),
      planets: optional(whole),
      sun: optional(told(speed, 'speed of the sun; give two of sun, ring, carrier; held is 0 rpm')),
      ring: optional(told(speed, 'speed of the ring')),
      carrier: optional(told(speed, 'speed of the carrier')),
    },
    work: planetarySet,
    answers: ({ first, last, carrier, planet, planetOnPin, planetTeeth }) => ({
      sun: say('speed of rotation', first),
      ring: say('speed of rotation', last),
      carrier: say('speed of rotation', carrier),
      'a planet on its pin': say('speed of rotation', planetOnPin),
      'a planet, seen from the case': say('speed of rotation', planet),
      'teeth of a planet': sayNumber(planetTeeth),
    }),
    words:
      '(sun − carrier) ÷ (ring − carrier) = − ring teeth ÷ sun teeth; planet on its pin = (ring − carrier) × ring teeth ÷ planet teeth; below zero: the other way round',
    example: 'sun-teeth=20 ring-teeth=80 sun=90..100 rpm ring=0 rpm',
  }),
  figure({
    name: 'planetary-by-ratio',
    asks: 'How fast does the third member turn, by the basic ratio?',
    of: ['willis'],
    inputs: {
      basicRatio,
      first: optional(told(speed, 'speed of the first gear; give two of first, last, carrier; held is 0 rpm')),
      last: optional(told(speed, 'speed of the last gear')),
      carrier: optional(told(speed, 'speed of the carrier')),
    },
    work: willis,
    answers: ({ first, last, carrier }) => ({
      'first gear': say('speed of rotation', first),
      'last gear': say('speed of rotation', last),
      carrier: say('speed of rotation', carrier),
    }),
    words: '(first − carrier) ÷ (last − carrier) = basic ratio',
    example: 'basic-ratio=-4 first=100 rpm last=0 rpm',
  }),
  figure({
    name: 'planetary-torques',
    asks: 'Which torque must the held member of a planetary gear take?',
    of: ['planetaryTorques'],
    inputs: { basicRatio, first: told(exact('torque'), 'on the first gear') },
    work: planetaryTorques,
    answers: ({ last, carrier }) => ({
      'on the last gear (below zero against the first)': say('torque', last),
      'on the carrier (below zero against the first)': say('torque', carrier),
    }),
    words: 'last = − basic ratio × first; all three together are zero; whichever is held takes its share into the case',
    example: 'basic-ratio=-4 first=10 N·m',
  }),
  figure({
    name: 'ring-teeth',
    asks: 'How many teeth has the ring round this sun and planet?',
    of: ['coaxialRingTeeth'],
    inputs: {
      sunTeeth: told(whole, 'teeth of the sun'),
      planetTeeth: told(whole, 'teeth of the planet in mesh with the sun'),
      ringSidePlanetTeeth: optional(told(whole, 'teeth of the planet in mesh with the ring; left out the same gear')),
    },
    work: coaxialRingTeeth,
    answers: (teeth) => ({ 'teeth of the ring': sayNumber(teeth) }),
    words: 'ring = sun + planet at the sun + planet at the ring',
    example: 'sun-teeth=50 planet-teeth=20 ring-side-planet-teeth=35',
  }),
  figure({
    name: 'differential',
    asks: 'How fast does the other side of the differential turn?',
    of: ['differential'],
    inputs: {
      carrier: told(speed, 'speed of the crown wheel'),
      side: told(speed, 'speed of one side'),
      torque: optional(told(exact('torque'), 'on the crown wheel; left out not worked')),
    },
    work: differential,
    answers: ({ other, torque }) => ({
      'other side': say('speed of rotation', other),
      'torque in each side': say('torque', torque),
    }),
    words: 'other side = 2 × crown wheel − this side',
    example: 'carrier=200 rpm side=205..210 rpm torque=300 N·m',
  }),
  figure({
    name: 'worm-sizes',
    asks: 'What are the sizes of this worm and wheel?',
    of: ['wormSet'],
    inputs: {
      module: told(exact('length'), 'module of the worm along its axis'),
      starts: told(whole, 'threads that begin at the end of the worm'),
      wormDiameter: told(exact('length'), 'pitch diameter: outside diameter less 2 modules'),
      wheelTeeth: told(whole, 'teeth of the wheel'),
      wheelShift: optional(number),
    },
    work: wormSet,
    answers: (set): Lines => ({
      ratio: sayNumber(set.ratio),
      'centre distance': say('length', set.centreDistance),
      lead: say('length', set.lead),
      'lead angle': say('angle', set.leadAngle),
      'pitch along the worm': say('length', set.axialPitch),
      'pitch diameter of the wheel': say('length', set.wheelPitchDiameter),
      'outside of the worm': say('length', set.wormTip),
      'root of the worm': say('length', set.wormRoot),
      'throat of the wheel': say('length', set.wheelThroat),
    }),
    words: 'lead = starts × π × module; centres = half of both pitch diameters',
    example: 'module=0.1667 in starts=1 worm-diameter=2 in wheel-teeth=60',
  }),
  figure({
    name: 'worm-holds',
    asks: 'Does this worm hold by itself, and what does its mesh lose?',
    of: ['wormDrive'],
    inputs: {
      leadAngle: told(exact('angle'), 'figure worm-sizes gives it'),
      pressureAngle: told(exact('angle'), 'pressure angle'),
      friction: optional(knownNumber),
    },
    work: wormDrive,
    answers: ({ efficiency, isSelfLocking }) => ({
      'efficiency of the mesh': sayShare(efficiency),
      'the wheel cannot turn the worm': sayAnswer(isSelfLocking),
    }),
    words: 'efficiency = tangent of the lead angle ÷ tangent of (lead angle + angle of friction)',
    example: 'lead-angle=4.76° pressure-angle=14.5° friction=0.03..0.08',
  }),
  figure({
    name: 'road-speed',
    asks: 'How fast does the machine run in this gear?',
    of: ['roadSpeed'],
    inputs: {
      shaftSpeed: known('speed of rotation'),
      ratio: number,
      rollingRadius: known('length'),
      slip: optional(knownNumber),
    },
    work: roadSpeed,
    answers: (fast) => ({ speed: say('speed', fast, { metric: 'km/h', inch: 'mph' }) }),
    words: 'speed = turns of the wheel × circumference, less slip',
    example: 'shaft-speed=900..1500 rpm ratio=60 rolling-radius=600 mm slip=0..5 %',
  }),
  figure({
    name: 'rope-speed',
    asks: 'How fast does the hook of the winch move?',
    of: ['ropeSpeed'],
    inputs: {
      drumSpeed: known('speed of rotation'),
      drumDiameter: exact('length'),
      ropeDiameter: exact('length'),
      layer: whole,
      falls: optional(whole),
    },
    work: ropeSpeed,
    answers: (fast) => ({ 'speed of the hook': say('speed', fast) }),
    words: 'speed = turns of the drum × circumference in the middle of the rope ÷ parts of rope',
    example: 'drum-speed=10 rpm drum-diameter=300 mm rope-diameter=16 mm layer=1..3',
  }),
  figure({
    name: 'torque-of-power',
    asks: 'What torque is in a shaft that carries this power at this speed?',
    of: ['torqueOfPower'],
    inputs: { power: exact('power'), speed },
    work: torqueOfPower,
    answers: (torque) => ({ torque: say('torque', torque) }),
    words: 'torque = power ÷ speed of turning',
    example: 'power=20 hp speed=960..1000 rpm',
  }),
  figure({
    name: 'circle-speed',
    asks: 'How fast does the pitch circle, rim or track move?',
    of: ['circleSpeed'],
    inputs: { diameter: exact('length'), speed },
    work: circleSpeed,
    answers: (fast) => ({ speed: say('speed', fast) }),
    words: 'speed = π × diameter × turns',
    example: 'diameter=2 in speed=1750 rpm',
  }),
]
