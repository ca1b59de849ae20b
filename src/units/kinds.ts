// The kinds of quantity that come in as text: the SI unit inside, what to call one, and an example of what to write.

/** `si` is the unit that the laws reckon in; `also` are other dimensions that mean the same thing (an angle counted or left out). */
export interface QuantityKind {
  readonly si: string;
  readonly also?: readonly string[];
  readonly expected: string;
  readonly example: string;
  /** Torque and energy have the same dimension: the words of the unit tell them apart. */
  readonly words?: "torque" | "energy";
  /** Temperatures: read from the freezing point, or as a difference. */
  readonly reading?: "temperature" | "difference";
}

const kind = (
  si: string,
  expected: string,
  example: string,
  more: Partial<QuantityKind> = {},
): QuantityKind => ({
  si,
  expected,
  example,
  ...more,
});

export const quantityKinds = {
  length: kind("m", "a length", "0.8 mm"),
  distance: kind("m", "a distance", "60000 mi"),
  area: kind("m^2", "an area", "110 cm2"),
  volume: kind("m^3", "a volume", "3 qt"),
  displacement: kind("m^3", "a displacement per turn", "20 cm3/rev", { also: ["m^3 / cycle"] }),
  flow: kind("m^3/s", "a flow", "4 L/min"),
  dripRate: kind("dripcount/min", "drops counted over a time", "40 drops/min"),
  mass: kind("kg", "a mass", "2900 kg"),
  density: kind("kg/m^3", "a density", "860 kg/m3"),
  pressure: kind("Pa", "a pressure", "65 psi"),
  temperature: kind("K", "a temperature", "185 degF", { reading: "temperature" }),
  temperatureDifference: kind("K", "a temperature difference", "9 K", { reading: "difference" }),
  time: kind("s", "a time", "150 h"),
  rate: kind("s^-1", "a rate", "0.5 1/h"),
  speed: kind("m/s", "a speed", "35 mph"),
  acceleration: kind("m/s^2", "an acceleration", "0.3 m/s2"),
  angularSpeed: kind("rad/s", "a speed of rotation", "680 rpm"),
  angle: kind("rad", "an angle", "3 deg"),
  kinematicViscosity: kind("m^2/s", "a kinematic viscosity", "35 cSt"),
  dynamicViscosity: kind("Pa s", "a dynamic viscosity", "7.3 mPa s"),
  force: kind("N", "a force", "900 N"),
  torque: kind("N m", "a torque", "620 N m", { words: "torque" }),
  torquePerSpeed: kind("N m s", "a torque per speed of rotation", "0.03 N m s", { also: ["N m s / rad"] }),
  inertia: kind("kg m^2", "a moment of inertia", "0.22 kg m2"),
  power: kind("W", "a power", "150 kW"),
  energy: kind("J", "an energy", "12 kJ", { words: "energy" }),
  heatCapacity: kind("J/K", "a heat capacity", "32 kJ/K"),
  heatConductance: kind("W/K", "a heat flow per temperature difference", "220 W/K"),
  conductancePerSpeed: kind("W s/(K m)", "a heat flow per temperature difference and speed", "0.6 W/K/(m/s)"),
  filmCoefficient: kind("W/(m^2 K)", "a film coefficient", "1200 W/(m2 K)"),
  laminarResistance: kind("m^-3", "a laminar resistance", "8e8 1/m3"),
  pressurePerTorque: kind("m^-3", "a pressure per torque", "1.5 kPa/(N m)"),
  wearPerEnergy: kind("m^3/J", "a volume worn per energy", "2e-5 mm3/J"),
  perTemperature: kind("K^-1", "a share per temperature", "1e-3 1/K"),
  perSpeed: kind("s/m", "a share per speed", "0.05 s/m"),
  perPressure: kind("Pa^-1", "a share per pressure", "1e-6 1/Pa"),
} satisfies Record<string, QuantityKind>;

export type Kind = keyof typeof quantityKinds;

/** What to write for a kind: `a pressure such as "65 psi"`, with the quotation marks. */
export function exampleOf(kind: Kind): string {
  return `"${quantityKinds[kind].example}"`;
}
