import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fadeEnergy, fadeEnergyOnLine, shortFadeBound } from "../../src/physics/clutch/fade.ts";
import {
  peakSlip,
  slipOnLine,
  slipPowerLimiter,
  slipPowerLine,
  slipWindow,
  torqueToLock,
} from "../../src/physics/clutch/slip.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lines = fc.record({ torqueAtRest: number(50, 800), freeSpeed: number(100, 900) });
const falling = (line: { torqueAtRest: number; freeSpeed: number }) => (speed: number) =>
  line.torqueAtRest * (1 - speed / line.freeSpeed);

describe("slip on a falling line", () => {
  it("heats with what goes in less what comes out", () =>
    fc.assert(
      fc.property(lines, number(0, 0.95), number(0, 0.999), (line, output, share) => {
        const wL = output * line.freeSpeed;
        const Tc = share * torqueToLock(line, wL);
        const drive = line.freeSpeed * (1 - Tc / line.torqueAtRest);
        expect(slipPowerLine(line, wL, Tc)).toBeCloseTo(Tc * drive - Tc * wL, 6);
      }),
    ));

  it("heats nothing at no capacity and from lock up, and most halfway", () =>
    fc.assert(
      fc.property(lines, number(0, 0.95), number(0, 1), (line, output, share) => {
        const wL = output * line.freeSpeed;
        const TL = torqueToLock(line, wL);
        const most = peakSlip(line, wL);
        expect(slipPowerLine(line, wL, 0)).toBe(0);
        expect(slipPowerLine(line, wL, TL)).toBe(0);
        expect(slipPowerLine(line, wL, 2 * TL + 1)).toBe(0);
        expect(slipPowerLine(line, wL, most.torque)).toBeCloseTo(most.power, 6);
        expect(slipPowerLine(line, wL, share * TL)).toBeLessThanOrEqual(most.power * (1 + 1e-12));
        expect(most.power).toBeCloseTo((line.freeSpeed * TL ** 2) / (4 * line.torqueAtRest), 6);
      }),
    ));

  it("is met by the bracketed search on the same line", () =>
    fc.assert(
      fc.property(lines, number(0, 0.9), number(0.01, 1.2), (line, output, share) => {
        const wL = output * line.freeSpeed;
        const Tc = share * torqueToLock(line, wL);
        const steady = slipOnLine(falling(line), wL, Tc);
        expect(steady.power / (1 + slipPowerLine(line, wL, Tc))).toBeCloseTo(
          slipPowerLine(line, wL, Tc) / (1 + slipPowerLine(line, wL, Tc)),
          8,
        );
        expect(steady.state).toBe(Tc >= torqueToLock(line, wL) ? "locked" : "slipping");
      }),
    ));
});

describe("slip on other lines", () => {
  it("heats most just below lock with a flat line and a limiter, and drops to nothing there", () => {
    const line = { torque: 200, governedSpeed: 450 };
    const drive = (speed: number) => (speed < 450 ? 200 : 0);
    expect(slipPowerLimiter(line, 150, 0)).toBe(0);
    expect(slipPowerLimiter(line, 150, 199.999)).toBeGreaterThan(slipPowerLimiter(line, 150, 150));
    expect(slipPowerLimiter(line, 150, 200)).toBe(0);
    expect(slipOnLine(drive, 150, 100).power).toBeCloseTo(slipPowerLimiter(line, 150, 100), 6);
  });

  it("says that an engine without a falling torque runs away", () => {
    const steady = slipOnLine(() => 200, 150, 100);
    expect(steady.state).toBe("runs away");
    expect(Number.isFinite(steady.power)).toBe(true);
  });

  it("has a window that widens as friction falls", () => {
    const pack = { pistonArea: 0.01, spring: 800, faces: 10, outer: 0.075, inner: 0.06 } as Parameters<
      typeof slipWindow
    >[0];
    const good = slipWindow(pack, 300, 0.12);
    const glazed = slipWindow(pack, 300, 0.06);
    expect(glazed.kiss).toBe(good.kiss);
    expect(glazed.lock - glazed.kiss).toBeCloseTo(2 * (good.lock - good.kiss), 6);
  });
});

describe("a pressure that fades once", () => {
  const drive = { torqueAtRest: 400, freeSpeed: 600, outputSpeed: 150 };
  const grip = { kiss: 77166, perPressure: 8.397477e-4 };

  // Straight integration of I s' = TL − Tc(t) − s T0/w0, as an independent answer.
  function integrated(inertia: number, startPressure: number, duration: number): number {
    const TL = 300;
    const slope = drive.torqueAtRest / drive.freeSpeed;
    const steps = 20000;
    const h = duration / steps;
    const capacityAt = (t: number) =>
      Math.max(0, grip.perPressure * (startPressure * (1 - t / duration) - grip.kiss));
    let slip = Math.max(0, TL - capacityAt(0)) / slope;
    let energy = 0;
    for (let i = 0; i < steps; i++) {
      const rate = (t: number, s: number) => (TL - capacityAt(t) - s * slope) / inertia;
      const t = i * h;
      // Locked until the capacity falls below the drive torque.
      if (slip <= 0 && capacityAt(t + h) >= TL) continue;
      const middle = slip + (h / 2) * rate(t, slip);
      const next = Math.max(0, slip + h * rate(t + h / 2, middle));
      energy += capacityAt(t + h / 2) * ((slip + next) / 2) * h;
      slip = next;
    }
    return energy;
  }

  it.each([
    [0.05, 8e5],
    [0.5, 8e5],
    [5, 8e5],
    [60, 8e5],
    [2, 3e5],
  ])("over %f s from %f Pa heats as a step-by-step run does", (duration, startPressure) => {
    const exact = fadeEnergy({ ...drive, inertia: 0.25 }, grip, { startPressure, duration });
    expect(Math.abs(exact / integrated(0.25, startPressure, duration) - 1)).toBeLessThan(2e-3);
  });

  it("goes with the time when slow, with its square when short, and inertia only takes away", () =>
    fc.assert(
      fc.property(
        number(0.01, 3600),
        number(1e5, 2e6),
        number(0.05, 1),
        (duration, startPressure, inertia) => {
          const fade = { startPressure, duration };
          const steady = fadeEnergy({ ...drive, inertia: 0 }, grip, fade);
          const lagging = fadeEnergy({ ...drive, inertia }, grip, fade);
          expect(lagging).toBeLessThanOrEqual(steady * (1 + 1e-12));
          expect(
            fadeEnergy({ ...drive, inertia: 0 }, grip, { startPressure, duration: 2 * duration }),
          ).toBeCloseTo(2 * steady, 3);
          expect(lagging).toBeGreaterThanOrEqual(0);
          const window = (duration * 300) / (grip.perPressure * startPressure);
          if (grip.perPressure * (startPressure - grip.kiss) > 300)
            expect(lagging).toBeLessThanOrEqual(shortFadeBound(300, window, inertia) * (1 + 1e-12));
        },
      ),
    ));

  it("runs from joules to megajoules between a twentieth of a second and an hour", () => {
    const at = (duration: number) =>
      fadeEnergy({ ...drive, inertia: 0.25 }, grip, { startPressure: 8e5, duration });
    expect(at(0)).toBe(0);
    expect(at(0.05)).toBeLessThan(100);
    expect(at(3600)).toBeGreaterThan(1e7);
  });

  it("is the same by quadrature over the capacity", () => {
    const fade = { startPressure: 5e5, duration: 30 };
    const line = { torque: falling(drive), outputSpeed: 150 };
    const exact = fadeEnergy({ ...drive, inertia: 0 }, grip, fade);
    expect(fadeEnergyOnLine(line, grip, fade) / exact).toBeCloseTo(1, 9);
    const flat = { torque: (speed: number) => (speed < 450 ? 200 : 0), outputSpeed: 150 };
    // A flat line: P = Tc (wg − wL), so E = (200²/2)(300)(t/(K p0)).
    const flatExact = (200 ** 2 / 2) * 300 * (30 / (grip.perPressure * 5e5));
    expect(fadeEnergyOnLine(flat, grip, fade) / flatExact).toBeCloseTo(1, 8);
  });

  it("needs a pressure that stood and a clutch that grips", () => {
    const fade = { startPressure: 5e5, duration: 1 };
    expect(() => fadeEnergy({ ...drive, inertia: 0 }, grip, { ...fade, startPressure: 0 })).toThrow(
      "startPressure",
    );
    expect(() => fadeEnergy({ ...drive, inertia: -1 }, grip, fade)).toThrow("inertia");
    expect(() => fadeEnergy({ ...drive, inertia: 0 }, { ...grip, perPressure: 0 }, fade)).toThrow(
      "perPressure",
    );
    expect(() => shortFadeBound(1, 1, 0)).toThrow("inertia");
  });
});
