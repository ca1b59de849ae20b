// A line that let go, dated by the clock or by the odometer: what is told finely must date finely, in hours and in miles.
import { beforeAll, describe, expect, test } from "vitest";
import { coordinateAt, valueAt } from "../../src/chance/belief.ts";
import { randomBits } from "../../src/chance/random.ts";
import { wayOf } from "../../src/lookback/along.ts";
import { answerOf } from "../../src/lookback/answer/answer.ts";
import { place } from "../../src/lookback/common.ts";
import { explanationsOf } from "../../src/lookback/causes.ts";
import type { Evidence, When } from "../../src/lookback/evidence.ts";
import { lookBack } from "../../src/lookback/lookback.ts";
import { askedOf, benchOf, type Bench } from "../../src/lookback/question.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { celsius, days } from "../emerge/van.ts";
import { lossShop } from "./grown-otherwise.ts";

let shop: Bench;
beforeAll(() => {
  shop = lossShop();
});

const hour = 3600;
const km = 1000;
/** A Tuesday at noon. Every workday has one trip of 11.0 km from 6:30 to 6:50 (New European Driving Cycle, 1180 s, 11.007 km). */
const at = days(120) + 12 * hour;
const morning = days(120) + 6.5 * hour;
const whole = 900 * km;
/** What a torn line lets go until the pump draws air: about all that can be missing. */
const gone = 4.6e-3;

const visited = (when: When): Visit => ({
  ...shop.visit,
  at,
  shield: false,
  evidence: [
    { name: "missing", kind: "fluid missing", at, volume: gone, error: 0.15e-3 },
    { name: "spot", kind: "first spot", when },
  ] satisfies Evidence[],
});

/** Middle nine tenths of when it opened and of when the spot came, and how far that was before the visit [m]. */
async function looked(when: When) {
  const visit = visited(when);
  const posterior = await lookBack(visit, shop.prepared, {
    guesses: 1000,
    moves: 3,
    seed: 5,
    workers: 1,
    beliefs: {
      causes: {
        "slow leak": 0,
        "older leak": 0,
        "never filled": 0,
        "cooler leaks into the coolant": 0,
        "worn pump or seals": 0,
        "wrong or aged fluid": 0,
      },
    },
  });
  const { opened, events, parting, missing } = answerOf(posterior);
  const spot = events.find(({ name }) => name === "first spot on the ground")!.when!.nineTenths;
  const way = wayOf(visit);
  return {
    opened: opened!.when.nineTenths,
    spot,
    ago: spot.map((clock) => whole * (1 - way(clock))),
    parting,
    missing,
    events,
  };
}

/** Since then it has stood: where nothing runs, a torn line loses next to nothing, and nobody can tell when in the night it tore. */
const parked = morning - 24 * hour + 1180;

describe("a spot that came at once", { timeout: 120_000 }, () => {
  test("told by the odometer, six kilometres before the visit and right to one: there to within four, on this morning's trip", async () => {
    const [from, to] = [whole - 6.5 * km, whole - 5.5 * km];
    const { opened, spot, ago, parting } = await looked({ from, to, error: 1 * km, of: whole });
    expect(ago[0]).toBeLessThan(10 * km);
    expect(ago[1]).toBeGreaterThan(2 * km);
    expect(spot[0]).toBeGreaterThan(morning);
    expect(spot[1]).toBeLessThan(morning + 1180);
    expect(opened[0]).toBeGreaterThan(parked);
    expect(opened[1]).toBeLessThan(morning + 1180);
    // Where one cause alone is believed in, nothing is left to part.
    expect(parting).toMatchObject({ apart: true, share: 1, look: null });
  });

  test("told by the clock, twenty to seven and right to ten minutes: to the half hour", async () => {
    const told = morning + hour / 6;
    const { opened, spot, missing, events } = await looked({ from: told - 300, to: told + 300, error: 600 });
    expect(spot[0]).toBeGreaterThan(told - 0.5 * hour);
    expect(spot[1]).toBeLessThan(told + 0.5 * hour);
    expect(opened[0]).toBeGreaterThan(parked);
    expect(opened[1]).toBeLessThan(told + 0.5 * hour);
    // The curve falls within the trip, and not from one even moment to the next: those lie two and a half days apart.
    const middle = missing.bands.map((band) => band[2]);
    const left = missing.at[middle.findLastIndex((volume) => volume < 0.1 * gone)]!;
    const lost = missing.at[middle.findIndex((volume) => volume > 0.9 * gone)]!;
    expect(left).toBeGreaterThan(morning - 60);
    expect(lost - left).toBeLessThan(1180 + 60);
    expect(missing.at.filter((moment) => moment > morning && moment < morning + 1180).length).toBeGreaterThan(
      10,
    );
    // Moments in their order, and nothing runs back in.
    expect([...missing.at].sort((a, b) => a - b)).toEqual(missing.at);
    expect(middle.every((volume, i) => i === 0 || volume >= middle[i - 1]! - 1e-9)).toBe(true);
    // What is told of it after the opening is minutes, however little is known of when that was.
    const empty = events.find(({ name }) => name === "no drive")?.since;
    if (empty !== undefined && empty !== null) expect(empty.nineTenths[1]).toBeLessThan(1180);
    const first = events.find(({ name }) => name === "first spot on the ground")!;
    expect(first.early).toBe(0);
    expect(first.since!.nineTenths[1]).toBeLessThan(60);
  });
});

test("an event of a sudden loss comes at the first moment at which enough is lacking, what was poured in before taken off; a spot hangs on what is lost alone", () => {
  const poured = { at: at - days(1), volume: 0.6e-3, error: 0, temperature: celsius(20), by: "the shop" };
  /** Lacking so much it no longer drives [kg]: a mark of this test's own. */
  const enough = 1;
  const noDrive = { name: "no drive", condition: "", airs: [0], moments: [[{ critical: enough }]] };
  const prepared = { ...shop.prepared, thresholds: [noDrive] } as unknown as typeof shop.prepared;
  let [late, undone] = [0, 0];
  for (const added of [
    [],
    [poured],
    [poured, { ...poured, at: at - 1800 }],
    [{ ...poured, volume: 5e-3, at }],
  ]) {
    const visit: Visit = { ...shop.visit, at, added };
    const explanation = explanationsOf(visit).find(({ cause }) => cause === "line let go")!;
    for (let i = 0; i < 60; i++) {
      const random = randomBits(2, i);
      const values = Float64Array.from(explanation.unknowns, ({ belief }) =>
        valueAt(belief, coordinateAt(belief, random() + 2 ** -33)),
      );
      const bench = benchOf(visit, prepared, shop.shown);
      const { course, opensAt, soakedUp, added: really } = askedOf(bench, explanation, values);
      const { density15 } = visit.unit.fluid;
      const { lostBy, when, over } = course();
      const filling = density(density15, visit.unit.build.fillTemperature);
      const before = (values[place.short]! - values[place.harder]!) * filling;
      /** Lacking over the mark [kg]. */
      const beyond = (clock: number) =>
        really.reduce(
          (mass, one) => mass - (one.at <= clock ? one.volume * density(density15, one.temperature) : 0),
          before + lostBy(clock) - enough,
        );
      const stands = over();
      // In a stand a hundredth of a second of the plan's clock, of which the visit's may take two.
      for (let clock = Math.min(stands - 0.02, at); clock > opensAt; clock -= 3600)
        expect(beyond(clock)).toBeLessThan(1e-9);
      if (stands < Infinity) {
        expect(stands).toBeGreaterThanOrEqual(opensAt);
        expect(stands).toBeLessThanOrEqual(at);
        expect(beyond(stands + 1e-5)).toBeGreaterThan(-1e-9);
        if (added.length > 0 && stands > poured.at) late++;
        if (beyond(at) < 0) undone++;
      }
      const spot = when("first spot on the ground");
      const runsOut = soakedUp * density15;
      if (spot === Infinity) expect(lostBy(at)).toBeLessThan(runsOut);
      else {
        expect(lostBy(spot + 1e-5)).toBeGreaterThan(runsOut - 1e-9);
        expect(lostBy(spot - 0.02)).toBeLessThan(runsOut + 1e-9);
      }
    }
  }
  expect(late).toBeGreaterThan(5);
  expect(undone).toBeGreaterThan(5);
});

describe("the way", () => {
  test("rises from nothing to all of it, trip by trip, and rests overnight", () => {
    const way = wayOf({ ...shop.visit, at });
    expect(way(0)).toBe(0);
    expect(way(at)).toBe(1);
    expect(way(morning)).toBe(way(morning - 12 * hour));
    expect(way(morning + 590) - way(morning)).toBeCloseTo((way(at) - way(morning)) / 2, 3);
  });
});
