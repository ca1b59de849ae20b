import { backWhereItBegan, roadDraws, type RoundOptions } from "./road-draws.ts";
import { type Trace } from "./trace.ts";

/** A taxi's half day: three and a half hours. */
export const usualShift: RoundOptions = { hardness: 1, hilliness: 1, duration: 12600 };

/**
 * An invented taxi's shift in a town, the same for the same seed: it waits in the rank with its engine idling and moves up a
 * place at a time, takes a fare of 1 to 4 km from corner to corner and light to light, drives back as far, and waits again. Once
 * a shift it goes out to the airport on the fast road, waits there for long, and comes back. Every number here is assumed.
 */
export function taxiShift(seed: number, options: RoundOptions = usualShift): Trace {
  const { road, between, stretch, corner, fastLeg } = roadDraws(seed, options);
  const { duration } = options;

  const rank = (places: number, longest: number) => {
    for (let place = 0; place < places; place++) {
      road.idle(between(0.3, 1) * longest);
      stretch(between(6, 12), 2, 0);
    }
    road.idle(between(0.3, 1) * longest);
  };
  // From light to light, with a corner on two blocks of three.
  const inTown = (length: number) => {
    for (let gone = 0; gone < length;) {
      const cruise = between(32, 50) / 3.6;
      let block = between(180, 600);
      gone += block;
      if (between(0, 3) < 2) block -= corner(() => between(0.3, 0.6) * block, cruise);
      stretch(Math.max(80, block), cruise, 0);
      road.idle(between(4, 40));
    }
  };
  const fare = () => {
    rank(Math.floor(between(1, 5)), 200);
    const length = between(1000, 4000);
    inTown(length);
    road.idle(between(30, 90)); // paying, luggage
    inTown(between(0.6, 1.1) * length);
  };
  const airport = () => {
    const length = between(9000, 14000);
    const out = () => {
      inTown(1500);
      fastLeg(length, between(85, 110) / 3.6);
    };
    out();
    rank(Math.floor(between(2, 6)), 300);
    out();
  };

  road.idle(between(60, 180));
  const middle = between(0.3, 0.6) * duration;
  let been = duration < 5400; // too short a shift for it
  do {
    if (!been && road.now() > middle) {
      airport();
      been = true;
    } else fare();
  } while (road.now() < duration - 600);
  return backWhereItBegan(road.trace(`taxi shift ${seed}`));
}
