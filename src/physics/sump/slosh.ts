// Slosh: how the surface follows a tilt that changes faster than the pan can.

import { gravity as g } from "../fluid/surroundings.ts";
import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";

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
  if (!(length > 0 && depth < Infinity && mode > 0)) refuseMode(length, depth, mode);
  if (depth <= 0) return 0;
  const k = (mode * Math.PI) / length;
  return Math.sqrt(g * k * Math.tanh(k * depth));
}

/** What a swing of frequency w [rad/s] and damping ratio does in the time dt [s]: e^(-a dt) cos(wd dt) and e^(-a dt) sin(wd dt)/wd, or their hyperbolic kin. */
export interface SloshFactors {
  omega: number;
  damping: number;
  dt: number;
  cos: number;
  sin: number;
}

export const newSloshFactors = (): SloshFactors => ({ omega: -1, damping: 0, dt: 0, cos: 1, sin: 0 });

/** Works the factors out anew unless they are for this swing and time already: a history asks for the same ones many times. */
export function sloshFactors(factors: SloshFactors, omega: number, damping: number, dt: number): void {
  if (factors.omega === omega && factors.damping === damping && factors.dt === dt) return;
  refuse(0, 0, omega, damping, dt);
  if (!(omega * omega < Infinity)) impossible("slosh frequency", omega, "one whose square is a number");
  factors.omega = omega;
  factors.damping = damping;
  factors.dt = dt;
  const a = damping * omega;
  const square = omega * omega - a * a;
  if (square > 1e-12 * omega * omega) {
    const wd = Math.sqrt(square);
    const fade = Math.exp(-a * dt);
    factors.cos = fade * Math.cos(wd * dt);
    factors.sin = (fade * Math.sin(wd * dt)) / wd;
  } else if (square < -1e-12 * omega * omega) {
    const wd = Math.sqrt(-square);
    // The slow root as w²/(a + wd): no digits lost at strong damping.
    const slow = Math.exp((-omega * omega * dt) / (a + wd));
    const quick = Math.exp(-(a + wd) * dt);
    factors.cos = 0.5 * (slow + quick);
    factors.sin = (0.5 * (slow - quick)) / wd;
  } else {
    factors.cos = Math.exp(-a * dt);
    factors.sin = factors.cos * dt;
  }
}

/** Carries a slope and its rate (`out` at `offset` and `offset` + 1) on by factors worked out before; a dry pan's surface rests. */
export function sloshBy(out: Float64Array, offset: number, target: number, factors: SloshFactors): void {
  const { omega, cos, sin } = factors;
  if (!(omega > 0)) {
    out[offset + 1] = 0;
    return;
  }
  const e = out[offset]! - target;
  const v = out[offset + 1]!;
  if (!(Math.abs(e) < Infinity && Math.abs(v) < Infinity)) refuse(e, v, omega, factors.damping);
  const a = factors.damping * omega;
  out[offset] = target + e * cos + (v + a * e) * sin;
  out[offset + 1] = v * cos - (omega * omega * e + a * v) * sin;
}

const own = newSloshFactors();

/**
 * Carries the surface slope s and its rate s' over the time dt [s] exactly, for a target that stands still meanwhile:
 * s'' + 2 ζ w s' + w² s = w² target. The state lies in `out` at `offset` (s) and `offset` + 1 (s'); w [rad/s] is the slosh
 * frequency, ζ (`damping`) the damping ratio, any value from 0 up. With w = 0 the pan is dry and the surface rests.
 */
export function sloshStep(
  out: Float64Array,
  offset: number,
  target: number,
  omega: number,
  damping: number,
  dt: number,
): void {
  sloshFactors(own, omega, damping, dt);
  sloshBy(out, offset, target, own);
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
  if (!(now < Infinity && Math.abs(rate) < Infinity && omega >= 0 && damping >= 0))
    refuse(e, rate, omega, damping);
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

function refuse(distance: number, rate: number, omega: number, damping: number, dt = 0): void {
  finite("slope or its target", distance);
  finite("rate of the slope", rate, "1/s");
  notNegative("slosh frequency", omega, "rad/s");
  notNegative("damping ratio", damping);
  notNegative("dt", dt, "s");
}

function refuseMode(length: number, depth: number, mode: number): void {
  positive("pan length", length, "m");
  finite("depth", depth, "m");
  positive("mode", mode);
}
