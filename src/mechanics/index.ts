// The public door of the calculations.

// quantities
export {
  celsius,
  centistoke,
  cubicMetre,
  cubicMetrePerSecond,
  degree,
  fahrenheit,
  fahrenheitDifference,
  footPerMinute,
  footPerSecond,
  horsepower,
  inch,
  joule,
  kelvin,
  kelvinDifference,
  kilogram,
  kilogramPerCubicMetre,
  kilometrePerHour,
  kilowatt,
  lbf,
  lbfFoot,
  lbfInch,
  litre,
  litrePerMinute,
  megapascal,
  metre,
  metrePerSecond,
  micrometre,
  milePerHour,
  minute,
  mm,
  newton,
  newtonMetre,
  newtonPerMetre,
  pascal,
  pascalSecond,
  perKelvin,
  pound,
  psi,
  radian,
  rpm,
  second,
  squareMetre,
  squareMetrePerSecond,
  thou,
  usGallonPerMinute,
  watt,
} from '../quantity/constructors.ts'
export type {
  CubicMetre,
  CubicMetrePerSecond,
  Joule,
  Kelvin,
  KelvinDifference,
  Kilogram,
  KilogramPerCubicMetre,
  Metre,
  MetrePerSecond,
  Newton,
  NewtonMetre,
  NewtonPerMetre,
  Pascal,
  PascalSecond,
  PerKelvin,
  Radian,
  RadianPerSecond,
  Second,
  SquareMetre,
  SquareMetrePerSecond,
  Watt,
} from '../quantity/quantity.ts'

export type { WarmBearing, WarmSetting } from './bearings/adjustment.ts'
export { nutAngle, nutTravel, settingWarm } from './bearings/adjustment.ts'
export { bearingBore, bearingSeat } from './bearings/bearingBore.ts'
export type { ClearanceLeft } from './bearings/clearance.ts'
export { axialPlay, clearanceLeft, radialPlay } from './bearings/clearance.ts'
export type { LoadFactors } from './bearings/equivalentLoad.ts'
export { deepGrooveFactors, equivalentLoad, staticSafety, taperFactors } from './bearings/equivalentLoad.ts'
export {
  contaminationFactor,
  fatigueLimitFromStatic,
  lifeModificationFactor,
  lubricationRatio,
  modifiedLifeTime,
} from './bearings/lifeModification.ts'
export type { SqueezedBearing } from './bearings/preloadClosing.ts'
export { preloadClosing, preloadForce } from './bearings/preloadClosing.ts'
export { ratingLife, ratingLifeTime, requiredRating } from './bearings/ratingLife.ts'
export type { Seat } from './bearings/recommendedSeat.ts'
export { housingSeat, shaftSeat } from './bearings/recommendedSeat.ts'
export type { LifeEdition, LifeSpread } from './bearings/reliability.ts'
export { ratingForReliability, reliabilityFactor, reliabilityOfAll } from './bearings/reliability.ts'
export { rollingTorque, scaleReading } from './bearings/rollingTorque.ts'
export type { BearingState, DragPlace, RollingTorqueVerdict } from './bearings/rollingTorqueVerdict.ts'
export { rollingTorqueVerdict, usualRollingTorque } from './bearings/rollingTorqueVerdict.ts'
export type { LoopSize, SettingShim } from './bearings/settingShim.ts'
export { settingShim } from './bearings/settingShim.ts'
export type { TaperBearing } from './bearings/taperPair.ts'
export { inducedThrust, taperPairThrust } from './bearings/taperPair.ts'
export type { BushClosing } from './fits/bushClosing.ts'
export { boreBeforeReaming, bushClosing } from './fits/bushClosing.ts'
export type { ChillToDropIn } from './fits/chillToDropIn.ts'
export { chillToDropIn } from './fits/chillToDropIn.ts'
export type { ClosedCylinder } from './fits/closedCylinder.ts'
export { closedCylinder } from './fits/closedCylinder.ts'
// rooms fits, threads, bearings, shafts: what came with the second step
export { deviationByFormula } from './fits/deviationByFormula.ts'
export type { DropOn, DropOnPart, DropOnWay } from './fits/dropOn.ts'
export { dropOn } from './fits/dropOn.ts'
export { fitOfClasses } from './fits/fitOfClasses.ts'
export { frictionOf } from './fits/friction.ts'
export type { HeatEnd, HeatLimit, Holding } from './fits/heatLimits.ts'
export { coldestOf, heatLimitOf, hottestOf, longestAt } from './fits/heatLimits.ts'
export type { InchFit } from './fits/inchFit.ts'
export { inchFit } from './fits/inchFit.ts'
export type { Interference, MeasuredFit } from './fits/interference.ts'
export { interference } from './fits/interference.ts'
export type { MeasuredWarm } from './fits/interferenceAtTemperatures.ts'
export { interferenceAtTemperatures } from './fits/interferenceAtTemperatures.ts'
export { interferencePressure } from './fits/interferencePressure.ts'
export type { LimitDeviations } from './fits/limitDeviations.ts'
export { limitDeviations } from './fits/limitDeviations.ts'
export type { PartStress, PressFit, PressFitInput } from './fits/pressFit.ts'
export { pressFit } from './fits/pressFit.ts'
export type { RepairSleeve, Sleeve, SleeveChoice } from './fits/repairSleeve.ts'
export { repairSleeve } from './fits/repairSleeve.ts'
export type { SecondsInHand } from './fits/secondsInHand.ts'
export { secondsInHand } from './fits/secondsInHand.ts'
export { shrunkAgainstForced } from './fits/shrunkAgainstForced.ts'
export { standardTolerance } from './fits/standardTolerance.ts'
export type { TaperForces } from './fits/taperSeat.ts'
export { interferenceOfDrawUp, taperDrawUp, taperForces } from './fits/taperSeat.ts'
export { thickCylinderStress } from './fits/thickCylinderStress.ts'
export { toleranceByFormula } from './fits/toleranceByFormula.ts'
export { tyreShrinkage } from './fits/tyreShrinkage.ts'
export { growth, warmingToDropOn } from './fits/warmingToDropOn.ts'
// gears
export type { Backlash, BacklashGear, BacklashRound } from './gears/backlash.ts'
export { backlashFromDial, backlashFromFeeler, backlashFromTurn, backlashRound } from './gears/backlash.ts'
export type { BevelSetting } from './gears/bevelMove.ts'
export { bevelBacklashChange, bevelBacklashRatio, wheelMoveKeepingBacklash } from './gears/bevelMove.ts'
export type { BevelGear, BevelPair, BevelTold } from './gears/bevelPair.ts'
export { pitchCones, spiralBevelPair, straightBevelPair } from './gears/bevelPair.ts'
export type { BacklashRatio, BevelTry, NextBevelShim } from './gears/bevelShim.ts'
export { learnBacklashRatio, nextBevelShim } from './gears/bevelShim.ts'
export { backlashFromCentres, centresForBacklash } from './gears/centreBacklash.ts'
export type { ToothCaliper } from './gears/chordalThickness.ts'
export { chordalThickness, rackThickness } from './gears/chordalThickness.ts'
export type { Contact, ContactTold } from './gears/contactRatio.ts'
export { contactRatio, internalContactRatio, slidingSpeed } from './gears/contactRatio.ts'
export type { Differential } from './gears/differential.ts'
export { differential } from './gears/differential.ts'
export { fewestTeeth } from './gears/fewestTeeth.ts'
export type { PairSizes, PairTold } from './gears/gearPair.ts'
export { gearPair, internalGearPair } from './gears/gearPair.ts'
export type { GearSizes, ToothDepth } from './gears/gearSizes.ts'
export { gearSizes, internalGearSizes } from './gears/gearSizes.ts'
export type { Mesh, MeshKind, TrainResult } from './gears/gearTrain.ts'
export { gearTrain, trainRatio } from './gears/gearTrain.ts'
export type { GearCandidate, GearIdentity, SpanReading } from './gears/identifyGear.ts'
export { identifyGear, outsideDiameterOfOdd } from './gears/identifyGear.ts'
export { involute, involuteAngle } from './gears/involute.ts'
export type { InvoluteGear } from './gears/involuteGear.ts'
export { moduleFromCircularPitch, moduleFromDiametralPitch } from './gears/involuteGear.ts'
export { roadSpeed, ropeSpeed } from './gears/outputSpeed.ts'
export type { PinionShim } from './gears/pinionMark.ts'
export { pinionShimForMark } from './gears/pinionMark.ts'
export type { PinReading } from './gears/pinSize.ts'
export { betweenPins, overPins, thicknessBetweenPins, thicknessFromPins } from './gears/pinSize.ts'
export type { PlanetarySet, PlanetarySpeeds } from './gears/planetary.ts'
export { coaxialRingTeeth, planetarySet, planetaryTorques, willis } from './gears/planetary.ts'
export type { SpanTeeth } from './gears/spanSize.ts'
export { spanFaceWidth, spanSize, spanTeeth, thicknessFromSpan } from './gears/spanSize.ts'
export { circleSpeed, torqueOfPower } from './gears/speedAndPower.ts'
export type { ToothForces } from './gears/toothForces.ts'
export { straightBevelForces, toothForces } from './gears/toothForces.ts'
export type { ToothForm, ToothStrength } from './gears/toothStrength.ts'
export { toothStrength } from './gears/toothStrength.ts'
export type { ToothWear } from './gears/toothWear.ts'
export { toothWear } from './gears/toothWear.ts'
export type { WormDrive, WormSet } from './gears/wormSet.ts'
export { wormDrive, wormSet } from './gears/wormSet.ts'
export { annularLeakage } from './hydraulics/annularLeakage.ts'
// hydraulics
export type { CoverForce } from './hydraulics/coverForce.ts'
export { coverForce } from './hydraulics/coverForce.ts'
export type { CylinderDuty } from './hydraulics/cylinderDuty.ts'
export { cylinderDuty } from './hydraulics/cylinderDuty.ts'
export type { CylinderForce, CylinderSpeed } from './hydraulics/cylinderForce.ts'
export { cylinderForce, cylinderSpeed } from './hydraulics/cylinderForce.ts'
export { boxFill, lyingCylinderFill, standingCylinderFill } from './hydraulics/fillVolume.ts'
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
export type { CentreOfMass, GrownUnit, Place, PlacedMass } from './lifting/centreOfMass.ts'
export { centreOfMass, growingUnit } from './lifting/centreOfMass.ts'
export type { EyeboltShare } from './lifting/eyeboltShare.ts'
export { eyeboltShare } from './lifting/eyeboltShare.ts'
export type { LiftingScrew } from './lifting/liftingScrew.ts'
export { liftingScrew } from './lifting/liftingScrew.ts'
export type { LiftDuration, LiftGrip, ManualLift } from './lifting/manualLift.ts'
export { manualLift } from './lifting/manualLift.ts'
export type { MassSum } from './lifting/massSum.ts'
export { massSum } from './lifting/massSum.ts'
export type { SlingMode } from './lifting/slingFactor.ts'
export { slingAngle, slingLegFactor, slingModeFactor } from './lifting/slingFactor.ts'
export type { SlingLeg, SlingLegs, SlingPoint } from './lifting/slingLegs.ts'
export { slingLegs } from './lifting/slingLegs.ts'
export type { Tipping, TurnOver } from './lifting/tipping.ts'
export { tipping, turnOver } from './lifting/tipping.ts'
export type { UprightLegs } from './lifting/uprightLegs.ts'
export { uprightLegs } from './lifting/uprightLegs.ts'
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
export type { InchKey } from './shafts/inchKey.ts'
export { inchKey } from './shafts/inchKey.ts'
export type { InchSpline, InchSplineFit } from './shafts/inchSpline.ts'
export { inchSpline } from './shafts/inchSpline.ts'
export type { KeySection } from './shafts/keyStrength.ts'
export { keyLength, keyTorque } from './shafts/keyStrength.ts'
export type { ORingFit } from './shafts/oRing.ts'
export { oRing } from './shafts/oRing.ts'
export type { ORingSize } from './shafts/oRingSizes.ts'
export { nearestORings, oRingOfDash } from './shafts/oRingSizes.ts'
export { parallelKey } from './shafts/parallelKey.ts'
export type { SealTrack, SealTrackLimits } from './shafts/sealTrack.ts'
export { sealTrack, sealTrackLimits } from './shafts/sealTrack.ts'
export type { ShaftStress } from './shafts/shaftStress.ts'
export { pinShear, pinTorque, shaftStress } from './shafts/shaftStress.ts'
export type { SnapRingGroove } from './shafts/snapRingGroove.ts'
export { grooveThrust, ringThrust, snapRingGroove } from './shafts/snapRingGroove.ts'
export type { SplinePins } from './shafts/splinePins.ts'
export { splineBetweenPins, splineOverPins, splineSpace, splineThickness } from './shafts/splinePins.ts'
export type { InvoluteSpline, StraightSpline } from './shafts/splines.ts'
export { involuteSpline, splineBearingTorque, splineShearTorque, straightSpline } from './shafts/splines.ts'
export type { SplitRunOut, Taper } from './shafts/splitRunOut.ts'
export { splitRunOut, taperOf } from './shafts/splitRunOut.ts'
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
export { boltStretch, turnAngle } from './threads/boltStretch.ts'
export type { FastenerStrength } from './threads/fastenerStrength.ts'
export { boltLoad, fastenerStrength } from './threads/fastenerStrength.ts'
export type { IdentifiedThread, MeasuredThread, ThreadMatch } from './threads/identifyThread.ts'
export { identifyThread } from './threads/identifyThread.ts'
export type { JointLoads } from './threads/jointLoads.ts'
export { boltsNeeded, jointLoads, slipLoad } from './threads/jointLoads.ts'
export {
  boltShare,
  boltStiffness,
  gasketPressure,
  memberStiffness,
  memberStiffnessFitted,
  stiffnessWith,
} from './threads/jointStiffness.ts'
export { requiredEngagement, strippingEngagement } from './threads/requiredEngagement.ts'
export type { BlindHoleFit, ScrewInBlindHole } from './threads/screwInBlindHole.ts'
export { screwInBlindHole } from './threads/screwInBlindHole.ts'
export type { TappingDrill } from './threads/tappingDrill.ts'
export { tappingDrill } from './threads/tappingDrill.ts'
export { tensileStressArea } from './threads/tensileStressArea.ts'
export { threadDiameters } from './threads/threadDiameters.ts'
export type { ThreadGeometry } from './threads/threadGeometry.ts'
export { threadGeometry } from './threads/threadGeometry.ts'
export type { ThreadStripping } from './threads/threadStripping.ts'
export { threadStripping } from './threads/threadStripping.ts'
export type { Tightening } from './threads/tightening.ts'
export { tightening } from './threads/tightening.ts'
export type { ScrewPlace } from './threads/tighteningOrder.ts'
export { tighteningOrder, tighteningRounds } from './threads/tighteningOrder.ts'
export { tighteningFactor, tighteningScatter } from './threads/tighteningScatter.ts'
export { torqueFactor } from './threads/torqueFactor.ts'
export { preloadFromTorque, torqueForPreload } from './threads/torqueForPreload.ts'
export type { ScrewForm } from './threads/torqueFromFriction.ts'
export { preloadFromFriction, torqueFromFriction } from './threads/torqueFromFriction.ts'
export { unifiedStressArea } from './threads/unifiedStressArea.ts'
export { torqueWithPrevailing, wrenchSetting } from './threads/wrenchSetting.ts'
// times
export type { CriticalPath, PlacedWork, Work } from './times/criticalPath.ts'
export { criticalPath } from './times/criticalPath.ts'
export { firstTime, learnedTime } from './times/learnedTime.ts'
export type { SpreadTime } from './times/threePointTime.ts'
export { threePointTime } from './times/threePointTime.ts'
export type { ChainTime } from './times/timeOfChain.ts'
export { timeOfChain } from './times/timeOfChain.ts'
