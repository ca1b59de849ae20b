// What a clutch of the unit can hold as it is now: worn, glazed, charred, hot, and pressed by what pressure there is.

import type { Build } from "./build.ts";
import { capacity } from "./clutch/capacity.ts";
import { frictionCoefficient, heatFactor, slidingFriction } from "./clutch/friction.ts";
import { slidingSpeed } from "./clutch/geometry.ts";
import { lockupCapacity, lockupPressure } from "./clutch/lockup.ts";
import { capacityLeft } from "./damage/damage-index.ts";
import type { Now } from "./now.ts";
import type { State } from "./state.ts";

/** Torque that one element carries at a pressure while it slips at `slip` [rad/s], worn and burnt as it is. */
export function elementCapacity(
  build: Build,
  state: State,
  index: number,
  slip: number,
  pressure: number,
): number {
  const clutch = build.clutches[index]!;
  return (
    elementGrip(build, state, index, pressure) *
    slidingFriction(clutch.friction, slidingSpeed(clutch, Math.abs(slip)))
  );
}

/** Time for which an entering clutch gets no more than the pressure asked for it [s]; what has not locked by then gets all there is. */
export const ENGAGING = 1;

/** Pressure behind a clutch's piston [Pa]: the line's, or what an engagement has come to. */
export function appliedPressure(state: State, index: number, linePressure: number): number {
  if (index !== state.entering) return linePressure;
  if (state.unfilled > 0) return 0;
  return state.shiftTime < ENGAGING ? Math.min(state.asked, linePressure) : linePressure;
}

/** The same torque for each unit of friction that its sliding gives at the reference temperature [N m]: all but the sliding. */
export function elementGrip(build: Build, state: State, index: number, pressure: number): number {
  const clutch = build.clutches[index]!;
  const factor = heatFactor(clutch.friction, state.plate[index]!);
  return shareLeft(build, state, index) * capacity(clutch, pressure, factor);
}

/** Share of a clutch's new capacity that heat and wear have left; the lock-up clutch is the last. */
export function shareLeft(build: Build, state: State, index: number): number {
  const clutch = build.clutches[index] ?? build.lockUp.clutch;
  return capacityLeft(
    state.glaze[index]!,
    state.char[index]!,
    state.wear[index]!,
    clutch.liningThickness,
    build.damage.glazeLoss,
  );
}

/** Torque that the lock-up clutch can carry at its held slip [N m]: its pressure fades with its feed before the line's does. */
export function lockUpCapacity(build: Build, state: State, now: Now): number {
  const { clutch, heldSlip } = build.lockUp;
  const index = build.clutches.length;
  const { feed, feedFull, linePressure } = now.line;
  const pressure = lockupPressure(clutch, linePressure, feedFull > 0 ? feed / feedFull : 1);
  const friction = frictionCoefficient(clutch.friction, slidingSpeed(clutch, heldSlip), state.plate[index]!);
  return shareLeft(build, state, index) * lockupCapacity(clutch, pressure, friction);
}
