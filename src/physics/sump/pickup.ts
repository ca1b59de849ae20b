// The pickup: how deep its mouth must lie, and how much gas it draws when it does not.

import { gravity as g } from "../fluid/surroundings.ts";
import { finite, fraction, impossible, positive, type Range } from "../../errors.ts";
import { coverDepth, gasBetween, SPARE } from "./gas-drawn.ts";

/**
 * The mouth of the filter: its place in the pan (x, y) and its height above the floor [m], the open perimeter
 * (`rim`) over which fluid can reach it [m], the gas fraction that it draws when well covered (`baseGas`,
 * ordinary entrained air, about 0.01) and the gas fraction just before the rim limits the liquid (`weirGas`,
 * 0.05). Both gas fractions are assumed: no measured curve for a transmission pickup is published.
 */
export interface Pickup {
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly rim: number;
  readonly baseGas: number;
  readonly weirGas: number;
}

const isPickup = (pickup: Pickup): boolean =>
  pickup.rim > 0 &&
  pickup.rim < Infinity &&
  pickup.baseGas >= 0 &&
  pickup.baseGas <= 1 &&
  pickup.weirGas >= 0 &&
  pickup.weirGas <= 1;

function check(pickup: Pickup): void {
  positive("rim", pickup.rim, "m");
  fraction("baseGas", pickup.baseGas);
  fraction("weirGas", pickup.weirGas);
}

/**
 * Onset of air drawing over a sink, in its height over the radius of the mouth: above that the size of the mouth does not matter. A wide
 * mouth under little flow (the invented van's at 13 L/min: 0.5) is no point: it draws more gently, so that air should come later than by
 * this law (assumed). The rim limit takes over only further down, at `weirDepth`; where air is drawn between the two a history tells it.
 */
export const airOnsetRange: Range = {
  law: "onset of air drawing, 0.69 (Q²/g)^0.2",
  quantity: "onset height over mouth radius",
  unit: "1",
  low: 1,
  high: 30,
  source:
    "Lubin and Springer, J. Fluid Mech. 29 (1967) 385 (recalled); the range is assumed: a mouth small beside the dip",
};

/** Radius [m] of a round mouth with the open perimeter of this one. */
export function mouthRadius({ rim }: Pick<Pickup, "rim">): number {
  positive("rim", rim, "m");
  return rim / (2 * Math.PI);
}

/**
 * Height of the surface over the mouth [m] at which the dip of the surface reaches it: 0.69 (Q²/g)^(1/5),
 * flow [m³/s]. Lubin and Springer (1967); the side opening of Craya (1949) gives the same constant
 * within 0.3 %. Over a mouth that is wide beside it an upper bound (`airOnsetRange`).
 */
export function airOnset(flow: number): number {
  if (!(flow < Infinity)) impossible("flow", flow, "a finite flow in m³/s");
  return 0.69 * (Math.max(flow, 0) ** 2 / g) ** 0.2;
}

/**
 * Flow at the onset of air drawing through a side opening [m³/s] at the height h [m] above it: 2.54 √g h^2.5
 * (Craya 1949).
 */
export function sideOnsetFlow(height: number): number {
  finite("height", height, "m");
  return 2.54 * Math.sqrt(g) * Math.max(height, 0) ** 2.5;
}

/**
 * Most liquid that passes a rim of the open length [m] under the height h [m]: broad-crest flow rim √g
 * (2h/3)^1.5 [m³/s] (Chow, Open-Channel Hydraulics, 1959).
 */
export function weirFlow(rim: number, height: number): number {
  positive("rim", rim, "m");
  finite("height", height, "m");
  const critical = (2 / 3) * Math.max(height, 0);
  return rim * critical * Math.sqrt(g * critical);
}

/**
 * Height over the rim [m] below which the liquid no longer suffices for the flow [m³/s]: the inverse of
 * `weirFlow`.
 */
export function weirDepth(rim: number, flow: number): number {
  if (!(rim > 0 && rim < Infinity && flow < Infinity)) refuse(rim, flow);
  return 1.5 * Math.cbrt((Math.max(flow, 0) / rim) ** 2 / g);
}

/**
 * Whether the mouth is so deep that no air is drawn: above the onset, and 5 % above what the rim needs. No
 * root is taken, since this is asked every step.
 */
export function isCovered(pickup: Pickup, submergence: number, flow: number): boolean {
  if (!isPickup(pickup)) check(pickup);
  if (!(submergence < Infinity && flow < Infinity)) refuse(pickup.rim, flow, submergence);
  if (submergence <= 0) return false;
  const q = Math.max(flow, 0);
  const square = submergence * submergence;
  const perRim = q / pickup.rim;
  return (
    square * square * submergence * g >= 0.69 ** 5 * q * q &&
    square * submergence * g >= (SPARE * 1.5) ** 3 * perRim * perRim
  );
}

/**
 * Gas fraction of what the pickup draws (0 to 1) at the submergence [m] of its mouth and the flow [m³/s] that
 * it draws. Covered above the onset of air drawing: `baseGas`. Between there and the height at which the rim
 * limits the liquid: rising in a straight line to `weirGas`. Below it the liquid is what the rim lets
 * through, whatever the pump would like. Dry: 1. Continuous in both arguments. A model: onset and weir are
 * laws, the straight line between them is assumed.
 */
export function gasFraction(pickup: Pickup, submergence: number, flow: number): number {
  if (isCovered(pickup, submergence, flow)) return pickup.baseGas;
  if (submergence <= 0) return 1;
  const weir = weirDepth(pickup.rim, flow);
  return gasBetween(pickup, submergence, weir, coverDepth(airOnset(flow), weir));
}

function refuse(rim: number, flow: number, submergence = 0): void {
  positive("rim", rim, "m");
  finite("flow", flow, "m³/s");
  finite("submergence", submergence, "m");
}
