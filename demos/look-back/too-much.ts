// A volume that was told and that the answer does not reach, with what stands against it.

import type { ReadVisit } from "../../src/inputs/visit.ts";
import type { Answer } from "../../src/lookback/answer/answer.ts";
import type { Tell } from "../report/said.ts";

/** Signs that the pump no longer got all that it wanted. */
const ranShort: readonly string[] = [
  "first gulp of air",
  "cooler flow below half",
  "line pressure below demand",
];

/** More missing than a unit can lack that pumps and drives, more drained than a full one lets go. */
export function tooMuch(
  { visit }: Pick<ReadVisit, "visit">,
  { missing, events }: Pick<Answer, "missing" | "events">,
  tell: Tell,
): string[] {
  const [, most] = missing.now.nineTenths;
  // Unless the pump ran short it is other evidence that keeps the answer from the volume.
  const short = events.some(({ name, chance }) => ranShort.includes(name) && chance > 0.5);
  return visit.evidence.flatMap((item): string[] => {
    if (item.kind === "fluid missing" && item.at >= visit.at && short && item.volume - item.error > most)
      return [
        `${tell(item.volume, "volume", 2)} were told missing, the answer goes up to ${tell(most, "volume", 2)}: about there the pump runs out of fluid, ` +
          "so that more is not pumped out at a leak, and a vehicle that lacks more no longer drives into the bay.",
      ];
    if (item.kind !== "fluid drained") return [];
    const full = visit.unit.build.fill - item.stays;
    return item.volume - item.error > full
      ? [
          `${tell(item.volume, "volume", 2)} were told drained: more than ${tell(full, "volume", 2)} does not come out through the plug of a full unit, ` +
            `because ${tell(item.stays, "volume", 2)} stay in converter, cooler and passages. It was overfull, or what stays is less.`,
        ]
      : [];
  });
}
