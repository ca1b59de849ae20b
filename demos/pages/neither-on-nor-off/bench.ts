// One clutch of the van on a thought bench: engine on one side, an output held at a speed on the other.

import build from "../../../reference-data/parcel-van/build.json" with { type: "json" };
import { readBuild } from "../../../src/inputs/case.ts";
import { capacity } from "../../../src/physics/clutch/capacity.ts";
import { frictionCoefficient, type Friction } from "../../../src/physics/clutch/friction.ts";
import { slipWindow } from "../../../src/physics/clutch/slip.ts";
import { slipHeat, type SlipHeatPicture } from "../../../src/plots/slip-heat.ts";
import { show as inUnits, type ShownKind, type UnitSystem } from "../../../src/units/show.ts";
import { rise, steel } from "../../fade-marks.ts";
import { rpm } from "../../../src/units/literals.ts";

export const van = readBuild(build).build;
/** The clutch that the van launches with. */
export const clutch = van.clutches.find(({ name }) => name === "forward clutch")!;
const warm = 363.15;
const sliding = 5;

/** What the reader sets on the bench: torque asked [N m], output speed [rad/s], spring [N], apply pressure [Pa]. */
export interface Bench {
  readonly torque: number;
  readonly output: number;
  readonly spring: number;
  readonly pressure: number;
}

export const benchAtFirst: Bench = { torque: 250, output: rpm(1400), spring: clutch.spring, pressure: 120e3 };

/** The picture's data for a bench; friction at a walking pace of sliding, plates warm. Both engines end at 5600 rpm. */
export function onBench(
  { torque, output, spring, pressure }: Bench,
  friction: Friction = clutch.friction,
): SlipHeatPicture {
  return {
    clutch: { ...clutch, spring },
    friction: frictionCoefficient(friction, sliding, warm),
    torque,
    outputSpeed: output,
    freeSpeed: rpm(5600),
    at: pressure,
  };
}

/** What the clutch does at the pressure that is looked at, in one or two sentences; the falling engine line counts. */
export function reading(data: SlipHeatPicture, system: UnitSystem): string {
  const show = (value: number, kind: ShownKind) => inUnits(value, kind, system);
  const { at = 0, friction, torque } = data;
  const { kiss, lock } = slipWindow(data.clutch, torque, friction);
  const there = `At ${show(at, "pressure")} the clutch is`;
  const asked = show(torque, "torque");
  if (at <= kiss)
    return `${there} released: the spring holds the plates apart, they carry nothing and make no heat.`;
  if (at >= lock)
    return `${there} fully applied: it carries the ${asked} that are asked without slip, and makes no heat.`;
  const carried = capacity(data.clutch, at, friction);
  const heat = slipHeat(data, at).falling;
  const seconds = (steel * data.clutch.steelMass * rise) / heat;
  return (
    `${there} partly applied: it carries ${show(carried, "torque")} of the ${asked} that are asked, slips at ` +
    `${show(heat / carried, "angularSpeed")} and makes ${show(heat, "power")} of heat. With nothing to cool ` +
    `them its steel plates would be ${show(rise, "temperatureDifference")} hotter in ${seconds.toPrecision(2)} s.`
  );
}
