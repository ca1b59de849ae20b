// What a pair of hands does for a week that is prepared: it is told unit and week once, and then walks one air after another.

import type { Week } from "../driving/pattern.ts";
import type { Unit } from "../physics/build.ts";
import { kindsOf, type Kinds } from "./kinds.ts";
import { walkInAir, type InAir } from "./prepare.ts";
import { stickMoments, type StickMoments } from "./stick.ts";

/** What comes first. */
export interface Told {
  readonly unit: Unit;
  readonly week: Week;
}

/** One task: the week in air of a temperature [K]. */
export interface AirTask {
  readonly air: number;
}

/** The last task: when the stick reads under its low mark, see `stickMoments`. */
export interface StickTask {
  readonly event: number;
  readonly least: number;
  readonly coldest: number;
  readonly warmest: number;
}

/** Answers what it is told first with nothing, and every task; `tell` hears the share of it that is done. */
export function workbench(): (
  message: unknown,
  tell: (share: number) => void,
) => InAir | StickMoments | null {
  let known: { readonly unit: Unit; readonly kinds: Kinds } | undefined;
  return (message, tell) => {
    if (known === undefined) {
      const { unit, week } = message as Told;
      known = { unit, kinds: kindsOf(week) };
      return null;
    }
    const { unit, kinds } = known;
    const task = message as AirTask | StickTask;
    if ("least" in task) return stickMoments(unit, kinds, task.event, task.least, task.coldest, task.warmest);
    const going = (share: number) => {
      tell(share);
      return true;
    };
    return walkInAir(unit, kinds, task.air, going)!;
  };
}
