// A towed trailer: hotter fluid and more slip heat on its days, and the van itself on all others.
import { describe, expect, it } from "vitest";
import { simulate } from "../../src/history/simulate.ts";
import type { Towed } from "../../src/history/towing.ts";
import { readCase } from "../../src/inputs/case.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { changed, faultsWith } from "../inputs/shipped.ts";
import { celsius, days, plan, rounds, van } from "../emerge/van.ts";

const week = rounds([8], { hardness: 1, hilliness: 1, duration: 900 }, 1);
const trailer = { mass: 1800, dragArea: 1.5, rolling: 0.012, rotating: 1.02 };
const towed = (more: Partial<Towed> = {}): Towed => ({
  trailer,
  days: [0, 1, 2, 3, 4, 5, 6],
  from: 0,
  until: Infinity,
  ...more,
});
const drive = (load?: Towed) =>
  simulate(plan(van, week, celsius(10), { span: days(3), ...(load === undefined ? {} : { towed: load }) }));
const alone = drive();

describe("a trailer", () => {
  it("makes the same trip hotter, and the books close", () => {
    const { trips, closure, ledger } = drive(towed());
    trips.forEach((trip, i) => expect(trip.hottest).toBeGreaterThan(alone.trips[i]!.hottest + 1));
    expect(ledger.heatConverter).toBeGreaterThan(alone.ledger.heatConverter);
    expect(Math.max(closure.mass, closure.leaked, closure.energy)).toBeLessThan(1e-9);
  });

  it("hangs on its weekdays and between its dates alone", () => {
    for (const load of [towed({ days: [1] }), towed({ from: days(1), until: days(2) })]) {
      const { trips } = drive(load);
      expect(trips[0]).toEqual(alone.trips[0]);
      expect(trips[1]!.hottest).toBeGreaterThan(alone.trips[1]!.hottest + 1);
      expect(Math.abs(trips[2]!.hottest - alone.trips[2]!.hottest)).toBeLessThan(1);
    }
  });

  it("that is never towed changes nothing, and the unit that was handed in stays as it was", () => {
    const mass = van.build.vehicle.mass;
    expect(drive(towed({ days: [] })).trips).toEqual(alone.trips);
    expect(van.build.vehicle.mass).toBe(mass);
  });
});

describe("in a case", () => {
  const load = { mass: "1800 kg", dragArea: "1.5 m2", rolling: 0.012 };

  it("is read with its days and dates", () => {
    const { towed: read } = planOf(
      readCase(
        changed(
          ["start.date", "2024-03-04"],
          ["towed", { ...load, days: ["Sat", "Sun"], from: "2024-03-06", until: "2024-03-20 12:00" }],
        ),
      ),
    );
    expect(read).toEqual({ trailer, days: [5, 6], from: days(2), until: days(16.5) });
    // A date without a time of day counts to its end.
    const { towed: whole } = readCase(
      changed(["start.date", "2024-03-04"], ["towed", { ...load, days: ["Sat"], until: "2024-03-20" }]),
    );
    expect(whole!.until).toBe(days(17) - 1);
    const oneDay = { ...load, days: ["Sat"], from: "2024-03-09 08:00", until: "2024-03-09" };
    expect(readCase(changed(["start.date", "2024-03-04"], ["towed", oneDay])).towed!.until).toBe(days(6) - 1);
    expect(planOf(readCase(changed(["towed", load]))).towed).toEqual(towed());
  });

  it.each([
    [{ mass: "0 kg" }, "towed.mass"],
    [{ mass: 1800 }, "towed.mass"],
    [{ from: "soon" }, "towed.from"],
    [{ from: "2024-04-06", until: "2024-04-05" }, "towed.until"],
    [{ days: "sundays" }, "towed.days"],
  ])("%j is refused", (more, path) => {
    expect(faultsWith(["towed", { ...load, ...more }]).map((fault) => fault.path)).toEqual([path]);
  });
});
