// How well the duty-averaged histories agree with the trip-resolved ones, over cases drawn by seed: `npm run agree`, some minutes.
// Prints, case by case, events apart by over 0.5 % of the running hours, and beside that by how much trip-resolved histories with
// halved steps differ from the usual ones. `npm run agree -- --kept file.json` keeps the trip-resolved results for the next run.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { toldDates } from "../src/duty/told.ts";
import { prepareDuty } from "../src/duty/prepare.ts";
import { simulate } from "../src/history/simulate.ts";
import { compare, dated, isBeforeSlips, type Dated } from "./duty/apart.ts";
import { drawWeek } from "./duty/cases.ts";

const option = (name: string, otherwise: string) => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? otherwise : process.argv[at + 1]!;
};
const weeks = Number(option("weeks", "13"));
const perWeek = Number(option("cases", "5"));
const first = Number(option("first", "1"));
const keptIn = option("kept", "");

interface Kept {
  readonly usual: readonly Dated[];
  readonly halved: readonly Dated[];
}
const kept: Record<string, Kept> =
  keptIn !== "" && existsSync(keptIn)
    ? (JSON.parse(readFileSync(keptIn, "utf8")) as Record<string, Kept>)
    : {};
const hoursOf = (seconds: number) => (seconds / 3600).toFixed(3);
const nameOf = ({ name, clutch }: { name: string; clutch?: string }) =>
  clutch === undefined ? name : `${name}, ${clutch}`;
const percent = (share: number) => `${(100 * share).toFixed(2)} %`;
const quantile = (values: readonly number[], q: number) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(q * values.length))] ?? Number.NaN;

const all: { name: string; share: number; halved: number | undefined; told: boolean; width: number }[] = [];
const apart: { name: string; share: number }[] = [];
let [handedOver, parted, count, missing, more, halvedMissing] = [0, 0, 0, 0, 0, 0];
const preparations: number[] = [];
for (let seed = first; seed < first + weeks; seed++) {
  const { week, air, cases } = drawWeek(seed, perWeek);
  const from = process.cpuUsage();
  const prepared = prepareDuty(cases[0]!.plan.unit, week, undefined, air);
  const spent = process.cpuUsage(from);
  preparations.push((spent.user + spent.system) / 1e6);
  if (prepared === undefined) continue;
  for (const { name, plan } of cases) {
    const reference = (kept[name] ??= {
      usual: dated(simulate(plan).events),
      halved: dated(simulate({ ...plan, fine: 0.025, finer: 0.01 }).events),
    });
    if (keptIn !== "") writeFileSync(keptIn, JSON.stringify(kept));
    const { history: duty, dates } = toldDates(prepared, plan);
    count++;
    if (duty.handedOver === "all") handedOver++;
    if (duty.handedOver === "end") parted++;
    const { both, missing: lacks, more: extra } = compare(reference.usual, dated(duty.events));
    const steps = compare(reference.usual, reference.halved);
    halvedMissing += steps.missing.length + steps.more.length;
    for (const { event, share } of steps.both) apart.push({ name: event.name, share });
    missing += lacks.length;
    more += extra.length;
    console.log(
      `${name}: ${both.length} events, worst ${percent(Math.max(0, ...both.map(({ share }) => Math.abs(share))))}${duty.handedOver === "nothing" ? "" : `, ${duty.handedOver} handed over`}`,
    );
    for (const { event, other, share } of both) {
      const halved = steps.both.find((step) => step.event.name === event.name)?.share;
      const { earliest, latest } = dates.find((date) => nameOf(date.event) === event.name)!;
      all.push({
        name: event.name,
        share,
        halved,
        told: earliest <= 1.0001 * event.running && event.running <= 1.0001 * latest,
        width: (latest - earliest) / event.running,
      });
      if (Math.abs(share) > 0.005)
        console.log(
          `    ${event.name}: ${hoursOf(event.running)} h, ${(1000 * event.lost).toFixed(0)} g; averaged ${hoursOf(other.running)} h, ${(1000 * other.lost).toFixed(0)} g: ${percent(share)}; halved steps ${halved === undefined ? "without it" : percent(halved)}`,
        );
    }
    for (const event of lacks)
      console.log(`    only trip-resolved: ${event.name} at ${hoursOf(event.running)} h`);
    for (const event of extra) console.log(`    only averaged: ${event.name} at ${hoursOf(event.running)} h`);
  }
}

const summary = (name: string, shares: readonly number[]) =>
  console.log(
    `${name}: ${shares.length} events, median ${percent(quantile(shares, 0.5))}, 95th of a hundred ${percent(quantile(shares, 0.95))}, worst ${percent(Math.max(0, ...shares))}, ${shares.filter((share) => share > 0.01).length} over 1 %`,
  );
const size = ({ share }: { share: number }) => Math.abs(share);
/** The trip-resolved history itself moves by so much with halved steps that nothing can be said of the event. */
const hangs = ({ halved }: { halved: number | undefined }) =>
  halved === undefined || Math.abs(halved) > 0.005;
console.log(
  `\n${count} cases, ${handedOver} handed over, of ${parted} the end; preparation ${quantile(preparations, 0.5).toFixed(2)} s, at most ${Math.max(...preparations).toFixed(2)} s`,
);
for (const name of [...new Set(all.map((event) => event.name))].sort())
  summary(`  ${name}`, all.filter((event) => event.name === name).map(size));
summary("before any slip", all.filter(({ name }) => isBeforeSlips(name)).map(size));
summary("from the first slip on", all.filter(({ name }) => !isBeforeSlips(name)).map(size));
summary("all, averaged against trip-resolved", all.map(size));
summary(
  "  of these, where halved steps move the trip-resolved event by over 0.5 %",
  all.filter(hangs).map(size),
);
summary("  and the others", all.filter((event) => !hangs(event)).map(size));
summary("halved steps against usual ones, both trip-resolved", apart.map(size));
const apartByMore = all.filter((event) => size(event) > 0.01);
console.log(
  `of the ${apartByMore.length} over 1 %, ${apartByMore.filter(({ told }) => told).length} trip-resolved dates lie in the spread told with 5 g more or less; of all spreads ${all.filter(({ width }) => width > 0.01).length} are wider than 1 %`,
);
console.log(
  `events that only one has: ${missing} trip-resolved, ${more} averaged; with halved steps ${halvedMissing}`,
);
