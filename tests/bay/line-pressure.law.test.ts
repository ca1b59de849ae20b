import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bayCard } from "../../src/bay/bay-card.ts";
import { linePressureTest } from "../../src/bay/line-pressure-test.ts";
import { inReverse } from "../../src/bay/ready.ts";
import type { Unit } from "../../src/physics/build.ts";
import { stallPoint } from "../../src/physics/load/stall.ts";
import { pumpTorque } from "../../src/physics/supply/pump.ts";
import { setPoint } from "../../src/physics/supply/regulator.ts";
import { van } from "./van.ts";

const withClutches = (share: number): Unit => ({
  ...van,
  build: {
    ...van.build,
    clutches: van.build.clutches.map((clutch) => ({ ...clutch, pistonArea: share * clutch.pistonArea })),
  },
});
const withPump = (displacement: number): Unit => ({
  ...van,
  build: { ...van.build, pump: { ...van.build.pump, displacement } },
});

describe("reverse", () => {
  test("asks for the pressures that the regulator has in reverse", () => {
    const { regulator } = inReverse(van).build;
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 700, noNaN: true }),
        fc.double({ min: 243, max: 410, noNaN: true }),
        (torque, temperature) => {
          const there = setPoint(van.build.regulator, torque, true, temperature, 0);
          expect(setPoint(regulator, torque, false, temperature, 0)).toBeCloseTo(there, 6);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe("the stall test", () => {
  test("meets engine and converter where the closed balance puts them", () => {
    const { stallSpeed, stallFinal, stallSlips } = linePressureTest(van, 0, "drive");
    const { engine, converter, pump } = van.build;
    expect(stallSlips).toBe(false);
    expect(stallSpeed / stallPoint(engine, converter, pumpTorque(pump, stallFinal)).speed).toBeCloseTo(1, 2);
  });

  test("lets the engine run up when an element slips, and the pressure then follows the torque that is left", () => {
    const sound = linePressureTest(van, 0, "drive");
    const weak = linePressureTest(withClutches(0.5), 0, "drive");
    expect(weak.stallSlips).toBe(true);
    expect(weak.stallSpeed).toBeGreaterThan(1.2 * sound.stallSpeed);
    expect(weak.idle).toBeCloseTo(sound.idle, 3);
  });

  test("is refused by the card when pressure is low at idle, and computed all the same", () => {
    const card = bayCard(withPump(0.2 * van.build.pump.displacement), 0);
    expect(card.pressureLow).toBe(true);
    expect(card.cautions[0]).toBe("Pressure low at idle: no stall test.");
    const stalls = card.rows.filter(({ condition }) => condition.startsWith("stall"));
    expect(stalls).toHaveLength(4);
    for (const { value, note } of stalls) {
      expect(value).toBeGreaterThan(0);
      expect(note).toMatch(/^pressure low at idle: no stall test/);
    }
  });
});
