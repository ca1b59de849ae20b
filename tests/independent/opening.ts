// Section 6 of DEVELOPERS.md once more: what runs through an opening, and how the opening grows. No code is shared with src.
import { type LeakOpening } from "../../src/physics/build.ts";
const { PI, acos, cos, exp, log, max, min, sin, sqrt } = Math;
/** Seconds since the leak opened: by the calendar, and those of them with the engine on; whether it is on now. */
export interface Age {
  since: number;
  ran: number;
  running: boolean;
}

/** Discharge by length over bore, and Δp = µaQ + ρbQ² solved for Q. */
const discharge = (x: number) =>
  x <= 0.5 ? 0.61 : x < 2 ? 0.61 + ((x - 0.5) / 1.5) * 0.2 : 0.827 - 0.0085 * min(x, 10);
export const square = (C: number, A: number) => 1 / (2 * (C * A) ** 2);
const through = (p: number, l: number, s: number) => (2 * p) / (l + sqrt(l * l + 4 * s * p));
const hole = (d: number, L: number, p: number, mu: number, rho: number) =>
  d <= 0
    ? 0
    : through(
        p,
        mu * (24 / d ** 3 + (128 * L) / (PI * d ** 4)),
        rho * square(discharge(L / d), (PI / 4) * d * d),
      );
const slot = (w: number, h: number, t: number, p: number, mu: number, rho: number, cube = h ** 3) =>
  h <= 0 ? 0 : through(p, (mu * 12 * t) / (w * cube), rho * square(discharge(t / (2 * h)), w * h));
/** Mean of √(1 - x²)^k along a crack, by the middles of thin strips; mean cube of a gap even by g with an ellipse of mean e on top. */
const strips = Array.from({ length: 100_000 }, (_, k) => sqrt(1 - ((2 * k + 1) / 100_000 - 1) ** 2));
const [one, two, three] = [1, 2, 3].map(
  (k) => strips.reduce((sum, h) => sum + h ** k, 0) / strips.length,
) as [number, number, number];
const meanCube = (g: number, e: number, most = e / one) =>
  g ** 3 + 3 * g * g * most * one + 3 * g * most ** 2 * two + most ** 3 * three;
/** Complete elliptic integral E of k² = 1 - q², by the middles of forty strips; through a slot in no wall, at least what the bore resists. */
const ellipticE = (q: number, n = 40) =>
  (Array.from({ length: n }, (_, k) => sqrt(1 - (1 - q * q) * sin(((k + 0.5) * PI) / (2 * n)) ** 2)).reduce(
    (sum, part) => sum + part,
    0,
  ) *
    PI) /
  (2 * n);
const edged = (w: number, h: number, bore: number, t: number, p: number, mu: number, rho: number) =>
  h <= 0
    ? 0
    : through(
        p,
        mu *
          max((6 * sqrt(PI) * ellipticE(h / w)) / (w * h * h), 24 / bore ** 3 + (128 * t) / (PI * bore ** 4)),
        rho * max(square(0.61, w * h), square(discharge(t / bore), (PI / 4) * bore * bore)),
      );

/** Where the flat of depth y on a tube of radius R has this cross-section; by halving, for A grows with y. */
const section = (y: number, R: number, f = acos(1 - y / R)) => R * R * (f - sin(2 * f) / 2);
function depthOf(A: number, R: number): number {
  let [lo, hi] = [0, PI / 2];
  for (let k = 0; k < 60; k++)
    [lo, hi] = R * R * ((lo + hi) / 2 - sin(lo + hi) / 2) < A ? [(lo + hi) / 2, hi] : [lo, (lo + hi) / 2];
  return R * (1 - cos(lo));
}

/** Volume flow at the overpressure p. */
export function openingFlow(
  q: LeakOpening,
  { since, ran, running }: Age,
  p: number,
  mu: number,
  rho: number,
): number {
  if (p <= 0) return 0;
  switch (q.kind) {
    case "hole":
      return hole(q.diameter, q.wall, p, mu, rho);
    case "slot":
      return slot(q.length, q.gap, q.depth, p, mu, rho);
    case "pit": {
      if (q.aspect === undefined)
        return hole(min(q.bore, q.diameter * (since / q.after) ** q.exponent), q.wall, p, mu, rho);
      const W = q.wall,
        depth = W * sqrt(1 + (q.diameter / (2 * q.aspect * W)) ** 2),
        T = q.after / ((depth / W) ** (1 / q.exponent) - 1);
      return hole(
        min(q.bore, 2 * q.aspect * sqrt((W * (1 + since / T) ** q.exponent) ** 2 - W * W)),
        0,
        p,
        mu,
        rho,
      );
    }
    case "seal": {
      const c = q.clearance + (q.finalClearance - q.clearance) * (1 - exp(-ran / q.creepTime)),
        A = PI * q.diameter * c;
      return through(
        p,
        (mu * 12 * q.length) / (A * c * c * (1 + 1.5 * q.eccentricity ** 2)),
        rho * square(discharge(q.length / (2 * c)), A),
      );
    }
    case "rub": {
      const R = q.tubeRadius,
        r = R - q.wall,
        A = min(section(R, R), section(q.wall, R) + (section(q.depthInHundredHours, R) * ran) / 360000);
      const i = max(0, depthOf(A, R) - q.wall),
        chord = 2 * sqrt(i * (2 * r - i));
      return edged(max(q.contact, chord), min(q.contact, chord), 2 * r, q.wall, p, mu, rho);
    }
    case "crack": {
      const R = q.tubeRadius,
        t = q.wall,
        e = 1 - q.parisExponent / 2,
        share = ran / q.partsAfter;
      if (share >= 1) return hole(2 * R - t, t, p, mu, rho);
      const a =
        e === 0
          ? q.halfLength * exp(share * log(q.partsAt / q.halfLength))
          : (q.halfLength ** e + share * (q.partsAt ** e - q.halfLength ** e)) ** (1 / e);
      const shell = ((12 * (1 - q.poisson ** 2)) ** 0.25 * a) / sqrt(R * t),
        stress = (p * R) / t + (running ? q.bendingStress : 0);
      const gape = (PI / 4) * ((4 * stress * a) / q.modulus) * (1 + 0.1 * shell + 0.16 * shell ** 2);
      return slot(2 * a, q.restGap + gape, t, p, mu, rho, meanCube(q.restGap, gape));
    }
  }
}
