// Seals, O-rings and snap rings.
import {
  grooveThrust,
  materialOf,
  nearestORings,
  oRing,
  oRingOfDash,
  rangeOf,
  ringThrust,
  sealTrack,
  sealTrackLimits,
  snapRingGroove,
} from '../../mechanics/index.ts'
import {
  atWorst,
  choice,
  exact,
  known,
  knownNumber,
  material,
  number,
  optional,
  text,
  told,
  yesNo,
} from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { say, sayAnswer, sayNumber, sayShare } from '../frame/say.ts'

const ROUGHNESS = { metric: 'µm', inch: 'µin' } as const
const dirty = told(
  atWorst(yesNo, true, 'not told; taken as dirty or fast'),
  'dirt from outside, or a track speed of 4 m/s and more',
)

const FLYING = ['A ring under spring or end load flies: glasses, and nobody in line.']

export const SEALS = [
  figure({
    name: 'seal-track-wanted',
    asks: 'How smooth and how hard must the track of a lip seal be?',
    of: ['sealTrackLimits'],
    inputs: { dirty },
    work: sealTrackLimits,
    answers: ({ ra, rz, leastHardness }) => ({
      'roughness Ra': say('length', ra, ROUGHNESS),
      'roughness Rz': say('length', rz, ROUGHNESS),
      'hardness HRC, at least': sayNumber(leastHardness),
    }),
    words: 'looked up by dirt and speed',
    example: 'dirty=yes',
  }),
  figure({
    name: 'seal-track',
    asks: 'Can the old seal track be used again?',
    of: ['sealTrack'],
    inputs: {
      roughness: optional(told(known('length'), 'roughness Ra; left out not known')),
      hardness: optional(told(knownNumber, 'hardness HRC; left out not known')),
      groove: optional(told(known('length'), 'depth of the worn groove; left out not known')),
      dirty,
    },
    work: sealTrack,
    answers: ({ finishIsGood, hardnessIsGood, grooveIsGood }) => ({
      'finish is good': sayAnswer(finishIsGood, 'no'),
      'hardness is good': sayAnswer(hardnessIsGood, 'no'),
      'groove is shallow enough': sayAnswer(grooveIsGood, 'no'),
    }),
    words: 'each held against its limit: figure seal-track-wanted; a groove that a nail feels is too deep',
    example: 'roughness=0.4 µm groove=0.02..0.03 mm dirty=no',
  }),
  figure({
    name: 'o-ring',
    asks: 'Does this O-ring sit rightly in its groove: squeeze, stretch, fill?',
    of: ['oRing'],
    inputs: {
      cord: known('length'),
      depth: known('length'),
      width: known('length'),
      inside: optional(known('length')),
      seat: optional(known('length')),
      duty: optional(choice('at rest, on a face', 'at rest, round a part', 'to and fro', 'turning')),
    },
    work: oRing,
    answers: (fit) => ({
      squeeze: say('length', fit.squeeze),
      'squeeze of the cord': sayShare(fit.squeezeShare),
      'squeeze is usual': sayAnswer(fit.squeezeIsUsual, 'no'),
      stretch: sayShare(fit.stretch),
      'stretch is usual': sayAnswer(fit.stretchIsUsual, 'no'),
      'rubber fills the groove by': sayShare(fit.fill),
      'fill is usual': sayAnswer(fit.fillIsUsual, 'no'),
    }),
    words:
      'squeeze = (cord − depth) ÷ cord; stretch = (seat − inside) ÷ inside; fill = section of the cord ÷ section of the groove; a stretched cord is thinner',
    example: 'cord=3.53 mm depth=2.80..2.85 mm width=4.8 mm inside=50 mm seat=51 mm',
  }),
  figure({
    name: 'o-ring-size',
    asks: 'What are the sizes of the O-ring with this dash number?',
    of: ['oRingOfDash'],
    inputs: { dash: told(text, 'dash number of AS568, as 210') },
    work: ({ dash }) => oRingOfDash(dash),
    answers: ({ inside, cord }) => ({ 'inside diameter': say('length', inside), cord: say('length', cord) }),
    words: 'looked up by the number',
    example: 'dash=210',
  }),
  figure({
    name: 'o-ring-nearest',
    asks: 'Which standard O-ring is this one I measured?',
    of: ['nearestORings'],
    inputs: { inside: exact('length'), cord: exact('length') },
    work: nearestORings,
    answers: (rings) =>
      Object.fromEntries(
        rings.flatMap(({ dash, inside, cord }) => [
          [`-${dash}, inside`, say('length', inside)],
          [`-${dash}, cord`, say('length', cord)],
        ]),
      ),
    words: 'the rings of AS568 with a cord within 0.3 mm, nearest inside diameter first',
    example: 'inside=18.6 mm cord=3.5 mm',
  }),
  figure({
    name: 'snap-ring-groove',
    asks: 'What groove does a snap ring of this size want?',
    of: ['snapRingGroove'],
    inputs: { on: choice('shaft', 'bore'), diameter: exact('length') },
    work: snapRingGroove,
    answers: ({ ringThickness, grooveDiameter, grooveWidth }) => ({
      'diameter of the groove': say('length', grooveDiameter),
      'width of the groove, at least': say('length', grooveWidth),
      'thickness of the ring': say('length', ringThickness),
    }),
    words: 'looked up by the nominal diameter',
    example: 'on=shaft diameter=40 mm',
  }),
  figure({
    name: 'groove-thrust',
    asks: 'How much thrust does the wall of a snap-ring groove stand?',
    of: ['grooveThrust'],
    inputs: {
      diameter: exact('length'),
      grooveDiameter: exact('length'),
      yieldStrength: optional(
        told(known('pressure'), 'yield strength of the shaft or housing; left out that of the material'),
      ),
      material,
    },
    work: ({ yieldStrength, material, ...rest }) => {
      const { low, high } = rangeOf(yieldStrength ?? materialOf(material).yieldStrength)
      const thrustAt = (strength: typeof low) => grooveThrust({ ...rest, yieldStrength: strength })
      return { low: thrustAt(low), high: thrustAt(high) }
    },
    answers: (thrust) => ({ thrust: say('force', thrust) }),
    cautions: [
      ...FLYING,
      'Only with land beyond the groove three times as wide as the groove is deep: less of it shears off. A chamfer or a radius on the part that pushes tips the ring long before.',
      'Count on the low end. The ring itself may stand less: the list of its maker tells.',
    ],
    words: 'thrust = area of the wall × yield strength ÷ 1.2',
    example: 'diameter=40 mm groove-diameter=37.5..37.7 mm yield-strength=250 MPa',
  }),
  figure({
    name: 'ring-thrust',
    asks: 'How much thrust does the ring or its groove stand by the makers’ inch formula?',
    of: ['ringThrust'],
    inputs: {
      diameter: exact('length'),
      depth: told(exact('length'), 'depth of the groove, or thickness of the ring'),
      strength: told(exact('pressure'), 'yield strength of the shaft, or shear strength of the ring'),
      factor: number,
      safety: number,
    },
    work: ringThrust,
    answers: (thrust) => ({ thrust: say('force', thrust) }),
    cautions: [
      ...FLYING,
      'Work it for the ring and for the groove: the lesser counts. A chamfer or a radius on the part that pushes, knocks or fast turning leave far less.',
      'The list of the maker comes first.',
    ],
    words: 'thrust = form factor × diameter × depth × strength × π ÷ safety',
    example: 'diameter=2.835 in depth=0.05 in strength=45000 psi factor=1 safety=4',
  }),
]
