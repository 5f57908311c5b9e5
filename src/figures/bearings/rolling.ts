// Preload by the drag of the bearings.
import { rollingTorque, scaleReading } from '../../mechanics/index.ts'
import { known, limits, optional } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say } from '../frame/say.ts'

const drum = { drumDiameter: known('length'), stringDiameter: optional(known('length')) }

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
]
