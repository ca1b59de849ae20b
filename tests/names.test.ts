// The public list of names. Growth is a decision: who adds a line here promises to keep it.
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import * as sumpfall from "../src/index.ts";

/** One line a group: its own names, or "name:" and what lies under it, sorted. */
function listOf(names: object): string {
  const groups = Object.entries(names).filter(
    ([, value]) => typeof value === "object" && !Array.isArray(value),
  );
  const single = Object.keys(names).filter((name) => !groups.some(([group]) => group === name));
  const lines = groups.map(
    ([group, under]) =>
      `${group}: ${Object.keys(under as object)
        .sort()
        .join(" ")}`,
  );
  return [single.sort().join(" "), ...lines.sort()].join("\n");
}

test("growth of the public list of names is a decision", () => {
  expect(listOf(sumpfall)).toMatchInlineSnapshot(`
    "dateOf drivenBy fadeSweep faultText gulpTime isCoded margins originText planOf readBuild readCase readVisit simulate tripColumns visitDay volumeOf
    bay: atTheLeak bands bayCard bayCards cardText coolerFlowTest launchTest levelChecks linePressureTest stickIdling timeIntoGear
    chain: clutchesNow copyOf fluidNow fresh instant newNow supplyNow
    clutch: aeratedFill capacity centrifugalForce centrifugalPressure centrifugalRange clampForce closingRate commandedTorque commonSpeed criticalTorque dragOnSpeed dragRange engagementEnergy engagementTime evenPressure faceArea fadeEnergy fadeEnergyOnLine fillOrificeRange fillTime fillVolume frictionCoefficient frictionFromTest frictionRange frictionSlope frictionTorque heatFactor highestSpeedSearched kissPressure learnedFillRange liningPressure liningPressureRange lockPressure lockupCapacity lockupPressure lockupPressureFor lockupPressureRange meanRadiusPressure meanRadiusWear nextFill openPackDrag orificeFlow peakSlip radiusRange shortFadeBound slidingFriction slidingSpeed slipOnLine slipPowerLimiter slipPowerLine slipWindow steadySlipRange stribeckFriction torquePerPressure torqueToLock wearForce wearPressure
    damage: archardDepth arrheniusRange arrheniusRate capacityLeft charAfter charAndGasRate charRate charYield damageIndex debris debrisRange doublingFactor energyOfDoubling energyToWear gasConstant glazeLossRange glazeRange glazeRate halfLife hollomonJaffe iecAgeing ieeeAgeing ieeeLife insulationRange liningDensity listTemperature minerRange minerSum pyrolysisRange rampEquivalent scissionRate scissions tarRate temperColour temperatureOfTint temperingRange temperingTime tintGrowth tintListTime tintNumber tintRange tintTimeRatio tints wearDepth wearPerEnergy wearRange
    decisions: ageByWhich bestInterval bestRenewal bestReplacement blockedAtLeast blockedByChance causesBy chancesOf changesUntil costRate costRateRepaired dirtAtChange downtime emptyings exponentialDelays failedBy failsFirst failureDensity fatigueShareAt filterTakes fittedLife flowLeft flowLeftInLine flowPastDepositInSlot flowPastDepositInTube goneWith hazard inspectionCost isoCode isoNumber laterLeakCost lifeOfMean lifeOfSet meanLife meanLifeOfBoth meanPressureTimes meanRemaining neverLooking noneFails oldAfterChanges oldAfterExchange oldAfterFillingFirst oldAfterRemovingFirst oneOrSet openAfterPieces parts passageRange piecesAfter pressureTimes refills runToFailure shareThatFails slotPassage someFails spent spentBetween steadyDirt steadyPieces stillWaiting survival survivalFrom survivalOfBoth survivalOfBothFrom timeUntilClean tubePassage usedUpTo volumesUntil wayCosts ways weibullDelays
    driving: accelerationAt clock dailyDriving everyDay longestBeyond longestGap mendTrace nedc nedcExtraUrban nedcUrban parcelRound readTrace shareBeyond standingSamples statistics stretchesBeyond taxiShift ticks traceFrom traceFromCsv tripTime usualRound usualShift weekOf workdays
    duty: dutyHistory prepareDuty prepareWeek toldDates
    ensemble: ailsFirst bandShares curveAt curveBands curveNames ensemble eventBands eventOf keyOf measures members pickFreeze quantiles rankInputs scrambledHalton sobolIndices staying uncertain valuesOf varianceOf varianceStudy withRanges
    fluid: aeratedDensity aeratedRange aeratedViscosity ageAfterTopUp airDensity apiSurfaceTension atmosphere barus bulkModulus density densityRange dissolvedExcess dissolvedVolume dissolvingPressure dynamicViscosity excessFraction fluidAgeingRange fluidAgeingRate gasFractionAt gravity kinematicViscosity pressureCoefficient pressureRange referenceOils releasedShare roelands solubilityRange soundSpeed specificEnergy specificHeat specificHeatRange surfaceTension surfaceTensionRange thermalConductivity viscosityIndex viscosityIndexRange viscosityLine viscosityRange viscosityTemperatureRange volumeCorrection waltherInverse waltherRange waltherZ
    heat: capByFlow coolerTakes crossEffectiveness crossEffectivenessShort crossLargerMixed crossSmallerMixed effectiveness effectivenessRange effusivity erfc fallingFluxRise filmCoefficient filmRange flashRange flowCarries grooveCoefficient heislerRange ierfc interfaceRange interfaceRise lumpedRange lumpedRise movingBandRise parallelEffectiveness partitionRange peakInterfaceRise peakPlateRise peclet plateAfter plateGivesUp semiInfiniteRange semiInfiniteRise separatorSteel slabConvection slabRange slabRise slabRoot slabWeight solid steadyPlate steelShare stillSpotMean stillSpotPeak sumpTemperature surfaceStepRise timeToReach transferUnits wetPaper
    leak: airWeber aluminium6061 annulusOpening annulusOpeningInto annulusRange boreStress capillaryLength corrosionDepth corrosionExponent corrosionTime crackGap crackGapRange crackOpening crackOpeningInto criticalCrack cyclesBetween6061 dischargeLimit drainTime drainTimeConstant dropRange dropVolume dropsPerMinute edgeBead fatigueCycles fatigueLine fatigueRange fatigueStrength filmRange filmRetention filmThickness flatArea flatDepth flowFromDrops flowPower fullUptake harkinsBrown heldAt hidingStep holdOffPressure holeDiameter holeOpening holeOpeningInto holeRange hoopStress jettingRange jettingVelocity jettingWeber largestPendantDrop leakFlow leakPressure levelAfter massPerLength meanStrength6061 naturalFrequency parisBetween parisCrack parisCycles parisRange perCycleFromMillimetres pierceTime piercedMouth pitMouth pitRange poreVolume puddleDepth regime rubThroughTime rubbedMouth rubbedOpeningInto runningTime runsOverAfter sealClearance secondMoment shareInLast shellParameter shut slidDistance soakRange soakedVolume stressIntensity timeToThrough tipMovementStress torricelliTime wearRange withdrawnFilm wornVolume
    load: appliedElements assemblyFaults checkDualSun closedTorque converterRange converterSlopes coupled couplingRatio cubicFullTorque cubicFullTorqueRange directRatio dualFirstRatio dualOverdriveRatio dualReverseRatio dualSecondRatio elementShare engineSlope engineTorque fourSpeedElements fourSpeedRatio fourSpeedShare frontRatio fullTorque fullTorqueRange gearFor gearRatio gradeAngle gravity holdingElements impellerSpeed impellerTorque kFactor overdriveRatio pedalFor planetTeeth rearRatio regressionRoadLoad regressionRoadLoadRange reverseRatio ringHeldRatio roadForce roadForceRange slidingSpeed stallPoint sunHeldRatio torqueRatio turbineTorque vanTrain
    lookback: LOG_ROOT_TWO_PI airOf answerOf believedCauses checkBelief column comingLeaks coordinateAt coordinateOf counted delaysUntilHarm dots earlyAnswer effectiveSize exactAnswer exactQuantile explanationsOf findings findsLeak inLogarithm intervalScore lessThan likelihood likelihoodWord logAdd logDensity logGamma logNormal logNormalBelow logNormalBetween logSum lookBack lookBackHands looksAhead measured moments moreThan normalBelow normalQuantile outOfTwenty paretoSmoothed quantile reach shareBelow sorted spreadOf temperedAnswer trustedShape valueAt varianceAfter varianceAfterYesNo within
    sump: airOnset airOnsetRange amountThatRuns amountUntilRuns boreSpeed bubbleRange bubbleRise cleanBubbleRise depthAt depthOfTapered dipstickReading drainedAfter gasFraction inFlightAfter inletFroude isCovered meanDepth mouthRadius newSloshFactors overLid overflowPlugReading panCapacity panVolume planeAt residenceTime returnTime sideOnsetFlow sloshBy sloshEnvelope sloshFactors sloshFrequency sloshStep smallestSeparated staticTiltRange submergenceByBell submergenceByGordon submergenceRange tiltAcross tiltAlong tiltAngle turnAcceleration volumeAtDepth volumeOfTapered vortexDip weirDepth weirFlow
    supply: balance boreFriction circuitAtFeed circuitOrificeRange circuitOrificeReynolds clutchCircuitFlow coolerLaminarRange delivered deliveredAt displaced feedFull gasLeft inletFrictionRange inletLimit inletPressure inletReynolds lineGas mixtureDensity nextTrim pumpSlip pumpTorque rootBetween setPoint slipRange stillBalance stillCircuit suctionGasAfter thermostatOpening vapourPressure
    units: axis cubicMetres cubicMetresPerSecond days degC degF dropsPerMinute exampleOf given hours inches joules kPa kelvins kilograms kilogramsPerCubicMetre kilometres kmh litres metres metresDriven metresPerSecond metresPerSecondSquared micrometres miles millilitres minutes mm mph newtonMetres newtons parseQuantity parseUnit pascalSeconds pascals perSecond psi quantityFault quantityKinds quarts radians radiansPerSecond readAll rpm seconds show shownKinds squareMetres squareMetresPerSecond temperatureDifference watts"
  `);
});

test("nothing that the public names reach needs Node: they run in a browser as they are", () => {
  const seen = new Set<string>();
  const packages = new Set<string>();
  const walk = (path: string): void => {
    if (seen.has(path)) return;
    seen.add(path);
    // TypeScript's own quick look passes over `export * as name from`.
    for (const [, fileName = ""] of readFileSync(path, "utf8").matchAll(
      /^(?:import|export)\b[^;"]*? from "([^"]+)"/gm,
    )) {
      if (fileName.startsWith(".")) walk(join(dirname(path), fileName));
      else packages.add(fileName);
    }
  };
  walk(join(import.meta.dirname, "../src/index.ts"));
  expect(seen.size).toBeGreaterThan(100);
  // The four of stdlib are plain functions, right in the tails, where a likelihood lives.
  expect([...packages].sort()).toEqual([
    "@stdlib/math-base-special-erfcx",
    "@stdlib/math-base-special-gammaln",
    "@stdlib/stats-base-dists-normal-cdf",
    "@stdlib/stats-base-dists-normal-quantile",
    "d3",
    "mathjs",
    "valibot",
  ]);
});
