// A transmission fluid as the other links see it: three things from its data sheet.
import { impossible } from "../../errors.ts";
import { density } from "./density.ts";
import { kinematicViscosity, type ViscosityLine } from "./viscosity.ts";

/** Density at 15 °C [kg/m³]; shear loss is the share of its viscosity gone when its life is used up (0.10 to 0.20). */
export interface Fluid {
  readonly viscosity: ViscosityLine;
  readonly density15: number;
  readonly shearLoss: number;
}

/**
 * Dynamic viscosity [Pa s] at a temperature [K] and age (share of life used; past 1 it thins no further).
 * Kinematic viscosity by ASTM D341 times density at the same temperature; the loss by shear is linear in age.
 */
export function dynamicViscosity(fluid: Fluid, temperature: number, age: number): number {
  if (!(age >= 0 && age < Infinity)) impossible("age", age, "0 or more");
  if (!(fluid.shearLoss >= 0 && fluid.shearLoss < 1))
    impossible("shearLoss", fluid.shearLoss, "0 to less than 1");
  const thinned = 1 - fluid.shearLoss * (age < 1 ? age : 1);
  return kinematicViscosity(fluid.viscosity, temperature) * thinned * density(fluid.density15, temperature);
}
