// Weep, drip, stream: drops that others have weighed and counted.
import {
  capillaryLength,
  dropsPerMinute,
  dropVolume,
  flowFromDrops,
  harkinsBrown,
  largestPendantDrop,
} from "../../src/physics/leak/drop.ts";
import { holdOffPressure, jettingVelocity, jettingWeber } from "../../src/physics/leak/regime.ts";
import type { Check } from "./check.ts";
import { cell, overAll, tableOf } from "./table.ts";

const link = "regime" as const;
const microlitre = 1e-9;
const cubicInch = 16.387064e-6;
const gallon = 3.785411784e-3;
const pint = gallon / 8;
const oilDrop = () => dropVolume(2.4e-3, 0.03, 850); // a wetted patch of 4.8 mm under a line

const eschbaum = tableOf("eschbaum-drops/table.csv");
const eschbaumSource = "F. Eschbaum, in Bulletin of Pharmacy 9 (1895) 461-462, water at 15 degC";
const factors = tableOf("harkins-brown/table.csv");
const evaluated = (law: string) => `${law}, evaluated by an independent program from printed inputs`;

/** Flow [m³/s] at which dripping from a wetted tip of a diameter [m] turns to a stream. */
const streamsAt = (density: number, tension: number, inner: number, outer: number) =>
  jettingVelocity(density, tension, inner, outer) * (Math.PI / 4) * inner ** 2;

export const checks: readonly Check[] = [
  // The size of a drop
  ...[0.67, 1.39, 3.07, 4.17, 6.56, 8.32].map((diameter) => ({
    claim: `a drop of water from a tip of ${diameter} mm weighs ${cell(eschbaum, "tip_diameter_mm", diameter, "drop_weight_g")} g`,
    link,
    source: eschbaumSource,
    kind: "published" as const,
    expected: cell(eschbaum, "tip_diameter_mm", diameter, "drop_weight_g"),
    got: () => dropVolume(diameter / 2000, 0.0735, 999.1) * 999_100,
    tolerance: { relative: 0.09 },
    because: "tips measured in 1895 and dripped by hand: neighbouring rows scatter by 8 %",
  })),
  {
    claim: "the row printed at 3.89 mm, out of order, belongs to 2.89 mm",
    link,
    source: eschbaumSource,
    kind: "assumed",
    expected: cell(eschbaum, "tip_diameter_mm", 3.89, "drop_weight_g"),
    got: () => dropVolume(2.89 / 2000, 0.0735, 999.1) * 999_100,
    tolerance: { relative: 0.09 },
    because: "a misprint: it stands between 1.39 and 3.07 mm, and its weight fits there",
  },
  {
    claim: "the last row, printed as 9.2250 g, is 0.2250 g",
    link,
    source: eschbaumSource,
    kind: "assumed",
    expected: cell(eschbaum, "tip_diameter_mm", 14.9, "drop_weight_g") - 9,
    got: () => dropVolume(14.9 / 2000, 0.0735, 999.1) * 999_100,
    tolerance: { relative: 0.09 },
    because: "a misprint: no drop of water weighs nine grams",
  },
  {
    claim: "the medicine dropper of 3 mm delivers water in drops of 45 to 55 mg",
    link,
    source: "United States Pharmacopeia 32, general chapter 1101",
    kind: "published",
    expected: 50e-6,
    got: () => dropVolume(1.5e-3, 0.0728, 998.2) * 998.2,
    tolerance: { absolute: 5e-6 },
  },
  {
    claim: "a drop of hydraulic oil is 0.002 cubic inch",
    link,
    source: "trade-magazine tutorial on fittings, cost of leakage, table 4",
    kind: "published",
    expected: 0.002 * cubicInch,
    got: oilDrop,
    tolerance: { relative: 0.1 },
    because: "one printed digit, and the wetted patch is chosen in the middle of 4 to 6 mm",
  },
  {
    claim: "oil at r = 3 mm falls in drops of 41.15 µL",
    link,
    source: evaluated("Tate with the table of Harkins and Brown"),
    kind: "computed",
    expected: 41.15 * microlitre,
    got: () => dropVolume(3e-3, 0.03, 840),
    tolerance: { relative: 0.013 },
    because: "fit and table of the factor agree within 1.3 %",
  },
  ...[0.5, 0.75, 1.1].map((x) => ({
    claim: `at a ratio of ${x} a share of ${cell(factors, "x", x, "f")} of the ideal drop falls`,
    link,
    source: "Harkins and Brown, J. Am. Chem. Soc. 41 (1919) 499-524",
    kind: "recalled" as const,
    expected: cell(factors, "x", x, "f"),
    got: () => harkinsBrown(x),
    tolerance: { relative: 0.013 },
    because: "a polynomial of 2008 through the table of 1919",
  })),
  {
    claim: "and so over the whole table from 0 to 1.2",
    link,
    source: "Harkins and Brown, J. Am. Chem. Soc. 41 (1919) 499-524",
    kind: "recalled",
    expected: 0,
    got: () => overAll(factors, (at) => harkinsBrown(at("x")) / at("f") - 1),
    tolerance: { absolute: 0.01 },
    because: "root mean square of the relative deviation; no row is off by more than 1.3 %",
  },
  {
    claim: "no drop of oil above 132 µL can hang under a flat",
    link,
    source: "Young and Laplace integrated by an independent program; Padday and Pitt (1973): 18.98",
    kind: "computed",
    expected: 131.8 * microlitre,
    got: () => largestPendantDrop(0.03, 840),
    tolerance: { relative: 2e-3 },
  },
  {
    claim: "capillary length of oil 1.908 mm",
    link,
    source: evaluated("balance of surface tension and weight"),
    kind: "computed",
    expected: 1.90836e-3,
    got: () => capillaryLength(0.03, 840),
    tolerance: { relative: 1e-5 },
  },

  // Counting drops
  {
    claim: "three drops a minute are 9.35 gallons in 250 days",
    link,
    source: "trade-magazine tutorial on fittings, cost of leakage, table 4",
    kind: "published",
    expected: 9.348,
    got: () => (flowFromDrops(3, 0.002 * cubicInch) * 250 * 86_400) / gallon,
    tolerance: { relative: 5e-4 },
  },
  {
    claim: "ten drops a minute are a pint a day",
    link,
    source: "lubrication-equipment note on the size of a drop of oil",
    kind: "published",
    expected: 1,
    got: () => (flowFromDrops(10, 0.002 * cubicInch) * 86_400) / pint,
    tolerance: { relative: 0.03 },
    because: "the note rounds to a whole pint",
  },
  {
    claim: "one drop of oil a second is 420 gallons a year",
    link,
    source: "research-partnership article on the impact of one drop per second",
    kind: "published",
    expected: 420,
    got: () => (flowFromDrops(60, dropVolume(3.6e-3, 0.03, 850)) * 365 * 86_400) / gallon,
    tolerance: { relative: 0.05 },
    because: "it needs a drop of 0.05 mL, which falls from a patch of 7 mm: the upper end of what drips",
  },
  {
    claim: "a litre in twelve hours at 12 drops to the millilitre is 16.6 drops a minute",
    link,
    source: "nursing course notes on drip rates",
    kind: "published",
    expected: 16.6,
    got: () => dropsPerMinute(1e-3 / (12 * 3600), 1e-6 / 12),
    tolerance: { absolute: 0.1 },
    because: "the notes cut off after one decimal",
  },

  // Dripping to streaming
  {
    claim: "a fine dry hole jets from a Weber number of 4",
    link,
    source: "Clanet and Lasheras, J. Fluid Mech. 383 (1999) 307-326, limit without gravity",
    kind: "recalled",
    expected: 4,
    got: () => jettingWeber(998.2, 0.0728, 1e-5, 1e-5),
    tolerance: { relative: 0.01 },
    because: "at 10 µm gravity still counts for 0.6 %",
  },
  {
    claim: "water from a 3 mm tube streams from 1.142 mL/s",
    link,
    source: evaluated("Clanet and Lasheras, J. Fluid Mech. 383 (1999) 307-326"),
    kind: "computed",
    expected: 1.1424e-6,
    got: () => streamsAt(998.2, 0.0728, 3e-3, 3e-3),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "oil from a 1 mm hole wetted to 3 mm streams from 0.298 mL/s",
    link,
    source: evaluated("Clanet and Lasheras, J. Fluid Mech. 383 (1999) 307-326"),
    kind: "computed",
    expected: 0.298e-6,
    got: () => streamsAt(840, 0.03, 1e-3, 3e-3),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "hot oil at a drip point of 4 mm streams from 0.689 mL/s",
    link,
    source: evaluated("Clanet and Lasheras, J. Fluid Mech. 383 (1999) 307-326"),
    kind: "computed",
    expected: 0.6887e-6,
    got: () => streamsAt(812, 0.028, 4e-3, 4e-3),
    tolerance: { relative: 1e-4 },
  },

  // Held back
  {
    claim: "a dry pinhole of 50 µm holds 2400 Pa",
    link,
    source: evaluated("Young and Laplace"),
    kind: "computed",
    expected: 2400,
    got: () => holdOffPressure(0.03, 50e-6, 0),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "sap would rise 100 m in a tube of 0.141 µm radius",
    link,
    source: "OpenStax, College Physics, example 11.12, evaluated by an open companion program",
    kind: "computed",
    expected: 1050 * 9.8 * 100,
    got: () => holdOffPressure(0.0728, 2 * 1.41e-7, 0),
    tolerance: { relative: 0.005 },
    because: "the radius is printed to three digits",
  },
];
