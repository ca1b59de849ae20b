// The same plan gives the same numbers, to the bit, whatever ran before or between.
import { describe, expect, it } from "vitest";
import { simulate, type Plan } from "../../src/history/simulate.ts";
import { celsius, days, gap, hole, leaking, plan, qt, rounds, van } from "./van.ts";

const week = rounds([8, 13], { hardness: 1, hilliness: 1, duration: 1200 }, 5);
/** To the end of the van, with a top-up on the way: every part of a history has its turn. */
const burning: Plan = plan({ ...van, leak: leaking("supply-line", hole(0.4e-3)) }, week, celsius(5), {
  topUps: [{ at: days(1), volume: qt(0.5), temperature: celsius(15) }],
});
const other: Plan = plan({ ...van, leak: leaking("pan", gap(60e-6), { height: 0.01 }) }, week, celsius(-15), {
  span: days(2),
  fillShort: qt(1.5),
});

describe("the same plan", () => {
  const first = simulate(burning);

  it("gives the same history twice", () => {
    expect(first.endedBy).toBe("no drive");
    expect(simulate(burning)).toStrictEqual(first);
  });

  it("also after and between others, whose leftovers it must not see", () => {
    const before = simulate(other);
    let inside: unknown;
    const again = simulate(burning, () => {
      inside ??= simulate(other);
      return true;
    });
    expect(inside).toStrictEqual(before);
    expect(again).toStrictEqual(first);
    expect(simulate(other)).toStrictEqual(before);
  });

  it("from a week built anew", () => {
    const anew = rounds([8, 13], { hardness: 1, hilliness: 1, duration: 1200 }, 5);
    expect(simulate({ ...burning, week: anew })).toStrictEqual(first);
  });

  it("and leaves plan and unit as they were", () => {
    const copy = structuredClone(burning);
    simulate(burning);
    expect(burning).toStrictEqual(copy);
  });
});

describe("another seed", () => {
  it("gives another history", () => {
    const elsewhere = rounds([8, 13], { hardness: 1, hilliness: 1, duration: 1200 }, 1005);
    expect(simulate({ ...burning, week: elsewhere }).end.distance).not.toBe(simulate(burning).end.distance);
  });
});
