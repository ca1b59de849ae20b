// The implicit step of a slip on initial-value problems whose solutions others have printed, and beside a solver of another family.
// Published problems, recalled, their values confirmed to the digits given by odex where the problem is not stiff.
import { Solver } from "odex";
import { describe, expect, test } from "vitest";
import { ros2Step, type Derivative } from "../../src/history/ros2.ts";

type Slopes = (first: number, second: number, out: Float64Array) => void;

/** So many equal steps from a start; returns both unknowns. */
function stepped(
  f: Derivative,
  slopesAt: Slopes,
  start: readonly [number, number],
  span: number,
  steps: number,
): Float64Array {
  const y = Float64Array.from(start);
  const slopes = new Float64Array(4);
  for (let i = 0; i < steps; i++) {
    slopesAt(y[0]!, y[1]!, slopes);
    ros2Step(y, span / steps, slopes, f);
  }
  return y;
}

/** Steps as long as the difference from first order stays under a tolerance, as a slip takes them. */
function adapted(
  f: Derivative,
  slopesAt: Slopes,
  start: readonly [number, number],
  span: number,
  tolerance: number,
): Float64Array {
  const y = Float64Array.from(start);
  const before = new Float64Array(2);
  const slopes = new Float64Array(4);
  let [t, h] = [0, 1e-6];
  while (t < span) {
    h = Math.min(h, span - t);
    before.set(y);
    slopesAt(y[0]!, y[1]!, slopes);
    const wrong = ros2Step(y, h, slopes, f) / (tolerance * (1 + Math.abs(y[0]!) + Math.abs(y[1]!)));
    if (wrong > 1) y.set(before);
    else t += h;
    h *= Math.min(3, Math.max(0.2, 0.9 / Math.sqrt(Math.max(wrong, 1e-6))));
  }
  return y;
}

/** Order seen when the step is halved, from the errors against the truth. */
function order(errorOf: (steps: number) => number, steps: number): number {
  return Math.log2(errorOf(steps) / errorOf(2 * steps));
}

// Hull, Enright, Fellen and Sedgwick, Comparing numerical methods for ordinary differential equations, 1972, problem B1: two populations.
const populations = {
  f: ((a, b, out) => {
    out[0] = 2 * (a - a * b);
    out[1] = -(b - a * b);
  }) satisfies Derivative,
  slopes: ((a, b, out) => {
    out.set([2 * (1 - b), -2 * a, b, -(1 - a)]);
  }) satisfies Slopes,
  start: [1, 3] as const,
  span: 20,
  end: [0.6761876008576667, 0.1860816099640036],
};

// Problems A1 (decay) and A3 (an oscillation) of the same set, whose solutions are e^-t and e^(sin t); time is the second unknown.
const decay = {
  f: ((a, _, out) => {
    out[0] = -a;
    out[1] = 1;
  }) satisfies Derivative,
  slopes: ((_a, _t, out) => {
    out.set([-1, 0, 0, 0]);
  }) satisfies Slopes,
};
const oscillation = {
  f: ((a, t, out) => {
    out[0] = a * Math.cos(t);
    out[1] = 1;
  }) satisfies Derivative,
  slopes: ((a, t, out) => {
    out.set([Math.cos(t), -a * Math.sin(t), 0, 0]);
  }) satisfies Slopes,
};

// Prothero and Robinson, On the stability and accuracy of one-step methods for solving stiff systems, 1974: y' = λ(y - sin t) + cos t.
const forced = (rate: number) => ({
  f: ((a, t, out) => {
    out[0] = rate * (a - Math.sin(t)) + Math.cos(t);
    out[1] = 1;
  }) satisfies Derivative,
  slopes: ((_, t, out) => {
    out.set([rate, -rate * Math.cos(t) - Math.sin(t), 0, 0]);
  }) satisfies Slopes,
});

// Van der Pol's oscillator with ε = 1e-6 from (2, 0) to t = 2; Mazzia and Magherini, Test set for initial value problem solvers, 2008.
const relaxing = {
  f: ((a, b, out) => {
    out[0] = b;
    out[1] = ((1 - a * a) * b - a) / 1e-6;
  }) satisfies Derivative,
  slopes: ((a, b, out) => {
    out.set([0, 1, (-2 * a * b - 1) / 1e-6, (1 - a * a) / 1e-6]);
  }) satisfies Slopes,
  end: [1.706167732170483, -0.8928097010247975],
};

describe("the implicit step", () => {
  test("halved, is wrong by a quarter: two populations, decay, oscillation", () => {
    const of =
      (
        problem: { f: Derivative; slopes: Slopes },
        start: readonly [number, number],
        span: number,
        end: number,
      ) =>
      (steps: number) =>
        Math.abs(stepped(problem.f, problem.slopes, start, span, steps)[0]! - end);
    for (const errors of [
      of(populations, populations.start, populations.span, populations.end[0]!),
      of(decay, [1, 0], 20, Math.exp(-20)),
      of(oscillation, [1, 0], 20, Math.exp(Math.sin(20))),
    ]) {
      expect(order(errors, 16_000)).toBeGreaterThan(1.9);
      expect(order(errors, 16_000)).toBeLessThan(2.1);
    }
  });

  test("stays of second order with slopes that are a tenth off, as those of the converter's line are", () => {
    const off: Slopes = (a, b, out) => {
      populations.slopes(a, b, out);
      for (let i = 0; i < 4; i++) out[i]! *= i % 2 === 0 ? 1.1 : 0.9;
    };
    const errors = (steps: number) =>
      Math.abs(
        stepped(populations.f, off, populations.start, populations.span, steps)[0]! - populations.end[0]!,
      );
    expect(order(errors, 16_000)).toBeGreaterThan(1.9);
  });

  test("meets the end of two populations to six digits", () => {
    const y = stepped(populations.f, populations.slopes, populations.start, populations.span, 100_000);
    for (let i = 0; i < 2; i++) expect(Math.abs(y[i]! / populations.end[i]! - 1)).toBeLessThan(1e-6);
  });

  test.each([-1, -1e3, -1e6, -1e9])(
    "however stiff (%d a second), does not swing and keeps to what forces it",
    (rate) => {
      const { f, slopes } = forced(rate);
      const errors = (steps: number) => Math.abs(stepped(f, slopes, [0, 0], 1, steps)[0]! - Math.sin(1));
      expect(errors(20)).toBeLessThan(2e-3);
      expect(errors(320)).toBeLessThan(1e-5);
    },
  );

  test.each([-1e2, -1e4, -1e6])(
    "a deviation of %d a second is gone after a few steps, and changes its sign no more",
    (rate) => {
      const { f, slopes } = forced(rate);
      const off = stepped(f, slopes, [1, 0], 1, 50)[0]! - Math.sin(1);
      expect(Math.abs(off)).toBeLessThan(1e-3);
    },
  );

  test("with steps adapted to its own error, follows van der Pol's oscillator over its jumps to four digits", () => {
    const y = adapted(relaxing.f, relaxing.slopes, [2, 0], 2, 1e-7);
    for (let i = 0; i < 2; i++) expect(Math.abs(y[i]! / relaxing.end[i]! - 1)).toBeLessThan(1e-4);
  });

  test("a smaller tolerance brings van der Pol's oscillator nearer to its end", () => {
    const errors = [1e-4, 1e-5, 1e-6].map((tolerance) =>
      Math.abs(adapted(relaxing.f, relaxing.slopes, [2, 0], 2, tolerance)[0]! - relaxing.end[0]!),
    );
    expect(errors[1]).toBeLessThan(errors[0]!);
    expect(errors[2]).toBeLessThan(errors[1]!);
  });
});

describe("beside an extrapolation solver", () => {
  test("two populations end where the book says", () => {
    const solver = new Solver(2);
    solver.relativeTolerance = 1e-12;
    solver.absoluteTolerance = 1e-12;
    const rate = (_: number, [a, b]: number[]) => {
      const out = new Float64Array(2);
      populations.f(a!, b!, out);
      return [out[0]!, out[1]!];
    };
    const { y } = solver.solve(rate, 0, [...populations.start], populations.span);
    for (let i = 0; i < 2; i++) expect(y[i]!).toBeCloseTo(populations.end[i]!, 8);
  });
});
