// From a case to the plan that a history runs: dates become weekdays and days of the year.

import { finite, impossible } from "../errors.ts";
import type { Plan, TopUp } from "../history/simulate.ts";
import { density } from "../physics/fluid/density.ts";
import { specificEnergy } from "../physics/fluid/specific-heat.ts";
import { sumpTemperature } from "../physics/heat/sump-heat.ts";
import type { Case } from "./case.ts";

/**
 * The plan of a case, ready for `simulate` or `dutyHistory`: SI, its second 0 the midnight of the case's start date; weekday 0 is Monday, day of
 * the year 0 is 1 January. Dated entries become seconds since then, a leak that opens at an odometer reading metres since the start's. What a case may be was
 * looked at when it was read: of a case that was read nothing is thrown here.
 */
export function planOf(given: Case): Plan {
  const { unit, week, span, opens, fillShort, towed } = given;
  const date = new Date(`${given.start.date.slice(0, 10)}T00:00:00Z`);
  const newYear = Date.UTC(date.getUTCFullYear(), 0, 1);
  return {
    unit,
    week,
    weekday: (date.getUTCDay() + 6) % 7,
    dayOfYear: Math.round((date.getTime() - newYear) / 86_400_000),
    opens: "odometer" in opens ? { distance: opens.odometer - given.start.odometer } : opens,
    topUps: topUpsOf(given),
    span,
    fillShort,
    ...(towed === undefined ? {} : { towed }),
  };
}

/** Date and time of a moment of the case, ISO to the minute: what a customer can read. */
export function dateOf(given: Case, clock: number): string {
  const start = Date.parse(`${given.start.date.slice(0, 10)}T00:00:00Z`);
  const date = new Date(start + clock * 1000);
  if (Number.isNaN(date.getTime())) impossible("clock", clock, "seconds of the case's clock");
  return date.toISOString().slice(0, 16).replace("T", " ");
}

/** Fluid of a mass [kg] as the volume [m³] that it fills at the temperature of the fill: as every report tells what is lost. */
export function volumeOf({ unit }: Pick<Case, "unit">, mass: number): number {
  finite("mass", mass, "kg");
  return mass / density(unit.fluid.density15, unit.build.fillTemperature);
}

// Those of one moment are one, mixed by what they hold of heat.
function topUpsOf({ unit, entries }: Case): readonly TopUp[] {
  const topUps = new Map<number, TopUp>();
  const { density15 } = unit.fluid;
  for (const { after: at, volume, temperature } of entries) {
    const before = topUps.get(at);
    const bottle = { at, volume, temperature };
    topUps.set(at, before === undefined ? bottle : { at, ...mixed(before, bottle, density15) });
  }
  return [...topUps.values()];
}

function mixed(one: TopUp, other: TopUp, density15: number): Pick<TopUp, "volume" | "temperature"> {
  const massOf = ({ volume, temperature }: TopUp) => volume * density(density15, temperature);
  const [a, b] = [massOf(one), massOf(other)];
  const energy =
    a * specificEnergy(density15, one.temperature) + b * specificEnergy(density15, other.temperature);
  const temperature =
    one.temperature === other.temperature ? one.temperature : sumpTemperature(a + b, density15, 0, energy);
  return { volume: (a + b) / density(density15, temperature), temperature };
}
