// What invented rounds draw by seed: how a driver launches, brakes and corners, and how hilly the road is.

import { randomLcg, randomNormal, randomUniform } from "d3";
import { impossible } from "../errors.ts";
import { gravity as g } from "../physics/load/road.ts";
import { roundBuilder, type RoundBuilder } from "./round-builder.ts";
import { statistics } from "./statistics.ts";
import { type Trace } from "./trace.ts";

/** How hard, how hilly and how long a round is. */
export interface RoundOptions {
  /** Factor on launches, brakings and cornering; 1 is a brisk driver: launches to 0.25 g, turns to 0.3 g. */
  readonly hardness: number;
  /** Factor on grades; 1 gives grades with a standard deviation of 2.5 %, never above 8 %; 0 is flat. */
  readonly hilliness: number;
  /** About how long it takes [s]; it ends with the leg home. */
  readonly duration: number;
}

/** A road under construction and the draws that go into it; all assumed, within the bands of survey data on launches and turns. */
export interface RoadDraws {
  readonly road: RoundBuilder;
  readonly between: (low: number, high: number) => number;
  /** A straight stretch [m] up to a cruise speed and down to an exit speed [m/s]. */
  readonly stretch: (length: number, cruise: number, exit: number) => void;
  /** A straight approach, then a quarter turn around a corner of 8 to 16 m; the length that both take [m]. */
  readonly corner: (approach: () => number, cruise: number) => number;
  /** A fast leg with sweeping bends, ending at rest. */
  readonly fastLeg: (length: number, cruise: number) => void;
}

const steepest = 0.08;

/** The draws of a seed. Throws for options out of their range. */
export function roadDraws(seed: number, { hardness, hilliness, duration }: RoundOptions): RoadDraws {
  if (!Number.isFinite(seed)) impossible("seed", seed, "a finite number");
  if (!(hardness > 0 && hardness <= 2)) impossible("hardness", hardness, "a factor above 0, at most 2");
  if (!(hilliness >= 0 && hilliness <= 4)) impossible("hilliness", hilliness, "a factor from 0 to 4");
  if (!(duration >= 300 && duration <= 86400))
    impossible("duration", duration, "a time from 300 s to 86400 s");
  const source = randomLcg(seed);
  for (let i = 0; i < 8; i++) source(); // neighbouring seeds start alike and part in a few draws
  const between = (low: number, high: number) => randomUniform.source(source)(low, high)();
  const normal = (mean: number, deviation: number, low: number, high: number) =>
    Math.min(high, Math.max(low, randomNormal.source(source)(mean, deviation)()));

  const road = roundBuilder();
  let hill = 0;
  // Neighbouring stretches of road are alike: a first-order walk with standard deviation 2.5 %.
  const grade = () => {
    hill = 0.5 * hill + normal(0, 0.0217, -0.06, 0.06);
    return Math.min(steepest, Math.max(-steepest, hilliness * hill));
  };
  const launch = () => hardness * g * normal(0.15, 0.045, 0.06, 0.25);
  const braking = () => hardness * g * normal(0.17, 0.05, 0.08, 0.3);
  const cornering = () => hardness * g * normal(0.19, 0.05, 0.08, 0.3);
  const side = () => (source() < 0.5 ? -1 : 1);
  const stretch = (length: number, cruise: number, exit: number) =>
    road.stretch({ length, cruise, exit, launch: launch(), braking: braking(), grade: grade() });
  const corner = (approach: () => number, cruise: number) => {
    const radius = between(8, 16);
    const lateral = cornering();
    const before = approach();
    stretch(before, cruise, Math.min(cruise, Math.sqrt(lateral * radius)));
    road.turn(radius, Math.PI / 2, side(), grade());
    return before + (Math.PI / 2) * radius;
  };
  const fastLeg = (length: number, cruise: number) => {
    stretch(0.2 * length, cruise, cruise);
    for (let gone = 0.2 * length; gone < 0.8 * length;) {
      // A sweeping bend, then a straight; wide enough to be driven at this speed with a fifth of g.
      const radius = Math.max(between(250, 600), cruise ** 2 / (0.2 * hardness * g));
      const angle = between(0.15, 0.5);
      const straight = between(200, 500);
      road.turn(radius, angle, side(), grade());
      stretch(straight, cruise, cruise);
      gone += radius * angle + straight;
    }
    stretch(0.2 * length, cruise, 0);
  };
  return { road, between, stretch, corner, fastLeg };
}

/** The round ends where it began, so its mean grade is taken off (nearly: no grade leaves the band). */
export function backWhereItBegan(trace: Trace): Trace {
  const { distance, climb } = statistics(trace);
  const mean = climb / distance;
  return {
    ...trace,
    grade: trace.grade.map((slope) => Math.min(steepest, Math.max(-steepest, slope - mean))),
  };
}
