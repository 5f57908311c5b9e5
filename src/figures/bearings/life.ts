// How long a bearing lasts, and whether it stands its load at rest.
import {
  contaminationFactor,
  deepGrooveFactors,
  equivalentLoad,
  fatigueLimitFromStatic,
  inducedThrust,
  lifeModificationFactor,
  lubricationRatio,
  modifiedLifeTime,
  ratingForReliability,
  ratingLife,
  ratingLifeTime,
  reliabilityFactor,
  reliabilityOfAll,
  requiredRating,
  staticSafety,
  taperFactors,
  taperPairThrust,
} from '../../mechanics/index.ts'
import { choice, exact, known, knownNumber, list, number, optional, told } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { asMargin, say, sayNumber, sayShare } from '../frame/say.ts'

const kind = told(choice('ball', 'roller'), 'ball or roller')
const HOURS = { metric: 'h', inch: 'h' } as const
const load = told(exact('force'), 'equivalent load: figure equivalent-load gives it')
const speed = told(exact('speed of rotation'), 'speed of the bearing')
const standing = {
  radialLoad: told(known('force'), 'across the shaft'),
  axialLoad: told(known('force'), 'along the shaft'),
  staticRating: told(exact('force'), 'static rating of the maker, symbol C0'),
}

/** ISO 281: true up to half of the dynamic rating; above, the contact yields. */
const heavyCautions = ({ dynamicRating, load }: Readonly<Record<'dynamicRating' | 'load', number>>): string[] => [
  ...(load > dynamicRating / 2
    ? [
        'The load is more than half of the dynamic rating: balls or rollers may dent the rings first, and it lasts less. Ask the maker.',
      ]
    : []),
  'For a clean, well oiled bearing that turns steadily, not above about 120 °C; knocks, rust and misalignment end it sooner.',
]

export const BEARING_LIFE = [
  figure({
    name: 'bearing-life',
    asks: 'How many running hours does this bearing last at this load and speed?',
    of: ['ratingLifeTime', 'ratingLife'],
    inputs: { dynamicRating: told(exact('force'), 'dynamic rating of the maker, symbol C'), load, kind, speed },
    work: (given) => ({ time: ratingLifeTime(given), turns: ratingLife(given), cautions: heavyCautions(given) }),
    answers: ({ time, turns }, { dynamicRating, load }) => ({
      'nine of ten run longer than': say('time', time, HOURS),
      'in turns': sayNumber(turns),
      'rating over load': asMargin(sayNumber(dynamicRating / load)),
    }),
    words:
      'life in millions of turns = (rating ÷ load) to the power 3 for balls, 10/3 for rollers; hours = turns ÷ speed',
    example: 'dynamic-rating=20 kN load=4.5..5 kN kind=ball speed=100 rpm',
  }),
  figure({
    name: 'bearing-life-in-oil',
    asks: 'How many hours does it last with the oil and the dirt it really has?',
    of: ['modifiedLifeTime'],
    inputs: {
      reliabilityFactor: told(number, 'factor a1: figure bearing-reliability gives it'),
      lifeFactor: told(knownNumber, 'factor for oil and dirt: figure bearing-oil-factor gives it, or the maker’s a23'),
      dynamicRating: told(exact('force'), 'dynamic rating of the maker, symbol C'),
      load,
      kind,
      speed,
    },
    work: (given) => ({ time: modifiedLifeTime(given), cautions: heavyCautions(given) }),
    answers: ({ time }) => ({ 'the wanted share runs longer than': say('time', time, HOURS) }),
    words: 'life = reliability factor × factor for oil and dirt × rating life',
    example: 'reliability-factor=0.64 life-factor=0.8..2 dynamic-rating=20 kN load=5 kN kind=roller speed=100 rpm',
  }),
  figure({
    name: 'bearing-rating-wanted',
    asks: 'Which dynamic rating does a bearing need for the life I want?',
    of: ['requiredRating'],
    inputs: { load, turns: told(number, 'turns wanted, a million or more'), kind },
    work: requiredRating,
    answers: (rating) => ({ 'dynamic rating, at least': say('force', rating) }),
    words: 'rating = load × the root of the millions of turns: third root for balls, 10/3 for rollers',
    example: 'load=2 kN turns=500e6 kind=ball',
  }),
  figure({
    name: 'bearing-rating-surer',
    asks: 'Which rating does it need when more than nine of ten have to last?',
    of: ['ratingForReliability'],
    inputs: { load, turns: number, reliability: told(number, 'share that has to last, 50 to 99.9 %'), kind },
    work: ratingForReliability,
    answers: (rating) => ({ 'dynamic rating, at least': say('force', rating) }),
    words: 'rating = load × root of (life wanted ÷ the share of a million-turn life that the wanted share outlasts)',
    example: 'load=1015 lbf turns=1248e6 reliability=95 % kind=ball',
  }),
  figure({
    name: 'bearing-reliability',
    asks: 'What is left of the rating life when more than nine of ten have to last?',
    of: ['reliabilityFactor'],
    inputs: { reliability: number, edition: optional(choice('ISO 281:2007', 'ISO 281:1990')) },
    work: reliabilityFactor,
    answers: (factor) => ({ 'factor a1': sayNumber(factor) }),
    words: 'looked up by the share that has to last',
    example: 'reliability=95 %',
  }),
  figure({
    name: 'all-bearings-last',
    asks: 'How likely is it that all bearings of the unit last that long?',
    of: ['reliabilityOfAll'],
    inputs: { reliabilities: told(list(number), 'chance of each') },
    work: ({ reliabilities }) => reliabilityOfAll(reliabilities),
    answers: (chance) => ({ 'chance that all last': sayShare(chance) }),
    words: 'chances multiplied',
    example: 'reliabilities=0.945, 0.917, 0.95',
  }),
  figure({
    name: 'bearing-oil-film',
    asks: 'Is the oil thick enough for this bearing at its warmth?',
    of: ['lubricationRatio'],
    inputs: {
      viscosity: told(exact('viscosity'), 'of the oil, running warm: figure oil-viscosity gives it'),
      meanDiameter: told(exact('length'), 'mean of bore and outside diameter'),
      speed,
    },
    work: lubricationRatio,
    answers: (ratio) => ({ 'oil thickness over what it needs': asMargin(sayNumber(ratio)) }),
    words: 'ratio = viscosity of the oil ÷ viscosity that size and speed want; below 1 metal touches metal',
    example: 'viscosity=20..30 cSt mean-diameter=65 mm speed=1500 rpm',
  }),
  figure({
    name: 'bearing-dirt',
    asks: 'How much does dirt in the oil cost a bearing?',
    of: ['contaminationFactor'],
    inputs: {
      state: told(
        choice(
          'laboratory clean',
          'high cleanliness',
          'normal cleanliness',
          'slight dirt',
          'typical dirt',
          'severe dirt',
          'very severe dirt',
        ),
        'state of the oil: filtered very fine or sealed for life is high, filtered fine or shielded normal; no seals and wear from beside typical dirt',
      ),
      meanDiameter: optional(
        told(exact('length'), 'mean of bore and outside diameter; left out below 100 mm, the worse'),
      ),
    },
    work: contaminationFactor,
    answers: (factor) => ({ 'dirt factor (1 is none)': sayNumber(factor) }),
    words: 'looked up by the state of the oil',
    example: 'state="typical dirt"',
  }),
  figure({
    name: 'bearing-fatigue-limit',
    asks: 'What is its fatigue limit, when the maker prints none?',
    of: ['fatigueLimitFromStatic'],
    inputs: {
      kind,
      staticRating: told(exact('force'), 'static rating of the maker, symbol C0'),
      meanDiameter: told(exact('length'), 'mean of bore and outside diameter'),
    },
    work: fatigueLimitFromStatic,
    answers: (limit) => ({ 'fatigue limit, roughly': say('force', limit) }),
    words: 'static rating ÷ 22 for balls, ÷ 8.2 for rollers; above 100 mm less',
    example: 'kind=ball static-rating=23 kN mean-diameter=65 mm',
  }),
  figure({
    name: 'bearing-oil-factor',
    asks: 'What do oil and dirt together make of the rating life?',
    of: ['lifeModificationFactor'],
    inputs: {
      kind,
      lubricationRatio: told(number, 'oil thickness over what it needs: figure bearing-oil-film gives it'),
      contamination: told(number, 'dirt factor, 0 to 1: figure bearing-dirt gives it'),
      fatigueLimit: told(exact('force'), 'the maker’s C_u; where he prints none: figure bearing-fatigue-limit'),
      load,
    },
    work: lifeModificationFactor,
    answers: (factor) => ({ 'life is multiplied by': sayNumber(factor) }),
    words: 'a curve of the oil ratio and of dirt factor × fatigue limit ÷ load',
    example: 'kind=ball lubrication-ratio=1..1.4 contamination=0.3..0.5 fatigue-limit=600 N load=3 kN',
  }),
  figure({
    name: 'equivalent-load',
    asks: 'Which single load tires the bearing like its radial and axial load together?',
    of: ['equivalentLoad'],
    inputs: {
      radialLoad: told(known('force'), 'across the shaft'),
      axialLoad: told(known('force'), 'along the shaft'),
      threshold: told(number, 'the maker’s e: axial over radial load below which the axial does not count'),
      radial: told(number, 'the maker’s X'),
      axial: told(number, 'the maker’s Y'),
    },
    work: ({ radialLoad, axialLoad, threshold, radial, axial }) =>
      equivalentLoad({ radialLoad, axialLoad, factors: { threshold, radial, axial } }),
    answers: (equivalent) => ({ 'equivalent load': say('force', equivalent) }),
    words: 'load = X × radial + Y × axial, or the radial load where the axial is small beside it',
    example: 'radial-load=500 lbf axial-load=300..400 lbf threshold=0.3 radial=0.56 axial=1.527',
  }),
  figure({
    name: 'equivalent-load-groove-ball',
    asks: 'Which single load is it for a deep groove ball bearing whose factors are lost?',
    of: ['deepGrooveFactors', 'equivalentLoad'],
    inputs: {
      radialLoad: told(known('force'), 'across the shaft'),
      axialLoad: told(exact('force'), 'along the shaft'),
      staticRating: told(exact('force'), 'static rating of the maker, symbol C0'),
      f0: told(number, 'the maker’s f0, 12 to 16; 14 is usual'),
    },
    work: ({ radialLoad, axialLoad, staticRating, f0 }) => {
      const factors = deepGrooveFactors((f0 * axialLoad) / staticRating)
      return { factors, equivalent: equivalentLoad({ radialLoad, axialLoad, factors }) }
    },
    answers: ({ factors, equivalent }) => ({
      'equivalent load': say('force', equivalent),
      'factor e': sayNumber(factors.threshold),
      'factor X': sayNumber(factors.radial),
      'factor Y': sayNumber(factors.axial),
    }),
    words: 'the factors go by f0 × axial load ÷ static rating; load = X × radial + Y × axial',
    example: 'radial-load=4 kN axial-load=2 kN static-rating=23 kN f0=14',
  }),
  figure({
    name: 'equivalent-load-taper',
    asks: 'Which single load is it for a taper bearing, from its contact angle?',
    of: ['taperFactors', 'equivalentLoad'],
    inputs: {
      radialLoad: told(known('force'), 'across the shaft'),
      axialLoad: told(known('force'), 'along the shaft'),
      contactAngle: exact('angle'),
    },
    work: ({ radialLoad, axialLoad, contactAngle }) => {
      const factors = taperFactors(contactAngle)
      return { factors, equivalent: equivalentLoad({ radialLoad, axialLoad, factors }) }
    },
    answers: ({ factors, equivalent }) => ({
      'equivalent load': say('force', equivalent),
      'factor e': sayNumber(factors.threshold),
      'factor Y': sayNumber(factors.axial),
    }),
    words: 'load = 0.4 × radial + Y × axial with Y = 0.4 ÷ tangent of the contact angle',
    example: 'radial-load=4 kN axial-load=3 kN contact-angle=12..15°',
  }),
  figure({
    name: 'static-safety',
    asks: 'How far is a standing or slow ball bearing from being dented?',
    of: ['staticSafety'],
    inputs: {
      ...standing,
      kind: told(choice('deep groove', 'angular contact 40°'), 'kind of bearing'),
    },
    work: staticSafety,
    answers: (safety) => ({ 'static rating over load': asMargin(sayNumber(safety)) }),
    words: 'safety = static rating ÷ (X0 × radial load + Y0 × axial load)',
    example: 'radial-load=4 kN axial-load=3 kN static-rating=12 kN kind="deep groove"',
  }),
  figure({
    name: 'static-safety-taper',
    asks: 'How far is a standing or slow taper bearing from being dented?',
    of: ['staticSafety'],
    inputs: { ...standing, contactAngle: told(exact('angle'), 'contact angle of the bearing') },
    work: ({ contactAngle, ...loads }) => staticSafety({ ...loads, kind: { contactAngle } }),
    answers: (safety) => ({ 'static rating over load': asMargin(sayNumber(safety)) }),
    words:
      'safety = static rating ÷ (half the radial load + Y0 × axial load), Y0 = 0.22 ÷ tangent of the contact angle',
    example: 'radial-load=4 kN axial-load=3 kN static-rating=30 kN contact-angle=12..15°',
  }),
  figure({
    name: 'induced-thrust',
    asks: 'How hard does a taper bearing push its shaft away?',
    of: ['inducedThrust'],
    inputs: {
      radialLoad: exact('force'),
      axialFactor: optional(told(number, 'the maker’s Y')),
      ratioK: optional(told(number, 'the maker’s K, where that is given instead of Y')),
    },
    work: inducedThrust,
    answers: (thrust) => ({ 'thrust it makes': say('force', thrust) }),
    words: 'thrust = half the radial load ÷ Y, or 0.47 × radial load ÷ K',
    example: 'radial-load=10 kN axial-factor=1.6',
  }),
  figure({
    name: 'taper-pair-thrust',
    asks: 'Which axial load does each bearing of a taper pair get?',
    of: ['taperPairThrust'],
    inputs: {
      takingRadial: told(exact('force'), 'radial load of the bearing that the outside thrust pushes into'),
      takingFactor: told(number, 'its Y'),
      otherRadial: told(exact('force'), 'radial load of the other bearing'),
      otherFactor: told(number, 'its Y'),
      thrust: exact('force'),
    },
    work: ({ takingRadial, takingFactor, otherRadial, otherFactor, thrust }) =>
      taperPairThrust({
        taking: { radialLoad: takingRadial, axialFactor: takingFactor },
        other: { radialLoad: otherRadial, axialFactor: otherFactor },
        thrust,
      }),
    answers: ({ taking, other }) => ({
      'bearing that takes the thrust': say('force', taking),
      'other bearing': say('force', other),
    }),
    words:
      'each bearing has at least its own induced thrust; the one that takes it has the other’s and the outside thrust on top',
    example: 'taking-radial=4 kN taking-factor=1.6 other-radial=3 kN other-factor=1.6 thrust=1.5..2 kN',
  }),
]
