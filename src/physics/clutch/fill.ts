import { finite, fraction, impossible, notNegative, positive, type Range } from "../../errors.ts";
import { type Clutch } from "./geometry.ts";

/** The turbulent orifice law behind the fill flow. */
export const fillOrificeRange: Range = {
  law: "clutch fill through a sharp orifice",
  quantity: "Re",
  unit: "1",
  low: 1000,
  high: 1e6,
  source: "Merritt, Hydraulic Control Systems, 1967 (recalled)",
};

/** Volume to be filled before the plates touch [m³]: dead volume plus piston area times stroke. */
export function fillVolume(clutch: Clutch): number {
  notNegative("deadVolume", clutch.deadVolume, "m³");
  notNegative("pistonArea", clutch.pistonArea, "m²");
  notNegative("stroke", clutch.stroke, "m");
  return clutch.deadVolume + clutch.pistonArea * clutch.stroke;
}

/** Flow through the clutch's feed orifice [m³/s] under a pressure drop [Pa]: Q = C A sqrt(2 dp/rho); zero for no drop. */
export function orificeFlow(
  feed: Pick<Clutch, "fillOrifice" | "fillDischarge">,
  pressureDrop: number,
  density: number,
): number {
  const A = (Math.PI / 4) * feed.fillOrifice * feed.fillOrifice;
  const flow = pressureDrop > 0 ? feed.fillDischarge * A * Math.sqrt((2 * pressureDrop) / density) : 0;
  if (!(flow >= 0 && pressureDrop < Infinity && density > 0 && density < Infinity && feed.fillOrifice >= 0))
    refuse(feed, pressureDrop, density);
  return flow;
}

/**
 * Time to fill a volume [s] with a flow [m³/s] of which the share `gas` (0 to 1, at line pressure) is air. Only
 * liquid counts as fill: the air moves no piston against its spring until it has been squeezed or has left through
 * the bleed (assumed). Undefined when no liquid arrives.
 */
export function fillTime(volume: number, flow: number, gas: number): number | undefined {
  notNegative("volume", volume, "m³");
  finite("flow", flow, "m³/s");
  fraction("gas", gas);
  const liquid = Math.max(0, flow) * (1 - gas);
  if (volume === 0) return 0;
  const time = volume / liquid;
  return Number.isFinite(time) ? time : undefined;
}

/**
 * Aerated fluid, measured at the pressure of its supply, that fills a volume [m³] at a higher pressure: the gas
 * share shrinks isothermally, V/(1 − gas (1 − p0/p1)). Pressures absolute [Pa]; nothing dissolves.
 */
export function aeratedFill(
  volume: number,
  gas: number,
  from: { readonly supply: number; readonly filled: number },
): number {
  notNegative("volume", volume, "m³");
  fraction("gas", gas);
  finite("filled", from.filled, "Pa");
  if (!(from.supply > 0 && from.filled >= from.supply))
    impossible("supply", from.supply, "an absolute pressure above 0 Pa and not above the filled one");
  return volume / (1 - gas * (1 - from.supply / from.filled));
}

function refuse(
  feed: Pick<Clutch, "fillOrifice" | "fillDischarge">,
  pressureDrop: number,
  density: number,
): void {
  notNegative("fillOrifice", feed.fillOrifice, "m");
  notNegative("fillDischarge", feed.fillDischarge);
  finite("pressureDrop", pressureDrop, "Pa");
  positive("density", density, "kg/m³");
}
