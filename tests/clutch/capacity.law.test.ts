import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  capacity,
  clampForce,
  frictionTorque,
  kissPressure,
  liningPressure,
  lockPressure,
  torquePerPressure,
} from "../../src/physics/clutch/capacity.ts";
import { centrifugalForce, centrifugalPressure, dragOnSpeed } from "../../src/physics/clutch/centrifugal.ts";
import { openPackDrag } from "../../src/physics/clutch/drag.ts";
import { aeratedFill, fillTime, fillVolume, orificeFlow } from "../../src/physics/clutch/fill.ts";
import { frictionCoefficient, frictionSlope, stribeckFriction } from "../../src/physics/clutch/friction.ts";
import {
  type Clutch,
  evenPressure,
  faceArea,
  meanRadiusPressure,
  meanRadiusWear,
  wearForce,
  wearPressure,
} from "../../src/physics/clutch/geometry.ts";
import {
  type Lockup,
  lockupCapacity,
  lockupPressure,
  lockupPressureFor,
} from "../../src/physics/clutch/lockup.ts";
import { pack as genericPack } from "../checks/generic-pack.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pack: Clutch = {
  ...genericPack,
  deadVolume: 5e-6,
  friction: { ...genericPack.friction, heatLoss: 1e-3 },
};
const rings = fc.record({ outer: number(0.03, 0.3), share: number(0, 0.999) }).map(({ outer, share }) => ({
  outer,
  inner: outer * share,
}));

describe("the ring", () => {
  it("has a larger friction radius new than worn in, by under half a per cent above a radius ratio of 0.8", () =>
    fc.assert(
      fc.property(rings, (ring) => {
        const gain = meanRadiusPressure(ring) / meanRadiusWear(ring) - 1;
        expect(gain).toBeGreaterThanOrEqual(-1e-12);
        if (ring.inner > 0.8 * ring.outer) expect(gain).toBeLessThan(0.005);
      }),
    ));

  it("gives back the force from the pressure at its inner edge, and the mean pressure from its area", () =>
    fc.assert(
      fc.property(rings, number(1, 1e5), (ring, force) => {
        fc.pre(ring.inner > 1e-6);
        expect(wearForce(ring, wearPressure(ring, force)) / force).toBeCloseTo(1, 9);
        expect((evenPressure(ring, force) * faceArea(ring)) / force).toBeCloseTo(1, 9);
      }),
    ));
});

describe("capacity", () => {
  it("is nothing up to kiss pressure, a straight line above, and holds at lock pressure just what was asked", () =>
    fc.assert(
      fc.property(number(-1e5, 2e6), number(0.02, 0.2), number(0, 800), (pressure, mu, torque) => {
        const kiss = kissPressure(pack);
        const T = capacity(pack, pressure, mu);
        if (pressure <= kiss) expect(T).toBe(0);
        else expect(T).toBeCloseTo(torquePerPressure(pack, mu) * (pressure - kiss), 6);
        expect(capacity(pack, lockPressure(pack, torque, mu), mu)).toBeCloseTo(torque, 6);
      }),
    ));

  it("is the clamp force times faces, friction and radius", () => {
    expect(
      frictionTorque(clampForce(pack, 4e5), 0.12, { faces: 10, radius: meanRadiusWear(pack) }),
    ).toBeCloseTo(capacity(pack, 4e5, 0.12), 9);
    expect(liningPressure(pack, 0)).toBe(0);
  });

  it("refuses what no clutch has", () => {
    expect(() => capacity(pack, NaN, 0.1)).toThrow("pressure");
    expect(() => capacity(pack, 1e5, -0.1)).toThrow("mu");
    expect(() => lockPressure(pack, 100, 0)).toThrow("mu");
    expect(() => kissPressure({ ...pack, pistonArea: 0 })).toThrow("pistonArea");
    expect(() => meanRadiusWear({ outer: 0.05, inner: 0.05 })).toThrow("inner");
    expect(() => wearPressure({ outer: 0.05, inner: 0 }, 1)).toThrow("inner");
  });
});

describe("friction", () => {
  it("stays between nothing and its cold peak times 1.2, whatever speed and heat", () =>
    fc.assert(
      fc.property(number(-200, 200), number(1, 2000), (speed, temperature) => {
        const mu = frictionCoefficient(pack.friction, speed, temperature);
        expect(mu).toBeGreaterThanOrEqual(0);
        expect(mu).toBeLessThanOrEqual(0.13 * 1.2);
        expect(frictionCoefficient(pack.friction, -speed, temperature)).toBe(mu);
      }),
    ));

  it("has the slope of its own curve", () =>
    fc.assert(
      fc.property(number(0.001, 20), (speed) => {
        const h = 1e-5;
        const up = frictionCoefficient(pack.friction, speed + h, 373.15);
        const down = frictionCoefficient(pack.friction, speed - h, 373.15);
        expect(frictionSlope(pack.friction, speed)).toBeCloseTo((up - down) / (2 * h), 6);
      }),
    ));

  it("falls with speed on the Stribeck curve of a spent fluid, and so can shudder", () => {
    const spent = { coulomb: 0.12, atRest: 0.15, speed: 0.2, exponent: 1, viscous: 5e-4 };
    expect(stribeckFriction(spent, 0)).toBe(0.15);
    expect(stribeckFriction(spent, 0.1)).toBeLessThan(stribeckFriction(spent, 0.05));
    expect(() => stribeckFriction({ ...spent, speed: 0 }, 1)).toThrow("speed");
  });
});

describe("filling", () => {
  it("takes longer with less flow and more air, and never ends without liquid", () =>
    fc.assert(
      fc.property(number(1e-6, 1e-3), number(0, 0.9), (flow, gas) => {
        const volume = fillVolume(pack);
        const time = fillTime(volume, flow, gas) ?? NaN;
        expect(time * flow * (1 - gas)).toBeCloseTo(volume, 12);
        expect(fillTime(volume, flow / 2, gas)).toBeCloseTo(2 * time, 6);
        expect(fillTime(volume, flow, 1)).toBeUndefined();
        expect(fillTime(volume, 0, gas)).toBeUndefined();
        expect(fillTime(0, 0, 1)).toBe(0);
      }),
    ));

  it("asks for as much aerated fluid as shrinks to the volume", () =>
    fc.assert(
      fc.property(number(0, 0.99), number(1e5, 2e6), (gas, filled) => {
        const supplied = aeratedFill(1e-4, gas, { supply: 1e5, filled });
        expect(supplied * (1 - gas + (gas * 1e5) / filled)).toBeCloseTo(1e-4, 12);
      }),
    ));

  it("goes with the root of the pressure and nowhere against it", () => {
    expect(orificeFlow(pack, 4e5, 830)).toBeCloseTo(2 * orificeFlow(pack, 1e5, 830), 12);
    expect(orificeFlow(pack, 0, 830)).toBe(0);
    expect(orificeFlow(pack, -1e5, 830)).toBe(0);
    expect(() => orificeFlow(pack, 1e5, 0)).toThrow("density");
    expect(() => fillTime(1e-4, 1e-4, 1.1)).toThrow("gas");
  });
});

describe("a turning drum", () => {
  it("pushes its piston with the integral of the pressure over the wetted ring", () =>
    fc.assert(
      fc.property(number(0.005, 0.1), number(0.02, 0.1), number(0, 600), (free, outer, speed) => {
        const ring = { inner: 0.02, outer: outer + 0.001, free };
        const panels = 2000;
        const h = (ring.outer - ring.inner) / panels;
        let sum = 0;
        for (let i = 0; i < panels; i++) {
          const r = ring.inner + (i + 0.5) * h;
          sum += centrifugalPressure({ ...ring, outer: r }, 830, speed) * 2 * Math.PI * r * h;
        }
        expect(Math.abs(centrifugalForce(ring, 830, speed) - sum)).toBeLessThan(1e-3 * sum + 1e-3);
      }),
      { numRuns: 30 },
    ));

  it("drags a released clutch on at the speed where that force meets the spring", () => {
    const ring = { inner: 0.04, outer: 0.07, free: 0.03 };
    const speed = dragOnSpeed(ring, 830, 800) ?? NaN;
    expect(centrifugalForce(ring, 830, speed)).toBeCloseTo(800, 9);
    expect(dragOnSpeed({ ...ring, free: 0.08 }, 830, 800)).toBeUndefined();
    expect(centrifugalForce(ring, 830, 0)).toBe(0);
  });

  it("drags less with thin fluid and not at all at rest", () => {
    expect(openPackDrag(pack, 0.02, 0)).toBe(0);
    expect(openPackDrag(pack, 0.04, 100)).toBeCloseTo(2 * openPackDrag(pack, 0.02, 100), 12);
    expect(() => openPackDrag({ ...pack, stroke: 0 }, 0.02, 1)).toThrow("stroke");
  });
});

describe("the converter clutch", () => {
  const lockup: Lockup = { ...pack, faces: 1, spring: 0, most: 6e5, back: 5e4, fedFromOverflow: true };

  it("fades with its feed, is held by its largest difference, and has none below the pressure behind it", () =>
    fc.assert(
      fc.property(number(0, 2e6), number(0, 1.5), (line, share) => {
        const dp = lockupPressure(lockup, line, share);
        expect(dp).toBeGreaterThanOrEqual(0);
        expect(dp).toBeLessThanOrEqual(6e5);
        expect(dp).toBeLessThanOrEqual(lockupPressure(lockup, line, 1));
        expect(lockupPressure({ ...lockup, fedFromOverflow: false }, line, share)).toBe(
          lockupPressure(lockup, line, 1),
        );
        if (line <= lockup.back || share === 0) expect(dp).toBe(0);
      }),
    ));

  it("holds at its own pressure what was asked", () =>
    fc.assert(
      fc.property(number(0, 400), (torque) => {
        const dp = lockupPressureFor(lockup, torque, 0.12);
        expect(lockupCapacity(lockup, dp, 0.12)).toBeCloseTo(torque, 6);
      }),
    ));
});
