// A late fill spins up what nothing holds, drained passages take their time, and a driver who lags presses on.
import { describe, expect, it } from "vitest";
import { fillsOn } from "../../src/history/entering.ts";
import { engageFromRest, noEngagement, shiftTo } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { newWalk } from "../../src/history/walk.ts";
import type { Unit } from "../../src/physics/build.ts";
import { fluidNow } from "../../src/physics/chain.ts";
import { fullTorque } from "../../src/physics/load/engine.ts";
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
  /** The walk after so many seconds beyond a shift to third. */
  const after = (gas: number, seconds: number) => {
    const walk = pulling(gas);
    const shift = noEngagement();
    shiftTo(walk, 2, shift);
    const lacking = walk.state.unfilled;
    walk.scheduled = 8;
    tick(walk, seconds, 8 + 0.4 * seconds, 0, 0, noEngagement(), () => true);
    return { walk, shift, lacking };
  };

  it("that is late fills on at its flow, and nothing is carried until it has filled", () => {
    let late = 0;
    for (const gas of [0.8, 0.85, 0.9, 0.92]) {
      const { shift, lacking, walk } = after(gas, 0.05);
      if (!(shift.late > 0.1)) continue;
      late++;
      expect(shift.over).toBe(false);
      expect(walk.state.entering).toBe(shift.clutch);
      // The rest of the fill takes as long as the shift said, or less: better fluid comes from the full pan meanwhile.
      const filled = (lacking - walk.state.unfilled) / lacking / (0.05 / shift.late);
      expect(filled).toBeGreaterThan(0.98);
      expect(filled).toBeLessThan(2);
      expect(walk.now.holds).toBe(0);
      expect(walk.slip.heat).toBe(0);
    }
    expect(late).toBeGreaterThan(1);
  });

  it("fills by its orifice's law, and only with the liquid in what comes", () => {
    const walk = pulling(0.3);
    shiftTo(walk, 2, noEngagement()); // leaves the line as the shift found it
    const { state, now } = walk;
    state.entering = 2;
    state.unfilled = 1;
    fillsOn(walk, 0.01);
    const clutch = build.clutches[2]!;
    const kiss = clutch.spring / clutch.pistonArea;
    const { linePressure, lineGas } = now.line;
    const hole = clutch.fillDischarge * (Math.PI / 4) * clutch.fillOrifice ** 2;
    const speed = Math.sqrt((2 * (linePressure - kiss)) / (now.density * (1 - lineGas)));
    expect(1 - state.unfilled).toBeCloseTo(hole * speed * (1 - lineGas) * 0.01, 9);
    expect(1 - state.unfilled).toBeGreaterThan(1e-6);
  });

  it("that is late lets the engine gain speed by what it gives over what the converter takes", () => {
    const { walk, shift } = after(0.92, 0.1);
    expect(shift.late).toBeGreaterThan(0.2);
    expect(walk.state.unfilled).toBeGreaterThan(0);
    const { state } = walk;
    expect(state.engine - walk.flareOver).toBeGreaterThan(2);
    // The kinetic energy that it has gained is less than full throttle could give in that time.
    const inertia = build.engine.inertia + build.shiftControl.turbineInertia;
    const gained = 0.5 * inertia * (state.engine ** 2 - walk.flareOver ** 2);
    expect(gained).toBeLessThan(0.1 * fullTorque(build.engine, state.engine) * state.engine);
  });

  it("in time is over at once and does not flare", () => {
    const walk = pulling(build.sump.pickup.baseGas);
    const shift = noEngagement();
    shiftTo(walk, 2, shift);
    expect(shift.late).toBe(0);
    expect(shift.over).toBe(true);
    expect(walk.state.slipping).toBe(false);
    expect(walk.flare).toBe(0);
  });

  it("that just locks in time and one that just does not cost about the same", () => {
    // The lining charred more and more: the heat of the shift rises. Where it no longer locks within the second the engine is held by the
    // converter, not rigidly: the clutch stops the turbine, and the engine comes after at the converter's slip. That third is not the clutch's.
    const heatAt = (char: number) => {
      const walk = pulling(build.sump.pickup.baseGas);
      walk.state.char.fill(char);
      const shift = noEngagement();
      shiftTo(walk, 2, shift);
      walk.scheduled = 8;
      if (!shift.over) tick(walk, 2, 8.8, 0, 0, noEngagement(), () => true);
      return { over: shift.over, heat: walk.shiftEnergy[shift.clutch]! + walk.slipEnergy[shift.clutch]! };
    };
    const heats = Array.from({ length: 13 }, (_, i) => heatAt(0.02 * i));
    expect(heats[0]!.over).toBe(true);
    expect(heats.at(-1)!.over).toBe(false);
    for (let i = 1; i < heats.length; i++) {
      const ratio = heats[i]!.heat / heats[i - 1]!.heat;
      expect(ratio, `char ${0.02 * i}`).toBeGreaterThan(heats[i]!.over === heats[i - 1]!.over ? 1 : 0.65);
      expect(ratio, `char ${0.02 * i}`).toBeLessThan(1.25);
    }
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
    expect(down.over && coasting.over).toBe(true);
    expect(down.energy).toBeLessThan(coasting.energy);
  });
});
