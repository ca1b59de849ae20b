// Openings drawn by seed and sized so that a leak lives about as long as asked. The sizing is rough on purpose: one pressure and one
// viscosity, nothing lost parked. What a leak then really lives is for the histories to say.
import type { LeakOpening, LeakPlace } from "../../src/physics/build.ts";
import { closedLeak, openingAt } from "../../src/physics/leaking.ts";
import { leakFlow } from "../../src/physics/leak/flow.ts";

/** Loss after which the van no longer drives, roughly [m³]; fluid on the road, roughly. */
const LETHAL = 3e-3;
const VISCOSITY = 0.015;
const DENSITY = 820;
/** Pressure that a leak sees while driving, roughly [Pa]. */
const pressures = {
  "supply-line": 70e3,
  "return-line": 56e3,
  "shaft-seal": 60e3,
  pan: 330,
} as const;
/** Looks at the growing leak over its life. */
const LOOKS = 50;

export type TabledPlace = keyof typeof pressures & LeakPlace;

/** Volume lost in so many running seconds, each of them `calendar` seconds of the calendar [m³]. */
function loses(opening: LeakOpening, pressure: number, life: number, calendar: number): number {
  const now = closedLeak();
  let sum = 0;
  for (let i = 0; i < LOOKS; i++) {
    const age = ((i + 0.5) / LOOKS) * life;
    openingAt(now, opening, age, pressure, true, age * calendar);
    sum += (leakFlow(now, pressure, VISCOSITY, DENSITY) * life) / LOOKS;
  }
  return sum;
}

/** An opening of a kind that the place can have, of a size with which the unit runs dry in so many running seconds. */
export function openingFor(
  place: TabledPlace,
  life: number,
  calendar: number,
  source: () => number,
): LeakOpening {
  const even = (low: number, high: number) => low + (high - low) * source();
  const decades = (low: number, high: number) => low * (high / low) ** source();
  const pick = <T>(list: readonly T[]): T => list[Math.floor(source() * list.length)]!;
  const kind =
    place === "shaft-seal"
      ? pick(["seal", "slot"] as const)
      : place === "pan"
        ? pick(["hole", "seal", "pit", "slot"] as const)
        : pick(["hole", "seal", "pit", "slot", "rub", "crack"] as const);
  const sized = (at: (size: number) => LeakOpening, low: number, high: number): LeakOpening => {
    for (let i = 0; i < 60; i++) {
      const middle = Math.sqrt(low * high);
      if (loses(at(middle), pressures[place], life, calendar) < LETHAL) low = middle;
      else high = middle;
    }
    return at(low);
  };
  const wall = 0.9e-3;
  const tubeRadius = 5e-3;
  if (kind === "hole") return sized((diameter) => ({ kind, diameter, wall }), 1e-5, 5e-3);
  if (kind === "slot") {
    const [length, depth] = [decades(3e-3, 30e-3), decades(1e-3, 5e-3)];
    return sized((gap) => ({ kind, length, gap, depth }), 1e-7, 1e-3);
  }
  if (kind === "pit") {
    const exponent = pick([1 / 3, 0.523]);
    const after = life * calendar;
    return sized((diameter) => ({ kind, diameter, after, exponent, wall, bore: 8e-3 }), 1e-5, 5e-3);
  }
  if (kind === "rub") {
    const contact = decades(2e-3, 10e-3);
    return sized(
      (depthInHundredHours) => ({ kind, tubeRadius, wall, contact, depthInHundredHours }),
      1e-9,
      4e-3,
    );
  }
  if (kind === "seal") {
    const grows = decades(1.2, 5);
    const creepTime = life * decades(0.1, 1);
    const eccentricity = even(0, 0.8);
    return sized(
      (finalClearance) => ({
        kind,
        diameter: 0.013,
        length: 2.4e-3,
        eccentricity,
        clearance: finalClearance / grows,
        finalClearance,
        creepTime,
      }),
      1e-7,
      1e-3,
    );
  }
  return {
    kind,
    halfLength: decades(1e-3, 2e-3),
    partsAt: decades(5e-3, 8e-3),
    partsAfter: life,
    parisExponent: 3,
    wall,
    tubeRadius,
    modulus: 205e9,
    poisson: 0.29,
    bendingStress: even(20e6, 60e6),
    restGap: 2e-6,
  };
}
