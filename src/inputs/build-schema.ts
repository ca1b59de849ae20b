// The shape of a build in a case file: the names of the parts are those of the physics, each number is a leaf.

import * as v from "valibot";
import { orElse, plainNumber, quantity, share } from "./leaf.ts";
import { above, aboveTo, atLeast, between, wholeAtLeast } from "./limits.ts";

const length = () => quantity("length", above(0));
const place = () => quantity("length", atLeast(0));
const volume = () => quantity("volume", atLeast(0));
const time = () => quantity("time", above(0));
const speed = () => quantity("speed", atLeast(0));
const pressure = () => quantity("pressure", atLeast(0));
const turning = () => quantity("angularSpeed", above(0));
const resistance = () => quantity("laminarResistance", above(0));
const factor = (example: string) => plainNumber(example, above(0));
const teeth = () => plainNumber("42", wholeAtLeast(8));
const planets = () => plainNumber("4", wholeAtLeast(2));

const frictionSchema = v.strictObject({
  base: plainNumber("0.11", aboveTo(0, 1)),
  rise: orElse(plainNumber("0.02", between(-1, 1)), "0"),
  riseSpeed: orElse(quantity("speed", above(0)), "0.3 m/s"),
  slope: orElse(quantity("perSpeed"), "0 s/m"),
  heatLoss: orElse(quantity("perTemperature", atLeast(0)), "0 1/K"),
  reference: orElse(quantity("temperature"), "80 degC"),
});

const clutchSchema = v.strictObject({
  name: v.pipe(v.string(), v.nonEmpty()),
  faces: plainNumber("8", wholeAtLeast(1)),
  outer: length(),
  inner: place(),
  pistonArea: quantity("area", above(0)),
  spring: quantity("force", atLeast(0)),
  stroke: place(),
  deadVolume: volume(),
  fillOrifice: length(),
  fillDischarge: plainNumber("0.62", aboveTo(0, 1)),
  friction: frictionSchema,
  steelMass: quantity("mass", above(0)),
  steelThickness: length(),
  liningThickness: length(),
  coolingArea: quantity("area", above(0)),
});

/** A gear from the tooth counts of the train, or one of another arrangement with its ratio and the share of turbine torque at each element. */
const gearSchema = v.union(
  [
    v.strictObject({
      name: v.string(),
      holds: v.pipe(v.array(v.string()), v.nonEmpty()),
    }),
    v.strictObject({
      name: v.string(),
      ratio: plainNumber("2.6"),
      holds: v.pipe(
        v.array(v.strictObject({ clutch: v.string(), share: plainNumber("1.6", above(0)) })),
        v.nonEmpty(),
      ),
    }),
  ],
  "a gear: its name with the elements that hold it, or with a ratio and the elements with their shares",
);

export const buildSchema = v.strictObject({
  name: v.pipe(v.string(), v.nonEmpty()),
  about: v.exactOptional(v.string()),
  fill: quantity("volume", above(0)),
  fillTemperature: quantity("temperature"),
  holdUp: v.strictObject({
    converter: volume(),
    converterDrains: share(),
    converterDrainTime: time(),
    coolerAndLines: volume(),
    passages: volume(),
    passagesDrain: share(),
    passagesDrainTime: time(),
    hotReturnTime: time(),
    hotViscosity: quantity("dynamicViscosity", above(0)),
    returnExponent: plainNumber("0.35", between(0, 1)),
    suction: quantity("volume", above(0)),
  }),
  sump: v.strictObject({
    pan: v.strictObject({
      length: length(),
      width: length(),
      height: length(),
      free: plainNumber("0.85", aboveTo(0, 1)),
    }),
    pickup: v.strictObject({
      x: place(),
      y: place(),
      height: place(),
      rim: length(),
      baseGas: share(),
      weirGas: share(),
    }),
    sloshDamping: plainNumber("0.3", between(0, 1)),
    stick: v.strictObject({ x: place(), y: place(), low: place(), full: place() }),
    overflow: v.strictObject({ x: place(), y: place(), height: place() }),
  }),
  pump: v.strictObject({
    displacement: quantity("displacement", above(0)),
    slip: plainNumber("5e-8", atLeast(0)),
    dissolved: share(),
    exponent: plainNumber("1.2", between(1, 1.4)),
    mechanical: plainNumber("0.85", aboveTo(0, 1)),
  }),
  inlet: v.strictObject({
    head: quantity("length"),
    bore: length(),
    length: place(),
    minorLoss: plainNumber("1.5", atLeast(0)),
    filter: quantity("laminarResistance", atLeast(0)),
  }),
  regulator: v.strictObject({
    base: quantity("pressure", above(0)),
    perTorque: quantity("pressurePerTorque", atLeast(0)),
    reverseFactor: plainNumber("1.45", atLeast(1)),
    coldFactor: plainNumber("0.15", between(0, 1)),
    coldBelow: quantity("temperature"),
    most: quantity("pressure", above(0)),
    spill: v.picklist(["inlet", "pan"]),
  }),
  clutchCircuit: v.strictObject({
    orifice: place(),
    discharge: plainNumber("0.62", aboveTo(0, 1)),
    laminar: quantity("volume", atLeast(0)),
  }),
  cooler: v.strictObject({
    feedOrifice: length(),
    feedDischarge: plainNumber("0.62", aboveTo(0, 1)),
    supplyLine: resistance(),
    cooler: resistance(),
    returnLine: resistance(),
    bypass: resistance(),
    lube: resistance(),
    relief: quantity("pressure", above(0)),
    bypassCold: quantity("temperature"),
    bypassHot: quantity("temperature"),
  }),
  clutches: v.pipe(v.array(clutchSchema), v.nonEmpty()),
  lockUp: v.strictObject({
    clutch: clutchSchema,
    fedFrom: v.picklist(["line", "overflow"]),
    most: quantity("pressure", above(0)),
    back: pressure(),
    fromGear: v.string(),
    onAbove: speed(),
    offBelow: speed(),
    fluidAbove: quantity("temperature"),
    heldSlip: quantity("angularSpeed", atLeast(0)),
    whenHot: v.picklist(["holds", "releases"]),
    hot: quantity("temperature"),
  }),
  gearTrain: v.strictObject({
    /** A simple set before the one with two suns makes five gears of its four. */
    front: v.exactOptional(v.strictObject({ sun: teeth(), ring: teeth(), planets: planets() })),
    rear: v.strictObject({ smallSun: teeth(), largeSun: teeth(), ring: teeth(), planets: planets() }),
    final: v.strictObject({ pinion: teeth(), ring: teeth() }),
  }),
  gears: v.pipe(v.array(gearSchema), v.nonEmpty()),
  reverse: gearSchema,
  gearEfficiency: plainNumber("0.96", aboveTo(0, 1)),
  shiftPlan: v.strictObject({
    up: v.array(speed()),
    down: v.array(speed()),
    stretch: plainNumber("0.8", atLeast(0)),
  }),
  shiftControl: v.strictObject({
    targetTime: time(),
    trimGain: quantity("pressure", atLeast(0)),
    trimLimit: pressure(),
    fillGain: orElse(plainNumber("0.2", between(0, 1)), "0.2"),
    fillLimit: orElse(quantity("time", atLeast(0)), "0.15 s"),
    turbineInertia: quantity("inertia", above(0)),
  }),
  converter: v.strictObject({ scale: factor("1.8") }),
  engine: v.strictObject({
    ratedPower: quantity("power", above(0)),
    ratedSpeed: turning(),
    idleSpeed: turning(),
    drag0: quantity("torque", atLeast(0)),
    drag1: quantity("torquePerSpeed", atLeast(0)),
    inertia: quantity("inertia", above(0)),
  }),
  vehicle: v.strictObject({
    mass: quantity("mass", above(0)),
    dragArea: quantity("area", atLeast(0)),
    rolling: plainNumber("0.010", between(0, 0.1)),
    tyreRadius: length(),
    rotating: plainNumber("1.05", between(1, 1.5)),
    airDensity: quantity("density", atLeast(0)),
  }),
  heat: v.strictObject({
    metal: quantity("heatCapacity", atLeast(0)),
    caseStill: quantity("heatConductance", atLeast(0)),
    casePerSpeed: quantity("conductancePerSpeed", atLeast(0)),
    coolerConductance: quantity("heatConductance", atLeast(0)),
    coolantFlowCapacity: quantity("heatConductance", above(0)),
    coolantWarm: quantity("temperature"),
    coolantWarmTime: time(),
    coolantCoolTime: time(),
    lubrication: v.strictObject({
      airCoefficient: quantity("filmCoefficient", atLeast(0)),
      fullCoefficient: quantity("filmCoefficient", above(0)),
      fullFlow: quantity("flow", above(0)),
    }),
  }),
  damage: v.strictObject({
    wearPerEnergy: quantity("wearPerEnergy", atLeast(0)),
    glazeLoss: plainNumber("0.35", between(0, 0.99)),
    charFactor: plainNumber("1", atLeast(0)),
  }),
  ratedTurbineTorque: quantity("torque", above(0)),
});

export type BuildTree = v.InferOutput<typeof buildSchema>;
