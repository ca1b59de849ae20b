// Events that the plan dates itself, and those that follow a burnt clutch.

import type { Plan } from "../history/simulate.ts";
import { clockAt, runningAt, WEEK, type March } from "./course.ts";
import type { DutyEvent } from "./happen.ts";
import type { Aftermath } from "./prepared.ts";

/** What the plan itself dates: the opening of the leak, fluid added in a stand. */
export function dated(march: March, plan: Plan, events: DutyEvent[]): void {
  const at = (name: DutyEvent["name"], condition: string, clock: number): DutyEvent => {
    const running = runningAt(march, clock);
    return {
      name,
      condition,
      clock,
      running,
      distance: (running / march.weekTime) * march.weekDistance,
      lost: lostBy(march, clock),
    };
  };
  if (march.leak !== null && march.opensAt < plan.span)
    events.push(at("leak opens", "as the case says", march.opensAt));
  for (const { at: clock, volume } of plan.topUps)
    if (clock < plan.span) events.push(at("topped up", `${(volume * 1000).toFixed(2)} L added`, clock));
}

/** Lost by a moment [kg], evenly within its week. */
function lostBy({ lost, opensAt }: March, clock: number): number {
  const week = Math.floor(clock / WEEK);
  return clock <= opensAt ? 0 : lost[week]! + (lost[week + 1]! - lost[week]!) * (clock / WEEK - week);
}

/** What came so shortly before the burn [s] belongs to it. */
const JUST_BEFORE = 30;

/** Events after a clutch has burnt, dated; undefined when that was not walked. */
export function afterBurning(
  march: March,
  burnt: {
    readonly event: DutyEvent;
    readonly kind: number;
    readonly piece: number;
    readonly tripFrom: number;
    readonly time: number;
  },
  aftermaths: readonly Aftermath[],
): DutyEvent[] | undefined {
  let nearest: Aftermath | undefined;
  for (const aftermath of aftermaths)
    if (
      aftermath.kind === burnt.kind &&
      (nearest === undefined ||
        Math.abs(aftermath.piece - burnt.piece) < Math.abs(nearest.piece - burnt.piece))
    )
      nearest = aftermath;
  const burns = nearest?.events.find(({ name }) => name === "damage 1");
  if (nearest === undefined || burns === undefined) return undefined;
  const week = Math.floor(burnt.event.clock / WEEK);
  const perSecond = (march.lost[week + 1]! - march.lost[week]!) / march.weekTime;
  return nearest.events
    .filter(({ after }) => after >= burns.after - JUST_BEFORE)
    .map(({ name, condition, clutch, after }): DutyEvent => {
      const running = burnt.event.running + after - burns.after;
      return {
        name,
        condition,
        clock: clockAt(march, running),
        running,
        distance: burnt.event.distance,
        lost: burnt.event.lost + perSecond * (after - burns.after),
        ...(clutch === undefined ? {} : { clutch }),
      };
    });
}
