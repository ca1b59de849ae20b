// Outcomes of several links together: a van driven until it is warm, a fading pressure carried through to heat and wear, a count of drops
// carried through to a quart. The van is invented; a band is given as its middle and half its width.
import { fileURLToPath } from "node:url";
import { quart } from "../../src/bay/bands.ts";
import { timeIntoGear } from "../../src/bay/engagement-test.ts";
import { levelChecks } from "../../src/bay/level-checks.ts";
import { launchTest } from "../../src/bay/launch-test.ts";
import { inThePan, stoodFor } from "../../src/bay/ready.ts";
import { nedc, nedcUrban } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { ticks } from "../../src/driving/ticks.ts";
import type { Trace } from "../../src/driving/trace.ts";
import { idleInNeutral } from "../../src/history/idle.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import { readCaseFile } from "../../src/inputs/files.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { lockPressure } from "../../src/physics/clutch/capacity.ts";
import { faceArea, type Clutch } from "../../src/physics/clutch/geometry.ts";
import { peakSlip, torqueToLock } from "../../src/physics/clutch/slip.ts";
import { energyToWear } from "../../src/physics/damage/wear.ts";
import { solid } from "../../src/physics/heat/solid.ts";
import { lumpedRise } from "../../src/physics/heat/slab.ts";
import { flowFromDrops } from "../../src/physics/leak/drop.ts";
import { fresh } from "../../src/physics/state.ts";
import type { Check, Kind } from "./check.ts";
import { pack } from "./generic-pack.ts";

const van = readCaseFile(
  fileURLToPath(new URL("../../reference-data/cases/slow-seep.json", import.meta.url)),
).unit;
const degC = 273.15;
const minutes = 60;

const several = (
  kind: Kind,
  source: string,
  claim: string,
  expected: number,
  tolerance: Check["tolerance"],
  got: () => number,
  because?: string,
): Check => ({
  claim,
  link: "several links",
  source,
  kind,
  expected,
  tolerance,
  got,
  ...(because === undefined ? {} : { because }),
});
const inBand = (
  kind: Kind,
  source: string,
  claim: string,
  [low, high]: readonly [number, number],
  got: () => number,
) => several(kind, source, claim, (low + high) / 2, { absolute: (high - low) / 2 }, got, "band");

/** The van driven again and again along a trace: the fluid's temperature each minute [K], and the share of the engine's work that the pump takes. */
function driven(trace: Trace, air: number, span: number): { warm: number[]; pump: number } {
  const walk = newWalk(van, fresh(van, air));
  walk.road.ambient = air;
  fluidNow(van, walk.state, walk.now);
  const cut = ticks(trace);
  const engagement = noEngagement();
  const warm: number[] = [air];
  let [pump, engine, from] = [0, 0, 0];
  idleInNeutral(walk, 2, van.build.engine.idleSpeed, () => true);
  from = walk.state.clock;
  for (let clock = 0; clock < span;) {
    for (let i = 0; i < cut.count; i++) {
      tick(walk, cut.dt[i]!, cut.speed[i]!, cut.grade[i]!, cut.lateral[i]!, engagement, ({ state, now }) => {
        const seconds = state.clock - from;
        from = state.clock;
        pump += now.pumpHeat * seconds;
        engine += Math.max(0, now.pumpHeat + now.drive.impellerTorque * now.drive.engine) * seconds;
        return true;
      });
      clock += cut.dt[i]!;
      if (Math.floor(clock / minutes) > warm.length - 1) warm.push(walk.now.temperature);
    }
  }
  return { warm, pump: pump / engine };
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}
const town = once(() => driven(nedcUrban, degC + 20, 75 * minutes));
const mixed = once(() => driven(nedc, degC + 20, 75 * minutes));
const fromCool = once(() => driven(nedcUrban, degC + 15.5, 60 * minutes).warm);
const hard = once(
  () =>
    driven(parcelRound(3, { hardness: 1.15, hilliness: 1, duration: 2400 }), degC + 30, 80 * minutes).warm,
);
/** Minutes until so warm [K]. */
const reaches = (warm: readonly number[], temperature: number): number => {
  const at = warm.findIndex((value) => value >= temperature);
  return at <= 0 ? Infinity : at - 1 + (temperature - warm[at - 1]!) / (warm[at]! - warm[at - 1]!);
};

// The generic pack with one friction, and an engine line from 400 N m to 600 rad/s.
const even: Clutch = {
  ...pack,
  friction: { base: 0.12, rise: 0, riseSpeed: 1, slope: 0, heatLoss: 0, reference: 373.15 },
};
const line = { torqueAtRest: 400, freeSpeed: 600 };
const burning = () => peakSlip(line, 150).power / (even.faces * faceArea(even));
const steel = solid(46, 7850, 480);
const worked = "worked through by closed forms in Python 3";

/** Days until a quart is gone at so many drops of 0.05 mL a minute, driven as long as drivers do. */
const survey = "AAA Foundation, American Driving Survey, 2022: 60.2 minutes of driving a day";
const daysToQuart = (drops: number) => quart / (flowFromDrops(drops, 0.05e-6) * 60.2 * minutes);

const log2007 = "road log with a digital gauge, trade magazine, 2007";
const shops = "what shops hold for usual of fluid and level";

export const checks: readonly Check[] = [
  several(
    "published",
    log2007,
    "town traffic settles at about 96 degC",
    degC + 96,
    { absolute: 10 },
    () => town().warm.at(-1)!,
    "one vehicle; another cooler and another day",
  ),
  inBand(
    "published",
    "factory repair manual, front-drive car, 2007: driven until 82 to 93 degC",
    "town driving brings the fluid into the window in which its level is checked, and keeps it there",
    [degC + 82, degC + 93],
    () => town().warm.at(-1)!,
  ),
  inBand(
    "published",
    "heavy-vehicle service manual, year not shown: sump normally below 107 degC",
    "an hour and more of hard hilly rounds in air of 30 degC keeps it below that",
    [degC + 60, degC + 107],
    () => Math.max(...hard()),
  ),
  inBand(
    "published",
    "factory diagnostic, 2007: normal temperature within 10 minutes and more from 15.5 degC",
    "from 15.5 degC it takes 10 to 30 minutes of town traffic for four fifths of the rise",
    [10, 30],
    () => reaches(fromCool(), fromCool()[0]! + 0.8 * (fromCool().at(-1)! - fromCool()[0]!)),
  ),
  inBand(
    "recalled",
    "warm-up of transmissions as papers on it show",
    "20 to 80 degC take 15 to 25 minutes of mixed driving",
    [15, 25],
    () => reaches(mixed().warm, degC + 80),
  ),
  inBand(
    "published",
    "independent laboratory's review of 43 transmission pumps: up to 20 % of the power over the city cycle",
    "the pump takes no more than a fifth of the engine's work in town",
    [0, 0.2],
    () => town().pump,
  ),
  inBand(
    "published",
    "general repair pages, 2002 to 2024: 4 to 8 qt come out of the pan",
    "half an hour after a hot idle so much lies in the pan",
    [4 * quart, 8 * quart],
    () => inThePan(stoodFor(van, 0, 30 * minutes, degC + 20)),
  ),
  inBand(
    "common practice",
    shops,
    "a quart short reads under the low mark, hot",
    [-4, 0],
    () => levelChecks(van, quart).stick.position,
  ),
  inBand(
    "common practice",
    shops,
    "a correct fill read cold reads under the hot low mark",
    [-4, 0],
    () => levelChecks(van, 0).stickCold.position,
  ),
  inBand(
    "common practice",
    shops,
    "three quarts short, nose up, drive comes late: over 1.2 s",
    [1.2, 20],
    () => timeIntoGear(van, 3 * quart, "drive", "hot, nose up") ?? 20,
  ),
  inBand(
    "common practice",
    shops,
    "three quarts short, a launch draws air that a full unit does not: over a tenth of gas",
    [0.1, 1],
    () => launchTest(van, 3 * quart).mostGas,
  ),
  several(
    "computed",
    worked,
    "a pack held at the worst pressure: 255791 Pa, from engine line, output speed and piston",
    255_791.1,
    { relative: 1e-5 },
    () => {
      const lock = lockPressure(even, torqueToLock(line, 150), 0.12);
      const kiss = even.spring / even.pistonArea;
      return kiss + 0.5 * (lock - kiss);
    },
  ),
  several(
    "computed",
    worked,
    "it warms steels of 1.8 mm by 156.44 K a second",
    156.44,
    { relative: 1e-4 },
    () => lumpedRise(steel, 1.8e-3, burning(), 1),
  ),
  several(
    "computed",
    worked,
    "from 100 to 300 degC in 1.2785 s",
    1.2785,
    { relative: 1e-4 },
    () => 200 / lumpedRise(steel, 1.8e-3, burning(), 1),
  ),
  several(
    "computed",
    worked,
    "and would wear 0.4 mm of lining off in 10.472 h, had it not charred long before",
    10.472 * 3600,
    { relative: 1e-4 },
    () => energyToWear(0.4e-3, 2e-14) / burning(),
  ),
  several(
    "computed",
    survey,
    "one drop a second loses a quart in 5.2 days of driving",
    5.24,
    { absolute: 0.05 },
    () => daysToQuart(60),
  ),
  several("computed", survey, "ten drops a minute in 31 days", 31.4, { absolute: 0.3 }, () =>
    daysToQuart(10),
  ),
  several("computed", survey, "one drop a minute in 314 days", 314.4, { absolute: 1 }, () => daysToQuart(1)),
];
