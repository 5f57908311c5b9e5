// Cases for inchAndMetric.test.ts: rooms measuring, stackup, hydraulics and lifting.
import * as units from '../../quantity/constructors.ts'
import * as mechanics from '../index.ts'
import type { Cases } from './typedUnits.ts'

const seconds = units.second
const { centistoke, pascalSecond } = mechanics

export const MEASURING_CASES: Cases = {
  summarizeReadings: ({ mm }, s) =>
    mechanics.summarizeReadings({ readings: [63, 63.01, 62.99, 63.02].map((x) => mm(x * s)) }),
  formOfDiameters: ({ mm }, s) =>
    mechanics.formOfDiameters(
      [0, 20, 45].map((at) => ({ at: mm(at), diameters: [mm(63 * s), mm(63 * s + at / 1000)] })),
    ),
  roundness: ({ mm }, s) => mechanics.roundness(Array.from({ length: 12 }, (_, at) => mm(s * Math.sin(at * at)))),
  sizeAt20: ({ mm, at, perKelvin }, s) =>
    mechanics.sizeAt20({
      reading: mm(100 * s),
      temperature: { low: at(15), high: at(30 * s) },
      expansion: perKelvin(1e-5),
    }),
  standardUncertainty: ({ mm }, s) => mechanics.standardUncertainty({ halfWidth: mm(s), shape: 'arcsine' }),
  stepUncertainty: ({ mm }, s) => mechanics.stepUncertainty(mm(s)),
  uncertaintyBudget: ({ mm }, s) =>
    mechanics.uncertaintyBudget({
      doubts: [
        { name: 'a', uncertainty: mm(s), degreesOfFreedom: 5 },
        { name: 'b', uncertainty: mm(2) },
      ],
    }),
  propagate: ({ mm }, s) =>
    mechanics.propagate({ estimates: { a: { value: mm(20 * s), uncertainty: mm(0.1) } }, formula: ({ a }) => a ** 2 }),
  simulate: ({ mm }, s) =>
    mechanics.simulate({
      inputs: { a: { shape: 'triangular', low: mm(5), high: mm(11 * s) } },
      formula: ({ a }) => 2 * a,
      seed: 3,
      samples: 1000,
    }),
  probabilityOfConformity: ({ mm }, s) =>
    mechanics.probabilityOfConformity({ reading: mm(63 * s), uncertainty: mm(2), low: mm(62), high: mm(64) }),
  guardBand: ({ mm }, s) => mechanics.guardBand({ uncertainty: mm(0.002 * s) }),
  sizeVerdict: ({ mm }, s) =>
    mechanics.sizeVerdict({ reading: mm(63 * s), guard: mm(0.31), low: mm(61.3), high: mm(64.7) }),
  stackUp: ({ mm }, s) =>
    mechanics.stackUp({
      links: [
        { sign: 1, size: mm(40 * s), tolerance: mm(0.1) },
        { sign: -1, size: mm(37), tolerance: mm(0.07), lever: 2, shape: 'arcsine' },
      ],
    }),
  toleranceOfEach: ({ mm }, s) => mechanics.toleranceOfEach({ gapTolerance: mm(s), count: 7 }),
  simulateStackUp: ({ mm }, s) =>
    mechanics.simulateStackUp({
      links: [
        { sign: 1, size: mm(40 * s), tolerance: mm(0.1) },
        { sign: -1, size: mm(37), tolerance: mm(0.07), shape: 'normal' },
      ],
      limits: { low: mm(2.95), high: mm(3.05) },
      seed: 9,
      samples: 2000,
    }),
  processCapability: ({ mm }, s) =>
    mechanics.processCapability({
      limits: { low: mm(9.97), high: mm(10.03) },
      mean: mm(10.001),
      standardDeviation: mm(0.01 * s),
    }),
  chooseShims: ({ mm }) =>
    mechanics.chooseShims({
      stock: [0.508, 0.254, 0.127].map((x, at) => ({ id: `${at}`, thickness: mm(x) })),
      target: { low: mm(0.6), high: mm(0.65) },
    }),
  splitShims: ({ mm }) =>
    mechanics.splitShims({
      pack: [0.508, 0.254, 0.127].map((x, at) => ({ id: `${at}`, thickness: mm(x) })),
      side: { low: mm(0.25), high: mm(0.3) },
    }),
  coverForce: ({ MPa, cm2 }, s) => mechanics.coverForce({ pressure: MPa(0.02 * s), area: cm2(1200) }),
  cylinderForce: ({ mm, MPa }, s) =>
    mechanics.cylinderForce({
      bore: mm(50 * s),
      rod: mm(25),
      pressure: { low: MPa(10), high: MPa(14) },
      backPressure: MPa(1),
    }),
  cylinderSpeed: ({ mm, litrePerMinute }, s) =>
    mechanics.cylinderSpeed({ bore: mm(50 * s), rod: mm(25), flow: litrePerMinute(20), stroke: mm(300) }),
  cylinderDuty: ({ mm, N, MPa }, s) =>
    mechanics.cylinderDuty({ force: N(1e5 * s), pressure: MPa(20), stroke: mm(300), time: seconds(30) }),
  jack: ({ mm, N, cm2 }, s) =>
    mechanics.jack({ smallArea: cm2(25 * s), largeArea: cm2(100), force: N(200), stroke: mm(50) }),
  gearPumpDisplacement: ({ mm }, s) =>
    mechanics.gearPumpDisplacement({ outside: mm(75 * s), root: mm(50), width: mm(25) }),
  pumpFlow: ({ litre }, s) => mechanics.pumpFlow({ displacement: litre(0.06 * s), speed: units.rpm(1000) }),
  pumpEfficiency: ({ litre, MPa, litrePerMinute, Nm }, s) =>
    mechanics.pumpEfficiency({
      displacement: litre(0.1),
      speed: units.rpm(1000),
      pressure: MPa(6 * s),
      flow: litrePerMinute(90),
      torque: Nm(140),
    }),
  motorEfficiency: ({ litre, MPa, litrePerMinute, Nm }, s) =>
    mechanics.motorEfficiency({
      displacement: litre(0.1),
      speed: units.rpm(1000),
      pressure: MPa(9 * s),
      flow: litrePerMinute(110),
      torque: Nm(100),
    }),
  hydraulicMotor: ({ litre, MPa, litrePerMinute }, s) =>
    mechanics.hydraulicMotor({ displacement: litre(0.1), pressure: MPa(7 * s), flow: litrePerMinute(60) }),
  reliefSetting: ({ MPa }, s) => mechanics.reliefSetting({ working: MPa(10 * s), weakest: MPa(20) }),
  reliefHeat: ({ MPa, litrePerMinute, litre }, s) =>
    mechanics.reliefHeat({ pressure: MPa(14), flow: litrePerMinute(30 * s), oil: litre(40), time: seconds(60) }),
  orificeFlow: ({ mm, MPa }, s) => mechanics.orificeFlow({ bore: mm(s), pressureDrop: MPa(10) }),
  valveCapacity: ({ MPa, litrePerMinute }, s) =>
    mechanics.valveCapacity({ flow: litrePerMinute(60 * s), pressureDrop: MPa(1), relativeDensity: 0.9 }),
  annularLeakage: ({ mm, MPa }, s) =>
    mechanics.annularLeakage({
      diameter: mm(40),
      clearance: mm(0.025 * s),
      length: mm(30),
      pressureDrop: MPa(15),
      viscosity: pascalSecond(0.03),
    }),
  leakDown: ({ cm2, litrePerMinute }, s) =>
    mechanics.leakDown({ leakage: litrePerMinute(0.001 * s), area: cm2(20), time: seconds(3600) }),
  dropAtViscosity: ({ mm }, s) =>
    mechanics.dropAtViscosity({ drop: mm(10 * s), viscosityThen: centistoke(100), viscosityNow: centistoke(30) }),
  oilViscosity: ({ at }, s) =>
    mechanics.oilViscosity({
      sheet: [
        { temperature: at(40), viscosity: centistoke(220) },
        { temperature: at(100), viscosity: centistoke(19) },
      ],
      temperature: at(60 * s),
    }),
  dynamicViscosity: (_, s) => mechanics.dynamicViscosity({ kinematic: centistoke(46 * s) }),
  pipeSpeed: ({ mm, litrePerMinute }, s) => mechanics.pipeSpeed({ flow: litrePerMinute(60), bore: mm(30 * s) }),
  reynoldsNumber: ({ mm, metrePerSecond }, s) =>
    mechanics.reynoldsNumber({ speed: metrePerSecond(5 * s), bore: mm(50), viscosity: centistoke(100) }),
  pipeLoss: ({ mm, metrePerSecond }, s) =>
    mechanics.pipeLoss({
      speed: metrePerSecond(3 * s),
      bore: mm(20),
      length: mm(4000),
      viscosity: { low: centistoke(15), high: centistoke(60) },
    }),
  tubeRating: ({ mm, MPa }, s) => mechanics.tubeRating({ outside: mm(12), wall: mm(1.5 * s), strength: MPa(310) }),
  leverForce: ({ mm, N }, s) => mechanics.leverForce({ load: N(1000), loadArm: mm(200 * s), forceArm: mm(90) }),
  ramArm: ({ mm, N }, s) =>
    mechanics.ramArm({
      load: N(1000 * s),
      loadRadius: mm(800),
      pinRadius: mm(200),
      anchorDistance: mm(500),
      closed: mm(400),
      open: mm(600),
      closedAngle: units.degree(-20),
    }),
  boxFill: ({ mm, litre }, s) =>
    mechanics.boxFill({ length: mm(500 * s), width: mm(300), depth: mm(80), displaced: litre(1) }),
  standingCylinderFill: ({ mm }, s) => mechanics.standingCylinderFill({ diameter: mm(400 * s), depth: mm(100) }),
  lyingCylinderFill: ({ mm }, s) =>
    mechanics.lyingCylinderFill({ diameter: mm(400), length: mm(500), depth: mm(200 * s) }),
  massSum: ({ kg }, s) => mechanics.massSum([{ name: 'a', mass: kg(40 * s) }, { name: 'b' }]),
  centreOfMass: ({ kg, mm }, s) =>
    mechanics.centreOfMass(
      [100, 250].map((x, at) => ({
        name: `${at}`,
        mass: { low: kg(40 * s), high: kg(90) },
        at: { x: mm(x), y: mm(x * s), z: mm(-x) },
      })),
    ),
  growingUnit: ({ kg, mm }, s) =>
    mechanics.growingUnit(
      [100, 250].map((x, at) => ({ name: `${at}`, mass: kg(40 * s), at: { x: mm(x), y: mm(0), z: mm(-x) } })),
    ),
  tipping: ({ kg, mm }, s) =>
    mechanics.tipping({ edgeDistance: mm(200 * s), centreHeight: mm(500), mass: kg(80), pushHeight: mm(700) }),
  turnOver: ({ kg, mm }, s) =>
    mechanics.turnOver({ mass: kg(80), edgeDistance: mm(200 * s), centreHeight: mm(500), hookDistance: mm(700) }),
  uprightLegs: ({ kg, mm }, s) => mechanics.uprightLegs({ mass: kg(80), toFirst: mm(200 * s), toSecond: mm(500) }),
  slingLegs: ({ kg, mm }, s) =>
    mechanics.slingLegs({
      mass: kg(800),
      centre: { x: mm(50 * s), y: mm(0), z: mm(0) },
      hookHeight: mm(900),
      points: [
        [-400, -300],
        [400, -300],
        [400, 300],
        [-400, 300],
      ].map(([x, y], at) => ({ name: `${at}`, x: mm(x as number), y: mm(y as number), z: mm(250) })),
    }),
  slingAngle: ({ mm }, s) => mechanics.slingAngle({ height: mm(700 * s), length: mm(960) }),
  liftingScrew: ({ mm, N }, s) => mechanics.liftingScrew({ load: N(13000), pitchDiameter: mm(34 * s), lead: mm(8.5) }),
  manualLift: ({ mm, kg }, s) =>
    mechanics.manualLift({ horizontal: mm(400 * s), height: mm(500), travel: mm(700), mass: kg(15) }),
}
