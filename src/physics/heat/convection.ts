import { impossible, notNegative, positive, type Range } from "../../errors.ts";

/** Number of terms kept limits the series at the very beginning. */
export const heislerRange: Range = {
  law: "slab cooled by convection (Heisler)",
  quantity: "Fo",
  unit: "1",
  low: 1e-5,
  high: 1e6,
  source: "Incropera, Fundamentals of Heat and Mass Transfer, section 5.5 (recalled)",
};

/** Root number n (from 0) of zeta tan zeta = Bi: it lies between n pi and n pi + pi/2, and bisection cannot miss it. */
export function slabRoot(biot: number, n: number): number {
  positive("biot", biot);
  if (!(Number.isInteger(n) && n >= 0)) impossible("n", n, "a whole number, 0 for the first root");
  let low = n * Math.PI;
  let high = low + Math.PI / 2;
  for (let i = 0; i < 60; i++) {
    const z = (low + high) / 2;
    // zeta sin zeta − Bi cos zeta has no poles; its sign alternates with n.
    if ((z * Math.sin(z) - biot * Math.cos(z)) * (n % 2 === 0 ? 1 : -1) < 0) low = z;
    else high = z;
  }
  return (low + high) / 2;
}

/** First-term weight of a root: C = 4 sin zeta/(2 zeta + sin 2 zeta), which tends to 1 at 0. */
export function slabWeight(root: number): number {
  notNegative("root", root);
  if (root === 0) return 1;
  return (4 * Math.sin(root)) / (2 * root + Math.sin(2 * root));
}

/**
 * Share of the first temperature difference left in a slab cooled on both faces, at a place from 0 (middle) to 1 (face):
 * sum C exp(−zeta² Fo) cos(zeta x), Bi = hL/k, Fo = alpha t/L², L the half-thickness.
 */
export function slabConvection(biot: number, fourier: number, place: number): number {
  notNegative("fourier", fourier);
  if (!(place >= 0 && place <= 1)) impossible("place", place, "a place from 0 to 1");
  if (fourier === 0) return 1;
  let sum = 0;
  for (let n = 0; n < 700; n++) {
    const zeta = slabRoot(biot, n);
    const fading = Math.exp(-zeta * zeta * fourier);
    sum += slabWeight(zeta) * fading * Math.cos(zeta * place);
    if (fading < 1e-17) break;
  }
  return sum;
}
