// What a person under the vehicle sees and counts at the leak.

import { finite, impossible, notNegative, positive, type Range } from "../errors.ts";
import type { FatigueCrack, LeakOpening, Unit } from "../physics/build.ts";
import { openingLaws } from "../history/opening-laws.ts";
import { noneUsed, noteOpening, outsideOf, type Used } from "../history/outside.ts";
import { density, densityRange } from "../physics/fluid/density.ts";
import { dynamicViscosity } from "../physics/fluid/fluid.ts";
import { viscosityRange, viscosityTemperatureRange } from "../physics/fluid/viscosity.ts";
import { surfaceTension, surfaceTensionRange } from "../physics/fluid/surface-tension.ts";
import { crackGap } from "../physics/leak/crack.ts";
import { dropRange, dropsPerMinute, dropVolume } from "../physics/leak/drop.ts";
import type { GrowingOpening } from "../physics/leak/flow.ts";
import { jettingRange, regime, type Regime } from "../physics/leak/regime.ts";
import { sealClearance } from "../physics/leak/seal-creep.ts";
import { crackHalfLength, hasParted, mouthOf, openingAt } from "../physics/leaking.ts";

/**
 * How the leak runs: seconds of running since it opened, and by the calendar (what a pit counts; as many when left out),
 * temperature of the fluid [K], flow [m³/s].
 */
export interface Running {
  readonly age: number;
  readonly calendar?: number;
  readonly temperature: number;
  readonly flow: number;
}

/** Drops a minute if all of it dripped, what it looks like, and the laws that this takes outside their range, as a history tells them. */
export interface LeakLook {
  readonly drops: number;
  readonly looks: Regime;
  readonly outside: readonly string[];
}

/** More than any line holds [Pa]: the upper end when the pressure at a crack is looked for. */
const MOST = 1e8;

/**
 * Drops a minute and look of a leak. Drops fall from the leak's own drip radius; a jet leaves an opening as large as the
 * hole, gap or crack is at that age. The pressure behind it is the one that drives the flow through it, fluid as new.
 * A tight unit is dry. Sources: drop.ts and regime.ts.
 */
export function atTheLeak(
  { leak, fluid }: Pick<Unit, "leak" | "fluid">,
  { age, calendar = age, temperature, flow }: Running,
): LeakLook {
  if (Number.isNaN(age)) impossible("age", age, "a time in s");
  finite("calendar", calendar, "s");
  positive("temperature", temperature, "K");
  notNegative("flow", flow, "m³/s");
  if (leak === null || age < 0) return { drops: 0, looks: "dry", outside: [] };
  const rho = density(fluid.density15, temperature);
  const mu = dynamicViscosity(fluid, temperature, 0);
  const tension = surfaceTension(temperature);
  const drop = dropVolume(leak.dripRadius, tension, rho);
  const drops = dropsPerMinute(flow, drop);
  const pressure = pressureBehind(
    leak.opening,
    age,
    calendar,
    (path) => mu * path.viscous * flow + rho * path.inertial * flow * flow,
  );
  const looks = regime(
    flow,
    exitDiameter(leak.opening, age, calendar, pressure),
    leak.dripRadius,
    rho,
    tension,
    pressure,
  );
  const used: Used[] = [
    usedAt(viscosityTemperatureRange, temperature),
    usedAt(viscosityRange, mu / rho),
    usedAt(densityRange, temperature),
    usedAt(surfaceTensionRange, temperature),
    usedAt(dropRange, leak.dripRadius / Math.cbrt(drop)),
    usedAt(jettingRange, mu / Math.sqrt(rho * tension * 2 * leak.dripRadius)),
    ...noneUsed(openingLaws),
  ];
  noteOpening(used.slice(-openingLaws.length), leak.opening, age, calendar);
  return { drops, looks, outside: flow > 0 ? outsideOf(used) : [] };
}

const usedAt = (range: Range, value: number): Used => ({ range, low: value, high: value });

/** Pressure at which the opening passes the flow. A crack gapes wider under more, so that it is halved down upon. */
function pressureBehind(
  opening: LeakOpening,
  age: number,
  calendar: number,
  needed: (path: GrowingOpening) => number,
): number {
  const path: GrowingOpening = { viscous: 0, inertial: 0 };
  const at = (pressure: number) => {
    openingAt(path, opening, age, pressure, true, calendar);
    return needed(path);
  };
  if (opening.kind !== "crack" || hasParted(opening, age)) return at(0);
  let [low, high] = [0, MOST];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (at(middle) > middle) low = middle;
    else high = middle;
  }
  return high;
}

/** Diameter of a circle as large as the opening [m]. */
function exitDiameter(opening: LeakOpening, age: number, calendar: number, pressure: number): number {
  if (opening.kind === "hole") return opening.diameter;
  if (opening.kind === "slot") return Math.sqrt((4 / Math.PI) * opening.length * opening.gap);
  if (opening.kind === "pit" || opening.kind === "rub") return mouthOf(opening, age, calendar);
  if (opening.kind === "seal") {
    const { clearance, finalClearance, creepTime, diameter } = opening;
    return Math.sqrt(4 * diameter * sealClearance(clearance, finalClearance, creepTime, age));
  }
  if (hasParted(opening, age)) return 2 * opening.tubeRadius - opening.wall;
  return Math.sqrt((4 / Math.PI) * crackArea(opening, age, pressure));
}

function crackArea(crack: FatigueCrack, age: number, pressure: number): number {
  const { tubeRadius, wall, bendingStress, modulus, poisson, restGap } = crack;
  const half = crackHalfLength(crack, age);
  const stress = (pressure * tubeRadius) / wall + bendingStress;
  return 2 * half * (restGap + crackGap(stress, half, modulus, tubeRadius, wall, poisson));
}
