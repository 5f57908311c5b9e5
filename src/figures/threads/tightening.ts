// How tight: torque, tension, stretch, order.
import {
  boltLoad,
  boltStretch,
  degree,
  fastenerStrength,
  preloadFromFriction,
  preloadFromTorque,
  type ScrewPlace,
  type ThreadGeometry,
  tightening,
  tighteningFactor,
  tighteningOrder,
  tighteningRounds,
  tighteningScatter,
  torqueFactor,
  torqueForPreload,
  torqueFromFriction,
  torqueWithPrevailing,
  turnAngle,
  wrenchSetting,
} from '../../mechanics/index.ts'
import { Problem } from '../../problem/problem.ts'
import { metre } from '../../quantity/constructors.ts'
import {
  atWorst,
  choice,
  exact,
  known,
  knownNumber,
  number,
  optional,
  rows,
  text,
  thread,
  told,
  whole,
} from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { type Lines, margin, say, sayAnswer, sayNumber, sayShare, sayWords } from '../frame/say.ts'
import { areaOf, screwOf } from './areaOf.ts'

const CONDITIONS = [
  'dry',
  'oiled',
  'black',
  'zinc plated',
  'lubricated',
  'cadmium plated',
  'anti-seize',
  'dirty',
  'unknown',
] as const
const condition = told(
  atWorst(choice(...CONDITIONS), 'unknown', 'not told; taken at its worst both ways'),
  'state of threads and head',
)
const grade = told(
  atWorst(text, 'no marking', 'not told; taken as wrought iron, the weakest held here'),
  'marking on the head: 8.8, SAE 5, BS R, A2-70; or wrought iron, old mild steel, or the hardness of steel as 180 HB',
)
/** A bare figure on the head of a unified screw is an SAE grade. */
const strengthOf = (grade: string, { designation, nominalDiameter }: ThreadGeometry) =>
  fastenerStrength({
    grade: / UN/.test(designation) && /^[1258]$/.test(grade) ? `SAE ${grade}` : grade,
    nominalDiameter,
  })

const friction = {
  threadFriction: told(knownNumber, 'friction in the threads, 0.02 to 0.6'),
  headFriction: told(knownNumber, 'friction under the head, 0.02 to 0.6'),
}
const headMean = optional(
  told(exact('length'), 'mean diameter of the ring that head or nut bears on; left out 1.25 × the diameter'),
)
/** Where the threads rub: on their pitch diameter, between flanks at the angle of their form. */
const rubbing = (thread: ThreadGeometry) => {
  const { nominalDiameter, pitch, pitchDiameter, flankAngle } = screwOf(thread)
  return { nominalDiameter, pitch, meanDiameter: pitchDiameter, flankAngle: degree(flankAngle) }
}

/** Screws of a circle by their number; how large it is does not matter. */
function roundCircle(count: number | undefined): ScrewPlace[] {
  if (count === undefined || count < 1 || count > MOST_ROUND) {
    throw new Problem('FIGURE_INPUT', {
      key: 'screws',
      says:
        count === undefined ? 'neither the places nor a circle of screws was told.' : `a circle of ${count} screws.`,
      next: `Give screws="name, across, up; …", or circle=8 for screws evenly round a circle, up to ${MOST_ROUND}.`,
    })
  }
  return Array.from({ length: count }, (_, at) => {
    const angle = (2 * Math.PI * at) / count
    return { id: String(at + 1), x: metre(Math.sin(angle)), y: metre(Math.cos(angle)) }
  })
}
const MOST_ROUND = 200

export const TIGHTENING = [
  figure({
    name: 'torque',
    asks: 'How tight, when the book of the machine is lost?',
    of: ['tightening', 'fastenerStrength'],
    inputs: { thread, grade, condition, shareOfProof: optional(number) },
    work: ({ thread, grade, condition, ...rest }) => {
      const { nominalDiameter } = thread
      const strength = strengthOf(grade, thread)
      return { strength, ...tightening({ nominalDiameter, stressArea: areaOf(thread), strength, condition, ...rest }) }
    },
    answers: ({ torque, preload, shareOfProof, isHeldBack, strength }) => ({
      torque: say('torque', torque),
      'tension it may give': say('force', preload),
      'of the proof load': sayShare(shareOfProof),
      'taken as grade': sayWords(strength.grade),
      'the grade is known': sayAnswer(strength.isKnown),
      'held back for a slippery screw': sayAnswer(isHeldBack),
    }),
    words:
      'torque = torque factor of the condition × 0.75 of the proof load × diameter, held back where the most slippery screw would stretch',
    example: 'thread="1/2-13 UNC" grade="SAE 5" condition=oiled',
  }),
  figure({
    name: 'torque-for-tension',
    asks: 'What torque gives the tension I want?',
    of: ['torqueForPreload'],
    inputs: {
      preload: told(exact('force'), 'tension wanted'),
      thread,
      torqueFactor: told(number, 'figure torque-factor gives it, 0.05 to 0.6'),
    },
    work: ({ preload, thread, torqueFactor: factor }) =>
      torqueForPreload({ preload, nominalDiameter: screwOf(thread).nominalDiameter, torqueFactor: factor }),
    answers: (torque) => ({ torque: say('torque', torque) }),
    words: 'torque = torque factor × tension × diameter',
    example: 'preload=30 kN thread=M12 torque-factor=0.12..0.18',
  }),
  figure({
    name: 'tension-from-torque',
    asks: 'What tension does this torque give, least and most?',
    of: ['preloadFromTorque'],
    inputs: {
      torque: known('torque'),
      thread,
      torqueFactor: told(knownNumber, 'figure torque-factor gives it, 0.05 to 0.6'),
    },
    work: ({ torque, thread, torqueFactor: factor }) =>
      preloadFromTorque({ torque, nominalDiameter: screwOf(thread).nominalDiameter, torqueFactor: factor }),
    answers: (preload) => ({ tension: say('force', preload) }),
    words: 'tension = torque ÷ (torque factor × diameter)',
    example: 'torque=75 lbf·ft thread="1/2-13 UNC" torque-factor=0.12..0.2',
  }),
  figure({
    name: 'torque-factor',
    asks: 'Which torque factor goes with this state of the threads?',
    of: ['torqueFactor'],
    inputs: { condition },
    work: ({ condition }) => torqueFactor(condition),
    answers: ({ range, usual }) => ({
      'torque factor': sayNumber(range),
      'the trade works with': sayNumber(usual),
    }),
    words: 'looked up by the condition',
    example: 'condition="zinc plated"',
  }),
  figure({
    name: 'torque-by-friction',
    asks: 'What torque, when the friction of threads and head was measured?',
    of: ['torqueFromFriction'],
    inputs: {
      thread,
      preload: exact('force'),
      threadFriction: told(number, friction.threadFriction.what!),
      headFriction: told(number, friction.headFriction.what!),
      headMean,
    },
    work: ({ thread, ...rest }) => torqueFromFriction({ ...rest, ...rubbing(thread) }),
    answers: (torque) => ({ torque: say('torque', torque) }),
    words: 'torque = tension × (what the slope of the thread, its friction and the friction under the head ask for)',
    example: 'thread=M12 preload=30 kN thread-friction=0.12..0.16 head-friction=0.12',
  }),
  figure({
    name: 'tension-by-friction',
    asks: 'What tension, when the friction of threads and head was measured?',
    of: ['preloadFromFriction'],
    inputs: { thread, torque: known('torque'), ...friction, headMean },
    work: ({ thread, ...rest }) => preloadFromFriction({ ...rest, ...rubbing(thread) }),
    answers: (preload) => ({ tension: say('force', preload) }),
    words: 'the same turned round',
    example: 'thread=M12 torque=80 N·m thread-friction=0.12..0.16 head-friction=0.12',
  }),
  figure({
    name: 'bolt-strength',
    asks: 'How strong is this bolt by the marking on its head?',
    of: ['fastenerStrength', 'boltLoad'],
    inputs: { thread, grade },
    work: ({ thread, grade }) => {
      const strength = strengthOf(grade, thread)
      const loadAt = (at: typeof strength.proof) => boltLoad({ stressArea: areaOf(thread), strength: at })
      return { ...strength, proofLoad: loadAt(strength.proof), breakingLoad: loadAt(strength.tensile) }
    },
    answers: ({ grade: taken, isKnown, proof, tensile, proofLoad, breakingLoad }) => ({
      'proof load': say('force', proofLoad),
      'breaking load, at least': say('force', breakingLoad),
      'proof strength': say('pressure', proof),
      'tensile strength, at least': say('pressure', tensile),
      'grade that was taken': sayWords(taken),
      'the marking is held here': sayAnswer(isKnown),
      'between proof and breaking': margin('force', { value: proofLoad, limit: breakingLoad }),
    }),
    words: 'load = stress area × strength of the grade',
    example: 'thread=M20 grade=8.8',
  }),
  figure({
    name: 'scatter',
    asks: 'How far does the tension stray with this way of tightening?',
    of: ['tighteningScatter', 'tighteningFactor'],
    inputs: {
      method: told(
        atWorst(
          choice(
            'yield-controlled',
            'hydraulic tensioning',
            'torque found on the joint',
            'torque from estimated friction',
            'power driver and check',
            'by feel or impact',
          ),
          'by feel or impact',
          'not told; taken as done by feel, which strays most',
        ),
        'way of tightening',
      ),
    },
    work: ({ method }) => tighteningScatter(method),
    answers: ({ share }) => ({
      'plus and minus, good to poor case': sayShare(share),
      'greatest over least tension': sayNumber({
        low: tighteningFactor(share.low),
        high: tighteningFactor(share.high),
      }),
    }),
    words: 'looked up; greatest over least = (1 + share) ÷ (1 − share)',
    example: 'method="torque found on the joint"',
  }),
  figure({
    name: 'bolt-stretch',
    asks: 'How much longer is the bolt when it is tight?',
    of: ['boltStretch'],
    inputs: {
      preload: known('force'),
      length: known('length'),
      thread,
      modulus: told(known('pressure'), 'Young’s modulus: 207 GPa for steel'),
    },
    work: ({ thread, ...rest }) => boltStretch({ ...rest, area: areaOf(thread) }),
    answers: (stretch) => ({ stretch: say('length', stretch) }),
    words: 'stretch = tension × length ÷ (stress area × modulus)',
    example: 'preload=45..50 kN length=100 mm thread=M16 modulus=207 GPa',
  }),
  figure({
    name: 'turn-from-snug',
    asks: 'How far do I turn the nut from snug?',
    of: ['turnAngle'],
    inputs: {
      stretch: told(known('length'), 'figure bolt-stretch gives it'),
      preload: exact('force'),
      members: optional(
        told(
          exact('stiffness'),
          'stiffness of the clamped parts: figure joint-stiffness gives it; left out rigid, and the angle is least',
        ),
      ),
      thread,
    },
    work: ({ thread, ...rest }) => {
      const { pitch, nominalDiameter } = screwOf(thread)
      return turnAngle({ ...rest, pitch, nominalDiameter })
    },
    answers: (angle) => ({ 'turn from snug': say('angle', angle) }),
    words: 'turn = (stretch + what the parts are squeezed) ÷ pitch, in full turns',
    cautions: ['Only from a snug joint without a gasket: what seats faces and burrs does not count.'],
    example: 'stretch=0.012 in preload=24000 lbf thread="3/4-10 UNC"',
  }),
  figure({
    name: 'wrench-setting',
    asks: 'What do I set the wrench to with a crowfoot or an extension on it?',
    of: ['wrenchSetting'],
    inputs: {
      torque: exact('torque'),
      wrenchLength: known('length'),
      extension: known('length'),
      angle: optional(exact('angle')),
    },
    work: wrenchSetting,
    answers: (setting) => ({ 'set the wrench to': say('torque', setting) }),
    words: 'setting = torque × wrench ÷ (wrench + extension × cosine of the angle)',
    example: 'torque=100 N·m wrench-length=395..405 mm extension=50 mm',
  }),
  figure({
    name: 'stiff-nut',
    asks: 'What do I set for a nut that runs stiff?',
    of: ['torqueWithPrevailing'],
    inputs: { torque: told(exact('torque'), 'wanted for a plain thread'), prevailing: known('torque') },
    work: torqueWithPrevailing,
    answers: (setting) => ({ 'set the wrench to': say('torque', setting) }),
    words: 'sum of both torques',
    example: 'torque=60 N·m prevailing=6..9 N·m',
  }),
  figure({
    name: 'tightening-rounds',
    asks: 'In which rounds do I draw the cover down?',
    of: ['tighteningRounds'],
    inputs: { torque: told(exact('torque'), 'full torque') },
    work: ({ torque }) => tighteningRounds(torque),
    answers: (rounds) => Object.fromEntries(rounds.map((torque, at) => [`round ${at + 1}`, say('torque', torque)])),
    words: '0.3, 0.7 and the whole torque, then the whole again round the circle until nothing moves',
    example: 'torque=45 lbf·ft',
  }),
  figure({
    name: 'tightening-order',
    asks: 'In which order do I tighten these screws?',
    of: ['tighteningOrder'],
    inputs: {
      screws: optional(
        told(
          rows({ id: told(text, 'its name'), x: told(exact('length'), 'across'), y: told(exact('length'), 'up') }),
          'place of each screw, from any origin; left out those of the circle',
        ),
      ),
      circle: optional(told(whole, 'number of screws evenly round a circle, numbered as they stand; left out none')),
    },
    work: ({ screws, circle }) => tighteningOrder(screws ?? roundCircle(circle)),
    answers: (order): Lines => ({ order: sayWords(order.join(' → ')) }),
    words: 'from the centre outward and crosswise, each screw followed by the one across from it',
    example: 'screws="1, 50, 0 mm; 2, 0, 50 mm; 3, -50, 0 mm; 4, 0, -50 mm"',
  }),
]
