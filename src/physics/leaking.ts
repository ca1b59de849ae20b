// The leak as it is now: its opening after so many running hours, and on which side of the circuit it sits.

import type { Leak, LeakOpening } from "./build.ts";
import { annulusOpening } from "./leak/annulus.ts";
import { crackGap, crackOpening } from "./leak/crack.ts";
import type { Opening } from "./leak/flow.ts";
import { holeOpening } from "./leak/hole.ts";
import { parisBetween } from "./leak/paris.ts";
import { sealClearance } from "./leak/seal-creep.ts";
import type { State } from "./state.ts";
import type { CircuitPlace } from "./supply/cooler-circuit.ts";

export interface LeakNow {
  viscous: number;
  inertial: number;
  onLine: CircuitPlace;
  atPan: boolean;
  height: number;
}

export const closedLeak = (): LeakNow => ({
  viscous: Infinity,
  inertial: Infinity,
  onLine: "none",
  atPan: false,
  height: 0,
});

/** Writes what the leak is at this moment; nothing leaks before it opens. */
export function openingNow(leak: Leak | null, state: State, out: LeakNow): void {
  out.onLine = "none";
  out.atPan = false;
  if (leak === null || state.leakAge < 0) return;
  const opening = openingAt(leak.opening, state.leakAge, state.leakPressure, true);
  out.viscous = opening.viscous;
  out.inertial = opening.inertial;
  out.height = leak.height;
  if (leak.place === "pan") out.atPan = true;
  else out.onLine = leak.place;
}

/**
 * The opening after `age` seconds of running. A crack gapes under bending (only while running) and pressure;
 * one that has grown to its end is a line parted at full bore.
 */
export function openingAt(opening: LeakOpening, age: number, pressure: number, running: boolean): Opening {
  switch (opening.kind) {
    case "hole":
      return holeOpening(opening.diameter, opening.wall);
    case "seal": {
      const clearance = sealClearance(opening.clearance, opening.finalClearance, opening.creepTime, age);
      return annulusOpening(opening.diameter, clearance, opening.length, opening.eccentricity);
    }
    case "crack": {
      if (hasParted(opening, age)) return holeOpening(2 * (opening.tubeRadius - opening.wall / 2), opening.wall);
      const half = crackHalfLength(opening, age);
      const hoop = (pressure * opening.tubeRadius) / opening.wall;
      const stress = hoop + (running ? opening.bendingStress : 0);
      const gape = crackGap(stress, half, opening.modulus, opening.tubeRadius, opening.wall, opening.poisson);
      return crackOpening(2 * half, opening.restGap + gape, opening.wall);
    }
  }
}

/** Half length of the crack after so much running: Paris growth between its first length and the one at which the line parts. */
export function crackHalfLength(crack: Extract<LeakOpening, { kind: "crack" }>, age: number): number {
  return parisBetween(crack.halfLength, crack.partsAt, crack.parisExponent, age / crack.partsAfter);
}

export function hasParted(opening: LeakOpening, age: number): boolean {
  return opening.kind === "crack" && age >= opening.partsAfter;
}
