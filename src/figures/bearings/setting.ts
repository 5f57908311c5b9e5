// Float, preload and the nut that makes them.
import {
  axialPlay,
  nutAngle,
  nutTravel,
  preloadClosing,
  preloadForce,
  radialPlay,
  settingShim,
  settingWarm,
} from '../../mechanics/index.ts'
import { choice, choiceOf, exact, known, limits, material, pitch, rows, text, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say } from '../frame/say.ts'

const squeezed = told(
  rows({
    rollers: told(whole, 'number of rollers, counted'),
    rollerLength: told(exact('length'), 'length of a roller without its rounded ends'),
    contactAngle: told(exact('angle'), 'contact angle of the cup'),
  }),
  'both bearings; one row where they are alike',
)
/** One row stands for two bearings that are alike. */
const two = <Row>(bearings: readonly Row[]): [Row, Row] => [bearings[0]!, bearings[1] ?? bearings[0]!]

export const BEARING_SETTING = [
  figure({
    name: 'nut-travel',
    asks: 'How far does the ring nut or adjuster move when I turn it so far?',
    of: ['nutTravel'],
    inputs: { angle: exact('angle'), lead: pitch },
    work: nutTravel,
    answers: (travel) => ({ travel: say('length', travel) }),
    words: 'travel = lead × share of a turn',
    example: 'angle=45° lead=1.5 mm',
  }),
  figure({
    name: 'nut-angle',
    asks: 'How far do I turn the nut back for the float I want?',
    of: ['nutAngle'],
    inputs: { travel: known('length'), lead: pitch },
    work: nutAngle,
    answers: (angle) => ({ 'turn the nut': say('angle', angle) }),
    words: 'turn = travel ÷ lead, in full turns',
    example: 'travel=2-3 thou lead=1/16 in',
  }),
  figure({
    name: 'axial-play',
    asks: 'How much play along the shaft goes with this play across it?',
    of: ['axialPlay'],
    inputs: { radialPlay: known('length'), contactAngle: exact('angle') },
    work: axialPlay,
    answers: (play) => ({ 'play along the shaft': say('length', play) }),
    words: 'axial play = radial play ÷ tangent of the contact angle',
    example: 'radial-play=0.01 mm contact-angle=15°',
  }),
  figure({
    name: 'radial-play',
    asks: 'How much play across the shaft goes with this play along it?',
    of: ['radialPlay'],
    inputs: { axialPlay: known('length'), contactAngle: exact('angle') },
    work: radialPlay,
    answers: (play) => ({ 'play across the shaft': say('length', play) }),
    words: 'radial play = axial play × tangent of the contact angle',
    example: 'axial-play=0.05..0.10 mm contact-angle=15°',
  }),
  figure({
    name: 'setting-shim',
    asks: 'Which shim gives the float or preload I want, from my measured sizes?',
    of: ['settingShim'],
    inputs: {
      loop: told(
        rows({
          name: text,
          sign: told(choiceOf({ more: 1, less: -1 }), 'more or less float where this size is larger'),
          size: known('length'),
        }),
        'every size of the loop that decides the float',
      ),
      shim: told(choice('more', 'less'), 'more or less float with a thicker shim'),
      target: limits('length'),
    },
    work: ({ loop, shim, target }) => settingShim({ loop, shimSign: shim === 'more' ? 1 : -1, target }),
    answers: ({ loop, sure, possible }) => ({
      'float without shim': say('length', loop),
      'shim that surely fits': say('length', sure),
      'shim that may fit': say('length', possible),
    }),
    words: 'float = sizes that open the loop − sizes that close it ± shim',
    example: 'loop="depth of case, more, 41.22 mm; bearings, less, 39.75..39.77 mm" shim=less target=0.05..0.10 mm',
  }),
  figure({
    name: 'preload-travel',
    asks: 'How far past no float do I draw a taper pair up for the preload I want?',
    of: ['preloadClosing'],
    inputs: { force: known('force'), bearings: squeezed },
    work: ({ force, bearings }) => preloadClosing({ force, bearings: two(bearings) }),
    answers: (travel) => ({ 'travel past no float, at least': say('length', travel) }),
    words:
      'travel = squeeze of the rollers in both bearings ÷ sine of the contact angle; it grows nearly as the preload',
    cautions: ['Turn the shaft as it is drawn up; prove the preload by rolling torque.'],
    example: 'force=900..1000 N bearings="18, 12 mm, 15°"',
  }),
  figure({
    name: 'preload-of-travel',
    asks: 'What preload has a taper pair that was drawn up so far past no float?',
    of: ['preloadForce'],
    inputs: { closing: known('length'), bearings: squeezed },
    work: ({ closing, bearings }) => preloadForce({ closing, bearings: two(bearings) }),
    answers: (force) => ({ 'preload, at most': say('force', force) }),
    words: 'as preload-travel, turned round',
    cautions: ['Shaft, cups and covers give as well: prove the preload by rolling torque.'],
    example: 'closing=1-2 thou bearings="18, 0.47 in, 15°; 16, 0.43 in, 14°"',
  }),
  figure({
    name: 'setting-warm',
    asks: 'What does the float of a taper pair become when shaft and case get warm?',
    of: ['settingWarm'],
    inputs: {
      arrangement: choice('face to face', 'back to back'),
      span: known('length'),
      bearings: told(
        rows({
          meanDiameter: told(exact('length'), 'mean diameter of its raceways'),
          contactAngle: told(exact('angle'), 'contact angle'),
        }),
        'both bearings',
      ),
      shaft: material,
      housing: material,
      shaftRise: known('temperature difference'),
      housingRise: known('temperature difference'),
    },
    work: ({ bearings, ...rest }) => settingWarm({ ...rest, bearings: two(bearings) }),
    answers: ({ byLength, byDiameter, change }) => ({
      'change of float': say('length', change),
      'of it by the lengths': say('length', byLength),
      'of it by the diameters': say('length', byDiameter),
    }),
    words:
      'change = span × (expansion of case × its rise − expansion of shaft × its rise), and the growth of cups less that of cones over the slope of the cone; turned round for back to back',
    example:
      'arrangement="face to face" span=200 mm bearings="80 mm, 15°; 80 mm, 15°" shaft=steel housing="grey iron" shaft-rise=40 °C housing-rise=25..30 °C',
  }),
]
