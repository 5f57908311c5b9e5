// The public door of the calculations.
export { bearingBore, bearingSeat } from './bearings/bearingBore.ts'
export { ratingLife, ratingLifeTime, requiredRating } from './bearings/ratingLife.ts'
export { rollingTorque, scaleReading } from './bearings/rollingTorque.ts'
export type { LoopSize, SettingShim } from './bearings/settingShim.ts'
export { settingShim } from './bearings/settingShim.ts'
export type { DropOn, DropOnPart, DropOnWay } from './fits/dropOn.ts'
export { dropOn } from './fits/dropOn.ts'
export { fitOfClasses } from './fits/fitOfClasses.ts'
export { frictionOf } from './fits/friction.ts'
export { heatLimitOf } from './fits/heatLimits.ts'
export type { Interference, MeasuredFit } from './fits/interference.ts'
export { interference } from './fits/interference.ts'
export { interferencePressure } from './fits/interferencePressure.ts'
export type { LimitDeviations } from './fits/limitDeviations.ts'
export { limitDeviations } from './fits/limitDeviations.ts'
export type { PartStress, PressFit, PressFitInput } from './fits/pressFit.ts'
export { pressFit } from './fits/pressFit.ts'
export { standardTolerance } from './fits/standardTolerance.ts'
export { thickCylinderStress } from './fits/thickCylinderStress.ts'
export { growth, warmingToDropOn } from './fits/warmingToDropOn.ts'
export { annularLeakage } from './hydraulics/annularLeakage.ts'
// hydraulics
export type { CoverForce } from './hydraulics/coverForce.ts'
export { coverForce } from './hydraulics/coverForce.ts'
export type { CylinderDuty } from './hydraulics/cylinderDuty.ts'
export { cylinderDuty } from './hydraulics/cylinderDuty.ts'
export type { CylinderForce, CylinderSpeed } from './hydraulics/cylinderForce.ts'
export { cylinderForce, cylinderSpeed } from './hydraulics/cylinderForce.ts'
export { boxFill, lyingCylinderFill, standingCylinderFill } from './hydraulics/fillVolume.ts'
export type {
  CubicMetrePerSecond,
  Joule,
  KilogramPerCubicMetre,
  MetrePerSecond,
  PascalSecond,
  SquareMetrePerSecond,
  Watt,
} from './hydraulics/flowQuantities.ts'
export {
  centistoke,
  cubicMetrePerSecond,
  footPerSecond,
  horsepower,
  joule,
  kilogramPerCubicMetre,
  litrePerMinute,
  metrePerSecond,
  pascalSecond,
  squareMetrePerSecond,
  usGallonPerMinute,
  watt,
} from './hydraulics/flowQuantities.ts'
export type { HydraulicMotor } from './hydraulics/hydraulicMotor.ts'
export { hydraulicMotor } from './hydraulics/hydraulicMotor.ts'
export type { Jack } from './hydraulics/jack.ts'
export { jack } from './hydraulics/jack.ts'
export type { LeakDown } from './hydraulics/leakDown.ts'
export { dropAtViscosity, leakDown } from './hydraulics/leakDown.ts'
export { leverForce } from './hydraulics/leverForce.ts'
export type { MachineEfficiency } from './hydraulics/machineEfficiency.ts'
export { motorEfficiency, pumpEfficiency } from './hydraulics/machineEfficiency.ts'
export type { ViscosityPoint } from './hydraulics/oilViscosity.ts'
export { dynamicViscosity, oilViscosity } from './hydraulics/oilViscosity.ts'
export { orificeFlow, valveCapacity } from './hydraulics/orificeFlow.ts'
export type { PipeLoss } from './hydraulics/pipeFlow.ts'
export { pipeLoss, pipeSpeed, reynoldsNumber } from './hydraulics/pipeFlow.ts'
export { gearPumpDisplacement, pumpFlow } from './hydraulics/pumpFlow.ts'
export type { RamArm, RamArmPlace } from './hydraulics/ramArm.ts'
export { ramArm } from './hydraulics/ramArm.ts'
export type { ReliefHeat, ReliefSetting } from './hydraulics/relief.ts'
export { reliefHeat, reliefSetting } from './hydraulics/relief.ts'
export type { TubeRating } from './hydraulics/tubeRating.ts'
export { tubeRating } from './hydraulics/tubeRating.ts'
// lifting
export { massSum } from './lifting/massSum.ts'
export type { Material, MaterialName } from './materials.ts'
export { materialOf } from './materials.ts'
// measuring
export { coverageFactor } from './measuring/coverageFactor.ts'
export { normalQuantile, normalShareBelow, studentQuantile } from './measuring/distributions.ts'
export type { FormOfDiameters, Section } from './measuring/formOfDiameters.ts'
export { formOfDiameters } from './measuring/formOfDiameters.ts'
export type { InstrumentDue } from './measuring/instrumentDue.ts'
export { instrumentDue } from './measuring/instrumentDue.ts'
export type { Conformity } from './measuring/probabilityOfConformity.ts'
export { guardBand, probabilityOfConformity } from './measuring/probabilityOfConformity.ts'
export type { Estimate, Propagated } from './measuring/propagate.ts'
export { propagate } from './measuring/propagate.ts'
export type { Roundness } from './measuring/roundness.ts'
export { roundness } from './measuring/roundness.ts'
export type { Distribution } from './measuring/sampler.ts'
export type { Simulated } from './measuring/simulate.ts'
export { simulate } from './measuring/simulate.ts'
export type { Expansion, SizeAt20 } from './measuring/sizeAt20.ts'
export { sizeAt20 } from './measuring/sizeAt20.ts'
export type { SizeVerdict } from './measuring/sizeVerdict.ts'
export { sizeVerdict } from './measuring/sizeVerdict.ts'
export type { LimitShape } from './measuring/standardUncertainty.ts'
export { standardUncertainty, stepUncertainty } from './measuring/standardUncertainty.ts'
export type { ReadingSummary } from './measuring/summarizeReadings.ts'
export { summarizeReadings } from './measuring/summarizeReadings.ts'
export type { Correlation, Doubt, UncertaintyBudget } from './measuring/uncertaintyBudget.ts'
export { uncertaintyBudget } from './measuring/uncertaintyBudget.ts'
export type { Answer, Known, Range } from './range.ts'
export { rangeOf } from './range.ts'
export { parallelKey } from './shafts/parallelKey.ts'
// stackup
export type { Shim, ShimChoice, ShimPack, ShimSplit } from './stackup/chooseShims.ts'
export { chooseShims, splitShims } from './stackup/chooseShims.ts'
export type { ProcessCapability } from './stackup/processCapability.ts'
export { processCapability } from './stackup/processCapability.ts'
export type { SimulatedStackUp, StackUpSampling } from './stackup/simulateStackUp.ts'
export { simulateStackUp, simulateStackUpInSteps } from './stackup/simulateStackUp.ts'
export type { StackLink, StackShape } from './stackup/stackLink.ts'
export type { LinkShare, StackUp } from './stackup/stackUp.ts'
export { shapeInflation, stackUp, toleranceOfEach } from './stackup/stackUp.ts'
export type { FastenerStrength } from './threads/fastenerStrength.ts'
export { boltLoad, fastenerStrength } from './threads/fastenerStrength.ts'
export { requiredEngagement, strippingEngagement } from './threads/requiredEngagement.ts'
export type { BlindHoleFit, ScrewInBlindHole } from './threads/screwInBlindHole.ts'
export { screwInBlindHole } from './threads/screwInBlindHole.ts'
export { tensileStressArea } from './threads/tensileStressArea.ts'
export { threadDiameters } from './threads/threadDiameters.ts'
export type { Tightening } from './threads/tightening.ts'
export { tightening } from './threads/tightening.ts'
export type { ScrewPlace } from './threads/tighteningOrder.ts'
export { tighteningOrder, tighteningRounds } from './threads/tighteningOrder.ts'
export { tighteningFactor, tighteningScatter } from './threads/tighteningScatter.ts'
export { torqueFactor } from './threads/torqueFactor.ts'
export { preloadFromTorque, torqueForPreload } from './threads/torqueForPreload.ts'
export { torqueFromFriction } from './threads/torqueFromFriction.ts'
export { unifiedStressArea } from './threads/unifiedStressArea.ts'
