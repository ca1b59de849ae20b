// Mass and energy close in a history that has every flow in it: what the books count as it passes must be what the unit lost.
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { heatStored } from "../../src/history/ledger.ts";
import { simulate, type History, type Plan } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import { planOf } from "../../src/inputs/plan.ts";

const data = caseData(join(import.meta.dirname, "../../reference-data/cases/pinhole.json")) as {
  leak: object;
  week: { trips: object[] };
};

/**
 * The van loses fluid from the first morning on, stands nights with the leak open, is topped up, and slips in the end until it
 * no longer drives: two short trips a day, for two weeks at most.
 */
function plan(place: "supply-line" | "return-line" | "pan"): Plan {
  const given = readCase({
    ...data,
    leak: {
      ...data.leak,
      place,
      // On the pan low enough to lose by its own head; a tray that soon runs over, and a wind that empties it.
      height: "5 mm",
      diameter: place === "pan" ? "0.5 mm" : "0.6 mm",
      hiding: { capacity: "0.05 L", carryOff: "0.5 1/h" },
    },
    week: { trips: data.week.trips.slice(0, 10).map((trip) => ({ ...trip, duration: "8 min" })) },
    opens: { after: "8 h" },
    span: "14 days",
    entries: [{ kind: "top-up", date: "2024-03-04 20:00", volume: "0.5 qt" }],
  });
  return { ...planOf(given), fillShort: 1e-3 };
}

describe.each(["supply-line", "return-line", "pan"] as const)("a leak at the %s", (place) => {
  const wanted = plan(place);
  let history: History;
  beforeAll(() => {
    history = simulate(wanted);
  });
  const books = () => {
    const { end, ledger } = history;
    const heatIn =
      ledger.heatConverter + ledger.heatPump + ledger.heatGears + ledger.heatSlip + ledger.heatAdded;
    return {
      outside: end.hidden + end.onRoad + end.onGround,
      filled: ledger.massFilled + ledger.massAdded,
      heatIn,
      removed: ledger.heatToAir + ledger.heatToCoolant + ledger.heatLeaked,
      heat: Math.abs(ledger.heatStart) + heatIn,
    };
  };

  it("has every flow in its history: leak, top-up, a parked night, run-over, carry-off and slip", () => {
    const { end, ledger, events } = history;
    const { filled, heat } = books();
    expect(events.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["leak opens", "topped up", "hiding place full", "first sustained slip"]),
    );
    expect(end.clock).toBeGreaterThan(86400 + 7.5 * 3600);
    // A thousandth of any of them left out would open the balance a hundredfold further than it may.
    for (const mass of [ledger.massAdded, ledger.massLeaked, end.hidden, end.onRoad, end.onGround])
      expect(mass / filled).toBeGreaterThan(1e-4);
    const heats = [
      ledger.heatConverter,
      ledger.heatPump,
      ledger.heatGears,
      ledger.heatSlip,
      ledger.heatAdded,
      ledger.heatToAir,
      ledger.heatToCoolant,
      ledger.heatLeaked,
    ];
    for (const joules of heats) expect(Math.abs(joules) / heat).toBeGreaterThan(1e-4);
  });

  it("closes in mass: filled and added is inside, in the hiding place, on the road and on the ground", () => {
    const { end, closure } = history;
    const { filled, outside } = books();
    expect(Math.abs(filled - end.mass - outside) / filled).toBeLessThan(1e-9);
    expect(closure.mass).toBeLessThan(1e-9);
  });

  it("finds again outside what has leaked", () => {
    const { ledger, closure } = history;
    const { filled, outside } = books();
    expect(Math.abs(ledger.massLeaked - outside) / filled).toBeLessThan(1e-9);
    expect(closure.leaked).toBeLessThan(1e-9);
  });

  it("closes in energy: stored at first and brought in is stored at last and removed", () => {
    const { end, ledger, closure } = history;
    const { heatIn, removed, heat } = books();
    const stored = heatStored(wanted.unit.build, end);
    expect(Math.abs(ledger.heatStart + heatIn - stored - removed) / heat).toBeLessThan(1e-9);
    expect(closure.energy).toBeLessThan(1e-9);
  });
});
