// One instant of the unit, from top to bottom. Read this first.
//
// The road asks for a wheel force; the gears and the converter turn it into engine speed and turbine torque.
// Torque asks for a line pressure; engine speed turns the pump. What stands over the pickup says how much of what
// the pump draws is gas, and the supply meets the demand of the circuits at a pressure: the set point, or less.
// The pressure squeezes the clutches; the weakest element of the gear holds what the turbine carries, or slips.
// Whatever slips, churns or throttles warms the fluid. Somewhere on the way the fluid is lost.

import type { Build, Gear, Unit } from "./build.ts";
import { driveHolding, turbineTorqueFor } from "./drivetrain.ts";
import { drawAndBalance } from "./drawing.ts";
import { density } from "./fluid/density.ts";
import { dynamicViscosity } from "./fluid/fluid.ts";
import { gravity } from "./fluid/surroundings.ts";
import { filmCoefficient } from "./heat/lubrication.ts";
import { sumpTemperature } from "./heat/sump-heat.ts";
import { appliedPressure, elementCapacity, lockUpCapacity } from "./holding.ts";
import { leakFlow } from "./leak/flow.ts";
import { openingNow } from "./leaking.ts";
import { gradeAngle, roadForce } from "./load/road.ts";
import type { Now } from "./now.ts";
import type { Road } from "./road.ts";
import type { State } from "./state.ts";
import { panVolume } from "./sump/holdup.ts";
import { depthAt, meanDepth, overLid } from "./sump/pan.ts";
import { gasFraction } from "./sump/pickup.ts";
import { depthAtRail } from "./sump/rail.ts";
import { pumpTorque } from "./supply/pump.ts";
import { setPoint } from "./supply/regulator.ts";

/** One instant of driving forward in a gear whose elements hold: every link once, in order. */
export function instant(unit: Unit, state: State, road: Road, now: Now): Now {
  fluidNow(unit, state, now);
  drivingNow(unit, state, road, now);
  return now;
}

/** The instant without what changes only slowly: fluid and opening of the leak are taken as `fluidNow` left them. */
export function drivingNow(unit: Unit, state: State, road: Road, now: Now): void {
  const { build } = unit;
  const gear = build.gears[state.gear]!;
  const slope = gradeAngle(road.grade);

  const wanted = Math.max(
    0,
    turbineTorqueFor(build, gear, roadForce(build.vehicle, road.speed, road.wish, slope)),
  );
  const pumping = pumpTorque(
    build.pump,
    setPoint(build.regulator, wanted, false, now.temperature, state.trim),
  );
  driveHolding(build, gear, road.speed, road.wish, slope, pumping, 0, now.drive);
  if (state.lockUpOn) {
    // What the lock-up can hold is judged at the speed that the engine would have if it held.
    const speed = now.drive.turbine + build.lockUp.heldSlip;
    const torque = now.drive.turbineTorque;
    supplyNow(unit, state, speed, torque, false, now);
    driveHolding(build, gear, road.speed, road.wish, slope, pumping, now.lockUpHolds, now.drive);
    if (now.drive.engine !== speed || now.drive.turbineTorque !== torque)
      supplyNow(unit, state, now.drive.engine, now.drive.turbineTorque, false, now);
  } else supplyNow(unit, state, now.drive.engine, now.drive.turbineTorque, false, now);
  clutchesNow(unit, state, gear, 0, now);
  heatNow(build, now);
}

/** What the fluid and its leak are at this instant: they change within minutes, not within a second. */
export function fluidNow(unit: Unit, state: State, now: Now): void {
  const { build, fluid } = unit;
  now.temperature = sumpTemperature(state.mass, fluid.density15, build.heat.metal, state.energy);
  now.density = density(fluid.density15, now.temperature);
  now.viscosity = dynamicViscosity(fluid, now.temperature, state.fluidAge);
  const input = now.lineInput;
  input.temperature = now.temperature;
  input.density = now.density;
  input.viscosity = now.viscosity;
  input.pathViscosity = dynamicViscosity(fluid, 0.5 * (now.temperature + state.coolant), state.fluidAge);
  leakNow(unit, state, now);
}

/** The opening of the leak at this instant; with the fluid as it is. */
export function leakNow(unit: Unit, state: State, now: Now): void {
  openingNow(unit.leak, state, now.leak);
  const input = now.lineInput;
  input.leakPlace = now.leak.onLine;
  input.leakViscous = now.leak.viscous;
  input.leakInertial = now.leak.inertial;
  input.leakViscosity = now.leak.onLine === "return-line" ? input.pathViscosity : now.viscosity;
}

/** From the pan to the line: what stands over the pickup, what the pump gets, which pressure it makes, and what the leak takes of it. */
export function supplyNow(
  unit: Unit,
  state: State,
  engineSpeed: number,
  turbineTorque: number,
  reverse: boolean,
  now: Now,
): void {
  const { build } = unit;
  const { sump } = build;
  now.setPoint = setPoint(build.regulator, turbineTorque, reverse, now.temperature, state.trim);

  now.panVolume = panVolume(
    state.mass / now.density,
    state.converter,
    state.lines,
    state.passages,
    state.inFlight,
  );
  now.panDepth = meanDepth(sump.pan, now.panVolume);
  const { x, y, height } = sump.pickup;
  now.submergence = depthAt(sump.pan, now.panVolume, state.slosh[0]!, state.slosh[2]!, x, y) - height;

  const input = now.lineInput;
  input.gas = state.gas;
  input.setPoint = now.setPoint;
  drawAndBalance(build, engineSpeed, now);

  now.gasDrawn = now.panVolume > 0 ? gasFraction(sump.pickup, now.submergence, now.line.drawn) : 1;
  now.leakFlow = now.line.leak;
  if (now.leak.atPan) {
    const { slosh } = state;
    const over = now.leak.onRail
      ? depthAtRail(sump.pan, now.panVolume, slosh[0]!, slosh[2]!, now.leak.x, now.leak.y)
      : now.panDepth + overLid(sump.pan, now.panVolume);
    const head = now.density * gravity * Math.max(0, over - now.leak.height);
    now.line.leakPressure = head; // by which a crack there gapes, not by the circuit's
    now.leakFlow = leakFlow(now.leak, head, now.viscosity, now.density);
  }
  now.lockUpHolds = state.lockUpOn ? lockUpCapacity(build, state, now) : 0;
  now.film = filmCoefficient(now.line.lube * (1 - now.line.lineGas), build.heat.lubrication);
}

/** Turbine torque that a gear's elements can hold at the line pressure; the weakest decides. `slip` is the turbine's speed over the gear's [rad/s]. */
export function clutchesNow(unit: Unit, state: State, gear: Gear, slip: number, now: Now): void {
  const { build } = unit;
  now.holds = Infinity;
  for (const { clutch, share } of gear.holds) {
    const pressure = appliedPressure(state, clutch, now.line.linePressure);
    const held = elementCapacity(build, state, clutch, slip / share, pressure) / share;
    if (held < now.holds) {
      now.holds = held;
      now.weakest = clutch;
    }
  }
}

/** What becomes heat in the fluid while the elements hold. */
export function heatNow(build: Build, now: Now): void {
  const { drive, line } = now;
  now.lockUpHeat = drive.lockTorque * drive.lockSlip;
  const throughConverter = drive.turbineTorque - drive.lockTorque;
  now.converterHeat = Math.max(0, drive.impellerTorque * drive.engine - throughConverter * drive.turbine);
  now.pumpHeat = pumpTorque(build.pump, line.linePressure) * drive.engine;
  const power = Math.abs(drive.turbineTorque * drive.turbine);
  now.gearHeat = power * (1 - build.gearEfficiency);
}
