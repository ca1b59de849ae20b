import fc from "fast-check";
import { expect, test } from "vitest";
import { sloshEnvelope, sloshFrequency, sloshStep } from "../../src/physics/sump/slosh.ts";
import { between } from "../between.ts";

const dampings = fc.oneof(between(0, 3), fc.constant(1), between(0.999999, 1.000001));
const after = (s: number, rate: number, target: number, omega: number, damping: number, time: number) => {
  const state = new Float64Array([s, rate]);
  sloshStep(state, 0, target, omega, damping, time);
  return state;
};

test("two steps make one: the step is exact for every damping", () => {
  fc.assert(
    fc.property(
      between(-1, 1),
      between(-5, 5),
      between(-1, 1),
      between(0.5, 10),
      dampings,
      between(0, 3),
      between(0, 3),
      (s, rate, target, omega, damping, first, second) => {
        const once = after(s, rate, target, omega, damping, first + second);
        const half = after(s, rate, target, omega, damping, first);
        const twice = after(half[0]!, half[1]!, target, omega, damping, second);
        expect(Math.abs(once[0]! - twice[0]!)).toBeLessThan(1e-11);
        expect(Math.abs(once[1]! - twice[1]!)).toBeLessThan(1e-10);
      },
    ),
  );
});

test("the step satisfies its differential equation", () => {
  fc.assert(
    fc.property(
      between(-1, 1),
      between(-5, 5),
      between(0.5, 10),
      dampings,
      between(0, 2),
      (s, rate, omega, damping, t) => {
        const h = 1e-5;
        const before = after(s, rate, 0.2, omega, damping, t);
        const next = after(before[0]!, before[1]!, 0.2, omega, damping, h);
        const acceleration = omega * omega * (0.2 - before[0]!) - 2 * damping * omega * before[1]!;
        // Differences over h are off by half of h times the next derivative, a sixth of h² times the one after, and by rounding over h.
        const jerk = omega * omega * Math.abs(before[1]!) + 2 * damping * omega * Math.abs(acceleration);
        const snap = omega * omega * Math.abs(acceleration) + 2 * damping * omega * jerk;
        expect(Math.abs((next[1]! - before[1]!) / h - acceleration)).toBeLessThan(
          h * (jerk + h * snap) + 1e-7,
        );
        expect(Math.abs((next[0]! - before[0]!) / h - before[1]!)).toBeLessThan(
          h * (Math.abs(acceleration) + h * jerk) + 1e-7,
        );
      },
    ),
  );
});

test("the envelope is the largest distance that a fine march finds", () => {
  fc.assert(
    fc.property(between(-1, 1), between(-5, 5), between(0.5, 10), dampings, (s, rate, omega, damping) => {
      const envelope = sloshEnvelope(s, rate, 0.1, omega, damping);
      let largest = Math.abs(s - 0.1);
      for (let i = 1; i <= 4000; i++)
        largest = Math.max(
          largest,
          Math.abs(after(s, rate, 0.1, omega, damping, (i * 10) / omega / 4000)[0]! - 0.1),
        );
      expect(largest).toBeLessThanOrEqual(envelope + 1e-12);
      expect(envelope - largest).toBeLessThan(2e-5 * Math.max(1, envelope));
    }),
    { numRuns: 60 },
  );
});

test("undamped slosh keeps its amplitude, damped slosh comes to rest on the target", () => {
  const still = after(0.3, -1, 0.1, 4, 0, 1000);
  expect(16 * (still[0]! - 0.1) ** 2 + still[1]! ** 2).toBeCloseTo(16 * 0.04 + 1, 9);
  for (const damping of [0.05, 0.3, 1, 4]) {
    const rest = after(0.3, -1, 0.1, 4, damping, 1000);
    expect(rest[0]).toBeCloseTo(0.1, 9);
    expect(rest[1]).toBeCloseTo(0, 9);
  }
});

test("a dry pan does not slosh, a deep one follows the deep-water law, a shallow one √(g h)/2L", () => {
  expect(sloshFrequency(0.4, 0)).toBe(0);
  expect(sloshFrequency(0.4, -1)).toBe(0);
  expect(sloshFrequency(0.4, 100)).toBeCloseTo(Math.sqrt((9.80665 * Math.PI) / 0.4), 10);
  expect(sloshFrequency(0.4, 1e-6)).toBeCloseTo((Math.PI * Math.sqrt(9.80665e-6)) / 0.4, 10);
  expect([...after(0.3, 2, 0.1, 0, 0.2, 5)]).toEqual([0.3, 0]);
  expect(() => sloshFrequency(0, 0.1)).toThrow();
  expect(() => sloshFrequency(0.4, NaN)).toThrow();
});
