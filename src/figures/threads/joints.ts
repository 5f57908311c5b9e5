// Bolted joints under load: stiffness, gasket, slip.
import {
  boltShare,
  boltStiffness,
  boltsNeeded,
  gasketPressure,
  jointLoads,
  memberStiffness,
  memberStiffnessFitted,
  slipLoad,
  stiffnessWith,
} from '../../mechanics/index.ts'
import { choice, exact, known, knownNumber, number, optional, told, whole } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { asMargin, say, sayAnswer, sayNumber, sayShare } from '../frame/say.ts'

const modulus = told(exact('pressure'), 'Young’s modulus: 207 GPa for steel, about 100 GPa for grey iron')
const nominalDiameter = told(exact('length'), 'nominal diameter of the bolt')
const proofLoad = told(exact('force'), 'proof load of one bolt: figure bolt-strength gives it')
const share = 'share of the working load that the bolt takes: figure bolt-share gives it'

export const JOINTS = [
  figure({
    name: 'bolt-stiffness',
    asks: 'How stiff is a bolt between head and nut?',
    of: ['boltStiffness'],
    inputs: {
      shankArea: told(exact('area'), 'section of the plain shank'),
      stressArea: told(exact('area'), 'stress area of the thread: figure thread gives it'),
      shankLength: told(exact('length'), 'plain shank within the grip; 0 mm for none'),
      threadLength: told(exact('length'), 'thread within the grip'),
      modulus,
    },
    work: boltStiffness,
    answers: (stiffness) => ({ stiffness: say('stiffness', stiffness) }),
    words: 'shank and thread as two springs one after the other',
    example: 'shank-area=113 mm² stress-area=84.3 mm² shank-length=20 mm thread-length=18..20 mm modulus=207 GPa',
  }),
  figure({
    name: 'joint-stiffness',
    asks: 'How stiff are the clamped parts round a bolt?',
    of: ['memberStiffness'],
    inputs: { nominalDiameter, grip: told(exact('length'), 'thickness of what is clamped'), modulus },
    work: memberStiffness,
    answers: (stiffness) => ({ stiffness: say('stiffness', stiffness) }),
    words: 'two cones of 30° under head and nut as springs',
    example: 'nominal-diameter=12 mm grip=40 mm modulus=90..110 GPa',
  }),
  figure({
    name: 'joint-stiffness-other-way',
    asks: 'How stiff are the clamped parts by a second method?',
    of: ['memberStiffnessFitted'],
    inputs: {
      nominalDiameter,
      grip: told(exact('length'), 'thickness of what is clamped'),
      modulus,
      material: told(choice('steel', 'aluminium', 'copper', 'grey iron', 'other'), 'of the clamped parts'),
    },
    work: memberStiffnessFitted,
    answers: (stiffness) => ({ stiffness: say('stiffness', stiffness) }),
    words: 'stiffness = modulus × diameter × A × e to the power (B × diameter ÷ grip), A and B by material',
    example: 'nominal-diameter=5/8 in grip=1-1/2 in modulus=14000 ksi material="grey iron"',
  }),
  figure({
    name: 'joint-stiffness-gasket',
    asks: 'How stiff are the clamped parts with a gasket between them?',
    of: ['stiffnessWith'],
    inputs: {
      members: told(exact('stiffness'), 'of the parts without the gasket: figure joint-stiffness gives it'),
      gasketArea: exact('area'),
      gasketThickness: told(exact('length'), 'as squeezed'),
      gasketModulus: told(exact('pressure'), 'Young’s modulus of the gasket'),
    },
    work: stiffnessWith,
    answers: (stiffness) => ({ 'stiffness of all': say('stiffness', stiffness) }),
    words: 'springs one behind the other',
    example: 'members=1500 kN/mm gasket-area=500 mm² gasket-thickness=1.5 mm gasket-modulus=100..500 MPa',
  }),
  figure({
    name: 'bolt-share',
    asks: 'Which share of a working load does the bolt take?',
    of: ['boltShare'],
    inputs: {
      bolt: told(exact('stiffness'), 'stiffness of the bolt'),
      members: told(exact('stiffness'), 'stiffness of the clamped parts'),
    },
    work: boltShare,
    answers: (taken) => ({ 'share that the bolt takes': sayShare(taken) }),
    words: 'share = bolt ÷ (bolt + clamped parts)',
    example: 'bolt=500 kN/mm members=1200..1600 kN/mm',
  }),
  figure({
    name: 'joint-under-load',
    asks: 'What does a working load do to the tightened joint: does it gape?',
    of: ['jointLoads'],
    inputs: {
      preload: told(known('force'), 'tension of one bolt: figure tension-from-torque gives it'),
      load: told(known('force'), 'working load on one bolt, along it'),
      share: told(knownNumber, share),
      proofLoad,
    },
    work: jointLoads,
    answers: (joint) => ({
      'load of the bolt': say('force', joint.boltLoad),
      'what still clamps': say('force', joint.clampLeft),
      'stays closed': sayAnswer(joint.staysClosed, 'no'),
      'the bolt stays below proof': sayAnswer(joint.staysBelowProof, 'no'),
      'proof over the load of the bolt': asMargin(sayNumber(joint.yieldFactor)),
      'load may grow before proof': asMargin(sayNumber(joint.loadFactor)),
      'load may grow before it gapes': asMargin(sayNumber(joint.separationFactor)),
    }),
    words:
      'bolt = tension + share × load; clamp = tension − (1 − share) × load; a joint that gapes has the whole load on its bolts',
    example: 'preload=25..35 kN load=10 kN share=0.25..0.4 proof-load=48.9 kN',
  }),
  figure({
    name: 'bolts-needed',
    asks: 'How many bolts does this joint want?',
    of: ['boltsNeeded'],
    inputs: {
      total: told(exact('force'), 'working load on the whole joint, along the bolts'),
      preload: told(exact('force'), 'tension of one bolt'),
      share: told(number, share),
      proofLoad,
      loadFactor: told(number, 'how many times the load may grow before proof or gaping, wanted'),
    },
    work: boltsNeeded,
    answers: (bolts) => ({
      'bolts, not rounded': sayNumber(bolts),
      'take at least': sayNumber(Math.ceil(bolts - 1e-9)),
    }),
    words:
      'the most of: share × load factor × load ÷ (proof load − tension); load factor × load ÷ proof load; (1 − share) × load factor × load ÷ tension',
    example: 'total=36000 lbf preload=14400 lbf share=0.3..0.37 proof-load=19210 lbf load-factor=2',
  }),
  figure({
    name: 'joint-slip',
    asks: 'At which load across the bolts does the joint slip?',
    of: ['slipLoad'],
    inputs: {
      clamp: known('force'),
      bolts: told(whole, 'number of bolts'),
      faces: optional(whole),
      friction: optional(knownNumber),
    },
    work: slipLoad,
    answers: (load) => ({ 'slips at': say('force', load) }),
    words: 'load = friction × clamp of one bolt × bolts × faces',
    example: 'clamp=8..10 kN bolts=6',
  }),
  figure({
    name: 'gasket-pressure',
    asks: 'Is the gasket pressed hard enough, and evenly?',
    of: ['gasketPressure'],
    inputs: {
      clamp: exact('force'),
      bolts: told(whole, 'number of bolts'),
      gasketArea: exact('area'),
      boltCircle: told(exact('length'), 'diameter of the bolt circle'),
      nominalDiameter,
    },
    work: gasketPressure,
    answers: ({ pressure, spacing, isEven }) => ({
      'pressure on the gasket': say('pressure', pressure),
      'bolts apart, in bolt diameters': sayNumber(spacing),
      'stand close enough and not too close': sayAnswer(isEven, 'no'),
    }),
    words: 'pressure = clamp × bolts ÷ area; spacing = π × bolt circle ÷ (bolts × diameter), 3 to 6 is even',
    example: 'clamp=8..10 kN bolts=8 gasket-area=10000 mm² bolt-circle=200 mm nominal-diameter=12 mm',
  }),
]
