// Lifting, slinging, turning over. No figure here is a permission: the plate of the rated gear is.
import {
  centreOfMass,
  eyeboltShare,
  growingUnit,
  liftingScrew,
  manualLift,
  massSum,
  slingAngle,
  slingLegFactor,
  slingLegs,
  slingModeFactor,
  tipping,
  turnOver,
  uprightLegs,
} from '../../mechanics/index.ts'
import { choice, choiceOf, exact, known, knownNumber, number, optional, rows, text, told } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { asMargin, type Lines, say, sayAnswer, sayNumber, sayShare, sayWords } from '../frame/say.ts'

/** As a tape and an eye read them. */
const DEGREES = { metric: '°', inch: '°' } as const
const TAPE = { metric: 'mm', inch: 'in' } as const
const name = told(text, 'name of the part')
const partMass = optional(told(known('mass'), 'its mass; ? where it is not known'))
const placed = {
  name,
  mass: partMass,
  x: optional(told(known('length'), 'along')),
  y: optional(told(known('length'), 'across')),
  z: optional(told(known('length'), 'up')),
}
type PlacedRow = { readonly name: string } & Partial<Record<'x' | 'y' | 'z', Parameters<typeof place>[0]>> &
  Pick<Parameters<typeof massSum>[0][number], 'mass'>
const place = (at: Parameters<typeof tipping>[0]['centreHeight']) => at
const withPlace = ({ x, y, z, ...part }: PlacedRow) => ({
  ...part,
  ...(x !== undefined && y !== undefined && z !== undefined && { at: { x, y, z } }),
})
const heavy = {
  mass: told(known('mass'), 'of all that hangs; where it is known only in part, weigh it'),
}

/** Rows of one name are told apart by a number, so that no line takes the place of another. */
const apart = <T extends { readonly name: string }>(all: readonly T[]): readonly T[] =>
  all.map((one, at) => {
    const alike = all.flatMap(({ name }, place) => (name === one.name ? [place] : []))
    return alike.length > 1 ? { ...one, name: `${one.name} (${alike.indexOf(at) + 1})` } : one
  })

export const LIFTING = [
  figure({
    name: 'mass-of-unit',
    asks: 'What does it weigh, from the masses of its parts?',
    of: ['massSum'],
    inputs: { parts: told(rows({ name, mass: partMass }), 'all that hangs together') },
    work: ({ parts }) => massSum(parts),
    answers: ({ atLeast, whole, unknown }) => ({
      'at least': say('mass', atLeast),
      'the whole': say('mass', whole),
      'not known': sayWords(unknown.length > 0 ? `${unknown.join(', ')}: weigh it` : undefined),
    }),
    words: 'masses added',
    example: 'parts="case, 60 kg; wheel, 18..20 kg; shaft, ?"',
  }),
  figure({
    name: 'centre-of-mass',
    asks: 'Where is its centre of mass?',
    of: ['centreOfMass'],
    inputs: { parts: told(rows(placed), 'mass and place of each part, from one corner') },
    work: ({ parts }) => centreOfMass(parts.map(withPlace)),
    answers: ({ atLeast, whole, centre, unplaced, unknown }): Lines => ({
      mass: say('mass', whole),
      'mass, at least': say('mass', whole ? undefined : atLeast),
      'centre along': say('length', centre?.x, TAPE),
      'centre across': say('length', centre?.y, TAPE),
      'centre up': say('length', centre?.z, TAPE),
      'no centre': sayWords(
        centre
          ? undefined
          : `mass or place not known of ${[...new Set([...unknown, ...unplaced])].join(', ')}: weigh it and lift it a hand's breadth first`,
        true,
      ),
    }),
    words: 'sum of mass × place ÷ sum of mass, along each axis',
    example: 'parts="case, 60 kg, 0, 0, 200 mm; wheel, 18..20 kg, 200, 0, 250 mm"',
  }),
  figure({
    name: 'mass-as-it-grows',
    asks: 'What does it weigh after each part that goes on?',
    of: ['growingUnit'],
    inputs: { parts: told(rows(placed), 'in the order in which they go on') },
    work: ({ parts }) => growingUnit(apart(parts).map(withPlace)),
    answers: (steps): Lines =>
      Object.fromEntries(
        steps.flatMap(({ after, whole, atLeast, centre }) => [
          [`with ${after}`, say('mass', whole)],
          [`with ${after}, at least`, say('mass', whole ? undefined : atLeast)],
          [`with ${after}, centre along`, say('length', centre?.x, TAPE)],
          [`with ${after}, centre across`, say('length', centre?.y, TAPE)],
          [`with ${after}, centre up`, say('length', centre?.z, TAPE)],
        ]),
      ),
    words: 'as centre-of-mass, after each part',
    example: 'parts="case, 60 kg, 0, 0, 200 mm; wheel, 18..20 kg, 200, 0, 250 mm"',
  }),
  figure({
    name: 'sling-legs',
    asks: 'What does each leg of the sling carry with the centre of mass where it is?',
    of: ['slingLegs'],
    inputs: {
      ...heavy,
      along: told(known('length'), 'centre of mass along the unit'),
      across: told(known('length'), 'centre of mass across it'),
      up: told(known('length'), 'height of the centre of mass'),
      eyes: told(
        rows({
          name: told(text, 'name of the eye'),
          x: told(exact('length'), 'along'),
          y: told(exact('length'), 'across'),
          z: told(exact('length'), 'up'),
        }),
        'two to four eyes, all above the centre of mass, from the same corner',
      ),
      hookHeight: exact('length'),
    },
    work: ({ mass, along, across, up, eyes, hookHeight }) =>
      slingLegs({ mass, centre: { x: along, y: across, z: up }, points: apart(eyes), hookHeight }),
    answers: ({ legs }): Lines =>
      Object.fromEntries(
        legs.flatMap(({ name: leg, tension, plate, angle, length }) => [
          [`leg ${leg} carries at most`, say('force', tension)],
          [`leg ${leg}: its plate has to say at least`, say('mass', plate)],
          [`leg ${leg} stands above level by`, say('angle', angle, DEGREES)],
          [`leg ${leg}, length to hang level`, say('length', length, TAPE)],
        ]),
      ),
    words: 'equilibrium under the hook; with four legs, all ways in which two or three of them carry everything',
    example:
      'mass=950..1000 kg along=50 mm across=0 mm up=0 mm eyes="a, -500, 0, 300 mm; b, 500, 0, 300 mm" hook-height=600 mm',
  }),
  figure({
    name: 'sling-angle',
    asks: 'At which angle does the sling leg stand, by the tape?',
    of: ['slingAngle', 'slingLegFactor'],
    inputs: { height: known('length'), length: known('length') },
    work: ({ height, length }) => {
      const angle = slingAngle({ height, length })
      return { angle, factor: slingLegFactor(angle) }
    },
    answers: ({ angle, factor }) => ({
      'above level': say('angle', angle, DEGREES),
      'the leg carries so much more than upright': sayNumber(factor),
    }),
    words: 'sine of the angle = height ÷ length; the leg carries 1 ÷ sine',
    cautions: ['The tag of the sling and the plate of the hoist decide. Nobody stands below or beside what hangs.'],
    example: 'height=33 in length=38 in',
  }),
  figure({
    name: 'sling-mode',
    asks: 'How many times the plate of one leg may the sling carry, used like this?',
    of: ['slingModeFactor'],
    inputs: {
      mode: told(
        choice('one leg', 'two legs to 90°', 'two legs to 120°', 'three or four legs to 90°', 'basket', 'choke'),
        'how it is used; angles between opposite legs',
      ),
    },
    work: ({ mode }) => slingModeFactor(mode),
    answers: (factor) => ({ 'times the plate of one leg': sayNumber(factor) }),
    words: 'looked up by the way of slinging',
    cautions: [
      'The tag of the sling itself comes first.',
      'A basket counts twice only with both parts upright: at 90° between them 1.4 times, at 120° once. Less over a sharp edge.',
      'Three or four legs count so only where the centre is in the middle and all are taut; on a stiff unit two may carry all: figure sling-legs.',
    ],
    example: 'mode="two legs to 90°"',
  }),
  figure({
    name: 'upright-legs',
    asks: 'How do two hoists or trestles share the load?',
    of: ['uprightLegs'],
    inputs: {
      ...heavy,
      toFirst: known('length'),
      toSecond: told(known('length'), 'level distance to the second, on the other side'),
    },
    work: uprightLegs,
    answers: ({ first, second }) => ({ 'first carries': say('force', first), 'second carries': say('force', second) }),
    words: 'each carries the weight × the other’s distance ÷ both distances',
    example: 'mass=200..220 lb to-first=30 in to-second=10 in',
  }),
  figure({
    name: 'eyebolt',
    asks: 'What is left of the eyebolt’s load at this angle?',
    of: ['eyeboltShare'],
    inputs: {
      angle: known('angle'),
      hasShoulder: optional(
        told(choiceOf({ yes: true, no: false }), 'a shoulder that sits flat on the unit; left out it has none'),
      ),
    },
    work: eyeboltShare,
    answers: ({ share }) => ({
      'take, of the load stamped on it': sayShare(share.low),
      'the mildest maker tells': sayShare(share.high),
    }),
    words: 'looked up by the angle off its axis; the strictest of the makers counts',
    example: 'angle=30..45° has-shoulder=yes',
  }),
  figure({
    name: 'tipping',
    asks: 'How easily does it go over?',
    of: ['tipping'],
    inputs: {
      edgeDistance: known('length'),
      centreHeight: known('length'),
      mass: optional(told(known('mass'), 'left out no push is told')),
      pushHeight: optional(known('length')),
    },
    work: tipping,
    answers: ({ angle, push }) => ({
      'goes over at a lean of': say('angle', angle, DEGREES),
      'a push that starts it': say('force', push),
    }),
    words:
      'tangent of the lean = distance to the edge ÷ height of the centre; push = weight × distance ÷ height of the push',
    example: 'edge-distance=200 mm centre-height=480..520 mm mass=110 kg',
  }),
  figure({
    name: 'turn-over',
    asks: 'What happens when I turn the unit over its edge?',
    of: ['turnOver'],
    inputs: { ...heavy, edgeDistance: known('length'), centreHeight: known('length'), hookDistance: known('length') },
    work: turnOver,
    answers: ({ goesOverAt, pull, rise, fall, energy }) => ({
      'goes over by itself at': say('angle', goesOverAt, DEGREES),
      'pull at the far side that starts it': say('force', pull),
      'centre rises by': say('length', rise),
      'then falls if nobody holds it': say('length', fall),
      'with an energy of': say('energy', energy),
    }),
    words:
      'pull = weight × distance to the edge ÷ distance of the hook; it goes over when the centre stands above the edge',
    example: 'mass=95..105 kg edge-distance=300 mm centre-height=400 mm hook-distance=600 mm',
  }),
  figure({
    name: 'by-hand',
    asks: 'May one person lift this by hand?',
    of: ['manualLift'],
    inputs: {
      horizontal: told(known('length'), 'from between the ankles to between the hands'),
      height: told(exact('length'), 'of the hands above the floor'),
      travel: told(exact('length'), 'up or down'),
      twist: optional(exact('angle')),
      liftsPerMinute: optional(number),
      duration: optional(
        told(choice('up to 1 h', 'up to 2 h', 'up to 8 h'), 'of such work in the day; left out up to 8 h'),
      ),
      grip: optional(choice('good', 'fair', 'poor')),
      mass: optional(told(known('mass'), 'left out no index is told')),
    },
    work: manualLift,
    answers: ({ limit, index, mayLift, multipliers }) => ({
      'one person may lift it': sayAnswer(mayLift, 'no'),
      'nearly all can lift so': say('mass', limit),
      'load over that (above 1: two people or a hoist)': asMargin(sayNumber(index)),
      'factor for the reach': sayNumber(multipliers.horizontal),
      'factor for the height': sayNumber(multipliers.vertical),
      'factor for the travel': sayNumber(multipliers.distance),
      'factor for the twist': sayNumber(multipliers.asymmetry),
      'factor for the frequency': sayNumber(multipliers.frequency),
      'factor for the grip': sayNumber(multipliers.grip),
    }),
    words: '23 kg × a factor each for reach, height, travel, twist, frequency and grip',
    example: 'horizontal=30..35 cm height=75 cm travel=40 cm duration="up to 1 h" grip=fair mass=40 lb',
  }),
  figure({
    name: 'lifting-screw',
    asks: 'What torque raises the load on a screw, and does it stay up?',
    of: ['liftingScrew'],
    inputs: {
      load: known('force'),
      pitchDiameter: told(known('length'), 'pitch diameter of the screw'),
      lead: known('length'),
      friction: optional(knownNumber),
      flank: optional(exact('angle')),
    },
    work: liftingScrew,
    answers: ({ raise, lower, holds, efficiency, leadAngle }) => ({
      'torque to raise': say('torque', raise),
      'torque to lower (below zero it runs down)': say('torque', lower),
      'stays without a brake': sayAnswer(holds, 'no'),
      'efficiency of raising': sayShare(efficiency),
      'lead angle': say('angle', leadAngle),
    }),
    words: 'torque = load × half the pitch diameter × (friction and slope of the thread together)',
    example: 'load=2900 lbf pitch-diameter=1.354 in lead=1/3 in',
  }),
]
