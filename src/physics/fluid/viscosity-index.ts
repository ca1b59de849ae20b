// Viscosity index: how little a fluid thins as it warms, ASTM D2270.
import { impossible, type Range } from "../../errors.ts";

export const viscosityIndexRange: Range = {
  law: "viscosity index",
  quantity: "kinematic viscosity at 100 degC",
  unit: "mm²/s",
  low: 2,
  high: 500,
  source: "ASTM D2270, scope",
};

// Up to a viscosity at 100 °C, L = aY² + bY + c and H = dY² + eY + f stand for the standard's table (annex).
const pieces = [
  [3.8, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077],
  [4.4, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183],
  [5, 2.5, -7.2143, 13.812, 0.82143, 1.5679, 0.119],
  [6.4, 0.101, 16.635, -45.469, 0.04985, 9.1613, -18.557],
  [7, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656],
  [7.7, 0.01191, 21.475, -72.87, 0.79762, -0.7321, 14.61],
  [9, 0.41858, 16.1558, -56.04, 0.05794, 10.5156, -28.24],
  [12, 0.88779, 7.5527, -16.6, 0.26665, 6.7015, -10.81],
  [15, 0.7672, 10.7972, -38.18, 0.20073, 8.4658, -22.49],
  [18, 0.97305, 5.3135, -2.2, 0.28889, 5.9741, -4.93],
  [22, 0.97256, 5.25, -0.98, 0.24504, 7.416, -16.73],
  [28, 0.91413, 7.4759, -21.82, 0.20323, 9.1267, -34.23],
  [40, 0.87031, 9.7157, -50.77, 0.18411, 10.1015, -46.75],
  [55, 0.84703, 12.6752, -133.31, 0.17029, 11.4866, -80.62],
  [70, 0.85921, 11.1009, -83.19, 0.1713, 11.368, -76.94],
  [Infinity, 0.8353, 14.67, -216, 0.1684, 11.85, -97],
] as const;

/**
 * Viscosities at 40 °C [mm²/s] of the two reference oils of the standard that share a viscosity at 100 °C [mm²/s]:
 * the one of index 0 (its L) and the one of index 100 (its H).
 */
export function referenceOils(kv100: number): { readonly zero: number; readonly hundred: number } {
  if (!(kv100 >= 2 && kv100 < Infinity))
    impossible("kv100", kv100, "2 mm²/s or more, where the index begins");
  const [, a, b, c, d, e, f] = pieces.find(([upTo]) => kv100 < upTo) ?? pieces[15];
  return { zero: (a * kv100 + b) * kv100 + c, hundred: (d * kv100 + e) * kv100 + f };
}

/**
 * Viscosity index of a fluid from its kinematic viscosities at 40 and 100 °C [mm²/s], not rounded (the standard
 * reports whole numbers). Procedure A up to 100, procedure B above.
 *
 * @throws impossible-input below 2 mm²/s at 100 °C, where no index is defined, or if it is not thicker at 40 °C
 * Source: ASTM D2270; the annex's polynomials for its table, within 0.11 % of it.
 */
export function viscosityIndex(kv40: number, kv100: number): number {
  const { zero: L, hundred: H } = referenceOils(kv100);
  if (!(kv40 > kv100 && kv40 < Infinity)) impossible("kv40", kv40, "more than the viscosity at 100 °C");
  if (kv40 >= H) return (100 * (L - kv40)) / (L - H);
  const N = Math.log(H / kv40) / Math.log(kv100);
  return (10 ** N - 1) / 0.00715 + 100;
}
