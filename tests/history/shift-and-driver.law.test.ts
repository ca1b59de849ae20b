// A late fill spins up what nothing holds, drained passages take their time, and a driver who lags presses on.
import { describe, expect, it } from "vitest";
import { engageFromRest, noEngagement, shiftTo } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import type { Unit } from "../../src/physics/build.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { turbineTorqueFor } from "../../src/physics/drivetrain.ts";
import { roadForce } from "../../src/physics/load/road.ts";
import { fresh } from "../../src/physics/state.ts";
import { celsius, van } from "../emerge/van.ts";

const { build } = van;

/** The van in second gear at 8 m/s with so much gas at its pump, pulling gently. */
function pulling(gas: number) {
  const state = fresh(van, celsius(80));
  Object.assign(state, { gear: 1, speed: 8, gas });
  const walk = newWalk(van, state);
  Object.assign(walk.road, { speed: 8, wish: 0.4, grade: 0 });
  fluidNow(van, state, walk.now);
  return walk;
}

describe("a shift", () => {
  it("that is late flares by the turbine torque's impulse over what it spins up", () => {
    let flared = 0;
    for (const gas of [0.6, 0.8, 0.85, 0.9, 0.92, 0.94]) {
      const walk = pulling(gas);
      const shift = noEngagement();
      shiftTo(walk, 2, shift);
      const force = roadForce(build.vehicle, 8, 0.4, 0);
      const impulse = turbineTorqueFor(build, build.gears[2]!, force) * shift.late;
      const inertia = build.engine.inertia + build.shiftControl.turbineInertia;
      const limiter = shift.flare > 200; // rad/s: the engine is at its limiter
      if (shift.late > 0 && !limiter) {
        flared++;
        expect(shift.flare / (impulse / inertia)).toBeCloseTo(1, 9);
      }
    }
    expect(flared).toBeGreaterThan(0);
  });

  it("in time does not flare", () => {
    const shift = noEngagement();
    shiftTo(pulling(build.sump.pickup.baseGas), 2, shift);
    expect(shift.late).toBe(0);
    expect(shift.flare).toBe(0);
  });

  it("from rest takes longer by the time that drained passages need", () => {
    const timeWith = (missing: number) => {
      const state = fresh(van, celsius(80));
      state.passages = build.holdUp.passages - missing;
      const walk = newWalk(van, state);
      fluidNow(van, state, walk.now);
      const engagement = noEngagement();
      engageFromRest(walk, engagement);
      return engagement.fill;
    };
    const most = 0.9 * build.holdUp.passages;
    const [full, half, drained] = [0, most / 2, most].map(timeWith);
    expect(half).toBeGreaterThan(full!);
    expect((drained! - full!) / (half! - full!)).toBeCloseTo(2, 9); // the same flow fills both
  });
});

describe("the driver of a slipping vehicle", () => {
  const pedal = (pressOn: number, lag: number) => {
    const unit: Unit = { ...van, driver: { ...van.driver, pressOn, easeOff: 1 } };
    const state = fresh(unit, celsius(80), 4e-3);
    Object.assign(state, { gear: 2, speed: 12, engine: 330, turbine: 300, gas: 0.99, slipping: true });
    const walk = newWalk(unit, state);
    walk.scheduled = 12 + lag;
    fluidNow(unit, state, walk.now);
    tick(walk, 0.02, 12 + lag, 0, 0, noEngagement(), () => true);
    return walk.pedal;
  };

  it("presses on by so much pedal for each metre per second of lag", () => {
    expect(pedal(0.05, 2) - pedal(0, 2)).toBeCloseTo(0.1, 9);
    expect(pedal(0.05, 0)).toBeCloseTo(pedal(0, 0), 9);
    expect(pedal(0.05, 200)).toBe(1);
  });
});

describe("the controller", () => {
  /** One shift of the sound van at a speed, pulling or coasting by a wish. */
  const shifted = (from: number, to: number, speed: number, wish: number, temperature = 80) => {
    const state = fresh(van, celsius(temperature));
    Object.assign(state, { gear: from, speed, gas: build.sump.pickup.baseGas, trim: 20e3 });
    const walk = newWalk(van, state);
    Object.assign(walk.road, { speed, wish, grade: 0 });
    fluidNow(van, state, walk.now);
    const shift = noEngagement();
    shiftTo(walk, to, shift);
    return { shift, state };
  };

  it("learns from upshifts that pull, and from no others", () => {
    expect(shifted(1, 2, 9, 0.5).state.trim).not.toBe(20e3);
    expect(shifted(2, 1, 6, -1.5).state.trim).toBe(20e3);
    expect(shifted(2, 1, 8, 1).state.trim).toBe(20e3);
  });

  it("asks no torque of a shift that full throttle does not give", () => {
    // A wish beyond the engine costs the shift no more than what full throttle gives.
    const [most, beyond] = [4, 40].map((wish) => shifted(1, 2, 9, wish).shift.energy);
    expect(beyond! / most!).toBeCloseTo(1, 3); // the pump is asked for its highest pressure meanwhile
  });

  it("counts a cold fill late only against a sound unit as cold", () => {
    for (const temperature of [-25, -10, 20, 90]) {
      const { shift } = shifted(1, 2, 9, 0.5, temperature);
      expect(shift.late).toBe(0);
    }
    expect(shifted(1, 2, 9, 0.5, -25).shift.fill).toBeGreaterThan(shifted(1, 2, 9, 0.5, 90).shift.fill);
  });

  it("a downshift that pulls spins up by itself: less heat than the same gap the other way", () => {
    const down = shifted(2, 1, 8, 0.8).shift;
    const coasting = shifted(2, 1, 8, -1).shift;
    expect(down.energy).toBeLessThan(coasting.energy);
    expect(down.flare).toBe(0);
  });
});
