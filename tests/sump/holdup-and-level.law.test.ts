import fc from "fast-check";
import { expect, test } from "vitest";
import {
  bubbleRise,
  cleanBubbleRise,
  residenceTime,
  smallestSeparated,
} from "../../src/physics/sump/bubbles.ts";
import { drainedAfter, inFlightAfter, panVolume, returnTime } from "../../src/physics/sump/holdup.ts";
import {
  amountThatRuns,
  amountUntilRuns,
  dipstickReading,
  overflowPlugReading,
} from "../../src/physics/sump/level.ts";
import { depthAt, panCapacity, type Pan } from "../../src/physics/sump/pan.ts";
import { depthOfTapered, type TaperedPan, volumeOfTapered } from "../../src/physics/sump/tapered-pan.ts";
import { tiltAcross, tiltAlong, tiltAngle, turnAcceleration } from "../../src/physics/sump/tilt.ts";
import { between } from "../between.ts";

const pan: Pan = { length: 0.4, width: 0.3, height: 0.08, free: 0.8 };

test("fluid in flight: two steps make one, and tends to inflow times return time", () => {
  fc.assert(
    fc.property(
      between(0, 2e-3),
      between(0, 1e-3),
      between(0.1, 60),
      between(0, 20),
      between(0, 20),
      (v, inflow, time, a, b) => {
        const once = inFlightAfter(v, inflow, time, a + b);
        const twice = inFlightAfter(inFlightAfter(v, inflow, time, a), inflow, time, b);
        expect(Math.abs(once - twice)).toBeLessThan(1e-15);
      },
    ),
  );
  expect(inFlightAfter(0, 2e-4, 5, 1e4)).toBeCloseTo(1e-3, 12);
  expect(inFlightAfter(1e-3, 0, 5, 0)).toBe(1e-3);
  expect(inFlightAfter(1e-3, 2e-4, 0, 1)).toBe(0);
  expect(() => inFlightAfter(1e-3, 2e-4, NaN, 1)).toThrow();
});

test("cold fluid returns later, at the power that is asked for", () => {
  expect(returnTime(5, 0.007, 0.007, 0.4)).toBe(5);
  expect(returnTime(5, 0.07, 0.007, 0.5)).toBeCloseTo(5 * Math.sqrt(10), 10);
  expect(() => returnTime(5, 0, 0.007, 0.5)).toThrow();
});

test("a standing converter drains to its floor and never refills", () => {
  fc.assert(
    fc.property(between(0, 4e-3), between(0, 4e-3), between(1, 1e5), between(0, 1e6), (v, floor, tau, dt) => {
      const left = drainedAfter(v, floor, tau, dt);
      expect(left).toBeLessThanOrEqual(v * (1 + 1e-15));
      expect(left).toBeGreaterThanOrEqual(Math.min(v, floor) * (1 - 1e-15));
    }),
  );
  expect(drainedAfter(3e-3, 1e-3, 0, 1)).toBe(1e-3);
  expect(() => drainedAfter(3e-3, 1e-3, NaN, 1)).toThrow();
  expect(panVolume(1e-3, 3e-3, 0, 0, 0)).toBe(0);
});

test("what is added until it runs puts the surface at the lip, whatever the tilt", () => {
  fc.assert(
    fc.property(
      between(0.001, 0.9),
      between(-0.5, 0.5),
      between(-0.5, 0.5),
      between(0.01, 0.07),
      (filled, tiltX, tiltY, lip) => {
        const volume = filled * panCapacity(pan);
        const depth = (v: number) => depthAt(pan, v, tiltX, tiltY, 0.1, 0.25);
        const short = overflowPlugReading(depth(volume), lip);
        const add = amountUntilRuns(pan, volume, tiltX, tiltY, 0.1, 0.25, lip);
        const runs = amountThatRuns(pan, volume, tiltX, tiltY, 0.1, 0.25, lip);
        if (short < 0) expect(depth(volume + add)).toBeCloseTo(lip, 10);
        else expect(add).toBeLessThan(1e-15);
        if (short > 0) expect(depth(volume - runs)).toBeCloseTo(lip, 10);
        else expect(runs).toBe(0);
      },
    ),
  );
});

test("the stick reads 0 at its low mark, 1 at its full mark", () => {
  const marks = { low: 0.03, full: 0.034 };
  expect(dipstickReading(0.03, marks)).toBe(0);
  expect(dipstickReading(0.034, marks)).toBeCloseTo(1, 12);
  expect(dipstickReading(0.026, marks)).toBeCloseTo(-1, 12);
});

test("a tapered pan: depth and volume are each other's inverse, straight walls make a box", () => {
  fc.assert(
    fc.property(
      between(0.1, 0.5),
      between(0.1, 0.5),
      between(0.1, 0.5),
      between(0.1, 0.5),
      between(0, 1),
      (a, b, c, d, share) => {
        const tapered: TaperedPan = {
          floorLength: a,
          floorWidth: b,
          rimLength: c,
          rimWidth: d,
          height: 0.08,
        };
        const depth = share * 0.08;
        expect(depthOfTapered(tapered, volumeOfTapered(tapered, depth))).toBeCloseTo(depth, 12);
      },
    ),
  );
  const box: TaperedPan = { floorLength: 0.4, floorWidth: 0.3, rimLength: 0.4, rimWidth: 0.3, height: 0.08 };
  expect(volumeOfTapered(box, 0.05)).toBeCloseTo(0.006, 15);
  expect(depthOfTapered(box, 1)).toBe(0.08);
  expect(depthOfTapered(box, -1)).toBe(0);
  expect(() => volumeOfTapered({ ...box, rimWidth: 0 }, 0.01)).toThrow();
  expect(() => depthOfTapered(box, NaN)).toThrow();
});

test("on a level road only acceleration tilts, standing only the grade, and free rolling not at all", () => {
  fc.assert(
    fc.property(between(-0.5, 0.5), (angle) => {
      expect(tiltAlong(0, angle)).toBeCloseTo(Math.tan(angle), 12);
      expect(tiltAlong(-9.80665 * Math.sin(angle), angle)).toBeCloseTo(0, 12);
      expect(tiltAlong(angle, 0)).toBeCloseTo(angle / 9.80665, 12);
      expect(tiltAngle(Math.tan(angle))).toBeCloseTo(angle, 12);
    }),
  );
  expect(tiltAcross(turnAcceleration(10, 50))).toBeCloseTo(2 / 9.80665, 12);
});

test("the smallest bubble that a pan separates rises just as fast as the level falls through it", () => {
  fc.assert(
    fc.property(between(1e-5, 1e-3), between(0.02, 0.3), between(1e-3, 1), (flow, area, viscosity) => {
      const d = smallestSeparated(flow, area, viscosity, 830);
      expect((bubbleRise(d, viscosity, 830) * area) / flow).toBeCloseTo(1, 10);
      expect(cleanBubbleRise(d, viscosity, 830) / bubbleRise(d, viscosity, 830)).toBeCloseTo(1.5, 12);
    }),
  );
  expect(residenceTime(4e-3, 0)).toBe(Number.MAX_VALUE);
  expect(residenceTime(0, 0)).toBe(0);
});
