import type { Clutch } from "../../src/physics/clutch/geometry.ts";

/** A generic pack, invented for tests: ten faces of 75 by 60 mm, piston 70 by 40 mm, spring 800 N. */
export const pack: Clutch = {
  name: "generic pack",
  faces: 10,
  outer: 0.075,
  inner: 0.06,
  pistonArea: Math.PI * (0.07 ** 2 - 0.04 ** 2),
  spring: 800,
  stroke: 2.5e-3,
  deadVolume: 0,
  fillOrifice: 2.5e-3,
  fillDischarge: 0.62,
  friction: { base: 0.105, rise: 0.025, riseSpeed: 0.3, slope: -5e-4, heatLoss: 0, reference: 373.15 },
  steelMass: 1,
  steelThickness: 1.8e-3,
  liningThickness: 5e-4,
  coolingArea: 0.05,
};
