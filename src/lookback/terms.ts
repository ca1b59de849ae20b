// What each item of evidence says of a guess, as the logarithm of its probability. Items that only the fluid lost decides are cheap.

import { counted, lessThan, logAdd, measured } from "../chance/terms.ts";
import { logNormalBelow } from "../chance/normal.ts";
import type { LeakOpening } from "../physics/build.ts";
import { gravity } from "../physics/fluid/surroundings.ts";
import { density } from "../physics/fluid/density.ts";
import { leakFlow, type GrowingOpening } from "../physics/leak/flow.ts";
import { hasParted, openingAt } from "../physics/leaking.ts";
import type { Course } from "./course.ts";
import type { Added, Evidence, EvidenceKind, When } from "./evidence.ts";
import { findsLeak } from "./finding.ts";
import { logLook, looksBy, measuredBy, type SharedErrors } from "./shared.ts";
import { at, type Shown, type Table } from "./shown.ts";
import type { Visit } from "./visit.ts";

/** What the controller has learned, over what is missing: trim [Pa], and by clutch how much earlier it fills [s]. */
export interface Learned {
  readonly trim: Table;
  readonly fills: ReadonlyMap<string, Table>;
}

/** Everything that a term may ask of a guess. */
export interface Asked {
  readonly visit: Visit;
  readonly shown: Shown;
  readonly learned: Learned;
  /** Followed when first asked for. */
  readonly course: () => Course;
  readonly opening: LeakOpening | null;
  readonly opensAt: number;
  /** Lacking at the start [m³ at fill temperature]. */
  readonly short: number;
  readonly soakedUp: number;
  /** What was really poured in, and the errors that several items share. */
  readonly added: readonly Added[];
  readonly shared: SharedErrors;
  readonly use: number;
  readonly stretch: number;
  readonly drop: number;
  /** Running seconds by a moment of the visit's clock, at the prepared week's use. */
  readonly runningBy: (clock: number) => number;
  /** Share of the way from second 0 to the visit that is driven by a moment: all of it once the vehicle no longer drives. */
  readonly way: (clock: number) => number;
  /** Whether fluid that leaks stays out of sight: a cooler that leaks into the coolant. */
  readonly unseen: boolean;
  /** Line pressure against that of a sound pump [-]. */
  readonly weakness: number;
  /** Symptoms come of themselves, on any day. */
  readonly ails: boolean;
  /** A line that let go: what burns on the way down is not foretold. */
  readonly sudden: boolean;
}

/** Kinds whose terms need the events of a course and not only what is lost. */
const dear: readonly EvidenceKind[] = ["first spot", "first symptom", "not felt", "sediment", "teardown"];
export const isDear = ({ kind }: Evidence): boolean => dear.includes(kind);

/** Errors of what is told without one: a date by memory [s], and the share of cases that are told wrongly. */
const WRONG = 0.02;

/** Lacking at a moment [m³ at fill temperature]. */
export function missingAt(asked: Asked, clock: number): number {
  const { visit, shown, opensAt, short, added } = asked;
  const { unit } = visit;
  let mass = clock <= opensAt ? 0 : asked.course().lostBy(clock);
  for (const { at: when, volume, temperature } of added)
    if (when <= clock) mass -= volume * density(unit.fluid.density15, temperature);
  return short + mass / shown.filling;
}

/** Logarithm of the probability of an item; 0 where the guess has nothing to do with it. */
export function termOf(item: Evidence, asked: Asked): number {
  const { shown, visit, shared } = asked;
  switch (item.kind) {
    case "fluid missing": {
      const { more, error } = measuredBy(item.by, item.error, shared);
      return measured(item.volume, missingAt(asked, item.at) + more, error);
    }
    case "fluid drained": {
      const drained = visit.unit.build.fill - missingAt(asked, item.at) - item.stays;
      const { more, error } = measuredBy(item.by, item.error, shared);
      return measured(item.volume, Math.max(0, drained) + more, Math.hypot(error, item.staysError));
    }
    case "dipstick":
      return measured(
        item.position,
        at(shown.stick.get(item.temperature)!, missingAt(asked, item.at)),
        item.error,
      );
    case "off the dipstick":
      return lessThan(
        stickFoot,
        at(shown.stick.get(item.temperature)!, missingAt(asked, item.at)),
        item.error,
      );
    case "drops":
      return counted(item.count, expectedDrops(item, asked));
    case "first spot":
      return told(
        item.when,
        asked.unseen ? Infinity : asked.course().when("first spot on the ground"),
        asked,
      );
    case "first symptom":
      return asked.ails
        ? anyDay(item.when, visit)
        : told(item.when, asked.course().when(item.symptom), asked);
    case "not felt": {
      if (asked.ails) return Math.log1p(-AILS * Math.min(1, item.until / visit.at));
      const came = byCalendar(asked.course().when(item.symptom), asked);
      return came === Infinity ? 0 : mistaken(logNormalBelow((came - item.until) / DAYS));
    }
    case "known full":
      return saysFull(missingAt(asked, item.at), item);
    case "looked":
      return saysLook(seenAt(item, asked), item, asked);
    case "line pressure": {
      const foretold = asked.weakness * at(shown.linePressure, missingAt(asked, item.at));
      return measured(item.pressure, foretold, Math.hypot(item.error, UNLIKE * foretold));
    }
    case "cooler flow":
      if (asked.weakness < 1) return -Math.log(at(shown.coolerFlow!, 0));
      return measured(item.flow, at(shown.coolerFlow!, missingAt(asked, item.at)), item.error);
    case "sediment":
      return sediment(item, asked);
    case "teardown":
      return teardown(item, asked);
    case "fluid in the coolant":
      return Math.log(item.found === asked.unseen ? 1 - WRONG : WRONG);
    // What a controller learns of a weak pump is not worked out: anything within its limit.
    case "learned trim":
      if (asked.weakness < 1) return -Math.log(2 * visit.unit.build.shiftControl.trimLimit);
      return measured(item.pressure, at(asked.learned.trim, missingAt(asked, item.at)), item.error);
    case "learned fill":
      if (asked.weakness < 1) return -Math.log(visit.unit.build.shiftControl.fillLimit);
      return measured(
        item.time,
        at(asked.learned.fills.get(item.clutch)!, missingAt(asked, item.at)),
        item.error,
      );
  }
}

/** What a level that was found full says of so much missing [m³]: it is read wrongly now and then, by any amount that is ever lacking. */
export const saysFull = (missing: number, { error }: Extract<Evidence, { kind: "known full" }>): number =>
  logAdd(Math.log1p(-WRONG) + measured(0, missing, error), logWrong + measured(0, missing, WRONG_LEVEL));

/** What a look says of a flow that it can see [m³/s]: something wet may be another's fluid. */
export function saysLook(
  flow: number,
  { look, seen }: Extract<Evidence, { kind: "looked" }>,
  { shared }: Asked,
): number {
  const found = findsLeak(look, flow);
  return logLook(seen, seen ? Math.max(found, WRONG) : found, shared(looksBy(look)));
}

/** The stick ends one distance of its marks under the low one. */
const stickFoot = -1;
const DAYS = 3 * 86400;
const logWrong = Math.log(WRONG);
/** How far a level that was read wrongly is off [m³]: standard deviation, assumed. */
const WRONG_LEVEL = 2e-3;

/** What was told is wrong now and then: a probability never falls under that. */
const mistaken = (log: number): number => logAdd(log + Math.log1p(-WRONG), logWrong - 5);

/** A moment of a guess's clock by the calendar before the visit [s]: another one only where that clock is that of the miles. */
const byCalendar = (clock: number, { stretch, visit: { at: visited } }: Asked): number =>
  visited - stretch * (visited - clock);

/** An event told to have come between two moments, of a guess in which it comes at `clock` (Infinity: not by the visit); by the odometer in the guess's own miles. */
function told({ from, to, error, of }: When, clock: number, asked: Asked): number {
  // "Not by then": it may never have come.
  if (clock === Infinity) return to === Infinity ? 0 : logWrong - 5;
  const came = of === undefined ? byCalendar(clock, asked) : of * asked.way(clock);
  const below = to === Infinity ? 0 : logNormalBelow((to - came) / error);
  const above = from === -Infinity ? 0 : logNormalBelow((came - from) / error);
  if (from === -Infinity || to === Infinity) return mistaken(below + above);
  const both = Math.exp(below) - Math.exp(logNormalBelow((from - came) / error));
  return mistaken(Math.log(Math.max(both, 1e-300)));
}

/** A worn pump or wrong fluid shows a symptom by the visit in so many cases, and then on any day: assumed. */
export const AILS = 0.4;
/** A sound unit's line pressure differs from its drawing by this share: assumed. */
export const UNLIKE = 0.08;

/** The same of a symptom that may come on any day before the visit, or not at all. */
function anyDay({ from, to, of }: When, { at: visited }: Visit): number {
  const whole = of ?? visited;
  const part = Math.max(0, Math.min(to, whole) - Math.max(from, 0));
  const later = to === Infinity ? 1 - AILS : 0;
  return mistaken(Math.log(Math.max(later + (AILS * part) / whole, 1e-300)));
}

const path: GrowingOpening & { viscous: number; inertial: number } = { viscous: 0, inertial: 0 };

/** How a leak is seen to flow: idling hot, or parked in the bay. */
export type Moment = "idling hot" | "parked";

/** Flow through the leak [m³/s] at a moment of the visit's clock. */
export function flowAt(asked: Asked, clock: number, moment: Moment): number {
  const { opening, opensAt, visit, shown } = asked;
  if (opening === null || clock <= opensAt) return 0;
  const missing = missingAt(asked, clock);
  const pressure =
    moment === "idling hot"
      ? at(shown.pressure, missing)
      : shown.bay.density * gravity * Math.max(0, at(shown.parkedDepth, missing) - visit.site.height);
  return flowUnder(pressure, asked, clock, moment);
}

/** The same under a pressure at the leak [Pa]. */
export function flowUnder(pressure: number, asked: Asked, clock: number, moment: Moment): number {
  const { opening, opensAt, shown, use } = asked;
  if (opening === null || clock <= opensAt) return 0;
  const running = moment === "idling hot";
  const { density: rho, viscosity: mu } = running ? shown.hot : shown.bay;
  // Rounding alone may take it below nothing.
  const age = Math.max(0, use * (asked.runningBy(clock) - asked.runningBy(opensAt)));
  if (hasParted(opening, age) && !running) return 0;
  openingAt(path, opening, age, pressure, running, asked.stretch * (clock - opensAt));
  return pressure > 0 ? leakFlow(path, pressure, mu, rho) : 0;
}

/** Flow that a look can see [m³/s]: none of a leak into the coolant, nor what a shield that is left on still holds. */
export function seenAt({ at: clock, look }: Extract<Evidence, { kind: "looked" }>, asked: Asked): number {
  if (asked.unseen || clock <= asked.opensAt) return 0;
  const { unit, shield } = asked.visit;
  const hides =
    shield && look !== "shield taken off" && heldAt(asked, clock) < asked.soakedUp * unit.fluid.density15;
  return hides ? 0 : flowAt(asked, clock, "idling hot");
}

/** What has leaked and hangs under the vehicle [kg]: all of it until nothing more is held back. */
export const heldAt = ({ course, soakedUp, unseen, visit }: Asked, clock: number): number =>
  unseen ? 0 : Math.min(course().lostBy(clock), soakedUp * visit.unit.fluid.density15);

/** Drops that a count would find, were the flow at that moment to drip from the leak's own rim. */
export const expectedDrops = (item: Extract<Evidence, { kind: "drops" }>, asked: Asked): number =>
  dropsOf(asked.unseen ? 0 : flowAt(asked, item.at, item.moment), item, asked);

/** Drops that a count would find of a flow [m³/s]. */
export function dropsOf(
  flow: number,
  { dropVolume, moment, time }: Extract<Evidence, { kind: "drops" }>,
  { shown, drop }: Asked,
): number {
  const volume = dropVolume ?? drop * (moment === "parked" ? shown.bay : shown.hot).drop;
  // A count that is off by one now and then is no wonder: nothing is ever foretold to be quite dry.
  return Math.max(0.05, (flow * time) / volume);
}

/** A lining is called thin under this share of a new one. */
const THIN = 0.85;

/** What an opened clutch shows, whether it is unhurt, hurt or burnt: assumed shares of what is found in each. */
function teardown(
  item: Extract<Evidence, { kind: "teardown" }>,
  { course, visit, ails, sudden }: Asked,
): number {
  const { build } = visit.unit;
  // A worn pump burns clutches as well, and so does a sudden loss on its way down: nothing foretells which.
  if (ails || sudden) return Math.log(item.burnt ? AILS : 1 - AILS);
  const state =
    course().when("damage 1", item.clutch) <= item.at
      ? 2
      : course().when("damage 0.1", item.clutch) <= item.at
        ? 1
        : 0;
  const says = (yes: boolean, shares: readonly [number, number, number]) =>
    Math.log(yes ? shares[state] : 1 - shares[state]);
  let log = says(item.burnt, [0.03, 0.3, 0.96]);
  const clutch = [...build.clutches, build.lockUp.clutch].find(({ name }) => name === item.clutch);
  if (item.lining !== undefined && clutch !== undefined)
    log += says(item.lining < THIN * clutch.liningThickness, [0.03, 0.3, 0.7]);
  // A steel that has taken colour has been hotter than any sound shift makes it.
  if (item.steelTint !== undefined) log += says(item.steelTint !== "bright", [0.03, 0.5, 0.9]);
  return log;
}

/** What is in the pan against the worst clutch's damage: assumed shares of what technicians find. */
function sediment(
  { amount, at: when }: Extract<Evidence, { kind: "sediment" }>,
  { course, ails, sudden }: Asked,
): number {
  const burnt = course().when("damage 1") <= when;
  const hurt = burnt || course().when("damage 0.1") <= when;
  const shares =
    ails || sudden ? [0.3, 0.4, 0.3] : burnt ? [0.02, 0.18, 0.8] : hurt ? [0.1, 0.6, 0.3] : [0.6, 0.37, 0.03];
  return Math.log(shares[["clean", "grey film", "dark flakes"].indexOf(amount)]!);
}
