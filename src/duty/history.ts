// A duty-averaged history: the leak marched week by week against what the week does to the unit at every loss.

import { simulate, type Ending, type Plan } from "../history/simulate.ts";
import { wholePlan } from "../history/plan.ts";
import { outsideOf } from "../history/outside.ts";
import { endFrom, standsBefore } from "./handover.ts";
import { isTabled } from "./flow.ts";
import {
  beginLookout,
  eventOf,
  lookOn,
  mayHappen,
  newLookout,
  noLonger,
  type DutyEvent,
  type Found,
  type Lookout,
} from "./happen.ts";
import { spread } from "./week.ts";
import { partsAt, runningAt, WEEK, type March } from "./course.ts";
import { afterBurning, dated } from "./dating.ts";
import { marched } from "./marched.ts";
import { lostAtMidnights } from "./midnights.ts";
import { usedBy, usedInBoth } from "./outside.ts";
import type { Prepared } from "./prepared.ts";
import { checkPrepared } from "./prepared-for.ts";
import { findSpots, newSpots } from "./spots.ts";

/** What was handed to the trip-resolved walk: nothing, the end from a line that parts, or all of a leak that is over within twenty trips or not in the tables. */
export type HandedOver = "nothing" | "end" | "all";

/** How and when a history of averages ends. */
interface DutyEnd {
  readonly endedBy: Ending;
  /** Clock and running time at the end [s]. */
  readonly end: { readonly clock: number; readonly running: number };
}

/** The end of a history of averages, and its events, which are looked for when they are first asked for. */
export interface DutyEvents extends DutyEnd {
  readonly events: () => readonly DutyEvent[];
}

/** A history of averages. */
export interface DutyHistory extends DutyEnd {
  readonly events: readonly DutyEvent[];
  /** Fluid lost at the midnight with which each week begins [kg], what the stand before it lost until then included; as far as it was averaged. */
  readonly lost: Float64Array;
  readonly handedOver: HandedOver;
  /** Laws that were used outside their range, with how far; what the week's trips leave at the losses and in the air that were met, and the leak's opening. */
  readonly outside: readonly string[];
}

const lookouts = new WeakMap<Prepared, Lookout>();

/** A leak is averaged if it lives for so many trips, from its opening to a burnt clutch or no drive. */
const leastTrips = 20;

const spots = newSpots();
const says = {
  full: "what clings under the vehicle has reached its capacity",
  spot: "1 g has fallen while standing",
};

/** What a prepared week's events are looked for with, kept from plan to plan. */
function lookoutOf(prepared: Prepared): Lookout {
  let known = lookouts.get(prepared);
  if (known === undefined) lookouts.set(prepared, (known = newLookout(prepared)));
  beginLookout(known);
  return known;
}

/** What came of a plan by averages: events of the tables as they were found, what ended it, the first clutch that burnt, and how far it was averaged. */
interface Averaged {
  readonly march: March;
  readonly reached: number;
  readonly weeks: number;
  /** When the line parts, and until when it is averaged: from that midnight on it is walked [s]. */
  readonly parts: number;
  readonly averagedUntil: number;
  readonly events: DutyEvent[];
  readonly ended: DutyEvent | undefined;
  readonly burnt: DutyEvent | undefined;
}

function averaged(prepared: Prepared, plan: Plan): Averaged {
  const { march, reached } = marched(prepared, plan);
  const lookout = lookoutOf(prepared);
  const { thresholds } = prepared;
  const { fresh, found } = lookout;
  const parts = partsAt(march);
  const averagedUntil = parts < plan.span ? standsBefore(march, parts) : plan.span;
  const weeks = Math.min(reached, Math.floor(averagedUntil / WEEK - 1e-9) + 1);
  const events: DutyEvent[] = [];
  let ended: DutyEvent | undefined;
  let burnt: DutyEvent | undefined;
  const trips = march.order.length;
  for (let week = 0; week < weeks && ended === undefined; week++) {
    if (!mayHappen(march, lookout, week)) continue;
    spread(march, week);
    for (let trip = 0; (trip = lookOn(march, lookout, week, trip)) < trips && ended === undefined; trip++) {
      let burn: Found | undefined;
      for (let n = 0; n < lookout.came; n++) {
        const t = fresh[n]!;
        const { name, condition, clutch } = thresholds[t]!;
        const event = eventOf(march, name, condition, clutch, found[t]!);
        if (event.clock >= averagedUntil) continue;
        events.push(event);
        if (ends(event, plan) && (ended === undefined || event.clock < ended.clock)) ended = event;
        if (name !== "damage 1" || clutch === prepared.unit.build.lockUp.clutch.name) continue;
        if (burn === undefined || found[t]!.time < burn.time) burn = found[t]!;
        if (burnt === undefined || event.clock < burnt.clock) burnt = event;
      }
      if (burn === undefined || burnt === undefined || ended !== undefined) continue;
      const { kind } = prepared.occurrences[march.order[burn.trip]!]!;
      const left = prepared.kinds[kind]!.time - burn.time;
      for (const event of afterBurning(march, burnt, kind, left, prepared.aftermaths)) {
        const t = thresholds.findIndex(({ name, clutch }) => name === event.name && clutch === event.clutch);
        if (event.clock >= averagedUntil || lookout.come[t] === 1) continue;
        events.push(event);
        noLonger(lookout, t);
        if (ends(event, plan) && (ended === undefined || event.clock < ended.clock)) ended = event;
      }
    }
  }
  return { march, reached, weeks, parts, averagedUntil, events, ended, burnt };
}

/** With the events of an averaged history what no end hangs on: what clings and what reaches the ground, and what the plan dates. Its plan's march stands. */
function allEvents({ march, weeks, events }: Averaged): DutyEvent[] {
  const all = [...events];
  findSpots(march, weeks, spots);
  if (spots.full.week >= 0) all.push(eventOf(march, "hiding place full", says.full, undefined, spots.full));
  if (spots.spot.week >= 0)
    all.push(eventOf(march, "first spot on the ground", says.spot, undefined, spots.spot));
  dated(march, march.plan, all);
  return all;
}

/** How and when an averaged history ends. */
const endingOf = ({ march, ended }: Averaged): DutyEnd =>
  ended === undefined
    ? { endedBy: "end of span", end: { clock: march.plan.span, running: runningAt(march, march.plan.span) } }
    : {
        endedBy: ended.name === "no drive" ? "no drive" : "driver stopped",
        end: { clock: ended.clock, running: ended.running },
      };

const inTime = (events: DutyEvent[], { clock: last }: DutyEnd["end"]): DutyEvent[] =>
  events.sort((a, b) => a.clock - b.clock).filter(({ clock }) => clock <= last);

/**
 * The history of a plan whose week, build, fluid, driver and air were prepared; the plan brings the leak, dates and span. A leak that is
 * over within twenty trips is run trip by trip here and now (`simulate`), and so is the end from the midnight before a line parts.
 * Errors: a plan that lacks a part or that no history could have; a week that was prepared for another build, fluid, driving or driver's foot.
 */
export function dutyHistory(prepared: Prepared, plan: Plan): DutyHistory {
  wholePlan(plan);
  checkPrepared(prepared, plan.unit, plan.week);
  if (!mayAverage(prepared, plan)) return whole(plan);
  const so = averaged(prepared, plan);
  const { march, reached, weeks, parts, averagedUntil, ended, burnt } = so;
  const last = burnt ?? ended ?? (parts < plan.span ? { running: runningAt(march, parts) } : undefined);
  if (march.leak !== null && livesUnder(march, last)) return whole(plan);
  const events = allEvents(so);
  let { endedBy, end } = endingOf(so);
  let handedOver: HandedOver = "nothing";
  let used =
    ended === undefined
      ? usedBy(march, reached, averagedUntil, runningAt(march, averagedUntil))
      : usedBy(march, reached, ended.clock, ended.running, ended.lost);
  if (ended === undefined && averagedUntil < plan.span && reached >= weeks) {
    const { events: more, history, used: moreUsed } = endFrom(march, averagedUntil);
    used = usedInBoth(used, moreUsed);
    for (const event of more)
      if (
        event.name !== "leak opens" &&
        events.every(({ name, clutch }) => name !== event.name || clutch !== event.clutch)
      )
        events.push(event);
    endedBy = history.endedBy;
    handedOver = "end";
    end = {
      clock: averagedUntil + history.end.clock,
      running: runningAt(march, averagedUntil) + history.end.running,
    };
  }
  return {
    events: inTime(events, end),
    lost: lostAtMidnights(march, weeks),
    endedBy,
    end,
    handedOver,
    outside: outsideOf(used),
  };
}

/**
 * End and events of the same, and nothing handed over: for callers who ask thousands of leaks, the young ones too. Most of them ask for the end alone, for which
 * what clings and drips is not looked for.
 */
export function dutyEvents(prepared: Prepared, plan: Plan): DutyEvents {
  if (!mayAverage(prepared, plan)) {
    const { endedBy, end, events } = whole(plan);
    return { endedBy, end, events: () => events };
  }
  const so = averaged(prepared, plan);
  const { endedBy, end } = endingOf(so);
  let known: DutyEvent[] | undefined;
  const events = () => {
    marched(prepared, plan); // another plan may have been marched meanwhile
    return inTime(allEvents(so), end);
  };
  return { endedBy, end, events: () => (known ??= events()) };
}

/** Without a trip there is nothing to average; what is towed, a seam at the rail and a driver who tops up or turns for home are not in the tables. */
function mayAverage({ occurrences }: Prepared, { unit: { leak, driver }, towed }: Plan): boolean {
  if (occurrences.length === 0 || towed !== undefined || (leak !== null && !isTabled(leak))) return false;
  return [driver.atFirstFlare, driver.atFirstSlip].every(
    ({ does }) => does === "carries on" || does === "stops",
  );
}

/** The trip-resolved history in the same form. */
function whole(plan: Plan): DutyHistory {
  const { events, endedBy, end, outside } = simulate(plan);
  return {
    events,
    lost: new Float64Array(1),
    endedBy,
    end: { clock: end.clock, running: end.running },
    handedOver: "all",
    outside,
  };
}

const ends = ({ name }: DutyEvent, { unit: { driver } }: Plan): boolean =>
  name === "no drive" ||
  (name === "vehicle falls behind" && driver.whenBehind === "stops") ||
  (name === "first flare" && driver.atFirstFlare.does === "stops") ||
  (name === "first sustained slip" && driver.atFirstSlip.does === "stops");

/** Whether the leak is over within so few trips that averages say nothing. */
function livesUnder(march: March, last: { readonly running: number } | undefined): boolean {
  if (last === undefined || !(march.weekTime > 0)) return false;
  const trips = march.order.length;
  return ((last.running - march.opensRunning) / march.weekTime) * trips < leastTrips;
}
