import { backWhereItBegan, roadDraws, type RoundOptions } from "./road-draws.ts";
import { type Trace } from "./trace.ts";

/** A day's piece of a parcel round: 40 minutes, some 20 km. */
export const usualRound: RoundOptions = { hardness: 1, hilliness: 1, duration: 2400 };

/**
 * An invented parcel round, the same for the same seed: a fast leg out, deliveries 150 to 900 m apart with the engine
 * idling 20 to 90 s at each, quarter turns between, a fast leg to the next district, deliveries, a fast leg home.
 * Corners obey lateral = v^2/R. Every number here is assumed, within the bands of survey data on launches and turns.
 */
export function parcelRound(seed: number, options: RoundOptions = usualRound): Trace {
  const { road, between, stretch, corner, fastLeg } = roadDraws(seed, options);
  const { duration } = options;

  const deliver = () => {
    const corners = Math.floor(between(0, 3));
    const cruise = between(30, 52) / 3.6;
    let left = between(150, 900);
    for (let turned = 0; turned < corners && left > 250; turned++)
      left -= corner(() => between(0.3, 0.6) * left, cruise);
    stretch(Math.max(100, left), cruise, 0);
    road.idle(between(20, 90));
  };
  const leg = () => {
    const length = between(2800, 4000);
    fastLeg(length, between(70, 90) / 3.6);
    road.idle(between(20, 60));
  };

  const districts = Math.max(1, Math.round(duration / 1200));
  road.idle(between(20, 60));
  leg();
  for (let district = 1; district <= districts; district++) {
    // Leave for the next district in time for a fast leg of about 200 s.
    const until = Math.max(road.now() + 60, (duration * district) / districts - 200);
    while (road.now() < until) deliver();
    leg();
  }
  return backWhereItBegan(road.trace(`parcel round ${seed}`));
}
