// What is believed of a number before the evidence: a law, in the coordinate in which it is plain.

import { fraction, impossible } from "../errors.ts";
import { logNormal, normalBelow, normalQuantile } from "./normal.ts";

/**
 * A belief about one number, SI or plain. `normal` and `lognormal` by their middle (the median) and spread (the standard deviation of
 * the number, or of its natural logarithm); `uniform` and `log-uniform` between two bounds.
 */
export type Belief =
  | { readonly law: "normal" | "lognormal"; readonly middle: number; readonly spread: number }
  | { readonly law: "uniform" | "log-uniform"; readonly low: number; readonly high: number };

/** Whether the coordinate of a belief is the number's logarithm. */
export const inLogarithm = ({ law }: Belief): boolean => law === "lognormal" || law === "log-uniform";

/** The number at a coordinate. */
export function valueAt(belief: Belief, x: number): number {
  if (Number.isNaN(x)) impossible("x", x, "a number");
  return inLogarithm(belief) ? Math.exp(x) : x;
}

/** The coordinate of a number. */
export function coordinateOf(belief: Belief, value: number): number {
  const x = inLogarithm(belief) ? Math.log(value) : value;
  if (Number.isNaN(x)) impossible("value", value, inLogarithm(belief) ? "a number of 0 or more" : "a number");
  return x;
}

/** Middle and spread, or the bounds, of the coordinate. */
function plain(belief: Belief): readonly [number, number] {
  const [a, b] = "middle" in belief ? [belief.middle, belief.spread] : [belief.low, belief.high];
  if (belief.law === "lognormal") return [Math.log(a), b];
  return belief.law === "log-uniform" ? [Math.log(a), Math.log(b)] : [a, b];
}

/** Refuses a belief that says nothing: a spread or a width that is not above 0, a logarithm of what is not above 0. */
export function checkBelief(name: string, belief: Belief): void {
  const [a, b] = plain(belief);
  if (!Number.isFinite(a))
    impossible(
      name,
      "middle" in belief ? belief.middle : belief.low,
      inLogarithm(belief) ? "a number above 0" : "a number",
    );
  if ("middle" in belief ? !(b > 0 && b < Infinity) : !(b > a && b < Infinity))
    impossible(
      name,
      "middle" in belief ? belief.spread : belief.high,
      "middle" in belief ? "a spread above 0" : "an upper bound above the lower one",
    );
}

/** The same of a belief that says something, asked at a number. */
function sound(belief: Belief, x: number): readonly [number, number] {
  const both = plain(belief);
  const [a, b] = both;
  if (!(Math.abs(a) < Infinity && b - ("middle" in belief ? 0 : a) > 0 && b < Infinity))
    checkBelief("belief", belief);
  if (Number.isNaN(x)) impossible("x", x, "a number");
  return both;
}

/** Logarithm of the density at a coordinate; -Infinity outside bounds. */
export function logDensity(belief: Belief, x: number): number {
  const [a, b] = sound(belief, x);
  if ("middle" in belief) return logNormal(x, a, b);
  return x >= a && x <= b ? -Math.log(b - a) : -Infinity;
}

/** The coordinate under which lies a share p, from 0 to 1, of the belief. */
export function coordinateAt(belief: Belief, p: number): number {
  fraction("p", p);
  const [a, b] = sound(belief, p);
  return "middle" in belief ? a + b * normalQuantile(p) : a + (b - a) * p;
}

/** Share of the belief under a coordinate. */
export function shareBelow(belief: Belief, x: number): number {
  const [a, b] = sound(belief, x);
  return "middle" in belief ? normalBelow((x - a) / b) : Math.min(1, Math.max(0, (x - a) / (b - a)));
}

/** Coordinates beyond which practically nothing lies: so many standard deviations out, or the bounds. */
export function reach(belief: Belief, deviations: number): readonly [number, number] {
  const [a, b] = sound(belief, deviations);
  return "middle" in belief ? [a - deviations * b, a + deviations * b] : [a, b];
}
