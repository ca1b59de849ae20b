// Everything that takes time: the history of the plan, the bay card of the same unit, and the price of a fading pressure.

import { bayCards, type BayCard } from "../../src/bay/bay-card.ts";
import { fadeSweep, type Cruise, type FadeRow } from "../../src/history/fade.ts";
import { simulate, type History, type Plan } from "../../src/history/simulate.ts";
import type { Unit } from "../../src/physics/build.ts";
import { turbinePerMetre } from "../../src/physics/drivetrain.ts";
import { quarts } from "../../src/units/literals.ts";

export interface Computed {
  readonly history: History;
  readonly cards: readonly BayCard[];
  readonly fades: readonly FadeRow[];
  readonly cruise: Cruise;
}

/** How far the history has come: share of the span, day, seconds of running, kilograms inside. */
export interface Come {
  readonly share: number;
  readonly day: number;
  readonly running: number;
  readonly mass: number;
}

/** Times over which the pressure goes [s]. */
export const fadeTimes = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 60, 180, 600, 1800, 3600] as const;

/** Runs it all; the plan is plain data, so that it can be sent to a worker. */
export function compute(plan: Plan, tell: (come: Come) => void): Computed {
  const history = simulate(plan, (share, state) => {
    tell({ share, day: Math.round(state.clock / 86400), running: state.running, mass: state.mass });
    return true;
  });
  const tight: Unit = { ...plan.unit, leak: null };
  const cruise = cruiseOf(tight);
  return {
    history,
    cards: bayCards(tight, shortages(tight)),
    fades: fadeSweep(tight, cruise, fadeTimes),
    cruise,
  };
}

/** Correct fill and one, two and three quarts short, as far as the unit holds that much. */
function shortages({ build }: Unit): number[] {
  return [0, 1, 2, 3].map(quarts).filter((shortage) => shortage < 0.6 * build.fill);
}

/** Third gear, or the last of fewer, uphill at the speed that turns the turbine with 0.4 of the rated engine speed, warm. */
function cruiseOf({ build }: Unit): Cruise {
  const gear = Math.min(2, build.gears.length - 1);
  const speed = (0.4 * build.engine.ratedSpeed) / turbinePerMetre(build, build.gears[gear]!);
  return { gear, speed, grade: 0.05, temperature: 358.15 };
}
