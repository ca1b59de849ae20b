import { finite, notNegative, positive, type Range } from "../../errors.ts";

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

/** An answer about a plate, if there can be such a plate. */
function checked(
  answer: number,
  temperature: number,
  fluidTemperature: number,
  power: number,
  heatCapacity: number,
  conductance: number,
  dt: number,
): number {
  if (!(
    Math.abs(answer) < Infinity &&
    temperature > 0 &&
    fluidTemperature > 0 &&
    heatCapacity > 0 &&
    conductance >= 0 &&
    dt >= 0
  ))
    refuse(temperature, fluidTemperature, power, heatCapacity, conductance, dt);
  return answer;
}

function refuse(
  temperature: number,
  fluidTemperature: number,
  power: number,
  heatCapacity: number,
  conductance: number,
  dt: number,
): void {
  positive("temperature", temperature, "K");
  positive("fluidTemperature", fluidTemperature, "K");
  finite("power", power, "W");
  positive("heatCapacity", heatCapacity, "J/K");
  notNegative("conductance", conductance, "W/K");
  notNegative("dt", dt, "s");
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
  const share = settled((conductance * dt) / heatCapacity);
  const after =
    temperature + ((power - conductance * (temperature - fluidTemperature)) * dt * share) / heatCapacity;
  return checked(after, temperature, fluidTemperature, power, heatCapacity, conductance, dt);
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
  const share = settled((conductance * dt) / heatCapacity);
  const heat = dt * (power * (1 - share) + conductance * (temperature - fluidTemperature) * share);
  return checked(heat, temperature, fluidTemperature, power, heatCapacity, conductance, dt);
}

/** Temperature at which heating and cooling balance [K]; undefined without any cooling. */
export function steadyPlate(
  fluidTemperature: number,
  power: number,
  conductance: number,
): number | undefined {
  positive("fluidTemperature", fluidTemperature, "K");
  finite("power", power, "W");
  notNegative("conductance", conductance, "W/K");
  return conductance > 0 ? fluidTemperature + power / conductance : undefined;
}

/** Time [s] until a body that settles at `settles` [K] with a time constant [s] has gone from one temperature to another; undefined if it never does. */
export function timeToReach(
  from: number,
  to: number,
  body: { readonly settles: number; readonly timeConstant: number },
): number | undefined {
  finite("from", from, "K");
  finite("to", to, "K");
  finite("settles", body.settles, "K");
  positive("timeConstant", body.timeConstant, "s");
  if (from === to) return 0;
  const left = (body.settles - to) / (body.settles - from);
  return left > 0 && left < 1 ? -body.timeConstant * Math.log(left) : undefined;
}
