// Cases for the agreement of the two fidelities, drawn by seed from the ranges stated here; the shipped van on drawn weeks.
import { randomLcg } from "d3";
import { nedc } from "../../src/driving/nedc.ts";
import { parcelRound } from "../../src/driving/parcel-round.ts";
import { clock, weekOf, workdays, type Week } from "../../src/driving/pattern.ts";
import { ambientOn, type Plan, type TopUp } from "../../src/history/simulate.ts";
import type { LeakOpening, LeakPlace, Surroundings } from "../../src/physics/build.ts";
import { celsius, days, hours, leaking, van } from "../emerge/van.ts";

/** Range of every drawn number; sizes and times are even over their logarithms. SI. */
export const ranges = {
  hardness: [0.8, 1.15],
  hilliness: [0.3, 1],
  roundTime: [1200, 2400],
  meanAir: [0, 30],
  yearlySwing: [0, 3],
  holeDiameter: [0.08e-3, 0.17e-3],
  panHole: [0.12e-3, 0.25e-3],
  firstClearance: [5e-6, 15e-6],
  finalClearance: [16e-6, 32e-6],
  creepTime: [hours(5), hours(100)],
  crackHalf: [1e-3, 2e-3],
  crackEnd: [5e-3, 8e-3],
  partsAfter: [hours(20), hours(120)],
  height: [0.01, 0.08],
  lineAbove: [0, 0.2e-3],
  columnHeight: [0.1, 0.3],
  hiding: [0, 0.2e-3],
  carryOff: [0, 0.1 / 3600],
  opensAfter: [0, days(10)],
  opensAtDistance: [0, 200e3],
} as const;
/** Longest span of a case. */
export const span = days(7 * 30);

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

/** The week of a seed, with so many cases on it. */
export function drawWeek(seed: number, count: number): DutyWeek {
  const source = randomLcg(seed);
  for (let i = 0; i < 8; i++) source();
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

  const opening = (place: LeakPlace): LeakOpening => {
    const kind = place === "pan" ? pick(["hole", "seal"] as const) : pick(["hole", "seal", "crack"] as const);
    if (kind === "hole")
      return {
        kind,
        diameter: decades(place === "pan" ? ranges.panHole : ranges.holeDiameter),
        wall: 0.9e-3,
      };
    if (kind === "seal")
      return {
        kind,
        diameter: 0.013,
        length: 2.4e-3,
        eccentricity: 0.5,
        clearance: decades(ranges.firstClearance) * (place === "pan" ? 2 : 1),
        finalClearance: decades(ranges.finalClearance) * (place === "pan" ? 2 : 1),
        creepTime: decades(ranges.creepTime),
      };
    return {
      kind,
      halfLength: decades(ranges.crackHalf),
      partsAt: decades(ranges.crackEnd),
      partsAfter: decades(ranges.partsAfter),
      parisExponent: 3,
      wall: 0.9e-3,
      tubeRadius: 5e-3,
      modulus: 205e9,
      poisson: 0.29,
      bendingStress: 60e6,
      restGap: 2e-6,
    };
  };
  const cases = Array.from({ length: count }, (_, i): DutyCase => {
    const place = pick(["supply-line", "supply-line", "return-line", "return-line", "pan"] as const);
    const leak = leaking(place, opening(place), {
      height: place === "pan" ? even([0, 0.01]) : even(ranges.height),
      lineAbove: place === "pan" ? 0 : even(ranges.lineAbove),
      columnHeight: even(ranges.columnHeight),
      hiding: { capacity: even(ranges.hiding), carryOff: even(ranges.carryOff) },
    });
    const byDistance = source() < 0.25;
    const entry: TopUp = {
      at: days(Math.floor(20 + 40 * source())) + hours(22),
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
