// A report says when nothing was driven, and when the drive asks for more than the vehicle does; else it keeps quiet.
import { describe, expect, test } from "vitest";
import { drivenText } from "../../demos/report/driven.ts";
import { alone } from "../../demos/report/said.ts";
import { everyDay, weekOf } from "../../src/driving/pattern.ts";
import { traceFrom } from "../../src/driving/trace-from.ts";
import { simulate } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { changed } from "../inputs/shipped.ts";

const tell = alone("US");
const given = readCase(changed(["leak", null], ["span", "2 days"], ["opens", undefined]));
const history = (speed: number) => {
  const up = Array.from({ length: 100 }, (_, i) => (speed * (i + 1)) / 100);
  const speeds = [0, ...up, ...Array.from({ length: 200 }, () => speed), ...up.toReversed(), 0];
  const trace = traceFrom({ name: "out", time: speeds.map((_, i) => i), speed: speeds });
  const week = weekOf([{ trace, startsAt: 28800, days: everyDay }]);
  return [week, simulate({ ...planOf(given), week })] as const;
};

describe("what is said about the driving", () => {
  test("nothing, when the vehicle follows", () => {
    const [week, driven] = history(25);
    expect(driven.trips).toHaveLength(2);
    expect(drivenText(week, 0, driven, tell)).toEqual([]);
  });

  test("that the drive is beyond the vehicle", () => {
    const [week, driven] = history(90);
    expect(drivenText(week, 0, driven, tell)).toEqual([
      expect.stringMatching(/^The drive asks for more .* mi that/),
    ]);
  });

  test("that there was none", () => {
    const week = weekOf([]);
    const stood = simulate({ ...planOf(given), week });
    expect(drivenText(week, 0, stood, tell)).toEqual([expect.stringMatching(/no trips: the vehicle stood/)]);
  });
});
