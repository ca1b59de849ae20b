import fc from "fast-check";
import { expect, test } from "vitest";
import { isCoded } from "../../src/errors.ts";
import { depthAt, meanDepth, panCapacity, volumeAtDepth, type Pan } from "../../src/physics/sump/pan.ts";
import { between } from "../between.ts";

const pans = fc.record<Pan>({
  length: between(0.1, 1),
  width: between(0.1, 1),
  height: between(0.03, 0.3),
  free: between(0.3, 1),
});
// Slopes from nothing to a wall of fluid, evenly over the decades.
const slopes = fc
  .record({ exponent: between(-14, 3), up: fc.boolean() })
  .map(({ exponent, up }) => (up ? 1 : -1) * 10 ** exponent);
const share = between(0, 1);

test("the depth over the whole pan integrates to the volume", () => {
  fc.assert(
    fc.property(pans, slopes, slopes, between(0.001, 0.999), (pan, tiltX, tiltY, filled) => {
      const volume = filled * panCapacity(pan);
      // Strips as fine as a clipped plane needs: midpoint errors of the kinks shrink as 1/n².
      const n = 60;
      let sum = 0;
      for (let i = 0; i < n; i++)
        for (let j = 0; j < n; j++)
          sum += depthAt(
            pan,
            volume,
            tiltX,
            tiltY,
            ((i + 0.5) * pan.length) / n,
            ((j + 0.5) * pan.width) / n,
          );
      const mean = sum / (n * n);
      // Where the surface is steeper than the grid resolves, a cell is either full or dry: one row of cells is the error.
      expect(Math.abs(mean - volume / (pan.free * pan.length * pan.width))).toBeLessThan(
        (1.2 * pan.height) / n,
      );
    }),
    { numRuns: 60 },
  );
});

test("a box in the corner region follows the closed forms of the cut prism and the cut corner", () => {
  const pan: Pan = { length: 0.4, width: 0.3, height: 0.08, free: 1 };
  fc.assert(
    fc.property(between(0.3, 5), between(1e-9, 1), (tilt, filled) => {
      // One slope, floor partly dry and lid free: wetted length √(2V/(W t)).
      const most = Math.min(
        (pan.width * tilt * pan.length ** 2) / 2,
        (pan.width * pan.height ** 2) / (2 * tilt),
      );
      const volume = filled * most;
      const wetted = Math.sqrt((2 * volume) / (pan.width * tilt));
      expect(depthAt(pan, volume, tilt, 0, 0, 0.1)).toBeCloseTo(tilt * wetted, 12);
      expect(depthAt(pan, volume, -tilt, 0, pan.length, 0.1)).toBeCloseTo(tilt * wetted, 12);
    }),
  );
  fc.assert(
    fc.property(between(0.3, 5), between(0.3, 5), between(1e-9, 1), (tiltX, tiltY, filled) => {
      // Two slopes, fluid only in one corner: a tetrahedron of the volume c³/(6 tx ty).
      const c = Math.min(tiltX * pan.length, tiltY * pan.width, pan.height) * Math.cbrt(filled);
      const volume = c ** 3 / (6 * tiltX * tiltY);
      expect(Math.abs(depthAt(pan, volume, tiltX, tiltY, 0, 0) - c)).toBeLessThan(1e-12);
    }),
  );
});

test("two slopes agree with the eight-cube relation of box and plane", () => {
  const pan: Pan = { length: 0.4, width: 0.3, height: 0.08, free: 1 };
  const cube = (u: number) => Math.max(u, 0) ** 3;
  fc.assert(
    fc.property(between(0.05, 3), between(0.05, 3), between(0.001, 0.999), (tx, ty, filled) => {
      const volume = filled * panCapacity(pan);
      const [a, b, h] = [tx * pan.length, ty * pan.width, pan.height];
      const deepest = depthAt(pan, volume, tx, ty, 0, 0);
      // The virtual depth in the corner from a place where the surface is free; skip when neither corner shows it.
      const opposite = depthAt(pan, volume, tx, ty, pan.length, pan.width);
      const c = deepest < h ? deepest : opposite > 0 ? opposite + a + b : undefined;
      if (c === undefined) return;
      const under =
        cube(c) -
        cube(c - a) -
        cube(c - b) -
        cube(c - h) +
        cube(c - a - b) +
        cube(c - a - h) +
        cube(c - b - h) -
        cube(c - a - b - h);
      expect(Math.abs(under / (6 * tx * ty) - volume)).toBeLessThan(1e-9 * panCapacity(pan));
    }),
  );
});

test("depth and volume are each other's inverse wherever the surface is free", () => {
  fc.assert(
    fc.property(pans, slopes, slopes, between(1e-6, 1), share, share, (pan, tiltX, tiltY, filled, x, y) => {
      const volume = filled * panCapacity(pan);
      const depth = depthAt(pan, volume, tiltX, tiltY, x * pan.length, y * pan.width);
      expect(depth).toBeGreaterThanOrEqual(0);
      expect(depth).toBeLessThanOrEqual(pan.height);
      if (depth > 0 && depth < pan.height) {
        const back = volumeAtDepth(pan, depth, tiltX, tiltY, x * pan.length, y * pan.width);
        expect(Math.abs(back - volume)).toBeLessThan(1e-11 * panCapacity(pan));
      }
    }),
    { numRuns: 1000 },
  );
});

test("more fluid is nowhere shallower, and a drop more moves the surface by a drop's worth", () => {
  fc.assert(
    fc.property(pans, slopes, slopes, share, share, share, (pan, tiltX, tiltY, filled, x, y) => {
      const volume = filled * panCapacity(pan);
      const at = (v: number) => depthAt(pan, v, tiltX, tiltY, x * pan.length, y * pan.width);
      const more = at(volume + 1e-9) - at(volume);
      expect(more).toBeGreaterThanOrEqual(-1e-14);
      // In a nearly dry or nearly full corner the surface moves as the cube root of the volume.
      const corner = Math.cbrt(6 * (1e-9 / pan.free) * Math.abs(tiltX * tiltY));
      const strip = Math.sqrt(
        (2e-9 / pan.free) * (Math.abs(tiltX) / pan.width + Math.abs(tiltY) / pan.length),
      );
      expect(more).toBeLessThan(4 * (corner + strip + 1e-9 / (pan.free * pan.length * pan.width)) + 1e-12);
    }),
    { numRuns: 1000 },
  );
});

test("the surface is continuous in the slope, across zero and across every change of case", () => {
  // Not within a millionth of full: the last digit of the volume alone then moves the last bubble of air.
  fc.assert(
    fc.property(
      pans,
      slopes,
      slopes,
      between(0, 0.999999),
      share,
      share,
      (pan, tiltX, tiltY, filled, x, y) => {
        const volume = filled * panCapacity(pan);
        const at = (t: number) => depthAt(pan, volume, t, tiltY, x * pan.length, y * pan.width);
        const step = 1e-9 * Math.max(1, Math.abs(tiltX));
        expect(Math.abs(at(tiltX + step) - at(tiltX))).toBeLessThan(4 * step * pan.length);
        expect(Math.abs(at(1e-9) - at(-1e-9))).toBeLessThan(4e-9 * pan.length);
      },
    ),
    { numRuns: 1000 },
  );
});

test("level, empty, overfull and a negative balance", () => {
  fc.assert(
    fc.property(pans, share, share, share, (pan, filled, x, y) => {
      const volume = filled * panCapacity(pan);
      expect(depthAt(pan, volume, 0, 0, x * pan.length, y * pan.width)).toBe(meanDepth(pan, volume));
    }),
  );
  const pan: Pan = { length: 0.4, width: 0.3, height: 0.08, free: 0.8 };
  expect(depthAt(pan, 0, 0.3, 0.1, 0, 0)).toBe(0);
  expect(depthAt(pan, -1e-3, 0.3, 0.1, 0, 0)).toBe(0);
  expect(depthAt(pan, 1, 0.3, 0.1, 0.4, 0.3)).toBe(0.08);
  expect(depthAt(pan, panCapacity(pan), 0.3, 0.1, 0.4, 0.3)).toBe(0.08);
});

test("fluid runs to the rear when climbing, to the wall outside the turn, and mirrors exactly", () => {
  const pan: Pan = { length: 0.4, width: 0.3, height: 0.08, free: 0.8 };
  expect(depthAt(pan, 1e-3, 0.1, 0, 0.05, 0.15)).toBeGreaterThan(depthAt(pan, 1e-3, 0.1, 0, 0.35, 0.15));
  expect(depthAt(pan, 1e-3, 0, 0.1, 0.2, 0.05)).toBeGreaterThan(depthAt(pan, 1e-3, 0, 0.1, 0.2, 0.25));
  fc.assert(
    fc.property(slopes, slopes, share, share, share, (tiltX, tiltY, filled, x, y) => {
      const volume = filled * panCapacity(pan);
      const here = depthAt(pan, volume, tiltX, tiltY, x * 0.4, y * 0.3);
      const mirrored = depthAt(pan, volume, -tiltX, -tiltY, 0.4 - x * 0.4, 0.3 - y * 0.3);
      // A place rounded in the last digit under a slope of a thousand.
      expect(Math.abs(here - mirrored)).toBeLessThan(1e-12);
    }),
  );
});

test("impossible pans and volumes are refused with a code", () => {
  const pan: Pan = { length: 0.4, width: 0.3, height: 0.08, free: 0.8 };
  const refused = (make: () => number) => {
    try {
      make();
    } catch (error) {
      return isCoded(error) && error.code === "impossible-input";
    }
    return false;
  };
  expect(refused(() => depthAt(pan, NaN, 0, 0, 0, 0))).toBe(true);
  expect(refused(() => depthAt(pan, 1e-3, NaN, 0, 0, 0))).toBe(true);
  expect(refused(() => depthAt(pan, 1e-3, 0, Infinity, 0.1, 0.1))).toBe(true);
  expect(refused(() => depthAt({ ...pan, height: -1 }, 1e-3, 0, 0, 0, 0))).toBe(true);
  expect(refused(() => meanDepth({ ...pan, length: -0.4 }, 1e-3))).toBe(true);
  expect(refused(() => meanDepth({ ...pan, free: 0 }, 1e-3))).toBe(true);
  expect(refused(() => volumeAtDepth(pan, NaN, 0, 0, 0, 0))).toBe(true);
});
