// What a guess foretells: how much has been lost by any moment, and when each event comes. By averages over the prepared week.

import { dutyEvents, type DutyEvents } from "../duty/history.ts";
import { dutyLoss } from "../duty/loss.ts";
import { WEEK } from "../duty/course.ts";
import type { Prepared } from "../duty/prepared.ts";
import type { EventName } from "../history/watch.ts";
import type { Plan } from "../history/simulate.ts";
import { density } from "../physics/fluid/density.ts";
import type { Leak, LeakOpening } from "../physics/build.ts";
import { agedOpening } from "../physics/leaking.ts";
import { runningOf } from "./along.ts";
import type { Added } from "./evidence.ts";
import type { SharedErrors } from "./shared.ts";
import type { Visit } from "./visit.ts";

/** One guess about the leak and the use of the vehicle. Seconds are those of the visit's clock. */
export interface Guess {
  readonly opening: LeakOpening | null;
  readonly opensAt: number;
  /** What the hiding place holds [m³]. */
  readonly soakedUp: number;
  /** Lacking from the start [m³ at fill temperature], and how much more the unit as it is needs for every event. */
  readonly short: number;
  readonly harder: number;
  /** What it takes the errors to be that several items share, and what was really poured in by that. */
  readonly shared: SharedErrors;
  readonly added: readonly Added[];
  /** Driving against the prepared week's. */
  readonly use: number;
  /** Days of the calendar for one of the visit's clock, counted back from the visit: other than 1 where only miles are known. */
  readonly stretch: number;
  /** Whether all that a line holds is lost within a trip. */
  readonly sudden: boolean;
}

export interface Course {
  /** Fluid lost by a moment [kg]; lent: it tells of the guess that was asked last. */
  readonly lostBy: (clock: number) => number;
  /** The first moment by which so much was lost [s], in a stand to a hundredth of a second of its plan; lent too. Infinity: not by the visit. */
  readonly lostWhen: (mass: number) => number;
  /** Whether more was lost before the visit than any event takes. */
  readonly ranOut: boolean;
  /** When an event came first [s]; Infinity: not by the visit. */
  readonly when: (name: EventName, clutch?: string) => number;
  /** When the vehicle could no longer be driven [s]; Infinity: it still could. */
  readonly over: () => number;
}

/** Share that clings and is carried off each second of driving: assumed, as in the invented cases. */
const CARRY_OFF = 0.05 / 3600;

const DAY = 86400;

/**
 * The clock of a guess's plan against the visit's. Other use than the prepared week's is a clock that runs faster or slower, hung up at the
 * visit: weekday, hour and season are right there, and drift the further back one goes.
 */
export interface Clocks {
  readonly weekday: number;
  readonly dayOfYear: number;
  /** The visit on the plan's clock [s]. */
  readonly visit: number;
  readonly toPlan: (clock: number) => number;
  readonly fromPlan: (clock: number) => number;
}

export function clocksOf({ at, weekday, dayOfYear }: Visit, use: number): Clocks {
  // Whole days more or less, so that the hour of the visit stays.
  const more = Math.max(-Math.floor(at / DAY), Math.round((at * use - at) / DAY));
  const visit = at + more * DAY;
  return {
    weekday: (((weekday - more) % 7) + 7) % 7,
    dayOfYear: dayOfYear - more,
    visit,
    toPlan: (clock) => visit - (at - clock) * use,
    fromPlan: (clock) => at - (visit - clock) / use,
  };
}

/** Rust goes by the calendar, whatever the use: on a clock that runs faster it takes as much longer. */
const onClock = (opening: LeakOpening, use: number): LeakOpening =>
  opening.kind === "pit" ? { ...opening, after: opening.after * use } : opening;

/** The plan of a guess, up to the visit. */
export function planOfGuess(visit: Visit, guess: Guess, clocks: Clocks = clocksOf(visit, guess.use)): Plan {
  const { site, unit, week } = visit;
  const { use, stretch, opening, opensAt, soakedUp, short, harder, added } = guess;
  const { weekday, dayOfYear, toPlan } = clocks;
  // Named one by one, as in `askedOf`: this is done for every guess.
  const { place, height, x, y, fedBy, lineAbove, columnHeight, dripRadius } = site;
  const { build, fluid, driver, surroundings } = unit;
  const leak: Leak | null =
    opening === null
      ? null
      : {
          place,
          opening: onClock(opening, use / stretch),
          height,
          x,
          y,
          fedBy,
          lineAbove,
          columnHeight,
          dripRadius,
          hiding: { capacity: soakedUp, carryOff: CARRY_OFF },
        };
  return {
    unit: { build, fluid, leak, driver, surroundings },
    week,
    weekday,
    dayOfYear,
    opens: {
      after: opening === null ? Infinity : opensAt < 0 ? toPlan(opensAt) : Math.max(0, toPlan(opensAt)),
    },
    topUps: added.map(({ at, volume, temperature }) => ({
      at: Math.max(0, toPlan(at)),
      volume,
      temperature,
    })),
    span: clocks.visit,
    fillShort: short - harder,
    weekLasts: (WEEK * stretch) / use,
  };
}

/**
 * The same to be walked trip by trip, which begins with the leak as it then is: one that is older than the visit's clock has grown until then.
 * A history of a unit without a leak asks for no moment at which one never opens.
 */
export function walkOfGuess(visit: Visit, guess: Guess): Plan {
  const plan = planOfGuess(visit, guess);
  const { leak } = plan.unit;
  if (leak === null) return { ...plan, opens: { after: 0 } };
  if (!(guess.opensAt < 0)) return plan;
  const ran = -guess.use * runningOf(visit)(guess.opensAt);
  return { ...plan, unit: { ...plan.unit, leak: { ...leak, opening: agedOpening(leak.opening, ran) } } };
}

/** Follows a guess to the visit: what is lost at once, the events when they are asked for. */
export function courseOf(visit: Visit, prepared: Prepared, guess: Guess): Course {
  const clocks = clocksOf(visit, guess.use);
  const plan = planOfGuess(visit, guess, clocks);
  const loss = dutyLoss(prepared, plan);
  // Most items ask about the visit.
  let byVisit: number | undefined;
  const lostBy = (clock: number) =>
    clock === visit.at
      ? (byVisit ??= loss.lostBy(Math.max(0, clocks.toPlan(clock))))
      : loss.lostBy(Math.max(0, clocks.toPlan(clock)));
  const lostWhen = (mass: number) => clocks.fromPlan(loss.lostWhen(mass));
  if (guess.sudden) {
    const { when, over } = suddenCourse(visit, prepared, guess, { lostWhen });
    return { lostBy, lostWhen, ranOut: loss.ranOut, when, over };
  }
  let known: DutyEvents | undefined;
  const history = () => (known ??= dutyEvents(prepared, plan));
  return {
    lostBy,
    lostWhen,
    ranOut: loss.ranOut,
    when(name, clutch) {
      for (const event of history().events())
        if (event.name === name && (clutch === undefined || event.clutch === clutch))
          return clocks.fromPlan(event.clock);
      return Infinity;
    },
    over() {
      const { endedBy, end } = history();
      return endedBy === "end of span" ? Infinity : clocks.fromPlan(end.clock);
    },
  };
}

/** Events that a sudden loss brings at once. */
const within: readonly EventName[] = [
  "level below the low mark",
  "first gulp of air",
  "first flare",
  "cooler flow below half",
  "line pressure below demand",
  "first sustained slip",
  "vehicle falls behind",
  "no drive",
];

/**
 * A line that lets go empties the unit within a trip: no event waits for its hardest moment, each comes as soon as the least that it ever takes
 * is lacking.
 */
function suddenCourse(
  { at, unit }: Visit,
  prepared: Prepared,
  { opensAt, soakedUp, short, harder, added }: Guess,
  { lostWhen }: Pick<Course, "lostWhen">,
): Pick<Course, "when" | "over"> {
  const before = (short - harder) * density(unit.fluid.density15, unit.build.fillTemperature);
  const pouredBy = (clock: number) => {
    let mass = 0;
    for (const { at: when, volume, temperature } of added)
      if (when <= clock) mass += volume * density(unit.fluid.density15, temperature);
    return mass;
  };
  const pouredAfter = (clock: number) => {
    let next = Infinity;
    for (const { at: when } of added) if (when > clock) next = Math.min(next, when);
    return next;
  };
  const byVisit = (clock: number) => (clock <= at ? clock : Infinity);
  const lackingAt = (lacking: number): number => {
    for (let from = opensAt; ;) {
      const wanted = lacking - before + pouredBy(from);
      const gone = wanted > 0 ? Math.max(from, lostWhen(wanted)) : from;
      // What is poured in before that puts it off; what is poured in later undoes nothing.
      const next = pouredAfter(from);
      if (gone < next || next > at) return byVisit(gone);
      from = next;
    }
  };
  const when = (name: EventName, clutch?: string): number => {
    if (name === "hiding place full" || name === "first spot on the ground")
      return byVisit(lostWhen(soakedUp * unit.fluid.density15));
    // What burns on the way down, and what is learned, takes its time: averages do not tell it of so short a one.
    if (!within.includes(name)) return Infinity;
    const least = leastOf(prepared, name, clutch);
    return least === Infinity ? Infinity : lackingAt(least);
  };
  return { when, over: () => when("no drive") };
}

/** The least that an event ever takes [kg lacking], whatever trip and air. */
function leastOf({ thresholds }: Prepared, name: EventName, clutch?: string): number {
  let least = Infinity;
  for (const threshold of thresholds) {
    if (threshold.name !== name || (clutch !== undefined && threshold.clutch !== clutch)) continue;
    for (const ofAir of threshold.moments)
      for (const { critical } of ofAir) least = Math.min(least, critical);
  }
  return least;
}
