// A round hole in a tube wall: a pinhole, a pit that came through, a rubbed spot.
import { impossible, type Range } from "../../errors.ts";
import { leakFlow, shut, type GrowingOpening, type Opening } from "./flow.ts";

export const holeRange: Range = {
  law: "round hole",
  quantity: "wall over diameter",
  unit: "1",
  low: 0,
  high: 10,
  source:
    "Lichtarowicz, Duggins and Markland (1965) from 2 to 10; thin walls by the sharp-edged orifice; a longer hole keeps the limit at 10",
};

/**
 * Discharge coefficient at high Reynolds number of a hole whose length is so many diameters (hydraulic ones for a
 * slot): 0.61 when thinner than half a diameter, 0.827 − 0.0085 L/d from 2 to 10 (the jet has reattached), linear
 * between, and the value at 10 beyond.
 * Source: Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210-219.
 */
export function dischargeLimit(lengthOverDiameter: number): number {
  if (!(lengthOverDiameter >= 0)) impossible("lengthOverDiameter", lengthOverDiameter, "0 or more");
  if (lengthOverDiameter <= 0.5) return 0.61;
  if (lengthOverDiameter < 2) return 0.61 + (0.2 / 1.5) * (lengthOverDiameter - 0.5);
  return 0.827 - 0.0085 * (lengthOverDiameter < 10 ? lengthOverDiameter : 10);
}

/** `holeOpening` written into a record that is kept, for a hole that grows each second. */
export function holeOpeningInto(out: GrowingOpening, diameter: number, wall: number): void {
  if (!(diameter >= 0 && diameter < Infinity)) impossible("diameter", diameter, "0 m or more");
  if (!(wall >= 0 && wall < Infinity)) impossible("wall", wall, "0 m or more");
  if (diameter === 0) {
    out.viscous = shut;
    out.inertial = shut;
    return;
  }
  const d2 = diameter * diameter;
  const CA = dischargeLimit(wall / diameter) * (Math.PI / 4) * d2;
  out.viscous = Math.min(shut, (24 + (128 / Math.PI) * (wall / diameter)) / (d2 * diameter));
  out.inertial = Math.min(shut, 1 / (2 * CA * CA));
}

/**
 * A round hole of a diameter [m, 0 is shut] through a wall [m]: viscous = 24/d³ + 128 L/(π d⁴), inertial =
 * 1/(2 C² A²). Tends exactly to Sampson's creeping flow, to Hagen-Poiseuille and to the orifice law.
 * Source: Sampson (1891); the sum of both viscous parts after Dagan, Weinbaum and Pfeffer (1982), within 1 %.
 */
export function holeOpening(diameter: number, wall: number): Opening {
  const opening = { viscous: shut, inertial: shut };
  holeOpeningInto(opening, diameter, wall);
  return opening;
}

/**
 * Diameter [m] of the round hole in a wall [m] that lets a flow [m³/s] out under an overpressure [Pa]: `holeOpening`
 * and the leak law read the other way, by bracketing. Zero for no flow.
 */
export function holeDiameter(
  flow: number,
  overpressure: number,
  viscosity: number,
  density: number,
  wall: number,
): number {
  if (!(flow >= 0 && flow < Infinity)) impossible("flow", flow, "0 m³/s or more");
  if (!(overpressure > 0 && overpressure < Infinity))
    impossible("overpressure", overpressure, "more than 0 Pa");
  if (flow === 0) return 0;
  const opening = { viscous: shut, inertial: shut };
  const flows = (diameter: number) => {
    holeOpeningInto(opening, diameter, wall);
    return leakFlow(opening, overpressure, viscosity, density);
  };
  let high = 1e-3;
  while (flows(high) < flow) high *= 2;
  let low = 0;
  for (let halving = 0; halving < 60; halving += 1) {
    const diameter = (low + high) / 2;
    if (flows(diameter) < flow) low = diameter;
    else high = diameter;
  }
  return high;
}
