// A unit that lacks nothing draws no air, slips nowhere and keeps its pressure, in the hardest pattern: twelve weeks of it in
// small here, and 100,000 miles by `npx tsx tests/hundred-thousand-miles.ts`. With less and less fluid it climbs the
// ladder that the trade knows. Both invented builds do.
import { describe, expect, it, test } from "vitest";
import { bayCard } from "../../src/bay/bay-card.ts";
import { simulate, type History } from "../../src/history/simulate.ts";
import { celsius, days, named, plan, qt, rounds, shifts, taxi, van } from "./van.ts";

/** Hard parcel rounds, twice a day and never the same in a week; a taxi's shifts, three a day. */
const hardRounds = rounds([7.5, 13], { hardness: 1, hilliness: 1, duration: 2400 }, 100);
const hardShifts = shifts([6, 11, 16.5], { hardness: 1, hilliness: 1, duration: 12600 }, 100);
const winter = celsius(-5);
const driven = [
  { what: "van in rounds", unit: van, week: hardRounds, span: days(14) },
  { what: "taxi in rounds", unit: taxi, week: hardRounds, span: days(14) },
  { what: "taxi in shifts", unit: taxi, week: hardShifts, span: days(7) },
];
const working = [driven[0]!, driven[2]!];

const sums = ({ trips }: History) => ({
  gas: Math.max(...trips.map(({ mostGas }) => mostGas)),
  pressure: Math.min(...trips.map(({ leastPressure }) => leastPressure)),
  margin: Math.min(...trips.map(({ leastMargin }) => leastMargin)),
  slip: trips.reduce((sum, { slipEnergy }) => sum + slipEnergy, 0),
});

describe.each(driven)(
  "a full $what, twenty running hours and more of a hard winter",
  ({ unit, week, span }) => {
    const history = simulate(plan(unit, week, winter, { span }));
    const { gas, pressure, margin, slip } = sums(history);

    it("runs that long without any event", () => {
      expect(history.end.running).toBeGreaterThan(18 * 3600);
      expect(history.endedBy).toBe("end of span");
      expect(history.events).toEqual([]);
    });

    it("draws no air, keeps its pressure and its margin, slips nowhere", () => {
      expect(gas).toBeLessThan(1.5 * unit.build.sump.pickup.baseGas);
      expect(pressure).toBe(1);
      expect(margin).toBeGreaterThan(1.3);
      expect(slip).toBe(0);
      for (const clutch of history.clutches) expect(clutch.slips, clutch.name).toBe(0);
    });

    it("wears in that time less than a hundredth of what ends a clutch", () => {
      for (const { name, damage } of history.clutches) expect(damage, name).toBeLessThan(0.02);
    });

    it("learns next to nothing", () => {
      expect(Math.abs(history.end.trim)).toBeLessThan(0.02 * unit.build.shiftControl.trimLimit);
    });

    it("reads as a healthy one in the bay", () => {
      for (const { test: name, condition, verdict } of bayCard(unit, 0).rows)
        expect(verdict, `${name}, ${condition}`).toBe("within");
    });
  },
);

describe.each(driven)("the $what in summer and spring, and in a hard frost", ({ unit, week }) => {
  test.each([celsius(-25), celsius(-12), celsius(20), celsius(38)])("at %d K", (air) => {
    const history = simulate(plan(unit, week, air, { span: days(3) }));
    expect(history.events.map(({ name }) => name)).toEqual([]);
  });
});

// Four days, since the turn that lets the pressure of the second rung sag comes on the third: in two it gulps and flares, and no more.
describe.each(working)("the ladder of the $what, four days of it", ({ unit, week }) => {
  const short = (quarts: number) =>
    simulate(plan(unit, week, winter, { span: days(4), fillShort: qt(quarts) }));
  const [one, two, three] = [1, 2, 3].map(short) as [History, History, History];

  it("a quart low is hardly felt: no slip, no loss of pressure", () => {
    expect(named(one, "level below the low mark")).toBeDefined();
    expect(sums(one).pressure).toBeGreaterThan(0.97);
    expect(named(one, "first sustained slip")).toBeUndefined();
    expect(one.endedBy).toBe("end of span");
  });

  it("two quarts low it gulps, sags or flares when cold or tilted", () => {
    expect(named(two, "first gulp of air")).toBeDefined();
    expect(named(two, "first flare") ?? named(two, "line pressure below demand")).toBeDefined();
  });

  // Common practice: three quarts or more low, it slips in most conditions, and clutches go within minutes to hours of driving.
  it("three quarts low it slips within its first hour and is burnt soon", () => {
    expect(named(three, "first sustained slip")!.running).toBeLessThan(3600);
    expect(named(three, "damage 1")).toBeDefined();
    expect(three.endedBy).toBe("no drive");
  });

  it("each rung is worse than the one before", () => {
    const rungs = [one, two, three].map(sums);
    for (let i = 1; i < rungs.length; i++) {
      expect(rungs[i]!.gas).toBeGreaterThan(rungs[i - 1]!.gas);
      expect(rungs[i]!.pressure).toBeLessThan(rungs[i - 1]!.pressure);
      expect(rungs[i]!.slip).toBeGreaterThan(rungs[i - 1]!.slip);
    }
    expect(rungs[2]!.pressure).toBeLessThan(0.5);
    expect(rungs[2]!.slip).toBeGreaterThan(1e5);
  });
});
