// Whether a prepared week is that of a unit and its driving: tables of another one would answer, and be wrong.

import type { Week } from "../driving/pattern.ts";
import { codedError } from "../errors.ts";
import type { Unit } from "../physics/build.ts";
import { kindsOf } from "./kinds.ts";
import type { Prepared } from "./prepared.ts";

type Asked = Pick<Unit, "build" | "fluid"> & { readonly week: Week };

/** What a prepared week was found to be for: looked at once, not for every history. */
const found = new WeakMap<Prepared, Asked>();

/** Errors: a week that was prepared for another build, fluid or driving. Air, driver and leak are the plan's. */
export function checkPrepared(prepared: Prepared, { build, fluid }: Unit, week: Week): void {
  const known = found.get(prepared);
  if (known?.build === build && known.fluid === fluid && known.week === week) return;
  if (!same(build, prepared.unit.build)) refuse("a week of another build");
  if (!same(fluid, prepared.unit.fluid)) refuse("a week with another fluid");
  const { kinds, occurrences } = kindsOf(week);
  const driven = [occurrences, kinds.map(({ pieceTimes, pieceDistances }) => [pieceTimes, pieceDistances])];
  const tabled = [
    prepared.occurrences,
    prepared.kinds.map(({ pieceTimes, pieceDistances }) => [pieceTimes, pieceDistances]),
  ];
  if (!same(driven, tabled)) refuse("a week of other trips");
  found.set(prepared, { build, fluid, week });
}

function refuse(given: string): never {
  const expected = "what prepareDuty or prepareWeek made of this unit and this week";
  throw codedError("impossible-input", [{ path: "prepared", expected, given, example: "" }]);
}

/** Plain data by what is in it. */
const same = (one: unknown, other: unknown): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);
