// Cases for inchAndMetric.test.ts: room gears, and what of the other rooms came later.
import { degree, rpm } from '../../quantity/constructors.ts'
import * as m from '../index.ts'
import type { Cases, TypedUnits } from './typedUnits.ts'

const angle = degree(20)
const SHIMS = ({ mm }: TypedUnits, s: number) => [
  { shim: mm(1), backlash: mm(0.4) },
  { shim: mm(1 + 0.2 * s), backlash: mm(0.26) },
]
const tooth = ({ mm }: TypedUnits, s: number) => ({ module: mm(4 * s), teeth: 32, pressureAngle: angle })
const ring = ({ mm }: TypedUnits, s: number) => ({ module: mm(2 * s), teeth: 60, pressureAngle: angle })
const pair = ({ mm }: TypedUnits, s: number) => ({
  module: mm(3 * s),
  pressureAngle: angle,
  pinionTeeth: 20,
  wheelTeeth: 60,
})

const squeezed = ({ mm }: TypedUnits) => {
  const bearing = { rollers: 18, rollerLength: mm(12), contactAngle: degree(15) }
  return [bearing, { ...bearing, rollers: 22 }] as const
}

export const GEAR_CASES: Cases = {
  backlashFromCentres: (u, s) => m.backlashFromCentres({ opening: u.mm(0.1 * s), pressureAngle: angle }),
  centresForBacklash: (u, s) => m.centresForBacklash({ backlash: u.mm(0.1 * s), pressureAngle: angle }),
  backlashFromDial: (u, s) =>
    m.backlashFromDial({ travel: u.mm(0.3 * s), radius: u.mm(150), pitchDiameter: u.mm(200), pressureAngle: angle }),
  backlashFromFeeler: (u, s) =>
    m.backlashFromFeeler({ gap: u.mm(0.2 * s), pitchDiameter: u.mm(100), pressureAngle: angle }),
  backlashFromTurn: (u, s) =>
    m.backlashFromTurn({ turn: degree(0.5), pitchDiameter: u.mm(100 * s), pressureAngle: angle }),
  backlashRound: (u, s) =>
    m.backlashRound({
      readings: [u.mm(0.15 * s), u.mm(0.18), { low: u.mm(0.1), high: u.mm(0.16) }],
      limits: { low: u.mm(0.13), high: u.mm(0.2) },
    }),
  gearSizes: (u, s) => m.gearSizes({ ...tooth(u, s), shift: 0.3 }),
  internalGearSizes: (u, s) => m.internalGearSizes(ring(u, s)),
  gearPair: (u, s) => m.gearPair({ ...pair(u, s), centreDistance: u.mm(120.6 * s) }),
  internalGearPair: (u, s) => m.internalGearPair(pair(u, s)),
  contactRatio: (u, s) =>
    m.contactRatio({
      ...pair(u, s),
      pinionTip: u.mm(66 * s),
      wheelTip: u.mm(186 * s),
      centreDistance: u.mm(120.2 * s),
      faceWidth: u.mm(30),
    }),
  internalContactRatio: (u, s) =>
    m.internalContactRatio({
      ...pair(u, s),
      pinionTip: u.mm(66 * s),
      wheelTip: u.mm(174 * s),
      centreDistance: u.mm(60 * s),
    }),
  slidingSpeed: (u, s) =>
    m.slidingSpeed({ approach: u.mm(12.65 * s), recess: u.mm(11.4), pinionSpeed: rpm(229), ratio: 2 }),
  identifyGear: (u, s) =>
    m.identifyGear({
      teeth: 30,
      outsideDiameter: u.mm(128 * s),
      spans: [{ across: 4, reading: u.mm(43 * s) }],
    }),
  outsideDiameterOfOdd: (u, s) => m.outsideDiameterOfOdd({ teeth: 15, reading: u.mm(50 * s) }),
  chordalThickness: (u, s) => m.chordalThickness({ ...tooth(u, s), shift: 0.1 }),
  rackThickness: (u, s) => m.rackThickness(u.mm(3 * s)),
  moduleFromCircularPitch: (u, s) => m.moduleFromCircularPitch(u.mm(19.05 * s)),
  overPins: (u, s) => m.overPins({ ...tooth(u, s), pin: u.mm(6.912 * s) }),
  betweenPins: (u, s) => m.betweenPins({ ...ring(u, s), pin: u.mm(3.36 * s) }),
  thicknessFromPins: (u, s) => m.thicknessFromPins({ ...tooth(u, s), pin: u.mm(6.912 * s), reading: u.mm(137.6 * s) }),
  thicknessBetweenPins: (u, s) =>
    m.thicknessBetweenPins({ ...ring(u, s), pin: u.mm(3.36 * s), reading: u.mm(115.397 * s) }),
  spanTeeth: (u, s) => m.spanTeeth(tooth(u, s)),
  spanSize: (u, s) => m.spanSize({ ...tooth(u, s), across: 4 }),
  spanFaceWidth: (u, s) => m.spanFaceWidth({ ...tooth(u, s), helixAngle: degree(15), across: 4 }),
  thicknessFromSpan: (u, s) => m.thicknessFromSpan({ ...tooth(u, s), across: 4, reading: u.mm(43 * s) }),
  toothWear: (u, s) =>
    m.toothWear({ module: u.mm(4), pressureAngle: angle, thickness: u.mm(6 * s), cutThin: u.mm(0.1) }),
  straightBevelPair: (u, s) =>
    m.straightBevelPair({ module: u.mm(6 * s), pinionTeeth: 30, wheelTeeth: 45, faceWidth: u.mm(40) }),
  spiralBevelPair: (u, s) =>
    m.spiralBevelPair({
      module: u.mm(4 * s),
      pinionTeeth: 15,
      wheelTeeth: 45,
      faceWidth: u.mm(28 * s),
      spiralAngle: degree(35),
    }),
  bevelBacklashChange: (u, s) =>
    m.bevelBacklashChange({ move: u.mm(0.1 * s), pressureAngle: angle, coneAngle: degree(63.435) }),
  wheelMoveKeepingBacklash: (u, s) =>
    m.wheelMoveKeepingBacklash({
      pinionMove: u.mm(-0.1 * s),
      pinionCone: degree(14.04),
      wheelCone: degree(75.96),
    }),
  learnBacklashRatio: (u, s) => m.learnBacklashRatio({ tries: SHIMS(u, s), readingStep: u.mm(0.01) }),
  nextBevelShim: (u, s) =>
    m.nextBevelShim({ tries: SHIMS(u, s), target: { low: u.mm(0.13), high: u.mm(0.18) }, readingStep: u.mm(0.01) }),
  pinionShimForMark: (u, s) =>
    m.pinionShimForMark({
      shim: u.mm(1.5 * s),
      oldMark: 2,
      newMark: -3,
      markUnit: 'hundredths of a millimetre',
      shimSeat: 'between head and bearing',
    }),
  wormSet: (u, s) => m.wormSet({ module: u.mm(4 * s), starts: 1, wormDiameter: u.mm(50), wheelTeeth: 60 }),
  toothForces: (u, s) => m.toothForces({ torque: u.Nm(20 * s), pitchDiameter: u.mm(60), pressureAngle: angle }),
  straightBevelForces: (u, s) =>
    m.straightBevelForces({
      torque: u.Nm(100 * s),
      meanDiameter: u.mm(200),
      pressureAngle: angle,
      coneAngle: degree(26.565),
    }),
  toothStrength: (u, s) =>
    m.toothStrength({
      module: u.mm(3 * s),
      teeth: 16,
      faceWidth: u.mm(36),
      form: '20 full',
      made: 'cut',
      speed: rpm(600),
      safeStress: u.MPa(69),
    }),
  gearTrain: (u, s) => m.gearTrain({ meshes: [{ driver: 20, driven: 50 }], speed: rpm(975), torque: u.Nm(40 * s) }),
  planetaryTorques: (u, s) => m.planetaryTorques({ basicRatio: -4, first: u.Nm(10 * s) }),
  differential: (u, s) => m.differential({ carrier: rpm(200), side: rpm(210), torque: u.Nm(300 * s) }),
  circleSpeed: (u, s) => m.circleSpeed({ diameter: u.mm(50 * s), speed: rpm(1750) }),
  roadSpeed: (u, s) => m.roadSpeed({ shaftSpeed: rpm(1500), ratio: 60, rollingRadius: u.mm(600 * s) }),
  ropeSpeed: (u, s) =>
    m.ropeSpeed({ drumSpeed: rpm(10), drumDiameter: u.mm(300 * s), ropeDiameter: u.mm(16), layer: 2 }),
  preloadClosing: (u, s) => m.preloadClosing({ force: u.N(1000 * s), bearings: squeezed(u) }),
  preloadForce: (u, s) => m.preloadForce({ closing: u.um(20 * s), bearings: squeezed(u) }),
  bearingBore: (u) => m.bearingBore({ bore: u.mm(40), tolerance: 'Normal' }),
  bearingSeat: (u) => m.bearingSeat({ bore: u.mm(40), tolerance: 'Normal', shaftClass: 'k6' }),
  ratingLife: (u, s) => m.ratingLife({ dynamicRating: u.N(20000), load: u.N(5000 * s), kind: 'roller' }),
  ratingLifeTime: (u, s) =>
    m.ratingLifeTime({ dynamicRating: u.N(20000), load: u.N(5000 * s), kind: 'ball', speed: rpm(100) }),
  requiredRating: (u, s) => m.requiredRating({ load: u.N(2000 * s), turns: 517.5e6, kind: 'ball' }),
  rollingTorque: (u, s) => m.rollingTorque({ force: u.N(44 * s), drumDiameter: u.mm(100), stringDiameter: u.mm(2.5) }),
  scaleReading: (u, s) =>
    m.scaleReading({ torque: { low: u.Nm(2.3 * s), high: u.Nm(3.6 * s) }, drumDiameter: u.mm(100) }),
  rollingTorqueVerdict: (u, s) =>
    m.rollingTorqueVerdict({
      force: u.N(44 * s),
      drumDiameter: u.mm(100),
      sealDrag: u.Nm(0.4),
      bearings: 'new',
      forNew: { low: u.Nm(1 * s), high: u.Nm(3.6 * s) },
    }),
  settingShim: (u, s) =>
    m.settingShim({
      loop: [
        { name: 'case', sign: 1, size: { low: u.mm(200 * s), high: u.mm(200 * s + 0.02) } },
        { name: 'shaft', sign: -1, size: u.mm(198.5 * s) },
      ],
      shimSign: -1,
      target: { low: u.mm(0.05), high: u.mm(0.1) },
    }),
  boltLoad: (u, s) => m.boltLoad({ stressArea: u.mm2(84.3), strength: u.MPa(580 * s) }),
  preloadFromTorque: (u, s) =>
    m.preloadFromTorque({
      torque: u.Nm(100 * s),
      nominalDiameter: u.mm(16),
      torqueFactor: { low: 0.12, high: 0.18 },
    }),
  torqueForPreload: (u, s) =>
    m.torqueForPreload({ preload: u.N(40000 * s), nominalDiameter: u.mm(12), torqueFactor: 0.2 }),
  tightening: (u, s) =>
    m.tightening({
      nominalDiameter: u.mm(12.7),
      stressArea: u.mm2(91.5 * s),
      strength: { grade: 'SAE 5', isKnown: true, proof: u.MPa(586), tensile: u.MPa(827), cautions: [], source: '' },
      condition: 'oiled',
    }),
  tighteningOrder: (u, s) =>
    m.tighteningOrder(
      [0, 1, 2, 3, 4, 5, 6].map((at) => ({
        id: `${at}`,
        x: u.mm(50 * s * Math.cos(at ** 2)),
        y: u.mm(70 * Math.sin(at ** 2)),
      })),
    ),
  tighteningRounds: (u, s) => m.tighteningRounds(u.Nm(100 * s)),
  requiredEngagement: (u, s) => m.requiredEngagement({ nominalDiameter: u.mm(12 * s), tapped: 'cast iron' }),
  strippingEngagement: (u, s) =>
    m.strippingEngagement({
      stressArea: u.mm2(91.55 * s),
      pitch: u.mm(1.954),
      nutMinorDiameter: u.mm(11.02),
      screwPitchDiameter: u.mm(11.26),
    }),
  screwInBlindHole: (u, s) =>
    m.screwInBlindHole({
      screwLength: u.mm(40 * s),
      grip: u.mm(18),
      washer: u.mm(2),
      gasketSqueezed: u.mm(0.5),
      holeDepth: u.mm(24),
      threadDepth: u.mm(21),
      wanted: u.mm(18),
    }),
  threadDiameters: (u, s) => m.threadDiameters({ nominalDiameter: u.mm(10 * s), pitch: u.mm(1.5) }),
  unifiedStressArea: (u, s) => m.unifiedStressArea({ nominalDiameter: u.mm(12.7 * s), pitch: u.mm(1.95) }),
  interferencePressure: (u, s) =>
    m.interferencePressure({
      jointDiameter: u.mm(25 * s),
      hubOutside: u.mm(50),
      shaftBore: u.mm(0),
      interference: u.um(58),
      hub: { youngsModulus: u.MPa(207000), poissonRatio: 0.3 },
      shaft: { youngsModulus: u.MPa(207000), poissonRatio: 0.3 },
    }),
  thickCylinderStress: (u, s) =>
    m.thickCylinderStress({
      innerDiameter: u.mm(20),
      outerDiameter: u.mm(100 * s),
      innerPressure: u.MPa(300),
      outerPressure: u.MPa(0),
      at: u.mm(20),
    }),
  warmingToDropOn: (u, s) =>
    m.warmingToDropOn({
      diameter: u.mm(50 * s),
      interference: u.um(144),
      slip: u.um(50),
      expansion: u.perKelvin(1.17e-5),
    }),
  growth: (u, s) => m.growth({ diameter: u.mm(25 * s), expansion: u.perKelvin(1.17e-5), difference: u.warmer(90) }),
  simulateStackUpInSteps: (u, s) => [
    ...m.simulateStackUpInSteps({
      links: [{ sign: 1, size: u.mm(40 * s), tolerance: u.mm(0.05) }],
      seed: 1,
      samples: 2000,
    }),
  ],
}
