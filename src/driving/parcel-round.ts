import { randomLcg, randomNormal, randomUniform } from "d3";
import { impossible } from "../errors.ts";
import { gravity as g } from "../physics/load/road.ts";
import { roundBuilder } from "./round-builder.ts";
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

/** A day's piece of a parcel round: 40 minutes, some 20 km. */
export const usualRound: RoundOptions = { hardness: 1, hilliness: 1, duration: 2400 };

const steepest = 0.08;

/**
 * An invented parcel round, the same for the same seed: a fast leg out, deliveries 150 to 900 m apart with the engine
 * idling 20 to 90 s at each, quarter turns between, a fast leg to the next district, deliveries, a fast leg home.
 * Corners obey lateral = v^2/R. Every number here is assumed, within the bands of survey data on launches and turns.
 */
export function parcelRound(seed: number, options: RoundOptions = usualRound): Trace {
  const { hardness, hilliness, duration } = options;
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
  let grade = 0;
  // Neighbouring stretches of road are alike: a first-order walk with standard deviation 2.5 %.
  const nextGrade = () => {
    grade = 0.5 * grade + normal(0, 0.0217, -0.06, 0.06);
    return Math.min(steepest, Math.max(-steepest, hilliness * grade));
  };
  const launch = () => hardness * g * normal(0.15, 0.045, 0.06, 0.25);
  const braking = () => hardness * g * normal(0.17, 0.05, 0.08, 0.3);
  const cornering = () => hardness * g * normal(0.19, 0.05, 0.08, 0.3);
  const side = () => (source() < 0.5 ? -1 : 1);
  const stretch = (length: number, cruise: number, exit: number) =>
    road.stretch({ length, cruise, exit, launch: launch(), braking: braking(), grade: nextGrade() });

  const deliver = () => {
    const corners = Math.floor(between(0, 3));
    const cruise = between(30, 52) / 3.6;
    let left = between(150, 900);
    for (let corner = 0; corner < corners && left > 250; corner++) {
      const radius = between(8, 16);
      const lateral = cornering();
      const before = between(0.3, 0.6) * left;
      left -= before + (Math.PI / 2) * radius;
      stretch(before, cruise, Math.min(cruise, Math.sqrt(lateral * radius)));
      road.turn(radius, Math.PI / 2, side(), nextGrade());
    }
    stretch(Math.max(100, left), cruise, 0);
    road.idle(between(20, 90));
  };
  const fastLeg = (length: number) => {
    const cruise = between(70, 90) / 3.6;
    stretch(0.2 * length, cruise, cruise);
    for (let gone = 0.2 * length; gone < 0.8 * length;) {
      // A sweeping bend, then a straight; wide enough to be driven at this speed with a fifth of g.
      const radius = Math.max(between(250, 600), cruise ** 2 / (0.2 * hardness * g));
      const angle = between(0.15, 0.5);
      const straight = between(200, 500);
      road.turn(radius, angle, side(), nextGrade());
      stretch(straight, cruise, cruise);
      gone += radius * angle + straight;
    }
    stretch(0.2 * length, cruise, 0);
    road.idle(between(20, 60));
  };

  const districts = Math.max(1, Math.round(duration / 1200));
  const outward = () => between(2800, 4000);
  road.idle(between(20, 60));
  fastLeg(outward());
  for (let district = 1; district <= districts; district++) {
    // Leave for the next district in time for a fast leg of about 200 s.
    const until = Math.max(road.now() + 60, (duration * district) / districts - 200);
    while (road.now() < until) deliver();
    fastLeg(outward());
  }
  return backAtTheDepot(road.trace(`parcel round ${seed}`));
}

// The round ends where it began, so its mean grade is taken off (nearly: no grade leaves the band).
function backAtTheDepot(trace: Trace): Trace {
  const { distance, climb } = statistics(trace);
  const mean = climb / distance;
  return {
    ...trace,
    grade: trace.grade.map((grade) => Math.min(steepest, Math.max(-steepest, grade - mean))),
  };
}
