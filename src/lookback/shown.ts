// What the unit shows in the bay, at any shortage of fluid: worked out once, with the bay's own procedures, and read off between.

import { coolerFlowTest } from "../bay/cooler-flow-test.ts";
import { stickIdling } from "../bay/level-checks.ts";
import { idlePressure } from "../bay/idle-pressure.ts";
import { HOT, idling, inThePan, standing } from "../bay/ready.ts";
import type { Walk } from "../history/walk.ts";
import type { Unit } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { dynamicViscosity } from "../physics/fluid/fluid.ts";
import { surfaceTension } from "../physics/fluid/surface-tension.ts";
import { dropVolume } from "../physics/leak/drop.ts";
import { meanDepth } from "../physics/sump/pan.ts";
import type { Evidence } from "./evidence.ts";
import type { Site } from "./visit.ts";

/** A reading over the shortage [m³ at fill temperature]. */
export interface Table {
  readonly step: number;
  readonly values: Float64Array;
}

/** The fluid at one temperature, and the drop of it that falls from the leak's rim by the law of its size. */
export interface FluidThen {
  readonly density: number;
  readonly viscosity: number;
  readonly drop: number;
}

/** Readings of one unit; those that no evidence asks for are left out. */
export interface Shown {
  /** By temperature of the look [K]: where the dipstick is wet, 0 low mark, 1 full. */
  readonly stick: ReadonlyMap<number, Table>;
  /** Idling hot in drive [Pa]. */
  readonly linePressure: Table;
  readonly coolerFlow?: Table;
  readonly hot: FluidThen;
  readonly bay: FluidThen;
  /** Density of the fluid by which missing volumes are told [kg/m³]. */
  readonly filling: number;
  /** At the leak, idling hot: pressure [Pa]; parked in the bay: depth in the pan [m]. */
  readonly pressure: Table;
  readonly parkedDepth: Table;
}

/** Shortages that are worked out, and how much of the fill the last one lacks. */
const POINTS = 25;
const MOST = 0.8;
/** So long the engine has been off when drops are counted parked [s], in a bay of so many kelvin. */
const PARKED = 900;
const BAY = 293.15;

/** Idling comes to rest within a minute: in steps so many times as long as a drive's pressures are what they would be to a fifty-thousandth, the pan's depth to a tenth of a millimetre. */
const COARSER = 5;

/** The value at a shortage; beyond the ends as at them. */
export function at({ step, values }: Table, shortage: number): number {
  const x = Math.max(0, Math.min(values.length - 1, shortage / step));
  const i = Math.min(values.length - 2, Math.floor(x));
  return values[i]! + (values[i + 1]! - values[i]!) * (x - i);
}

/** Works out what the evidence asks for; the leak's own draw is left out, which a gauge would not show either. */
export function shownBy(unit: Unit, site: Site, evidence: readonly Evidence[], points = POINTS): Shown {
  const step = (MOST * unit.build.fill) / (points - 1);
  const tight: Unit = { ...unit, leak: null };
  const table = (read: (shortage: number) => number): Table => ({
    step,
    values: Float64Array.from({ length: points }, (_, i) => read(i * step)),
  });
  const stick = new Map<number, Table>();
  for (const item of evidence)
    if ((item.kind === "dipstick" || item.kind === "off the dipstick") && !stick.has(item.temperature))
      stick.set(
        item.temperature,
        table((shortage) => stickIdling(tight, shortage, item.temperature).position),
      );
  const asks = (kind: Evidence["kind"]) => evidence.some((item) => item.kind === kind);
  const then = (temperature: number): FluidThen => {
    const rho = density(unit.fluid.density15, temperature);
    return {
      density: rho,
      viscosity: dynamicViscosity(unit.fluid, temperature, 0),
      drop: dropVolume(site.dripRadius, surfaceTension(temperature), rho),
    };
  };
  // One unit that idles hot shows all: the leak while in neutral, the pan once it has stood, and the gauge in gear.
  const idled = Array.from({ length: points }, (_, i) => {
    const walk = idling(tight, i * step, HOT, COARSER);
    const { pan } = tight.build.sump;
    return {
      atLeak: pressureAt(walk, site),
      depth: meanDepth(pan, inThePan(standing(walk, PARKED, BAY))),
      line: idlePressure(walk),
    };
  });
  return {
    stick,
    hot: then(HOT),
    bay: then(BAY),
    filling: density(unit.fluid.density15, unit.build.fillTemperature),
    linePressure: { step, values: Float64Array.from(idled, ({ line }) => line) },
    ...(asks("cooler flow") ? { coolerFlow: table((shortage) => coolerFlowTest(tight, shortage).flow) } : {}),
    pressure: { step, values: Float64Array.from(idled, ({ atLeak }) => atLeak) },
    parkedDepth: { step, values: Float64Array.from(idled, ({ depth }) => depth) },
  };
}

/** Pressure at the leak's place of a unit that idles hot in park [Pa]; at the pan the head over its floor. */
function pressureAt(walk: Walk, { place, fedBy }: Site): number {
  const { line, lineInput, density } = walk.now;
  const { cooler, sump } = walk.unit.build;
  switch (place) {
    case "return-line":
      return line.leakPressure;
    case "supply-line":
      return line.leakPressure + (cooler.cooler + cooler.returnLine) * lineInput.pathViscosity * line.cooler;
    case "shaft-seal":
      return fedBy === "converter-outlet" ? line.nodePressure : line.leakPressure;
    default:
      return density * 9.80665 * meanDepth(sump.pan, inThePan(walk));
  }
}
