// What gear it is, and its sizes.
import {
  betweenPins,
  chordalThickness,
  fewestTeeth,
  gearSizes,
  identifyGear,
  internalGearSizes,
  moduleFromCircularPitch,
  moduleFromDiametralPitch,
  outsideDiameterOfOdd,
  overPins,
  rackThickness,
  spanFaceWidth,
  spanSize,
  spanTeeth,
  thicknessBetweenPins,
  thicknessFromPins,
  thicknessFromSpan,
  toothWear,
} from '../../mechanics/index.ts'
import { exact, known, number, optional, rows, told, whole, yesNo } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { type Lines, say, sayNumber, sayShare, sayWords } from '../frame/say.ts'
import { gear, helixAngle, module, pressureAngle, shift } from './gear.ts'

const { shift: _, ...toothOnly } = gear
const depth = {
  addendum: optional(told(number, 'height above the pitch circle in modules; left out 1; stub teeth 0.8')),
  dedendum: optional(told(number, 'depth below it in modules; left out 1.25; old inch gears 1.157')),
}
const pin = told(
  exact('length'),
  'diameter of the pin or ball as measured; 1.728 modules is usual outside, 1.68 inside',
)
const across = told(whole, 'teeth between the jaws: figure span-teeth says how many')
const sizeLines = (sizes: ReturnType<typeof gearSizes>) => ({
  'tip diameter': say('length', sizes.tipDiameter),
  'pitch diameter': say('length', sizes.pitchDiameter),
  'root diameter': say('length', sizes.rootDiameter),
  'base diameter': say('length', sizes.baseDiameter),
  'thickness of a tooth at the pitch circle': say('length', sizes.toothThickness),
  'thickness at the tip': say('length', sizes.tipThickness),
  'base pitch': say('length', sizes.normalBasePitch),
  'module across the axis': say('length', sizes.transverseModule),
  'teeth of the spur gear with the same tooth': sayNumber(sizes.virtualTeeth),
})

export const GEAR_SIZES = [
  figure({
    name: 'which-gear',
    asks: 'What gear is this, from its teeth, outside diameter and spans?',
    of: ['identifyGear'],
    inputs: {
      teeth: told(whole, 'number of teeth, counted twice'),
      outsideDiameter: optional(
        told(known('length'), 'over the tips; of an odd number of teeth see figure odd-outside-diameter'),
      ),
      spans: optional(
        told(
          rows({
            across: told(whole, 'teeth between the jaws'),
            reading: told(known('length'), 'what the caliper reads'),
          }),
          'spans read, best two with one tooth more in the second',
        ),
      ),
      helixAngle,
      doubt: optional(exact('length')),
    },
    work: identifyGear,
    answers: ({ fits, nearMisses, normalBasePitch }): Lines => ({
      'it is': sayWords(
        fits
          .map(
            ({ name, pressureAngle: angle, shift: out, why }) =>
              `${withAngle(name, angle)}, shift ${out.toFixed(2).replace('-', '−')} (${why})`,
          )
          .join('; ') || 'none that is held here',
        fits.length === 0,
      ),
      'it is not': sayWords(
        nearMisses
          .slice(0, FEW)
          .map(({ name, pressureAngle: angle, why }) => `${withAngle(name, angle)} (${why})`)
          .join('; '),
      ),
      'base pitch from the spans': say('length', normalBasePitch),
    }),
    words:
      'outside diameter = (teeth + 2 × height + 2 × shift) × module; two spans one tooth apart differ by the base pitch; both held against every series',
    example: 'teeth=30 outside-diameter=3.195..3.2 in',
  }),
  figure({
    name: 'odd-outside-diameter',
    asks: 'What is the outside diameter of a gear with an odd number of teeth?',
    of: ['outsideDiameterOfOdd'],
    inputs: { teeth: whole, reading: exact('length') },
    work: outsideDiameterOfOdd,
    answers: (diameter) => ({ 'outside diameter': say('length', diameter) }),
    words: 'one tip stands against two: diameter = 2 × reading ÷ (1 + cosine of half a tooth’s turn)',
    example: 'teeth=15 reading=50 mm',
  }),
  figure({
    name: 'module-from-diametral-pitch',
    asks: 'Which module is this diametral pitch?',
    of: ['moduleFromDiametralPitch'],
    inputs: { diametralPitch: told(number, 'teeth for each inch of pitch diameter') },
    work: ({ diametralPitch }) => moduleFromDiametralPitch(diametralPitch),
    answers: (size) => ({ module: say('length', size, MM) }),
    words: 'module = 1 inch ÷ diametral pitch',
    example: 'diametral-pitch=8',
  }),
  figure({
    name: 'module-from-circular-pitch',
    asks: 'Which module is this circular pitch?',
    of: ['moduleFromCircularPitch'],
    inputs: { circularPitch: exact('length') },
    work: ({ circularPitch }) => moduleFromCircularPitch(circularPitch),
    answers: (size) => ({ module: say('length', size, MM) }),
    words: 'module = circular pitch ÷ π',
    example: 'circular-pitch=3/4 in',
  }),
  figure({
    name: 'gear-sizes',
    asks: 'What are the sizes of this gear as drawn?',
    of: ['gearSizes'],
    inputs: { ...gear, ...depth },
    work: gearSizes,
    answers: sizeLines,
    words:
      'pitch diameter = module × teeth (÷ cosine of the helix); tip and root by the heights of the tooth and the shift',
    example: 'module=3 mm teeth=24 pressure-angle=20° shift=0.3..0.4',
  }),
  figure({
    name: 'internal-gear-sizes',
    asks: 'What are the sizes of this internal gear as drawn?',
    of: ['internalGearSizes'],
    inputs: { ...gear, ...depth },
    work: internalGearSizes,
    answers: sizeLines,
    words: 'as gear-sizes with the tips inward',
    example: 'module=3 mm teeth=60 pressure-angle=20°',
  }),
  figure({
    name: 'span',
    asks: 'What should a span across teeth measure, unworn?',
    of: ['spanSize'],
    inputs: { ...gear, across },
    work: spanSize,
    answers: (size) => ({ span: say('length', size) }),
    words: 'span = (teeth across − 1) × base pitch + thickness of a tooth at the base circle',
    example: 'module=3 mm teeth=24 pressure-angle=20° shift=0.4 across=4',
  }),
  figure({
    name: 'span-teeth',
    asks: 'Across how many teeth do I measure the span?',
    of: ['spanTeeth'],
    inputs: gear,
    work: spanTeeth,
    answers: ({ best, fewest, most }) => ({
      'best across': sayNumber(best),
      'can be across': sayNumber({ low: fewest, high: most }),
    }),
    words: 'so many that the jaws touch near the middle of the flanks',
    example: 'module=2.5 mm teeth=41 pressure-angle=20°',
  }),
  figure({
    name: 'span-face',
    asks: 'Is this helical gear wide enough for a span?',
    of: ['spanFaceWidth'],
    inputs: { ...gear, across },
    work: spanFaceWidth,
    answers: (width) => ({ 'face width, at least': say('length', width) }),
    words: 'width = span × sine of the helix at the base circle',
    example: 'module=3 mm teeth=40 pressure-angle=20° helix-angle=20° across=6',
  }),
  figure({
    name: 'over-pins',
    asks: 'What should the size over pins measure, unworn?',
    of: ['overPins'],
    inputs: { ...gear, pin },
    work: overPins,
    answers: (size) => ({ 'over the pins': say('length', size) }),
    words: 'the pin rests where the involute of the tooth space is as wide as it; size = twice its centre circle + pin',
    example: 'module=0.25 in teeth=32 pressure-angle=20° pin=0.432 in',
  }),
  figure({
    name: 'between-pins',
    asks: 'What should the size between pins of an internal gear measure, unworn?',
    of: ['betweenPins'],
    inputs: { ...gear, pin },
    work: betweenPins,
    answers: (size) => ({ 'between the pins': say('length', size) }),
    words: 'as over-pins with the teeth inward',
    example: 'module=2 mm teeth=60 pressure-angle=20° pin=3.36 mm',
  }),
  figure({
    name: 'thickness-from-span',
    asks: 'How thick are the teeth by this span?',
    of: ['thicknessFromSpan'],
    inputs: { ...toothOnly, across, reading: told(known('length'), 'span as read') },
    work: thicknessFromSpan,
    answers: (thickness) => ({ 'thickness of a tooth': say('length', thickness) }),
    words: 'what the span has less than drawn, turned back to the pitch circle',
    example: 'module=3 mm teeth=24 pressure-angle=20° across=4 reading=31.98..32.00 mm',
  }),
  figure({
    name: 'thickness-from-pins',
    asks: 'How thick are the teeth by this reading over pins?',
    of: ['thicknessFromPins'],
    inputs: { ...toothOnly, pin, reading: told(known('length'), 'over the pins as read') },
    work: thicknessFromPins,
    answers: (thickness) => ({ 'thickness of a tooth': say('length', thickness) }),
    words: 'the reading turned back to the pitch circle by the involute',
    example: 'module=4 mm teeth=32 pressure-angle=20° pin=6.912 mm reading=137.5 mm',
  }),
  figure({
    name: 'thickness-between-pins',
    asks: 'How thick are the teeth of an internal gear by this reading between pins?',
    of: ['thicknessBetweenPins'],
    inputs: { ...toothOnly, pin, reading: told(known('length'), 'between the pins as read') },
    work: thicknessBetweenPins,
    answers: (thickness) => ({ 'thickness of a tooth': say('length', thickness) }),
    words: 'the reading turned back to the pitch circle by the involute',
    example: 'module=2 mm teeth=60 pressure-angle=20° pin=3.36 mm reading=115.40..115.45 mm',
  }),
  figure({
    name: 'tooth-caliper',
    asks: 'What should the gear-tooth caliper read?',
    of: ['chordalThickness'],
    inputs: {
      ...gear,
      addendum: optional(
        told(exact('length'), 'tip to pitch circle, from the measured outside diameter; left out (1 + shift) × module'),
      ),
    },
    work: chordalThickness,
    answers: ({ chord, height, thickness }) => ({
      'jaws (chord)': say('length', chord),
      'tongue (height)': say('length', height),
      'thickness along the arc': say('length', thickness),
    }),
    words:
      'chord = pitch diameter × sine of half the tooth’s angle; tongue = height above the pitch circle + rise of the arc',
    example: 'module=10 mm teeth=12 pressure-angle=20° shift=0.3',
  }),
  figure({
    name: 'rack-caliper',
    asks: 'What should the gear-tooth caliper read on a rack?',
    of: ['rackThickness'],
    inputs: { module },
    work: ({ module: size }) => rackThickness(size),
    answers: ({ chord, height }) => ({
      'jaws (chord)': say('length', chord),
      'tongue (height)': say('length', height),
    }),
    words: 'jaws = half of π × module; tongue = module',
    example: 'module=3 mm',
  }),
  figure({
    name: 'tooth-wear',
    asks: 'How much of the tooth is worn away, by its thickness?',
    of: ['toothWear'],
    inputs: {
      module,
      pressureAngle,
      thickness: told(
        known('length'),
        'figures thickness-from-span and thickness-from-pins give it, of a ring thickness-between-pins',
      ),
      helixAngle,
      shift,
      isInternal: optional(told(yesNo, 'yes for a ring; left out an external gear')),
      cutThin: optional(
        told(known('length'), 'how much thinner than drawn it was new; left out not known, from none to all'),
      ),
    },
    work: toothWear,
    answers: ({ wear, thinner, share, backlashAdded, spanLost }) => ({
      'wear, both flanks together': say('length', wear),
      'of the thickness as drawn': sayShare(share),
      'thinner than drawn': say('length', thinner),
      'adds to the backlash': say('length', backlashAdded),
      'span smaller by': say('length', spanLost),
    }),
    words: 'thickness as drawn − thickness measured − what it was cut thin',
    example: 'module=4 mm pressure-angle=20° thickness=5.98..6.02 mm cut-thin=0.05..0.10 mm',
  }),
  figure({
    name: 'fewest-teeth',
    asks: 'How few teeth may a pinion have before the wheel digs into its roots?',
    of: ['fewestTeeth'],
    inputs: { ratio: told(number, 'wheel teeth to pinion teeth'), pressureAngle, addendum: optional(number) },
    work: fewestTeeth,
    answers: (teeth) => ({ 'teeth, at least': sayNumber(Math.ceil(teeth - 1e-9)) }),
    words: 'from the ratio, the height of the wheel’s teeth and the sine of the pressure angle; rounded up',
    example: 'ratio=1..3 pressure-angle=20°',
  }),
]

const FEW = 4
/** A module is a metric size wherever it is used. */
const MM = { metric: 'mm', inch: 'mm' } as const
/** The name tells the angle only where spans were read; it is told once. */
const withAngle = (name: string, angle: number) => (name.endsWith('°') ? name : `${name}, ${degrees(angle)}`)
const degrees = (angle: number): string => `${Number(((angle * 180) / Math.PI).toFixed(2))}°`
