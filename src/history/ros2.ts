// One implicit step of two coupled equations that may be stiff: ROS2, a two-stage W-method of second order, stable however stiff they are.
// It stays of second order with slopes that are only nearly right; what a kink costs shows in the difference from a step of first order.

/** Writes the derivative of two unknowns into `out`. */
export type Derivative = (first: number, second: number, out: Float64Array) => void;

const GAMMA = 1 - Math.SQRT1_2;
const rate = new Float64Array(2);

/**
 * Carries two unknowns (`y`, in place) over a step h [s] of y' = f(y), with slopes ∂f/∂y near enough to the truth (row by row).
 * Returns by how much a step of first order differs, both unknowns together.
 * Source: Verwer, Spee, Blom and Hundsdorfer, A second-order Rosenbrock method applied to photochemical dispersion problems, SIAM
 * Journal on Scientific Computing 20, 1999, with γ = 1 - 1/√2 (recalled).
 */
export function ros2Step(y: Float64Array, h: number, slopes: Float64Array, f: Derivative): number {
  const g = GAMMA * h;
  const a = 1 - g * slopes[0]!;
  const b = -g * slopes[1]!;
  const c = -g * slopes[2]!;
  const d = 1 - g * slopes[3]!;
  const determinant = a * d - b * c;
  const [y0, y1] = [y[0]!, y[1]!];
  f(y0, y1, rate);
  const k1 = (d * rate[0]! - b * rate[1]!) / determinant;
  const l1 = (a * rate[1]! - c * rate[0]!) / determinant;
  f(y0 + h * k1, y1 + h * l1, rate);
  const r0 = rate[0]! - 2 * k1;
  const r1 = rate[1]! - 2 * l1;
  const k2 = (d * r0 - b * r1) / determinant;
  const l2 = (a * r1 - c * r0) / determinant;
  y[0] = y0 + h * (1.5 * k1 + 0.5 * k2);
  y[1] = y1 + h * (1.5 * l1 + 0.5 * l2);
  return 0.5 * h * (Math.abs(k1 + k2) + Math.abs(l1 + l2));
}
