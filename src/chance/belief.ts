// What is believed of a number before the evidence: a law, in the coordinate in which it is plain.

import { impossible } from "../errors.ts";
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
export const valueAt = (belief: Belief, x: number): number => (inLogarithm(belief) ? Math.exp(x) : x);

/** The coordinate of a number. */
export const coordinateOf = (belief: Belief, value: number): number =>
  inLogarithm(belief) ? Math.log(value) : value;

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

/** Logarithm of the density at a coordinate; -Infinity outside bounds. */
export function logDensity(belief: Belief, x: number): number {
  const [a, b] = plain(belief);
  if ("middle" in belief) return logNormal(x, a, b);
  return x >= a && x <= b ? -Math.log(b - a) : -Infinity;
}

/** The coordinate under which lies a share p, from 0 to 1, of the belief. */
export function coordinateAt(belief: Belief, p: number): number {
  const [a, b] = plain(belief);
  return "middle" in belief ? a + b * normalQuantile(p) : a + (b - a) * p;
}

/** Share of the belief under a coordinate. */
export function shareBelow(belief: Belief, x: number): number {
  const [a, b] = plain(belief);
  return "middle" in belief ? normalBelow((x - a) / b) : Math.min(1, Math.max(0, (x - a) / (b - a)));
}

/** Coordinates beyond which practically nothing lies: so many standard deviations out, or the bounds. */
export function reach(belief: Belief, deviations: number): readonly [number, number] {
  const [a, b] = plain(belief);
  return "middle" in belief ? [a - deviations * b, a + deviations * b] : [a, b];
}
