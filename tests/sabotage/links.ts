// Each link's main laws 5 % off, and one sign turned.
import { change, fiveOff, type Mutation, type Place } from "./mutation.ts";

const place = (link: string, folder: string, file: string, also: readonly string[] = []): Place => ({
  link,
  file: `physics/${folder}/${file}`,
  tests: [`tests/${folder}/`, `tests/checks/${link.replaceAll(" ", "-")}.reference`, ...also],
});

const viscosity = place("fluid", "fluid", "viscosity.ts");
const fluidDensity = place("fluid", "fluid", "density.ts");
const fluidHeat = place("fluid", "fluid", "specific-heat.ts");
const leakFlow = place("leak path", "leak", "flow.ts");
const hole = place("leak path", "leak", "hole.ts");
const crack = place("leak path", "leak", "crack.ts");
const drop = place("regime", "leak", "drop.ts");
const regime = place("regime", "leak", "regime.ts");
const paris = place("growth", "leak", "paris.ts");
const seal = place("growth", "leak", "seal-creep.ts");
const hiding = place("hiding places", "leak", "hiding.ts");
const pan = place("sump", "sump", "pan.ts");
const tilt = place("sump", "sump", "tilt.ts");
const slosh = place("sump", "sump", "slosh.ts");
const holdUp = place("sump", "sump", "holdup.ts");
const pickup = place("pickup and air", "sump", "pickup.ts");
const drawn = place("pickup and air", "sump", "gas-drawn.ts");
const pump = place("supply", "supply", "pump.ts");
const inlet = place("supply", "supply", "inlet.ts");
const suction = place("pickup and air", "supply", "suction.ts");
const regulator = place("line pressure", "supply", "regulator.ts");
const circuit = place("line pressure", "supply", "cooler-circuit.ts");
const trim = place("line pressure", "supply", "trim.ts");
const capacity = place("clutch", "clutch", "capacity.ts");
const lockUp = place("clutch", "clutch", "lockup.ts");
const engagement = place("clutch", "clutch", "engagement.ts");
const slip = place("clutch", "clutch", "slip.ts");
const plate = place("heat", "heat", "plate.ts");
const cooler = place("heat", "heat", "cooler.ts");
const conduction = place("heat", "heat", "conduction.ts");
const damageIndex = place("damage", "damage", "damage-index.ts");
const char = place("damage", "damage", "pyrolysis.ts");
const glaze = place("damage", "damage", "glaze.ts");
const wear = place("damage", "damage", "wear.ts");
const road = place("load", "load", "road.ts");
const converter = place("load", "load", "converter.ts");

const viscosityReturn = "return (Math.exp(Math.LN10 * (logZ < stiffest ? logZ : stiffest)) - 0.7) * 1e-6;";

export const linkMutations: readonly Mutation[] = [
  ...fiveOff(viscosity, "viscosity", viscosityReturn, (k) => viscosityReturn.replace("1e-6", `1e-6 * ${k}`)),
  change(
    viscosity,
    "viscosity rises with heat",
    "Math.LN10 * A - B * Math.log(temperature)",
    "Math.LN10 * A - 2 * B * Math.log(line.knee) + B * Math.log(temperature)",
  ),
  change(
    viscosity,
    "273 for 273.15 in the viscosity line",
    "B * Math.log(temperature)",
    "B * Math.log(temperature - 273.15 + 273)",
  ),
  change(
    fluidDensity,
    "density rises with heat",
    "Math.exp(-stretch * (1 + 0.8 * stretch))",
    "Math.exp(stretch * (1 + 0.8 * stretch))",
  ),
  change(
    fluidHeat,
    "273 for 273.15 in the heat content",
    "return temperature - 273.15;",
    "return temperature - 273;",
  ),

  ...fiveOff(
    leakFlow,
    "leak flow",
    "return (2 * overpressure) / (a",
    (k) => `return (${k} * 2 * overpressure) / (a`,
  ),
  change(leakFlow, "orifice term turned", "a * a + 4 * b * overpressure", "a * a - 4 * b * overpressure"),
  change(
    hole,
    "entrance loss of the hole taken off",
    "(24 + (128 / Math.PI) * (wall / diameter))",
    "(-24 + (128 / Math.PI) * (wall / diameter))",
  ),
  ...fiveOff(crack, "crack gap", "return ((Math.PI * stress", (k) => `return ${k} * ((Math.PI * stress`),

  ...fiveOff(drop, "drops a minute", "return (60 * flow)", (k) => `return (${k} * 60 * flow)`),
  ...fiveOff(drop, "drop volume", "return Math.min(volume,", (k) => `return Math.min(${k} * volume,`),
  ...fiveOff(regime, "jetting", "return 4 * (outer / inner)", (k) => `return ${k} * 4 * (outer / inner)`),
  change(drop, "drop gains by its neck", "1 + y * (-0.9121", "1 + y * (0.9121"),
  change(regime, "drip and stream change places", "flow < streaming ?", "flow >= streaming ?"),

  ...fiveOff(
    paris,
    "crack length by cycles",
    "return Math.min(law.longest, start * Math.exp(Math.log1p(q * grown) / q));",
    (k) => `return Math.min(law.longest, ${k} * start * Math.exp(Math.log1p(q * grown) / q));`,
  ),
  ...fiveOff(
    paris,
    "crack length by time",
    "return Math.min(end, start * Math.exp(Math.log1p(share * Math.expm1(q * ratio)) / q));",
    (k) => `return Math.min(end, ${k} * start * Math.exp(Math.log1p(share * Math.expm1(q * ratio)) / q));`,
  ),
  change(seal, "seal closes instead", "first - (settled - first)", "first + (settled - first)"),

  ...fiveOff(hiding, "what runs over", "out.overflow = spilled +", (k) => `out.overflow = spilled + ${k} *`),
  ...fiveOff(
    hiding,
    "what the wind takes",
    "out.carriedOff = start * gone",
    (k) => `out.carriedOff = ${k} * start * gone`,
  ),
  change(
    hiding,
    "wind adds to what runs over",
    "(inflow - k * place.capacity) * brimming",
    "(inflow + k * place.capacity) * brimming",
  ),

  ...fiveOff(
    pan,
    "depth in the tilted pan",
    "return mean + half - fall;",
    (k) => `return ${k} * (mean + half - fall);`,
  ),
  change(
    pan,
    "tilt turned along the pan",
    "place asked for.\n  const fall =\n    Math.abs(tiltX) * (tiltX >= 0 ?",
    "place asked for.\n  const fall =\n    Math.abs(tiltX) * (tiltX < 0 ?",
  ),
  change(
    tilt,
    "a hill empties the wrong end",
    "(acceleration + g * Math.sin",
    "(acceleration - g * Math.sin",
  ),
  change(tilt, "a turn throws the fluid inwards", "return lateral / g;", "return -lateral / g;"),
  ...fiveOff(
    slosh,
    "slosh frequency",
    "return Math.sqrt(g * k * Math.tanh(k * depth));",
    (k) => `return ${k} * Math.sqrt(g * k * Math.tanh(k * depth));`,
  ),
  change(
    holdUp,
    "fluid in flight grows by returning",
    "(inflow * returnTime - volume) * gone",
    "(inflow * returnTime + volume) * gone",
  ),

  ...fiveOff(pickup, "onset of air", "return 0.69 * (Math.max", (k) => `return ${k} * 0.69 * (Math.max`),
  ...fiveOff(
    drawn,
    "weir over the rim",
    "return 1 - (1 - pickup.weirGas) * ratio",
    (k) => `return 1 - ${k} * (1 - pickup.weirGas) * ratio`,
  ),
  change(
    drawn,
    "less air where the surface is lower",
    "((pickup.baseGas - pickup.weirGas) * (submergence - weir))",
    "((pickup.weirGas - pickup.baseGas) * (submergence - weir))",
  ),
  change(
    suction,
    "the suction passage turns from its supply",
    "pickupGas + (gas - pickupGas)",
    "pickupGas - (gas - pickupGas)",
  ),

  ...fiveOff(
    pump,
    "delivery",
    "return displaced(pump, turn) * (1 -",
    (k) => `return ${k} * displaced(pump, turn) * (1 -`,
  ),
  change(pump, "slip adds to delivery", "gas * left) - pumpSlip", "gas * left) + pumpSlip"),
  ...fiveOff(pump, "gas left at line pressure", "return share * (", (k) => `return ${k} * share * (`),
  ...fiveOff(inlet, "inlet pressure", "return p > 0 ? p : 0;", (k) => `return p > 0 ? ${k} * p : 0;`),
  change(inlet, "lift helps the pump", "    lift -\n    (friction", "    -lift -\n    (friction"),

  ...fiveOff(
    regulator,
    "set point",
    "const wanted =\n    (regulator.base",
    (k) => `const wanted =\n    ${k} * (regulator.base`,
  ),
  change(regulator, "trim lowers the set point", "cold +\n    trim;", "cold -\n    trim;"),
  ...fiveOff(
    regulator,
    "supply in the balance",
    "const supply = supplyAt(",
    (k) => `const supply = ${k} * supplyAt(`,
  ),
  ...fiveOff(
    circuit,
    "leak on the circuit",
    "return (2 * open) / sum;",
    (k) => `return (${k} * 2 * open) / sum;`,
  ),
  change(
    trim,
    "the controller learns the wrong way",
    "(measuredTime - targetTime)",
    "(targetTime - measuredTime)",
  ),

  ...fiveOff(
    capacity,
    "capacity",
    "return mu * clutch.faces * clampForce(clutch, pressure)",
    (k) => `return ${k} * mu * clutch.faces * clampForce(clutch, pressure)`,
  ),
  change(
    capacity,
    "return spring pushes the other way",
    "pressure * clutch.pistonArea - clutch.spring",
    "pressure * clutch.pistonArea + clutch.spring",
  ),
  change(
    lockUp,
    "release side helps the lock-up",
    "linePressure - lockup.back",
    "linePressure + lockup.back",
  ),
  change(
    engagement,
    "the load hinders no engagement",
    "(clutchTorque - pair.loadTorque) / pair.loadInertia\n  );",
    "(clutchTorque + pair.loadTorque) / pair.loadInertia\n  );",
  ),
  ...fiveOff(
    slip,
    "slip heat on a falling line",
    "return (line.freeSpeed / line.torqueAtRest) * capacity",
    (k) => `return ${k} * (line.freeSpeed / line.torqueAtRest) * capacity`,
  ),

  ...fiveOff(plate, "warming of a plate", "temperature + ((power", (k) => `temperature + ${k} * ((power`),
  change(
    plate,
    "a cool plate heats the fluid",
    "((power - conductance * (temperature - fluidTemperature)) * dt",
    "((power + conductance * (temperature - fluidTemperature)) * dt",
  ),
  ...fiveOff(
    cooler,
    "cooler effectiveness",
    "return lost / (1 + ratio * lost);",
    (k) => `return ${k} * (lost / (1 + ratio * lost));`,
  ),
  ...fiveOff(
    conduction,
    "rise of a thick wall",
    "return ((2 * flux * reach)",
    (k) => `return ${k} * ((2 * flux * reach)`,
  ),

  ...fiveOff(
    damageIndex,
    "damage index",
    "return (1 - left) / (1 - 1 / margin);",
    (k) => `return ${k} * ((1 - left) / (1 - 1 / margin));`,
  ),
  ...fiveOff(
    damageIndex,
    "capacity left",
    "return (1 - share(glazeLoss)",
    (k) => `return ${k} * (1 - share(glazeLoss)`,
  ),
  change(damageIndex, "glaze adds friction", "(1 - share(glazeLoss)", "(1 + share(glazeLoss)"),
  ...fiveOff(char, "charring", "return factor * Math.exp", (k) => `return ${k} * factor * Math.exp`),
  ...fiveOff(glaze, "glazing", "(1.07e8 / 3600)", (k) => `(${k} * 1.07e8 / 3600)`),
  ...fiveOff(wear, "wear", "return (perEnergy * energy)", (k) => `return (${k} * perEnergy * energy)`),

  ...fiveOff(
    road,
    "road load",
    "const force = rolling + 0.5 * rho * CdA * speed * speed + m * gravity * sine + m * delta * acceleration;",
    (k) =>
      `const force = ${k} * (rolling + 0.5 * rho * CdA * speed * speed + m * gravity * sine + m * delta * acceleration);`,
  ),
  change(road, "a hill pulls upwards", "+ m * gravity * sine", "- m * gravity * sine"),
  ...fiveOff(
    converter,
    "turbine torque",
    "return converter.scale * (f * wp",
    (k) => `return ${k} * converter.scale * (f * wp`,
  ),
];
