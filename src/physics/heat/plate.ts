import { impossible, type Range } from "../../errors.ts";

/** Even temperature through the plate: right for sustained slip, not for the first tenth of a second. */
export const lumpedRange: Range = {
  law: "plate of one temperature",
  quantity: "Bi = h L/k",
  unit: "1",
  low: 0,
  high: 0.1,
  source: "Incropera, Fundamentals of Heat and Mass Transfer, section 5.2 (recalled)",
};

// (1 − e^−x)/x, which is 1 at x = 0.
function settled(x: number): number {
  return x > 0 ? -Math.expm1(-x) / x : 1;
}

function check(heatCapacity: number, conductance: number, dt: number): void {
  if (!(heatCapacity > 0)) impossible("heatCapacity", heatCapacity, "a heat capacity above 0 J/K");
  if (!(conductance >= 0)) impossible("conductance", conductance, "a conductance of 0 W/K or more");
  if (!(dt >= 0)) impossible("dt", dt, "a time of 0 s or more");
}

/**
 * Temperature [K] of a lumped body after dt [s]: heat capacity [J/K], heated with a constant power [W] and cooled
 * through a conductance [W/K] by fluid of constant temperature [K]. Exact exponential, stable at any step.
 */
export function plateAfter(
  temperature: number,
  fluidTemperature: number,
  power: number,
  heatCapacity: number,
  conductance: number,
  dt: number,
): number {
  check(heatCapacity, conductance, dt);
  if (!(temperature > 0)) impossible("temperature", temperature, "an absolute temperature above 0 K");
  const share = settled((conductance * dt) / heatCapacity);
  return temperature + ((power - conductance * (temperature - fluidTemperature)) * dt * share) / heatCapacity;
}

/**
 * Heat handed to the fluid in that time [J], from the integral of the conductance times the temperature difference,
 * not from the plate's own balance: stored + handed over = put in holds to rounding and is thereby a test.
 */
export function plateGivesUp(
  temperature: number,
  fluidTemperature: number,
  power: number,
  heatCapacity: number,
  conductance: number,
  dt: number,
): number {
  check(heatCapacity, conductance, dt);
  const share = settled((conductance * dt) / heatCapacity);
  return dt * (power * (1 - share) + conductance * (temperature - fluidTemperature) * share);
}

/** Temperature at which heating and cooling balance [K]; undefined without any cooling. */
export function steadyPlate(
  fluidTemperature: number,
  power: number,
  conductance: number,
): number | undefined {
  if (!(conductance >= 0)) impossible("conductance", conductance, "a conductance of 0 W/K or more");
  return conductance > 0 ? fluidTemperature + power / conductance : undefined;
}

/** Time [s] until a body that settles at `settles` [K] with a time constant [s] has gone from one temperature to another; undefined if it never does. */
export function timeToReach(
  from: number,
  to: number,
  body: { readonly settles: number; readonly timeConstant: number },
): number | undefined {
  if (!(body.timeConstant > 0)) impossible("timeConstant", body.timeConstant, "a time above 0 s");
  if (from === to) return 0;
  const left = (body.settles - to) / (body.settles - from);
  return left > 0 && left < 1 ? -body.timeConstant * Math.log(left) : undefined;
}
