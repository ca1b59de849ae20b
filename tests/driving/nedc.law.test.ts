import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { nedc, nedcExtraUrban, nedcUrban } from "../../src/driving/nedc.ts";

const rowsOf = (file: string) =>
  readFileSync(`reference-data/nedc/${file}.csv`, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((row) => row.split(",").map(Number));

test.each([
  ["urban", nedcUrban, 26],
  ["extra-urban", nedcExtraUrban, 22],
] as const)("the %s part is the table of the regulation", (file, trace, count) => {
  const rows = rowsOf(file);
  expect(rows).toHaveLength(count);
  expect([...trace.time]).toEqual(rows.map(([time]) => time));
  expect([...trace.speed]).toEqual(rows.map(([, kmh]) => kmh / 3.6));
});

test("the whole cycle is four urban parts and the extra-urban one, joined at rest", () => {
  expect(nedc.time[nedc.time.length - 1]).toBe(1180);
  for (const at of [195, 390, 585, 780]) expect(nedc.speed[nedc.time.indexOf(at)]).toBe(0);
  expect(nedc.time.every((time, i) => i === 0 || time > nedc.time[i - 1])).toBe(true);
});
