// Events that the plan dates itself, and those that follow a burnt clutch.

import { pouredIn } from "../history/parked.ts";
import type { Plan } from "../history/simulate.ts";
import { airAt, clockAt, runningAt, WEEK, type March } from "./course.ts";
import type { DutyEvent } from "./happen.ts";
import type { Aftermath } from "./prepared.ts";

/** What the plan itself dates: the opening of the leak, fluid added in a stand. */
export function dated(march: March, plan: Plan, events: DutyEvent[]): void {
  if (march.leak !== null && march.opensAt < plan.span)
    events.push(datedAt(march, "leak opens", "as the case says", march.opensAt));
  for (const { at: clock, volume, temperature } of plan.topUps)
    if (clock < plan.span) events.push(datedAt(march, "topped up", pouredIn(volume, temperature), clock));
}

function datedAt(march: March, name: DutyEvent["name"], condition: string, clock: number): DutyEvent {
  const running = runningAt(march, clock);
  const distance = (running / march.weekTime) * march.weekDistance;
  return { name, condition, clock, running, distance, lost: lostBy(march, clock) };
}

/** Lost by a moment [kg], evenly within its week. */
function lostBy({ lost, opensAt }: March, clock: number): number {
  const week = Math.floor(clock / WEEK);
  return clock <= opensAt ? 0 : lost[week]! + (lost[week + 1]! - lost[week]!) * (clock / WEEK - week);
}

/** A kelvin of air counts as much as so many kilograms lost when the nearest aftermath is looked for. */
const PER_KELVIN = 0.01;

/** Events in the trips after the one in which a clutch burnt, dated; none when it was not walked. `left`: running seconds until that trip ends. */
export function afterBurning(
  march: March,
  burnt: DutyEvent,
  kind: number,
  left: number,
  aftermaths: readonly Aftermath[],
): DutyEvent[] {
  const week = Math.floor(burnt.clock / WEEK);
  const lacking = march.shortAtFirst + burnt.lost - march.added[week]!;
  const air = airAt(march, burnt.clock);
  let nearest: Aftermath | undefined;
  let least = Infinity;
  for (const aftermath of aftermaths) {
    if (aftermath.kind !== kind) continue;
    const far = Math.abs(aftermath.lacking - lacking) + PER_KELVIN * Math.abs(aftermath.air - air);
    if (far < least) [nearest, least] = [aftermath, far];
  }
  if (nearest === undefined) return [];
  const perSecond = (march.lost[week + 1]! - march.lost[week]!) / march.weekTime;
  return nearest.events
    .filter(({ after }) => after > left)
    .map(({ name, condition, clutch, after }): DutyEvent => {
      const running = burnt.running + after;
      return {
        name,
        condition,
        clock: clockAt(march, running),
        running,
        distance: burnt.distance + (after / march.weekTime) * march.weekDistance,
        lost: burnt.lost + perSecond * after,
        ...(clutch === undefined ? {} : { clutch }),
      };
    });
}
