// What stands beside the tables of a look back: said where it holds, and only there.
import { describe, expect, test } from "vitest";
import { eventNotes, flowNotes, outsideNotes } from "../../demos/look-back/notes.ts";
import type { Telling } from "../../demos/look-back/told.ts";

const spread = (middle: number) => ({
  middle,
  half: [middle, middle] as const,
  nineTenths: [middle, middle] as const,
});
const event = (name: string, middle: number, early = 0) => ({
  name,
  chance: 1,
  when: spread(middle),
  early,
  since: spread(60),
});
const telling = (cause: string, events: readonly object[], flow: object | null = null) =>
  ({ answer: { causes: [{ cause, share: 0.98 }], events, flow } }) as unknown as Telling;

describe("beside the events", () => {
  test("what came before the opening is told with its share; what came after it is not", () => {
    const low = "level below the low mark";
    expect(eventNotes(telling("slow leak", [event(low, 10, 0.3)]))).toEqual([
      '"Below low mark" came before the leak opened in about 6 of 20 cases like this: the unit lacked that much from the start.',
    ]);
    expect(eventNotes(telling("slow leak", [event(low, 10, 0)]))).toEqual([]);
  });

  test("no drive before a slip is explained in a sudden loss, and nowhere else", () => {
    const before = [event("no drive", 10), event("first sustained slip", 20)];
    const after = [event("no drive", 20), event("first sustained slip", 10)];
    const explained = expect.stringContaining("can stand before a clutch has slipped") as string;
    expect(eventNotes(telling("line let go", before))).toContainEqual(explained);
    expect(eventNotes(telling("line let go", after))).not.toContainEqual(explained);
    expect(eventNotes(telling("slow leak", before))).not.toContainEqual(explained);
  });
});

describe("beside the flow", () => {
  test("a flow of nothing says why, running and parked; a flow says nothing", () => {
    const none = { hot: spread(0), parked: spread(0) };
    const [running, parked] = flowNotes(telling("line let go", [], none));
    expect(running).toMatch(/^Idling hot nothing runs: .* pump has no pressure/);
    expect(parked).toMatch(/^Parked nothing runs: .* parted line held has run out/);
    expect(flowNotes(telling("slow leak", [], none))[1]).toMatch(/stands no higher than the leak/);
    expect(flowNotes(telling("slow leak", [], { hot: spread(1e-9), parked: spread(1e-10) }))).toEqual([]);
    expect(flowNotes(telling("never filled", [], null))).toEqual([]);
  });
});

test("beside laws that were left it is said that the table of clutches tells of the guesses that were driven, and of nothing where none was", () => {
  const left = (outside: readonly string[]) => ({ answer: { outside } }) as unknown as Telling;
  expect(outsideNotes(left(["a law used at x = 2"]), 6)[0]).toMatch(
    /of the 6 driven .*"hottest steel" there/,
  );
  expect(outsideNotes(left([]), 6)).toEqual([]);
  expect(outsideNotes(left(["a law used at x = 2"]), 0)).toEqual([]);
});
