// The two fidelities on a drawn week: every case that the seed draws, none left out. The whole account over sixty-five cases is
// `npm run agree`; here are as many as fit into a test. What is asked of them is what holds, not what one would wish: see DEVELOPERS.md.
import { beforeAll, describe, expect, it } from "vitest";
import { dutyHistory } from "../../src/duty/history.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { simulate } from "../../src/history/simulate.ts";
import { compare, dated, isBeforeSlips, type Apart } from "./apart.ts";
import { drawWeek } from "./cases.ts";

const SEEDS = [1];
const CASES = 8;
/** What an event may be apart by, as a share of its running hours. */
const WITHIN = 0.01;

const drawn = SEEDS.map((seed) => drawWeek(seed, CASES));
const prepared: Prepared[] = [];
const apart: Apart[] = [];
let events = 0;
let lacking = 0;
beforeAll(() => {
  for (const { week, air, cases } of drawn) {
    const ready = prepareDuty(cases[0]!.plan.unit, week, undefined, air)!;
    prepared.push(ready);
    for (const { plan } of cases) {
      const { both, missing } = compare(dated(simulate(plan).events), dated(dutyHistory(ready, plan).events));
      apart.push(...both);
      events += both.length + missing.length;
      lacking += missing.length;
    }
  }
}, 600_000);

const over = (list: readonly Apart[]) => list.filter(({ share }) => Math.abs(share) > WITHIN);
const told = (list: readonly Apart[]) =>
  list.map(
    ({ event, other }) =>
      `${event.name}: ${event.running.toFixed(0)} s, averaged ${other.running.toFixed(0)} s`,
  );

describe("over every drawn case", () => {
  it("before anything slips at most one event in thirty is apart by over 1 % of the running hours", () => {
    const early = apart.filter(({ event }) => isBeforeSlips(event.name));
    expect(early.length).toBeGreaterThan(35);
    expect(over(early).length / early.length, told(over(early)).join("\n")).toBeLessThan(1 / 30);
  });

  // A trip has another story every 5 to 20 g of loss. Measured over these eight: 6.5 g at the most (16 g while fast weeks were spread as their middle goes).
  it("and where both date one of these alike, up to 8 g less or more have been lost", () => {
    const alike = apart.filter(({ event, share }) => isBeforeSlips(event.name) && Math.abs(share) < 0.0005);
    expect(alike.length).toBeGreaterThan(30);
    for (const { event, other } of alike)
      expect(Math.abs(other.lost - event.lost), event.name).toBeLessThan(0.008);
  });

  it("of all events at most one in nine is", () => {
    expect(apart.length).toBeGreaterThan(80);
    expect(over(apart).length / apart.length, told(over(apart)).join("\n")).toBeLessThan(1 / 9);
  });

  it("half of all agree within 0.1 %, and one in seven at most is in the trip-resolved history alone", () => {
    const sizes = apart.map(({ share }) => Math.abs(share)).sort((a, b) => a - b);
    expect(sizes[sizes.length >> 1]!).toBeLessThan(0.001);
    expect(lacking / events).toBeLessThan(1 / 7);
  });
});

it("a prepared week is plain data: sent and come back it gives the same histories", () => {
  const copy = structuredClone(prepared[0]!);
  for (const { plan } of drawn[0]!.cases)
    expect(dutyHistory(copy, plan)).toEqual(dutyHistory(prepared[0]!, plan));
});
