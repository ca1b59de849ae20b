// The way from the pan to the pump: lift, bore, bends and filter.

import { atmosphere, gravity as g } from "../fluid/surroundings.ts";
import { finite, impossible, notNegative, positive, type Range } from "../../errors.ts";

/** Pressure at which the fluid lets go of its light ends and the column breaks [Pa abs], assumed. */
export const vapourPressure = 3000;

/**
 * Suction passage: lift from the surface to the pump [m], bore and length [m], sum of the minor loss
 * coefficients, and the resistance of the filter [1/m³] (Δp = R µ Q; a loaded filter has a higher one).
 */
export interface Inlet {
  readonly head: number;
  readonly bore: number;
  readonly length: number;
  readonly minorLoss: number;
  readonly filter: number;
}

const isInlet = (inlet: Inlet): boolean =>
  inlet.bore > 0 &&
  inlet.length >= 0 &&
  inlet.minorLoss >= 0 &&
  inlet.filter >= 0 &&
  Math.abs(inlet.head) + inlet.bore + inlet.length + inlet.minorLoss + inlet.filter < Infinity;

function check(inlet: Inlet): void {
  finite("lift to the pump", inlet.head, "m");
  positive("inlet bore", inlet.bore, "m");
  notNegative("inlet length", inlet.length, "m");
  notNegative("minor loss of the inlet", inlet.minorLoss);
  notNegative("resistance of the filter", inlet.filter, "1/m³");
}

/** Friction in the bore: laminar below 2300, Blasius above 4000, a straight line between. */
export const inletFrictionRange: Range = {
  law: "smooth-bore friction, 64/Re and 0.3164/Re^0.25",
  quantity: "Re",
  unit: "1",
  low: 0,
  high: 1e5,
  source: "Poiseuille; Blasius 1913",
};

const laminarEnd = 2300;
const turbulentStart = 4000;
const blendSlope = (0.3164 / turbulentStart ** 0.25 - 64 / laminarEnd) / (turbulentStart - laminarEnd);

/**
 * Darcy friction factor of a smooth bore at the Reynolds number, continuous. Above 0; Blasius holds to 1e5.
 */
export function boreFriction(reynolds: number): number {
  if (!(reynolds > 0)) impossible("Reynolds number", reynolds, "more than 0");
  if (reynolds <= laminarEnd) return 64 / reynolds;
  if (reynolds >= turbulentStart) return 0.3164 / Math.sqrt(Math.sqrt(reynolds));
  return 64 / laminarEnd + blendSlope * (reynolds - laminarEnd);
}

/** Reynolds number in the bore at the flow [m³/s], viscosity [Pa·s] and density [kg/m³]. */
export function inletReynolds(inlet: Inlet, flow: number, viscosity: number, density: number): number {
  check(inlet);
  refuse(flow, viscosity, density);
  return (4 * density * flow) / (Math.PI * inlet.bore * viscosity);
}

// Atmosphere less lift, friction, velocity head with minor losses, and filter; below zero: the flow cannot be
// drawn.
function unclipped(inlet: Inlet, flow: number, viscosity: number, density: number): number {
  const lift = density * g * inlet.head;
  if (!(flow > 0)) return atmosphere - lift;
  const speed = (4 * flow) / (Math.PI * inlet.bore * inlet.bore);
  const reynolds = (density * speed * inlet.bore) / viscosity;
  const friction = (boreFriction(reynolds) * inlet.length) / inlet.bore;
  return (
    atmosphere -
    lift -
    (friction + 1 + inlet.minorLoss) * 0.5 * density * speed * speed -
    inlet.filter * viscosity * flow
  );
}

/**
 * Pressure at the pump inlet [Pa abs] at the flow drawn [m³/s]: the Bernoulli balance with Darcy friction. 0
 * where the flow could not be drawn at all; below about 0.7 bar abs a pump is noisy (common practice).
 */
export function inletPressure(inlet: Inlet, flow: number, viscosity: number, density: number): number {
  if (!isInlet(inlet)) check(inlet);
  const p = unclipped(inlet, flow, viscosity, density);
  if (!(p < Infinity && flow < Infinity && viscosity > 0 && density > 0)) refuse(flow, viscosity, density);
  return p > 0 ? p : 0;
}

/**
 * Largest flow that can be drawn [m³/s]: there the inlet pressure is down to the vapour pressure. 0 when the
 * lift alone is too high. The loss rises with the flow and is convex within each of the three friction zones,
 * so the zone is found first: a quadratic in the laminar one, in the others Newton's steps down from its
 * upper end, which cannot miss.
 */
export function inletLimit(inlet: Inlet, viscosity: number, density: number): number {
  const rest = inletPressure(inlet, 0, viscosity, density) - vapourPressure;
  if (!(rest > 0)) return 0;
  const area = (Math.PI / 4) * inlet.bore * inlet.bore;
  const head = (0.5 * density) / (area * area); // velocity head of the flow Q is head Q²
  const perReynolds = (area * viscosity) / (density * inlet.bore); // flow at Re = 1
  const minor = head * (1 + inlet.minorLoss);
  const slope = inlet.filter * viscosity;
  const bore = (head * inlet.length) / inlet.bore; // friction loss is f bore Q²

  const laminar = slope + 64 * perReynolds * bore;
  const quick = (2 * rest) / (laminar + Math.sqrt(laminar * laminar + 4 * minor * rest));
  if (quick <= laminarEnd * perReynolds) return quick;

  const turn = turbulentStart * perReynolds;
  const turbulent = (minor + bore * boreFriction(turbulentStart)) * turn * turn + slope * turn < rest;
  let q = turbulent ? Math.sqrt(rest / minor) : turn;
  for (;;) {
    const f = boreFriction(q / perReynolds);
    // d(f Q²)/dQ is 1.75 f Q for Blasius, and 2 f Q and the slope of the straight line in between.
    const rise = turbulent ? 1.75 * f * q : (2 * f + (blendSlope * q) / perReynolds) * q;
    const excess = (minor + bore * f) * q * q + slope * q - rest;
    const next = q - excess / (2 * minor * q + slope + bore * rise);
    if (!(next < q)) return q;
    q = next;
  }
}

function refuse(flow: number, viscosity: number, density: number): void {
  finite("flow at the inlet", flow, "m³/s");
  positive("viscosity", viscosity, "Pa·s");
  positive("density", density, "kg/m³");
}
