// Engine power goes to the wheels or into heat, at every instant in which the elements hold and over any time in which one slips.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { slipFor } from "../../src/history/slip.ts";
import { newWalk, type Walk } from "../../src/history/walk.ts";
import { fluidNow, instant } from "../../src/physics/chain.ts";
import { newNow } from "../../src/physics/now.ts";
import { turbinePerMetre, turbineTorqueFor } from "../../src/physics/drivetrain.ts";
import { turbineTorque } from "../../src/physics/load/converter.ts";
import { engineTorque } from "../../src/physics/load/engine.ts";
import { roadForce } from "../../src/physics/load/road.ts";
import { fresh } from "../../src/physics/state.ts";
import { between } from "../between.ts";
import { van } from "../emerge/van.ts";

const { build } = van;

describe("while the elements hold", () => {
  const drives = fc.record({
    gear: fc.integer({ min: 0, max: build.gears.length - 1 }),
    speed: between(2, 30),
    wish: between(0, 2),
    grade: between(-0.02, 0.06),
    temperature: between(283, 373),
    lockUpOn: fc.boolean(),
  });

  it("what the engine gives is at the wheels, or heat of converter, lock-up, gears and pump", () => {
    let counted = 0;
    fc.assert(
      fc.property(drives, ({ gear, speed, wish, grade, temperature, lockUpOn }) => {
        const state = { ...fresh(van, temperature), gear, lockUpOn };
        const road = { speed, wish, grade, lateral: 0, ambient: 283.15 };
        const { drive, line, ...now } = instant(van, state, road, newNow(build));
        const wanted = turbineTorqueFor(
          build,
          build.gears[gear]!,
          roadForce(build.vehicle, speed, wish, Math.atan(grade)),
        );
        // Not where brakes take a share, the engine is at its end, or the line has lost its set point.
        if (drive.turbineTorque !== wanted || line.linePressure !== now.setPoint) return;
        counted++;
        const given = drive.engineTorque * drive.engine;
        const heat = now.converterHeat + now.lockUpHeat + now.gearHeat + now.pumpHeat;
        expect((drive.wheelForce * speed + heat) / given).toBeCloseTo(1, 9);
      }),
    );
    expect(counted).toBeGreaterThan(20);
  });
});

describe("while an element slips", () => {
  /** Third gear, pedal half down, nearly all air: the pressure is too low to hold. */
  function slipping(): Walk {
    const state = fresh(van, 353.15, 4e-3);
    Object.assign(state, { gear: 2, speed: 12, engine: 330, turbine: 300, gas: 0.99, slipping: true });
    const walk = newWalk({ ...van, build: { ...build, holdUp: { ...build.holdUp, suction: 1e6 } } }, state);
    walk.pedal = 0.5;
    walk.road.wish = 9; // no brake
    fluidNow(van, state, walk.now);
    return walk;
  }

  it("what the engine gives turns and moves masses, overcomes the road, or is heat", () => {
    const walk = slipping();
    const { state, sums } = walk;
    const { vehicle, engine, shiftControl } = build;
    const kinetic = () =>
      0.5 *
      (engine.inertia * state.engine ** 2 +
        shiftControl.turbineInertia * state.turbine ** 2 +
        vehicle.mass * vehicle.rotating * state.speed ** 2);
    const power = () => engineTorque(engine, state.engine, walk.pedal) * state.engine;
    const before = kinetic();
    let [given, road] = [0, 0];
    for (let i = 0; i < 100; i++) {
      const [start, from, clock] = [power(), state.distance, state.clock];
      expect(slipFor(walk, 0.01)).toBe(true);
      given += 0.5 * (start + power()) * (state.clock - clock);
      road += roadForce(vehicle, state.speed, 0, 0) * (state.distance - from);
    }
    // Gathered on the way, not settled yet.
    const heat = sums.converter + sums.gears + sums.pump;
    const slipHeat = sums.slip.reduce((sum, each) => sum + each, 0);
    expect(slipHeat / given).toBeGreaterThan(0.2);
    expect((kinetic() - before + heat + slipHeat + road) / given).toBeCloseTo(1, 2);
  });

  it("the clutch brakes the turbine, and the vehicle gets its torque", () => {
    const walk = slipping();
    const { state, now } = walk;
    const perMetre = turbinePerMetre(build, build.gears[2]!);
    slipFor(walk, 0.01);
    const [turbine, speed] = [state.turbine, state.speed];
    const driven = turbineTorque(build.converter, state.engine, turbine);
    slipFor(walk, 1e-5);
    const spun = ((state.turbine - turbine) / 1e-5) * build.shiftControl.turbineInertia;
    expect((spun - (driven - now.holds)) / now.holds).toBeCloseTo(0, 2);
    const force = now.holds * perMetre * build.gearEfficiency - roadForce(build.vehicle, speed, 0, 0);
    const pushed = ((state.speed - speed) / 1e-5) * build.vehicle.mass * build.vehicle.rotating;
    expect(pushed / force).toBeCloseTo(1, 6);
  });
});
