// What thread it is, and its sizes.
import {
  boltThroughGrip,
  identifyThread,
  requiredEngagement,
  screwInBlindHole,
  strippingEngagement,
  tappingDrill,
  tensileStressArea,
  threadDiameters,
  threadStripping,
  unifiedStressArea,
} from '../../mechanics/index.ts'
import { printQuantity } from '../../quantity/printQuantity.ts'
import {
  atWorst,
  choice,
  choiceOf,
  exact,
  known,
  knownNumber,
  knownPitch,
  material,
  number,
  optional,
  pitch,
  text,
  thread,
  told,
} from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { type Lines, say, sayAnswer, sayNumber, sayShare, sayWords } from '../frame/say.ts'
import { areaOf } from './areaOf.ts'

export const THREADS = [
  figure({
    name: 'which-thread',
    asks: 'What thread is this, and what could it be mistaken for?',
    of: ['identifyThread'],
    inputs: {
      diameter: told(known('length'), 'over the threads of the screw, or the bore of the tapped hole'),
      of: choice('screw', 'hole'),
      pitch: optional(
        told(knownPitch, 'by a gauge, or over ten threads divided by ten; 12 tpi where they are counted'),
      ),
      threadsPerInch: optional(told(knownNumber, 'in place of the pitch')),
      flankAngle: optional(
        told(
          choiceOf({ '60°': 60, '55°': 55, '47.5°': 47.5 }),
          'angle between the flanks by a gauge; left out not known',
        ),
      ),
    },
    work: identifyThread,
    answers: ({ matches, nearMisses, isSure }): Lines => ({
      'it can be': sayWords(
        matches.map(({ says }) => says).join(' ') || 'none that is held here',
        matches.length === 0,
      ),
      'that is sure': sayAnswer(isSure),
      'it is not': sayWords(nearMisses.map(({ says }) => says).join(' ')),
    }),
    words: 'diameter and pitch held against every thread of every series held here',
    example: 'diameter=9.42 mm of=screw threads-per-inch=16',
  }),
  figure({
    name: 'thread',
    asks: 'What does a sound thread of this size measure?',
    of: ['threadGeometry'],
    inputs: { thread },
    work: ({ thread }) => thread,
    answers: (sizes) => ({
      thread: sayWords(sizes.designation),
      'over the threads': say('length', sizes.nominalDiameter),
      pitch: say('length', sizes.pitch),
      'pitch diameter': say('length', sizes.pitchDiameter),
      'bore of the hole (minor diameter)': say('length', sizes.minorDiameter),
      'stress area': say('area', sizes.stressArea),
      'angle of the flanks': sayWords(`${sizes.flankAngle}°`),
      taper: sayNumber(sizes.taper),
    }),
    words: 'basic sizes by the standard of the series, before any tolerance is taken off',
    example: 'thread="1/2-12 BSW"',
  }),
  figure({
    name: 'tapping-drill',
    asks: 'Which drill for tapping this thread?',
    of: ['tappingDrill'],
    inputs: { thread, share: optional(number) },
    work: ({ thread: { designation }, ...rest }) => tappingDrill({ designation, ...rest }),
    answers: ({ drill, share, inchDrill, inchShare, exact: wanted }) => ({
      'metric drill': sayWords(printQuantity(drill, 'length', { system: 'metric' })),
      'leaves of the full thread': sayShare(share),
      'inch drill': sayWords(printQuantity(inchDrill, 'length', { system: 'inch', fractions: true })),
      'that one leaves': sayShare(inchShare),
      'the share asks for': say('length', wanted),
    }),
    words:
      'drill = diameter − share × full depth of the thread, to the nearest tenth of a millimetre and sixty-fourth of an inch',
    example: 'thread=M10 share=75 %',
  }),
  figure({
    name: 'metric-stress-area',
    asks: 'Which area carries the pull in a metric screw with a pitch of its own?',
    of: ['tensileStressArea'],
    inputs: { nominalDiameter: exact('length'), pitch },
    work: tensileStressArea,
    answers: (area) => ({ 'stress area': say('area', area) }),
    words: 'area of a circle of diameter − 0.9382 × pitch',
    example: 'nominal-diameter=10 mm pitch=1.5 mm',
  }),
  figure({
    name: 'inch-stress-area',
    asks: 'Which area carries the pull in a unified screw with a pitch of its own?',
    of: ['unifiedStressArea'],
    inputs: {
      nominalDiameter: exact('length'),
      pitch: told(pitch, 'one inch ÷ threads per inch, or the threads per inch themselves: 13 tpi'),
    },
    work: unifiedStressArea,
    answers: (area) => ({ 'stress area': say('area', area) }),
    words: 'area of a circle of diameter − 0.9743 ÷ threads per inch',
    example: 'nominal-diameter=1/2 in pitch=13 tpi',
  }),
  figure({
    name: 'thread-diameters',
    asks: 'What are pitch, minor and root diameter of a 60° thread of any pitch?',
    of: ['threadDiameters'],
    inputs: { nominalDiameter: exact('length'), pitch },
    work: threadDiameters,
    answers: ({ pitchDiameter, minorDiameter, rootDiameter }) => ({
      'pitch diameter': say('length', pitchDiameter),
      'minor diameter, of the nut': say('length', minorDiameter),
      'root of the screw': say('length', rootDiameter),
    }),
    words: 'diameter − 0.6495, 1.0825 and 1.2269 × pitch',
    example: 'nominal-diameter=27 mm pitch=1 mm',
  }),
  figure({
    name: 'engagement',
    asks: 'How deep must the screw go in, by the rule of thumb?',
    of: ['requiredEngagement'],
    inputs: {
      thread,
      tapped: told(
        atWorst(
          choice('steel', 'cast iron', 'aluminium'),
          'aluminium',
          'not told; taken as aluminium, the softest held here',
        ),
        'what the hole is in',
      ),
    },
    work: ({ thread: { nominalDiameter }, tapped }) => requiredEngagement({ nominalDiameter, tapped }),
    answers: (depth) => ({ 'thread in engagement, at least': say('length', depth) }),
    words: 'once the diameter in steel, one and a half times in cast iron, twice in aluminium',
    example: 'thread=M12 tapped="cast iron"',
  }),
  figure({
    name: 'stripping',
    asks: 'How deep must it go in so that the screw breaks before its threads strip?',
    of: ['strippingEngagement'],
    inputs: {
      thread,
      nutMinorDiameter: told(exact('length'), 'largest minor diameter of the hole, as drilled'),
      screwPitchDiameter: told(
        exact('length'),
        'smallest pitch diameter of the screw: figure thread, less its tolerance',
      ),
      strengthRatio: optional(number),
    },
    work: ({ thread, ...rest }) => strippingEngagement({ ...rest, pitch: thread.pitch, stressArea: areaOf(thread) }),
    answers: (length) => ({ 'thread in engagement, at least': say('length', length) }),
    cautions: [
      'Left out, the hole counts as strong as the screw: in iron, bronze or light metal it strips first, so tell strength-ratio, or take figure what-strips.',
    ],
    words:
      'length = 2 × stress area × strength ratio ÷ (π × bore of the hole × (1/2 + share of the pitch from pitch diameter to bore))',
    example: 'thread="1/2-13 UNC" nut-minor-diameter=0.434 in screw-pitch-diameter=0.4435 in strength-ratio=1..2.5',
  }),
  figure({
    name: 'what-strips',
    asks: 'What gives way first: the screw, its threads, or those in the hole?',
    of: ['threadStripping'],
    inputs: {
      thread: told(text, 'thread by its designation, as M10, 3/8-16 UNC, 1/2 BSW'),
      engagement: told(known('length'), 'full threads that meet'),
      screwTensile: told(
        known('pressure'),
        'tensile strength of the screw, least to most: figure bolt-strength gives the least; a real one is up to a quarter stronger',
      ),
      hole: told(material, 'material that the thread is tapped in'),
      screwMajor: optional(told(known('length'), 'outside of the screw as measured; left out basic')),
      holeMinor: optional(told(known('length'), 'bore of the tapped hole as measured; left out basic')),
      shearShare: optional(knownNumber),
    },
    work: ({ thread: designation, ...rest }) => threadStripping({ designation, ...rest }),
    answers: (goes) => ({
      'screw breaks at': say('force', goes.screwBreaks),
      'its threads strip at': say('force', goes.screwStrips),
      'threads in the hole strip at': say('force', goes.holeStrips),
      'the screw breaks first, as it should': sayAnswer(goes.screwBreaksFirst, 'no'),
      'it surely does with an engagement of': say('length', goes.engagementWanted),
    }),
    words:
      'load = what has to shear × shear strength, of the screw’s threads and of those in the hole, against stress area × tensile strength',
    example: 'thread=M10 engagement=14..15 mm screw-tensile=800..1000 MPa hole="grey iron"',
  }),
  figure({
    name: 'bolt-length',
    asks: 'Is the bolt long enough for its nut, and does the nut clamp before it meets the shank?',
    of: ['boltThroughGrip'],
    inputs: {
      length: told(known('length'), 'under the head to the point'),
      threadLength: optional(told(known('length'), 'threaded part from the point; left out threaded to the head')),
      grip: told(known('length'), 'thickness of all that is clamped, gasket as squeezed'),
      washers: optional(told(known('length'), 'thickness of all washers; left out none')),
      nut: told(known('length'), 'height of the nut'),
      thread,
    },
    work: ({ thread: { pitch }, threadLength, ...rest }) =>
      boltThroughGrip({ ...rest, pitch, ...(threadLength !== undefined && { thread: threadLength }) }),
    answers: ({ past, threadsPast, fillsNut, shankStopsNut }) => ({
      'stands past the nut by': say('length', past),
      'in threads': sayNumber(threadsPast),
      'fills the nut with two threads to spare': sayAnswer(fillsNut, 'no'),
      'nut meets the plain shank first': sayAnswer(shankStopsNut, 'yes'),
    }),
    words: 'past the nut = length − grip − washers − nut; shank = length − thread, against grip + washers',
    example: 'length=60 mm thread-length=30 mm grip=42..43 mm washers=2.5 mm nut=10.8 mm thread=M12',
  }),
  figure({
    name: 'blind-hole',
    asks: 'Does the screw clamp before it stands on the bottom of the hole?',
    of: ['screwInBlindHole'],
    inputs: {
      screwLength: told(known('length'), 'under the head to the tip'),
      screwThread: optional(
        told(known('length'), 'threaded part of the screw from the tip; left out threaded to the head'),
      ),
      grip: told(known('length'), 'thickness of what is clamped, without washer and gasket'),
      washer: optional(told(known('length'), 'thickness; left out none')),
      gasketSqueezed: optional(told(known('length'), 'gasket and sealant as squeezed, not as bought; left out none')),
      holeDepth: told(known('length'), 'to the bottom of the drilled hole, without its cone'),
      threadDepth: told(known('length'), 'depth of full thread in the hole'),
      wanted: told(exact('length'), 'engagement wanted: figure engagement gives it'),
    },
    work: screwInBlindHole,
    answers: (fit) => ({
      'room left at the bottom': say('length', fit.leftAtBottom),
      'thread in engagement': say('length', fit.engagement),
      'goes into the hole by': say('length', fit.reach),
      'stands on the bottom': sayAnswer(fit.bottoms, 'yes'),
      'runs out of thread': sayAnswer(fit.runsOutOfThread, 'yes'),
      'its plain shank jams first': sayAnswer(fit.shankJams, 'yes'),
      'has the engagement wanted': sayAnswer(fit.hasEngagement, 'no'),
    }),
    words: 'reach = length − grip − washer − gasket; room = depth of the hole − reach',
    example:
      'screw-length=40 mm grip=17.5..18 mm washer=2 mm gasket-squeezed=0.4..0.5 mm hole-depth=24 mm thread-depth=21 mm wanted=18 mm',
  }),
]
