// Faults in what a decision rests on, and in what is read off a visit for it.
import { change, type Mutation, type Place } from "./mutation.ts";

const place = (file: string, ...tests: string[]): Place => ({
  link: "deciding",
  file,
  tests: tests.map((test) => `tests/${test}`),
});

const renewal = place("decisions/renewal.ts", "decisions/renewal");
const refill = place("decisions/refill.ts", "decisions/refill");
const looks = place("decisions/inspection.ts", "decisions/inspection", "checks/decisions");
const joints = place("decisions/joints.ts", "decisions/joints", "checks/decisions");
const coming = place("lookback/coming.ts", "lookback/coming");

export const decidingMutations: readonly Mutation[] = [
  change(
    renewal,
    "a burnt clutch spares the cooler",
    '...(burnt ? (["cooler"] as const) : []),',
    '...(burnt && lockUp ? (["cooler"] as const) : []),',
  ),
  change(renewal, "debris of a clutch that stays hurts nothing that is new", "burnt ? gone : left", "left"),
  change(
    renewal,
    "another line fails though the set is new",
    'const line = renews.includes("line set") ? 0 : another.chance;',
    "const line = another.chance;",
  ),
  change(
    refill,
    "the drain reaches the lines",
    "pan: converter + lines + passages,",
    "pan: converter + passages,",
  ),
  change(
    refill,
    "poured by volume, whatever its temperature",
    "const full = fill * swells;",
    "const full = fill;",
  ),
  change(
    looks,
    "a look that misses once finds it for sure the next time",
    "(whole === 0 ? 1 : (1 - finds) ** whole)",
    "(whole === 0 ? 1 : 1 - finds)",
  ),
  change(
    joints,
    "the joint that fails first is asked of itself alone",
    "spentByAll(joints, x));",
    "spentByAll([one], x));",
  ),
  change(
    coming,
    "a leak that may come opens a year late",
    "values[place.age] = lasts;",
    "values[place.age] = 0.5 * lasts;",
  ),
];
