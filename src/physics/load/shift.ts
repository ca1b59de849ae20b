import { finite, impossible, notNegative } from "../../errors.ts";
import { gravity } from "./road.ts";

/** When a calm driver's transmission shifts. Entry 0 is between first and second. */
export interface ShiftPlan {
  /** Speed [m/s] above which it shifts up, one entry for each pair of neighbouring gears. */
  readonly up: readonly number[];
  /** Speed [m/s] below which it shifts down; below `up`, so that it does not hunt. */
  readonly down: readonly number[];
  /** How far both move up: share of the speed for each g of acceleration that the driver wants. */
  readonly stretch: number;
}

/**
 * The gear to be in next, one step at a time, at `speed` [m/s] with the driver wanting `acceleration` [m/s2].
 * Between the two speeds the gear stays as it is. Reverse stays reverse.
 * Both lines move with the wish: common practice of throttle-dependent shift lines.
 */
export function gearFor(plan: ShiftPlan, gear: number, speed: number, acceleration: number): number {
  notNegative("speed", speed, "m/s");
  finite("acceleration", acceleration, "m/s²");
  if (!Number.isInteger(gear)) impossible("gear", gear, "a whole number");
  if (gear < 1) return gear;
  notNegative("shiftPlan.stretch", plan.stretch);
  const stretch = 1 + (plan.stretch * Math.max(0, acceleration)) / gravity;
  const up = plan.up[gear - 1];
  if (up !== undefined && !((plan.down[gear - 1] ?? NaN) < up))
    impossible(
      `shiftPlan.down[${gear - 1}]`,
      plan.down[gear - 1] ?? NaN,
      "a speed below the one for shifting up",
    );
  if (up !== undefined && speed > up * stretch) return gear + 1;
  const down = plan.down[gear - 2];
  if (down !== undefined && speed < down * stretch) return gear - 1;
  return gear;
}
