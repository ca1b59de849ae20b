// What a unit carries from one moment to the next. Everything else is worked out from it.

import { finite } from "../errors.ts";
import type { Build, Unit } from "./build.ts";
import { density } from "./fluid/density.ts";
import { specificEnergy } from "./fluid/specific-heat.ts";

/** State of the unit; SI. Mass and energy are kept, not volume and temperature, so that their balances close. */
export interface State {
  /** Seconds since the start of the history, seconds the engine has run, metres driven. */
  clock: number;
  running: number;
  distance: number;
  /** Fluid inside [kg], its energy with the metal's above 0 °C [J], share of its life used. */
  mass: number;
  energy: number;
  fluidAge: number;
  /** Fluid away from the pan [m³]. */
  converter: number;
  lines: number;
  passages: number;
  inFlight: number;
  /** Surface slope along and its rate, across and its rate. */
  readonly slosh: Float64Array;
  /** Gas share by volume in the suction passage. */
  gas: number;
  coolant: number;
  /** Index into the gears; road speed [m/s]; engine and turbine speed [rad/s]. */
  gear: number;
  speed: number;
  engine: number;
  turbine: number;
  /** A holding element of the gear slips; seconds that it has. */
  slipping: boolean;
  slipTime: number;
  /** A clutch that is being engaged (-1: none), what it still lacks before its plates touch [m³], the pressure asked for it [Pa], seconds since the command was due. */
  entering: number;
  unfilled: number;
  asked: number;
  shiftTime: number;
  lockUpOn: boolean;
  /** Seconds that the lock-up has slipped uncontrolled; once over its limit it stays off until the key is turned. */
  lockUpSlipTime: number;
  lockUpBarred: boolean;
  trim: number;
  /** Per clutch of the gears: seconds by which its fill begins earlier than a sound one would need. */
  readonly learnedFill: Float64Array;
  /** Per clutch, the lock-up clutch last: steel temperature [K], lining lost [m], charred share, glazed share. */
  readonly plate: Float64Array;
  readonly wear: Float64Array;
  readonly char: Float64Array;
  readonly glaze: Float64Array;
  /** Seconds the engine has run since the leak opened (negative: it has not), pressure inside it at the last look [Pa]. */
  leakAge: number;
  leakPressure: number;
  /** The clock when the leak opened [s]: what rusts counts time by the calendar. */
  leakOpenedAt: number;
  /** Lost fluid by where it is [kg]: in the hiding place, carried off on the road, on the ground where the vehicle stood. */
  hidden: number;
  onRoad: number;
  onGround: number;
}

/** A unit as it left the bay: full to `fill` at the fill temperature, cold-soaked at `temperature`. */
export function fresh(unit: Unit, temperature: number, fillShort = 0): State {
  finite("fillShort", fillShort, "m³");
  const { build, fluid } = unit;
  const clutches = build.clutches.length + 1;
  const mass = Math.max(0, build.fill - fillShort) * density(fluid.density15, build.fillTemperature);
  // Converter, lines and passages are full as long as there is fluid to fill them.
  const { holdUp } = build;
  const away = holdUp.converter + holdUp.coolerAndLines + holdUp.passages;
  const filled = Math.min(1, mass / density(fluid.density15, temperature) / away);
  const plate = new Float64Array(clutches).fill(temperature);
  return {
    clock: 0,
    running: 0,
    distance: 0,
    mass,
    energy: storedEnergy(build, fluid.density15, mass, temperature),
    fluidAge: 0,
    converter: filled * holdUp.converter,
    lines: filled * holdUp.coolerAndLines,
    passages: filled * holdUp.passages,
    inFlight: 0,
    slosh: new Float64Array(4),
    gas: build.sump.pickup.baseGas,
    coolant: temperature,
    gear: 0,
    speed: 0,
    engine: build.engine.idleSpeed,
    turbine: 0,
    slipping: false,
    slipTime: 0,
    entering: -1,
    unfilled: 0,
    asked: 0,
    shiftTime: 0,
    lockUpOn: false,
    lockUpSlipTime: 0,
    lockUpBarred: false,
    trim: 0,
    learnedFill: new Float64Array(clutches - 1),
    plate,
    wear: new Float64Array(clutches),
    char: new Float64Array(clutches),
    glaze: new Float64Array(clutches),
    leakAge: -1,
    leakPressure: 0,
    leakOpenedAt: 0,
    hidden: 0,
    onRoad: 0,
    onGround: 0,
  };
}

/** Energy of fluid and metal above 0 °C [J]. */
export function storedEnergy(build: Build, density15: number, mass: number, temperature: number): number {
  return mass * specificEnergy(density15, temperature) + build.heat.metal * (temperature - 273.15);
}

/** A copy that shares nothing with the original, for looking ahead without moving the unit. */
export function copyOf(state: State): State {
  return {
    ...state,
    slosh: state.slosh.slice(),
    learnedFill: state.learnedFill.slice(),
    plate: state.plate.slice(),
    wear: state.wear.slice(),
    char: state.char.slice(),
    glaze: state.glaze.slice(),
  };
}
