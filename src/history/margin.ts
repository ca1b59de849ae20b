// How much more than its share of the rated torque each clutch can carry when new: what the damage index is counted against.

import type { Build, Gear, Unit } from "../physics/build.ts";
import { capacity } from "../physics/clutch/capacity.ts";
import { frictionCoefficient } from "../physics/clutch/friction.ts";
import { lockupCapacity } from "../physics/clutch/lockup.ts";
import { fullTorque } from "../physics/load/engine.ts";
import { setPoint } from "../physics/supply/regulator.ts";
import { wholeUnit } from "./plan.ts";

/** Rated margin of every clutch, the lock-up clutch last: capacity at rated pressure over rated torque, hot. */
export function margins(unit: Unit): Float64Array {
  wholeUnit(unit);
  const { build } = unit;
  const out = new Float64Array(build.clutches.length + 1).fill(Infinity);
  for (const gear of build.gears) lower(build, gear, false, out);
  lower(build, build.reverse, true, out);
  const { clutch, heldSlip } = build.lockUp;
  const slide = ((clutch.outer + clutch.inner) / 2) * heldSlip;
  const held = lockupCapacity(
    clutch,
    clutch.most,
    frictionCoefficient(clutch.friction, slide, RATED_TEMPERATURE),
  );
  out[build.clutches.length] = held / peakTorque(build);
  return out;
}

const RATED_TEMPERATURE = 363.15;

function lower(build: Build, gear: Gear, reverse: boolean, out: Float64Array): void {
  const pressure = setPoint(build.regulator, build.ratedTurbineTorque, reverse, RATED_TEMPERATURE, 0);
  for (const { clutch: index, share } of gear.holds) {
    const clutch = build.clutches[index]!;
    const friction = frictionCoefficient(clutch.friction, 0, RATED_TEMPERATURE);
    const margin = capacity(clutch, pressure, friction) / (share * build.ratedTurbineTorque);
    if (margin < out[index]!) out[index] = margin;
  }
}

/** Largest full-load torque of the engine [N m]. */
function peakTorque(build: Build): number {
  const { engine } = build;
  let most = 0;
  for (let i = 0; i <= 120; i++) {
    const speed = engine.idleSpeed + (i / 100) * (engine.ratedSpeed - engine.idleSpeed);
    most = Math.max(most, fullTorque(engine, speed));
  }
  return most;
}
