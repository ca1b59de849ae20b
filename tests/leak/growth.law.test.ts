import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCoded } from "../../src/errors.ts";
import {
  aluminium6061,
  cyclesBetween6061,
  fatigueCycles,
  fatigueLine,
  fatigueRange,
  fatigueStrength,
  meanStrength6061,
} from "../../src/physics/leak/fatigue-life.ts";
import {
  criticalCrack,
  parisBetween,
  parisCrack,
  parisCycles,
  type ParisLaw,
  parisRange,
  stressIntensity,
} from "../../src/physics/leak/paris.ts";
import { holeOpening } from "../../src/physics/leak/hole.ts";
import {
  corrosionDepth,
  corrosionTime,
  pierceTime,
  piercedMouth,
  pitMouth,
  pitRange,
} from "../../src/physics/leak/pits.ts";
import { runningTime, shareInLast } from "../../src/physics/leak/power-growth.ts";
import {
  rubThroughTime,
  slidDistance,
  wearRange,
  wornVolume,
  flatArea,
  flatDepth,
  rubbedMouth,
  rubbedOpeningInto,
  timeToThrough,
} from "../../src/physics/leak/rub-through.ts";
import { between, decades } from "../between.ts";
import { boreStress, hoopStress, secondMoment } from "../../src/physics/leak/tube.ts";

const refused = (work: () => unknown) => {
  try {
    work();
  } catch (error) {
    return isCoded(error) && error.code === "impossible-input";
  }
  return false;
};
const law: ParisLaw = {
  perCycle: 4.46e-10,
  exponent: 3,
  stressRange: 30e6,
  geometry: 1.12,
  threshold: 0.66e6,
  longest: 15e-3,
};
const exponent = fc.oneof(between(1.5, 5), fc.constantFrom(2, 2 + 1e-12, 2 - 1e-7, 2 + 1e-5));

describe("Paris growth", () => {
  it("and its cycles are each other's inverse, through the slope of 2 as well", () => {
    fc.assert(
      fc.property(between(0.2e-3, 2e-3), between(1.001, 5), exponent, (start, more, m) => {
        const steep = { ...law, exponent: m };
        const N = parisCycles(start, start * more, steep);
        expect(N).toBeDefined();
        expect(parisCrack(start, N ?? 0, steep) / (start * more)).toBeCloseTo(1, 6);
      }),
    );
  });

  it("is the sum of its cycles, taken one by one", () => {
    let length = 1e-3;
    const coarse = { ...law, perCycle: 1e-8 };
    for (let n = 0; n < 10_000; n += 1)
      length += coarse.perCycle * (stressIntensity(1.12, 30e6, length) / 1e6) ** coarse.exponent;
    expect(parisCrack(1e-3, 10_000, coarse) / length).toBeCloseTo(1, 3);
  });

  it("never shrinks, and ends at the length at which the line parts", () => {
    fc.assert(
      fc.property(between(0.1e-3, 10e-3), between(0, 1e9), exponent, (start, N, m) => {
        const end = parisCrack(start, N, { ...law, exponent: m });
        expect(end).toBeGreaterThanOrEqual(start * (1 - 1e-12));
        expect(end).toBeLessThanOrEqual(law.longest);
      }),
    );
    expect(parisCrack(1e-3, 0, law)).toBeCloseTo(1e-3, 15);
    expect(parisCrack(20e-3, 1, law)).toBe(law.longest);
    expect(parisCrack(1e-3, 1e300, law)).toBe(law.longest);
  });

  it("does not begin below its threshold", () => {
    const gentle = { ...law, stressRange: 20e6 };
    expect(parisCrack(0.2e-3, 1e9, gentle)).toBe(0.2e-3);
    expect(parisCycles(0.2e-3, 1e-3, gentle)).toBeUndefined();
    expect(parisCycles(1e-3, 1e-3, gentle)).toBe(0);
    const begins = criticalCrack(law.threshold, gentle.stressRange, law.geometry);
    expect(parisCrack(begins * 1.001, 1e6, gentle)).toBeGreaterThan(begins * 1.001);
  });

  it("by share of life is the same curve, from start to end", () => {
    fc.assert(
      fc.property(between(0, 1), exponent, (share, m) => {
        const steep = { ...law, exponent: m };
        const N = parisCycles(0.5e-3, 5e-3, steep) ?? 0;
        const length = parisBetween(0.5e-3, 5e-3, m, share);
        expect(length / parisCrack(0.5e-3, share * N, steep)).toBeCloseTo(1, 6);
      }),
    );
    expect(parisBetween(0.5e-3, 5e-3, 3, 0)).toBeCloseTo(0.5e-3, 15);
    expect(parisBetween(0.5e-3, 5e-3, 3, 2)).toBe(5e-3);
  });

  it("knows its critical length and its range", () => {
    const length = criticalCrack(25e6, 100e6, 1.12);
    expect(stressIntensity(1.12, 100e6, length)).toBeCloseTo(25e6, 3);
    expect(parisRange.low).toBeLessThan(parisRange.high);
    expect(refused(() => parisCrack(-1e-3, 1, law))).toBe(true);
    expect(refused(() => parisCrack(1e-3, 1, { ...law, exponent: NaN }))).toBe(true);
    expect(refused(() => parisCycles(2e-3, 1e-3, law))).toBe(true);
  });
});

describe("lives before there is a crack", () => {
  it("a line passes through its two points, and stress and cycles are each other's inverse", () => {
    const line = fatigueLine(1e3, 100e6, 5e8, 50e6);
    expect(fatigueStrength(line, 1e3)).toBeCloseTo(100e6, 0);
    expect(fatigueStrength(line, 5e8)).toBeCloseTo(50e6, 0);
    fc.assert(
      fc.property(between(fatigueRange.low, fatigueRange.high), (N) => {
        expect(fatigueCycles(aluminium6061, fatigueStrength(aluminium6061, N)) / N).toBeCloseTo(1, 8);
      }),
    );
  });

  it("agree on 6061-T6 within a factor of ten in life", () => {
    for (const N of [1e4, 1e6, 1e8]) {
      const handbook = cyclesBetween6061(fatigueStrength(aluminium6061, N), -1);
      expect(Math.abs(Math.log10(handbook / N))).toBeLessThan(1);
      expect(meanStrength6061(N)).toBeGreaterThan(0.6 * fatigueStrength(aluminium6061, N));
    }
    expect(Number.isFinite(fatigueCycles(aluminium6061, 1e-300))).toBe(true);
  });
});

describe("pits, rubbing and the tube", () => {
  it("depth and time of corrosion are each other's inverse", () => {
    fc.assert(
      fc.property(between(1, pitRange.high), between(0.1, 1), (t, n) => {
        const depth = corrosionDepth(1e-4, 3e7, t, n);
        expect(corrosionTime(1e-4, 3e7, depth, n) / t).toBeCloseTo(1, 8);
      }),
    );
    expect(corrosionDepth(1e-4, 3e7, 0, 0.5)).toBe(0);
  });

  it("wear is in proportion, and never without motion", () => {
    expect(wornVolume(wearRange.high, 5, 0, 4e8)).toBe(0);
    expect(slidDistance(5e-5, 30, 1)).toBeCloseTo(6e-3, 12);
    expect(rubThroughTime(1e-9, 0)).toBeUndefined();
    expect(rubThroughTime(1e-9, 1e-12)).toBeCloseTo(1000, 9);
  });

  it("a thin tube and Lamé agree, a thick one is stressed most at its bore", () => {
    const thin = { diameter: 0.1, wall: 1e-4 };
    expect(boreStress(thin, 1e6) / hoopStress(thin, 1e6)).toBeCloseTo(1, 3);
    fc.assert(
      fc.property(between(1e-4, 4.9e-3), (wall) => {
        const tube = { diameter: 10e-3, wall };
        expect(boreStress(tube, 1e6)).toBeGreaterThan(hoopStress(tube, 1e6));
        expect(secondMoment(tube)).toBeLessThanOrEqual((Math.PI / 64) * 1e-8);
      }),
    );
    expect(refused(() => hoopStress({ diameter: 1e-2, wall: 6e-3 }, 1e6))).toBe(true);
  });
});

describe("a hole that has come through", () => {
  const tube = { radius: 5e-3, wall: 0.9e-3 };
  const mouth = (rate: number, seconds: number, contact = 20e-3) =>
    rubbedMouth(tube.radius, tube.wall, contact, rate, seconds);

  it("as a pit has the known width at the known time, none at first, the bore at last, and never heals", () => {
    expect(pitMouth(0.3e-3, 1e7, 1e7, 1 / 3, 8e-3)).toBeCloseTo(0.3e-3, 15);
    expect(pitMouth(0.3e-3, 1e7, 0, 1 / 3, 8e-3)).toBe(0);
    expect(pitMouth(0.3e-3, 1e7, 1e15, 1 / 3, 8e-3)).toBe(8e-3);
    fc.assert(
      fc.property(between(0, 1e9), between(0, 1e9), between(0.1, 1), (t, more, n) => {
        expect(pitMouth(1e-4, 1e6, t + more, n, 8e-3)).toBeGreaterThanOrEqual(
          pitMouth(1e-4, 1e6, t, n, 8e-3),
        );
      }),
    );
  });

  const pitted = fc.record({
    wall: decades(-4, -2.5),
    aspect: decades(-1, 1),
    through: decades(4, 9),
    exponent: between(0.1, 1),
  });

  it("as a round pit is as wide as the wall's far face cuts it, when the pit is as deep as its law says", () => {
    fc.assert(
      fc.property(pitted, decades(2, 9), ({ wall, aspect, through, exponent }, seconds) => {
        const depth = corrosionDepth(wall, through, through + seconds, exponent);
        const width = piercedMouth(wall, aspect, through, seconds, exponent, 1e3);
        // The point on the mouth's rim lies on the ellipsoid: (r/A)² + W² = p².
        expect((width / (2 * aspect)) ** 2 / depth ** 2 + (wall / depth) ** 2).toBeCloseTo(1, 9);
      }),
    );
  });

  it("as a round pit came through when its width so long after says", () => {
    fc.assert(
      fc.property(pitted, decades(2, 9), ({ wall, aspect, through, exponent }, seconds) => {
        const width = piercedMouth(wall, aspect, through, seconds, exponent, 1e3);
        if (width === 1e3) return;
        expect(pierceTime(width, seconds, wall, aspect, exponent) / through).toBeCloseTo(1, 6);
      }),
    );
    expect(pierceTime(0, 1, 1e-3, 1, 0.5)).toBe(Infinity);
    expect(piercedMouth(1e-3, 1, Infinity, 1e9, 0.5, 8e-3)).toBe(0);
  });

  it("as a round pit starts shut, opens as the root of time at first and as the depth at last, never heals, ends at the bore", () => {
    const mouthAt = (seconds: number, n: number, bore = 1e9) =>
      piercedMouth(0.7e-3, 1, 1e7, seconds, n, bore);
    for (const n of [1 / 3, 0.523, 1]) {
      expect(mouthAt(0, n)).toBe(0);
      expect(mouthAt(400, n) / mouthAt(100, n)).toBeCloseTo(2, 3);
      expect(mouthAt(8e17, n) / mouthAt(1e17, n)).toBeCloseTo(8 ** n, 3);
      expect(mouthAt(1e15, n, 8e-3)).toBe(8e-3);
    }
    fc.assert(
      fc.property(
        pitted,
        between(0, 1e9),
        between(0, 1e9),
        ({ wall, aspect, through, exponent }, t, more) => {
          const at = (seconds: number) => piercedMouth(wall, aspect, through, seconds, exponent, 8e-3);
          expect(at(t + more)).toBeGreaterThanOrEqual(at(t));
        },
      ),
    );
  });

  it("as a round pit is a number for any size, and refuses what no pit has", () => {
    const any = decades(-300, 300);
    fc.assert(
      fc.property(any, any, any, any, between(1e-3, 2), (width, time, wall, aspect, n) => {
        const through = pierceTime(width, time, wall, aspect, n);
        expect(through).toBeGreaterThan(0);
        for (const seconds of [0, time, 1e9]) {
          const now = piercedMouth(wall, aspect, through, seconds, n, 8e-3);
          expect(now >= 0 && now <= 8e-3).toBe(true);
        }
      }),
    );
    for (const bad of [0, -1, NaN, Infinity]) {
      expect(refused(() => piercedMouth(bad, 1, 1, 1, 0.5, 1))).toBe(true);
      expect(refused(() => piercedMouth(1, bad, 1, 1, 0.5, 1))).toBe(true);
      expect(refused(() => pierceTime(1, bad, 1, 1, 0.5))).toBe(true);
      expect(refused(() => piercedMouth(1, 1, 1, 1, bad, 1))).toBe(true);
    }
    for (const bad of [-1, NaN, Infinity]) {
      expect(refused(() => pierceTime(bad, 1, 1, 1, 0.5))).toBe(true);
      expect(refused(() => piercedMouth(1, 1, 1, bad, 0.5, 1))).toBe(true);
      expect(refused(() => piercedMouth(1, 1, 1, 1, 0.5, bad))).toBe(true);
    }
    expect(refused(() => piercedMouth(1, 1, 0, 1, 0.5, 1))).toBe(true);
  });

  it("as a flat has the cross-section of a circular segment, nothing at no depth and half the tube at its radius", () => {
    expect(flatArea(5e-3, 0)).toBe(0);
    expect(flatArea(5e-3, 5e-3) / (Math.PI * 12.5e-6)).toBeCloseTo(1, 12);
    // A shallow flat is a parabola's segment: two thirds of depth times chord.
    expect(flatArea(5e-3, 1e-7) / ((2 / 3) * 1e-7 * 2 * Math.sqrt(2 * 5e-3 * 1e-7))).toBeCloseTo(1, 4);
    fc.assert(
      fc.property(between(1e-6, 5e-3), (depth) => {
        expect(flatDepth(5e-3, flatArea(5e-3, depth)) / depth).toBeCloseTo(1, 8);
      }),
    );
    expect(flatDepth(5e-3, 1)).toBe(5e-3);
  });

  it("by rubbing loses an equal volume each hour: the time to through is Archard's for that volume", () => {
    const rate = 0.2e-3;
    const time = timeToThrough(tube.radius, tube.wall, 0, rate);
    const worn = flatArea(tube.radius, tube.wall) * 20e-3;
    expect(time / rubThroughTime(worn, (flatArea(tube.radius, rate) * 20e-3) / 3.6e5)!).toBeCloseTo(1, 12);
    // A flat widens as it deepens: depth goes as the 2/3 power of time while it is shallow.
    expect(time / 3.6e5 / (tube.wall / rate) ** 1.5).toBeCloseTo(1, 1);
    const half = timeToThrough(tube.radius, tube.wall, 0.45e-3, rate);
    expect(half).toBeGreaterThan(time / 2);
    expect(timeToThrough(tube.radius, tube.wall, tube.wall, rate)).toBe(0);
  });

  it("by rubbing starts shut, opens as deep as the wear since reaches into the bore, never heals, and ends at the bore", () => {
    expect(mouth(0.2e-3, 0)).toBeCloseTo(0, 5);
    const seconds = timeToThrough(tube.radius, tube.wall + 0.5e-3, tube.wall, 0.2e-3);
    const chord = 2 * Math.sqrt(4.1e-3 ** 2 - 3.6e-3 ** 2);
    expect(mouth(0.2e-3, seconds, 1e-3)).toBeCloseTo(Math.sqrt((4 / Math.PI) * 1e-3 * chord), 9);
    expect(mouth(0.2e-3, 1e12)).toBeCloseTo(2 * 4.1e-3, 12);
    fc.assert(
      fc.property(between(0, 1e8), between(0, 1e8), between(1e-6, 5e-3), (t, more, rate) => {
        expect(mouth(rate, t + more)).toBeGreaterThanOrEqual(mouth(rate, t));
      }),
    );
    expect(refused(() => rubbedMouth(5e-3, 5e-3, 0.02, 1e-4, 0))).toBe(true);
  });
});

describe("the slot of a flat that has come through", () => {
  const [radius, wall, rate] = [5e-3, 0.9e-3, 0.2e-3];
  const bore = 2 * (radius - wall);
  const slot = (contact: number, seconds: number) => {
    const out = { viscous: 0, inertial: 0 };
    rubbedOpeningInto(out, radius, wall, contact, rate, seconds);
    return out;
  };
  /** Seconds after which the chord is so wide. */
  const wide = (chord: number) =>
    timeToThrough(radius, radius - Math.sqrt((bore / 2) ** 2 - (chord / 2) ** 2), wall, rate);

  it("is at first a long slit without a wall: 32/(π w h²), whatever the wall was", () => {
    const [contact, chord] = [20e-3, 0.1e-3];
    const law = 32 / (Math.PI * contact * chord * chord);
    expect(slot(contact, wide(chord)).viscous / law).toBeCloseTo(1.04, 2);
    expect(slot(contact, wide(chord)).inertial * 2 * (0.61 * contact * chord) ** 2).toBeCloseTo(1, 6);
  });

  it("is a round hole of its area, of no wall, once as wide as long", () => {
    const side = 2e-3;
    const round = holeOpening(Math.sqrt((4 / Math.PI) * side * side), 0);
    const { viscous, inertial } = slot(side, wide(side));
    expect(viscous / round.viscous).toBeCloseTo(1, 6);
    expect(inertial / round.inertial).toBeCloseTo(1, 6);
  });

  it("opens without a jump, never heals, and ends as the open bore", () => {
    for (const contact of [1e-3, 5e-3, 30e-3]) {
      let before = slot(contact, 0);
      expect(before.viscous).toBeGreaterThan(1e12);
      for (let log = 1; log < 8; log += 1e-3) {
        const now = slot(contact, 10 ** log);
        expect(now.viscous).toBeLessThanOrEqual(before.viscous);
        expect(now.inertial).toBeLessThanOrEqual(before.inertial);
        if (log > 1) expect(now.viscous / before.viscous).toBeGreaterThan(0.98);
        if (log > 1) expect(now.inertial / before.inertial).toBeGreaterThan(0.98);
        before = now;
      }
      if (contact > 7e-3) expect(before).toEqual(holeOpening(bore, wall));
    }
    expect(refused(() => slot(0, 1))).toBe(true);
  });
});

describe("looking back along a power law", () => {
  it("a steady leak has run as long as its loss over its flow, and loses evenly", () => {
    expect(runningTime(2e-3, 1e-7, 0)).toBeCloseTo(2e4, 9);
    expect(shareInLast(0.1, 0)).toBeCloseTo(0.1, 12);
    expect(shareInLast(1, 3)).toBe(1);
  });

  it("passes one half in its last tenth only from the power 5.58 up", () => {
    expect(shareInLast(0.1, 5.57)).toBeLessThan(0.5);
    expect(shareInLast(0.1, 5.59)).toBeGreaterThan(0.5);
  });
});
