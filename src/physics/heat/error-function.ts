// Complementary error function and its first integral, as conduction needs them: to 14 digits, without tables.

import { impossible } from "../../errors.ts";

const rootPi = Math.sqrt(Math.PI);

/** erfc(z) for any z. Series of positive terms below 2, Lentz's continued fraction above (Abramowitz and Stegun 7.1.6, 7.1.14). */
export function erfc(z: number): number {
  if (Number.isNaN(z)) impossible("z", z, "a number");
  if (z < 0) return 2 - erfc(-z);
  if (z < 2) {
    let term = z;
    let sum = z;
    for (let n = 1; term > 1e-17 * sum; n++) sum += term *= (2 * z * z) / (2 * n + 1);
    return 1 - (2 / rootPi) * Math.exp(-z * z) * sum;
  }
  if (z > 27) return 0;
  let fraction = 0;
  for (let n = 80; n >= 1; n--) fraction = n / 2 / (z + fraction);
  return Math.exp(-z * z) / (rootPi * (z + fraction));
}

/** ierfc(z) = exp(−z²)/sqrt(pi) − z erfc(z). Carslaw and Jaeger, Conduction of Heat in Solids, appendix II. */
export function ierfc(z: number): number {
  if (Number.isNaN(z)) impossible("z", z, "a number");
  if (z <= 2) return Math.exp(-z * z) / rootPi - z * erfc(z);
  if (z > 27) return 0;
  // With erfc = exp(−z²)/(sqrt(pi)(z + f)) the difference is f/(z + f): no digits lost.
  let fraction = 0;
  for (let n = 80; n >= 1; n--) fraction = n / 2 / (z + fraction);
  return (Math.exp(-z * z) * fraction) / (rootPi * (z + fraction));
}
