// Whether a unit, full and tight, is one that left a factory: its maker sized pump and pan so that it neither starves its cooler
// nor draws air. Numbers drawn each for itself make units that nobody would have built.

import { idling, inThePan } from "../bay/ready.ts";
import { supplyNow } from "../physics/chain.ts";
import type { Unit } from "../physics/build.ts";
import { gravity } from "../physics/load/road.ts";
import { turbineTorque } from "../physics/load/converter.ts";
import { depthAt } from "../physics/sump/pan.ts";
import { isCovered } from "../physics/sump/pickup.ts";

/** Fluid as hot as hard driving makes it [K]; the coldest is the air of the place in January. */
const HOTTEST = 373.15;
/** What hard rounds ask: a launch, a stop and a turn [m/s²] along the floor. */
const LAUNCH = 0.25 * gravity;
const STOP = 0.3 * gravity;
const TURN = 0.3 * gravity;
/** Least feed of converter and cooler at hot idle in drive, as a share of full: less is an event. */
const FED = 0.5;

/**
 * True when the full, tight unit idles hot in drive with its line pressure kept and its cooler fed at least by half, and has its
 * pickup covered, hot and cold, under the static tilt of a launch, a stop and a turn to either side. The tilts are those of hard
 * rounds (assumed, within survey data); every part of it is a law of the chain.
 */
export function isSound(unit: Unit): boolean {
  const tight = { ...unit, leak: null };
  const { meanTemperature, yearlySwing } = unit.surroundings;
  return (
    keepsFed(tight) && staysCovered(tight, HOTTEST) && staysCovered(tight, meanTemperature - yearlySwing)
  );
}

function keepsFed(unit: Unit): boolean {
  const { state, now } = idling(unit, 0, HOTTEST);
  const { converter, engine } = unit.build;
  supplyNow(unit, state, engine.idleSpeed, turbineTorque(converter, engine.idleSpeed, 0), false, now);
  const { feed, feedFull, linePressure } = now.line;
  return linePressure >= 0.97 * now.setPoint && feed >= FED * feedFull;
}

function staysCovered(unit: Unit, temperature: number): boolean {
  const walk = idling(unit, 0, temperature);
  const { pan, pickup } = unit.build.sump;
  const volume = inThePan(walk);
  const covered = (along: number, across: number) => {
    const depth = depthAt(pan, volume, along / gravity, across / gravity, pickup.x, pickup.y);
    return isCovered(pickup, depth - pickup.height, walk.now.line.drawn);
  };
  return covered(LAUNCH, 0) && covered(-STOP, 0) && covered(0, TURN) && covered(0, -TURN);
}
