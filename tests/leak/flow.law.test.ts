import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCoded } from "../../src/errors.ts";
import { annulusOpening, annulusOpeningInto, annulusRange } from "../../src/physics/leak/annulus.ts";
import {
  crackGap,
  crackGapRange,
  crackOpening,
  crackOpeningInto,
  shellParameter,
} from "../../src/physics/leak/crack.ts";
import {
  drainTime,
  drainTimeConstant,
  levelAfter,
  torricelliTime,
} from "../../src/physics/leak/drain-down.ts";
import { leakFlow, leakPressure, shut } from "../../src/physics/leak/flow.ts";
import {
  dischargeLimit,
  holeDiameter,
  holeOpening,
  holeOpeningInto,
  holeRange,
} from "../../src/physics/leak/hole.ts";
import { sealClearance } from "../../src/physics/leak/seal-creep.ts";

const refused = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    return isCoded(error) && error.code === "impossible-input";
  }
  return false;
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const diameter = between(1e-5, 5e-3);
const wall = between(0, 5e-3);
const pressure = between(1, 3e6);
const viscosity = between(1e-3, 5);

describe("leak flow", () => {
  it("is zero at no overpressure, and a leak does not suck", () => {
    const hole = holeOpening(1e-3, 1e-3);
    expect(leakFlow(hole, 0, 0.01, 850)).toBe(0);
    expect(leakFlow(hole, -1e5, 0.01, 850)).toBe(0);
  });

  it("more pressure never leaks less, nor a larger hole, nor thinner oil", () => {
    fc.assert(
      fc.property(diameter, wall, pressure, viscosity, between(1.0001, 3), (d, t, p, mu, more) => {
        const flow = leakFlow(holeOpening(d, t), p, mu, 850);
        expect(leakFlow(holeOpening(d, t), p * more, mu, 850)).toBeGreaterThan(flow);
        expect(leakFlow(holeOpening(d * more, t), p, mu, 850)).toBeGreaterThan(flow);
        expect(leakFlow(holeOpening(d, t), p, mu / more, 850)).toBeGreaterThan(flow);
      }),
    );
  });

  it("tends to Hagen-Poiseuille in a long hole, to Sampson in a thin wall, to the orifice in thin oil", () => {
    const [d, p] = [1e-4, 2e5];
    const long = leakFlow(holeOpening(d, 0.1), p, 1, 850);
    expect(long / ((Math.PI * d ** 4 * p) / (128 * 0.1))).toBeCloseTo(1, 2);
    const thin = leakFlow(holeOpening(d, 0), p, 100, 850);
    expect(thin / ((d ** 3 * p) / (24 * 100))).toBeCloseTo(1, 4);
    const jet = leakFlow(holeOpening(d, 0), p, 1e-9, 850);
    expect(jet / (0.61 * (Math.PI / 4) * d ** 2 * Math.sqrt((2 * p) / 850))).toBeCloseTo(1, 4);
  });

  it("and its pressure are each other's inverse", () => {
    fc.assert(
      fc.property(diameter, wall, pressure, viscosity, (d, t, p, mu) => {
        const hole = holeOpening(d, t);
        expect(leakPressure(hole, leakFlow(hole, p, mu, 850), mu, 850) / p).toBeCloseTo(1, 9);
      }),
    );
  });

  it("finds the hole behind a flow", () => {
    fc.assert(
      fc.property(diameter, wall, between(1e3, 1e6), (d, t, p) => {
        const flow = leakFlow(holeOpening(d, t), p, 0.0072, 812);
        expect(holeDiameter(flow, p, 0.0072, 812, t) / d).toBeCloseTo(1, 6);
      }),
      { numRuns: 50 },
    );
    expect(holeDiameter(0, 1e5, 0.0072, 812, 1e-3)).toBe(0);
  });

  it("refuses oil without weight or thickness, and numbers that are none", () => {
    const hole = holeOpening(1e-3, 1e-3);
    expect(refused(() => leakFlow(hole, 1e5, 0, 850))).toBe(true);
    expect(refused(() => leakFlow(hole, 1e5, 0.01, -1))).toBe(true);
    expect(refused(() => leakFlow(hole, NaN, 0.01, 850))).toBe(true);
    expect(refused(() => holeOpening(-1e-3, 1e-3))).toBe(true);
    expect(refused(() => crackOpening(1e-3, NaN, 1e-3))).toBe(true);
    expect(refused(() => annulusOpening(1e-2, 1e-5, 1e-3, 1.1))).toBe(true);
  });
});

describe("openings", () => {
  it("that are shut pass nothing, with finite numbers", () => {
    for (const opening of [
      holeOpening(0, 1e-3),
      crackOpening(0, 1e-5, 1e-3),
      crackOpening(4e-3, 0, 1e-3),
      annulusOpening(1e-2, 0, 2e-3, 0),
      holeOpening(1e-200, 1e-3),
    ]) {
      expect(opening.viscous).toBeLessThanOrEqual(shut);
      expect(Number.isFinite(opening.viscous + opening.inertial)).toBe(true);
      expect(leakFlow(opening, 1e6, 0.01, 850)).toBe(0);
    }
  });

  it("written into a kept record are the same, and overwrite what stood there", () => {
    const out = { viscous: -1, inertial: -1 };
    holeOpeningInto(out, 1e-3, 1e-3);
    expect(out).toEqual(holeOpening(1e-3, 1e-3));
    crackOpeningInto(out, 4e-3, 1e-5, 1e-3);
    expect(out).toEqual(crackOpening(4e-3, 1e-5, 1e-3));
    annulusOpeningInto(out, 1e-2, 1e-5, 2e-3, 0.5);
    expect(out).toEqual(annulusOpening(1e-2, 1e-5, 2e-3, 0.5));
    annulusOpeningInto(out, 1e-2, 0, 2e-3, 0.5);
    expect(out).toEqual({ viscous: shut, inertial: shut });
  });

  it("a slot leaks as the cube of its gap, a ring 2.5 times as much when it touches", () => {
    const slot = (gap: number) => crackOpening(4e-3, gap, 1e-3).viscous;
    expect(slot(1e-5) / slot(2e-5)).toBeCloseTo(8, 9);
    const { high } = annulusRange;
    const ring = (offset: number) => annulusOpening(1e-2, high * 1e-2, 2e-3, offset).viscous;
    expect(ring(0) / ring(1)).toBeCloseTo(2.5, 9);
  });

  it("a ring is a slot bent round", () => {
    const ring = annulusOpening(1e-2, 1e-5, 2e-3, 0);
    const slot = crackOpening(Math.PI * 1e-2, 1e-5, 2e-3);
    expect(ring.viscous / slot.viscous).toBeCloseTo(1, 12);
    expect(ring.inertial / slot.inertial).toBeCloseTo(1, 12);
  });

  it("discharge without a jump, between one half and one", () => {
    for (const knee of [0.5, 2, holeRange.high])
      expect(dischargeLimit(knee - 1e-9)).toBeCloseTo(dischargeLimit(knee + 1e-9), 6);
    fc.assert(
      fc.property(between(0, 1e6), (ratio) => {
        expect(dischargeLimit(ratio)).toBeGreaterThanOrEqual(0.61);
        expect(dischargeLimit(ratio)).toBeLessThanOrEqual(0.81);
      }),
    );
    expect(dischargeLimit(Infinity)).toBe(dischargeLimit(10));
  });
});

describe("a crack", () => {
  it("shuts under compression and without length, gapes with stress in proportion", () => {
    const gap = (stress: number, half: number) => crackGap(stress, half, 69e9, 4.3e-3, 0.9e-3, 0.33);
    expect(gap(0, 2e-3)).toBe(0);
    expect(gap(-5e6, 2e-3)).toBe(0);
    expect(gap(30e6, 0)).toBe(0);
    expect(gap(60e6, 2e-3) / gap(30e6, 2e-3)).toBeCloseTo(2, 12);
  });

  it("passes place by place through the ellipse to which it gapes: what thin strips beside one another pass in all", () => {
    const [length, wall, n] = [6e-3, 0.9e-3, 20_000];
    for (const [gap, gape] of [
      [0, 4e-6],
      [2e-6, 4e-6],
      [5e-6, 1e-6],
      [3e-6, 0],
    ] as const) {
      let [conductance, area] = [0, 0];
      for (let k = 0; k < n; k++) {
        const x = (2 * k + 1) / n - 1;
        const here = gap + (4 / Math.PI) * gape * Math.sqrt(1 - x * x);
        conductance += 1 / crackOpening(length / n, here, wall).viscous;
        area += (length / n) * here;
      }
      const whole = crackOpening(length, gap, wall, gape);
      expect(whole.viscous * conductance).toBeCloseTo(1, 4);
      const C = dischargeLimit(wall / (2 * (gap + gape)));
      expect(whole.inertial * 2 * (C * area) ** 2).toBeCloseTo(1, 4);
    }
    // Without any even gap 12/π² of the flow through the mean gap: more by 22 %.
    expect(
      crackOpening(length, 4e-6, wall).viscous / crackOpening(length, 0, wall, 4e-6).viscous,
    ).toBeCloseTo(12 / Math.PI ** 2, 12);
    expect(refused(() => crackOpening(length, 0, wall, -1e-6))).toBe(true);
  });

  it("in a wide flat tube is the ellipse of a plate", () => {
    const half = 1e-6;
    const gap = crackGap(30e6, half, 69e9, 1, 1e-3, 0.33);
    expect(gap / ((Math.PI * 30e6 * half) / 69e9)).toBeCloseTo(1, 4);
    expect(shellParameter(half, 1, 1e-3, 0.33)).toBeLessThan(crackGapRange.high);
  });
});

describe("a seal", () => {
  it("starts at its first clearance, ends at its settled one, and goes no further", () => {
    expect(sealClearance(2e-6, 15e-6, 3600, 0)).toBe(2e-6);
    expect(sealClearance(2e-6, 15e-6, 3600, 1e12)).toBe(15e-6);
    fc.assert(
      fc.property(between(0, 1e6), between(1, 1e6), (t, more) => {
        const now = sealClearance(2e-6, 15e-6, 3600, t);
        expect(sealClearance(2e-6, 15e-6, 3600, t + more)).toBeGreaterThanOrEqual(now);
        expect(now).toBeLessThanOrEqual(15e-6 * (1 + 1e-12));
      }),
    );
    expect(refused(() => sealClearance(0, 1e-5, 0, 1))).toBe(true);
  });
});

describe("draining down", () => {
  const hole = holeOpening(0.5e-3, 1e-3);

  it("takes no time to stay, and stages add up", () => {
    expect(drainTime(hole, 0.06, 0.05, 0.05, 0.01, 850)).toBe(0);
    fc.assert(
      fc.property(between(0.031, 0.079), (middle) => {
        const whole = drainTime(hole, 0.06, 0.08, 0.03, 0.01, 850);
        const parts =
          drainTime(hole, 0.06, 0.08, middle, 0.01, 850) + drainTime(hole, 0.06, middle, 0.03, 0.01, 850);
        expect(parts / whole).toBeCloseTo(1, 9);
      }),
    );
  });

  it("is the sum of small steps of the leak law", () => {
    let [level, seconds] = [0.08, 0];
    const rate = (h: number) => leakFlow(hole, 850 * 9.80665 * h, 0.01, 850) / 0.06;
    const steps = 2000;
    for (let i = 0; i < steps; i += 1) {
      const drop = 0.05 / steps;
      seconds += drop / rate(level - drop / 2);
      level -= drop;
    }
    expect(drainTime(hole, 0.06, 0.08, 0.03, 0.01, 850) / seconds).toBeCloseTo(1, 6);
  });

  it("tends to Torricelli in thin oil and to an exponential in thick", () => {
    const area = (Math.PI / 4) * 0.5e-3 ** 2;
    const thin = drainTime(hole, 0.06, 0.08, 0.03, 1e-9, 850);
    expect(thin / torricelliTime(0.06, area, dischargeLimit(2), 0.08, 0.03)).toBeCloseTo(1, 4);
    const thick = drainTime(hole, 0.06, 0.08, 0.03, 10, 850);
    expect(thick / (drainTimeConstant(hole, 0.06, 10, 850) * Math.log(8 / 3))).toBeCloseTo(1, 4);
  });

  it("read the other way gives the level back", () => {
    const time = drainTime(hole, 0.06, 0.08, 0.03, 0.01, 850);
    expect(levelAfter(hole, 0.06, 0.08, time, 0.01, 850)).toBeCloseTo(0.03, 9);
    expect(levelAfter(hole, 0.06, 0.08, 0, 0.01, 850)).toBeCloseTo(0.08, 12);
    expect(levelAfter(hole, 0.06, 0, 100, 0.01, 850)).toBe(0);
  });

  it("keeps its level for ever behind a shut opening, and behind one so fine that its losses pass what a number holds", () => {
    for (const viscous of [shut, 1e160]) {
      const none = { viscous, inertial: shut };
      expect(levelAfter(none, 0.06, 0.08, 1e9, 0.01, 850)).toBe(0.08);
      expect(drainTime(none, 0.06, 0.08, 0.03, 0.01, 850)).toBe(Infinity);
      expect(drainTime(none, 0.06, 0.08, 0.08, 0.01, 850)).toBe(0);
    }
  });

  it("refuses to drain to nothing, or upward", () => {
    expect(refused(() => drainTime(hole, 0.06, 0.08, 0, 0.01, 850))).toBe(true);
    expect(refused(() => drainTime(hole, 0.06, 0.03, 0.08, 0.01, 850))).toBe(true);
  });
});
