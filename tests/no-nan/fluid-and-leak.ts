// Arguments that the laws of fluid and leak answer.
import type { fluid, leak } from "../../src/index.ts";
import { aluminium6061 } from "../../src/physics/leak/fatigue-life.ts";
import * as laws from "../../src/names/leak.ts";
import { van } from "../emerge/van.ts";
import { asking, type Rows } from "./walk.ts";

const oil = van.fluid;
const points = [
  { temperature: 313.15, kinematic: 35e-6 },
  { temperature: 373.15, kinematic: 7.3e-6 },
];
const bubbly = { gas: 0.05, liquidModulus: 1.5e9, liquidDensity: 830, gasModulus: 1.4e5, gasDensity: 1.2 };

export const fluidRows: Rows<typeof fluid> = {
  bulkModulus: [1.5e9, 0.05, 5e5, 1.4],
  gasFractionAt: [0.05, 5e5, 1.4, 1.5e9],
  aeratedDensity: [0.05, 830, 1.2],
  soundSpeed: [bubbly],
  aeratedViscosity: [0.01, 0.05],
  fluidAgeingRate: [380],
  ageAfterTopUp: [0.5, 7, 1],
  volumeCorrection: [860, 350],
  density: [860, 350],
  dynamicViscosity: [oil, 350, 0.3],
  barus: [0.01, 2e-8, 1e6],
  roelands: [0.01, 2e-8, 1e6],
  pressureCoefficient: [32e-6],
  dissolvedVolume: [0.09, 8e4],
  dissolvedExcess: [0.09, 8e4],
  excessFraction: [0.09, 8e4, 360],
  dissolvingPressure: [0.09, 0.02],
  releasedShare: [1, 2],
  specificHeat: [860, 350],
  specificEnergy: [860, 350],
  thermalConductivity: [860, 350],
  surfaceTension: [350],
  apiSurfaceTension: [350, 850, 12],
  referenceOils: [7.3],
  viscosityIndex: [35, 7.3],
  viscosityLine: [points],
  kinematicViscosity: [oil.viscosity, 350],
  waltherZ: [3],
  waltherInverse: [3],
};

const hole = laws.holeOpening(0.4e-3, 0.9e-3);
const tube = { diameter: 9.5e-3, wall: 0.9e-3 };
const paris = {
  perCycle: 4.46e-10,
  exponent: 3,
  stressRange: 30e6,
  geometry: 1.12,
  threshold: 0.66e6,
  longest: 0.01,
};
const place = { capacity: 3e-4, carryOff: 1e-4 };
const written =
  <A extends readonly unknown[]>(law: (out: { viscous: number; inertial: number }, ...args: A) => void) =>
  (...args: A) => {
    const out = { viscous: 0, inertial: 0 };
    law(out, ...args);
    return out;
  };

export const leakRows: Rows<typeof leak> = {
  leakFlow: [hole, 2e5, 0.01, 830],
  leakPressure: [hole, 1e-7, 0.01, 830],
  dischargeLimit: [3],
  holeOpening: [1e-4, 9e-4],
  holeOpeningInto: asking([1e-4, 9e-4], written(laws.holeOpeningInto)),
  holeDiameter: [1e-7, 2e5, 0.01, 830, 9e-4],
  annulusOpening: [0.01, 2e-5, 0.002, 0.5],
  annulusOpeningInto: asking([0.01, 2e-5, 0.002, 0.5], written(laws.annulusOpeningInto)),
  crackOpening: [0.005, 2e-5, 9e-4, 1e-6],
  crackOpeningInto: asking([0.005, 2e-5, 9e-4, 1e-6], written(laws.crackOpeningInto)),
  shellParameter: [0.002, 0.004, 9e-4, 0.33],
  crackGap: [3e6, 0.002, 69e9, 0.004, 9e-4, 0.33],
  drainTime: [hole, 0.06, 0.08, 0.03, 0.02, 850],
  drainTimeConstant: [hole, 0.06, 0.02, 850],
  levelAfter: [hole, 0.06, 0.08, 3600, 0.02, 850],
  torricelliTime: [0.06, 1e-6, 0.61, 0.08, 0.03],
  harkinsBrown: [0.6],
  capillaryLength: [0.03, 840],
  largestPendantDrop: [0.03, 840],
  dropVolume: [0.002, 0.03, 840],
  dropsPerMinute: [1e-8, 3e-8],
  flowFromDrops: [40, 3e-8],
  jettingWeber: [840, 0.03, 0.002, 0.003],
  jettingVelocity: [840, 0.03, 0.002, 0.003],
  holdOffPressure: [0.03, 1e-4, 0.3],
  airWeber: [3, 1e-4, 0.03],
  regime: [1e-8, 2e-4, 0.002, 840, 0.03, 2e5],
  stressIntensity: [1.12, 3e7, 0.001],
  criticalCrack: [3e7, 3e7, 1.12],
  perCycleFromMillimetres: [1e-11, 3],
  parisCrack: [2e-4, 1e5, paris],
  parisCycles: [2e-4, 8e-4, paris],
  parisBetween: [2e-4, 8e-4, 3, 0.4],
  corrosionDepth: [5e-4, 1e7, 2e7, 0.33],
  corrosionTime: [5e-4, 1e7, 9e-4, 0.33],
  pitMouth: [5e-4, 1e7, 2e7, 0.33, 0.007],
  piercedMouth: [9e-4, 1, 1e7, 2e7, 0.33, 0.007],
  pierceTime: [5e-4, 1e6, 9e-4, 1, 0.33],
  runningTime: [1e-3, 1e-7, 2],
  shareInLast: [0.1, 3],
  wornVolume: [1e-4, 5, 20, 4e8],
  slidDistance: [5e-5, 30, 3600],
  rubThroughTime: [1e-8, 1e-12],
  flatArea: [0.0047, 1e-3],
  flatDepth: [0.0047, 1e-6],
  timeToThrough: [0.0047, 9e-4, 1e-4, 2e-4],
  rubbedMouth: [0.0047, 9e-4, 0.01, 2e-4, 1e5],
  rubbedOpeningInto: asking([0.0047, 9e-4, 0.01, 2e-4, 1e5], written(laws.rubbedOpeningInto)),
  sealClearance: [1e-6, 2e-5, 1e5, 2e5],
  fatigueLine: [1e3, 1e8, 5e8, 5e7],
  fatigueStrength: [aluminium6061, 1e6],
  fatigueCycles: [aluminium6061, 1e8],
  meanStrength6061: [1e6],
  cyclesBetween6061: [1e8, 0.1],
  hoopStress: [tube, 4e5],
  boreStress: [tube, 4e5],
  secondMoment: [tube],
  massPerLength: [tube, 2700, 860],
  naturalFrequency: [9.87, 15, 0.1, 0.5],
  tipMovementStress: [tube, 69e9, 5e-4, 0.15],
  filmThickness: [0.02, 850, 0.1, 60, 0.5],
  filmRetention: [0.02, 850, 0.1, 60, 0.5],
  withdrawnFilm: [0.02, 850, 0.03, 0.01],
  puddleDepth: [0.03, 840, 0.3],
  edgeBead: [0.03, 840, 0.5],
  runsOverAfter: [place, 1e-4, 1e-7, true],
  hidingStep: asking([place, 1e-4, 1e-7, 60], (at, held, inflow, seconds) => {
    const out = { held: 0, carriedOff: 0, overflow: 0 };
    laws.hidingStep(out, at, held, inflow, true, seconds);
    return out;
  }),
  poreVolume: [1e-3, 30, 1100],
  fullUptake: [30, 1100, 850],
  soakedVolume: [0.1, 20, 850],
};
