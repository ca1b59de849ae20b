// What a visit's file left out, and what stands in for it: nothing is filled in without being told.

import type { Origin } from "../sources/origin.ts";

/** One thing that was not in the file. */
export interface Assumption {
  /** Path in the file at which it could be said better. */
  readonly path: string;
  readonly says: string;
  readonly origin: Origin;
}

export const assumed = (because: string): Origin => ({ kind: "assumed", source: "this project", because });
export const practice = (because: string): Origin => ({
  kind: "common practice",
  source: "general repair pages, 2002 to 2024",
  because,
});

/** A list that what is assumed is added to. */
export type Assume = (path: string, says: string, origin: Origin) => void;

const number = (value: string, because: string, range?: readonly [string, string]) => ({
  value,
  origin: assumed(because),
  ...(range === undefined ? {} : { range }),
});
const recalled = (value: string, source: string, range: readonly [string, string]) => ({
  value,
  origin: { kind: "recalled", source } satisfies Origin,
  range,
});

/** A conventional fluid, as a visit's file would write it. */
export const usualFluid = {
  viscosity: [
    {
      temperature: "-29 degC",
      kinematic: number(
        "3400 mm2/s",
        "half again as thick as the line through the two warm points: polymer-thickened",
        ["2300 mm2/s", "5000 mm2/s"],
      ),
    },
    {
      temperature: "40 degC",
      kinematic: recalled("35 mm2/s", "conventional fluids of four- and five-speed units", [
        "33 mm2/s",
        "38 mm2/s",
      ]),
    },
    {
      temperature: "100 degC",
      kinematic: recalled("7.3 mm2/s", "conventional fluids of four- and five-speed units", [
        "7.0 mm2/s",
        "7.7 mm2/s",
      ]),
    },
  ],
  density15: recalled("860 kg/m3", "conventional transmission fluids", ["840 kg/m3", "870 kg/m3"]),
  shearLoss: recalled("15 %", "loss of viscosity by shear in service", ["10 %", "20 %"]),
};

export const usualSurroundings = {
  meanTemperature: number("11 degC", "a temperate place"),
  yearlySwing: number("9 K", "half of what lies between January and July"),
};

/** Where a leak of a place sits, when only the place is told. */
export const usualSites: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  "supply-line": {
    height: number("60 mm", "fitting at the side of the case"),
    lineAbove: number("0.15 L", "part of the line runs higher than the fitting"),
    columnHeight: number("0.20 m", "part of the line runs higher than the fitting"),
    dripRadius: number("4 mm", "lower edge of a hexagon"),
  },
  "return-line": {
    height: number("60 mm", "fitting at the side of the case"),
    lineAbove: number("0.15 L", "part of the line runs higher than the fitting"),
    columnHeight: number("0.20 m", "part of the line runs higher than the fitting"),
    dripRadius: number("4 mm", "lower edge of a hexagon"),
  },
  pan: { height: number("10 mm", "a hole near the floor"), dripRadius: number("3 mm", "a rim of a hole") },
  "pan-seam": {
    height: number("50 mm", "the gasket at the pan's rim"),
    dripRadius: number("3 mm", "a flange's lower edge"),
  },
  "shaft-seal": {
    height: number("100 mm", "the seal of the output shaft, well over the pan"),
    dripRadius: number("4 mm", "the lip of the housing"),
  },
};
