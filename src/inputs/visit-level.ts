// How high the fluid stood: on the stick, or full by a check of the level.

import { assumed } from "./visit-assumed.ts";
import type { fullWords } from "./visit-evidence-schema.ts";
import { errorOr, quart, seenAt, type ItemOf, type Told } from "./visit-item.ts";
import type { Seeing } from "./visit-seeing.ts";

/** How closely a check of the level tells [m³]; null: nobody looked. */
export const checkErrors: Readonly<Record<(typeof fullWords)[number], number | null>> = {
  "hot dipstick": 0.25 * quart,
  "overflow plug": 0.15 * quart,
  "service without a look": null,
};

/** Where the dipstick is wet, by its words, with an error: 0 low mark, 1 full. */
const positions: Readonly<Record<string, readonly [number, number]>> = {
  "at the full mark": [1, 0.15],
  "between the marks": [0.5, 0.3],
  "at the low mark": [0, 0.15],
  "below the low mark": [-0.5, 0.35],
};

const wet = "tilt, splash, a tube that is wet";

export function stick(item: ItemOf<"dipstick">, path: string, seeing: Seeing): Told {
  const { temperature, reads } = item;
  if (reads === "dry")
    return {
      kind: "off the dipstick",
      at: seenAt(item, path, seeing),
      temperature,
      error: errorOr(item, path, seeing, 0.2, "a dry stick: right to a fifth of the marks' distance", wet),
    };
  const [position, usual] = typeof reads === "number" ? [reads, 0.2] : positions[reads]!;
  const error = errorOr(
    item,
    path,
    seeing,
    usual,
    `the stick: right to ${usual} of the marks' distance`,
    wet,
  );
  return { kind: "dipstick", at: seenAt(item, path, seeing), temperature, position, error };
}

export function knownFull(item: ItemOf<"known full">, path: string, seeing: Seeing): Told | null {
  const usual = checkErrors[item.checked];
  if (usual === null) {
    seeing.assume(
      path,
      "a service without a look at the level tells nothing of the level",
      assumed("nobody looked"),
    );
    return null;
  }
  return {
    kind: "known full",
    at: seenAt(item, path, seeing),
    error: errorOr(
      item,
      path,
      seeing,
      usual,
      `full by ${item.checked}: right to ${(usual / quart).toFixed(2)} qt (${(1e3 * usual).toFixed(2)} L)`,
      "how such a check is made",
    ),
  };
}
