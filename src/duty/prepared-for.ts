// Whether a prepared week is that of a unit and its driving: tables of another one would answer, and be wrong.

import type { Week } from "../driving/pattern.ts";
import { codedError } from "../errors.ts";
import type { Driver, Unit } from "../physics/build.ts";
import { kindsOf } from "./kinds.ts";
import type { Prepared } from "./prepared.ts";

type Asked = Pick<Unit, "build" | "fluid"> & Pick<Driver, "pressOn" | "easeOff"> & { readonly week: Week };

/** What a prepared week was found to be for: looked at once, not for every history. */
const found = new WeakMap<Prepared, Asked>();

/** Errors: a week that was prepared for another build, fluid, driving or driver's foot. Air, leak and what the driver decides are the plan's. */
export function checkPrepared(prepared: Prepared, { build, fluid, driver }: Unit, week: Week): void {
  const known = found.get(prepared);
  if (
    known?.build === build &&
    known.fluid === fluid &&
    known.week === week &&
    known.pressOn === driver.pressOn &&
    known.easeOff === driver.easeOff
  )
    return;
  if (!same(build, prepared.unit.build)) refuse("a week of another build");
  if (!same(fluid, prepared.unit.fluid)) refuse("a week with another fluid");
  const { pressOn, easeOff } = driver;
  if (!same([pressOn, easeOff], [prepared.unit.driver.pressOn, prepared.unit.driver.easeOff]))
    refuse("a week of a driver with another foot");
  const { kinds, occurrences } = kindsOf(week);
  const driven = [occurrences, kinds.map(({ pieceTimes, pieceDistances }) => [pieceTimes, pieceDistances])];
  const tabled = [
    prepared.occurrences,
    prepared.kinds.map(({ pieceTimes, pieceDistances }) => [pieceTimes, pieceDistances]),
  ];
  if (!same(driven, tabled)) refuse("a week of other trips");
  found.set(prepared, { build, fluid, week, pressOn, easeOff });
}

function refuse(given: string): never {
  const expected = "what prepareDuty or prepareWeek made of this unit and this week";
  throw codedError("impossible-input", [{ path: "prepared", expected, given, example: "" }]);
}

/** Plain data by what is in it. */
const same = (one: unknown, other: unknown): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);
