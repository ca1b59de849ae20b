// Slosh: how the surface follows a tilt that changes faster than the pan can.

import { gravity as g } from "../fluid/surroundings.ts";
import { impossible, type Range } from "../../errors.ts";

/**
 * The surface stands at its static tilt while the driving input stays below a third of the first slosh
 * frequency.
 */
export const staticTiltRange: Range = {
  law: "static tilt of the surface",
  quantity: "frequency of the tilt over the first slosh frequency",
  unit: "1",
  low: 0,
  high: 1 / 3,
  source: "amplification 1/(1 - 1/9) = 1.125 of an undamped mode; Dodge 2000, NASA SP-106",
};

/**
 * Natural frequency of a slosh mode [rad/s] in a rectangular tank: w² = g k tanh(k h), k = mode π / length.
 * Length and depth in metres; 0 for a dry pan. Dodge, The New Dynamic Behavior of Liquids in Moving
 * Containers (2000); Abramson, NASA SP-106 (1966).
 */
export function sloshFrequency(length: number, depth: number, mode = 1): number {
  if (!(length > 0)) impossible("pan length", length, "more than 0 m");
  if (!(depth > 0)) return Number.isNaN(depth) ? impossible("depth", depth, "a number of metres") : 0;
  const k = (mode * Math.PI) / length;
  return Math.sqrt(g * k * Math.tanh(k * depth));
}

/**
 * Carries the surface slope s and its rate s' over the time dt [s] exactly, for a target that stands still
 * meanwhile: s'' + 2 ζ w s' + w² s = w² target. The state lies in `out` at `offset` (s) and `offset` + 1
 * (s'); w [rad/s] is the slosh frequency, ζ (`damping`) the damping ratio, any value from 0 up. With w = 0
 * the pan is dry and the surface rests.
 */
export function sloshStep(
  out: Float64Array,
  offset: number,
  target: number,
  omega: number,
  damping: number,
  dt: number,
): void {
  if (!(omega > 0)) {
    out[offset + 1] = 0;
    return;
  }
  const e = out[offset] - target;
  const v = out[offset + 1];
  const a = damping * omega;
  const square = omega * omega - a * a;
  let cos: number; // e^(-a dt) cos(wd dt), and below e^(-a dt) sin(wd dt)/wd, or their hyperbolic kin
  let sin: number;
  if (square > 1e-12 * omega * omega) {
    const wd = Math.sqrt(square);
    const fade = Math.exp(-a * dt);
    cos = fade * Math.cos(wd * dt);
    sin = (fade * Math.sin(wd * dt)) / wd;
  } else if (square < -1e-12 * omega * omega) {
    const wd = Math.sqrt(-square);
    if (wd * dt < 1) {
      const fade = Math.exp(-a * dt);
      cos = fade * Math.cosh(wd * dt);
      sin = (fade * Math.sinh(wd * dt)) / wd;
    } else {
      // The slow root as w²/(a + wd): no digits lost, and nothing overflows, at strong damping.
      const slow = Math.exp((-omega * omega * dt) / (a + wd));
      const quick = Math.exp(-(a + wd) * dt);
      cos = 0.5 * (slow + quick);
      sin = (0.5 * (slow - quick)) / wd;
    }
  } else {
    cos = Math.exp(-a * dt);
    sin = cos * dt;
  }
  out[offset] = target + e * cos + (v + a * e) * sin;
  out[offset + 1] = v * cos - (omega * omega * e + a * v) * sin;
}

/**
 * Largest distance |s - target| that can follow from the slope s and its rate while the target stands still:
 * now, or at the first turning point. Arguments as in `sloshStep`. Exact: w² e² + 2 ζ w e e' + e'² shrinks as
 * exp(-2 ζ w t).
 */
export function sloshEnvelope(
  s: number,
  rate: number,
  target: number,
  omega: number,
  damping: number,
): number {
  const e = s - target;
  const now = Math.abs(e);
  if (!(omega > 0) || rate === 0) return now;
  const a = damping * omega;
  const square = omega * omega - a * a;
  const push = omega * omega * e + a * rate;
  let time: number;
  if (square > 1e-12 * omega * omega) {
    const wd = Math.sqrt(square);
    const angle = Math.atan2(rate * wd, push);
    time = (angle > 0 ? angle : angle + Math.PI) / wd;
  } else if (square < -1e-12 * omega * omega) {
    const wd = Math.sqrt(-square);
    const ratio = (rate * wd) / push;
    if (!(ratio > 0 && ratio < 1)) return now;
    time = Math.atanh(ratio) / wd;
  } else {
    time = rate / push;
    if (!(time > 0)) return now;
  }
  const level = Math.sqrt(Math.abs(omega * omega * e * e + 2 * a * e * rate + rate * rate)) / omega;
  return Math.max(now, level * Math.exp(-a * time));
}
