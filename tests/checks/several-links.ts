// Whole units in the bay, against what factory pages print and the trade says a sound one shows.
// The unit is the invented parcel van, full. A band is given as its middle and half its width.
import { fileURLToPath } from "node:url";
import { quart } from "../../src/bay/bands.ts";
import { coolerFlowTest } from "../../src/bay/cooler-flow-test.ts";
import { timeIntoGear } from "../../src/bay/engagement-test.ts";
import { levelChecks, stickIdling } from "../../src/bay/level-checks.ts";
import { linePressureTest } from "../../src/bay/line-pressure-test.ts";
import { holdAt, HOT, idling } from "../../src/bay/ready.ts";
import { idleInNeutral } from "../../src/history/idle.ts";
import { readCaseFile } from "../../src/inputs/files.ts";
import type { Check, Kind } from "./check.ts";

const van = readCaseFile(
  fileURLToPath(new URL("../../reference-data/cases/slow-seep.json", import.meta.url)),
).unit;
const kPa = 1e3;
const litresPerMinute = 1 / 60e3;
const degC = 273.15;

const inBand = (
  kind: Kind,
  source: string,
  claim: string,
  [low, high]: readonly [number, number],
  got: () => number,
): Check => ({
  claim,
  link: "several links",
  source,
  kind,
  expected: (low + high) / 2,
  got,
  tolerance: { absolute: (high - low) / 2 },
  because: "band",
});

const pages = "line pressures on five factory repair-manual pages, passenger transmissions";
const pressures = "line pressures that shops hold for usual";
const engagements = "general repair pages, 2002 to 2024: under 1 s is normal, 2 to 3 s is slow";
const coolers = "cooler flows and pressures that shops hold for usual";

const drive = () => linePressureTest(van, 0, "drive");
const reverse = () => linePressureTest(van, 0, "reverse");

function at2000rpm(): number {
  const walk = idling(van, 0, HOT);
  idleInNeutral(walk, 20, (2000 * Math.PI) / 30, () => holdAt(walk, HOT));
  return walk.now.line.cooler;
}

function lubePressure(): number {
  const { line, viscosity } = idling(van, 0, HOT).now;
  return van.build.cooler.lube * viscosity * line.lube;
}

export const checks: readonly Check[] = [
  inBand(
    "common practice",
    pressures,
    "idling in drive, hot, the line stands at 350 to 700 kPa",
    [350 * kPa, 700 * kPa],
    () => drive().idle,
  ),
  inBand(
    "common practice",
    pressures,
    "idling in reverse it stands at 1.3 to 2 times that",
    [1.3, 2],
    () => reverse().idle / drive().idle,
  ),
  inBand(
    "common practice",
    pressures,
    "on full load in drive it stands at 1000 to 2000 kPa",
    [1000 * kPa, 2000 * kPa],
    () => drive().stallLowest,
  ),
  // The five pages contradict one another unit by unit, so the van is held against all of them together.
  inBand(
    "published",
    pages,
    "stalled in drive it shows 931 to 2000 kPa",
    [931 * kPa, 2000 * kPa],
    () => drive().stallLowest,
  ),
  inBand(
    "published",
    pages,
    "stalled in reverse it shows 1250 to 1968 kPa",
    [1250 * kPa, 1968 * kPa],
    () => reverse().stallLowest,
  ),
  inBand(
    "common practice",
    coolers,
    "the return line fills a quart in 20 s or less, idling hot",
    [0, 20],
    () => quart / coolerFlowTest(van, 0).flow,
  ),
  inBand(
    "published",
    "factory repair manual, front-drive transaxle, 2002: about a quart in 30 s is a liberal flow",
    "the return line fills a quart in 30 s or less, idling in neutral",
    [0, 30],
    () => quart / coolerFlowTest(van, 0).flow,
  ),
  inBand(
    "common practice",
    coolers,
    "4 to 10 L/min run through the cooler at 2000 rpm, hot",
    [4 * litresPerMinute, 10 * litresPerMinute],
    at2000rpm,
  ),
  inBand(
    "common practice",
    coolers,
    "the cooler line stands at 35 to 200 kPa at idle, hot",
    [35 * kPa, 200 * kPa],
    () => idling(van, 0, HOT).now.line.nodePressure,
  ),
  inBand(
    "common practice",
    coolers,
    "2 to 8 L/min lubricate at idle, hot",
    [2 * litresPerMinute, 8 * litresPerMinute],
    () => idling(van, 0, HOT).now.line.lube,
  ),
  inBand(
    "common practice",
    coolers,
    "lubrication stands at 20 to 200 kPa at idle, hot",
    [20 * kPa, 200 * kPa],
    lubePressure,
  ),
  inBand(
    "common practice",
    engagements,
    "drive takes hold within 1 s, hot",
    [0, 1],
    () => timeIntoGear(van, 0, "drive", "hot") ?? Infinity,
  ),
  inBand(
    "common practice",
    engagements,
    "reverse takes hold within 1 s, hot",
    [0, 1],
    () => timeIntoGear(van, 0, "reverse", "hot") ?? Infinity,
  ),
  inBand(
    "common practice",
    engagements,
    "drive takes hold within 2 s after a night in the cold",
    [0, 2],
    () => timeIntoGear(van, 0, "drive", "cold start") ?? Infinity,
  ),
  inBand(
    "common practice",
    engagements,
    "reverse takes hold within 2 s after a night in the cold",
    [0, 2],
    () => timeIntoGear(van, 0, "reverse", "cold start") ?? Infinity,
  ),
  inBand(
    "published",
    "factory repair manual, year not shown, dipstick read at 71 to 93 degC, idling in park",
    "a correct fill reads between the marks at 82 degC, the middle of the window",
    [0, 1],
    () => stickIdling(van, 0, degC + 82).position,
  ),
  inBand(
    "published",
    "factory repair manual, year not shown, dipstick read at 70 to 80 degC, idling in park",
    "a correct fill reads between the marks at 75 degC, the middle of the window",
    [0, 1],
    () => stickIdling(van, 0, degC + 75).position,
  ),
  inBand(
    "published",
    "factory repair manual, front-drive car, 2007: dipstick read at 82 to 93 degC, idling in park",
    "a correct fill reads between the marks at 87.5 degC, the middle of the window",
    [0, 1],
    () => stickIdling(van, 0, degC + 87.5).position,
  ),
  inBand(
    "published",
    "factory repair manuals, years not shown, overflow plug opened at 35 to 45 degC, idling",
    "a correct fill begins to run within the window",
    [degC + 35, degC + 45],
    () => levelChecks(van, 0).runsFrom ?? Infinity,
  ),
  inBand(
    "published",
    "factory repair manual, small front-drive car, year not shown: 0.4 L from low to full",
    "no more than that is added at the plug before a correct fill runs",
    [0, 0.4e-3],
    () => levelChecks(van, 0).added,
  ),
];
