// The leak as it is now: its opening after so many running hours, and on which side of the circuit it sits.

import type { CorrosionPit, FatigueCrack, Leak, LeakOpening, RubbedFlat } from "./build.ts";
import { annulusOpeningInto } from "./leak/annulus.ts";
import { crackGap, crackOpeningInto } from "./leak/crack.ts";
import { shut, type GrowingOpening } from "./leak/flow.ts";
import { holeOpeningInto } from "./leak/hole.ts";
import { parisBetween } from "./leak/paris.ts";
import { piercedMouth, pierceTime, pitMouth } from "./leak/pits.ts";
import { rubbedMouth, rubbedOpeningInto } from "./leak/rub-through.ts";
import { sealClearance } from "./leak/seal-creep.ts";
import type { State } from "./state.ts";
import type { CoolerLeakPlace } from "./supply/cooler-circuit.ts";

export interface LeakNow {
  viscous: number;
  inertial: number;
  onLine: CoolerLeakPlace;
  /** By the head of what is in the pan, over its floor or, on the rail, where it leaks. */
  atPan: boolean;
  onRail: boolean;
  height: number;
  /** Where on the rail [m]. */
  x: number;
  y: number;
}

export const closedLeak = (): LeakNow => ({
  viscous: shut,
  inertial: shut,
  onLine: "none",
  atPan: false,
  onRail: false,
  height: 0,
  x: 0,
  y: 0,
});

/** Writes what the leak is at this moment; nothing leaks before it opens. */
export function openingNow(leak: Leak | null, state: State, out: LeakNow): void {
  out.onLine = "none";
  out.atPan = false;
  out.onRail = false;
  if (leak === null || state.leakAge < 0) return;
  openingAt(out, leak.opening, state.leakAge, state.leakPressure, true, state.clock - state.leakOpenedAt);
  out.height = leak.height;
  out.x = leak.x;
  out.y = leak.y;
  out.onRail = leak.place === "pan-seam";
  if (leak.place === "pan" || leak.place === "pan-seam") out.atPan = true;
  else if (leak.place === "shaft-seal") out.onLine = leak.fedBy;
  else out.onLine = leak.place;
}

/**
 * The opening after `age` seconds of running and `calendar` seconds in all, which a pit counts. A crack gapes under bending
 * (only while running) and pressure; one that has grown to its end is a line parted at full bore.
 */
export function openingAt(
  out: GrowingOpening,
  opening: LeakOpening,
  age: number,
  pressure: number,
  running: boolean,
  calendar = age,
): void {
  switch (opening.kind) {
    case "hole":
      return holeOpeningInto(out, opening.diameter, opening.wall);
    case "slot":
      return crackOpeningInto(out, opening.length, opening.gap, opening.depth);
    case "pit":
      return holeOpeningInto(out, mouthOf(opening, age, calendar), wallAtMouth(opening));
    case "rub": {
      const { tubeRadius, wall, contact, depthInHundredHours } = opening;
      return rubbedOpeningInto(out, tubeRadius, wall, contact, depthInHundredHours, age);
    }
    case "seal": {
      const clearance = sealClearance(opening.clearance, opening.finalClearance, opening.creepTime, age);
      return annulusOpeningInto(out, opening.diameter, clearance, opening.length, opening.eccentricity);
    }
    case "crack":
      return crackAt(out, opening, age, pressure, running);
  }
}

function crackAt(
  out: GrowingOpening,
  crack: FatigueCrack,
  age: number,
  pressure: number,
  running: boolean,
): void {
  if (hasParted(crack, age)) return partedInto(out, crack);
  gapingInto(out, crack, crackHalfLength(crack, age), pressure, running ? crack.bendingStress : 0);
}

/** A line parted at full bore. */
function partedInto(out: GrowingOpening, { tubeRadius, wall }: FatigueCrack): void {
  holeOpeningInto(out, 2 * tubeRadius - wall, wall);
}

/** A crack of a half length [m] under a pressure and a bending stress [Pa]. */
function gapingInto(
  out: GrowingOpening,
  { tubeRadius, wall, modulus, poisson, restGap }: FatigueCrack,
  half: number,
  pressure: number,
  bending: number,
): void {
  const hoop = (pressure * tubeRadius) / wall;
  const gape = crackGap(hoop + bending, half, modulus, tubeRadius, wall, poisson);
  crackOpeningInto(out, 2 * half, restGap, wall, gape);
}

/** A crack after `age` seconds of running, both while the line runs and bends under a pressure [Pa] and while it is parked without either; grown once for the two. */
export function crackInBoth(
  running: GrowingOpening,
  parked: GrowingOpening,
  crack: FatigueCrack,
  age: number,
  pressure: number,
): void {
  if (hasParted(crack, age)) {
    partedInto(running, crack);
    partedInto(parked, crack);
    return;
  }
  const half = crackHalfLength(crack, age);
  gapingInto(running, crack, half, pressure, crack.bendingStress);
  gapingInto(parked, crack, half, 0, 0);
}

/** The opening that one grows on from after so much running [s]: its own law, begun later. A pit goes by the calendar, and stays as it is. */
export function agedOpening(opening: LeakOpening, age: number): LeakOpening {
  if (opening.kind === "seal") {
    const { clearance, finalClearance, creepTime } = opening;
    return { ...opening, clearance: sealClearance(clearance, finalClearance, creepTime, age) };
  }
  if (opening.kind !== "crack") return opening;
  return {
    ...opening,
    halfLength: crackHalfLength(opening, Math.min(age, opening.partsAfter)),
    partsAfter: Math.max(1e-3, opening.partsAfter - age),
  };
}

/** Diameter [m] of the mouth of a pit after so much of the calendar, or of a rubbed-through spot after so much running. */
export function mouthOf(opening: CorrosionPit | RubbedFlat, age: number, calendar: number): number {
  if (opening.kind === "pit") {
    const { diameter, after, exponent, wall, bore, aspect } = opening;
    const since = Math.max(0, calendar);
    if (aspect === undefined) return pitMouth(diameter, after, since, exponent, bore);
    const through = pierceTime(diameter, after, wall, aspect, exponent);
    return piercedMouth(wall, aspect, through, since, exponent, bore);
  }
  const { tubeRadius, wall, contact, depthInHundredHours } = opening;
  return rubbedMouth(tubeRadius, wall, contact, depthInHundredHours, age);
}

/** What a pit's mouth has of wall along the flow [m]: one that cuts the far face of the wall runs out to an edge there. */
export const wallAtMouth = ({ aspect, wall }: CorrosionPit): number => (aspect === undefined ? wall : 0);

/** How long the law of its growth has run [s] so long after a pit came through: its way through the wall counts where that shapes the mouth. */
export const rustedFor = (
  { aspect, diameter, after, wall, exponent }: CorrosionPit,
  calendar: number,
): number => calendar + (aspect === undefined ? 0 : pierceTime(diameter, after, wall, aspect, exponent));

/** Half length of the crack after so much running: Paris growth between its first length and the one at which the line parts. */
export function crackHalfLength(crack: FatigueCrack, age: number): number {
  return parisBetween(crack.halfLength, crack.partsAt, crack.parisExponent, age / crack.partsAfter);
}

export function hasParted(opening: LeakOpening, age: number): boolean {
  return opening.kind === "crack" && age >= opening.partsAfter;
}
