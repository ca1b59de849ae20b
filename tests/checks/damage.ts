// The damage link against printed rules, rates and colour lists.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import {
  arrheniusRate,
  doublingFactor,
  energyOfDoubling,
  rampEquivalent,
} from "../../src/physics/damage/arrhenius.ts";
import { capacityLeft, damageIndex } from "../../src/physics/damage/damage-index.ts";
import { glazeRate, scissionRate, scissions } from "../../src/physics/damage/glaze.ts";
import { iecAgeing, ieeeAgeing, ieeeLife } from "../../src/physics/damage/insulation.ts";
import { minerSum } from "../../src/physics/damage/miner.ts";
import {
  charAndGasRate,
  charRate,
  charYield,
  halfLife,
  tarRate,
} from "../../src/physics/damage/pyrolysis.ts";
import { hollomonJaffe, temperingTime } from "../../src/physics/damage/tempering.ts";
import { temperatureOfTint } from "../../src/physics/damage/tint.ts";
import { archardDepth, wearDepth } from "../../src/physics/damage/wear.ts";
import type { Check } from "./check.ts";

const kelvin = 273.15;
const ownReference = "closed form, evaluated separately in Python 3";
const electronVolt = 96485.33212; // J/mol
const reliability = "Reid, documentation of the library reliability";
const bearing = [
  { time: 40 / 60, life: 50000 },
  { time: 15 / 60, life: 6500 },
  { time: 5 / 60, life: 1000 },
];

/** Five colour lists; see the about.md beside the numbers. Dooley's book gets no more rows than the others. */
const lists: Record<string, string> = {
  forum: "tool-steel colour list in a gunmakers' forum",
  "gauge-plate": "temper colour chart of a gauge-plate maker",
  dooley: "Dooley, Applied Science for Metal Workers, section on tempering",
  strip: "tempering colours in a strip-steel trading page",
  dictionary: "an engineering dictionary, entry on temper colors",
};
const colours = readFileSync(
  join(import.meta.dirname, "../../reference-data/temper-colours/lists.csv"),
  "utf8",
)
  .trim()
  .split("\n")
  .slice(1)
  .map((row) => {
    const [list = "", printed = "", unit = "", value = "", tint = ""] = row.split(",");
    const celsius = unit === "degF" ? (Number(value) - 32) / 1.8 : Number(value);
    return { source: lists[list] ?? list, printed, celsius, tint };
  });
const minutes = { shortest: 300, longest: 300 };
const likely = (tint: string) => (temperatureOfTint(tint, minutes)?.likely ?? NaN) - kelvin;
/** One check a list: the colour on which our scale and the list agree least. */
const worstColours: Check[] = [...new Set(colours.map((row) => row.source))].map((source) => {
  const off = (row: { tint: string; celsius: number }) => Math.abs(likely(row.tint) - row.celsius);
  const worst = colours.filter((row) => row.source === source).reduce((a, b) => (off(b) > off(a) ? b : a));
  return {
    claim: `every colour of a list of temper colours is met; furthest off is ${worst.printed}, °C`,
    link: "damage",
    source,
    kind: "published",
    expected: worst.celsius,
    got: () => likely(worst.tint),
    tolerance: { absolute: 20 },
    because: "the lists differ from one another by about 15 K and state no time at temperature",
  };
});

export const checks: readonly Check[] = [
  ...worstColours,
  {
    claim: "motor insulation of class A at 125 instead of 105 °C ages faster by",
    link: "damage",
    source: "Kosow, Electric Machinery and Transformers, 2nd ed., example 13-1",
    kind: "published",
    expected: 4,
    got: () => doublingFactor(20, 10),
    tolerance: { relative: 1e-12 },
  },
  {
    claim: "and its ten years become",
    link: "damage",
    source: "Kosow, Electric Machinery and Transformers, 2nd ed., example 13-1",
    kind: "published",
    expected: 2.5,
    got: () => 10 / doublingFactor(125 - 105, 10),
    tolerance: { relative: 1e-12 },
  },
  {
    claim: "20 K of unused class raise 20,000 hours of motor insulation to",
    link: "damage",
    source: "engineers' forum quoting a motor trade text on insulation life",
    kind: "published",
    expected: 80000,
    got: () => 20000 * doublingFactor(20, 10),
    tolerance: { relative: 1e-12 },
  },
  {
    claim: "25 K of reserve between insulation classes extend life by",
    link: "damage",
    source: "laboratory page on IEC 60085:2007, the ten-degree rule",
    kind: "published",
    expected: 5.6,
    got: () => doublingFactor(25, 10),
    tolerance: { absolute: 0.06 },
    because: "printed as about 5.6",
  },
  {
    claim: "fluid that lasts 100,000 miles at 175 °F lasts at 255 °F, in miles",
    link: "damage",
    source: "trade life table, circulated since before 2002",
    kind: "common practice",
    expected: 6250,
    got: () => 100000 / doublingFactor((255 - 175) / 1.8, 20 / 1.8),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "the same fluid at 335 °F, in miles",
    link: "damage",
    source: "trade life table, circulated since before 2002",
    kind: "common practice",
    expected: 325,
    got: () => 100000 / doublingFactor((335 - 175) / 1.8, 20 / 1.8),
    tolerance: { relative: 0.21 },
    because: "the chart leaves its own rule, by a sixth of the rule here",
  },
  {
    claim: "a test at 100 °C hastens a 1.2 eV process that runs at 60 °C by",
    link: "damage",
    source: `${reliability}, acceleration_factor`,
    kind: "published",
    expected: 88.29574588463338,
    got: () => arrheniusRate(1, 1.2 * electronVolt, 373.15) / arrheniusRate(1, 1.2 * electronVolt, 333.15),
    tolerance: { relative: 1e-6 },
    because: "the library's Boltzmann constant has fewer digits",
  },
  {
    claim: "load cycles that a bearing survives under three loads",
    link: "damage",
    source: `${reliability}, palmgren_miner_linear_damage`,
    kind: "published",
    expected: 7400.37951,
    got: () => 1 / minerSum(bearing),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "share of its damage done by the heaviest load, per cent",
    link: "damage",
    source: `${reliability}, palmgren_miner_linear_damage`,
    kind: "published",
    expected: 61.66983,
    got: () => (100 * minerSum(bearing.slice(2))) / minerSum(bearing),
    tolerance: { relative: 1e-7 },
  },
  {
    claim: "runs to failure of a steel part at 480 and 400 MPa by turns",
    link: "damage",
    source: "homework page on a part of 1045 steel, Miner's rule, with solution",
    kind: "published",
    expected: 7142,
    got: () =>
      1 /
      minerSum([
        { time: 1, life: 1e4 },
        { time: 4, life: 1e5 },
      ]),
    tolerance: { absolute: 1 },
  },
  {
    claim: "damage sum of three stress levels",
    link: "damage",
    source: "engineering page on Miner's rule in machinery, example calculation",
    kind: "published",
    expected: 1.4,
    got: () =>
      minerSum([
        { time: 10000, life: 20000 },
        { time: 5000, life: 10000 },
        { time: 2000, life: 5000 },
      ]),
    tolerance: { relative: 1e-12 },
  },
  {
    claim: "worn volume of a brake material at 100 N over 5 km, mm³",
    link: "damage",
    source: "calculator page on specific wear rate, brake-pad example",
    kind: "published",
    expected: 2.5,
    got: () => archardDepth(5e-15, 100, 5000) * 1e9,
    tolerance: { relative: 1e-12 },
    because: "on one square metre the depth is the volume",
  },
  {
    claim: "worn volume of a steel pin at 50 N over 2 km, mm³",
    link: "damage",
    source: "calculator page on wear rate, steel pin on a disc",
    kind: "published",
    expected: 1.91,
    got: () => archardDepth(1.91e-14, 50, 2000) * 1e9,
    tolerance: { absolute: 5e-3 },
  },
  {
    claim: "rupture time of an alloy at 800 °C with parameter 24.0e3, hours",
    link: "damage",
    source: "Callister, Materials Science and Engineering, design example 8.2 (same law, Larson-Miller)",
    kind: "recalled",
    expected: 233,
    got: () => (temperingTime(1073, 24000) ?? NaN) / 3600,
    tolerance: { absolute: 1 },
  },
  {
    claim: "diffusion of magnesium in aluminium at 550 °C, 1e-13 m²/s",
    link: "damage",
    source: "Callister, Materials Science and Engineering, example 5.4 (same law, Arrhenius)",
    kind: "recalled",
    expected: 5.8,
    got: () => arrheniusRate(1.2e-4, 131e3, 823) / 1e-13,
    tolerance: { absolute: 0.06 },
  },
  ...[
    [92, 0.5],
    [104, 2],
    [110, 4],
    [140, 128],
  ].map(([celsius = 0, factor = 0]): Check => ({
    claim: `plain transformer paper at ${celsius} °C ages against 98 °C by`,
    link: "damage",
    source: "IEC 60076-7",
    kind: "recalled",
    expected: factor,
    got: () => iecAgeing(celsius + kelvin),
    tolerance: { relative: 1e-9 },
  })),
  {
    claim: "per-unit life of transformer insulation at 110 °C",
    link: "damage",
    source: "IEEE C57.91, two constants read in public implementations; result computed",
    kind: "computed",
    expected: 1.00034,
    got: () => ieeeLife(110 + kelvin),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "its ageing at 110 °C",
    link: "damage",
    source: "IEEE C57.91, definition of the reference temperature",
    kind: "recalled",
    expected: 1,
    got: () => ieeeAgeing(110 + kelvin),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "cellulose turns active at 300 °C, 1/s",
    link: "damage",
    source: "constants of Miller and Bellan 1997, rate computed in Python 3",
    kind: "computed",
    expected: 2.27094e-3,
    got: () => charRate(573.15),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "active cellulose to tar at 300 °C, 1/s",
    link: "damage",
    source: "constants of Miller and Bellan 1997, rate computed in Python 3",
    kind: "computed",
    expected: 4.05495e-4,
    got: () => tarRate(573.15),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "active cellulose to char and gas at 300 °C, 1/s",
    link: "damage",
    source: "constants of Miller and Bellan 1997, rate computed in Python 3",
    kind: "computed",
    expected: 2.50168e-4,
    got: () => charAndGasRate(573.15),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "half-life of cellulose at 350 °C, s",
    link: "damage",
    source: "constants of Miller and Bellan 1997, rate computed in Python 3",
    kind: "computed",
    expected: 5.153,
    got: () => halfLife(charRate(623.15)),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "char left by slow heat at 250 °C",
    link: "damage",
    source: "constants of Miller and Bellan 1997, rate computed in Python 3",
    kind: "computed",
    expected: 0.21286,
    got: () => charYield(523.15),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "hours for paper in oil from chain length 1000 to 200 at 150 °C",
    link: "damage",
    source: `constants of Emsley and Stevens 1994 (recalled); ${ownReference}`,
    kind: "computed",
    expected: 1881.5,
    got: () => scissions(1000, 200) / scissionRate(150 + kelvin) / 3600,
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "hours to full glaze at 200 °C",
    link: "damage",
    source: `constants of Emsley and Stevens 1994 (recalled); ${ownReference}`,
    kind: "computed",
    expected: 67.08,
    got: () => 1 / glazeRate(200 + kelvin) / 3600,
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "activation energy of doubling each 10 K at 150 °C, kJ/mol",
    link: "damage",
    source: ownReference,
    kind: "computed",
    expected: 105.631,
    got: () => energyOfDoubling(150 + kelvin, 10) / 1000,
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "a ramp from 100 to 200 °C at 1 K/s ages as so many seconds at 100 °C",
    link: "damage",
    source: ownReference,
    kind: "computed",
    expected: 14758.8,
    got: () => rampEquivalent(100, 1, 10),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "wear of 2500 J/mm² at 2e-5 mm³/J, mm",
    link: "damage",
    source: ownReference,
    kind: "computed",
    expected: 0.05,
    got: () => wearDepth(2500, 1e-6, 2e-14) * 1000,
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "an hour at 1 MPa and 5 m/s wears, mm",
    link: "damage",
    source: ownReference,
    kind: "computed",
    expected: 0.0432,
    got: () => archardDepth(2.4e-15, 1e6, 5 * 3600) * 1000,
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "seconds at 400 °C that soften as an hour at 300 °C does",
    link: "damage",
    source: ownReference,
    kind: "computed",
    expected: 3.848,
    got: () => temperingTime(673.15, hollomonJaffe(573.15, 3600)) ?? NaN,
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "index of a clutch of margin 1.6 with a half-glazed, tenth-charred, fifth-worn lining",
    link: "damage",
    source: `by hand from its definition: (1 − 0.8·0.9·0.8)/(1 − 1/1.6)`,
    kind: "computed",
    expected: (1 - 0.576) / 0.375,
    got: () => damageIndex(capacityLeft(0.5, 0.1, 1e-4, 5e-4, 0.4), 1.6),
    tolerance: { relative: 1e-9 },
  },
];
