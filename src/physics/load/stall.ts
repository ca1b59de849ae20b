import { notNegative } from "../../errors.ts";
import { impellerTorque, turbineTorque, type Converter } from "./converter.ts";
import { fullTorque, type EngineLine } from "./engine.ts";

/** Engine at full throttle against a turbine that stands, in SI. */
export interface StallPoint {
  /** Engine speed [rad/s]. */
  readonly speed: number;
  /** Torques [N m] of the engine, taken by the impeller, given by the turbine. */
  readonly engineTorque: number;
  readonly impellerTorque: number;
  readonly turbineTorque: number;
  /** Power [W] that turns into heat in the fluid. */
  readonly heat: number;
}

/**
 * Full-throttle stall: engine torque = impeller torque + `extraTorque` [N m, such as the pump's]. Found by halving
 * between standstill and a speed that the limiter forbids. An engine that cannot turn the extra torque stands:
 * all zero. A shop stall test lasts at most five seconds; the heat says why.
 */
export function stallPoint(engine: EngineLine, converter: Converter, extraTorque: number): StallPoint {
  notNegative("extraTorque", extraTorque, "N m");
  const surplus = (w: number) => fullTorque(engine, w) - impellerTorque(converter, w, 0) - extraTorque;
  if (surplus(0) <= 0) return { speed: 0, engineTorque: 0, impellerTorque: 0, turbineTorque: 0, heat: 0 };
  let low = 0;
  let high = 2 * engine.ratedSpeed; // beyond the limiter for any idle speed: 1.25 rated at most
  for (let i = 0; i < 64 && high > low; i++) {
    const middle = 0.5 * (low + high);
    if (surplus(middle) > 0) low = middle;
    else high = middle;
  }
  const impeller = impellerTorque(converter, low, 0);
  return {
    speed: low,
    engineTorque: fullTorque(engine, low),
    impellerTorque: impeller,
    turbineTorque: turbineTorque(converter, low, 0),
    heat: impeller * low,
  };
}
