// Cases for inchAndMetric.test.ts: rooms fits, threads, bearings and shafts.
import { degree, megapascal, rpm } from '../../quantity/constructors.ts'
import { quantity } from '../../quantity/quantity.ts'
import * as mechanics from '../index.ts'
import type { Cases } from './typedUnits.ts'

const m = mechanics
const steel = { youngsModulus: megapascal(207000), poissonRatio: 0.29 }
const viscosity = mechanics.centistoke(20)

export const FIT_CASES: Cases = {
  limitDeviations: (u, s) => m.limitDeviations({ nominal: u.mm(60 * s), toleranceClass: 'H7' }),
  standardTolerance: (u, s) => m.standardTolerance({ nominal: u.mm(60 * s), grade: 7 }),
  toleranceByFormula: (u, s) => m.toleranceByFormula({ nominal: u.mm(60 * s), grade: 7 }),
  deviationByFormula: (u, s) => m.deviationByFormula({ nominal: u.mm(60 * s), letter: 'f' }),
  fitOfClasses: (u, s) => m.fitOfClasses({ nominal: u.mm(60 * s), fit: 'H7/s6' }),
  inchFit: (u, s) => m.inchFit({ nominal: u.mm(37 * s), fit: 'RC4' }),
  interference: (u, s) =>
    m.interference({ shaft: u.mm(50.05 * s), bore: u.mm(50 * s), shaftRoughness: u.um(6), boreRoughness: u.um(6) }),
  interferenceAtTemperatures: (u, s) =>
    m.interferenceAtTemperatures({
      shaft: { diameter: u.mm(50.05 * s), measuredAt: u.at(35), material: 'steel' },
      bore: { diameter: u.mm(50 * s), measuredAt: u.at(20), countsAt: u.at(60), material: 'grey iron' },
    }),
  pressFit: (u, s) =>
    m.pressFit({
      jointDiameter: u.mm(50 * s),
      length: u.mm(40),
      hubOutside: u.mm(90),
      interference: u.um(40),
      hub: 'grey iron',
      shaft: 'steel',
    }),
  closedCylinder: (u, s) =>
    m.closedCylinder({ bore: u.mm(60 * s), outside: u.mm(90), pressure: u.MPa(20), material: steel }),
  dropOn: (u, s) =>
    m.dropOn({
      diameter: u.mm(60 * s),
      interference: u.um(30),
      slip: u.um(40),
      outer: { material: 'bearing steel', kind: 'bearing, metal cage', notAbove: u.at(100) },
      inner: { material: 'steel', kind: 'plain part' },
      room: u.at(20),
    }),
  chillToDropIn: (u, s) =>
    m.chillToDropIn({
      diameter: u.mm(60 * s),
      interference: u.um(30),
      slip: u.um(20),
      inner: { material: 'bronze', kind: 'plain part', notBelow: u.at(-60) },
      room: u.at(20),
    }),
  secondsInHand: (u, s) =>
    m.secondsInHand({
      outside: u.mm(120 * s),
      inside: u.mm(65),
      width: u.mm(23),
      fitDiameter: u.mm(65),
      material: 'bearing steel',
      takenAt: u.at(110),
      room: u.at(20),
      interference: u.um(30),
    }),
  bushClosing: (u, s) =>
    m.bushClosing({
      seat: u.mm(50),
      bore: u.mm(40 * s),
      housingOutside: u.mm(90),
      interference: u.um(40),
      bush: 'bronze',
      housing: 'grey iron',
    }),
  boreBeforeReaming: (u, s) =>
    m.boreBeforeReaming({
      finished: { low: u.mm(40.025 * s), high: u.mm(40.025 * s + 0.03) },
      closing: { low: u.um(20), high: u.um(40) },
    }),
  taperDrawUp: (u, s) => m.taperDrawUp({ interference: u.um(60 * s), taper: 1 / 12 }),
  interferenceOfDrawUp: (u, s) => m.interferenceOfDrawUp({ drawUp: u.mm(0.7 * s), taper: 1 / 12 }),
  taperForces: (u, s) =>
    m.taperForces({ meanDiameter: u.mm(50 * s), length: u.mm(60), pressure: u.MPa(40), taper: 1 / 12, friction: 0.12 }),
  repairSleeve: (u, s) =>
    m.repairSleeve({
      readings: [u.mm(50 * s), u.mm(50 * s), u.mm(50.01 * s)],
      width: u.mm(10),
      sleeves: [{ name: 'A', shaft: { low: u.mm(44), high: u.mm(56) }, wall: u.um(280), width: u.mm(14) }],
    }),
  tyreShrinkage: (u, s) => m.tyreShrinkage(u.mm(1300 * s)),
  tensileStressArea: (u, s) => m.tensileStressArea({ nominalDiameter: u.mm(12 * s), pitch: u.mm(1.75) }),
  identifyThread: (u, s) => m.identifyThread({ diameter: u.mm(9.8 * s), of: 'screw', pitch: u.mm(1.5) }),
  threadStripping: (u, s) =>
    m.threadStripping({
      designation: 'M12',
      engagement: u.mm(14 * s),
      screwTensile: u.MPa(800),
      hole: 'grey iron',
      holeMinor: u.mm(10.2),
    }),
  hottestOf: (u, s) => m.hottestOf({ kind: 'plain part', notAbove: u.at(100 * s) }),
  coldestOf: (u, s) => m.coldestOf({ kind: 'plain part', notBelow: u.at(-30 * s) }),
  longestAt: (u, s) => m.longestAt(m.heatLimitOf('bearing, metal cage'), u.at(107 * s)),
  fastenerStrength: (u, s) => m.fastenerStrength({ grade: '8.8', nominalDiameter: u.mm(12 * s) }),
  torqueFromFriction: (u, s) =>
    m.torqueFromFriction({
      nominalDiameter: u.mm(12),
      pitch: u.mm(1.75),
      meanDiameter: u.mm(10.9 * s),
      preload: u.N(30000),
      threadFriction: 0.14,
      headFriction: 0.12,
    }),
  preloadFromFriction: (u, s) =>
    m.preloadFromFriction({
      nominalDiameter: u.mm(12),
      pitch: u.mm(1.75),
      meanDiameter: u.mm(10.9),
      torque: u.Nm(80 * s),
      threadFriction: 0.14,
      headFriction: 0.12,
    }),
  boltStretch: (u, s) =>
    m.boltStretch({ preload: u.N(30000 * s), length: u.mm(100), area: u.mm2(84.3), modulus: u.MPa(207000) }),
  turnAngle: (u, s) =>
    m.turnAngle({ stretch: u.um(150 * s), preload: u.N(30000), pitch: u.mm(1.75), nominalDiameter: u.mm(12) }),
  boltStiffness: (u, s) =>
    m.boltStiffness({
      shankArea: u.mm2(113),
      stressArea: u.mm2(84.3),
      shankLength: u.mm(20 * s),
      threadLength: u.mm(20),
      modulus: u.MPa(207000),
    }),
  memberStiffness: (u, s) =>
    m.memberStiffness({ nominalDiameter: u.mm(12), grip: u.mm(40 * s), modulus: u.MPa(100000) }),
  memberStiffnessFitted: (u, s) =>
    m.memberStiffnessFitted({
      nominalDiameter: u.mm(12),
      grip: u.mm(40 * s),
      modulus: u.MPa(100000),
      material: 'grey iron',
    }),
  stiffnessWith: (u, s) =>
    m.stiffnessWith({
      members: quantity(1e9, 'N/m'),
      gasketArea: u.mm2(500 * s),
      gasketThickness: u.mm(1.5),
      gasketModulus: u.MPa(500),
    }),
  gasketPressure: (u, s) =>
    m.gasketPressure({
      clamp: u.N(10000 * s),
      bolts: 8,
      gasketArea: u.mm2(10000),
      boltCircle: u.mm(200),
      nominalDiameter: u.mm(12),
    }),
  jointLoads: (u, s) => m.jointLoads({ preload: u.N(30000), load: u.N(10000 * s), share: 0.3, proofLoad: u.N(48900) }),
  boltsNeeded: (u, s) =>
    m.boltsNeeded({ total: u.N(1e5 * s), preload: u.N(36000), share: 0.3, proofLoad: u.N(48900), loadFactor: 2 }),
  slipLoad: (u, s) => m.slipLoad({ clamp: u.N(10000 * s), bolts: 6 }),
  wrenchSetting: (u, s) =>
    m.wrenchSetting({ torque: u.Nm(100 * s), wrenchLength: u.mm(400), extension: u.mm(50), angle: degree(30) }),
  torqueWithPrevailing: (u, s) => m.torqueWithPrevailing({ torque: u.Nm(60 * s), prevailing: u.Nm(8) }),
  ratingForReliability: (u, s) =>
    m.ratingForReliability({ load: u.N(4000 * s), turns: 1e9, reliability: 0.95, kind: 'ball' }),
  lubricationRatio: (u, s) => m.lubricationRatio({ viscosity, meanDiameter: u.mm(65 * s), speed: rpm(1500) }),
  contaminationFactor: (u, s) => m.contaminationFactor({ state: 'typical dirt', meanDiameter: u.mm(65 * s) }),
  fatigueLimitFromStatic: (u, s) =>
    m.fatigueLimitFromStatic({ kind: 'roller', staticRating: u.N(20000 * s), meanDiameter: u.mm(120) }),
  lifeModificationFactor: (u, s) =>
    m.lifeModificationFactor({
      kind: 'ball',
      lubricationRatio: 1,
      contamination: 0.5,
      fatigueLimit: u.N(600),
      load: u.N(3000 * s),
    }),
  modifiedLifeTime: (u, s) =>
    m.modifiedLifeTime({
      reliabilityFactor: 0.64,
      lifeFactor: 2,
      dynamicRating: u.N(20000),
      load: u.N(5000 * s),
      kind: 'roller',
      speed: rpm(100),
    }),
  equivalentLoad: (u, s) =>
    m.equivalentLoad({ radialLoad: u.N(4000 * s), axialLoad: u.N(3000), factors: m.taperFactors(degree(15)) }),
  staticSafety: (u, s) =>
    m.staticSafety({
      radialLoad: u.N(4000 * s),
      axialLoad: u.N(3000),
      staticRating: u.N(30000),
      kind: { contactAngle: degree(15) },
    }),
  inducedThrust: (u, s) => m.inducedThrust({ radialLoad: u.N(4000 * s), axialFactor: 1.6 }),
  taperPairThrust: (u, s) =>
    m.taperPairThrust({
      taking: { radialLoad: u.N(4000 * s), axialFactor: 1.6 },
      other: { radialLoad: u.N(3000), axialFactor: 1.5 },
      thrust: u.N(2000),
    }),
  clearanceLeft: (u, s) =>
    m.clearanceLeft({
      clearance: u.um(30 * s),
      bore: u.mm(50),
      innerRaceway: u.mm(60),
      outside: u.mm(90),
      outerRaceway: u.mm(80),
      shaftInterference: u.um(20),
      housingInterference: u.um(5),
      innerWarmer: u.warmer(10),
    }),
  axialPlay: (u, s) => m.axialPlay({ radialPlay: u.um(20 * s), contactAngle: degree(15) }),
  radialPlay: (u, s) => m.radialPlay({ axialPlay: u.um(20 * s), contactAngle: degree(15) }),
  nutTravel: (u, s) => m.nutTravel({ angle: degree(45), lead: u.mm(1.5 * s) }),
  nutAngle: (u, s) => m.nutAngle({ travel: u.um(80 * s), lead: u.mm(1.5) }),
  settingWarm: (u, s) =>
    m.settingWarm({
      arrangement: 'face to face',
      span: u.mm(200 * s),
      bearings: [
        { meanDiameter: u.mm(80), contactAngle: degree(15) },
        { meanDiameter: u.mm(70), contactAngle: degree(12) },
      ],
      shaft: 'steel',
      housing: 'grey iron',
      shaftRise: u.warmer(40),
      housingRise: u.warmer(25),
    }),
  shaftSeat: (u, s) => m.shaftSeat({ bore: u.mm(50 * s), kind: 'ball', innerTurns: true }),
  inchKey: (u, s) => m.inchKey({ shaft: u.mm(39 * s) }),
  parallelKey: (u, s) => m.parallelKey(u.mm(54 * s)),
  torqueOfPower: (u, s) => m.torqueOfPower({ power: quantity(u.Nm(1) * 3700 * s, 'W'), speed: rpm(1750) }),
  keyLength: (u, s) =>
    m.keyLength({
      torque: u.Nm(200 * s),
      safety: 2,
      section: {
        shaft: u.mm(40),
        width: u.mm(12),
        height: u.mm(8),
        shearStrength: u.MPa(200),
        bearingStrength: u.MPa(350),
      },
    }),
  keyTorque: (u, s) =>
    m.keyTorque({
      length: u.mm(50 * s),
      section: {
        shaft: u.mm(40),
        width: u.mm(12),
        height: u.mm(8),
        shearStrength: u.MPa(200),
        bearingStrength: u.MPa(350),
      },
    }),
  straightSpline: (u, s) => m.straightSpline({ splines: 8, minorDiameter: u.mm(35 + s), majorDiameter: u.mm(41 + s) }),
  involuteSpline: (u, s) => m.involuteSpline({ module: u.mm(2.5 * s), teeth: 20, pressureAngle: 30 }),
  inchSpline: (u, s) => m.inchSpline({ splines: 6, majorDiameter: u.mm(38 * s), minorDiameter: u.mm(32.3 * s) }),
  splineOverPins: (u, s) =>
    m.splineOverPins({ module: u.mm(2.5 * s), teeth: 24, pressureAngle: 30, pin: u.mm(4.8 * s) }),
  splineBetweenPins: (u, s) =>
    m.splineBetweenPins({ module: u.mm(2.5 * s), teeth: 24, pressureAngle: 30, pin: u.mm(4.32 * s) }),
  splineThickness: (u, s) =>
    m.splineThickness({ module: u.mm(2.5), teeth: 24, pressureAngle: 30, pin: u.mm(4.8), reading: u.mm(67 + s / 10) }),
  splineSpace: (u, s) =>
    m.splineSpace({ module: u.mm(2.5), teeth: 24, pressureAngle: 30, pin: u.mm(4.32), reading: u.mm(55.4 + s / 10) }),
  splineShearTorque: (u, s) =>
    m.splineShearTorque({ majorDiameter: u.mm(40 * s), length: u.mm(50), shearStrength: u.MPa(200), safety: 2 }),
  splineBearingTorque: (u, s) =>
    m.splineBearingTorque({
      splines: 8,
      minorDiameter: u.mm(36 * s),
      majorDiameter: u.mm(42),
      length: u.mm(50),
      pressure: u.MPa(7),
    }),
  snapRingGroove: (u) => m.snapRingGroove({ on: 'shaft', diameter: u.mm(40) }),
  grooveThrust: (u, s) =>
    m.grooveThrust({ diameter: u.mm(40 * s), grooveDiameter: u.mm(37.5 * s), yieldStrength: u.MPa(250) }),
  ringThrust: (u, s) =>
    m.ringThrust({ diameter: u.mm(40 * s), depth: u.mm(1.25), strength: u.MPa(250), factor: 1, safety: 2 }),
  sealTrack: (u, s) => m.sealTrack({ roughness: u.um(0.4 * s), groove: u.um(30), hardness: 50, dirty: false }),
  oRing: (u, s) =>
    m.oRing({ cord: u.mm(3.53), depth: u.mm(2.82 * s), width: u.mm(4.8), inside: u.mm(50), seat: u.mm(51) }),
  nearestORings: (u, s) => m.nearestORings({ inside: u.mm(50 * s), cord: u.mm(3.53) }),
  shaftStress: (u, s) =>
    m.shaftStress({
      diameter: u.mm(40 * s),
      bore: u.mm(10),
      torque: u.Nm(500),
      bendingMoment: u.Nm(300),
      notch: 1.5,
      yieldStrength: u.MPa(300),
    }),
  pinShear: (u, s) => m.pinShear({ diameter: u.mm(8 * s), shearStrength: u.MPa(300), planes: 2 }),
  pinTorque: (u, s) => m.pinTorque({ pin: u.mm(8 * s), shaft: u.mm(40), shearStrength: u.MPa(300) }),
  splitRunOut: (u, s) => m.splitRunOut([20, 10, -10, -25, -12, 9].map((reading) => u.um(reading * s))),
  taperOf: (u, s) =>
    m.taperOf([
      { along: u.mm(0), diameter: u.mm(50) },
      { along: u.mm(100), diameter: u.mm(50 + 0.02 * s) },
    ]),
}
