import { cubicFullTorque } from "../../src/physics/load/engine-cubic.ts";
import { fullTorque, type EngineLine } from "../../src/physics/load/engine.ts";
import {
  couplingRatio,
  impellerSpeed,
  impellerTorque,
  kFactor,
  torqueRatio,
  turbineTorque,
} from "../../src/physics/load/converter.ts";
import {
  overdriveRatio,
  planetTeeth,
  reverseRatio,
  ringHeldRatio,
  sunHeldRatio,
} from "../../src/physics/load/planetary.ts";
import { gravity, roadForce, type Vehicle } from "../../src/physics/load/road.ts";
import { regressionRoadLoad } from "../../src/physics/load/road-regression.ts";
import { stallPoint } from "../../src/physics/load/stall.ts";
import { type Check } from "./check.ts";

const [kmh, mph, hp, pound, rpm] = [1 / 3.6, 0.44704, 745.7, 0.45359237, Math.PI / 30];
const degrees = Math.PI / 180;

const truck: Vehicle = {
  mass: 2300,
  dragArea: 1.15,
  rolling: 0.01,
  tyreRadius: 0.38,
  rotating: 1.03,
  airDensity: 1.2,
};
/** A vehicle whose level resistance is one given force, whatever its speed: how exercises state it. */
const dragged = (mass: number, resistance: number): Vehicle => ({
  ...truck,
  mass,
  dragArea: 0,
  rolling: resistance / (mass * gravity),
});
/** A vehicle without rolling resistance that meets `force` of drag at `speed`. */
const airOnly = (mass: number, force: number, speed: number): Vehicle => ({
  ...truck,
  mass,
  rolling: 0,
  dragArea: (2 * force) / (1.2 * speed * speed),
});

// Family car of the power table: 25 hp at 70 mph, of which 32 % is rolling resistance. The table's row for 50 mph
// (13 hp) is left out: it does not lie on a cubic through its five other rows, which gives 12.
const at70 = (25 * hp) / (70 * mph);
const familyCar: Vehicle = {
  ...airOnly(1400, 0.68 * at70, 70 * mph),
  rolling: (0.32 * at70) / (1400 * gravity),
};
const familyPower = (speed: number) => (roadForce(familyCar, speed * mph, 0, 0) * speed * mph) / hp;

const engine: EngineLine = {
  ratedPower: 200e3,
  ratedSpeed: 5500 * rpm,
  idleSpeed: 650 * rpm,
  drag0: 15,
  drag1: 0.07,
  inertia: 0.25,
};
const stall = (scale: number) => stallPoint(engine, { scale }, 0);

// The truck at a steady 100 km/h in direct gear with a 3.55 axle, converter not locked.
const cruise = () => {
  const turbine = ((100 * kmh) / 0.38) * 3.55;
  const torque = (roadForce(truck, 100 * kmh, 0, 0) * 0.38) / 3.55;
  return 1 - turbine / impellerSpeed({ scale: 1.8 }, torque, turbine);
};

const converterFit = "Kotwicki, SAE paper 820393 (1982), nine coefficients, evaluated in NumPy 2.4";
const normalised = "normalised petrol full-load curve used with UN GTR 15, evaluated in NumPy 2.4";
const encyclopedia =
  "general encyclopedia of technology, article on planetary gearsets, ring 72 and sun 30 teeth";
const bulletin =
  "trade bulletin on transmission arithmetic, 1989, figure of a planetary set with ring 34 and sun 20 teeth";
const reference = "road-load equation for the reference truck, evaluated in NumPy 2.4";

const road: readonly Omit<Check, "link">[] = [
  {
    claim: "a 710 kg car with 500 N of drag needs 742.8 N up a slope of 2 degrees",
    source: "physics exercise with printed solution: power of a car on a hill",
    kind: "published",
    expected: 742.83,
    got: () => roadForce(airOnly(710, 500, 23), 23, 0, 2 * degrees),
    tolerance: { absolute: 0.25 },
    because: "the solution takes g = 9.8 m/s2",
  },
  {
    claim: "a 1200 kg vehicle with 600 N of resistance needs 835.4 N on a rise of 1 in 50",
    source: "engineering exercise with printed solution: tractive effort at 40 km/h through a 4:1 gear",
    kind: "published",
    expected: 835.38,
    got: () => roadForce(dragged(1200, 600), 40 * kmh, 0, Math.atan(1 / 50)),
    tolerance: { absolute: 0.4 },
    because: "the solution takes g = 9.81 m/s2 and the sine of the slope as 0.02",
  },
  {
    claim: "120 hp carry a 1000 kg car with 600 N of friction up 22.52 degrees at 74 km/h",
    source: "university physics exercise with printed solution: steepest hill for a given power",
    kind: "published",
    expected: 120 * 746,
    got: () =>
      roadForce(dragged(1000, 600 / Math.cos(22.52 * degrees)), 74 * kmh, 0, 22.52 * degrees) * 74 * kmh,
    tolerance: { relative: 2e-3 },
    because: "the solution takes g = 9.80 m/s2 and prints the angle to four digits",
  },
  {
    claim: "110 hp push a 2500 lb car with 40 lb of resistance up a slope of sine 0.259 at 60 mph: 688 lb",
    source: "tutorial site, solved exercise on Newton's laws: 110 hp car on a hill",
    kind: "published",
    expected: 688,
    got: () => {
      const slope = Math.asin(0.259);
      const car = dragged(2500 * pound, (40 * pound * gravity) / Math.cos(slope));
      return roadForce(car, 60 * mph, 0, slope) / (pound * gravity);
    },
    tolerance: { absolute: 1.3 },
    because: "the sine is printed to three digits: 2500 lb times 0.0005",
  },
  {
    claim: "air resistance of 0.38 x 2.5 m2 at 90 km/h takes 8.164 kW",
    source: "chassis dynamometer operating manual, calculation basis, road load",
    kind: "published",
    expected: 8164,
    got: () => roadForce({ ...truck, rolling: 0, dragArea: 0.38 * 2.5, airDensity: 1.1 }, 25, 0, 0) * 25,
    tolerance: { absolute: 0.5 },
  },
  ...(
    [
      [30, 5],
      [40, 8],
      [100, 61],
      [150, 183],
    ] as const
  ).map(([speed, power]) => ({
    claim: `a family car that takes 25 hp at 70 mph, 32 % of it rolling, takes ${power} hp at ${speed} mph`,
    source: "motoring advice site, table of power at constant speed on the level",
    kind: "published" as const,
    expected: power,
    got: () => familyPower(speed),
    tolerance: { absolute: 0.5 + 0.02 * power },
    because: "printed to one horsepower; the row that sets the car is itself printed to 2 % (25 hp)",
  })),
  {
    claim: "each per cent of grade costs 10 kg for each tonne",
    source: "university lecture notes on construction equipment, CE 417, grade resistance",
    kind: "published",
    expected: 10,
    got: () =>
      (roadForce({ ...truck, mass: 1000 }, 0, 0, Math.atan(0.01)) -
        roadForce({ ...truck, mass: 1000 }, 0, 0, 0)) /
      gravity,
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "40 lb/ton of rolling resistance and 3 % of grade are 100 lb for each ton",
    source: "civil engineering reference, earth-moving formulas: T = (2 % + 1 % s) W",
    kind: "published",
    expected: 100,
    got: () => {
      const ton = dragged(2000 * pound, 40 * pound * gravity);
      return roadForce(ton, 3, 0, Math.atan(0.03)) / (pound * gravity);
    },
    tolerance: { relative: 1e-3 },
    because: "the source takes the sine of the slope as its tangent",
  },
  {
    claim: "a 376 t truck on 8 % with 2 % of rolling resistance is held back by 37.6 t",
    source: "mine planning handbook page, effective grade",
    kind: "published",
    expected: 37.6,
    got: () =>
      roadForce({ ...truck, mass: 376e3, rolling: 0.02, dragArea: 0 }, 3, 0, Math.atan(0.08)) /
      (1000 * gravity),
    tolerance: { relative: 0.01 },
    because: "the source itself says that its sum of per cents is about 1 % too high",
  },
  {
    claim: "the power to overcome drag and accelerate a 12 kN car at 0.92 m/s2 and 80 km/h is 69 hp",
    source: "Halliday, Resnick, Walker, Fundamentals of Physics, chapter 8, problem on F = 300 + 1.8 v^2",
    kind: "recalled",
    expected: 69,
    got: () => {
      const mass = 12e3 / 9.8;
      const car = { ...dragged(mass, 300), rotating: 1, dragArea: (2 * 1.8) / 1.2 };
      return (roadForce(car, 80 * kmh, 0.92, 0) * 80 * kmh) / hp;
    },
    tolerance: { absolute: 0.5 },
  },
  ...(
    [
      [50, 0, 358.7],
      [100, 0, 758.0],
      [60, 0.06, 1767.7],
      [100, 0.06, 2108.4],
    ] as const
  ).map(([speed, grade, force]) => ({
    claim: `the reference truck takes ${force} N at ${speed} km/h on ${grade * 100} %`,
    source: reference,
    kind: "computed" as const,
    expected: force,
    got: () => roadForce(truck, speed * kmh, 0, Math.atan(grade)),
    tolerance: { relative: 1e-3 },
  })),
  {
    claim: "the regression gives 784.1 N for 2300 kg at 100 km/h",
    source: "default road-load coefficients used with UN GTR 15, evaluated in NumPy 2.4",
    kind: "computed",
    expected: 784.1,
    got: () => regressionRoadLoad(2300, 100 * kmh),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "the regression meets the emission model's passenger car (A + Bv + Cv2 at 1478.8 kg) at 100 km/h",
    source: "US EPA MOVES road-load coefficients for passenger cars, as printed in two open implementations",
    kind: "published",
    expected: 156.461 + 2.001 * 100 * kmh + 0.492 * (100 * kmh) ** 2,
    got: () => regressionRoadLoad(1478.8, 100 * kmh),
    tolerance: { relative: 0.05 },
    because: "two fleets, a continent and some fifteen years apart",
  },
];

const engines: readonly Omit<Check, "link">[] = [
  ...(
    [
      [650, 293.8],
      [3075, 360.1],
      [4530, 360.6],
      [6470, 250.9],
    ] as const
  ).map(([speed, torque]) => ({
    claim: `a 200 kW petrol engine gives ${torque} N m at ${speed} rpm and full load`,
    source: normalised,
    kind: "computed" as const,
    expected: torque,
    got: () => fullTorque(engine, speed * rpm),
    tolerance: { relative: 1e-3 },
  })),
  {
    claim: "the textbook cubic peaks at 1.25 times its rated torque, at half speed",
    source: "Genta, Motor Vehicle Dynamics (1997); Jazar, Vehicle Dynamics (2008)",
    kind: "recalled",
    expected: 1.25,
    got: () => cubicFullTorque(1, 1, 0.5) / cubicFullTorque(1, 1, 1),
    tolerance: { absolute: 1e-12 },
  },
];

const converters: readonly Omit<Check, "link">[] = [
  {
    claim: "the turbine stops multiplying at a speed ratio of 0.8832",
    source: converterFit,
    kind: "computed",
    expected: 0.8832,
    got: () => couplingRatio,
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "torques become equal when the turbine turns at about 85 % of the impeller",
    source: "factory repair manual, front-drive car, 2007, description of the torque converter",
    kind: "published",
    expected: 0.85,
    got: () => couplingRatio,
    tolerance: { absolute: 0.04 },
    because: "printed as about 85 %, for another converter",
  },
  {
    claim: "the converter couples when the turbine reaches approximately 90 % of impeller speed",
    source: "state natural-resources department, energy text on lock-up converters, as quoted in a forum",
    kind: "published",
    expected: 0.9,
    got: () => couplingRatio,
    tolerance: { absolute: 0.02 },
    because: "printed as approximately 90 %",
  },
  {
    claim: "without lock-up a converter loses 2 to 7 % of the power to slip at cruise",
    source: "tuning workshop's page on converter selection",
    kind: "published",
    expected: 0.045,
    got: cruise,
    tolerance: { absolute: 0.025 },
    because: "the band itself",
  },
  {
    claim: "stall torque ratio 1.680",
    source: converterFit,
    kind: "computed",
    expected: 1.6797,
    got: () => torqueRatio(0),
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "torque ratio 1.2860 at a speed ratio of 0.6",
    source: converterFit,
    kind: "computed",
    expected: 1.286,
    got: () => torqueRatio(0.6),
    tolerance: { absolute: 5e-5 },
  },
  ...(
    [
      [0, 163.0],
      [0.9, 239.1],
      [0.98, 503.7],
    ] as const
  ).map(([ratio, k]) => ({
    claim: `K factor ${k} rpm per root N m at a speed ratio of ${ratio}`,
    source: converterFit,
    kind: "computed" as const,
    expected: k,
    got: () => kFactor({ scale: 1 }, ratio) / rpm,
    tolerance: { absolute: 0.06 },
  })),
  {
    claim: "in gear at 600 rpm and standing the engine pays 13.55 N m",
    source: converterFit,
    kind: "computed",
    expected: 13.55,
    got: () => impellerTorque({ scale: 1 }, 600 * rpm, 0),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "and the turbine creeps with 22.76 N m",
    source: converterFit,
    kind: "computed",
    expected: 22.76,
    got: () => turbineTorque({ scale: 1 }, 600 * rpm, 0),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "full-throttle stall with a converter of 1.8 is at 2296 rpm",
    source: "Kotwicki's fit against the normalised full-load curve, root found in SciPy 1.17",
    kind: "computed",
    expected: 2296,
    got: () => stall(1.8).speed / rpm,
    tolerance: { relative: 0.002 },
  },
  {
    claim: "and the turbine then carries 600 N m",
    source: "Kotwicki's fit against the normalised full-load curve, root found in SciPy 1.17",
    kind: "computed",
    expected: 600,
    got: () => stall(1.8).turbineTorque,
    tolerance: { relative: 0.002 },
  },
  ...(
    [
      ["factory repair manual, front-drive car with V6, 1999, stall test", 2400],
      ["factory repair manual, small four-wheel-drive car, 2002 to 2005, stall test", 2320],
    ] as const
  ).map(([source, specified]) => ({
    claim: `stall speed is ${specified} rpm within the manual's service limits`,
    source,
    kind: "published" as const,
    expected: specified,
    got: () => stall(1.8).speed / rpm,
    tolerance: { absolute: 150 },
    because: "service limits of the test; the engine and converter are this project's own",
  })),
];

const gears: readonly Omit<Check, "link">[] = [
  {
    claim: "ring held, sun in: 3.4",
    source: encyclopedia,
    kind: "published",
    expected: 3.4,
    got: () => ringHeldRatio({ sun: 30, ring: 72 }),
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "sun held, carrier in: 0.71",
    source: encyclopedia,
    kind: "published",
    expected: 0.71,
    got: () => overdriveRatio({ sun: 30, ring: 72 }),
    tolerance: { absolute: 0.005 },
  },
  {
    claim: "carrier held, sun in: -2.4",
    source: encyclopedia,
    kind: "published",
    expected: -2.4,
    got: () => reverseRatio({ sun: 30, ring: 72 }),
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "first from the sun: 2.7",
    source: bulletin,
    kind: "published",
    expected: 2.7,
    got: () => ringHeldRatio({ sun: 20, ring: 34 }),
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "second from the ring: 1.58",
    source: bulletin,
    kind: "published",
    expected: 1.58,
    got: () => sunHeldRatio({ sun: 20, ring: 34 }),
    tolerance: { absolute: 0.01 },
    because: "printed cut off, not rounded: 1.588",
  },
  {
    claim: "overdrive from the carrier: 0.63",
    source: bulletin,
    kind: "published",
    expected: 0.63,
    got: () => overdriveRatio({ sun: 20, ring: 34 }),
    tolerance: { absolute: 0.005 },
  },
  {
    claim: "with a 72-tooth ring held and the arm at 18 rpm a 32-tooth sun turns at 58.5 rpm",
    source: "worked examples on epicyclic gears, university course notes, problem 1",
    kind: "published",
    expected: 58.5,
    got: () => 18 * ringHeldRatio({ sun: 32, ring: 72 }),
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "and its planets have 20 teeth",
    source: "worked examples on epicyclic gears, university course notes, problem 1",
    kind: "published",
    expected: 20,
    got: () => planetTeeth({ sun: 32, ring: 72 }),
    tolerance: { absolute: 0 },
  },
  {
    claim: "sun 20 at 60 rpm, ring 100 held: the arm turns at 10 rpm",
    source: "question bank on farm machinery power transmission, epicyclic train",
    kind: "published",
    expected: 10,
    got: () => 60 / ringHeldRatio({ sun: 20, ring: 100 }),
    tolerance: { absolute: 1e-9 },
  },
  {
    claim: "sun 23 fixed, arm at 100 rpm: a 55-tooth ring turns at 141.8 rpm",
    source: "engineering homework site, planetary speed reducer with fixed sun",
    kind: "published",
    expected: 141.8,
    got: () => 100 / overdriveRatio({ sun: 23, ring: 55 }),
    tolerance: { absolute: 0.05 },
  },
  {
    claim: "a hub with sun 20 and ring 60 turns its ring 1.33 times for one turn of the carrier",
    source: "bicycle site, principle of the three-speed hub",
    kind: "published",
    expected: 1.33,
    got: () => 1 / overdriveRatio({ sun: 20, ring: 60 }),
    tolerance: { absolute: 0.005 },
  },
  {
    claim: "sun 12, ring 24: 1.5 with the sun held",
    source: "model-vehicle forum, how to find a planetary ratio",
    kind: "published",
    expected: 1.5,
    got: () => sunHeldRatio({ sun: 12, ring: 24 }),
    tolerance: { absolute: 1e-9 },
  },
];

export const checks: readonly Check[] = [...road, ...engines, ...converters, ...gears].map((check) => ({
  ...check,
  link: "load",
}));
