// Filling a clutch: its orifice against what pump and clutch circuit leave for it.

import { kissPressure } from "./clutch/capacity.ts";
import { orificeFlow } from "./clutch/fill.ts";
import type { Clutch } from "./clutch/geometry.ts";
import { mixtureDensity } from "./supply/cooler-circuit.ts";
import { clutchCircuitFlow, deliveredAt, type Balance, type BalanceConditions } from "./supply/regulator.ts";
import { rootBetween } from "./supply/root.ts";

/** Liquid that flows into a filling clutch [m³/s], at the pressure where orifice and supply meet; air moves no piston. */
export function fillingFlow(
  input: BalanceConditions,
  { linePressure, lineGas }: Balance,
  clutch: Clutch,
): number {
  const kiss = kissPressure(clutch);
  if (linePressure <= kiss) return 0;
  const filling = { input, clutch, density: mixtureDensity(input.density, lineGas) };
  const pressure =
    spare(linePressure, filling) >= 0 ? linePressure : rootBetween(spare, filling, kiss, linePressure);
  return orificeFlow(clutch, pressure - kiss, filling.density) * (1 - lineGas);
}

/** What the pump delivers at a pressure over what clutch circuit and filling clutch take [m³/s]; falls with the pressure. */
function spare(
  pressure: number,
  { input, clutch, density }: { input: BalanceConditions; clutch: Clutch; density: number },
): number {
  const taken = clutchCircuitFlow(input.clutch, pressure, input.viscosity, density, input.setPoint);
  return deliveredAt(input, pressure) - taken - orificeFlow(clutch, pressure - kissPressure(clutch), density);
}
