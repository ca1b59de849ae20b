import fc from "fast-check";
import { expect, test } from "vitest";
import { gearFor, type ShiftPlan } from "../../src/physics/load/shift.ts";

const plan: ShiftPlan = { up: [5, 9, 14, 20], down: [3, 6.5, 11, 16.5], stretch: 3 };
const speed = fc.double({ min: 0, max: 50, noNaN: true });
const wish = fc.double({ min: -5, max: 4, noNaN: true });
const gear = fc.integer({ min: 1, max: 5 });

test("one step at a time, and never beyond the ends", () => {
  fc.assert(
    fc.property(gear, speed, wish, (g, v, a) => {
      const next = gearFor(plan, g, v, a);
      expect(Math.abs(next - g)).toBeLessThanOrEqual(1);
      expect(next).toBeGreaterThanOrEqual(1);
      expect(next).toBeLessThanOrEqual(5);
    }),
  );
});

test("never hunts: the gear shifted into is kept at the same speed and wish, or goes on the same way", () => {
  fc.assert(
    fc.property(gear, speed, wish, (g, v, a) => {
      const first = gearFor(plan, g, v, a);
      const second = gearFor(plan, first, v, a);
      expect((first - g) * (second - first)).toBeGreaterThanOrEqual(0);
    }),
  );
});

test("a driver who wants more is shifted up later", () => {
  expect(gearFor(plan, 1, 5.1, 0)).toBe(2);
  expect(gearFor(plan, 1, 5.1, 1)).toBe(1);
  expect(gearFor(plan, 3, 11.5, 0)).toBe(3);
  expect(gearFor(plan, 3, 6, 0)).toBe(2);
  expect(gearFor(plan, 3, 8, 2)).toBe(2);
});

test("reverse stays reverse; a plan that would hunt is refused", () => {
  expect(gearFor(plan, -1, 30, 0)).toBe(-1);
  expect(() => gearFor({ ...plan, down: [5, 6, 7, 8] }, 1, 4, 0)).toThrow(/shiftPlan\.down\[0\]/);
  expect(() => gearFor(plan, 1, NaN, 0)).toThrow(/speed/);
});
