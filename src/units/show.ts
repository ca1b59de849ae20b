// Out: an SI number as text in the reader's units, and the same units for the axes of plots.

/** Whose units come first. The other's follow in brackets. */
export type UnitSystem = "US" | "SI";

/** How an axis turns an SI number into the one that is drawn: factor × value + offset; `label` names quantity and unit. */
export interface Axis {
  readonly factor: number;
  readonly offset: number;
  readonly unit: string;
  readonly label: string;
}

/** A length below this [m] is told in thousandths of an inch, as gaps and clearances are in the trade; below the second in micrometres. */
const FINE = 0.01 * 0.0254;
const FINEST = 0.01e-3;
/** A volume below this [m³], a tenth of a quart, is told in fluid ounces and millilitres: as a measuring cup reads. */
const LITTLE = 0.1 * 9.46352946e-4;

type Scale = readonly [unit: string, factor: number, offset?: number];
interface Shown {
  readonly quantity: string;
  readonly US: Scale;
  readonly SI: Scale;
}

const inch = 0.0254;
const mile = 1609.344;
const quart = 9.46352946e-4; // US liquid
const poundForce = 4.4482216152605;
const footPound = poundForce * 12 * inch;
const same = (quantity: string, ...scale: Scale): Shown => ({ quantity, US: scale, SI: scale });

const shown = {
  pressure: { quantity: "pressure", US: ["psi", (inch * inch) / poundForce], SI: ["kPa", 1e-3] },
  volume: { quantity: "volume", US: ["qt", 1 / quart], SI: ["L", 1e3] },
  temperature: { quantity: "temperature", US: ["°F", 1.8, -459.67], SI: ["°C", 1, -273.15] },
  temperatureDifference: { quantity: "temperature difference", US: ["°F", 1.8], SI: ["K", 1] },
  flow: { quantity: "flow", US: ["qt/min", 60 / quart], SI: ["L/min", 6e4] },
  leakFlow: { quantity: "leak", US: ["fl oz/h", (3600 * 32) / quart], SI: ["mL/h", 3.6e9] },
  dripRate: same("drops", "drops/min", 1),
  speed: { quantity: "speed", US: ["mph", 3600 / mile], SI: ["km/h", 3.6] },
  angularSpeed: same("speed of rotation", "rpm", 30 / Math.PI),
  distance: { quantity: "distance", US: ["mi", 1 / mile], SI: ["km", 1e-3] },
  length: { quantity: "length", US: ["in", 1 / inch], SI: ["mm", 1e3] },
  torque: { quantity: "torque", US: ["lb ft", 1 / footPound], SI: ["N m", 1] },
  energy: { quantity: "energy", US: ["BTU", 1 / 1055.05585262], SI: ["kJ", 1e-3] },
  power: { quantity: "power", US: ["hp", 1 / (550 * footPound)], SI: ["kW", 1e-3] },
  mass: { quantity: "mass", US: ["lb", 1 / 0.45359237], SI: ["kg", 1] },
  time: same("time", "h", 1 / 3600),
  kinematicViscosity: same("kinematic viscosity", "cSt", 1e6),
} as const satisfies Record<string, Shown>;

const thou: Scale = ["thou", 1e3 / inch];
const micrometre: Scale = ["µm", 1e6];
const fluidOunce: Scale = ["fl oz", 32 / quart];
const millilitre: Scale = ["mL", 1e6];

/** Every unit that an amount is told in. */
export const shownUnits: readonly string[] = [
  ...new Set(
    [
      ...Object.values<Shown>(shown).flatMap(({ US, SI }) => [US, SI]),
      thou,
      micrometre,
      fluidOunce,
      millilitre,
    ].map(([unit]) => unit),
  ),
];

/** The unit for an amount of that size [SI], in either system: small lengths and volumes have units of their own. */
export function scaleFor(size: number, kind: ShownKind, system: UnitSystem): Scale {
  const usual: Shown = shown[kind];
  const small = Math.abs(size);
  if (kind === "length" && small > 0) {
    if (system === "US" && small < FINE) return thou;
    if (system === "SI" && small < FINEST) return micrometre;
  }
  if (kind === "volume" && small > 0 && small < LITTLE) return system === "US" ? fluidOunce : millilitre;
  return usual[system];
}

/** Kinds that can be shown. A drip rate is in drops a minute, all others in SI. */
export type ShownKind = keyof typeof shown;
export const shownKinds = Object.keys(shown) as readonly ShownKind[];

/** "65 psi (448 kPa)" or, in SI, "448 kPa (65 psi)"; one unit alone where both systems share it. Three figures, or as many as are asked for, or all before the point. Small amounts: "1.66 thou (0.0421 mm)", "0.17 fl oz (5.03 mL)". */
export function show(value: number, kind: ShownKind, system: UnitSystem, figures = 3): string {
  if (Number.isNaN(value)) return "unknown";
  const first = scaleFor(value, kind, system);
  const second = scaleFor(value, kind, system === "US" ? "SI" : "US");
  const text = inUnit(value, first, figures);
  return first[0] === second[0] ? text : `${text} (${inUnit(value, second, figures)})`;
}

/** Factor, offset and label for an axis: `axis("pressure", "US").label` is "pressure [psi]". */
export function axis(kind: ShownKind, system: UnitSystem): Axis {
  const { quantity, ...scales }: Shown = shown[kind];
  const [unit, factor, offset = 0] = scales[system];
  return { factor, offset, unit, label: `${quantity} [${unit}]` };
}

function inUnit(value: number, [unit, factor, offset = 0]: Scale, figures: number): string {
  const number = value * factor + offset;
  if (!Number.isFinite(number)) return `${number > 0 ? "more" : "less"} than can be told in ${unit}`;
  const decimals =
    number === 0 ? 0 : Math.max(0, Math.min(20, figures - 1 - Math.floor(Math.log10(Math.abs(number)))));
  const text = Number(number.toFixed(decimals));
  return `${text === 0 ? 0 : text} ${unit}`;
}
