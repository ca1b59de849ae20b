// What no machine can have is refused by name, and what has a limit answers with it.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bay,
  clutch,
  damage,
  driving,
  heat,
  isCoded,
  leak,
  lookback,
  fadeSweep,
  margins,
  simulate,
  sump,
  supply,
  duty,
  type Plan,
} from "../../src/index.ts";
import type { Trace } from "../../src/driving/trace.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { shipped, van } from "../emerge/van.ts";

const { build } = van;
const seep = shipped("slow-seep");
const plan = planOf(seep);
const cruise = { gear: 2, speed: 13, grade: 0, temperature: 360 };
const steel = heat.separatorSteel;
const marks = { low: 0.05, full: 0.05 };

const refused: Readonly<Record<string, () => unknown>> = {
  rim: () => sump.weirDepth(0, 0),
  "full mark": () => sump.dipstickReading(0.05, marks),
  radius: () => sump.turnAcceleration(0, 0),
  "pan width": () => sump.panCapacity({ ...build.sump.pan, width: -0.3 }),
  viscosity: () =>
    supply.clutchCircuitFlow({ orifice: 1.6e-3, discharge: 0.62, laminar: 1e-12 }, 6e5, 0, 830),
  displacement: () => supply.displaced({ ...build.pump, displacement: -1e-5 }, 100),
  "slip coefficient": () => supply.pumpSlip({ ...build.pump, slip: -1e-8 }, 6e5, 0.007),
  "inlet length": () => supply.inletPressure({ ...build.inlet, length: -1 }, 3e-4, 0.007, 830),
  "minor loss of the inlet": () => supply.inletPressure({ ...build.inlet, minorLoss: -1 }, 3e-4, 0.007, 830),
  faces: () => clutch.capacity({ ...build.clutches[0]!, faces: -8 }, 5e5, 0.12),
  fillDischarge: () => clutch.orificeFlow({ fillOrifice: 2e-3, fillDischarge: -0.6 }, 3e5, 830),
  inertial: () => leak.leakFlow({ viscous: 1e10, inertial: -1e17 }, 2e5, 0.01, 830),
  perLoadDistance: () => damage.wearPerEnergy(-1e-15, 0.12),
  speed: () => heat.peclet(steel, 1e-3, -5),
  dt: () => heat.plateAfter(400, 370, 1000, 500, 50, Infinity),
  "trace.time": () => driving.statistics({ ...rowOf(1) }),
  weights: () => lookback.effectiveSize([0, 0]),
  "weights or foretold": () => lookback.varianceAfter([1, 2], [0, 0], { foretold: [1, 2], error: 1 }),
  deviation: () => lookback.logNormal(1, 1, 0),
  p: () => lookback.normalQuantile(2),
  share: () => lookback.intervalScore(1, 2, 1.5, 1),
  logWeights: () => lookback.paretoSmoothed([]),
  draws: () => lookback.trustedShape(1),
  probability: () => lookback.likelihood(1.5),
  "plan.span": () => simulate({ ...plan, span: -1 }),
  "plan.fillShort": () => simulate({ ...plan, fillShort: 2 * build.fill }),
  "cruise.gear": () => fadeSweep(van, { ...cruise, gear: 9 }, [1]),
  times: () => fadeSweep(van, cruise, [-1]),
  "unit.build": () => margins({} as never),
  "plan.unit": () => duty.dutyHistory({} as never, {} as Plan),
  age: () => bay.atTheLeak(seep.unit, { age: NaN, temperature: 350, flow: 1e-8 }),
};

function rowOf(count: number): Trace {
  const zeros = new Float64Array(count);
  return { name: "a trace", time: zeros, speed: zeros, grade: zeros, lateral: zeros };
}

describe("what cannot be", () => {
  it.each(Object.keys(refused))("is refused by the name of its field: %s", (field) => {
    let error: unknown;
    try {
      refused[field]!();
    } catch (thrown) {
      error = thrown;
    }
    expect(isCoded(error) && error.code === "impossible-input" && error.faults[0]!.path).toBe(field);
  });
});

describe("a limit", () => {
  it("road speed and pedal are held for an hour at most", () => {
    expect(() => fadeSweep(van, cruise, [3601])).toThrow("more than 0 s, up to 3600 s");
  });

  it("the first weight of a slab that cools ever more slowly is 1", () => {
    expect(heat.slabWeight(0)).toBe(1);
    expect(heat.slabWeight(1e-8)).toBeCloseTo(1, 12);
  });

  it("near absolute zero what chars at all chars wholly to char: 0.35, the limit of the two rates", () => {
    expect(damage.charYield(20)).toBeCloseTo(0.35, 12);
    expect(damage.charYield(600)).toBeCloseTo(
      (0.35 * damage.charAndGasRate(600)) / (damage.charAndGasRate(600) + damage.tarRate(600)),
      14,
    );
  });

  // Carslaw and Jaeger (1959): a pulse of energy Q per area at the surface leaves Q/(e √(π t)); here Q = q0 ts/2.
  const pulse = (flux: number, stop: number, time: number) =>
    (flux * stop) / (2 * heat.effusivity(steel) * Math.sqrt(Math.PI * time));

  it("long after a shift its surface rise is that of its energy at once", () => {
    for (const time of [1e4, 1e6, 1e8, 1e9, 1e15])
      expect(heat.fallingFluxRise(steel, 1e6, 0.5, time) / pulse(1e6, 0.5, time)).toBeCloseTo(1, 4);
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 1e12, noNaN: true }),
        fc.double({ min: 0.05, max: 5, noNaN: true }),
        (times, stop) => {
          // The mean moment of a falling flux is a third of its time: the rise is the pulse's, times 1 + ts/(6t) at first order.
          const ratio = heat.fallingFluxRise(steel, 1e6, stop, times * stop) / pulse(1e6, stop, times * stop);
          expect(Math.abs(ratio - 1 - 1 / (6 * times))).toBeLessThan(0.2 / times ** 2 + 1e-14);
        },
      ),
    );
  });

  it("the rise has no jump where the flux ends, and falls from there on", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 50, noNaN: true }),
        fc.double({ min: 1e-9, max: 1e-6, noNaN: true }),
        (stop, hair) => {
          const [before, after] = [1 - hair, 1 + hair].map((share) =>
            heat.fallingFluxRise(steel, 1e6, stop, share * stop),
          );
          expect(Math.abs(after! / before! - 1)).toBeLessThan(10 * hair);
          expect(after!).toBeLessThan(before!);
        },
      ),
    );
  });
});
