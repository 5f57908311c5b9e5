// Press fits: how tight, how hard, how strong.
import {
  closedCylinder,
  frictionOf,
  interference,
  interferenceAtTemperatures,
  interferencePressure,
  materialOf,
  pressFit,
  shrunkAgainstForced,
  thickCylinderStress,
} from '../../mechanics/index.ts'
import { metre } from '../../quantity/constructors.ts'
import { atWorst, choice, exact, known, knownNumber, material, number, optional, told } from '../frame/ask.ts'
import { figure } from '../frame/figure.ts'
import { asMargin, say, sayAnswer, sayNumber, sayShare, sayWords } from '../frame/say.ts'

const shaftRoughness = optional(
  told(known('length'), 'roughness Rz of the shaft (about 4 to 6 times Ra); left out smooth'),
)
const boreRoughness = optional(told(known('length'), 'roughness Rz of the bore; left out smooth'))

export const PRESSING = [
  figure({
    name: 'interference',
    asks: 'How much interference do my measured shaft and bore really have?',
    of: ['interference'],
    inputs: {
      shaft: told(known('length'), 'measured diameter of the shaft'),
      bore: told(known('length'), 'measured diameter of the bore, at the same temperature'),
      shaftRoughness,
      boreRoughness,
    },
    work: interference,
    answers: ({ measured, roughnessLoss, effective }) => ({
      'left to grip with (below zero clearance)': say('length', effective),
      'as measured': say('length', measured),
      'lost as the rough peaks are pressed flat': say('length', roughnessLoss),
    }),
    words: 'shaft − bore − what the rough peaks of both give away',
    example: 'shaft=50.045..50.050 mm bore=50.010..50.015 mm shaft-roughness=4 µm bore-roughness=6 µm',
  }),
  figure({
    name: 'interference-warm',
    asks: 'How tight is the fit when the parts were measured, or run, at other temperatures?',
    of: ['interferenceAtTemperatures', 'interference'],
    inputs: {
      shaft: told(known('length'), 'measured diameter of the shaft'),
      shaftMeasuredAt: told(known('temperature'), 'temperature of the shaft as it was measured'),
      shaftCountsAt: optional(
        told(known('temperature'), 'temperature of the shaft when the fit counts; left out 20 °C'),
      ),
      shaftMaterial: material,
      bore: told(known('length'), 'measured diameter of the bore'),
      boreMeasuredAt: told(known('temperature'), 'temperature of the hub as it was measured'),
      boreCountsAt: optional(told(known('temperature'), 'temperature of the hub when the fit counts; left out 20 °C')),
      boreMaterial: material,
      shaftRoughness,
      boreRoughness,
    },
    work: ({
      shaft,
      shaftMeasuredAt,
      shaftCountsAt,
      shaftMaterial,
      bore,
      boreMeasuredAt,
      boreCountsAt,
      boreMaterial,
      ...rough
    }) => {
      const tight = interferenceAtTemperatures({
        shaft: {
          diameter: shaft,
          measuredAt: shaftMeasuredAt,
          material: shaftMaterial,
          ...(shaftCountsAt !== undefined && { countsAt: shaftCountsAt }),
        },
        bore: {
          diameter: bore,
          measuredAt: boreMeasuredAt,
          material: boreMaterial,
          ...(boreCountsAt !== undefined && { countsAt: boreCountsAt }),
        },
      })
      const { roughnessLoss, cautions } = interference({ shaft, bore, ...rough })
      return {
        tight,
        left: { low: metre(tight.low - roughnessLoss.high), high: metre(tight.high - roughnessLoss.low) },
        cautions,
      }
    },
    answers: ({ tight, left }) => ({
      'left to grip with (below zero clearance)': say('length', left),
      'interference, shaft − bore': say('length', tight),
    }),
    words:
      'each diameter grown by its expansion × the change of its temperature; then shaft − bore − what the rough peaks of both give away',
    example:
      'shaft=100.05 mm shaft-measured-at=45..50 °C shaft-material=steel bore=100 mm bore-measured-at=20 °C bore-material="grey iron"',
  }),
  figure({
    name: 'press-fit',
    asks: 'How hard does it press on, what does it carry, and do hub and shaft stand it?',
    of: ['pressFit'],
    inputs: {
      jointDiameter: told(exact('length'), 'diameter of the joint'),
      length: told(exact('length'), 'length that grips, without chamfers and grooves'),
      hubOutside: told(known('length'), 'outside of the hub where its wall is thinnest'),
      shaftBore: optional(told(known('length'), 'bore of a hollow shaft; left out solid')),
      interference: told(known('length'), 'on the diameter, after roughness: figure interference gives it'),
      hub: material,
      shaft: material,
      friction: optional(
        told(knownNumber, 'friction of the joint; left out not known, from the slipperiest to the roughest'),
      ),
    },
    work: pressFit,
    answers: ({ pressure, hub, shaft, pressLoad, pushOffLoad, slipTorque, stop }) => ({
      'load at full depth': say('force', pressLoad),
      'stop pressing at': say('force', stop.load),
      because: sayWords(stop.because, stop.isBelowLeast),
      'load to push off when clean': say('force', pushOffLoad),
      'torque before it slips': say('torque', slipTorque),
      'grip pressure': say('pressure', pressure),
      'hoop stress in the hub': say('pressure', hub.hoop),
      'stress judged in the hub': say('pressure', hub.judged),
      'hub is judged by': sayWords(hub.rule),
      'hub stays sound': sayAnswer(hub.staysSound, 'no'),
      'hoop stress in the shaft': say('pressure', shaft.hoop),
      'stress judged in the shaft': say('pressure', shaft.judged),
      'shaft is judged by': sayWords(shaft.rule),
      'shaft stays sound': sayAnswer(shaft.staysSound, 'no'),
      'hub: strength used': asMargin(sayShare(hub.use)),
      'shaft: strength used': asMargin(sayShare(shaft.use)),
    }),
    words:
      'pressure = interference ÷ (joint × (give of hub + give of shaft)); load = pressure × π × joint × length × friction; torque = load × half the joint',
    example:
      'joint-diameter=50 mm length=40 mm hub-outside=80..82 mm interference=25..40 µm hub="grey iron" shaft=steel friction=0.08..0.15',
  }),
  figure({
    name: 'press-pressure',
    asks: 'What grip pressure does an interference make, by the bare formula?',
    of: ['interferencePressure'],
    inputs: {
      jointDiameter: exact('length'),
      hubOutside: exact('length'),
      shaftBore: told(exact('length'), 'bore of a hollow shaft; 0 mm for a solid one'),
      interference: exact('length'),
      hubModulus: told(exact('pressure'), 'Young’s modulus of the hub'),
      hubPoisson: told(number, 'Poisson’s ratio of the hub'),
      shaftModulus: told(exact('pressure'), 'Young’s modulus of the shaft'),
      shaftPoisson: told(number, 'Poisson’s ratio of the shaft'),
    },
    work: ({ hubModulus, hubPoisson, shaftModulus, shaftPoisson, ...rest }) =>
      interferencePressure({
        ...rest,
        hub: { youngsModulus: hubModulus, poissonRatio: hubPoisson },
        shaft: { youngsModulus: shaftModulus, poissonRatio: shaftPoisson },
      }),
    answers: (pressure) => ({ 'grip pressure': say('pressure', pressure) }),
    words: 'pressure = interference ÷ (joint × (give of hub + give of shaft))',
    cautions: ['The bare formula does not ask what the hub stands: figure press-fit does.'],
    example:
      'joint-diameter=1 in hub-outside=2 in shaft-bore=0 in interference=2-2.3 thou hub-modulus=30000 ksi hub-poisson=0.3 shaft-modulus=30000 ksi shaft-poisson=0.3',
  }),
  figure({
    name: 'friction',
    asks: 'Which friction does a joint have in this state?',
    of: ['frictionOf'],
    inputs: { state: atWorst(choice('oiled', 'dry', 'unknown'), 'unknown', 'not told; taken at its worst both ways') },
    work: ({ state }) => frictionOf(state),
    answers: ({ coefficient }) => ({ friction: sayNumber(coefficient) }),
    words: 'looked up by the state of the surfaces',
    example: 'state=oiled',
  }),
  figure({
    name: 'material',
    asks: 'How strong, stiff and heavy is this material, and how much does it grow with heat?',
    of: ['materialOf'],
    inputs: { material },
    work: ({ material: name }) => materialOf(name),
    answers: (known) => ({
      'yield strength': say('pressure', known.yieldStrength),
      'tensile strength': say('pressure', known.tensileStrength),
      brittle: sayAnswer(known.brittle),
      'Young’s modulus': say('pressure', known.youngsModulus),
      'Poisson’s ratio': sayNumber(known.poissonRatio),
      'expansion for one degree': say('thermal expansion', known.expansion),
      density: say('density', known.density),
      'heat for a kilogram and a degree, in J': sayNumber(known.specificHeat),
    }),
    words: 'looked up; from the weakest to the strongest that goes by that name',
    cautions: ['An old part is what it is, not what the drawing says: a spark, a file, a hardness, a chip tell more.'],
    example: 'material="wrought iron"',
  }),
  figure({
    name: 'ring-stress',
    asks: 'What stress does pressure make in a ring, a hub or a hollow shaft?',
    of: ['thickCylinderStress'],
    inputs: {
      innerDiameter: told(exact('length'), 'inner diameter'),
      outerDiameter: told(exact('length'), 'outer diameter'),
      innerPressure: told(exact('pressure'), 'pressure from inside; 0 MPa for none'),
      outerPressure: told(exact('pressure'), 'pressure from outside; 0 MPa for none'),
      at: exact('length'),
    },
    work: thickCylinderStress,
    answers: ({ hoop, radial }) => ({
      'hoop stress (tension above zero)': say('pressure', hoop),
      'radial stress': say('pressure', radial),
    }),
    words: 'Lamé: hoop and radial stress from both pressures and both diameters at the diameter asked for',
    example: 'inner-diameter=50 mm outer-diameter=90 mm inner-pressure=30 MPa outer-pressure=0 MPa at=50..90 mm',
  }),
  figure({
    name: 'barrel-stress',
    asks: 'What stress does pressure make in a closed barrel, and how much does it swell?',
    of: ['closedCylinder'],
    inputs: {
      bore: told(exact('length'), 'bore of the barrel'),
      outside: told(exact('length'), 'outside diameter of the barrel'),
      pressure: exact('pressure'),
      modulus: told(exact('pressure'), 'Young’s modulus of the barrel: 207 GPa for steel'),
      poisson: told(number, 'Poisson’s ratio: 0.29 for steel'),
    },
    work: ({ modulus, poisson, ...rest }) =>
      closedCylinder({ ...rest, material: { youngsModulus: modulus, poissonRatio: poisson } }),
    answers: ({ hoop, axial, shear, boreGrowth }) => ({
      'hoop stress at the bore': say('pressure', hoop),
      'stress along the barrel': say('pressure', axial),
      'greatest shear': say('pressure', shear),
      'bore grows by': say('length', boreGrowth),
    }),
    words: 'Lamé with closed ends: hoop = pressure × (outside² + bore²) ÷ (outside² − bore²)',
    cautions: [
      'Stored pressure kills. This is no permission: the maker’s rating and a test with oil, never with air, decide.',
    ],
    example: 'bore=60 mm outside=90 mm pressure=15..20 MPa modulus=207 GPa poisson=0.29',
  }),
  figure({
    name: 'shrunk-or-forced',
    asks: 'How much better does a shrunk joint hold than one forced together cold?',
    of: ['shrunkAgainstForced'],
    inputs: { direction: choice('along', 'turning') },
    work: ({ direction }) => shrunkAgainstForced(direction),
    answers: (times) => ({ 'times as strong': sayNumber(times) }),
    words: 'an old workshop trial, looked up',
    example: 'direction=turning',
  }),
]
