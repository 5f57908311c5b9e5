// Preload by the drag of the bearings.
import { rollingTorque, rollingTorqueVerdict, scaleReading, usualRollingTorque } from '../../mechanics/index.ts'
import { choice, known, limits, optional, told } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say, sayAnswer, sayWords } from '../frame/say.ts'

const drum = { drumDiameter: known('length'), stringDiameter: optional(known('length')) }
const bearings = choice('new', 'used')

export const BEARING_DRAG = [
  figure({
    name: 'rolling-torque',
    asks: 'What rolling torque is that, from a string and a spring scale?',
    of: ['rollingTorque'],
    inputs: { force: known('force'), ...drum },
    work: rollingTorque,
    answers: (torque) => ({ 'rolling torque': say('torque', torque) }),
    words: 'torque = pull × (radius of the drum + half the string)',
    example: 'force=9..10 lbf drum-diameter=4 in string-diameter=0.1 in',
  }),
  figure({
    name: 'scale-reading',
    asks: 'What must the spring scale read for the rolling torque I want?',
    of: ['scaleReading'],
    inputs: { torque: limits('torque'), ...drum },
    work: scaleReading,
    answers: (force) => ({ 'scale has to read': say('force', force) }),
    words: 'pull = torque ÷ (radius of the drum + half the string)',
    example: 'torque=20..32 lbf·in drum-diameter=4 in',
  }),
  figure({
    name: 'rolling-torque-right',
    asks: 'Is the preload right by its rolling torque, for new or for used bearings?',
    of: ['rollingTorqueVerdict', 'rollingTorque'],
    inputs: {
      force: told(known('force'), 'steady reading of the scale'),
      ...drum,
      sealDrag: optional(
        told(
          known('torque'),
          'drag of the seal by itself, read before there was preload; left out the seal is not fitted',
        ),
      ),
      bearings: optional(told(bearings, 'left out not known, and it has to be right for both')),
      forNew: optional(told(limits('torque'), 'the maker’s range for new bearings, seal not fitted')),
      forUsed: optional(told(limits('torque'), 'the maker’s range for used bearings, seal not fitted')),
    },
    work: rollingTorqueVerdict,
    answers: ({ torque, wanted, scale, isRight, says }) => ({
      'rolling torque of the bearings': say('torque', torque),
      'the maker wants': say('torque', wanted),
      'it is right': sayAnswer(isRight, 'no'),
      why: sayWords(says),
      'scale has to read': say('force', scale),
    }),
    words: 'torque = pull × (radius of the drum + half the string) − drag of the seal, held against the maker’s range',
    example:
      'force=9..10 lbf drum-diameter=4 in bearings=used for-new=20..32 lbf·in for-used=8..15 lbf·in seal-drag=4..5 lbf·in',
  }),
  figure({
    name: 'rolling-torque-usual',
    asks: 'Which rolling torque do manuals give for such bearings, when the book of mine is lost?',
    of: ['usualRollingTorque'],
    inputs: {
      place: choice(
        'pinion of a light axle',
        'pinion of a small machine',
        'pinion of a transaxle',
        'side bearings of a transaxle',
      ),
      bearings,
    },
    work: usualRollingTorque,
    answers: ({ torque }) => ({ 'printed, seal not fitted': say('torque', torque) }),
    words: 'looked up in the manual that is named; used bearings drag 15 to 60 % as much as new ones',
    cautions: [
      'No setting for your machine: it shows whether a reading is of the right order. Find the maker’s manual.',
    ],
    example: 'place="pinion of a light axle" bearings=used',
  }),
]
