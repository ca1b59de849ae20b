// Arguments that the laws of clutch, heat, damage and load answer.
import type { clutch, damage, heat, load } from "../../src/index.ts";
import { fadeEnergyOnLine } from "../../src/physics/clutch/fade.ts";
import { slipOnLine } from "../../src/physics/clutch/slip.ts";
import { separatorSteel, wetPaper } from "../../src/physics/heat/solid.ts";
import { converterSlopes } from "../../src/physics/load/converter.ts";
import { vanTrain } from "../../src/physics/load/van-train.ts";
import { van } from "../emerge/van.ts";
import { asking, unasked, type Rows } from "./walk.ts";

const { build } = van;
const pack = build.clutches[0]!;
const lockUp = build.lockUp.clutch;
const pair = { driveTorque: 200, loadTorque: 50, driveInertia: 0.15, loadInertia: 1.5, slip: 200 };
const falling = { torqueAtRest: 400, freeSpeed: 600 };
const driven = { ...falling, outputSpeed: 150, inertia: 0.2 };
const limited = { torque: 200, governedSpeed: 450 };
const drum = { inner: 0.04, outer: 0.08, free: 0.03 };
const rig = { faces: 10, radius: 0.0675 };
const ring = { outer: 0.075, inner: 0.06 };
const grip = { kiss: 7e4, perPressure: 5e-4 };
const fade = { startPressure: 8e5, duration: 10 };
const stribeck = { coulomb: 0.12, atRest: 0.15, speed: 0.2, exponent: 1, viscous: 5e-4 };
const line = (speed: number) => Math.max(0, 400 - speed);

export const clutchRows: Rows<typeof clutch> = {
  kissPressure: [pack],
  clampForce: [pack, 4e5],
  frictionTorque: [3000, 0.12, rig],
  capacity: [pack, 4e5, 0.12],
  torquePerPressure: [pack, 0.12],
  lockPressure: [pack, 200, 0.12],
  liningPressure: [pack, 4e5],
  centrifugalPressure: [drum, 850, 300],
  centrifugalForce: [drum, 850, 300],
  dragOnSpeed: [drum, 850, 800],
  openPackDrag: [pack, 0.02, 100],
  closingRate: [250, pair],
  criticalTorque: [pair],
  engagementTime: [250, pair],
  engagementEnergy: [250, pair],
  commonSpeed: [250, pair, 50],
  commandedTorque: [0.4, pair],
  fadeEnergy: [driven, grip, fade],
  fadeEnergyOnLine: asking([150, grip, fade], (outputSpeed, held, lost) =>
    fadeEnergyOnLine({ torque: line, outputSpeed }, held, lost),
  ),
  shortFadeBound: [200, 1, 0.2],
  fillVolume: [pack],
  orificeFlow: [pack, 3e5, 830],
  fillTime: [2e-5, 8e-5, 0.1],
  aeratedFill: [2e-5, 0.1, { supply: 1e5, filled: 5e5 }],
  frictionCoefficient: [pack.friction, 2, 380],
  slidingFriction: [pack.friction, 2],
  heatFactor: [pack.friction, 380],
  frictionSlope: [pack.friction, 2],
  stribeckFriction: [stribeck, 2],
  frictionFromTest: [250, 3000, rig],
  meanRadiusWear: [ring],
  meanRadiusPressure: [ring],
  faceArea: [ring],
  wearForce: [ring, 3e5],
  wearPressure: [ring, 3000],
  evenPressure: [ring, 3000],
  slidingSpeed: [ring, 100],
  nextFill: [0.05, 0.1, 0.3, 0.2],
  lockupPressure: [lockUp, 6e5, 0.8],
  lockupCapacity: [lockUp, 3e5, 0.12],
  lockupPressureFor: [lockUp, 200, 0.12],
  torqueToLock: [falling, 150],
  slipPowerLine: [falling, 150, 100],
  peakSlip: [falling, 150],
  slipPowerLimiter: [limited, 150, 100],
  slipOnLine: asking([150, 100], (speed, held) => slipOnLine(line, speed, held)),
  slipWindow: [pack, 200, 0.12],
};

export const heatRows: Rows<typeof heat> = {
  semiInfiniteRise: [separatorSteel, 1e6, 0.5, 1e-3],
  surfaceStepRise: [separatorSteel, 100, 0.5, 1e-3],
  fallingFluxRise: [separatorSteel, 1e6, 0.5, 0.7],
  peakInterfaceRise: [separatorSteel, 1e6, 0.5],
  slabRoot: [0.5, 1],
  slabWeight: [1.2],
  slabConvection: [0.5, 0.3, 0.5],
  transferUnits: [300, 500],
  effectiveness: [1.2, 0.6],
  parallelEffectiveness: [1.2, 0.6],
  crossEffectiveness: [1.2, 0.6],
  crossEffectivenessShort: [1.2, 0.6],
  crossLargerMixed: [1.2, 0.6],
  crossSmallerMixed: [1.2, 0.6],
  coolerTakes: [180, 600, 90],
  erfc: [0.5],
  ierfc: [0.5],
  peclet: [separatorSteel, 1e-3, 5],
  movingBandRise: [separatorSteel, 1e6, { length: 1e-3, speed: 5 }],
  stillSpotPeak: [separatorSteel, 1e6, 1e-3],
  stillSpotMean: [separatorSteel, 1e6, 1e-3],
  interfaceRise: [1e6, 0.5, 2e-3],
  peakPlateRise: [1e6, 0.5, 2e-3],
  filmCoefficient: [1e-5, build.heat.lubrication],
  flowCarries: [1e-4, 1.8e6, 30],
  capByFlow: [80, 50, 5],
  grooveCoefficient: [3.66, 0.13, 1e-3],
  steelShare: [separatorSteel, wetPaper],
  plateAfter: [400, 370, 1000, 500, 50, 2],
  plateGivesUp: [400, 370, 1000, 500, 50, 2],
  steadyPlate: [370, 1000, 50],
  timeToReach: [370, 400, { settles: 420, timeConstant: 20 }],
  lumpedRise: [separatorSteel, 2e-3, 1e6, 0.5],
  slabRise: [separatorSteel, { thickness: 2e-3, flux: 1e6 }, 0.5, 5e-4],
  solid: [46, 7850, 480],
  effusivity: [separatorSteel],
  sumpTemperature: [7, 860, 2e4, 2e6],
};

export const damageRows: Rows<typeof damage> = {
  arrheniusRate: [1e10, 1e5, 500],
  energyOfDoubling: [400, 10],
  doublingFactor: [20, 10],
  rampEquivalent: [20, 0.1, 10],
  capacityLeft: [0.2, 0.1, 1e-4, 5e-4, 0.4],
  damageIndex: [0.7, 2],
  debris: [0.06, 5e-4, 1e-4, 0.2],
  scissionRate: [420],
  scissions: [1000, 200],
  glazeRate: [420],
  ieeeLife: [390],
  ieeeAgeing: [390],
  iecAgeing: [390],
  minerSum: [[{ time: 10, life: 100 }]],
  charRate: [600],
  tarRate: [600],
  charAndGasRate: [600],
  charYield: [600],
  halfLife: [1e-3],
  charAfter: [0.1, 1e-3, 60],
  hollomonJaffe: [600, 600],
  temperingTime: [600, 12000],
  listTemperature: [560, 600],
  tintNumber: [560, 600],
  temperColour: [560, 600],
  temperatureOfTint: ["purple", { shortest: 60, longest: 3600 }],
  tintTimeRatio: [560, 510, 10],
  wearDepth: [1e5, 0.06, 1e-14],
  archardDepth: [1e-15, 1e6, 100],
  wearPerEnergy: [1e-15, 0.12],
  energyToWear: [1e-4, 1e-14],
};

const { converter, engine, vehicle, shiftPlan } = build;
const set = { sun: 42, ring: 70 };
const two = { smallSun: 30, largeSun: 38, ring: 78 };

export const loadRows: Rows<typeof load> = {
  impellerTorque: [converter, 200, 100],
  turbineTorque: [converter, 200, 100],
  impellerSpeed: [converter, 100, 100],
  converterSlopes: asking([converter, 200, 100], (scaled, impeller, turbine) => {
    const out = new Float64Array(4);
    converterSlopes(scaled, impeller, turbine, out);
    return out;
  }),
  torqueRatio: [0.5],
  kFactor: [converter, 0.5],
  cubicFullTorque: [2e5, 576, 300],
  closedTorque: [engine, 300],
  fullTorque: [engine, 300],
  engineTorque: [engine, 300, 0.5],
  engineSlope: [engine, 300, 0.5],
  pedalFor: [engine, 300, 100],
  stallPoint: [engine, converter, 5],
  gradeAngle: [0.05],
  roadForce: [vehicle, 20, 0.5, 0.05],
  coupled: [vehicle, { mass: 1000, dragArea: 1, rolling: 0.01, rotating: 1.03 }],
  regressionRoadLoad: [2300, 20],
  ringHeldRatio: [set],
  sunHeldRatio: [set],
  overdriveRatio: [set],
  reverseRatio: [set],
  dualFirstRatio: [two],
  dualSecondRatio: [two],
  dualOverdriveRatio: [two],
  dualReverseRatio: [two],
  planetTeeth: [set],
  assemblyFaults: unasked("it answers with the faults that it finds, NaN among them, in their words"),
  checkDualSun: ["rear", two, 2],
  gearFor: [shiftPlan, 1, 8, 0.5],
  appliedElements: [1],
  frontRatio: [vanTrain, 2],
  rearRatio: [vanTrain, 2],
  gearRatio: [vanTrain, 2],
  elementShare: [vanTrain, 4, "forward clutch"],
  slidingSpeed: [vanTrain, 2, "band brake", 200, 80],
  fourSpeedElements: [1],
  fourSpeedRatio: [two, 2],
  fourSpeedShare: [two, 3, "direct clutch"],
};
