// Cases for the agreement of the two fidelities, drawn by seed from the ranges stated here; the shipped van on drawn weeks.
import { nedc } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { clock, tripTime, weekOf, workdays, type Week } from "../../src/driving/pattern.ts";
import { ambientOn, type Plan, type TopUp } from "../../src/history/simulate.ts";
import type { Surroundings } from "../../src/physics/build.ts";
import { celsius, days, hours, leaking, van } from "../emerge/van.ts";
import { openingFor } from "./openings.ts";

const WEEK = days(7);

/** Range of every drawn number; sizes and times are even over their logarithms. SI. */
export const ranges = {
  hardness: [0.8, 1.15],
  hilliness: [0.3, 1],
  roundTime: [1200, 2400],
  meanAir: [0, 25],
  /** Half of what lies between the coldest and the warmest day [K]. */
  yearlySwing: [0, 12],
  /** Trips and weeks that a leak is sized to live, from its opening to the end. */
  leastTrips: 20,
  mostWeeks: 52,
  height: [0.01, 0.08],
  panHeight: [0, 0.01],
  lineAbove: [0, 0.2e-3],
  columnHeight: [0.1, 0.3],
  hiding: [0, 0.2e-3],
  carryOff: [0, 0.1 / 3600],
  opensAfter: [0, days(10)],
  opensAtDistance: [0, 200e3],
} as const;
/** Longest span of a case. */
export const span = days(7 * 60);

export interface DutyCase {
  readonly name: string;
  readonly plan: Plan;
}

/** A week and its air, and cases on it. */
export interface DutyWeek {
  readonly seed: number;
  readonly week: Week;
  readonly surroundings: Surroundings;
  /** Air that the cases meet. */
  readonly air: { readonly coldest: number; readonly warmest: number };
  readonly cases: readonly DutyCase[];
}

/** Numbers between 0 and 1 from a seed (mulberry32, public domain); neighbouring seeds have nothing in common, as they would by a linear rule. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The week of a seed, with so many cases on it. */
export function drawWeek(seed: number, count: number): DutyWeek {
  const source = randomFrom(seed);
  const even = ([low, high]: readonly [number, number]) => low + (high - low) * source();
  const decades = ([low, high]: readonly [number, number]) => low * (high / low) ** source();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(source() * list.length)]!;
  const round = () =>
    parcelRound(Math.floor(1e6 * source()), {
      hardness: even(ranges.hardness),
      hilliness: even(ranges.hilliness),
      duration: even(ranges.roundTime),
    });
  const week = weekOf([
    { trace: nedc, startsAt: clock(7), days: workdays },
    { trace: round(), startsAt: clock(9), days: workdays },
    { trace: round(), startsAt: clock(10), days: [5] },
  ]);
  const surroundings = {
    meanTemperature: celsius(even(ranges.meanAir)),
    yearlySwing: even(ranges.yearlySwing),
  };
  const dayOfYear = Math.floor(365 * source());
  const unit = { ...van, surroundings };
  const met = Array.from({ length: span / 86400 + 1 }, (_, day) => ambientOn(unit, dayOfYear + day));

  const cases = Array.from({ length: count }, (_, i): DutyCase => {
    const place = pick([
      "supply-line",
      "supply-line",
      "return-line",
      "return-line",
      "pan",
      "shaft-seal",
    ] as const);
    const weekTime = week.days.flat().reduce((sum, trip) => sum + tripTime(trip), 0);
    const trips = week.days.flat().length;
    const weeks = decades([ranges.leastTrips / trips, ranges.mostWeeks]);
    const leak = leaking(place, openingFor(place, weeks * weekTime, WEEK / weekTime, source), {
      height: place === "pan" ? even(ranges.panHeight) : even(ranges.height),
      fedBy: pick(["converter-outlet", "lubrication"] as const),
      lineAbove: place.endsWith("line") ? even(ranges.lineAbove) : 0,
      columnHeight: even(ranges.columnHeight),
      hiding: { capacity: even(ranges.hiding), carryOff: even(ranges.carryOff) },
    });
    const byDistance = source() < 0.25;
    const entry: TopUp = {
      at: days(Math.floor(7 * weeks * (0.2 + 0.5 * source()))) + hours(22),
      volume: 0.5e-3,
      temperature: celsius(20),
    };
    return {
      name: `${seed}.${i} ${leak.opening.kind}, ${place}`,
      plan: {
        unit: { ...unit, leak },
        week,
        weekday: Math.floor(7 * source()),
        dayOfYear,
        opens: byDistance ? { distance: even(ranges.opensAtDistance) } : { after: even(ranges.opensAfter) },
        topUps: source() < 0.2 ? [entry] : [],
        span,
      },
    };
  });
  const air = { coldest: Math.min(...met), warmest: Math.max(...met) };
  return { seed, week, surroundings, air, cases };
}
