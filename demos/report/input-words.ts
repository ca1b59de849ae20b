// What the numbers of a case are called in a workshop, and in which units they are read there.

import type { Sourced } from "../../src/sources/origin.ts";
import { lastPlace, threeFigures, toPlace } from "../../src/units/show-spread.ts";
import { axis, type ShownKind, type UnitSystem } from "../../src/units/show.ts";

/** Words for a number by the end of its path; the first that fits counts. */
const words: readonly (readonly [end: string, says: string])[] = [
  ["build.fill", "fluid at the full mark"],
  ["holdUp.converter", "fluid that the converter holds"],
  ["holdUp.converterDrains", "share of the converter that drains while it stands"],
  ["holdUp.coolerAndLines", "fluid that cooler and lines hold"],
  ["holdUp.passages", "fluid that the passages of the case hold"],
  ["holdUp.hotReturnTime", "time that thrown-off fluid takes back to the pan, hot"],
  ["holdUp.returnExponent", "how much slower thick fluid comes back (exponent on viscosity)"],
  ["pan.free", "share of the pan's area that is free for fluid"],
  ["pickup.x", "pickup's mouth, distance from the pan's rear wall"],
  ["pickup.y", "pickup's mouth, distance from the pan's right wall"],
  ["pickup.height", "pickup's mouth, height over the pan's floor"],
  ["pickup.rim", "pickup's mouth, length of its rim"],
  ["pickup.baseGas", "air in the fluid of a full pan"],
  ["pickup.weirGas", "air drawn in where the pickup first runs short"],
  ["sump.sloshDamping", "how soon the fluid in the pan stops swinging (damping)"],
  ["pump.displacement", "pump, delivery a turn"],
  ["pump.slip", "pump, leakage inside, hot at idle"],
  ["pump.dissolved", "share of the drawn air that the pump takes into solution"],
  ["pump.exponent", "how air is squeezed in the pump (exponent)"],
  ["pump.mechanical", "pump, mechanical efficiency"],
  ["inlet.filter", "pressure that hot fluid loses in the filter"],
  ["regulator.base", "line pressure without torque"],
  ["regulator.reverseFactor", "line pressure in reverse over drive"],
  ["clutchCircuit.laminar", "leakage of the clutch circuit, hot"],
  ["pistonArea", "piston area"],
  ["friction.base", "friction of the lining"],
  ["friction.heatLoss", "friction lost with heat"],
  ["steelThickness", "thickness of a steel plate"],
  ["liningThickness", "thickness of a lining"],
  ["lockUp.most", "lock-up, highest pressure difference"],
  ["gearEfficiency", "efficiency of the gears"],
  ["shiftControl.targetTime", "shift time that the controller aims at"],
  ["shiftControl.fillGain", "share of a late fill that it makes up for at the next shift"],
  ["shiftControl.fillLimit", "most that it can learn of a fill time"],
  ["shiftControl.trimGain", "what it learns from one shift"],
  ["converter.scale", "size of the converter (factor on its torque)"],
  ["vehicle.mass", "vehicle with its load"],
  ["vehicle.rotating", "factor for wheels and shafts that spin up"],
  ["heat.metal", "heat that the transmission's metal takes up"],
  ["heat.caseStill", "heat given off by the case, standing"],
  ["heat.casePerSpeed", "heat given off by the case, more for speed"],
  ["heat.coolerConductance", "cooler's strength"],
  ["lubrication.airCoefficient", "cooling of plates that run dry"],
  ["lubrication.fullCoefficient", "cooling of plates with full lubrication"],
  ["lubrication.fullFlow", "lubrication that cools fully"],
  ["damage.wearPerEnergy", "lining worn by the heat of slips"],
  ["damage.glazeLoss", "friction lost when fully glazed"],
  ["damage.charFactor", "how fast a lining chars (factor)"],
  ["viscosity[0].kinematic", "viscosity of the fluid, coldest point"],
  ["viscosity[1].kinematic", "viscosity of the fluid, next point"],
  ["viscosity[2].kinematic", "viscosity of the fluid, hottest point"],
  ["fluid.density15", "density of the fluid"],
  ["fluid.shearLoss", "viscosity lost by shear in service"],
  ["hiding.capacity", "fluid that shields hold before it drips"],
  ["hiding.carryOff", "share of it that the wind takes in an hour's driving"],
  ["leak.eccentricity", "how far the seal sits to one side (0 centred, 1 touching)"],
  ["leak.drops", "drops when the seal begins to leak"],
  ["leak.finalDrops", "drops in the end"],
  ["leak.creepTime", "running time in which the seal creeps most of the way"],
  ["leak.diameter", "diameter of the hole, seal or pit"],
];

const clutchPath = /^build\.clutches\[(\d+)\]\.(.*)$/;

/** Words for a number, and for whose it is where each clutch has one. */
export function inputWords(
  path: string,
  clutches: readonly { readonly name: string }[],
): readonly [string, string | null] {
  const ofClutch = clutchPath.exec(path);
  const owner = ofClutch
    ? (clutches[Number(ofClutch[1])]?.name ?? null)
    : path.startsWith("build.lockUp.clutch.")
      ? "lock-up clutch"
      : null;
  const known = words.find(([end]) => path === end || path.endsWith(`.${end}`));
  return [known?.[1] ?? spelledOut(path), owner];
}

/** For a number that has no words yet: its path as words, without dots and capitals. */
function spelledOut(path: string): string {
  return path
    .replace(/^build\.(clutches\[\d+\]\.|lockUp\.clutch\.)?/, "")
    .replace(/\[(\d+)\]/g, (_, i: string) => ` ${Number(i) + 1}`)
    .replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
    .split(".")
    .join(", ");
}

type Scale = readonly [unit: string, factor: number, offset?: number];
const perInch = 1 / 0.0254;
const btu = 1 / 1055.05585262;
/** Units by the SI unit that a number has inside. */
const scales: Readonly<Record<string, Readonly<Record<UnitSystem, Scale>>>> = {
  "m^2": { US: ["in²", perInch ** 2], SI: ["cm²", 1e4] },
  "J/K": { US: ["BTU/°F", btu / 1.8], SI: ["kJ/K", 1e-3] },
  "W/K": { US: ["BTU/h/°F", (3600 * btu) / 1.8], SI: ["W/K", 1] },
  "W s/(K m)": { US: ["BTU/h/°F per mph", (3600 * btu * 0.44704) / 1.8], SI: ["W/K per km/h", 1 / 3.6] },
  "W/(m^2 K)": { US: ["BTU/h/ft²/°F", (3600 * btu * 0.3048 ** 2) / 1.8], SI: ["W/(m² K)", 1] },
  "K^-1": { US: ["% per 100 °F", 1e4 / 1.8], SI: ["% per 100 °C", 1e4] },
  "m^3/J": { US: ["in³ per million BTU", 1e6 * (perInch ** 3 / btu)], SI: ["mm³/MJ", 1e15] },
  "kg/m^3": { US: ["lb/gal", 3.785411784e-3 / 0.45359237], SI: ["kg/L", 1e-3] },
  "s^-1": { US: ["% an hour", 3.6e5], SI: ["% an hour", 3.6e5] },
  "drops/min": { US: ["drops/min", 1], SI: ["drops/min", 1] },
};
const kinds: Readonly<Record<string, ShownKind>> = {
  m: "length",
  "m^3": "volume",
  "m^3/s": "flow",
  Pa: "pressure",
  K: "temperature",
  kg: "mass",
  "m/s": "speed",
  "rad/s": "angularSpeed",
  "N m": "torque",
  "m^2/s": "kinematicViscosity",
};

/** Viscosity of fluid at about 90 °C [Pa s], and 700 rpm [rev/s]: coefficients of leakage and resistance tell nobody anything, what they let through or take away there does. */
const HOT = 0.007;
const IDLE = 700 / 60;
const psi = 6894.757;
const quartAMinute = 9.46352946e-4 / 60;
const litreAMinute = 1e-3 / 60;
const coefficients: Readonly<Record<string, Readonly<Record<UnitSystem, Scale>>>> = {
  "clutchCircuit.laminar": {
    US: ["qt/min at 100 psi", (100 * psi) / HOT / quartAMinute],
    SI: ["L/min at 500 kPa", 500e3 / HOT / litreAMinute],
  },
  "inlet.filter": {
    US: ["psi at 10 qt/min", (HOT * 10 * quartAMinute) / psi],
    SI: ["kPa at 10 L/min", (HOT * 10 * litreAMinute) / 1e3],
  },
  // Of what it displaces: Cs p/(2π µ n), whatever its size.
  "pump.slip": {
    US: ["% of its delivery at 70 psi", (100 * 70 * psi) / (2 * Math.PI * HOT * IDLE)],
    SI: ["% of its delivery at 500 kPa", (100 * 500e3) / (2 * Math.PI * HOT * IDLE)],
  },
};

/** Where the dimension does not tell the use. */
function scaleOf(path: string, { unit, value, text }: Sourced, system: UnitSystem): Scale {
  if (path.endsWith("pump.displacement")) return system === "US" ? ["in³", perInch ** 3] : ["cm³", 1e6];
  const coefficient = Object.keys(coefficients).find((end) => path.endsWith(end));
  if (coefficient !== undefined) return coefficients[coefficient]![system];
  if (unit === "s") return value >= 3600 ? ["h", 1 / 3600] : ["s", 1];
  if (unit === "") return text.trimEnd().endsWith("%") ? ["%", 100] : ["", 1];
  const kind = kinds[unit];
  if (kind !== undefined) {
    const { unit: name, factor, offset } = axis(kind, system);
    return [name, factor, offset];
  }
  return scales[unit]?.[system] ?? [unit, 1];
}

/** One number, or two as a span, of an input in the reader's units: "0.37 qt", "0.106 to 0.528 qt". */
export function inputText(
  path: string,
  sourced: Sourced,
  values: readonly number[],
  system: UnitSystem,
): string {
  const [unit, factor, offset = 0] = scaleOf(path, sourced, system);
  const told = values.map((value) => value * factor + offset);
  // A span's digits follow its width; what was taken is told as it was.
  const [least, most] = [Math.min(...told), Math.max(...told)];
  const numbers =
    least === most
      ? [handy(least)]
      : toPlace(told, lastPlace(most - least, threeFigures(Math.max(-least, most))));
  return `${numbers.join(" to ")}${unit === "" ? "" : ` ${unit}`}`;
}

const handy = (value: number): string => String(Number(value.toPrecision(3)));
