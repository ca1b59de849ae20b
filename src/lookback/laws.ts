// How a leak may grow. Nobody sees that afterwards, so every way is tried, and what was seen weighs them.

import { assumed } from "./assumed.ts";
import type { Origin } from "../sources/origin.ts";
import type { Belief } from "../chance/belief.ts";
import type { LeakOpening } from "../physics/build.ts";
import { corrosionExponent } from "../physics/leak/pits.ts";

/** A number nobody knows, what is believed of it, and why. `unit` is what a person reads it in: SI value × `per`. */
export interface Believed {
  readonly name: string;
  readonly belief: Belief;
  readonly unit: string;
  readonly per: number;
  readonly origin: Origin;
}

export interface GrowthLaw {
  readonly name: string;
  /** In a technician's words. */
  readonly says: string;
  readonly unknowns: readonly Believed[];
  /** The opening of a guess; its values begin at `from`. */
  readonly opening: (values: Float64Array, from: number) => LeakOpening;
}

const hour = 3600;

/** Line of 10 mm with a wall of 0.9 mm: the sizes that every law of a line shares [m]. */
const line = { wall: 0.9e-3, tubeRadius: 4.55e-3, bore: 8.2e-3 };

export const laws: readonly GrowthLaw[] = [
  {
    name: "steady",
    says: "a hole that stays as large as it is",
    unknowns: [
      {
        name: "diameter of the hole",
        belief: { law: "log-uniform", low: 0.04e-3, high: 1.5e-3 },
        unit: "mm",
        per: 1e3,
        origin: assumed("from a weep of a few drops an hour to a stream"),
      },
    ],
    opening: (values, from) => ({ kind: "hole", diameter: values[from]!, wall: line.wall }),
  },
  {
    name: "creeping",
    says: "a seal or fitting that gives way and settles",
    unknowns: [
      {
        name: "gap in the end",
        belief: { law: "log-uniform", low: 8e-6, high: 120e-6 },
        unit: "µm",
        per: 1e6,
        origin: assumed("from a weep to a stream past a seal of 13 mm"),
      },
      {
        name: "share of that gap at first",
        belief: { law: "log-uniform", low: 0.05, high: 0.9 },
        unit: "",
        per: 1,
        origin: assumed("from hardly damp to nearly all of it at once"),
      },
      {
        name: "running time to 63 % of the way",
        belief: { law: "log-uniform", low: 10 * hour, high: 1000 * hour },
        unit: "h",
        per: 1 / hour,
        origin: assumed("seals creep over weeks to a year of driving"),
      },
    ],
    opening: (values, from) => ({
      kind: "seal",
      diameter: 13e-3,
      length: 2.4e-3,
      eccentricity: 0.5,
      finalClearance: values[from]!,
      clearance: values[from]! * values[from + 1]!,
      creepTime: values[from + 2]!,
    }),
  },
  {
    name: "cracking",
    says: "a fatigue crack that runs faster and faster until the line parts",
    unknowns: [
      {
        name: "running time until the line parts",
        belief: { law: "log-uniform", low: 5 * hour, high: 2000 * hour },
        unit: "h",
        per: 1 / hour,
        origin: assumed("from a week of hard driving to years"),
      },
      {
        name: "gap of the crack at rest",
        belief: { law: "log-uniform", low: 0.2e-6, high: 8e-6 },
        unit: "µm",
        per: 1e6,
        origin: assumed("faces of a fatigue crack never close quite"),
      },
      {
        name: "bending that opens it",
        belief: { law: "lognormal", middle: 30e6, spread: 0.5 },
        unit: "MPa",
        per: 1e-6,
        origin: assumed("vibration of an unclamped line, a fraction of the endurance limit"),
      },
    ],
    opening: (values, from) => ({
      kind: "crack",
      halfLength: 1.2e-3,
      partsAt: 6e-3,
      partsAfter: values[from]!,
      parisExponent: 3,
      restGap: values[from + 1]!,
      bendingStress: values[from + 2]!,
      wall: line.wall,
      tubeRadius: line.tubeRadius,
      modulus: 205e9,
      poisson: 0.29,
    }),
  },
  {
    name: "rusting",
    says: "a rust pit that has gone through and widens",
    unknowns: [
      {
        name: "diameter after a hundred days",
        belief: { law: "log-uniform", low: 0.05e-3, high: 1.5e-3 },
        unit: "mm",
        per: 1e3,
        origin: assumed("from a weep to a stream within a season of road salt"),
      },
    ],
    opening: (values, from) => ({
      kind: "pit",
      diameter: values[from]!,
      after: 100 * 86400,
      exponent: corrosionExponent.steelRust,
      wall: line.wall,
      bore: line.bore,
    }),
  },
];
