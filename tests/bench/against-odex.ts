// The same right-hand sides by an extrapolation solver of good name, at the accuracy that the walk reaches, over the same spans.
import { Solver, type Derivative } from "odex";
import { slipFor } from "../../src/history/slip.ts";
import { tick } from "../../src/history/tick.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { newWalk, type Walk } from "../../src/history/walk.ts";
import { clutchesNow, fluidNow, instant, supplyNow } from "../../src/physics/chain.ts";
import { turbinePerMetre, wheelForceFrom } from "../../src/physics/drivetrain.ts";
import { specificHeat } from "../../src/physics/fluid/specific-heat.ts";
import { coolerTakes } from "../../src/physics/heat/cooler.ts";
import { impellerTorque, turbineTorque } from "../../src/physics/load/converter.ts";
import { engineTorque } from "../../src/physics/load/engine.ts";
import { roadForce } from "../../src/physics/load/road.ts";
import { copyOf, fresh } from "../../src/physics/state.ts";
import { pumpTorque } from "../../src/physics/supply/pump.ts";
import { timeOf } from "./clock.ts";
import { soundUnit } from "./van.ts";
import type { Unit } from "../../src/physics/build.ts";

/** Processor time [µs] of a second by the walk and by the solver, and the accuracy at which both were taken. */
export interface Contest {
  readonly walk: number;
  readonly odex: number;
  readonly tolerance: number;
}

function solverOf(size: number, tolerance: number): Solver {
  const solver = new Solver(size);
  solver.relativeTolerance = tolerance;
  solver.absoluteTolerance = tolerance;
  solver.maxSteps = 1_000_000;
  return solver;
}

const furthest = (got: readonly number[], truth: readonly number[]) =>
  Math.max(...truth.map((value, i) => Math.abs(got[i]! - value) / Math.abs(value)));

/** The van with the slow parts that are not integrated here held still, so that both solve the same equations. */
function held(change: { steel: number; metal: number; suction: number }): Unit {
  const { build } = soundUnit;
  const heavy = <C extends { readonly steelMass: number }>(clutch: C): C => ({
    ...clutch,
    steelMass: change.steel * clutch.steelMass,
  });
  return {
    ...soundUnit,
    build: {
      ...build,
      clutches: build.clutches.map(heavy),
      lockUp: { ...build.lockUp, clutch: heavy(build.lockUp.clutch), fluidAbove: Infinity },
      heat: { ...build.heat, metal: change.metal * build.heat.metal },
      holdUp: { ...build.holdUp, suction: change.suction * build.holdUp.suction },
    },
  };
}

/** A second of slip: engine, turbine and road speed, pedal held; pressure and friction follow the speeds. */
export function slipContest(): Contest {
  const span = 1;
  const unit = held({ steel: 1e9, metal: 1e9, suction: 1e9 });
  const start = fresh(unit, 353.15, 4e-3);
  start.gear = 2;
  start.speed = 12;
  start.slipping = true;
  start.gas = 0.98; // nearly all air: the pressure is too low to hold
  start.engine = 330;
  start.turbine = 300;
  const walkFrom = (): Walk => {
    const walk = newWalk(unit, copyOf(start));
    walk.pedal = 0.5;
    walk.road.wish = 1;
    fluidNow(unit, walk.state, walk.now);
    return walk;
  };
  const walk = walkFrom();
  const bySlip = () => {
    Object.assign(walk.state, {
      speed: start.speed,
      engine: start.engine,
      turbine: start.turbine,
      gas: start.gas,
    });
    for (let i = 0; i < 50; i++) slipFor(walk, span / 50);
    return [walk.state.engine, walk.state.turbine, walk.state.speed];
  };

  const { state, now, road, pedal } = walkFrom();
  const { build } = unit;
  const gear = build.gears[start.gear]!;
  const perMetre = turbinePerMetre(build, gear);
  const rate: Derivative = (_, [engine, turbine, speed]) => {
    const pump = impellerTorque(build.converter, engine!, turbine!);
    const driven = turbineTorque(build.converter, engine!, turbine!);
    supplyNow(unit, state, engine!, driven, false, now);
    clutchesNow(unit, state, gear, turbine! - perMetre * speed!, now);
    const given = engineTorque(build.engine, engine!, pedal) - pumpTorque(build.pump, now.line.linePressure);
    const resisting = roadForce(build.vehicle, speed!, 0, 0);
    const pushed =
      (wheelForceFrom(build, gear, now.holds) - resisting) / (build.vehicle.mass * build.vehicle.rotating);
    return [
      (given - pump) / build.engine.inertia,
      (driven - now.holds) / build.shiftControl.turbineInertia,
      Math.min(road.wish, pushed),
    ];
  };
  const first = [start.engine, start.turbine, start.speed];
  const truth = solverOf(3, 1e-11).solve(rate, 0, first, span).y;
  const tolerance = Math.max(1e-9, furthest(bySlip(), truth));
  const solver = solverOf(3, tolerance);
  return {
    walk: timeOf(200, bySlip) / span,
    odex: timeOf(200, () => solver.solve(rate, 0, first, span)) / span,
    tolerance,
  };
}

/** Ten minutes of warming up at a steady speed: energy of the sump, and the coolant. `kinks`: the driving changes each second. */
export function warmUpContest(kinks: boolean): Contest {
  const span = 600;
  const unit = held({ steel: 1e-9, metal: 1, suction: 1 });
  const start = fresh(unit, 283.15);
  start.gear = 2;
  start.speed = 12;
  const walkFrom = (): Walk => {
    const walk = newWalk(unit, copyOf(start));
    walk.scheduled = start.speed;
    walk.road.ambient = 283.15;
    walk.road.speed = start.speed;
    return walk;
  };
  const engagement = noEngagement();
  const energyByWalk = () => {
    const walk = walkFrom();
    for (let i = 0; i < span; i++) tick(walk, 1, start.speed, 0, 0, engagement, () => true);
    return [walk.state.energy, walk.state.coolant];
  };

  const { state, now, road } = walkFrom();
  // What the walk's first tick decides: lock-up and gear, by its own rules; the rest of the state stands.
  const settled = walkFrom();
  for (let i = 0; i < span; i++) tick(settled, 1, start.speed, 0, 0, engagement, () => true);
  state.gear = settled.state.gear;
  state.inFlight = settled.state.inFlight;
  const { heat } = unit.build;
  const rate: Derivative = (_, [energy, coolant]) => {
    state.energy = energy!;
    state.coolant = coolant!;
    instant(unit, state, road, now);
    const made = now.converterHeat + now.pumpHeat + now.gearHeat;
    const toAir = (heat.caseStill + heat.casePerSpeed * road.speed) * (now.temperature - road.ambient);
    const carried = now.line.cooler * now.density * specificHeat(unit.fluid.density15, now.temperature);
    const taken = coolerTakes(carried, heat.coolantFlowCapacity, heat.coolerConductance);
    return [
      made - toAir - taken * (now.temperature - coolant!),
      (heat.coolantWarm - coolant!) / heat.coolantWarmTime,
    ];
  };
  const first = [start.energy, start.coolant];
  const truth = solverOf(2, 1e-10).solve(rate, 0, first, span).y;
  const tolerance = Math.max(1e-9, furthest(energyByWalk(), truth));
  const solver = solverOf(2, tolerance);
  const bySolver = () => {
    if (!kinks) return void solver.solve(rate, 0, first, span);
    let y = first;
    for (let i = 0; i < span; i++) y = solver.solve(rate, i, y, i + 1).y;
  };
  return { walk: timeOf(5, energyByWalk) / span, odex: timeOf(kinks ? 2 : 20, bySolver) / span, tolerance };
}
