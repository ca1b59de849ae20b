// Where averages end: a line that parts empties the unit within minutes, and that end is handed to the trip-resolved walk.

import { walked, type History } from "../history/simulate.ts";
import type { Used } from "../history/outside.ts";
import { density } from "../physics/fluid/density.ts";
import { agedOpening } from "../physics/leaking.ts";
import type { DutyEvent } from "./happen.ts";
import { DAY, runningAt, WEEK, type March } from "./course.ts";
import { spread } from "./week.ts";

/** Longest time that a handed-over end may take [s]: a parted line empties within minutes of driving. */
const END_WITHIN = 14 * DAY;

/** The last midnight before a moment [s] at which no trip is on its way. */
export function standsBefore({ order, startsAt, prepared }: March, clock: number): number {
  const onItsWay = (into: number): boolean =>
    order.some((occurrence, i) => {
      const since = (((into - startsAt[i]!) % WEEK) + WEEK) % WEEK;
      return since > 0 && since < prepared.kinds[prepared.occurrences[occurrence]!.kind]!.time;
    });
  let midnight = Math.floor(clock / DAY) * DAY;
  while (midnight > 0 && onItsWay(midnight % WEEK)) midnight -= DAY;
  return midnight;
}

/** Events of the trip-resolved walk from a midnight [s since the start] on, dated since the start of the plan. */
export function endFrom(
  march: March,
  midnight: number,
): {
  readonly events: readonly DutyEvent[];
  readonly history: History;
  readonly used: readonly Used[];
} {
  const { plan, leak, shortAtFirst, prepared } = march;
  const day = Math.round(midnight / DAY);
  const running = runningAt(march, midnight);
  const { lost, lacking } = lostBy(march, midnight);
  const { density15 } = prepared.unit.fluid;
  const age = Math.max(0, running - march.opensRunning);
  const opened = march.opensAt < midnight;
  const { history, used } = walked({
    ...plan,
    unit: { ...plan.unit, leak: leak === null ? null : { ...leak, opening: agedOpening(leak.opening, age) } },
    weekday: (plan.weekday + day) % 7,
    dayOfYear: plan.dayOfYear + day,
    opens: opened ? { after: 0 } : { after: march.opensAt - midnight },
    topUps: plan.topUps
      .filter(({ at }) => at > midnight)
      .map((entry) => ({ ...entry, at: entry.at - midnight })),
    span: Math.min(END_WITHIN, plan.span - midnight),
    fillShort: (shortAtFirst + lacking) / density(density15, prepared.unit.build.fillTemperature),
  });
  const driven = Math.floor(midnight / WEEK) * march.weekDistance + distanceInto(march, midnight);
  const events = history.events.map(({ name, clutch, condition, ...at }): DutyEvent => ({
    name,
    condition,
    clock: at.clock + midnight,
    running: at.running + running,
    distance: at.distance + driven,
    lost: at.lost + lost,
    ...(clutch === undefined ? {} : { clutch }),
  }));
  return { events, history, used };
}

/** Lost and lacking by a moment at which the unit stands [kg]. */
export function lostBy(march: March, clock: number): { lost: number; lacking: number } {
  const week = Math.floor(clock / WEEK);
  spread(march, week);
  const { startsAt, order, lostAtEnd, addedAtStart } = march;
  let lost = march.lost[week]!;
  let fluid = march.added[week]!;
  for (let i = 0; i < order.length && week * WEEK + startsAt[i]! < clock; i++) {
    lost = lostAtEnd[i]!;
    fluid = addedAtStart[i]!;
  }
  return { lost, lacking: lost - fluid };
}

function distanceInto({ prepared, order, startsAt, distanceBefore }: March, midnight: number): number {
  const into = midnight - Math.floor(midnight / WEEK) * WEEK;
  let driven = 0;
  for (let i = 0; i < order.length && startsAt[i]! < into; i++)
    driven =
      distanceBefore[i]! + prepared.kinds[prepared.occurrences[order[i]!]!.kind]!.pieceDistances.at(-1)!;
  return driven;
}
