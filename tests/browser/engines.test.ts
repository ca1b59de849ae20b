// One case in two engines: this Node's and the browser's. Their exp, log, sin and their kin differ in the last digit, everything
// else is the same to the bit, so a history may differ by what a last digit grows to.
import { join } from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { simulate } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { quickLeak } from "../ensemble/van.ts";
import { caseFile } from "../inputs/shipped.ts";

let browser: Browser;
let page: Page;

beforeAll(async () => {
  const bundle = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      minify: false,
      lib: { entry: join(import.meta.dirname, "../../src/index.ts"), formats: ["iife"], name: "sumpfall" },
    },
  });
  const [first] = Array.isArray(bundle) ? bundle : [bundle];
  const code = (first as { output: { code: string }[] }).output[0]!.code;
  const executablePath = process.env["CHROMIUM"] ?? "/usr/bin/chromium";
  browser = await chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-dev-shm-usage"] });
  page = await browser.newPage();
  await page.addScriptTag({ content: code });
}, 120_000);
afterAll(() => browser.close());

interface Told {
  readonly events: readonly {
    name: string;
    clutch?: string;
    clock: number;
    lost: number;
    temperature: number;
  }[];
  readonly trips: readonly {
    clock: number;
    lost: number;
    mass: number;
    hottest: number;
    slipEnergy: number;
  }[];
}
const tell = ({ events, trips }: Told): Told => ({
  events: events.map(({ name, clutch, clock, lost, temperature }) => ({
    name,
    ...(clutch ? { clutch } : {}),
    clock,
    lost,
    temperature,
  })),
  trips: trips.map(({ clock, lost, mass, hottest, slipEnergy }) => ({
    clock,
    lost,
    mass,
    hottest,
    slipEnergy,
  })),
});
const here = (data: unknown) => tell(simulate(planOf(readCase(data))));
const there = (data: unknown) =>
  page.evaluate(
    `(() => { const { readCase, planOf, simulate } = sumpfall; const tell = ${tell.toString()}; return tell(simulate(planOf(readCase(${JSON.stringify(data)})))); })()`,
  ) as Promise<Told>;

const cases: Record<string, unknown> = {
  "a hole that empties the van": quickLeak,
  "a pit in the taxi's return line, to the burn": caseData(caseFile("taxi-pit")),
  "the demo's first weeks": { ...(caseData(caseFile("demo")) as object), span: "30 days" },
};

/** Share by which two numbers differ. */
const apart = (a: number, b: number) => (a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b)));
const numbers = ({ clock, lost, temperature }: Told["events"][number]) => [clock, lost, temperature];

describe.each(Object.keys(cases))("%s", (name) => {
  let [mine, other] = [{ events: [], trips: [] } as Told, { events: [], trips: [] } as Told];
  beforeAll(async () => {
    [mine, other] = [here(cases[name]), await there(cases[name])];
  }, 120_000);
  const burns = () => mine.events.findIndex((event) => event.name.startsWith("damage"));
  const sooner = () => (burns() < 0 ? mine.events.length : burns());

  test("has the same events in the same order", () => {
    const names = ({ events }: Told) => events.map((event) => `${event.name} ${event.clutch ?? ""}`);
    expect(mine.events.length).toBeGreaterThan(0);
    expect(names(other)).toEqual(names(mine));
  });

  test("agrees to 1e-9 up to the first harm", () => {
    for (let i = 0; i < sooner(); i++)
      numbers(mine.events[i]!).forEach((value, k) =>
        expect(apart(value, numbers(other.events[i]!)[k]!), mine.events[i]!.name).toBeLessThan(1e-9),
      );
    const until = mine.events[burns()]?.clock ?? Infinity;
    mine.trips.forEach((trip, i) => {
      if (!(trip.clock < until)) return;
      for (const key of ["clock", "lost", "mass", "hottest"] as const)
        expect(apart(trip[key], other.trips[i]![key]), `${key} of trip ${i}`).toBeLessThan(1e-9);
    });
    if (burns() >= 0)
      expect(apart(mine.events[burns()]!.clock, other.events[burns()]!.clock)).toBeLessThan(1e-9);
  });

  // A burnt clutch may just crawl on or just stand. Of seven runs whose exponentials and their kin were wrong by a last digit at random, the
  // taxi's third burn came up to 1.4 s sooner in five and 5.9 s later in two, all that came before it within a millisecond: the last burn is compared by its order alone.
  test("and dates to 1e-7, losses to 1e-4 and half a kelvin before the last burn: a burning slip takes its steps by what the last one did", () => {
    const burnt = mine.events.findLastIndex((event) => event.name === "damage 1");
    mine.events
      .slice(0, burnt < 0 ? undefined : burnt)
      .forEach((event, i) =>
        numbers(event).forEach((value, k) =>
          expect(apart(value, numbers(other.events[i]!)[k]!), event.name).toBeLessThan(
            [1e-7, 1e-4, 1e-3][k]!,
          ),
        ),
      );
  });
});
