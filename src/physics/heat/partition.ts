import { effusivity, type Solid } from "./solid.ts";
import { type Range } from "../../errors.ts";

/** A first-order share: measured shares change during the engagement. */
export const partitionRange: Range = {
  law: "heat split by effusivities",
  quantity: "time since contact",
  unit: "s",
  low: 0,
  high: 0.1,
  source: "Carslaw and Jaeger 1959; SAE 720287 found the share not constant in time",
};

/** Share of the friction heat that goes into the steel [0..1]: e_s/(e_s + e_l), two half-spaces at one surface temperature. */
export function steelShare(steel: Solid, lining: Solid): number {
  const es = effusivity(steel);
  return es / (es + effusivity(lining));
}
