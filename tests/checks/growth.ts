// Cracks, pits, rubbing and shaking: growth of a leak against worked problems and tables.
import {
  aluminium6061,
  cyclesBetween6061,
  fatigueCycles,
  fatigueLine,
  fatigueStrength,
  meanStrength6061,
} from "../../src/physics/leak/fatigue-life.ts";
import {
  criticalCrack,
  parisBetween,
  parisCrack,
  parisCycles,
  type ParisLaw,
  perCycleFromMillimetres,
  stressIntensity,
} from "../../src/physics/leak/paris.ts";
import {
  corrosionDepth,
  corrosionExponent,
  corrosionTime,
  pierceTime,
  piercedMouth,
  pitMouth,
} from "../../src/physics/leak/pits.ts";
import { flowPower, runningTime, shareInLast } from "../../src/physics/leak/power-growth.ts";
import { flatArea, rubThroughTime, slidDistance, wornVolume } from "../../src/physics/leak/rub-through.ts";
import {
  boreStress,
  heldAt,
  hoopStress,
  massPerLength,
  naturalFrequency,
  secondMoment,
  tipMovementStress,
} from "../../src/physics/leak/tube.ts";
import type { Check } from "./check.ts";

const link = "growth" as const;
const evaluated = (law: string) => `${law}, evaluated by an independent program from printed inputs`;
const MPa = 1e6;
const psi = 6894.757;
const year = 365.25 * 86_400;
const cycles = (start: number, end: number, law: ParisLaw) => parisCycles(start, end, law) ?? NaN;

const plate: ParisLaw = {
  perCycle: 6.91e-12,
  exponent: 3,
  stressRange: 375 * MPa,
  geometry: 1.12,
  threshold: 0,
  longest: 1,
};
const plateSource =
  "documentation of an open reliability library, fracture mechanics, after Modarres, Amiri and Jackson (2017) 37-57";
const tubeWall: ParisLaw = {
  perCycle: 4.46e-10,
  exponent: 3,
  stressRange: 30 * MPa,
  geometry: 1.12,
  threshold: 0.66e6,
  longest: 0.889e-3,
};
const line = { diameter: 9.525e-3, wall: 0.889e-3 };
const lineMass = massPerLength(line, 2700, 860);
const lineStiffness = 69e9 * secondMoment(line);

export const checks: readonly Check[] = [
  // Cracks
  {
    claim: "a crack of 1 mm in a steel plate takes 6802 cycles to the end of its notch, 2.08 mm",
    link,
    source: plateSource,
    kind: "published",
    expected: 6802,
    got: () => cycles(1e-3, 2.0798e-3, plate),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "and 1133 more from 12.08 to 17.86 mm, notch included",
    link,
    source: plateSource,
    kind: "published",
    expected: 1133,
    got: () => cycles(12.0798e-3, 17.8603e-3, plate),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "and runs by itself at 7.86 mm",
    link,
    source: plateSource,
    kind: "published",
    expected: 7.86e-3,
    got: () => criticalCrack(66e6, 375 * MPa, 1.12),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "a brittle metal that breaks at 310 MPa has cracks of 2 µm half length",
    link,
    source: "V. Raghavan, Materials Science and Engineering, example 12.2, answer noted in an open companion",
    kind: "published",
    expected: 2e-6,
    got: () => criticalCrack(Math.sqrt(2 * 1.5 * 200e9), 310 * MPa, 1),
    tolerance: { relative: 0.02 },
    because: "the book rounds the strength to two digits",
  },
  {
    claim: "an edge crack of 1 mm at 300 MPa has a stress intensity of 18.83 MPa√m",
    link,
    source: "open course on the mechanical behaviour of materials, week 12 problem 3, a student's program",
    kind: "computed",
    expected: 18.8329e6,
    got: () => stressIntensity(1.12, 300 * MPa, 1e-3),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "and grows to its critical 7.05 mm in 444 cycles",
    link,
    source: "open course on the mechanical behaviour of materials, week 12 problem 3, a student's program",
    kind: "computed",
    expected: 444.39,
    got: () =>
      cycles(1e-3, criticalCrack(50e6, 300 * MPa, 1.12), {
        ...plate,
        perCycle: 4.2e-10,
        stressRange: 300 * MPa,
      }),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "an edge crack of 0.5 mm under 180 MPa grows for about 261 000 cycles",
    link,
    source: "G. E. Dieter, Mechanical Metallurgy, example on fatigue crack propagation",
    kind: "recalled",
    expected: 261_000,
    got: () =>
      cycles(0.5e-3, criticalCrack(100e6, 180 * MPa, 1.12), {
        ...plate,
        perCycle: 6.9e-12,
        stressRange: 180 * MPa,
      }),
    tolerance: { relative: 2e-3 },
  },
  {
    claim: "another slope: 2.5 mm to its critical 8.84 mm takes 495 322 cycles, m = 2.5",
    link,
    source: evaluated("Paris and Erdogan (1963), homework problem on a cracked gusset plate"),
    kind: "computed",
    expected: 495_322,
    got: () =>
      cycles(2.5e-3, criticalCrack(50e6, 300 * MPa, 1), {
        ...plate,
        perCycle: 1.5e-12,
        exponent: 2.5,
        stressRange: 300 * MPa,
        geometry: 1,
      }),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "a tube wall shaken at 30 MPa and 30 Hz is through after 789 161 cycles",
    link,
    source: evaluated("Paris and Erdogan (1963), aluminium tube"),
    kind: "computed",
    expected: 789_161,
    got: () => cycles(0.2e-3, 0.889e-3, tubeWall),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "after 100 000 of them the crack has grown from 0.2 to 0.2296 mm",
    link,
    source: evaluated("Paris and Erdogan (1963), aluminium tube"),
    kind: "computed",
    expected: 0.229566e-3,
    got: () => parisCrack(0.2e-3, 1e5, tubeWall),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "the same from the share of its life",
    link,
    source: evaluated("Paris and Erdogan (1963), aluminium tube"),
    kind: "computed",
    expected: 0.229566e-3,
    got: () => parisBetween(0.2e-3, 0.889e-3, 3, 1e5 / 789_161),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "the design line of aluminium in N and mm, 1.41e-11, is 4.459e-10 in m and MPa√m",
    link,
    source: "IIW recommendations (Hobbacher), aluminium alloys, converted by an independent program",
    kind: "recalled",
    expected: 4.45881e-10,
    got: () => perCycleFromMillimetres(1.41e-11, 3),
    tolerance: { relative: 1e-5 },
  },

  // Before there is a crack
  {
    claim: "6061-T6 stands 16 100 psi for a million reversals",
    link,
    source: "engineering reference page, fatigue design curves for aluminium, equation 3 in psi",
    kind: "published",
    expected: 16_100 * psi,
    got: () => meanStrength6061(1e6),
    tolerance: { relative: 5e-4 },
    because: "two unit systems, each rounded",
  },
  {
    claim: "and 14 ksi for 500 million",
    link,
    source: "metals page with Aluminum Association data for 6061-T6, rotating beam",
    kind: "published",
    expected: 14_000 * psi,
    got: () => meanStrength6061(5e8),
    tolerance: { relative: 0.02 },
    because: "another laboratory's beam; printed to two digits",
  },
  {
    claim: "the straight line for 6061-T6 has 142.9 MPa at a million",
    link,
    source: evaluated("Basquin (1910), 705 MPa (2N)^-0.11"),
    kind: "computed",
    expected: 142.9 * MPa,
    got: () => fatigueStrength(aluminium6061, 1e6),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "the handbook form gives 1.397 million cycles at 0 to 30 ksi",
    link,
    source: "MIL-HDBK-5, 6061-T6, evaluated by an independent program",
    kind: "recalled",
    expected: 1_396_776,
    got: () => cyclesBetween6061(30_000 * psi, 0),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "soft 3003 stands 80 MPa for 51 000 cycles",
    link,
    source: "table values 16 and 7 ksi (Kutz, Handbook of Materials Selection, table 5) on Shigley's line",
    kind: "computed",
    expected: 5.1e4,
    got: () => fatigueCycles(fatigueLine(1e3, 0.9 * 110.3 * MPa, 5e8, 48.3 * MPa), 80 * MPa),
    tolerance: { relative: 2e-3 },
  },

  // Pits and rust
  {
    claim: "twice the wall of aluminium lasts eight times as long against pits",
    link,
    source: "Pathak and Godard, Nature 218 (1968) 893-894, after Godard (1960)",
    kind: "published",
    expected: 8,
    got: () =>
      corrosionTime(0.5e-3, year, 2 * 0.889e-3, corrosionExponent.aluminiumPits) /
      corrosionTime(0.5e-3, year, 0.889e-3, corrosionExponent.aluminiumPits),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "steel that loses 50 µm in its first year has lost 167 µm in ten",
    link,
    source: "ISO 9224, exponent 0.523, class C3 of ISO 9223",
    kind: "recalled",
    expected: 166.71e-6,
    got: () => corrosionDepth(50e-6, year, 10 * year, corrosionExponent.steelRust),
    tolerance: { relative: 1e-4 },
  },

  {
    claim: "a pit of half a millimetre after a year is through a wall of 0.889 mm after 5.62 years",
    link,
    source: evaluated("Godard (1960)"),
    kind: "computed",
    expected: 5.6208 * year,
    got: () => corrosionTime(0.5e-3, year, 0.889e-3, corrosionExponent.aluminiumPits),
    tolerance: { relative: 1e-4 },
  },
  {
    claim:
      "and its mouth, which widens as it deepened, is twice as wide after eight times as long, up to the bore",
    link,
    source: "Pathak and Godard, Nature 218 (1968) 893-894, after Godard (1960)",
    kind: "assumed",
    expected: 2,
    got: () =>
      pitMouth(0.5e-3, year, 8 * year, corrosionExponent.aluminiumPits, 6e-3) /
      pitMouth(0.5e-3, year, year, corrosionExponent.aluminiumPits, 6e-3),
    tolerance: { relative: 1e-9 },
    because: "the law is printed for the depth; that the mouth follows it is assumed",
  },
  {
    claim: "half a ball of rust 1 mm deep through a wall of 0.8 mm has a mouth of 1.2 mm",
    link,
    source: "the triangle of sides 3, 4 and 5: half the mouth, the wall, the ball's radius (Euclid)",
    kind: "computed",
    expected: 1.2e-3,
    got: () => {
      const through = corrosionTime(0.5e-3, year, 0.8e-3, corrosionExponent.aluminiumPits);
      const deep = corrosionTime(0.5e-3, year, 1e-3, corrosionExponent.aluminiumPits);
      return piercedMouth(0.8e-3, 1, through, deep - through, corrosionExponent.aluminiumPits, 6e-3);
    },
    tolerance: { relative: 1e-9 },
  },
  {
    claim:
      "and as its depth goes by the cube root, it took 64/61 times as long through the wall as from there to that mouth",
    link,
    source: "the same triangle: (1 + t/T) = (5/4)³ = 125/64",
    kind: "computed",
    expected: 64 / 61,
    got: () => pierceTime(1.2e-3, year, 0.8e-3, 1, corrosionExponent.aluminiumPits) / year,
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "general rust of the worst class needs 63 years for 0.7 mm: it is pits that hole a line",
    link,
    source: "ISO 9224, exponent 0.523, class C5 of ISO 9223",
    kind: "recalled",
    expected: 63.26 * year,
    got: () => corrosionTime(80e-6, year, 0.7e-3, corrosionExponent.steelRust),
    tolerance: { relative: 1e-4 },
  },
  {
    claim:
      "zinc that loses 1 µm in its first year has lost 16.06 µm in thirty, the last ten of them straight on",
    link,
    source: "public implementation of ISO 9224:2012, its own test",
    kind: "computed",
    expected: 16.06486657718427e-6,
    got: () => corrosionDepth(1e-6, year, 20 * year, 0.813) * (1 + (0.813 * 10) / 20),
    tolerance: { relative: 1e-12 },
  },

  // Rubbing. The coefficient is where sources part: a lecture has 1e-6 to 1e-4 for fretting and 1e-4 for adhesion, an encyclopedia 1e-8 for
  // mild wear and 1e-2 for severe, a public table 1.7e-7 for steel on steel in oil, 5e-4 for steel on dry aluminium, 5e-3 for aluminium on
  // itself. It stays an input; here stands 1e-4.
  {
    claim: "a line chafing with 5 N and 50 µm at 30 Hz loses 0.0275 mm³ an hour",
    link,
    source: evaluated("Archard (1953)"),
    kind: "computed",
    expected: 0.02753e-9,
    got: () => wornVolume(1e-4, 5, slidDistance(50e-6, 30, 3600), 392.3 * MPa),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "and a patch of 10 mm² is gone in 323 hours",
    link,
    source: evaluated("Archard (1953)"),
    kind: "computed",
    expected: 323 * 3600,
    got: () => rubThroughTime(10e-6 * 0.889e-3, 0.02753e-9 / 3600) ?? NaN,
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "the cross-section of a shallow flat is the cube of its width over twelve radii",
    link,
    source: "ASTM G99-05, volume of a wear track, relation and its 1 % read in an open program",
    kind: "published",
    expected: 0.115e-3 ** 3 / (12 * 3e-3),
    got: () => flatArea(3e-3, 3e-3 - Math.sqrt(3e-3 ** 2 - 0.0575e-3 ** 2)),
    tolerance: { relative: 0.01 },
    because: "the relation holds to 1 % up to a width of 0.3 radii",
  },

  // The line as a tube
  {
    claim: "a square steel tube of 10 inch, 3/8 inch wall and 90 ft swings 11 times in 10 seconds",
    link,
    source: "steel fabricator's page, counted on a video",
    kind: "published",
    expected: 1.1,
    got: () => {
      const inch = 0.0254;
      const stiffness = 29e6 * psi * (((10 ** 4 - 9.25 ** 4) / 12) * inch ** 4);
      const mass = 7850 * (10 ** 2 - 9.25 ** 2) * inch ** 2;
      return naturalFrequency(heldAt.pinnedEnds, stiffness, mass, 90 * 12 * inch);
    },
    tolerance: { absolute: 0.1 },
    because: "whole swings counted in ten seconds",
  },
  {
    claim: "the coefficients for a span held at both ends and at one: 22.373 and 3.5156",
    link,
    source: "T. Irvine, Bending Frequencies of Beams, Rods, and Pipes (2011), table 1",
    kind: "published",
    expected: 22.373 / 3.5156,
    got: () => naturalFrequency(heldAt.clampedEnds, 1, 1, 1) / naturalFrequency(heldAt.oneEnd, 1, 1, 1),
    tolerance: { relative: 2e-4 },
  },
  {
    claim: "a half-metre of 3/8 inch aluminium line, oil inside, rings at 173.5 Hz between clamps",
    link,
    source: evaluated("Euler-Bernoulli beam"),
    kind: "computed",
    expected: 173.51,
    got: () => naturalFrequency(heldAt.clampedEnds, lineStiffness, lineMass, 0.5),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "half a millimetre at the end of a free 150 mm makes 21.9 MPa",
    link,
    source: evaluated("Euler-Bernoulli cantilever"),
    kind: "computed",
    expected: 21.91 * MPa,
    got: () => tipMovementStress(line, 69e9, 0.5e-3, 0.15),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "a shell of 1 m bore and 12 mm under 2 N/mm² carries 83.3 N/mm²",
    link,
    source: "strength-of-materials textbook, example 8.30, evaluated by an open companion program",
    kind: "computed",
    expected: 83.33 * MPa,
    got: () => hoopStress({ diameter: 1.024, wall: 0.012 }, 2 * MPa),
    tolerance: { relative: 0.015 },
    because: "the book takes the bore for the mean diameter",
  },
  {
    claim: "a thick tube carries p(r_o² + r_i²)/(r_o² − r_i²) at its bore: 5/3 p for 2 to 1",
    link,
    source: "examination page on thick cylinders, Lamé's maximum hoop stress",
    kind: "published",
    expected: 5 / 3,
    got: () => boreStress({ diameter: 2, wall: 0.5 }, 1),
    tolerance: { relative: 1e-12 },
  },

  // Looking back along a power law
  {
    claim: "two litres lost at 39.6 mL/h today are 252.5 running hours behind a long hole that grew evenly",
    link,
    source: evaluated("flow growing as a power of time"),
    kind: "computed",
    expected: 252.5 * 3600,
    got: () => runningTime(2e-3, 39.6e-6 / 3600, flowPower.longHole),
    tolerance: { relative: 2e-4 },
  },
  {
    claim: "and 84.2 behind an orifice whose width grew as the cube root of time",
    link,
    source: evaluated("flow growing as a power of time"),
    kind: "computed",
    expected: 84.18 * 3600,
    got: () => runningTime(2e-3, 39.6e-6 / 3600, flowPower.orifice / 3),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "a leak growing as the fourth power of time loses 41 % in its last tenth",
    link,
    source: "closed form 1 − 0.9⁵",
    kind: "computed",
    expected: 0.40951,
    got: () => shareInLast(0.1, flowPower.longHole),
    tolerance: { relative: 1e-5 },
  },
];
