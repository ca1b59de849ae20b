// The door: one function for each kind of quantity, from a path and a text to an SI number.
// Each throws "bad-unit" for one wrong text; `readAll` runs a whole list of readings and throws every fault at once.

import { codedError, isCoded, type Fault } from "../errors.ts";
import type { Kind } from "./kinds.ts";
import { parseQuantity, quantityFault } from "./parse.ts";

/** Reads a text that carries its unit; `path` names the field in the message. */
export type Reading = (path: string, text: string) => number;

function reading(kind: Kind): Reading {
  return (path, text) => {
    const parsed = parseQuantity(kind, text);
    if ("wrong" in parsed) throw codedError("bad-unit", [quantityFault(path, kind, parsed.wrong)]);
    return parsed.value;
  };
}

/** "0.8 mm" → m. */
export const metres = reading("length");
/** "60000 mi" → m. */
export const metresDriven = reading("distance");
/** "110 cm2" → m². */
export const squareMetres = reading("area");
/** "3 qt" (US liquid quarts) → m³. */
export const cubicMetres = reading("volume");
/** "4 L/min" → m³/s. */
export const cubicMetresPerSecond = reading("flow");
/** "40 drops/min", a count → drops per minute. */
export const dropsPerMinute = reading("dripRate");
/** "2900 kg" → kg. */
export const kilograms = reading("mass");
/** "860 kg/m3" → kg/m³. */
export const kilogramsPerCubicMetre = reading("density");
/** "65 psi", above the air's pressure → Pa. */
export const pascals = reading("pressure");
/** "185 degF" → K, reckoned from absolute zero. */
export const kelvins = reading("temperature");
/** "9 K", "9 degC", "16 degF swing" → K, as a difference. */
export const temperatureDifference = reading("temperatureDifference");
/** "150 h" → s. */
export const seconds = reading("time");
/** "0.5 1/h" → 1/s. */
export const perSecond = reading("rate");
/** "35 mph" → m/s. */
export const metresPerSecond = reading("speed");
/** "0.3 m/s2", "0.2 gn" → m/s². */
export const metresPerSecondSquared = reading("acceleration");
/** "680 rpm" → rad/s. */
export const radiansPerSecond = reading("angularSpeed");
/** "3 deg" → rad. */
export const radians = reading("angle");
/** "35 cSt" → m²/s. */
export const squareMetresPerSecond = reading("kinematicViscosity");
/** "7.3 mPa s" → Pa s. */
export const pascalSeconds = reading("dynamicViscosity");
/** "900 N" → N. */
export const newtons = reading("force");
/** "620 N m", "450 lb ft" → N m; an energy is refused. */
export const newtonMetres = reading("torque");
/** "150 kW" → W. */
export const watts = reading("power");
/** "12 kJ" → J; a torque is refused. */
export const joules = reading("energy");

/** Runs every reading of a record and returns its numbers; when any is wrong, throws all faults at once. */
export function readAll<T extends Record<string, () => number>>(readings: T): { [K in keyof T]: number } {
  const faults: Fault[] = [];
  const numbers = Object.fromEntries(
    Object.entries(readings).map(([name, read]) => {
      try {
        return [name, read()];
      } catch (error) {
        if (!isCoded(error)) throw error;
        faults.push(...error.faults);
        return [name, Number.NaN];
      }
    }),
  ) as { [K in keyof T]: number };
  if (faults.length > 0) throw codedError("bad-unit", faults);
  return numbers;
}
