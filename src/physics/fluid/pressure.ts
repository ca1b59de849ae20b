// Viscosity under pressure. Below 2 MPa it rises by less than 4 %, so the leak and the clutch leave it out.
import { impossible, type Range } from "../../errors.ts";

export const pressureRange: Range = {
  law: "viscosity under pressure",
  quantity: "pressure",
  unit: "Pa",
  low: 0,
  high: 5e8,
  source: "Barus (1893) to about 0.5 GPa; Roelands (1966) further",
};

const stiffest = 600; // no oil flows e⁶⁰⁰ times thicker: the exponential must end somewhere

function refuse(atmospheric: number, coefficient: number, pressure: number): void {
  if (!(atmospheric > 0 && atmospheric < Infinity))
    impossible("atmospheric", atmospheric, "more than 0 Pa s");
  if (!(coefficient >= 0 && coefficient < Infinity)) impossible("coefficient", coefficient, "0 1/Pa or more");
  if (!(pressure >= 0 && pressure < Infinity)) impossible("pressure", pressure, "0 Pa or more");
}

/** Dynamic viscosity [Pa s] at a pressure [Pa]: η = η₀ e^(αp), from η₀ [Pa s] and a coefficient α [1/Pa]. Barus (1893). */
export function barus(atmospheric: number, coefficient: number, pressure: number): number {
  refuse(atmospheric, coefficient, pressure);
  return atmospheric * Math.exp(Math.min(stiffest, coefficient * pressure));
}

/**
 * Dynamic viscosity [Pa s] at a pressure [Pa] by Roelands (1966): η₀ exp{(ln η₀ + 9.67)[(1 + 5.1e-9 p)^Z − 1]} with
 * Z = α/[5.1e-9 (ln η₀ + 9.67)]. Equal to Barus at low pressure, milder above.
 * @throws impossible-input at or below 6.31e-5 Pa s, the pole of the formula (thinner than any liquid oil)
 */
export function roelands(atmospheric: number, coefficient: number, pressure: number): number {
  refuse(atmospheric, coefficient, pressure);
  const rise = Math.log(atmospheric) + 9.67;
  if (!(rise > 0)) impossible("atmospheric", atmospheric, "more than 6.31e-5 Pa s");
  const Z = coefficient / (5.1e-9 * rise);
  return atmospheric * Math.exp(Math.min(stiffest, rise * ((1 + 5.1e-9 * pressure) ** Z - 1)));
}

/**
 * Pressure-viscosity coefficient [1/Pa] of a mineral oil from its kinematic viscosity [m²/s] at the same temperature:
 * 9.904e-9 (ν in mm²/s)^0.139. Source: Gold and others (2001), mineral oil.
 */
export function pressureCoefficient(kinematic: number): number {
  if (!(kinematic > 0 && kinematic < Infinity)) impossible("kinematic", kinematic, "more than 0 m²/s");
  return 9.904e-9 * (kinematic * 1e6) ** 0.139;
}
