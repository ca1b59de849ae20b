import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  closingRate,
  commandedTorque,
  commonSpeed,
  criticalTorque,
  engagementEnergy,
  engagementTime,
  type TwoInertias,
} from "../../src/physics/clutch/engagement.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pairs: fc.Arbitrary<TwoInertias> = fc.record({
  driveTorque: number(0, 500),
  loadTorque: number(0, 500),
  driveInertia: number(0.02, 1),
  loadInertia: number(0.1, 20),
  slip: number(1, 400),
});

describe("closing a clutch between two masses", () => {
  it("never closes up to the critical torque, and always does above", () =>
    fc.assert(
      fc.property(pairs, number(1e-6, 500), (pair, above) => {
        const critical = criticalTorque(pair);
        expect(engagementTime(critical * (1 - 1e-9) - 1e-9, pair)).toBeUndefined();
        expect(engagementEnergy(critical * (1 - 1e-9) - 1e-9, pair)).toBeUndefined();
        expect(engagementTime(critical + above, pair)).toBeGreaterThan(0);
      }),
    ));

  it("costs more heat the weaker it closes, without bound towards the critical torque", () =>
    fc.assert(
      fc.property(pairs, number(0.1, 100), (pair, above) => {
        const weak = engagementEnergy(criticalTorque(pair) + above, pair) ?? NaN;
        const strong = engagementEnergy(criticalTorque(pair) + 2 * above, pair) ?? NaN;
        // Without outside torque the heat is the same at any torque.
        expect(weak).toBeGreaterThanOrEqual(strong * (1 - 1e-9));
      }),
    ));

  it("takes from the masses and from outside what it turns into heat", () =>
    fc.assert(
      fc.property(pairs, number(1, 300), number(0, 300), (pair, above, loadSpeed) => {
        const torque = criticalTorque(pair) + above;
        const time = engagementTime(torque, pair) ?? NaN;
        const end = commonSpeed(torque, pair, loadSpeed) ?? NaN;
        const start = loadSpeed + pair.slip;
        const masses =
          0.5 * pair.driveInertia * (start ** 2 - end ** 2) +
          0.5 * pair.loadInertia * (loadSpeed ** 2 - end ** 2);
        // Speeds change evenly, so outside torques work at the mean speed of their side.
        const driven = (pair.driveTorque * time * (start + end)) / 2;
        const load = (pair.loadTorque * time * (loadSpeed + end)) / 2;
        const scale =
          Math.abs(driven) +
          Math.abs(load) +
          pair.driveInertia * (start ** 2 + end ** 2) +
          pair.loadInertia * end ** 2;
        expect(Math.abs(masses + driven - load - (engagementEnergy(torque, pair) ?? NaN))).toBeLessThan(
          1e-9 * scale,
        );
      }),
    ));

  it("is commanded by the inverse of its time", () =>
    fc.assert(
      fc.property(pairs, number(0.05, 5), (pair, time) => {
        expect(engagementTime(commandedTorque(time, pair), pair)).toBeCloseTo(time, 6);
      }),
    ));

  it("takes no time and no heat without slip", () => {
    const still = { driveTorque: 100, loadTorque: 100, driveInertia: 0.2, loadInertia: 2, slip: 0 };
    expect(engagementTime(0, still)).toBe(0);
    expect(engagementEnergy(0, still)).toBe(0);
    expect(closingRate(100, still)).toBe(0);
  });

  it("refuses masses and slips that no machine has", () => {
    const pair = { driveTorque: 1, loadTorque: 1, driveInertia: 0.2, loadInertia: 2, slip: 1 };
    expect(() => closingRate(1, { ...pair, driveInertia: 0 })).toThrow("driveInertia");
    expect(() => closingRate(1, { ...pair, loadInertia: NaN })).toThrow("loadInertia");
    expect(() => engagementTime(1, { ...pair, slip: -1 })).toThrow("slip");
    expect(() => commandedTorque(0, pair)).toThrow("time");
  });
});
