import { describe, expect, it } from "vitest";
import type { Range } from "../../src/errors.ts";
import { liningPressureRange, torquePerPressure, lockPressure } from "../../src/physics/clutch/capacity.ts";
import {
  centrifugalForce,
  centrifugalPressure,
  centrifugalRange,
} from "../../src/physics/clutch/centrifugal.ts";
import { dragRange, openPackDrag } from "../../src/physics/clutch/drag.ts";
import { fadeEnergy } from "../../src/physics/clutch/fade.ts";
import { fillOrificeRange, orificeFlow } from "../../src/physics/clutch/fill.ts";
import { frictionCoefficient, frictionRange } from "../../src/physics/clutch/friction.ts";
import { type Clutch, meanRadiusPressure, radiusRange } from "../../src/physics/clutch/geometry.ts";
import { type Lockup, lockupCapacity, lockupPressureRange } from "../../src/physics/clutch/lockup.ts";
import { steadySlipRange } from "../../src/physics/clutch/slip.ts";

const pack: Clutch = {
  name: "generic pack",
  faces: 10,
  outer: 0.075,
  inner: 0.06,
  pistonArea: 0.01,
  spring: 800,
  stroke: 2e-3,
  deadVolume: 0,
  fillOrifice: 2.5e-3,
  fillDischarge: 0.62,
  friction: { base: 0.105, rise: 0.025, riseSpeed: 0.3, slope: -5e-4, heatLoss: 1e-3, reference: 373.15 },
  steelMass: 1,
  steelThickness: 1.8e-3,
  liningThickness: 5e-4,
  coolingArea: 0.05,
};
const lockup: Lockup = { ...pack, faces: 1, spring: 0, most: 8e5, back: 0, fedFromOverflow: true };
const line = { torqueAtRest: 400, freeSpeed: 600, outputSpeed: 150 };

// Each law at both ends of its range and well outside it: a finite number every time.
const laws: readonly [Range, (x: number) => number][] = [
  [
    radiusRange,
    (share) => meanRadiusPressure({ outer: 0.1, inner: Math.min(0.0999999, Math.max(0, 0.1 * share)) }),
  ],
  [liningPressureRange, (p) => lockPressure(pack, Math.abs(p) * torquePerPressure(pack, 0.12), 0.12)],
  [frictionRange, (v) => frictionCoefficient(pack.friction, v, 400)],
  [fillOrificeRange, (x) => orificeFlow(pack, x, 830)],
  [
    steadySlipRange,
    (t) =>
      fadeEnergy(
        { ...line, inertia: 0.2 },
        { kiss: 8e4, perPressure: 8e-4 },
        { startPressure: 8e5, duration: Math.abs(t) },
      ),
  ],
  [lockupPressureRange, (dp) => lockupCapacity(lockup, dp, 0.12)],
  [dragRange, (slip) => openPackDrag(pack, 0.02, slip)],
  [centrifugalRange, (speed) => centrifugalForce({ inner: 0.04, outer: 0.07, free: 0.03 }, 830, speed)],
];

describe("ranges of the clutch laws", () => {
  it.each(laws.map(([range, law]) => ({ range, law })))("$range.law in $range.quantity", ({ range, law }) => {
    expect(range.low).toBeLessThan(range.high);
    expect(range.source.length).toBeGreaterThan(10);
    for (const x of [range.low, range.high, 10 * range.high, -range.high])
      expect(Number.isFinite(law(x))).toBe(true);
  });

  it("steady slip is within a tenth of the lagging truth from its lower end up", () => {
    const grip = { kiss: 0, perPressure: 5e-4 };
    // The whole fall is the window here: 600 kPa is lock.
    const fade = { startPressure: 6e5, duration: steadySlipRange.low + 0.5 };
    const truth = fadeEnergy({ ...line, inertia: 0.2 }, grip, fade);
    expect(truth / fadeEnergy({ ...line, inertia: 0 }, grip, fade)).toBeGreaterThan(0.895);
  });

  it("pressure of turning fluid is nothing where there is none", () => {
    expect(centrifugalPressure({ inner: 0, outer: 0.05, free: 0.06 }, 830, 300)).toBe(0);
  });
});
