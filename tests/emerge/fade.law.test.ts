// "No pressure, no clutch, no harm" is the left end of one line: slip energy against the time over which the pressure falls.
// A pressure that comes and goes burns as surely as one that fades.
import { describe, expect, it } from "vitest";
import { fadeSweep, gulpTime } from "../../src/history/fade.ts";
import { steelCapacity } from "../../src/history/ledger.ts";
import { simulate } from "../../src/history/simulate.ts";
import { celsius, days, named, plan, qt, rounds, van } from "./van.ts";

const cruise = { gear: 2, speed: 14, grade: 0.05, temperature: celsius(90) };
const times = [0.05, 0.15, 0.5, 1.5, 5, 15, 50, 150, 500, 1500, 3600];
const rows = fadeSweep(van, cruise, times);
const fades = rows.filter(({ kind }) => kind === "falls once").map(({ energy }) => energy);
const gulps = rows.filter(({ kind }) => kind === "comes and goes");
/** Heat that brings the smallest pack of the gear from the fluid's temperature to 350 °C, where paper chars in a minute [J]. */
const charring =
  Math.min(...van.build.gears[cruise.gear]!.holds.map(({ clutch }) => steelCapacity(van.build, clutch))) *
  (350 - 90);

/** Slope of the energy over the time on two logarithmic axes, from the i-th time to the next. */
const slope = (i: number) => Math.log(fades[i + 1]! / fades[i]!) / Math.log(times[i + 1]! / times[i]!);

describe("a pressure that falls once", () => {
  it("costs the more the longer it takes, over five decades of time and more of energy", () => {
    for (let i = 1; i < fades.length; i++) expect(fades[i]!).toBeGreaterThan(fades[i - 1]!);
    expect(Math.log10(fades.at(-1)! / fades[0]!)).toBeGreaterThan(5);
  });

  it("in a valve's time costs joules: the belief is right there", () => {
    expect(fades[0]!).toBeLessThan(20);
    expect(fades[0]!).toBeLessThan(1e-3 * charring);
  });

  it("over minutes costs many times what chars the lining: it is wrong there", () => {
    expect(fades[times.indexOf(500)]!).toBeGreaterThan(5 * charring);
  });

  it("grows with the square of a short time and in proportion to a long one", () => {
    expect(slope(0)).toBeGreaterThan(1.4);
    expect(slope(0)).toBeLessThan(2.2);
    expect(slope(times.length - 2)).toBeGreaterThan(0.95);
    expect(slope(times.length - 2)).toBeLessThan(1.05);
  });
});

describe("a pressure that comes and goes", () => {
  it("costs nothing while it has not yet come back", () => {
    for (const { time, energy } of gulps) if (time <= gulpTime) expect(energy).toBeLessThan(20);
  });

  it("costs with every return what chars the lining after a few", () => {
    const after = gulps.find(({ time }) => time === 50)!.energy;
    expect(after).toBeGreaterThan(2 * charring);
  });

  it("costs in proportion to its returns, and more than a fade of the same time", () => {
    const perReturn = ({ time, energy }: (typeof gulps)[number]) => energy / (time / (2 * gulpTime));
    const many = gulps.find(({ time }) => time === 500)!;
    for (const row of gulps.filter(({ time }) => time >= 15)) {
      expect(row.energy).toBeGreaterThan(fades[times.indexOf(row.time)]!);
      expect(perReturn(row) / perReturn(many)).toBeGreaterThan(0.8);
      expect(perReturn(row) / perReturn(many)).toBeLessThan(1.25);
    }
  });
});

describe.each([1, 7])("on the road with too little fluid and no leak at all, for %d days", (span) => {
  // The least shortage, in steps of a twentieth of a quart, that burns a clutch in that time.
  const week = rounds([8], { hardness: 1, hilliness: 1, duration: 1800 });
  const history = (fillShort: number) =>
    simulate(plan(van, week, celsius(5), { span: days(span), fillShort }));
  let burnt = history(qt(2));
  for (let quarts = 2.05; !named(burnt, "damage 1") && quarts < 3.2; quarts += 0.05)
    burnt = history(qt(quarts));

  it("the first clutch that burns is looked at closely once, with the heat that burnt it", () => {
    const end = named(burnt, "damage 1")!;
    const [closeUp, ...more] = burnt.closeUps.filter(({ about }) => about === "damage 1");
    expect(more).toEqual([]);
    const shortly = closeUp!.looks.filter(({ clock }) => clock <= end.clock && clock > end.clock - 10);
    expect(shortly.length).toBeGreaterThan(20);
    expect(Math.max(...shortly.map(({ slipHeat }) => slipHeat))).toBeGreaterThan(1000);
  });

  it("a clutch burns while the pressure comes back again and again", () => {
    const end = named(burnt, "damage 1")!;
    const looks = burnt.closeUps
      .flatMap((closeUp) => closeUp.looks)
      .filter(({ clock }) => clock <= end.clock)
      .sort((a, b) => a.clock - b.clock);
    let returns = 0;
    let gone = false;
    for (const { linePressure, setPoint } of looks) {
      const left = linePressure / setPoint;
      if (gone && left > 0.95) returns++;
      gone = left < 0.5 || (gone && left <= 0.95);
    }
    expect(returns).toBeGreaterThanOrEqual(2);
  });
});
