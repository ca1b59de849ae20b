// The course of a plan over its weeks: the order of its trips, when the leak opens, and the way from the clock to running time and back.

import { restsOf } from "../history/plan.ts";
import { ambientOn, type Plan } from "../history/simulate.ts";
import type { Leak } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { takeLeak } from "./flow.ts";
import type { Prepared } from "./prepared.ts";
import { newReading, type Reading } from "./reading.ts";

export const DAY = 86400;
export const WEEK = 7 * DAY;

/** Longest step of a march [weeks]: a parabola follows the season through it. */
export const LONGEST_STEP = 8;

/** What is lost in a stand is lost while the fluid is hot: on the mean after this share of it. */
export const HOT_PART = 0.35;

/** A week trip by trip: lost at the start and end of each trip, and added by then [kg]; `begun`: of which plan, by the march's count. */
export interface WeekTrips {
  begun: number;
  readonly lostAtStart: Float64Array;
  readonly lostAtEnd: Float64Array;
  readonly addedAtStart: Float64Array;
}

/** Where in a week, as shares of it: the mean over its driving and the mean square; by kind of stand the sum over where its stands lose, and of the squares. */
interface Lies {
  readonly trip: number;
  readonly tripSquare: number;
  readonly stands: Float64Array;
  readonly standSquares: Float64Array;
}

/** A week's trips from a weekday on, as in a `March`. */
interface Order {
  readonly order: Int32Array;
  readonly startsAt: Float64Array;
  readonly timeBefore: Float64Array;
  readonly distanceBefore: Float64Array;
  readonly weekTime: number;
  readonly weekDistance: number;
  readonly middle: number;
  readonly lies: { readonly clock: Lies; readonly running: Lies };
}

/** A leak on its way through the weeks; written anew for every history. */
export interface March {
  readonly prepared: Prepared;
  readonly reading: Reading;
  plan: Plan;
  leak: Leak | null;
  /** The weekday on which the plan begins, trips in the order in which they then come, and when each starts after the week's beginning [s]; by weekday, once asked for. */
  weekday: number;
  order: Int32Array;
  startsAt: Float64Array;
  readonly orders: Order[];
  /** Running seconds and metres of a week, and how much of them lies before each trip. */
  weekTime: number;
  weekDistance: number;
  /** By how much the middle of the week's driving comes after the middle of the week [weeks]. */
  middle: number;
  /** Where in the week its driving and its stands lie, by the clock and by what runs. */
  lies: Order["lies"];
  /**
   * Where a week loses what it loses: by how much later than in its middle on the mean, and its mean square distance from there less the 1/12 of a week that
   * loses evenly; weeks of the clock for a leak that grows by the calendar, else of running.
   */
  older: number;
  uneven: number;
  /** What the trips and the stands of a week lose by the rate that was read last [kg]. */
  ran: number;
  stood: number;
  /** The week whose rate is known before it is marched on from; -1: none is. */
  ratedIn: number;
  /** How wide the opening is in each half week of a step, but for a factor. */
  readonly widths: Float64Array;
  /** Seconds of a trip of each kind, and of a week, in which the vehicle moves. */
  readonly moves: Float64Array;
  readonly weekMoves: number;
  timeBefore: Float64Array;
  distanceBefore: Float64Array;
  /** When the leak opens: clock and running time [s]. */
  opensAt: number;
  opensRunning: number;
  /** The first week that it leaks in: the stand after a week's last trip is the next week's. */
  opensIn: number;
  /** Lacking before the first day [kg], and whole weeks in the span. */
  shortAtFirst: number;
  weeks: number;
  /** By week: lost and added so far at its beginning [kg], and loss per week there [kg]. */
  lost: Float64Array;
  added: Float64Array;
  rate: Float64Array;
  /** How many plans have begun, and the weeks trip by trip, those that this plan has walked or spread so far; kept from plan to plan. */
  begun: number;
  readonly byTrips: WeekTrips[];
  /** The trip whose opening was taken last, counted from the start, and what that trip loses [kg]. */
  opened: number;
  tripLoss: number;
  /** What a trip and a stand of each kind lose in a week [kg]. */
  readonly perKind: Float64Array;
  readonly perStand: Float64Array;
  /** The rows of the week that was turned to last, see `WeekTrips`. */
  lostAtStart: Float64Array;
  lostAtEnd: Float64Array;
  addedAtStart: Float64Array;
}

const nowhere: Lies = {
  trip: 0,
  tripSquare: 0,
  stands: new Float64Array(0),
  standSquares: new Float64Array(0),
};

export function newMarch(prepared: Prepared, plan: Plan): March {
  const count = prepared.occurrences.length;
  const row = () => new Float64Array(count);
  const moves = Float64Array.from(prepared.kinds, ({ pieceMoves }) => pieceMoves.reduce((a, b) => a + b, 0));
  return {
    prepared,
    reading: newReading(prepared),
    plan,
    leak: null,
    weekday: -1,
    order: new Int32Array(count),
    startsAt: row(),
    orders: [],
    weekTime: 0,
    weekDistance: 0,
    middle: 0,
    lies: { clock: nowhere, running: nowhere },
    uneven: 0,
    older: 0,
    stood: 0,
    ran: 0,
    ratedIn: -1,
    widths: new Float64Array(2 * LONGEST_STEP + 1),
    moves,
    weekMoves: prepared.occurrences.reduce((sum, { kind }) => sum + moves[kind]!, 0),
    timeBefore: row(),
    distanceBefore: row(),
    opensAt: Infinity,
    opensRunning: Infinity,
    opensIn: Infinity,
    shortAtFirst: 0,
    weeks: 0,
    lost: new Float64Array(64),
    added: new Float64Array(64),
    rate: new Float64Array(64),
    begun: 0,
    byTrips: [],
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
  const { unit } = march.prepared;
  march.plan = plan;
  march.leak = plan.unit.leak;
  march.begun++;
  march.opened = -1;
  if (march.weekday !== plan.weekday) inOrder(march, plan.weekday);
  march.reading.rests = restsOf(plan, march.weekTime);
  march.older = 0;
  march.ratedIn = -1;
  march.uneven = 0;
  march.stood = 0;
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
  march.opensIn = Infinity;
  if (march.leak === null) return;
  takeLeak(march.reading, march.leak);
  if ("after" in plan.opens) {
    march.opensAt = plan.opens.after;
    march.opensRunning = runningAt(march, plan.opens.after);
  } else if (march.weekDistance > 0) {
    march.opensRunning =
      "running" in plan.opens ? plan.opens.running : runningAtDistance(march, plan.opens.distance);
    march.opensAt = clockAt(march, march.opensRunning);
  }
  march.opensIn = bookedIn(march, march.opensAt);
}

/** The week that books what leaks at a moment: a trip that runs over midnight is its own week's, and the stand after a week's last trip is the next week's. */
export function bookedIn(march: March, clock: number): number {
  const week = Math.floor(clock / WEEK);
  const into = clock - week * WEEK;
  const ends = lastEnds(march);
  if (into < ends - WEEK) return Math.max(0, week - 1);
  return clock > 0 && into >= ends ? week + 1 : week;
}

const newTrips = (count: number): WeekTrips => ({
  begun: 0,
  lostAtStart: new Float64Array(count),
  lostAtEnd: new Float64Array(count),
  addedAtStart: new Float64Array(count),
});

/** Turns to the rows of a week; false when this plan has not written them yet. */
export function turnTo(march: March, week: number): boolean {
  const { byTrips, order, begun } = march;
  while (byTrips.length <= week) byTrips.push(newTrips(order.length));
  const trips = byTrips[week]!;
  march.lostAtStart = trips.lostAtStart;
  march.lostAtEnd = trips.lostAtEnd;
  march.addedAtStart = trips.addedAtStart;
  const known = trips.begun === begun;
  trips.begun = begun;
  return known;
}

/** When a week's last trip ends [s after the week's beginning]. */
function lastEnds({ order, startsAt, prepared: { kinds, occurrences } }: March): number {
  const last = order.length - 1;
  return last < 0 ? 0 : startsAt[last]! + kinds[occurrences[order[last]!]!.kind]!.time;
}

/** Puts the trips of a week in the order in which they come from a weekday on. */
function inOrder(march: March, weekday: number): void {
  march.weekday = weekday;
  Object.assign(march, (march.orders[weekday] ??= orderFrom(march.prepared, weekday)));
}

function orderFrom({ occurrences, kinds, standKinds }: Prepared, weekday: number): Order {
  const count = occurrences.length;
  const row = () => new Float64Array(count);
  const [order, startsAt, timeBefore, distanceBefore] = [new Int32Array(count), row(), row(), row()];
  let first = 0;
  while (first < count && occurrences[first]!.startsAt < weekday * DAY) first++;
  let [time, distance, middle] = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const at = (first + i) % count;
    const { kind, startsAt: monday } = occurrences[at]!;
    order[i] = at;
    startsAt[i] = monday - weekday * DAY + (monday < weekday * DAY ? WEEK : 0);
    timeBefore[i] = time;
    distanceBefore[i] = distance;
    middle += kinds[kind]!.time * startsAt[i]!;
    time += kinds[kind]!.time;
    distance += kinds[kind]!.pieceDistances.at(-1)!;
  }
  const liesBy = (
    tripAt: (i: number, half: number) => number,
    standAt: (i: number, stand: number) => number,
  ): Lies => {
    let [trip, tripSquare] = [0, 0];
    const [stands, standSquares] = [standKinds, standKinds].map(({ length }) => new Float64Array(length));
    order.forEach((at, i) => {
      const { kind, stand, standKind } = occurrences[at]!;
      const share = kinds[kind]!.time / time;
      const [drives, rests] = [tripAt(i, 0.5 * kinds[kind]!.time), standAt(i, stand)];
      trip += share * drives;
      tripSquare += share * drives * drives;
      stands![standKind]! += rests;
      standSquares![standKind]! += rests * rests;
    });
    return { trip, tripSquare, stands: stands!, standSquares: standSquares! };
  };
  return {
    order,
    startsAt,
    timeBefore,
    distanceBefore,
    weekTime: time,
    weekDistance: distance,
    middle: time > 0 ? middle / time / WEEK - 0.5 : 0,
    lies: {
      clock: liesBy(
        (i, half) => (startsAt[i]! + half) / WEEK,
        (i, stand) => (startsAt[i]! - (1 - HOT_PART) * stand) / WEEK,
      ),
      running: liesBy(
        (i, half) => (timeBefore[i]! + half) / time,
        (i) => timeBefore[i]! / time,
      ),
    },
  };
}

/** Running seconds by a moment [s since the start]. The last trip of a week may run into the next one; none was on its way at second 0. */
export function runningAt(march: March, clock: number): number {
  const { startsAt, timeBefore, order, prepared, weekTime } = march;
  const week = Math.floor(clock / WEEK);
  const into = clock - week * WEEK;
  const ends = lastEnds(march) - WEEK;
  let running = week * weekTime - (week === 0 ? 0 : Math.max(0, ends - into));
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
  let week = Math.floor(running / weekTime);
  if (running > 0 && running === week * weekTime) week--;
  const into = running - week * weekTime;
  let i = order.length - 1;
  while (i > 0 && timeBefore[i]! >= into) i--;
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

/** When the line parts [s since the start]; Infinity: never. */
export function partsAt(march: March): number {
  const opening = march.leak?.opening;
  return opening?.kind === "crack" && march.opensRunning < Infinity
    ? clockAt(march, march.opensRunning + opening.partsAfter)
    : Infinity;
}
