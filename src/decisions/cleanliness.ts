// How dirty a fluid is, as a laboratory writes it: the code of ISO 4406.
import { impossible, notNegative } from "../errors.ts";

/**
 * Most pieces in a millilitre of each number of the code, from 0 to 28. The limits are rounded, so no formula gives them all.
 * Source: the table of ISO 4406:1999 as a filter catalogue's appendix and a trade article print it, in agreement; the standard itself was not read.
 */
const upTo = [
  0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 1.3, 2.5, 5, 10, 20, 40, 80, 160, 320, 640, 1300, 2500, 5000,
  10_000, 20_000, 40_000, 80_000, 160_000, 320_000, 640_000, 1_300_000, 2_500_000,
];

/** A count with fewer pieces than this has its number only as a least one. */
const FEW = 20;

/** Number of the code for so many pieces in a millilitre: the first whose limit is not passed, 0 to 28; Infinity beyond the table (">28", recalled). */
export function isoNumber(perMillilitre: number): number {
  notNegative("perMillilitre", perMillilitre, "1/mL");
  const number = upTo.findIndex((limit) => perMillilitre <= limit);
  return number < 0 ? Infinity : number;
}

/** Three counts of one sample: pieces of 4, of 6 and of 14 µm(c) and more. */
export type IsoCounts = readonly [number, number, number];

/**
 * The code of ISO 4406, "19/16/13", for pieces in a millilitre of 4, 6 and 14 µm(c) and more. With `counted`, how many pieces were
 * really counted in each, "≥" stands before a number that rests on fewer than 20. Errors: more large pieces than small ones.
 */
export function isoCode(perMillilitre: IsoCounts, counted?: IsoCounts): string {
  for (const i of [1, 2] as const)
    if (perMillilitre[i] > perMillilitre[i - 1]!)
      impossible(
        `perMillilitre[${i}]`,
        perMillilitre[i],
        "no more than of the smaller size, which counts them too",
      );
  return perMillilitre
    .map((count, i) => {
      const number = isoNumber(count);
      const seen = counted?.[i];
      if (seen !== undefined && !(Number.isInteger(seen) && seen >= 0))
        impossible(`counted[${i}]`, seen, "a whole number, 0 or more");
      return (seen !== undefined && seen < FEW ? "≥" : "") + (number === Infinity ? ">28" : String(number));
    })
    .join("/");
}
