import { finite, impossible, notNegative } from "../../errors.ts";
import { specificHeat } from "../fluid/specific-heat.ts";

const zeroCelsius = 273.15;

/**
 * Temperature [K] of fluid and the metal that warms with it, from their energy [J] above 0 °C:
 * E = m e(T) + C (T − 273.15). Mass [kg], density at 15 °C [kg/m³], metal [J/K]. The specific heat is a straight line
 * in temperature (Cragoe, NBS Misc. Pub. 97, 1929), so the inverse is one quadratic, in the form that loses no digits.
 */
export function sumpTemperature(
  mass: number,
  density15: number,
  metalCapacity: number,
  energy: number,
): number {
  if (!(mass >= 0)) impossible("mass", mass, "a mass of 0 kg or more");
  if (!(metalCapacity >= 0)) impossible("metalCapacity", metalCapacity, "a heat capacity of 0 J/K or more");
  if (!(mass + metalCapacity > 0)) impossible("mass", mass, "some fluid or some metal to hold the heat");
  if (!(energy < Infinity && mass + metalCapacity < Infinity)) refuse(mass, metalCapacity, energy);
  const atZero = specificHeat(density15, zeroCelsius);
  const perKelvin = (specificHeat(density15, zeroCelsius + 100) - atZero) / 100;
  const A = mass * atZero + metalCapacity;
  const B = (mass * perKelvin) / 2;
  const root = A * A + 4 * B * energy;
  if (root < 0) impossible("energy", energy, "an energy that an absolute temperature above 0 K can give");
  const t = (2 * energy) / (A + Math.sqrt(root));
  if (t <= -zeroCelsius)
    impossible("energy", energy, "an energy that an absolute temperature above 0 K can give");
  return zeroCelsius + t;
}

function refuse(mass: number, metalCapacity: number, energy: number): void {
  notNegative("mass", mass, "kg");
  notNegative("metalCapacity", metalCapacity, "J/K");
  finite("energy", energy, "J");
}
