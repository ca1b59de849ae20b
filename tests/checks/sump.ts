// The pan: tilted surfaces, slosh and levels that others have worked out, printed or measured.
import { density } from "../../src/physics/fluid/density.ts";
import { panVolume } from "../../src/physics/sump/holdup.ts";
import { amountThatRuns, amountUntilRuns, dipstickReading } from "../../src/physics/sump/level.ts";
import { depthAt, meanDepth, type Pan, panCapacity, volumeAtDepth } from "../../src/physics/sump/pan.ts";
import { sloshEnvelope, sloshFrequency, sloshStep } from "../../src/physics/sump/slosh.ts";
import { type TaperedPan, depthOfTapered, volumeOfTapered } from "../../src/physics/sump/tapered-pan.ts";
import { tiltAcross, tiltAlong, tiltAngle, turnAcceleration } from "../../src/physics/sump/tilt.ts";
import type { Check } from "./check.ts";
import { cell, overAll, tableOf } from "./table.ts";

const link = "sump" as const;
const degree = Math.PI / 180;
const litre = 1e-3;
const quart = 0.946352946 * litre;
const g = 9.80665;
const otherG = "worked with g = 9.81 m/s²";

const slosh1960 = tableOf("tank-slosh-1960/table.csv");
/** Angular frequency of the first mode times √(L/g). */
const firstMode = (depthOverLength: number) => sloshFrequency(1, depthOverLength) / Math.sqrt(g);
const validation = "code_aster validation manual, V8.21.101 (ADLV101), sloshing of a reservoir";
const validated = (mode: number, expected: number): Check => ({
  claim: `mode ${mode} of a tank 0.8 m long, filled to 0.3 m, sloshes at ${expected} Hz`,
  link,
  source: validation,
  kind: "published",
  expected,
  got: () => sloshFrequency(0.8, 0.3, mode) / (2 * Math.PI),
  tolerance: { relative: 2e-4 },
  because: otherG,
});

const fishTank: Pan = { length: 2, width: 0.6, height: 0.8, free: 1 };
const fishAcceleration = 2.5; // 0 to 90 km/h in 10 s
const fishTankSource = "university course ChE 304, uniform acceleration, fish tank on a truck";
const boardTank: Pan = { length: 4, width: 2, height: 1.2, free: 1 };
const boardSource = "civil-engineering board examination review, relative equilibrium";
const longTank: Pan = { length: 6, width: 2.5, height: 2, free: 1 };
const solved = (page: string) => `solved hydraulics exercises, accelerated tank 6 m long, ${page}`;

// A pan 0.40 x 0.30 x 0.08 m: the cases of a plane in a box, each by two programs.
const box: Pan = { length: 0.4, width: 0.3, height: 0.08, free: 1 };
const twoPrograms = "independent programs in Python: closed forms of the cut box, and quadrature";
const drawn: TaperedPan = {
  floorLength: 0.36,
  floorWidth: 0.26,
  rimLength: 0.4,
  rimWidth: 0.3,
  height: 0.08,
};
const runningPan = (lost: number) =>
  meanDepth(box, panVolume(10 * litre - lost, 3.5 * litre, 0.6 * litre, 0.5 * litre, 1.2 * litre));
const parkedPan = (lost: number) =>
  meanDepth(box, panVolume(10 * litre - lost, 2.9 * litre, 0.6 * litre, 0.2 * litre, 0));
const levelBalance = "hand calculation from assumed volumes, balance of a charge of 10 L over 0.12 m²";

/** Largest value of the slosh filter after a unit step from rest, and when it comes [s]. */
function stepPeak(damping: number, omega: number): { value: number; time: number } {
  const state = new Float64Array(2);
  const dt = 1e-4 / omega;
  for (let time = 0; ; time += dt) {
    const before = state[0] ?? 0;
    sloshStep(state, 0, 1, omega, damping, dt);
    if ((state[0] ?? 0) < before) return { value: before, time };
  }
}

export const checks: readonly Check[] = [
  // Slosh
  validated(1, 0.89825),
  validated(2, 1.38452),
  validated(4, 1.97551),
  validated(5, 2.20885),
  ...[0.062, 0.071, 0.083, 0.1, 0.107].map((depth) => ({
    claim: `a tank filled to ${depth} of its length sloshes where it was measured`,
    link,
    source: "J. W. Addington, Dynamics of Fuel in Tanks, Cranfield CoA Note 99, 1960, digitised",
    kind: "published" as const,
    expected: cell(slosh1960, "depth_over_length", depth, "frequency"),
    got: () => firstMode(depth),
    tolerance: { relative: 0.03 },
    because: "read off a plot whose points scatter by 3 %",
  })),
  {
    claim: "over all 52 tanks measured, from shallow to deep, the law is off by few per cent",
    link,
    source: "J. W. Addington, Dynamics of Fuel in Tanks, Cranfield CoA Note 99, 1960, digitised",
    kind: "published",
    expected: 0,
    got: () => overAll(slosh1960, (at) => firstMode(at("depth_over_length")) / at("frequency") - 1),
    tolerance: { absolute: 0.04 },
    because: "points scatter by 3 %, and deep tanks lie 4 % below the law of an ideal fluid",
  },
  {
    claim: "half damped, a step is overshot by 16.3 %",
    link,
    source: "course notes on time response of second-order systems, ζ = 0.5",
    kind: "published",
    expected: 0.163,
    got: () => stepPeak(0.5, 10).value - 1,
    tolerance: { absolute: 5e-4 },
  },
  {
    claim: "and the peak comes after 0.36 s at 10 rad/s",
    link,
    source: "course notes on time response of second-order systems, ζ = 0.5",
    kind: "published",
    expected: 0.36,
    got: () => stepPeak(0.5, 10).time,
    tolerance: { absolute: 5e-3 },
  },
  {
    claim: "the surface of a pan at ζ = 0.1 swings to 1.72925 of a step",
    link,
    source: "closed form and an ODE program (SciPy 1.17), f1 = 0.67184 Hz",
    kind: "computed",
    expected: 1.72925,
    got: () => stepPeak(0.1, 2 * Math.PI * 0.67184).value,
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "and at ζ = 0.3 no further than 1.37233, foreseen before the peak",
    link,
    source: "closed form and an ODE program (SciPy 1.17), f1 = 0.67184 Hz",
    kind: "computed",
    expected: 0.37233,
    got: () => {
      // From beyond the target, where only the overshoot on the other side is left to come.
      const state = new Float64Array(2);
      const omega = 2 * Math.PI * 0.67184;
      sloshStep(state, 0, 1, omega, 0.3, 0.3);
      sloshStep(state, 0, 1, omega, 0.3, 0.3);
      return sloshEnvelope(state[0] ?? 0, state[1] ?? 0, 1, omega, 0.3);
    },
    tolerance: { absolute: 5e-6 },
  },
  {
    claim: "a pan 0.40 m long with 30 mm of fluid sloshes at 0.67184 Hz",
    link,
    source: "evaluation in NumPy 2.4 of the law of Abramson, NASA SP-106",
    kind: "computed",
    expected: 0.67184,
    got: () => sloshFrequency(0.4, 0.03) / (2 * Math.PI),
    tolerance: { relative: 1e-5 },
  },
  // Tilt
  {
    claim: "a truck that gains 90 km/h in 10 s tilts its water by 0.2548",
    link,
    source: fishTankSource,
    kind: "published",
    expected: 0.254842,
    got: () => tiltAlong(fishAcceleration, 0),
    tolerance: { relative: 4e-4 },
    because: otherG,
  },
  {
    claim: "the water rises by 25.48 cm at the end of a tank set lengthwise",
    link,
    source: fishTankSource,
    kind: "published",
    expected: 0.254842,
    got: () => depthAt(fishTank, 0.48, tiltAlong(fishAcceleration, 0), 0, 0, 0.3) - meanDepth(fishTank, 0.48),
    tolerance: { relative: 4e-4 },
    because: otherG,
  },
  {
    claim: "and by 7.65 cm when it stands crosswise",
    link,
    source: fishTankSource,
    kind: "published",
    expected: 0.0764526,
    got: () => depthAt(fishTank, 0.48, 0, tiltAcross(fishAcceleration), 1, 0) - meanDepth(fishTank, 0.48),
    tolerance: { relative: 4e-4 },
    because: otherG,
  },
  {
    claim: "a tank drawn up a slope of 30 degrees at 4 m/s² has its surface 16.35 degrees off the horizon",
    link,
    source: "solved hydraulics exercises, tank 4 m long on an inclined plane",
    kind: "published",
    expected: 16.35,
    got: () => tiltAngle(tiltAlong(4, 30 * degree)) / degree - 30,
    tolerance: { absolute: 0.01 },
  },
  {
    claim: "2.4 m/s² tilt the surface by 13.74 degrees",
    link,
    source: solved("filled to 1 m"),
    kind: "published",
    expected: 13.74,
    got: () => tiltAngle(tiltAlong(2.4, 0)) / degree,
    tolerance: { absolute: 0.015 },
    because: "worked with g = 9.81 m/s² and printed to two decimals",
  },
  {
    claim: "and 1 m of water stands 1.7338 m deep at the rear",
    link,
    source: solved("filled to 1 m"),
    kind: "published",
    expected: 1.7338,
    got: () => depthAt(longTank, 15, tiltAlong(2.4, 0), 0, 0, 1),
    tolerance: { relative: 5e-4 },
    because: otherG,
  },
  {
    claim: "at 1.635 m/s² a tank filled to 1.5 m is about to spill over its rear wall of 2 m",
    link,
    source: solved("on the verge of spilling"),
    kind: "published",
    expected: 2,
    got: () => depthAt(longTank, 22.5, tiltAlong(1.635, 0), 0, 0, 1),
    tolerance: { relative: 4e-4 },
    because: otherG,
  },
  {
    claim: "a full tank spills 4.4028 m² times its width at 2.4 m/s²",
    link,
    source: solved("filled to the rim"),
    kind: "published",
    expected: 4.4028,
    got: () => (panCapacity(longTank) - volumeAtDepth(longTank, 2, tiltAlong(2.4, 0), 0, 0, 0)) / 2.5,
    tolerance: { relative: 7e-4 },
    because: "worked with g = 9.81 m/s² and the slope rounded to 0.2446",
  },
  {
    claim: "a wedge of 2.824 m³ stands 1.20 m deep at the rear wall while the front of the floor is dry",
    link,
    source: boardSource,
    kind: "published",
    expected: 1.2,
    got: () => depthAt(boardTank, 2.824, 0.51, 0, 0, 1),
    tolerance: { relative: 4e-4 },
    because: "the volume is printed to four digits",
  },
  {
    claim: "and wets the floor for 2.353 m",
    link,
    source: boardSource,
    kind: "published",
    expected: 2.824,
    got: () => volumeAtDepth(boardTank, 0, 0.51, 0, 2.353, 1),
    tolerance: { relative: 4e-4 },
    because: "length and volume are printed to four digits",
  },
  {
    claim: "what runs over the rim before the wedge is left: 5.18 m³ of 8",
    link,
    source: boardSource,
    kind: "published",
    expected: 5.18,
    got: () => amountThatRuns({ ...boardTank, height: 4 }, 8, 0.51, 0, 0, 1, 1.2),
    tolerance: { absolute: 5e-3 },
  },
  {
    claim: "a tank 60 cm high and 40 cm across may be filled to 51.8 cm for 4 m/s²",
    link,
    source: "homework page after Çengel, Fluid Mechanics, cylindrical tank on a truck",
    kind: "published",
    expected: 0.518,
    got: () => {
      // The middle of the surface stays: what holds for a round tank holds for a box of the same length.
      const tank: Pan = { length: 0.4, width: 0.4, height: 0.6, free: 1 };
      return volumeAtDepth(tank, 0.6, tiltAlong(4, 0), 0, 0, 0.2) / 0.16;
    },
    tolerance: { absolute: 5e-4 },
  },
  {
    claim: "10 % uphill at 2 m/s² tilt by 0.30496",
    link,
    source: "evaluation in NumPy 2.4",
    kind: "computed",
    expected: 0.30496,
    got: () => tiltAlong(2, Math.atan(0.1)),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "10 % downhill braking at 3 m/s² throws the fluid forward by 0.407441",
    link,
    source: "evaluation in NumPy 2.4",
    kind: "computed",
    expected: -0.407441,
    got: () => tiltAlong(-3, -Math.atan(0.1)),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "a turn of 60 m at 50 km/h tilts by 18.1513 degrees",
    link,
    source: "evaluation in NumPy 2.4",
    kind: "computed",
    expected: 18.1513,
    got: () => tiltAngle(tiltAcross(turnAcceleration(50 / 3.6, 60))) / degree,
    tolerance: { relative: 1e-5 },
  },
  // A plane in a box
  {
    claim: "floor partly dry: 0.5 L at slope 0.1 stand 18.2574 mm at the deep wall",
    link,
    source: twoPrograms,
    kind: "computed",
    expected: 18.2574e-3,
    got: () => depthAt(box, 0.5 * litre, 0.1, 0, 0, 0.1),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "lid wet: 8.5 L at slope 0.1 stand 52.9199 mm at the shallow wall",
    link,
    source: twoPrograms,
    kind: "computed",
    expected: 52.9199e-3,
    got: () => depthAt(box, 8.5 * litre, 0.1, 0, 0.4, 0.1),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "lid wet and floor dry: 3.6 L at slope 0.5 stand 15 mm in the middle",
    link,
    source: twoPrograms,
    kind: "computed",
    expected: 15e-3,
    got: () => depthAt(box, 3.6 * litre, 0.5, 0, 0.2, 0.1),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "one litre less, and the middle of the pan is dry",
    link,
    source: twoPrograms,
    kind: "computed",
    expected: 0,
    got: () => depthAt(box, 2.6 * litre, 0.5, 0, 0.2, 0.1),
    tolerance: { absolute: 0 },
  },
  {
    claim: "nearly full and steep: 9 L at slope 0.5 stand 35.2786 mm at the shallow wall",
    link,
    source: twoPrograms,
    kind: "computed",
    expected: 35.2786e-3,
    got: () => depthAt(box, 9 * litre, 0.5, 0, 0.4, 0.1),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "two slopes at once, 0.5 and 0.3: 3.6 L stand 14.9767 mm in the middle",
    link,
    source: "independent program in Python: eight-cube relation of Scardovelli and Zaleski, and Monte Carlo",
    kind: "computed",
    expected: 14.9767e-3,
    got: () => depthAt(box, 3.6 * litre, 0.5, 0.3, 0.2, 0.15),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "a drawn pan holds 5.07792 L at 50 mm",
    link,
    source: twoPrograms,
    kind: "computed",
    expected: 5.07792 * litre,
    got: () => volumeOfTapered(drawn, 0.05),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "and stands 80 mm high with 8.52267 L",
    link,
    source: twoPrograms,
    kind: "computed",
    expected: 0.08,
    got: () => depthOfTapered(drawn, 8.52267 * litre),
    tolerance: { relative: 1e-6 },
  },
  // Levels
  {
    claim: "running, a full charge stands 35 mm in the pan",
    link,
    source: levelBalance,
    kind: "computed",
    expected: 35e-3,
    got: () => runningPan(0),
    tolerance: { relative: 1e-12 },
  },
  {
    claim: "parked over night it stands at 52.5 mm: the stick reads high",
    link,
    source: levelBalance,
    kind: "computed",
    expected: 52.5e-3,
    got: () => parkedPan(0),
    tolerance: { relative: 1e-12 },
  },
  {
    claim: "two quarts low the running level is 19.227 mm",
    link,
    source: levelBalance,
    kind: "computed",
    expected: 19.227e-3,
    got: () => runningPan(2 * quart),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "a correct fill checked cold reads 1.33 bands lower than hot, below the low mark",
    link,
    source:
      "band of 0.4 L from a factory repair manual; 10 L of the oil of an open hydraulics library, 20 to 90 degC",
    kind: "computed",
    expected: 0.53083 / 0.4,
    got: () => {
      const marks = { low: 30e-3, full: 30e-3 + (0.4 * litre) / 0.12 };
      const grown = 10 * litre * (density(860, 293.15) / density(860, 363.15) - 1);
      const reads = (volume: number) => dipstickReading(meanDepth(box, volume), marks);
      return reads(4 * litre) - reads(4 * litre - grown);
    },
    tolerance: { relative: 0.05 },
    because: "the library's linear expansion against the API law: published figures differ by that much",
  },
  {
    claim:
      "what is missing after a quart is lost runs again from an overflow once a quart is back, tilted or not",
    link,
    source: "balance by hand: the same wedge of fluid",
    kind: "computed",
    expected: quart,
    got: () => {
      const lip = depthAt(box, 3.6 * litre, 0.1, 0.05, 0.3, 0.2);
      return amountUntilRuns(box, 3.6 * litre - quart, 0.1, 0.05, 0.3, 0.2, lip);
    },
    tolerance: { relative: 1e-9 },
  },
];
