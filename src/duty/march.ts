// The loss from week to week. Whole weeks are marched together, by steps as long as growth and season allow; a week in which the leak
// opens, parts or is topped up is walked trip by trip.

import { ambientOn, type Plan } from "../history/simulate.ts";
import type { Leak, Unit } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { standLoses, takeOpening, tripRunning, weekAgeing, weekRunning, weekStanding } from "./flow.ts";
import { newReading, takeAir, takeLevel, type Reading } from "./reading.ts";
import { fullMass } from "./frozen.ts";
import type { Prepared } from "./prepared.ts";

export const DAY = 86400;
export const WEEK = 7 * DAY;
/** Longest step [weeks], most change of the air [K] and of the weekly loss (as a share) in one. */
const LONGEST_STEP = 16;
const AIR_STEP = 4;
const GROWTH_STEP = 0.3;

/** A leak on its way through the weeks; written anew for every history. */
export interface March {
  readonly prepared: Prepared;
  readonly reading: Reading;
  plan: Plan;
  leak: Leak | null;
  /** Trips in the order in which they come in a week of this plan, and when each starts after the week's beginning [s]. */
  readonly order: Int32Array;
  readonly startsAt: Float64Array;
  /** Running seconds and metres of a week, and how much of them lies before each trip. */
  weekTime: number;
  weekDistance: number;
  /** Seconds of a week in which the vehicle moves. */
  readonly weekMoves: number;
  readonly timeBefore: Float64Array;
  readonly distanceBefore: Float64Array;
  /** When the leak opens: clock and running time [s]. */
  opensAt: number;
  opensRunning: number;
  /** Lacking before the first day [kg], and whole weeks in the span. */
  shortAtFirst: number;
  weeks: number;
  /** By week: lost and added so far at its beginning [kg], and loss per week there [kg]. */
  lost: Float64Array;
  added: Float64Array;
  rate: Float64Array;
  /** The week that was walked last, trip by trip: lost at the start and end of each trip, and added by then [kg]. */
  walked: number;
  /** The trip whose opening was taken last, counted from the start, and what that trip loses [kg]. */
  opened: number;
  tripLoss: number;
  /** What a trip and a stand of each kind lose in a week [kg]. */
  readonly perKind: Float64Array;
  readonly perStand: Float64Array;
  readonly lostAtStart: Float64Array;
  readonly lostAtEnd: Float64Array;
  readonly addedAtStart: Float64Array;
}

export function newMarch(prepared: Prepared, plan: Plan): March {
  const count = prepared.occurrences.length;
  const row = () => new Float64Array(count);
  return {
    prepared,
    reading: newReading(prepared.climates.length),
    plan,
    leak: null,
    order: new Int32Array(count),
    startsAt: row(),
    weekTime: 0,
    weekDistance: 0,
    weekMoves: prepared.occurrences.reduce(
      (sum, { kind }) => sum + prepared.kinds[kind]!.pieceMoves.reduce((a, b) => a + b, 0),
      0,
    ),
    timeBefore: row(),
    distanceBefore: row(),
    opensAt: Infinity,
    opensRunning: Infinity,
    shortAtFirst: 0,
    weeks: 0,
    lost: new Float64Array(64),
    added: new Float64Array(64),
    rate: new Float64Array(64),
    walked: -1,
    opened: -1,
    tripLoss: 0,
    perKind: new Float64Array(prepared.kinds.length),
    perStand: new Float64Array(prepared.standKinds.length),
    lostAtStart: row(),
    lostAtEnd: row(),
    addedAtStart: row(),
  };
}

/** Begins a plan: the order of the trips, and when the leak opens. */
export function begin(march: March, plan: Plan): void {
  const { prepared, order, startsAt, timeBefore, distanceBefore } = march;
  const { occurrences, kinds, unit } = prepared;
  march.plan = plan;
  march.leak = plan.unit.leak;
  march.walked = -1;
  march.opened = -1;
  const count = occurrences.length;
  let first = 0;
  while (first < count && occurrences[first]!.startsAt < plan.weekday * DAY) first++;
  let [time, distance] = [0, 0];
  for (let i = 0; i < count; i++) {
    const at = (first + i) % count;
    const { kind, startsAt: monday } = occurrences[at]!;
    order[i] = at;
    startsAt[i] = monday - plan.weekday * DAY + (monday < plan.weekday * DAY ? WEEK : 0);
    timeBefore[i] = time;
    distanceBefore[i] = distance;
    time += kinds[kind]!.time;
    distance += kinds[kind]!.pieceDistances.at(-1)!;
  }
  march.weekTime = time;
  march.weekDistance = distance;
  march.shortAtFirst = (plan.fillShort ?? 0) * density(unit.fluid.density15, unit.build.fillTemperature);
  march.weeks = Math.ceil(plan.span / WEEK - 1e-9);
  if (march.lost.length < march.weeks + 1) {
    const room = Math.max(2 * march.lost.length, march.weeks + 1);
    march.lost = new Float64Array(room);
    march.added = new Float64Array(room);
    march.rate = new Float64Array(room);
  }
  march.opensAt = Infinity;
  march.opensRunning = Infinity;
  if (march.leak === null) return;
  if ("after" in plan.opens) {
    march.opensAt = plan.opens.after;
    march.opensRunning = runningAt(march, plan.opens.after);
  } else if (distance > 0) {
    march.opensRunning =
      "running" in plan.opens ? plan.opens.running : runningAtDistance(march, plan.opens.distance);
    march.opensAt = clockAt(march, march.opensRunning);
  }
}

/** Running seconds by a moment [s since the start]. */
export function runningAt(march: March, clock: number): number {
  const { startsAt, timeBefore, order, prepared, weekTime } = march;
  const week = Math.floor(clock / WEEK);
  const into = clock - week * WEEK;
  let running = week * weekTime;
  for (let i = 0; i < order.length; i++) {
    if (startsAt[i]! > into) break;
    const { time } = prepared.kinds[prepared.occurrences[order[i]!]!.kind]!;
    running = week * weekTime + timeBefore[i]! + Math.min(time, into - startsAt[i]!);
  }
  return running;
}

/** The moment [s since the start] at which the engine has run so long; the end of a trip rather than the start of the next. */
export function clockAt(march: March, running: number): number {
  const { startsAt, timeBefore, order, weekTime } = march;
  if (!(weekTime > 0)) return Infinity;
  const week = Math.floor(running / weekTime);
  const into = running - week * weekTime;
  let i = order.length - 1;
  while (i > 0 && timeBefore[i]! > into) i--;
  return week * WEEK + startsAt[i]! + into - timeBefore[i]!;
}

function runningAtDistance(march: March, distance: number): number {
  const { distanceBefore, timeBefore, order, prepared, weekDistance, weekTime } = march;
  const week = Math.floor(distance / weekDistance);
  const into = distance - week * weekDistance;
  let i = order.length - 1;
  while (i > 0 && distanceBefore[i]! > into) i--;
  const { pieceDistances, pieceTimes } = prepared.kinds[prepared.occurrences[order[i]!]!.kind]!;
  return week * weekTime + timeBefore[i]! + between(pieceDistances, pieceTimes, into - distanceBefore[i]!);
}

/** A straight line through rising points. */
export function between(x: readonly number[], y: readonly number[], at: number): number {
  let i = 1;
  while (i < x.length - 1 && x[i]! < at) i++;
  const width = x[i]! - x[i - 1]!;
  return y[i - 1]! + (width > 0 ? ((y[i]! - y[i - 1]!) * Math.min(width, at - x[i - 1]!)) / width : 0);
}

/** Air at a moment [K]: its day's. */
export const airAt = ({ plan }: March, clock: number): number =>
  ambientOn(plan.unit, plan.dayOfYear + Math.floor(clock / DAY));

/** Air of a week [K]: its middle day's. */
export const airOf = ({ plan }: March, week: number): number =>
  ambientOn(plan.unit, plan.dayOfYear + 7 * week + 3);

/** Loss per week [kg] at a moment [weeks] with so much lost and added. */
function rateAt(march: March, week: number, lost: number, added: number): number {
  const { prepared, reading, leak, weekTime } = march;
  if (leak === null) return 0;
  takeAir(reading, prepared.climates, airOf(march, week));
  takeLevel(reading, prepared.climates, march.shortAtFirst + lost - added);
  const age = Math.max(0, week * weekTime - march.opensRunning);
  const calendar = Math.max(0, week * WEEK - march.opensAt);
  takeOpening(reading, prepared, leak, age, calendar, week * weekAgeing(reading, prepared));
  return weekRunning(reading, prepared, leak) + weekStanding(reading, prepared, leak);
}

/** Marches on until so much is lacking [kg] or the span is over; returns the week in which it stopped. */
export function marchOn(march: March, enough: number): number {
  const { plan, lost, added, rate, weeks } = march;
  lost[0] = 0;
  added[0] = 0;
  rate[0] = 0;
  const most = fullMass(march.prepared.unit);
  const opensIn = march.opensAt < Infinity ? Math.floor(march.opensAt / WEEK) : Infinity;
  const partsIn = Math.floor(partsAt(march) / WEEK);
  let week = 0;
  while (week < weeks) {
    const entry = nextEntry(plan, week * WEEK);
    const next = Math.min(
      weeks,
      week <= opensIn ? opensIn : Infinity,
      week <= partsIn ? partsIn : Infinity,
      Math.floor(entry / WEEK),
    );
    if (next > week) {
      if (week <= opensIn) {
        for (; week < next; week++) {
          lost[week + 1] = 0;
          added[week + 1] = added[week]!;
          rate[week + 1] = 0;
        }
      } else week = stretch(march, week, next, enough);
    } else {
      walkWeek(march, week);
      week++;
    }
    if (march.shortAtFirst + lost[week]! - added[week]! > Math.min(enough, most)) break;
  }
  return week;
}

/** When the line parts [s since the start]; Infinity: never. */
export function partsAt(march: March): number {
  const opening = march.leak?.opening;
  return opening?.kind === "crack" && march.opensRunning < Infinity
    ? clockAt(march, march.opensRunning + opening.partsAfter)
    : Infinity;
}

function nextEntry({ topUps }: Plan, from: number): number {
  let next = Infinity;
  for (let i = 0; i < topUps.length; i++)
    if (topUps[i]!.at >= from && topUps[i]!.at < next) next = topUps[i]!.at;
  return next;
}

/** Whole weeks with nothing dated in them, by classic steps of fourth order with a cubic between; returns the week reached. */
function stretch(march: March, from: number, until: number, enough: number): number {
  const { lost, added, rate, shortAtFirst } = march;
  const fluid = added[from]!;
  let week = from;
  let slope = rateAt(march, week, lost[week]!, fluid);
  rate[week] = slope;
  let step = 1;
  while (week < until) {
    const start = lost[week]!;
    if (shortAtFirst + start - fluid > enough) break;
    const air = airOf(march, week);
    step = Math.min(step, until - week, LONGEST_STEP);
    while (step > 1 && Math.abs(airOf(march, week + step) - air) > AIR_STEP) step >>= 1;
    for (;;) {
      const half = rateAt(march, week + 0.5 * step, start + 0.5 * step * slope, fluid);
      const again = rateAt(march, week + 0.5 * step, start + 0.5 * step * half, fluid);
      const full = rateAt(march, week + step, start + step * again, fluid);
      const grown = start + (step / 6) * (slope + 2 * half + 2 * again + full);
      const change = Math.abs(full - slope) / Math.max(full, slope, 1e-12);
      if (step > 1 && change > 2 * GROWTH_STEP) {
        step >>= 1;
        continue;
      }
      if (change > GROWTH_STEP) {
        // It grows from trip to trip.
        walkWeek(march, week);
        week++;
        rate[week] = slope = full;
        break;
      }
      for (let w = 1; w <= step; w++) {
        const s = w / step;
        const [p, q] = [s * s * (3 - 2 * s), s * (1 - s)];
        lost[week + w] = start + (grown - start) * p + step * q * ((1 - s) * slope - s * full);
        added[week + w] = fluid;
        rate[week + w] = slope + (full - slope) * s;
      }
      week += step;
      slope = full;
      if (change < 0.5 * GROWTH_STEP) step *= 2;
      break;
    }
  }
  return week;
}

/** Mass added [kg] by entries after a moment and up to another [s since the start]. */
function entered({ topUps }: Plan, { fluid }: Unit, from: number, to: number): number {
  let mass = 0;
  for (let i = 0; i < topUps.length; i++) {
    const { at, volume, temperature } = topUps[i]!;
    if (at > from && at <= to) mass += volume * density(fluid.density15, temperature);
  }
  return mass;
}

/** Walks one week trip by trip from what was lost at its beginning; leaves what is lost at each trip's start and end, and the next week's beginning. */
export function walkWeek(march: March, week: number): void {
  const {
    prepared,
    reading,
    leak,
    order,
    startsAt,
    timeBefore,
    lost,
    added,
    rate,
    plan,
    lostAtStart,
    lostAtEnd,
    addedAtStart,
  } = march;
  const { occurrences, kinds, climates, unit } = prepared;
  march.walked = week;
  march.opened = -1;
  let now = lost[week]!;
  let fluid = added[week]!;
  takeAir(reading, climates, airOf(march, week));
  let ended = -1e-6;
  for (let i = 0; i < order.length; i++) {
    const { kind, stand } = occurrences[order[i]!]!;
    const { time } = kinds[kind]!;
    const clock = week * WEEK + startsAt[i]!;
    const running = week * march.weekTime + timeBefore[i]!;
    fluid += entered(plan, unit, week * WEEK + ended, clock);
    const leaks = leak !== null && march.opensAt < clock + time;
    const from = Math.max(0, march.opensRunning - running);
    if (leaks) {
      takeLevel(reading, climates, march.shortAtFirst + now - fluid);
      // One opening for the stand and the trip after it, as it is in the middle of the trip.
      const age = Math.max(0, running + 0.5 * (time + from) - march.opensRunning);
      const calendar = Math.max(0, clock + 0.5 * time - march.opensAt);
      takeOpening(reading, prepared, leak, age, calendar, week * weekAgeing(reading, prepared));
      now += standLoses(reading, prepared, leak, kind, stand, Math.min(stand, clock - march.opensAt));
    }
    lostAtStart[i] = now;
    addedAtStart[i] = fluid;
    if (leaks) now += tripLoses(march, kind, from, time);
    lostAtEnd[i] = now;
    ended = startsAt[i]! + time;
  }
  fluid += entered(plan, unit, week * WEEK + ended, (week + 1) * WEEK - 1e-6);
  lost[week + 1] = now;
  added[week + 1] = fluid;
  rate[week + 1] = now - lost[week]!;
}

/** Spreads what a marched week loses over its stands and trips, growing evenly; a week that was walked, or has a date in it, as a walk does. */
export function spread(march: March, week: number): void {
  if (march.walked === week) return;
  const {
    lost,
    added,
    rate,
    order,
    lostAtStart,
    lostAtEnd,
    addedAtStart,
    prepared,
    reading,
    leak,
    timeBefore,
    weekTime,
  } = march;
  const [before, next, fluid, slope] = [lost[week]!, lost[week + 1]!, added[week + 1]!, rate[week + 1]!];
  const growth = (slope - rate[week]!) / Math.max(slope, rate[week]!, 1e-12);
  const even =
    leak !== null && march.opensAt < week * WEEK && fluid === added[week]! && Math.abs(growth) < GROWTH_STEP;
  let walked = 0;
  if (even) {
    const { kinds, occurrences, standKinds, climates } = prepared;
    march.walked = week;
    march.opened = -1;
    takeAir(reading, climates, airOf(march, week));
    takeLevel(reading, climates, march.shortAtFirst + 0.5 * (before + next) - fluid);
    const age = Math.max(0, (week + 0.5) * weekTime - march.opensRunning);
    takeOpening(
      reading,
      prepared,
      leak,
      age,
      (week + 0.5) * WEEK - march.opensAt,
      week * weekAgeing(reading, prepared),
    );
    for (let k = 0; k < kinds.length; k++)
      march.perKind[k] = tripRunning(reading, prepared, leak, k, kinds[k]!.pieces.length - 1);
    for (let s = 0; s < standKinds.length; s++) {
      const { kind, stand } = standKinds[s]!;
      march.perStand[s] = standLoses(reading, prepared, leak, kind, stand, stand);
    }
    for (let i = 0; i < order.length; i++) {
      const { kind, standKind } = occurrences[order[i]!]!;
      const grown = 1 + growth * (timeBefore[i]! / weekTime - 0.5);
      walked += march.perStand[standKind]! * grown;
      lostAtStart[i] = before + walked;
      walked += march.perKind[kind]! * grown;
      lostAtEnd[i] = before + walked;
      addedAtStart[i] = fluid;
    }
  } else {
    walkWeek(march, week);
    walked = lost[week + 1]! - before;
    lost[week + 1] = next;
    added[week + 1] = fluid;
    rate[week + 1] = slope;
  }
  const scale = walked > 0 ? (next - before) / walked : 1;
  for (let i = 0; i < order.length; i++) {
    lostAtStart[i] = before + (lostAtStart[i]! - before) * scale;
    lostAtEnd[i] = before + (lostAtEnd[i]! - before) * scale;
  }
}

/** Mass lost between two moments of a trip [s since its start], through the opening that was taken. */
export function tripLoses(march: March, kind: number, from: number, to: number): number {
  return lostBy(march, kind, to) - lostBy(march, kind, from);
}

function lostBy({ reading, prepared, leak }: March, kind: number, time: number): number {
  if (leak === null || !(time > 0)) return 0;
  const { pieceTimes, time: whole } = prepared.kinds[kind]!;
  if (time >= whole) return tripRunning(reading, prepared, leak, kind, pieceTimes.length - 1);
  let p = 1;
  while (p < pieceTimes.length - 1 && pieceTimes[p]! < time) p++;
  if (time === pieceTimes[p]) return tripRunning(reading, prepared, leak, kind, p);
  const before = tripRunning(reading, prepared, leak, kind, p - 1);
  const after = tripRunning(reading, prepared, leak, kind, p);
  return (
    before +
    ((after - before) * (Math.min(time, pieceTimes[p]!) - pieceTimes[p - 1]!)) /
      (pieceTimes[p]! - pieceTimes[p - 1]!)
  );
}
