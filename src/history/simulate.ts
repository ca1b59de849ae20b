// A history: the unit driven through its weeks from before the first drip to burnt, or to the end of the span.

import type { Week } from "../driving/pattern.ts";
import { codedError } from "../errors.ts";
import { faceArea, type Clutch } from "../physics/clutch/geometry.ts";
import { debris, type Debris } from "../physics/damage/debris.ts";
import { damageIndex } from "../physics/damage/damage-index.ts";
import { fluidNow } from "../physics/chain.ts";
import { shareLeft } from "../physics/holding.ts";
import type { Unit } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { hasParted } from "../physics/leaking.ts";
import { fresh, type State } from "../physics/state.ts";
import { idleInNeutral } from "./idle.ts";
import { closure, type Closure, type Ledger } from "./ledger.ts";
import { feels, noResolve, pour } from "./reaction.ts";
import { newMeasures, type Measures } from "./measures.ts";
import { margins } from "./margin.ts";
import { pouredIn, stand, topUp } from "./parked.ts";
import { settle } from "./settle.ts";
import { newOutside, outsideOf, noteRanges } from "./outside.ts";
import { cutCloseUps, keep, newRecent, newRow, note, wantCloseUp, type CloseUp, type TripRow } from "./record.ts";
import { engageFromRest, noEngagement } from "./shift.ts";
import { tick } from "./tick.ts";
import { eventAt, look, momentOf, newMoment, watcher, type HistoryEvent, type Moment } from "./watch.ts";
import { towing, type Towed } from "./towing.ts";
import { newWalk, type Walk } from "./walk.ts";

const DAY = 86400;
/** So much warmer than ever before, and the laws' ranges are looked at again [K]. */
const WARMER = 1;

/** Fluid added: when [s since the start], how much [m³] at its temperature [K]. */
export interface TopUp {
  readonly at: number;
  readonly volume: number;
  readonly temperature: number;
}

/** Everything that a history needs. */
export interface Plan {
  readonly unit: Unit;
  readonly week: Week;
  /** Weekday (0 is Monday) and day of the year (0 is 1 January) on which it starts, at midnight. */
  readonly weekday: number;
  readonly dayOfYear: number;
  /** When the leak opens: after so many seconds (below 0: before the start), so many metres, or so many seconds of running. */
  readonly opens: { readonly after: number } | { readonly distance: number } | { readonly running: number };
  readonly topUps: readonly TopUp[];
  /** Longest time that it may take [s]. */
  readonly span: number;
  /** Fluid short of correct from the start [m³ at fill temperature]; negative for overfull. */
  readonly fillShort?: number;
  /** What is towed, and when. */
  readonly towed?: Towed;
  /** Steps while air is possible and while slipping [s]; halving them moves no event by a second. */
  readonly fine?: number;
  readonly finer?: number;
}

export type Ending = "no drive" | "driver stopped" | "drove home" | "end of span" | "cancelled";

export interface ClutchFate {
  readonly name: string;
  readonly damage: number;
  readonly glazed: number;
  readonly charred: number;
  readonly worn: number;
  readonly hottest: number;
  /** Heat of slips, and of sound shifts [J]. */
  readonly slipEnergy: number;
  readonly shiftEnergy: number;
  readonly slips: number;
  /** How much earlier the controller had learned to fill it [s]; 0 for the lock-up clutch. */
  readonly learnedFill: number;
  /** Lining that it has lost by then [kg]: in pan, filter and fluid, or gone with what leaked. */
  readonly debris: Debris;
}

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

const parts = [
  "unit",
  "unit.build",
  "unit.fluid",
  "unit.driver",
  "unit.surroundings",
  "week",
  "weekday",
  "dayOfYear",
  "opens",
  "topUps",
  "span",
] as const;

/** Refuses a plan that lacks a part, and names the first. */
function whole(plan: unknown): void {
  const at = (from: unknown, key: string) =>
    typeof from === "object" && from !== null ? (Reflect.get(from, key) as unknown) : undefined;
  const missing = parts.find((path) => (path.split(".").reduce(at, plan) ?? null) === null);
  if (missing === undefined) return;
  throw codedError("impossible-input", [
    {
      path: `plan.${missing}`,
      expected: "every part of a plan, as planOf makes it of a case",
      given: "nothing",
      example: "simulate(planOf(readCase(json)))",
    },
  ]);
}

/** Runs a plan. Deterministic: the same plan gives the same numbers. Throws "impossible-input" for a plan that lacks a part, as one from untyped code may. */
export function simulate(plan: Plan, progress?: Progress): History {
  whole(plan);
  const { week } = plan;
  const { unit, before: hitch } = towing(plan.unit, plan.towed);
  const { build } = unit;
  const ambientAtStart = ambientOn(unit, plan.dayOfYear);
  const walk = newWalk(unit, fresh(unit, ambientAtStart, plan.fillShort ?? 0), plan.fine, plan.finer);
  const { state, now, road } = walk;
  road.ambient = ambientAtStart;
  fluidNow(unit, state, now);

  const events: HistoryEvent[] = [];
  const trips: TripRow[] = [];
  const closeUps: CloseUp[] = [];
  const recent = newRecent();
  const outside = newOutside();
  const engagement = noEngagement();
  const before = newMoment();
  const moment = newMoment();
  const measures: Measures = newMeasures(walk, margins(unit));
  const clutchCount = state.plate.length;
  const slips = new Float64Array(clutchCount);
  let wasSlipping = false;
  let warmest = 0;
  const resolve = noResolve();
  let row = newRow();
  let ending: Ending | undefined;

  const tell = (event: HistoryEvent) => {
    events.push(event);
    if (["first gulp of air", "first sustained slip", "no drive"].includes(event.name))
      wantCloseUp(recent, event.name, event.clock);
    if (event.name === "no drive") ending = "no drive";
    if (event.name === "vehicle falls behind" && unit.driver.whenBehind === "stops") ending = "driver stopped";
    if (event.name === "first flare") feels(event, unit.driver.atFirstFlare, resolve);
    if (event.name === "first sustained slip") feels(event, unit.driver.atFirstSlip, resolve);
  };
  const tellNow = (name: HistoryEvent["name"], condition: string, clutch?: string) => {
    momentOf(state, now.temperature, now.leakFlow, moment);
    tell(eventAt(watcher(name, condition, 0, clutch), moment));
  };

  /** After every step: look at every condition, keep the extremes, note the instant. */
  const after = (): boolean => {
    momentOf(state, now.temperature, now.leakFlow, moment);
    measures.take(walk, engagement);
    for (let i = 0; i < measures.watched; i++) {
      const watch = measures.watchers[i]!;
      if (watch.fired) continue;
      const event = look(watch, measures.values[i]!, before, moment);
      if (event !== undefined) tell(event);
    }
    copyMoment(moment, before);
    gather(walk, row);
    if (now.temperature > warmest) {
      warmest = now.temperature + WARMER;
      noteRanges(outside, walk, engagement);
    } else if (walk.slip.heat > 0) noteRanges(outside, walk, engagement);
    if (walk.slip.heat > 0 && state.slipping !== wasSlipping) slips[walk.slip.clutch]! += 1;
    wasSlipping = state.slipping;
    note(recent, walk);
    if (state.distance >= resolve.stopsAt) ending ??= resolve.as;
    return ending === undefined;
  };
  const standUntil = (clock: number): boolean => {
    // Dated entries and the opening of the leak are met exactly; an entry whose date fell into a trip is made when that has ended.
    for (;;) {
      const entry = topUps[poured];
      const opens = "after" in plan.opens && state.leakAge < 0 && unit.leak !== null ? plan.opens.after : Infinity;
      const next = Math.min(clock, Math.max(state.clock, entry?.at ?? Infinity), Math.max(state.clock, opens));
      if (next > state.clock && !stand(walk, next - state.clock, after)) return false;
      if (opens <= state.clock) open();
      if (entry !== undefined && entry.at <= state.clock) {
        poured++;
        topUp(walk, entry.volume * density(unit.fluid.density15, entry.temperature), entry.temperature);
        tellNow("topped up", pouredIn(entry.volume, entry.temperature));
      }
      const more = poured < topUps.length && topUps[poured]!.at <= state.clock;
      if (state.clock >= clock - 1e-6 && !more) return true;
    }
  };
  const topUps = [...plan.topUps].sort((a, b) => a.at - b.at);
  let poured = 0;
  const open = () => {
    state.leakAge = 0;
    // Open before the start: its calendar counts from there, its running is in the opening itself.
    state.leakOpenedAt = "after" in plan.opens && plan.opens.after < 0 ? plan.opens.after : state.clock;
    tellNow("leak opens", "as the case says");
  };

  momentOf(state, now.temperature, 0, before);
  days: for (let day = 0; day * DAY < plan.span; day++) {
    road.ambient = ambientOn(unit, plan.dayOfYear + day);
    for (const trip of week.days[(plan.weekday + day) % 7]!) {
      if (!standUntil(Math.max(state.clock, day * DAY + trip.startsAt))) break days;
      row = newRow();
      hitch((plan.weekday + day) % 7, state.clock);
      if (!idleInNeutral(walk, 2, build.engine.idleSpeed, after, trip.ticks.grade[0])) break days;
      engageFromRest(walk, engagement);
      measures.engaged(walk, engagement);
      noteRanges(outside, walk, engagement); // the coldest of the trip
      const { ticks } = trip;
      for (let i = 0; i < ticks.count; i++) {
        const seconds = ticks.dt[i]!;
        const target = ticks.speed[i]!;
        const grade = ticks.grade[i]!;
        const lateral = ticks.lateral[i]!;
        const before = state.leakAge < 0 && unit.leak !== null ? untilOpen(plan, state, seconds, target) : Infinity;
        if (before < seconds) {
          // The leak opens within the tick: what is left of it follows afterwards.
          const between = walk.scheduled + ((target - walk.scheduled) * before) / seconds;
          if (before > 0 && !tick(walk, before, between, grade, lateral, engagement, after)) break;
          open();
        }
        const age = state.leakAge;
        const left = before < seconds ? seconds - before : seconds;
        if (!tick(walk, left, target, grade, lateral, engagement, after)) break;
        if (unit.leak !== null && age >= 0 && hasParted(unit.leak.opening, state.leakAge) && !hasParted(unit.leak.opening, age))
          tellNow("line parts", "the crack has grown to its end");
        if (recent.wanted.length > 0) cutCloseUps(recent, state.clock, closeUps);
      }
      settle(walk);
      noteRanges(outside, walk, engagement);
      closeRow(walk, row, measures);
      keep(trips, row);
      if (ending !== undefined) break days;
      pour(walk, resolve, (says) => {
        tellNow("topped up", says);
      });
    }
    if (!standUntil(Math.min(plan.span, (day + 1) * DAY))) break;
    if (progress !== undefined && !progress(Math.min(1, state.clock / plan.span), state)) {
      ending = "cancelled";
      break;
    }
  }
  cutCloseUps(recent, Infinity, closeUps);
  const marginOf = margins(unit);
  return {
    events: events.sort((a, b) => a.clock - b.clock),
    trips,
    closeUps,
    clutches: Array.from({ length: clutchCount }, (_, i) => ({
      name: (build.clutches[i] ?? build.lockUp.clutch).name,
      damage: damageIndex(shareLeft(build, state, i), marginOf[i]!),
      glazed: state.glaze[i]!,
      charred: state.char[i]!,
      worn: state.wear[i]!,
      hottest: measures.hottest[i]!,
      slipEnergy: walk.slipEnergy[i]!,
      shiftEnergy: walk.shiftEnergy[i]!,
      slips: slips[i]!,
      learnedFill: state.learnedFill[i] ?? 0,
      debris: debrisOf(build.clutches[i] ?? build.lockUp.clutch, state, i),
    })),
    ledger: walk.ledger,
    closure: closure(unit, state, walk.ledger),
    outside: outsideOf(outside),
    endedBy: ending ?? "end of span",
    end: state,
  };
}

function debrisOf(clutch: Clutch, { wear, char }: State, i: number): Debris {
  return debris(clutch.faces * faceArea(clutch), clutch.liningThickness, wear[i]!, char[i]!);
}

/** Air temperature on a day of the year [K]: coldest on 15 January. */
export function ambientOn(unit: Unit, dayOfYear: number): number {
  const { meanTemperature, yearlySwing } = unit.surroundings;
  return meanTemperature - yearlySwing * Math.cos((2 * Math.PI * (dayOfYear - 14)) / 365.25);
}

/** Time until the leak opens [s], as far as that is within a tick towards a speed: by the clock, by running, or by the metres at the mean speed. */
function untilOpen({ opens }: Plan, state: State, seconds: number, target: number): number {
  if ("after" in opens) return Math.max(0, opens.after - state.clock);
  if ("running" in opens) return Math.max(0, opens.running - state.running);
  const left = opens.distance - state.distance;
  const mean = 0.5 * (state.speed + target);
  return left <= 0 ? 0 : left < mean * seconds ? left / mean : Infinity;
}

function copyMoment(from: Moment, to: Moment): void {
  to.clock = from.clock;
  to.running = from.running;
  to.distance = from.distance;
  to.lost = from.lost;
  to.mass = from.mass;
  to.temperature = from.temperature;
  to.leakFlow = from.leakFlow;
}

/** Keeps the extremes of the trip. */
function gather(walk: Walk, row: TripRow): void {
  const { state, now, slip } = walk;
  if (now.temperature > row.hottest) row.hottest = now.temperature;
  if (state.gas > row.mostGas) row.mostGas = state.gas;
  const pressure = now.line.linePressure / now.setPoint;
  if (pressure < row.leastPressure) row.leastPressure = pressure;
  const margin = now.holds / Math.max(1, now.drive.turbineTorque);
  if (margin < row.leastMargin) row.leastMargin = margin;
  if (now.drive.lockSlip > row.lockUpSlip) row.lockUpSlip = now.drive.lockSlip;
  const plate = state.plate[slip.clutch]!;
  if (plate > row.hottestPlate) row.hottestPlate = plate;
}

function closeRow(walk: Walk, row: TripRow, measures: Measures): void {
  const { state, now } = walk;
  row.clock = state.clock;
  row.running = state.running;
  row.distance = state.distance;
  row.lost = state.hidden + state.onRoad + state.onGround;
  row.mass = state.mass;
  row.level = measures.level;
  row.trim = state.trim;
  row.leakFlow = now.leakFlow;
  row.slipEnergy = measures.slipInTrip();
  row.worstDamage = measures.worstDamage();
}
