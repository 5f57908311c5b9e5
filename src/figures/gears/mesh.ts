// Two gears in mesh: centres, backlash, contact, forces, strength.
import {
  backlashFromCentres,
  backlashFromDial,
  backlashFromFeeler,
  backlashFromTurn,
  backlashRound,
  centresForBacklash,
  contactRatio,
  gearPair,
  internalContactRatio,
  internalGearPair,
  slidingSpeed,
  straightBevelForces,
  toothForces,
  toothStrength,
} from '../../mechanics/index.ts'
import { choice, exact, known, limits, list, number, optional, ownMaterial, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { asMargin, say, sayAnswer, sayNumber } from '../frame/say.ts'
import { helixAngle, module, pair, pressureAngle } from './gear.ts'

const told20 = told(known('angle'), 'pressure angle; a range where it is not known: 14.5..20°')
const played = {
  pitchDiameter: told(exact('length'), 'pitch diameter of the gear that is moved while the other is held'),
  pressureAngle: told20,
  helixAngle: optional(told(exact('angle'), 'helix or spiral angle; left out 0°')),
  rimRadius: optional(told(exact('length'), 'a radius at which it is wanted as well; left out the pitch radius')),
}
const backlashLines = ({ transverse, normal, angular, atRim }: ReturnType<typeof backlashFromDial>) => ({
  'backlash along the pitch circle': say('length', transverse),
  'square to the flanks (feeler, lead wire)': say('length', normal),
  'as a turn of this gear': say('angle', angular),
  'at the rim radius': say('length', atRim),
})
const shifts = {
  pinionShift: optional(told(number, 'profile shift of the pinion in modules; left out 0')),
  wheelShift: optional(told(number, 'profile shift of the wheel in modules; left out 0')),
  centreDistance: optional(
    told(exact('length'), 'measured from bore to bore; left out the one at which the teeth just fill each other'),
  ),
  addendum: optional(told(number, 'height of the teeth in modules; left out 1')),
  clearance: optional(told(number, 'between tip and root in modules; left out 0.25')),
}
const pairLines = (sizes: ReturnType<typeof gearPair>) => ({
  'centre distance': say('length', sizes.centreDistance),
  'backlash (below zero they jam)': say('length', sizes.backlash),
  ratio: sayNumber(sizes.ratio),
  'centre distance without shift': say('length', sizes.standardCentreDistance),
  'working pressure angle': say('angle', sizes.workingPressureAngle),
  'sum of shifts without backlash, in modules': sayNumber(sizes.shiftsWithoutBacklash),
  'pinion: tip diameter': say('length', sizes.pinionTip),
  'pinion: root diameter': say('length', sizes.pinionRoot),
  'pinion: working pitch diameter': say('length', sizes.pinionWorkingDiameter),
  'wheel: tip diameter': say('length', sizes.wheelTip),
  'wheel: root diameter': say('length', sizes.wheelRoot),
  'wheel: working pitch diameter': say('length', sizes.wheelWorkingDiameter),
})
const touching = {
  ...pair,
  pinionTip: told(exact('length'), 'tip diameter of the pinion, as measured'),
  wheelTip: told(exact('length'), 'tip diameter of the wheel, as measured; of a ring the inner one'),
  centreDistance: told(exact('length'), 'from shaft to shaft'),
  faceWidth: optional(told(exact('length'), 'common to both; left out no overlap is counted')),
}
const contactLines = (contact: ReturnType<typeof contactRatio>) => ({
  'pairs of teeth in contact, on average': asMargin(sayNumber(contact.total)),
  'of it across the axis': sayNumber(contact.transverse),
  'of it by the helix': sayNumber(contact.overlap),
  'path of contact': say('length', contact.path),
  'first touch to pitch point': say('length', contact.approach),
  'pitch point to last touch': say('length', contact.recess),
})
const forceLines = ({ tangential, radial, axial, normal }: ReturnType<typeof toothForces>) => ({
  'along the pitch circle': say('force', tangential),
  'radial, pushes the shafts apart': say('force', radial),
  'along the axis': say('force', axial),
  'square to the flank, all together': say('force', normal),
})

export const GEAR_MESH = [
  figure({
    name: 'backlash-by-dial',
    asks: 'What backlash is that, from a dial on the rim or an arm?',
    of: ['backlashFromDial'],
    inputs: { travel: known('length'), radius: exact('length'), ...played },
    work: backlashFromDial,
    answers: backlashLines,
    words:
      'backlash = travel × pitch radius ÷ radius of the dial; square to the flanks × cosines of pressure and helix angle',
    example: 'travel=0.28..0.30 mm radius=150 mm pitch-diameter=200 mm pressure-angle=20°',
  }),
  figure({
    name: 'backlash-by-feeler',
    asks: 'What backlash is that, from a feeler or a squeezed lead wire?',
    of: ['backlashFromFeeler'],
    inputs: { gap: known('length'), ...played },
    work: backlashFromFeeler,
    answers: backlashLines,
    words: 'backlash = gap ÷ cosine of the pressure angle ÷ cosine of the helix',
    example: 'gap=8 thou pitch-diameter=4 in pressure-angle=14.5..20°',
  }),
  figure({
    name: 'backlash-by-turn',
    asks: 'What backlash is that, from the free turn of the gear?',
    of: ['backlashFromTurn'],
    inputs: { turn: known('angle'), ...played },
    work: backlashFromTurn,
    answers: backlashLines,
    words: 'backlash = turn × pitch radius',
    example: 'turn=0.5° pitch-diameter=100 mm pressure-angle=20°',
  }),
  figure({
    name: 'backlash-round',
    asks: 'Is the backlash within limits all round the gear?',
    of: ['backlashRound'],
    inputs: {
      readings: told(list(exact('length')), 'at equal steps round the gear'),
      limits: limits('length'),
      mostSpread: optional(exact('length')),
    },
    work: backlashRound,
    answers: ({ least, most, spread, isWithin }) => ({
      'tightest to slackest': say('length', { low: least, high: most }),
      spread: say('length', spread),
      'all within the limits': sayAnswer(isWithin, 'no'),
    }),
    words: 'least, most and their difference held against the limits',
    example: 'readings=0.15, 0.18, 0.16, 0.17 mm limits=0.13..0.20 mm',
  }),
  figure({
    name: 'backlash-from-centres',
    asks: 'How much backlash does a wider centre distance add?',
    of: ['backlashFromCentres'],
    inputs: { opening: known('length'), pressureAngle: told20 },
    work: backlashFromCentres,
    answers: ({ transverse, normal }) => ({
      'along the pitch circle': say('length', transverse),
      'square to the flanks': say('length', normal),
    }),
    words: 'backlash = 2 × opening × tangent of the pressure angle; square to the flanks with the sine',
    example: 'opening=0.10 mm pressure-angle=14.5..20°',
  }),
  figure({
    name: 'centres-for-backlash',
    asks: 'How far do I move the centres for the backlash I want?',
    of: ['centresForBacklash'],
    inputs: {
      backlash: told(known('length'), 'change wanted along the pitch circle, more above zero'),
      pressureAngle: told20,
    },
    work: centresForBacklash,
    answers: (opening) => ({ 'move the centres apart by': say('length', opening) }),
    words: 'opening = backlash ÷ (2 × tangent of the pressure angle)',
    example: 'backlash=4 thou pressure-angle=14.5°',
  }),
  figure({
    name: 'gear-pair',
    asks: 'How do two gears work together at these centres?',
    of: ['gearPair'],
    inputs: { ...pair, ...shifts },
    work: gearPair,
    answers: pairLines,
    words: 'working pressure angle from the base circles and the centres; backlash from what shifts and centres leave',
    example:
      'module=3 mm pressure-angle=20° pinion-teeth=12 wheel-teeth=24 pinion-shift=0.3 wheel-shift=0.2 centre-distance=55.5..55.6 mm',
  }),
  figure({
    name: 'internal-gear-pair',
    asks: 'How does a pinion work inside a ring gear?',
    of: ['internalGearPair'],
    inputs: { ...pair, ...shifts },
    work: internalGearPair,
    answers: pairLines,
    words: 'as gear-pair with the ring round the pinion',
    example: 'module=3 mm pressure-angle=20° pinion-teeth=16 wheel-teeth=40',
  }),
  figure({
    name: 'contact-ratio',
    asks: 'Do enough teeth carry at once?',
    of: ['contactRatio'],
    inputs: touching,
    work: contactRatio,
    answers: contactLines,
    words: 'contact ratio = path of contact between both tip circles ÷ base pitch, and what the helix adds',
    example:
      'module=3 mm pressure-angle=20° pinion-teeth=12 wheel-teeth=24 pinion-tip=44.7..44.84 mm wheel-tip=79.4 mm centre-distance=56.5 mm',
  }),
  figure({
    name: 'internal-contact-ratio',
    asks: 'Do enough teeth carry at once inside a ring gear?',
    of: ['internalContactRatio'],
    inputs: touching,
    work: internalContactRatio,
    answers: contactLines,
    words: 'as contact-ratio with the ring round the pinion',
    example:
      'module=3 mm pressure-angle=20° pinion-teeth=20 wheel-teeth=60 pinion-tip=66 mm wheel-tip=174 mm centre-distance=60 mm',
  }),
  figure({
    name: 'sliding-speed',
    asks: 'How fast do the flanks slide on each other?',
    of: ['slidingSpeed'],
    inputs: {
      approach: told(exact('length'), 'first touch to pitch point: figure contact-ratio gives it'),
      recess: told(exact('length'), 'pitch point to last touch: figure contact-ratio gives it'),
      pinionSpeed: told(exact('speed of rotation'), 'speed of the pinion'),
      ratio: told(number, 'wheel teeth to pinion teeth'),
    },
    work: slidingSpeed,
    answers: (speed) => ({ 'fastest sliding': say('speed', speed) }),
    words: 'both speeds of turning added × the longer way from the pitch point',
    example: 'approach=12.65 mm recess=11.4 mm pinion-speed=200..229 rpm ratio=2',
  }),
  figure({
    name: 'tooth-forces',
    asks: 'What forces do spur or helical teeth put on the bearings?',
    of: ['toothForces'],
    inputs: {
      torque: told(exact('torque'), 'of this gear'),
      pitchDiameter: told(exact('length'), 'of this gear'),
      pressureAngle,
      helixAngle,
    },
    work: toothForces,
    answers: forceLines,
    words: 'along the pitch circle = torque ÷ pitch radius; the others by the tangents of pressure and helix angle',
    example: 'torque=182.6 lbf·in pitch-diameter=2.5 in pressure-angle=20°',
  }),
  figure({
    name: 'bevel-forces',
    asks: 'What forces do straight bevel teeth put on the bearings?',
    of: ['straightBevelForces'],
    inputs: {
      torque: told(exact('torque'), 'of this gear'),
      meanDiameter: told(exact('length'), 'at the middle of the face: figure bevel-pair gives it'),
      pressureAngle,
      coneAngle: told(exact('angle'), 'pitch cone of this gear: figure pitch-cones gives it'),
    },
    work: straightBevelForces,
    answers: forceLines,
    words: 'along the pitch circle = torque ÷ mean radius; radial and axial by the pressure angle and the cone',
    example: 'torque=100 N·m mean-diameter=200 mm pressure-angle=20° cone-angle=26.565°',
  }),
  figure({
    name: 'tooth-strength',
    asks: 'Roughly, what load do these spur teeth stand?',
    of: ['toothStrength'],
    inputs: {
      module,
      teeth: told(whole, 'number of teeth, 12 or more'),
      faceWidth: told(exact('length'), 'face width that carries'),
      form: optional(
        told(choice('20 full', '14.5 full', '20 stub'), 'form of the tooth; left out the weakest, 14.5 full'),
      ),
      made: optional(told(choice('cast', 'cut'), 'how the teeth were made; left out the worse, cast')),
      speed: told(exact('speed of rotation'), 'speed of this gear'),
      material: optional(told(ownMaterial, 'left out not known, taken as weak as the weakest of all held here')),
      safeStress: optional(known('pressure')),
    },
    work: toothStrength,
    answers: (tooth) => ({
      'safe load along the pitch circle': say('force', tooth.load),
      torque: say('torque', tooth.torque),
      power: say('power', tooth.power),
      'safe stress that was taken': say('pressure', tooth.safeStress),
      'speed at the pitch circle': say('speed', tooth.pitchSpeed),
      'form factor': sayNumber(tooth.formFactor),
      'speed makes of a load': sayNumber(tooth.velocityFactor),
    }),
    words: 'load = face width × module × form factor × safe stress ÷ velocity factor',
    example: 'module=3.175 mm teeth=16 face-width=1.5 in form="20 full" made=cut speed=1200 rpm safe-stress=10000 psi',
  }),
]
