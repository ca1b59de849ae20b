// What things cost: processor time, median of repeats after warming up. Never a test: no number here passes or fails.
// `npm run bench` prints a table, `npm run bench -- --json` one JSON object whose keys say what and in which unit.
import { instant, fluidNow } from "../src/physics/chain.ts";
import { newNow } from "../src/physics/now.ts";
import { fresh } from "../src/physics/state.ts";
import { balance, stillBalance } from "../src/physics/supply/regulator.ts";
import { slipContest, warmUpContest, type Contest } from "./bench/against-odex.ts";
import { costInBrowser } from "./bench/browser.ts";
import { timeOf } from "./bench/clock.ts";
import { costOfSeconds, type SecondKind } from "./bench/drive.ts";
import { costOfDuty } from "./bench/duty.ts";
import { costOfEnsemble } from "./bench/ensemble.ts";
import { costOfLookback } from "./bench/lookback.ts";
import { historyOf, powerOfDays } from "./bench/memory.ts";
import { soundUnit } from "./bench/van.ts";

interface Row {
  readonly what: string;
  readonly key: string;
  readonly value: number;
  readonly target?: string;
}

const say = (text: string) => console.error(text);

function contestRows(name: string, key: string, { walk, odex, tolerance }: Contest): Row[] {
  return [
    { what: `${name}: walked`, key: `${key}Walked_cpu_us`, value: walk },
    { what: `${name}: by odex`, key: `${key}Odex_cpu_us`, value: odex },
    { what: `${name}: odex over walked`, key: `${key}OdexOverWalked_ratio`, value: odex / walk },
    { what: `${name}: relative accuracy of both`, key: `${key}Tolerance_relative`, value: tolerance },
  ];
}

function parts(): Row[] {
  const state = fresh(soundUnit, 353.15);
  state.gear = 2;
  const now = newNow(soundUnit.build);
  const road = { speed: 12, wish: 0.5, grade: 0.02, lateral: 0, ambient: 283.15 };
  fluidNow(soundUnit, state, now);
  const one = timeOf(100_000, () => instant(soundUnit, state, road, now));
  const line = stillBalance();
  const still = timeOf(200_000, () => balance(now.lineInput, line));
  const gulp = { ...now.lineInput, gas: 0.6 };
  const sagging = timeOf(100_000, () => balance(gulp, line));
  return [
    { what: "one instant, top to bottom", key: "instant_cpu_us", value: one },
    { what: "one balance, regulated", key: "balanceRegulated_cpu_us", value: still },
    { what: "one balance, sagging on 60 % air", key: "balanceSagging_cpu_us", value: sagging },
  ];
}

say("parts");
const rows: Row[] = parts();
say("seconds of driving");
const seconds = costOfSeconds();
const short = (kind: SecondKind) => `${seconds[kind].fillShort * 1000} L short`;
rows.push(
  {
    what: `second, healthy (${short("healthy")})`,
    key: "healthySecond_cpu_us",
    value: seconds.healthy.cost,
    target: "<= 2",
  },
  {
    what: `second, air at the pump (${short("air")})`,
    key: "drawingAirSecond_cpu_us",
    value: seconds.air.cost,
    target: "<= 15",
  },
  {
    what: `second, a clutch slipping (${short("slip")})`,
    key: "slippingSecond_cpu_us",
    value: seconds.slip.cost,
    target: "<= 15",
  },
);
for (const kind of ["healthy", "air", "slip"] as const)
  rows.push(
    { what: `steps in a second, ${kind}`, key: `${kind}Steps_per_s`, value: seconds[kind].steps },
    {
      what: `allocated for each step, ${short(kind)}`,
      key: `${kind}Allocated_bytes`,
      value: seconds[kind].allocated,
      target: "0",
    },
  );
say("against odex");
const slip = slipContest();
const kinks = warmUpContest(true);
rows.push(
  ...contestRows("second of slip", "slip", slip),
  ...contestRows("second of warming up, input with a kink each second", "warmUpKinks", kinks),
  ...contestRows("second of warming up, input steady for 10 min", "warmUpSteady", warmUpContest(false)),
);
// The peer of a second with every event watched: odex on the part of it that the contests integrate, in the same run.
const overPeer = (what: string, key: string, cost: number, peer: number): Row => ({
  what: `${what}: over odex on its ${peer === kinks.odex ? "heat" : "two speeds"} alone`,
  key: `${key}OverOdex_ratio`,
  value: cost / peer,
});
rows.push(
  overPeer("second, healthy", "healthySecond", seconds.healthy.cost, kinks.odex),
  overPeer("second, air", "drawingAirSecond", seconds.air.cost, kinks.odex),
  overPeer("second, slipping", "slippingSecond", seconds.slip.cost, slip.odex),
);
say("histories of 30 and 360 days");
historyOf(30);
const [month, year] = [historyOf(30), historyOf(360)];
rows.push(
  {
    what: "second of a healthy history of 360 days",
    key: "healthyHistorySecond_cpu_us",
    value: year.second,
    target: "<= 2",
  },
  overPeer("second of a healthy history", "healthyHistorySecond", year.second, kinks.odex),
  {
    what: `healthy history of 360 days, ${year.hours.toFixed(0)} h of running`,
    key: "healthyYear_cpu_s",
    value: year.whole,
    target: "<= 3",
  },
  { what: "a year over twelve months", key: "yearOverMonths_ratio", value: year.whole / (12 * month.whole) },
  {
    what: "power of the days that the cost goes with, 45 to 360 days",
    key: "costOverDays_power",
    value: powerOfDays([45, 90, 180, 360]),
    target: "1",
  },
  { what: "heap of a history of 30 days, MB", key: "heapAfter30Days_MB", value: month.heap },
  { what: "heap of a history of 360 days, MB", key: "heapAfter360Days_MB", value: year.heap, target: "flat" },
);

say("histories by averages");
const duty = costOfDuty();
rows.push(
  {
    what: "week prepared, air of one temperature, s",
    key: "dutyPreparationOneClimate_cpu_s",
    value: duty.oneClimate,
    target: "< 5",
  },
  {
    what: "week prepared, air of half a year, s",
    key: "dutyPreparation_cpu_s",
    value: duty.preparation,
    target: "< 5",
  },
  {
    what: "history by averages, all events, median",
    key: "dutyHistory_cpu_us",
    value: duty.history,
    target: "< 50",
  },
  { what: "its leak and loss alone, median", key: "dutyMarch_cpu_us", value: duty.march, target: "< 20" },
  { what: "ten thousand of them in one thread, s", key: "dutyTenThousand_cpu_s", value: duty.tenThousand },
  { what: "their cost against the days a leak lives", key: "dutyByDays_exponent", value: duty.byDays },
  { what: "their cost against the runs", key: "dutyByRuns_exponent", value: duty.byRuns, target: "1" },
);
say("looking back");
const back = await costOfLookback();
rows.push(
  {
    what: "four unknowns: effective samples a second of processor time",
    key: "fourUnknownsEffective_per_s",
    value: back.effectivePerSecond,
  },
  {
    what: "two unknowns: 2000 guesses over their quadrature",
    key: "twoUnknownsOverQuadrature_ratio",
    value: back.overQuadrature,
  },
  {
    what: "a visit looked back at, 4000 guesses, week prepared",
    key: "lookBack_s",
    value: back.visit,
    target: "<= 2",
  },
  { what: "the same by threads of three visits before", key: "lookBackAgain_s", value: back.again },
  { what: "early answer, nothing prepared", key: "lookBackEarly_s", value: back.early, target: "<= 0.3" },
  {
    what: "the page asked anew in headless Chromium, 4000 guesses, week prepared",
    key: "lookBackInBrowser_s",
    value: await costInBrowser(),
    target: "<= 4",
  },
);
const count = process.argv.includes("--ensemble-200") ? 200 : 12;
say(`an ensemble of ${count} members`);
const members = await costOfEnsemble(count);
rows.push(
  {
    what: `ensemble of the demo case, build varied, members a second on ${members.cores} cores`,
    key: "ensembleMembers_per_s",
    value: members.perSecond,
  },
  { what: "one member, processor time", key: "ensembleMember_cpu_s", value: members.each },
  {
    what: "one member over a healthy year",
    key: "ensembleMemberOverYear_ratio",
    value: members.each / year.whole,
  },
  { what: "drawing one member", key: "ensembleDraw_cpu_ms", value: members.drawing },
  {
    what: "200 members at that processor time, were all cores free",
    key: "ensemble200Free_s",
    value: (201 * members.each) / members.cores,
    target: "< 120",
  },
  {
    what: `200 members by the clock${count === 200 ? "" : `, from the pace of ${count}`}`,
    key: "ensemble200_s",
    value: members.twoHundred,
    target: "< 120",
  },
);

if (process.argv.includes("--json"))
  console.log(JSON.stringify(Object.fromEntries(rows.map(({ key, value }) => [key, value]))));
else {
  const text = rows.map(({ what, key, value, target }) => [
    what,
    value.toPrecision(3),
    key.split("_").slice(1).join(" ").replace("cpu us", "µs CPU"),
    target ?? "",
  ]);
  const table = [["what", "value", "unit", "target"], ...text];
  const widths = [0, 1, 2].map((i) => Math.max(...table.map((row) => row[i]!.length)));
  for (const row of table)
    console.log(
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join("  ")
        .trimEnd(),
    );
}
