// What a visit's file says of money and of the other joints.
import { expect, test } from "vitest";
import { pathsIn, readWith } from "./visits.ts";

const prices = {
  currency: "crowns",
  line: 60,
  "line set": 180,
  "fluid and filter": 110,
  cooler: 240,
  converter: 520,
  clutches: 2400,
  "coming back": 350,
};
const year = 31_557_600;

test("prices are numbers in the file's own money; without them none are made up", () => {
  expect(readWith({}).prices).toBeNull();
  const { "coming back": comingBack, ...rest } = prices;
  expect(readWith({ prices }).prices).toEqual({ ...rest, comingBack });
});

test("joints: what is not told of their life is assumed, and told as assumed", () => {
  const told = readWith({ lines: { joints: 3, age: "9 years" } });
  expect(told.lines).toEqual({
    joints: 3,
    age: 9 * year,
    toHold: 2 * year,
    life: { scale: 16 * year, shape: 3 },
  });
  expect(told.assumptions.filter(({ path }) => path === "lines")).toHaveLength(2);
  const whole = readWith({
    lines: { joints: 3, age: "9 years", toHold: "1 year", life: "12 years", shape: 2.5 },
  });
  expect(whole.lines).toMatchObject({ toHold: year, life: { scale: 12 * year, shape: 2.5 } });
  expect(whole.assumptions.filter(({ path }) => path === "lines")).toHaveLength(0);
  expect(readWith({}).lines).toBeNull();
});

test.each([
  [{ prices: { ...prices, line: -3 } }, ["prices.line"]],
  [{ prices: { ...prices, line: "60 $" } }, ["prices.line"]],
  [{ prices: { ...prices, currency: "" } }, ["prices.currency"]],
  [{ lines: { joints: 2.5, age: "9 years" } }, ["lines.joints"]],
  [{ lines: { joints: 3, age: "9 qt" } }, ["lines.age"]],
  [{ lines: { joints: 3 } }, ["lines.age"]],
])("%j is refused by its path", (more, paths) => {
  expect(pathsIn(more)).toEqual(paths);
});
