// Arguments that the laws of sump and supply answer.
import type { sump, supply } from "../../src/index.ts";
import * as pan from "../../src/names/sump.ts";
import * as line from "../../src/names/supply.ts";
import { van } from "../emerge/van.ts";
import { asking, unasked, type Rows } from "./walk.ts";

const { build } = van;
const { pan: box, pickup } = build.sump;
const tapered = { floorLength: 0.36, floorWidth: 0.26, rimLength: 0.4, rimWidth: 0.3, height: 0.08 };

export const sumpRows: Rows<typeof sump> = {
  bubbleRise: [5e-4, 0.007, 828],
  cleanBubbleRise: [5e-4, 0.007, 828],
  smallestSeparated: [3e-4, 0.1, 0.007, 828],
  residenceTime: [4e-3, 3e-4],
  returnTime: [5, 0.02, 0.007, 0.4],
  inFlightAfter: [1e-3, 2e-4, 5, 1],
  drainedAfter: [3e-3, 2e-3, 3600, 600],
  panVolume: [0.01, 3e-3, 6e-4, 3e-4, 1e-3],
  dipstickReading: [0.05, { low: 0.04, full: 0.05 }],
  overflowPlugReading: [0.05, 0.045],
  amountUntilRuns: [box, 3e-3, 0.1, 0.05, 0.1, 0.1, 0.05],
  amountThatRuns: [box, 6e-3, 0.1, 0.05, 0.1, 0.1, 0.03],
  panCapacity: [box],
  meanDepth: [box, 4e-3],
  overLid: [box, 0.02],
  depthAt: [box, 3e-3, 0.1, 0.05, 0.1, 0.1],
  planeAt: [box, 0.03, 0.1, 0.05, 0.1, 0.1],
  volumeAtDepth: [box, 0.03, 0.1, 0.05, 0.1, 0.1],
  airOnset: [2e-4],
  mouthRadius: [pickup],
  sideOnsetFlow: [0.01],
  weirFlow: [0.19, 0.01],
  weirDepth: [0.19, 2e-4],
  isCovered: [pickup, 0.02, 2e-4],
  gasFraction: [pickup, 0.004, 2e-4],
  sloshFrequency: [0.4, 0.03, 1],
  sloshEnvelope: [0.1, 0.5, 0.2, 4, 0.2],
  sloshFactors: asking([4, 0.2, 0.1], (omega, damping, dt) => {
    const factors = pan.newSloshFactors();
    pan.sloshFactors(factors, omega, damping, dt);
    return factors;
  }),
  sloshBy: asking([0.1, 0.5, 0.2, 4], (s, rate, target, omega) => {
    const [out, factors] = [Float64Array.of(s, rate), pan.newSloshFactors()];
    pan.sloshFactors(factors, omega, 0.2, 0.1);
    pan.sloshBy(out, 0, target, factors);
    return out;
  }),
  sloshStep: asking([0.1, 0.5, 0.2, 4, 0.2, 0.1], (s, rate, target, omega, damping, dt) => {
    const out = Float64Array.of(s, rate);
    pan.sloshStep(out, 0, target, omega, damping, dt);
    return out;
  }),
  newSloshFactors: [],
  boreSpeed: [0.03, 3e-4],
  inletFroude: [0.03, 0.5],
  submergenceByBell: [0.03, 3e-4],
  submergenceByGordon: [0.03, 3e-4],
  vortexDip: [0.01, 0.004],
  volumeOfTapered: [tapered, 0.05],
  depthOfTapered: [tapered, 0.005],
  tiltAlong: [1, 0.05],
  tiltAcross: [2],
  turnAcceleration: [10, 50],
  tiltAngle: [0.2],
};

const { pump, inlet, regulator, clutchCircuit, cooler } = build;
const conditions = {
  temperature: 363,
  viscosity: 0.007,
  pathViscosity: 0.008,
  density: 812,
  leakPlace: "supply-line" as const,
  leakViscous: 1e14,
  leakInertial: 1e12,
  leakViscosity: 0.007,
};
const balanced = {
  pump,
  turn: 150,
  gas: 0.02,
  inlet: 9e4,
  inletLimit: 1e-3,
  setPoint: 6e5,
  clutch: clutchCircuit,
  circuit: cooler,
  spillTo: "inlet" as const,
  ...conditions,
};

export const supplyRows: Rows<typeof supply> = {
  displaced: [pump, 100],
  pumpSlip: [pump, 6e5, 0.007],
  gasLeft: [pump, 9e4, 6e5],
  delivered: [pump, 100, 0.1, 0.2, 6e5, 0.007],
  lineGas: [0.1, 0.2],
  pumpTorque: [pump, 6e5],
  boreFriction: [3000],
  inletReynolds: [inlet, 3e-4, 0.007, 830],
  inletPressure: [inlet, 3e-4, 0.007, 830],
  inletLimit: [inlet, 0.007, 830],
  setPoint: [regulator, 200, true, 250, 1e4],
  clutchCircuitFlow: [clutchCircuit, 6e5, 0.007, 830],
  circuitOrificeReynolds: [clutchCircuit, 6e5, 0.007, 830],
  thermostatOpening: [cooler, 345],
  mixtureDensity: [830, 0.1],
  circuitAtFeed: asking([cooler, conditions, 1e-4, 0.02], (circuit, at, feed, gas) => {
    const out = line.stillCircuit();
    line.circuitAtFeed(circuit, at, feed, out, gas);
    return out;
  }),
  feedFull: asking([cooler, conditions, 6e5, 0.02], (circuit, at, pressure, gas) => {
    const out = line.stillCircuit();
    line.feedFull(circuit, at, pressure, out, gas);
    return out;
  }),
  balance: asking([balanced], (at) => {
    const out = line.stillBalance();
    line.balance(at, out);
    return out;
  }),
  deliveredAt: [balanced, 5e5],
  stillBalance: [],
  stillCircuit: [],
  suctionGasAfter: [0.01, 0.3, 2e-4, 1e-4, 0.1],
  nextTrim: [1e4, 0.6, 0.5, 2e4, 1e5],
  rootBetween: unasked("its answers are those of the function that it is given"),
};
