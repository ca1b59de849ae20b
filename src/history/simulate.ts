// A history: the unit driven through its weeks from before the first drip to burnt, or to the end of the span.

import { fluidNow } from "../physics/chain.ts";
import { hasParted } from "../physics/leaking.ts";
import { fresh, type State } from "../physics/state.ts";
import type { Trip } from "../driving/pattern.ts";
import { calendarOf, type Calendar } from "./calendar.ts";
import { fatesOf, type ClutchFate } from "./fate.ts";
import { idleInNeutral } from "./idle.ts";
import { closure, type Closure, type Ledger } from "./ledger.ts";
import { margins } from "./margin.ts";
import { newMeasures } from "./measures.ts";
import { noteRanges, outsideOf, usedIn, type Used } from "./outside.ts";
import { ambientOn, idleFirst, wholePlan, type Plan } from "./plan.ts";
import { pour } from "./reaction.ts";
import { cutCloseUps, keep, newRow, type CloseUp, type TripRow } from "./record.ts";
import { settle } from "./settle.ts";
import { engageFromRest, noEngagement, type Engagement } from "./shift.ts";
import { tellingOf, type Ending, type Telling } from "./telling.ts";
import { tick } from "./tick.ts";
import { towing } from "./towing.ts";
import { closeRow } from "./trip-row.ts";
import { newWalk, type Walk } from "./walk.ts";
import type { HistoryEvent } from "./watch.ts";

export { ambientOn, type Plan, type TopUp } from "./plan.ts";
export type { ClutchFate } from "./fate.ts";
export type { Ending } from "./telling.ts";

const DAY = 86400;

export interface History {
  readonly events: readonly HistoryEvent[];
  readonly trips: readonly TripRow[];
  readonly closeUps: readonly CloseUp[];
  readonly clutches: readonly ClutchFate[];
  readonly ledger: Ledger;
  readonly closure: Closure;
  /** Laws that were used outside their range: what, and how far. */
  readonly outside: readonly string[];
  readonly endedBy: Ending;
  readonly end: State;
}

/** Called after each day with the share of the span done; return false to cancel. */
export type Progress = (share: number, state: State) => boolean;

/**
 * Walks a plan trip by trip to the end of its span, or until the vehicle no longer drives. Events come in the order of time, each dated at the beginning of its
 * condition: clock and running in s, distance in m, lost in kg, temperature in K; `trips` has a row a trip, `closure` what mass and energy are out by as shares. Any
 * shortage, opening or burnt clutch is a result; laws that were used outside their range are told in `outside`. The laws are those of `src/physics`, the steps those of
 * DEVELOPERS.md, "How a history walks". The same plan gives the same numbers. Throws "impossible-input" for a plan that lacks a part or has a number that none can
 * have. `progress` is asked after each day; where it says false the history so far comes back, ended by "cancelled".
 */
export const simulate = (plan: Plan, progress?: Progress): History => walked(plan, progress).history;

/** The same with every law that was used, and how far. */
export function walked(
  plan: Plan,
  progress?: Progress,
): { readonly history: History; readonly used: readonly Used[] } {
  wholePlan(plan);
  const { unit, before: hitch } = towing(plan.unit, plan.towed);
  const ambientAtStart = ambientOn(unit, plan.dayOfYear);
  const walk = newWalk(unit, fresh(unit, ambientAtStart, plan.fillShort ?? 0), plan.fine, plan.finer);
  const { state, now, road } = walk;
  road.ambient = ambientAtStart;
  fluidNow(unit, state, now);

  const trips: TripRow[] = [];
  const closeUps: CloseUp[] = [];
  const engagement = noEngagement();
  const measures = newMeasures(walk, margins(unit));
  const telling = tellingOf(walk, engagement, measures);
  const calendar = calendarOf(plan, walk, telling);

  days: for (let day = 0; day * DAY < plan.span; day++) {
    road.ambient = ambientOn(unit, plan.dayOfYear + day);
    const weekday = (plan.weekday + day) % 7;
    for (const trip of plan.week.days[weekday]!) {
      if (!calendar.standUntil(Math.max(state.clock, day * DAY + trip.startsAt))) break days;
      telling.row = newRow();
      hitch(weekday, state.clock);
      if (!idleInNeutral(walk, idleFirst, unit.build.engine.idleSpeed, telling.after, trip.ticks.grade[0]))
        break days;
      engageFromRest(walk, engagement);
      measures.engaged(walk, engagement);
      noteRanges(telling.outside, walk, engagement); // the coldest of the trip
      drive(trip, walk, engagement, telling, calendar, closeUps);
      settle(walk);
      noteRanges(telling.outside, walk, engagement);
      closeRow(walk, telling.row, measures);
      keep(trips, telling.row);
      if (telling.ending !== undefined) break days;
      pour(walk, telling.resolve, (says) => {
        telling.tellNow("topped up", says);
      });
    }
    if (!calendar.standUntil(Math.min(plan.span, (day + 1) * DAY))) break;
    if (progress !== undefined && !progress(Math.min(1, state.clock / plan.span), state)) {
      telling.ending = "cancelled";
      break;
    }
  }
  cutCloseUps(telling.recent, Infinity, closeUps);
  const used = usedIn(telling.outside);
  const history: History = {
    events: telling.events.sort((a, b) => a.clock - b.clock),
    trips,
    closeUps,
    clutches: fatesOf(walk, measures, telling.slips),
    ledger: walk.ledger,
    closure: closure(unit, state, walk.ledger),
    outside: outsideOf(used),
    endedBy: telling.ending ?? "end of span",
    end: state,
  };
  return { history, used };
}

/** Drives a trip tick by tick, to its end or that of the history; the leak may open or its line part in it. */
function drive(
  { ticks }: Trip,
  walk: Walk,
  engagement: Engagement,
  { after, tellNow, recent }: Telling,
  { untilOpen, open }: Calendar,
  closeUps: CloseUp[],
): void {
  const { state, unit } = walk;
  for (let i = 0; i < ticks.count; i++) {
    const seconds = ticks.dt[i]!;
    const target = ticks.speed[i]!;
    const grade = ticks.grade[i]!;
    const lateral = ticks.lateral[i]!;
    const before = untilOpen(seconds, target);
    if (before < seconds) {
      // The leak opens within the tick: what is left of it follows afterwards.
      const between = walk.scheduled + ((target - walk.scheduled) * before) / seconds;
      if (before > 0 && !tick(walk, before, between, grade, lateral, engagement, after)) return;
      open();
    }
    const age = state.leakAge;
    const left = before < seconds ? seconds - before : seconds;
    if (!tick(walk, left, target, grade, lateral, engagement, after)) return;
    if (unit.leak !== null && age >= 0) {
      const { opening } = unit.leak;
      if (hasParted(opening, state.leakAge) && !hasParted(opening, age))
        tellNow("line parts", "the crack has grown to its end");
    }
    if (recent.wanted.length > 0) cutCloseUps(recent, state.clock, closeUps);
  }
}
