import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCoded } from "../../src/errors.ts";
import {
  dropRange,
  dropsPerMinute,
  dropVolume,
  flowFromDrops,
  harkinsBrown,
  largestPendantDrop,
} from "../../src/physics/leak/drop.ts";
import {
  edgeBead,
  filmRange,
  filmRetention,
  filmThickness,
  puddleDepth,
  withdrawnFilm,
} from "../../src/physics/leak/film.ts";
import { hidingStep, runsOverAfter } from "../../src/physics/leak/hiding.ts";
import {
  airWeber,
  holdOffPressure,
  jettingRange,
  jettingVelocity,
  jettingWeber,
  regime,
} from "../../src/physics/leak/regime.ts";
import { fullUptake, poreVolume, soakedVolume, soakRange } from "../../src/physics/leak/soak.ts";

const refused = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    return isCoded(error) && error.code === "impossible-input";
  }
  return false;
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("drops", () => {
  it("satisfy Tate's law with the share that falls", () => {
    fc.assert(
      fc.property(between(1e-4, 4.5e-3), between(0.02, 0.04), (r, sigma) => {
        const V = dropVolume(r, sigma, 850);
        const ideal = (2 * Math.PI * r * sigma) / (850 * 9.80665);
        expect(V / (ideal * harkinsBrown(r / Math.cbrt(V)))).toBeCloseTo(1, 6);
      }),
    );
  });

  it("grow with the tip, and no larger than can hang", () => {
    fc.assert(
      fc.property(between(1e-5, 0.1), between(1.001, 2), (r, more) => {
        expect(dropVolume(r * more, 0.03, 850)).toBeGreaterThanOrEqual(dropVolume(r, 0.03, 850));
        expect(dropVolume(r, 0.03, 850)).toBeLessThanOrEqual(largestPendantDrop(0.03, 850));
      }),
    );
    expect(harkinsBrown(0)).toBe(1);
    expect(harkinsBrown(dropRange.high)).toBe(harkinsBrown(10));
  });

  it("count both ways", () => {
    fc.assert(
      fc.property(between(0, 1e-5), between(1e-9, 1e-7), (flow, drop) => {
        expect(flowFromDrops(dropsPerMinute(flow, drop), drop)).toBeCloseTo(flow, 18);
      }),
    );
    expect(dropsPerMinute(0, 33e-9)).toBe(0);
    expect(refused(() => dropsPerMinute(1e-9, 0))).toBe(true);
    expect(refused(() => dropVolume(0, 0.03, 850))).toBe(true);
  });
});

describe("dripping to jetting", () => {
  it("tends to a Weber number of 4 in a fine dry hole, and falls as gravity helps", () => {
    expect(jettingWeber(850, 0.03, 1e-7, 1e-7)).toBeCloseTo(4, 3);
    fc.assert(
      fc.property(between(1e-5, 1e-2), between(1.01, 3), (d, more) => {
        expect(jettingWeber(850, 0.03, d * more, d * more)).toBeLessThan(jettingWeber(850, 0.03, d, d));
        const V = jettingVelocity(850, 0.03, d, d);
        expect((850 * V * V * d) / 0.03 / jettingWeber(850, 0.03, d, d)).toBeCloseTo(1, 9);
      }),
    );
    expect(jettingRange.high).toBeGreaterThan(0);
  });

  it("a dry exit holds back most when it is fine and repels the oil least", () => {
    expect(holdOffPressure(0.03, 1e-4, 0)).toBeGreaterThan(holdOffPressure(0.03, 2e-4, 0));
    expect(holdOffPressure(0.03, 1e-4, Math.PI / 2)).toBeCloseTo(0, 9);
    expect(holdOffPressure(0.03, 1e-4, 3)).toBe(0);
  });
});

describe("regime", () => {
  const look = (flow: number, diameter: number, overpressure: number) =>
    regime(flow, diameter, 2e-3, 812, 0.028, overpressure);

  it("is dry without flow", () => {
    expect(look(0, 1e-3, 2e5)).toBe("dry");
    expect(look(1e-9, 0, 2e5)).toBe("dry");
  });

  it("passes weep, drip, stream and spray in that order as a hole in a hot line grows", () => {
    const seen: string[] = [];
    for (let diameter = 1e-6; diameter < 3e-3; diameter *= 1.02) {
      const ideal = Math.sqrt((2 * 7e5) / 812);
      const flow = 0.7 * (Math.PI / 4) * diameter ** 2 * ideal * (diameter / (diameter + 5e-5));
      const now = look(flow, diameter, 7e5);
      if (seen.at(-1) !== now) seen.push(now);
    }
    expect(seen).toEqual(["weep", "drip", "stream", "spray"]);
  });

  it("a drop in ten minutes is the end of weeping", () => {
    const drop = dropVolume(2e-3, 0.028, 812);
    expect(look(0.99 * flowFromDrops(0.1, drop), 1e-4, 1e3)).toBe("weep");
    expect(look(1.01 * flowFromDrops(0.1, drop), 1e-4, 1e3)).toBe("drip");
  });

  it("a slow flow from a large hole never sprays, whatever is said of its hole", () => {
    expect(look(1e-6, 1e-6, 100)).not.toBe("spray");
    expect(airWeber(0, 1e-3, 0.03)).toBe(0);
  });
});

describe("hiding place", () => {
  const place = { capacity: 2e-4, carryOff: 1 / 5000 };
  const out = { held: 0, carriedOff: 0, overflow: 0 };
  const inflow = between(0, 1e-6);
  const held = between(0, 3e-4);
  const seconds = between(0, 1e6);
  const total = () => out.held + out.carriedOff + out.overflow;

  it("keeps the balance: what came is held, carried off or run over", () => {
    fc.assert(
      fc.property(inflow, held, seconds, fc.boolean(), (Q, V, t, moving) => {
        hidingStep(out, place, V, Q, moving, t);
        expect(Math.abs(total() - (V + Q * t))).toBeLessThanOrEqual(1e-12 * (V + Q * t) + 1e-20);
        expect(out.held).toBeLessThanOrEqual(place.capacity);
        expect(Math.min(out.held, out.carriedOff, out.overflow)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 500 },
    );
  });

  it("does not care how a span is cut", () => {
    fc.assert(
      fc.property(inflow, held, between(1, 1e5), between(0, 1), (Q, V, t, cut) => {
        hidingStep(out, place, V, Q, true, t);
        const whole = { ...out };
        hidingStep(out, place, V, Q, true, t * cut);
        const { carriedOff, overflow } = out;
        hidingStep(out, place, out.held, Q, true, t * (1 - cut));
        expect(out.held).toBeCloseTo(whole.held, 12);
        expect(out.carriedOff + carriedOff).toBeCloseTo(whole.carriedOff, 12);
        expect(out.overflow + overflow).toBeCloseTo(whole.overflow, 12);
      }),
    );
  });

  it("loses nothing while it stands, and nothing runs over before it is full", () => {
    hidingStep(out, place, 1e-4, 0, false, 1e6);
    expect(out).toEqual({ held: 1e-4, carriedOff: 0, overflow: 0 });
    hidingStep(out, place, 0, 1e-9, false, 1000);
    expect(out.overflow).toBe(0);
    expect(out.held).toBeCloseTo(1e-6, 18);
  });

  it("runs over when it says it will, and never when the wind takes more than comes", () => {
    const full = runsOverAfter(place, 0, 1e-7, true);
    expect(full).toBeDefined();
    hidingStep(out, place, 0, 1e-7, true, full ?? 0);
    expect(out.held / place.capacity).toBeCloseTo(1, 9);
    expect(out.overflow).toBeLessThan(1e-18);
    expect(runsOverAfter(place, 0, 0.9 * place.capacity * place.carryOff, true)).toBeUndefined();
    expect(runsOverAfter(place, 0, 0, false)).toBeUndefined();
    expect(runsOverAfter(place, place.capacity, 1e-7, true)).toBe(0);
  });

  it("without room passes everything on, and refuses what cannot be", () => {
    hidingStep(out, { capacity: 0, carryOff: 1 }, 0, 1e-7, true, 10);
    expect(out).toEqual({ held: 0, carriedOff: 0, overflow: 1e-6 });
    expect(refused(() => hidingStep(out, place, -1, 0, true, 1))).toBe(true);
    expect(refused(() => hidingStep(out, place, 0, NaN, true, 1))).toBe(true);
    expect(refused(() => hidingStep(out, place, 0, 0, true, -1))).toBe(true);
  });
});

describe("films, beads and pads", () => {
  it("a film is zero at its upper edge, thins with the root of time, and its mean is two thirds of its foot", () => {
    expect(filmThickness(0.07, 850, 0, 60, 1)).toBe(0);
    fc.assert(
      fc.property(between(1e-3, 1), between(1, 1e6), between(0.01, Math.PI / 2), (z, t, slope) => {
        const foot = filmThickness(0.07, 850, z, t, slope);
        expect(foot / filmThickness(0.07, 850, z, 4 * t, slope)).toBeCloseTo(2, 9);
        expect(filmRetention(0.07, 850, z, t, slope) / foot).toBeCloseTo(2 / 3, 12);
      }),
    );
    expect(filmThickness(0.07, 850, 0.5, 60, 1)).toBeLessThan(filmRange.high);
    expect(refused(() => filmRetention(0.07, 850, 0.5, 60, 0))).toBe(true);
  });

  it("no film is drawn at rest, no puddle lies where oil spreads, no bead without an edge", () => {
    expect(withdrawnFilm(0.07, 850, 0.03, 0)).toBe(0);
    expect(puddleDepth(0.03, 850, 0)).toBe(0);
    expect(edgeBead(0.03, 850, 0)).toBe(0);
  });

  it("full pores weigh what the uptake says", () => {
    fc.assert(
      fc.property(between(soakRange.low, soakRange.high), between(0, 0.01), (dry, volume) => {
        const soaked = soakedVolume(volume * dry, fullUptake(dry, 1200, 850), 850);
        expect(soaked).toBeCloseTo(poreVolume(volume, dry, 1200), 12);
      }),
    );
    expect(poreVolume(1, 1200, 1200)).toBe(0);
  });
});
