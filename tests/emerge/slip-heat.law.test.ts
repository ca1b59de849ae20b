// Slip heat against apply pressure: nothing below kiss, nothing from lock up, most in between; where, the engine line says.
import { describe, expect, it } from "vitest";
import { capacity, kissPressure, lockPressure } from "../../src/physics/clutch/capacity.ts";
import { frictionCoefficient } from "../../src/physics/clutch/friction.ts";
import { peakSlip, slipOnLine, slipPowerLimiter, slipPowerLine } from "../../src/physics/clutch/slip.ts";
import { clutchesNow, instant } from "../../src/physics/chain.ts";
import { turbinePerMetre } from "../../src/physics/drivetrain.ts";
import { impellerTorque, turbineTorque } from "../../src/physics/load/converter.ts";
import { engineTorque, pedalFor } from "../../src/physics/load/engine.ts";
import { fresh } from "../../src/physics/state.ts";
import { spin } from "../../src/history/slip.ts";
import { newWalk } from "../../src/history/walk.ts";
import { celsius, van } from "./van.ts";

const clutch = van.build.clutches[1]!;
const mu = frictionCoefficient(clutch.friction, 1, celsius(90));
const kiss = kissPressure(clutch);
const outputSpeed = 150;
const freeSpeed = 500;
const torque = 300; // N m that lock the clutch, the same on both lines
const lock = lockPressure(clutch, torque, mu);

/** Place of the highest value over the pressures between kiss and lock, as a share of the way. */
function peakPlace(heat: (pressure: number) => number): number {
  let best = 0;
  for (let i = 0; i < 2000; i++)
    if (heat(kiss + ((lock - kiss) * i) / 2000) > heat(kiss + ((lock - kiss) * best) / 2000)) best = i;
  return best / 2000;
}

const falling = { freeSpeed, torqueAtRest: torque / (1 - outputSpeed / freeSpeed) };
const flat = { torque, governedSpeed: freeSpeed };
const onFalling = (p: number) => slipPowerLine(falling, outputSpeed, capacity(clutch, p, mu));
const onFlat = (p: number) => slipPowerLimiter(flat, outputSpeed, capacity(clutch, p, mu));

describe("on a straight line that falls to zero", () => {
  it("nothing up to kiss pressure, nothing from lock pressure up", () => {
    for (const p of [0, 0.5 * kiss, kiss, lock * (1 + 1e-12), 2 * lock])
      expect(onFalling(p)).toBeCloseTo(0, 6);
    expect(onFalling(kiss + 100)).toBeGreaterThan(0);
    expect(onFalling(lock - 100)).toBeGreaterThan(0);
  });

  it("most halfway from kiss to lock, w0 TL² / 4 T0", () => {
    expect(peakPlace(onFalling)).toBeCloseTo(0.5, 3);
    const most = (freeSpeed * torque ** 2) / (4 * falling.torqueAtRest);
    expect(onFalling((kiss + lock) / 2)).toBeCloseTo(most, 6);
    expect(peakSlip(falling, outputSpeed).power).toBeCloseTo(most, 6);
  });
});

describe("on a flat line with a limiter", () => {
  it("nothing up to kiss pressure, nothing from lock pressure up", () => {
    for (const p of [0, kiss, lock * (1 + 1e-12), 2 * lock]) expect(onFlat(p)).toBeCloseTo(0, 6);
  });

  it("most just below lock, all that the limiter leaves", () => {
    expect(peakPlace(onFlat)).toBeGreaterThan(0.999);
    expect(onFlat(lock * (1 - 1e-9))).toBeCloseTo(torque * (freeSpeed - outputSpeed), 1);
  });
});

describe("on the van's own engine and converter, one clutch pressure held while the road speed is held", () => {
  const gear = van.build.gears[2]!;
  const speed = 14;
  const locked = turbinePerMetre(van.build, gear) * speed;
  const walk = newWalk(van, fresh(van, celsius(90)));
  const { state, now, road } = walk;
  state.gear = 2;
  state.speed = speed;
  Object.assign(road, { speed, wish: 0, grade: 0.05 });
  instant(van, state, road, now);
  walk.pedal = pedalFor(van.build.engine, now.drive.engine, now.drive.engineTorque);
  const pumping = now.drive.engineTorque - now.drive.impellerTorque;
  const carried = now.drive.turbineTorque;

  /** Heat once nothing changes any more [W], the engine starting from where it held; and the torque carried then. */
  function settled(pressure: number): { heat: number; torque: number; slip: number } {
    state.engine = now.drive.engine;
    state.turbine = locked;
    now.line.linePressure = pressure;
    for (let i = 0; i < 1500; i++) {
      const slip = Math.max(0, state.turbine - locked);
      clutchesNow(van, state, gear, slip, now);
      const given = turbineTorque(van.build.converter, state.engine, state.turbine);
      spin(walk, 0.01, slip === 0 && now.holds >= given ? given : now.holds, pumping);
      if (slip === 0 && now.holds >= given) state.turbine = locked;
      state.turbine = Math.max(locked, state.turbine);
    }
    const slip = state.turbine - locked;
    clutchesNow(van, state, gear, slip, now);
    return { heat: slip * now.holds, torque: now.holds, slip };
  }

  /** Torque that engine and converter give a turbine at a speed [N m]: the engine where it meets the impeller. */
  function driveLine(turbine: number): number {
    const { engine, converter } = van.build;
    let [low, high] = [engine.idleSpeed, 2000];
    for (let i = 0; i < 60; i++) {
      const w = (low + high) / 2;
      if (engineTorque(engine, w, walk.pedal) - pumping > impellerTorque(converter, w, turbine)) low = w;
      else high = w;
    }
    return turbineTorque(converter, low, turbine);
  }

  const pressures = Array.from({ length: 31 }, (_, i) => (i / 30) * 260e3);
  const found = pressures.map(settled);
  const heats = found.map(({ heat }) => heat);
  const peak = heats.indexOf(Math.max(...heats));

  it("nothing at the lowest pressures, nothing at the highest, one peak in between", () => {
    expect(heats[0]).toBe(0);
    expect(heats.at(-1)).toBe(0);
    expect(heats[peak]).toBeGreaterThan(1000);
    const slipping = heats.findLastIndex((heat) => heat > 0);
    for (let i = 1; i <= peak; i++) expect(heats[i]!).toBeGreaterThanOrEqual(heats[i - 1]! - 1e-6);
    for (let i = peak + 1; i <= slipping; i++) expect(heats[i]!).toBeLessThan(heats[i - 1]! + 1e-6);
  });

  it("as much as the steady balance of the same lines says", () => {
    for (const { heat, torque: held, slip } of found) {
      if (slip === 0) continue;
      const steady = slipOnLine(driveLine, locked, held);
      expect(heat / Math.max(1, steady.power)).toBeGreaterThan(0.995 - (steady.power < 1 ? 1 : 0));
      expect(heat).toBeLessThan(1.005 * steady.power + 1);
    }
  });

  it("a petrol engine's line falls, so the peak lies well inside the window and not at its edge", () => {
    const share = found[peak]!.torque / carried;
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThan(0.95);
  });
});
