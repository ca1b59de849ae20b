// Ensembles: the same numbers for any number of workers, bands in order, nothing dropped, nothing left running.
import { describe, expect, it } from "vitest";
import { curveAt, valuesOf } from "../../src/ensemble/bands.ts";
import { ensemble } from "../../src/ensemble/ensemble.ts";
import { handOut, ownHands, type Hand } from "../../src/hands/hands.ts";
import { curveNames, keyOf } from "../../src/ensemble/outcome.ts";
import { quantiles } from "../../src/ensemble/quantiles.ts";
import { rankInputs } from "../../src/ensemble/ranks.ts";
import { varianceOf, varianceStudy } from "../../src/ensemble/variance.ts";
import { workbench } from "../../src/ensemble/workbench.ts";
import { readCase } from "../../src/inputs/case.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { simulate } from "../../src/history/simulate.ts";
import { few, quickLeak } from "./van.ts";

const timeout = 240_000;
const how = { members: 10, seed: 1, only: few, points: 40 };
const once = await ensemble(quickLeak, { ...how, workers: 2 });

/** Every bit of it, Infinity and the signs of zero included. */
const bits = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    part instanceof Float64Array
      ? [...new BigUint64Array(part.slice().buffer)].map(String)
      : typeof part === "number"
        ? String(new BigUint64Array(Float64Array.of(part).buffer)[0])
        : part,
  );

describe("an ensemble", () => {
  it("is bit for bit the same for 1, 2 and 3 workers, and for none", { timeout }, async () => {
    for (const workers of [1, 3])
      expect(bits(await ensemble(quickLeak, { ...how, workers }))).toBe(bits(once));
    const own = await handOut(
      once.members.map(({ values }) => ({ values })),
      () => ownHands(workbench()),
      { start: { caseData: quickLeak, varying: { only: few } }, workers: 1 },
    );
    expect(bits(own)).toBe(bits(once.outcomes.map((outcome) => ({ outcome }))));
  });

  it("has the case as written beside its members, as a history of its own has it", () => {
    const { events, end } = simulate(planOf(readCase(quickLeak)));
    expect(once.asWritten.end.running).toBe(end.running);
    for (const event of events)
      expect(
        once.asWritten.events.find((known) => keyOf(known) === keyOf(event))?.running,
      ).toBeLessThanOrEqual(event.running);
  });

  it("has the case as written within its bands where it varies about it", () => {
    for (const key of ["line pressure below demand", "first gulp of air"]) {
      const event = once.events.find((known) => known.key === key)!;
      const written = once.asWritten.events.find((known) => keyOf(known) === key)!;
      expect(event.share).toBe(1);
      expect(written.running).toBeGreaterThan(event.running[0]!);
      expect(written.running).toBeLessThan(event.running[4]!);
    }
    const { times, bands } = once.curves.running;
    const i = Math.floor(times.length / 4);
    const lost = curveAt(once.asWritten, "running", "lost", times[i]!);
    expect(lost).toBeGreaterThan(bands.lost[i]![0]!);
    expect(lost).toBeLessThan(bands.lost[i]![4]!);
  });

  it("has quantiles in order, for every event and curve; null only at the far end", () => {
    const inOrder = (band: readonly (number | null)[]) => {
      const known = band.map((value) => value ?? Infinity);
      expect([...known].sort((a, b) => a - b)).toEqual(known);
    };
    for (const { clock, running, odometer, lost } of once.events)
      [clock, running, odometer, lost].forEach(inOrder);
    for (const { bands, times, going } of Object.values(once.curves)) {
      expect(times).toHaveLength(40);
      expect(going[0]).toBe(1);
      for (const name of curveNames) bands[name].forEach(inOrder);
    }
  });

  it("loses nothing on the way: what stays never falls", () => {
    for (const name of ["lost", "slipEnergy", "damage"] as const)
      for (let q = 0; q < 5; q++) {
        const course = once.curves.running.bands[name].map((band) => band[q]!);
        for (let i = 1; i < course.length; i++) expect(course[i]).toBeGreaterThanOrEqual(course[i - 1]!);
      }
  });

  it("counts what had not happened as later than the end", () => {
    expect(quantiles([3, Infinity, 1, 2, Infinity])).toEqual([1.2, 2, 3, null, null]);
    expect(quantiles([Infinity, Infinity])).toEqual([null, null, null, null, null]);
    expect(quantiles([])).toEqual([null, null, null, null, null]);
    for (const { key, share, running } of once.events) {
      const values = valuesOf(once.outcomes, key, "running");
      expect(values).toHaveLength(10);
      expect(values.filter(Number.isFinite).length / 10).toBe(share);
      if (share < 0.5) expect(running[2]).toBeNull();
    }
  });

  it("refuses what is wrong before it hires anybody", async () => {
    await expect(ensemble(quickLeak, { ...how, members: 0 })).rejects.toMatchObject({
      code: "impossible-input",
    });
    await expect(ensemble(quickLeak, { ...how, workers: 0 })).rejects.toMatchObject({
      code: "impossible-input",
    });
    await expect(ensemble({}, how)).rejects.toMatchObject({ code: "bad-case" });
    await expect(ensemble(quickLeak, { ...how, only: ["nowhere"] })).rejects.toMatchObject({
      code: "bad-case",
    });
  });
});

describe("called off", () => {
  const threadsLeft = () =>
    process.getActiveResourcesInfo().filter((name) => /worker|messageport/i.test(name)).length;

  it("it stops at once, and no thread is left", { timeout }, async () => {
    const before = threadsLeft();
    const off = new AbortController();
    const done: number[] = [];
    const asked = ensemble(quickLeak, {
      ...how,
      members: 60,
      workers: 2,
      signal: off.signal,
      onProgress(n) {
        done.push(n);
        if (n === 2) off.abort();
      },
    });
    await expect(asked).rejects.toMatchObject({ name: "AbortError" });
    const soFar = done.length;
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(done.length).toBe(soFar);
    expect(soFar).toBeLessThan(6);
    expect(threadsLeft()).toBe(before);
  });

  it("before it began, it hires nobody", async () => {
    const reason = new Error("no time");
    await expect(
      handOut([1], () => expect.unreachable(), { start: 0, workers: 1, signal: AbortSignal.abort(reason) }),
    ).rejects.toBe(reason);
  });
});

describe("hands", () => {
  const counted = (answer: (message: unknown) => unknown) => {
    const book = { hired: 0, gone: 0 };
    const hire = (): Hand => {
      const hand = ownHands(answer);
      book.hired++;
      return { ...hand, dismiss: () => (book.gone++, hand.dismiss()) };
    };
    return { book, hire };
  };

  it("share the tasks, hand in the results in order, and go home", async () => {
    const { book, hire } = counted((message) => message);
    const done: number[] = [];
    const results = await handOut(["a", "b", "c", "d", "e"], hire, {
      start: "start",
      workers: 3,
      done: (_, task) => done.push(task),
    });
    expect(results).toEqual(["a", "b", "c", "d", "e"]);
    expect(done.sort()).toEqual([0, 1, 2, 3, 4]);
    expect(book).toEqual({ hired: 3, gone: 3 });
  });

  it("go home when one breaks down, and when there is nothing to do", async () => {
    const { book, hire } = counted((message) => {
      if (message === "bad") throw new Error("broke");
      return message;
    });
    await expect(handOut(["good", "bad", "good"], hire, { start: 0, workers: 2 })).rejects.toThrow("broke");
    expect(book).toEqual({ hired: 2, gone: 2 });
    expect(await handOut([], hire, { start: 0, workers: 2 })).toEqual([]);
    expect(book.hired).toBe(2);
  });
});

describe("what it hangs on", () => {
  it("is the hole, by ranks of the members", () => {
    const table = rankInputs(once, "line pressure below demand");
    expect(table.inputs.map(({ path }) => path).sort()).toEqual([...few].sort());
    const [first] = table.inputs;
    expect(first!.path).toBe("leak.diameter");
    expect(first!.correlation).toBeLessThan(-0.8); // larger is sooner
    expect(table.chance).toBeGreaterThan(0);
    for (const { correlation, interval, share } of table.inputs) {
      expect(Math.abs(correlation)).toBeLessThanOrEqual(1);
      expect(interval[0]).toBeLessThanOrEqual(interval[1]);
      expect(share >= 0 && share <= 1).toBe(true);
    }
    for (const { correlation } of rankInputs(once, "leak opens").inputs)
      expect(Number.isFinite(correlation)).toBe(true);
  });

  it("is the hole, by Sobol indices", { timeout }, async () => {
    const only = ["leak.diameter", "build.pump.slip"];
    const study = await varianceStudy(quickLeak, { rows: 4, seed: 1, only, workers: 2 });
    const table = varianceOf(study, "line pressure below demand");
    expect(table.rows + study.dropped).toBe(4);
    expect(table.inputs[0]!.path).toBe("leak.diameter");
    expect(table.inputs[0]!.total).toBeGreaterThan(5 * table.inputs[1]!.total);
  });
});
