import { finite, impossible, notNegative, type Range } from "../../errors.ts";

/** Effectiveness laws of exchangers with constant properties and conductance. */
export const effectivenessRange: Range = {
  law: "effectiveness against transfer units",
  quantity: "NTU",
  unit: "1",
  low: 0,
  high: 20,
  source: "Kays and London, Compact Heat Exchangers (recalled); formulas read in the library ht, 2016 on",
};

// Below this a ratio has lost digits of its own; the stream is then as good as endless.
const tiny = 1e-300;

function check(ntu: number, ratio: number): void {
  if (!(ntu >= 0)) impossible("ntu", ntu, "transfer units of 0 or more");
  if (!(ratio >= 0 && ratio <= 1)) impossible("ratio", ratio, "a capacity ratio Cmin/Cmax from 0 to 1");
}

/** Number of transfer units [1]: conductance UA over the smaller capacity flow, both W/K; without flow there is no exchange to count. */
export function transferUnits(conductance: number, smallerCapacity: number): number {
  if (!(conductance >= 0)) impossible("conductance", conductance, "a conductance of 0 W/K or more");
  if (!(smallerCapacity > 0)) impossible("smallerCapacity", smallerCapacity, "a capacity flow above 0 W/K");
  return conductance / smallerCapacity;
}

/** Effectiveness of a counterflow cooler [0..1], the one the chain uses: (1 − e)/(1 − Cr e), e = exp(−NTU (1 − Cr)). */
export function effectiveness(ntu: number, ratio: number): number {
  check(ntu, ratio);
  const gap = 1 - ratio;
  const x = ntu * gap;
  // 1 − Cr e = (1 − Cr) + Cr (1 − e): divided by (1 − Cr) so that the balanced case is met smoothly.
  const lost = x > 1e-12 ? -Math.expm1(-x) / gap : ntu;
  return lost / (1 + ratio * lost);
}

/** Both streams side by side: (1 − exp(−NTU (1 + Cr)))/(1 + Cr). */
export function parallelEffectiveness(ntu: number, ratio: number): number {
  check(ntu, ratio);
  return -Math.expm1(-ntu * (1 + ratio)) / (1 + ratio);
}

/** Cross flow, neither stream mixed, exact: a double Poisson sum (Mason, 1955). Held at its value for 700 units above that. */
export function crossEffectiveness(ntu: number, ratio: number): number {
  check(ntu, ratio);
  if (ntu === 0) return 0;
  // Beyond 700 the first term underflows; the exchanger is then as good as endless.
  if (ntu > 700) return crossEffectiveness(700, ratio);
  const b = ratio * ntu;
  if (b < tiny) return -Math.expm1(-ntu);
  // P_n(a): chance that a Poisson number of mean a exceeds n, kept for both streams and summed over n.
  let termA = Math.exp(-ntu);
  let termB = Math.exp(-b);
  let moreA = -Math.expm1(-ntu);
  let moreB = -Math.expm1(-b);
  let sum = 0;
  for (let n = 0; n < 2000 && moreB > 0 && moreA > 0; n++) {
    const add = moreA * moreB;
    sum += add;
    if (add < 1e-17 * sum) break;
    termA *= ntu / (n + 1);
    termB *= b / (n + 1);
    moreA -= termA;
    moreB -= termB;
  }
  return sum / b;
}

/** Cross flow, neither mixed, the usual approximation: 1 − exp((NTU^0.22/Cr)(exp(−Cr NTU^0.78) − 1)), within 4 %. */
export function crossEffectivenessShort(ntu: number, ratio: number): number {
  check(ntu, ratio);
  if (ntu === 0) return 0;
  if (ratio < tiny) return -Math.expm1(-ntu);
  return -Math.expm1((ntu ** 0.22 / ratio) * Math.expm1(-ratio * ntu ** 0.78));
}

/** Cross flow, the larger capacity flow mixed: (1/Cr)(1 − exp(−Cr (1 − exp(−NTU)))). */
export function crossLargerMixed(ntu: number, ratio: number): number {
  check(ntu, ratio);
  const single = -Math.expm1(-ntu);
  return ratio < tiny ? single : -Math.expm1(-ratio * single) / ratio;
}

/** Cross flow, the smaller capacity flow mixed: 1 − exp(−(1/Cr)(1 − exp(−Cr NTU))). */
export function crossSmallerMixed(ntu: number, ratio: number): number {
  check(ntu, ratio);
  return ratio < tiny ? -Math.expm1(-ntu) : -Math.expm1(Math.expm1(-ratio * ntu) / ratio);
}

/**
 * Heat that a counterflow cooler passes for each kelvin between its two inlets [W/K]: effectiveness times the smaller
 * capacity flow. Zero when either stream stands still. Below zero difference it warms the fluid, as a cold start does.
 */
export function coolerTakes(hotCapacity: number, coldCapacity: number, conductance: number): number {
  if (!(hotCapacity < Infinity && coldCapacity < Infinity && conductance >= 0 && conductance < Infinity))
    refuse(hotCapacity, coldCapacity, conductance);
  const smaller = Math.min(hotCapacity, coldCapacity);
  if (!(smaller > 0)) return 0;
  const ratio = smaller / Math.max(hotCapacity, coldCapacity);
  return effectiveness(Math.min(1e6, transferUnits(conductance, smaller)), ratio) * smaller;
}

function refuse(hotCapacity: number, coldCapacity: number, conductance: number): void {
  finite("hotCapacity", hotCapacity, "W/K");
  finite("coldCapacity", coldCapacity, "W/K");
  notNegative("conductance", conductance, "W/K");
}
