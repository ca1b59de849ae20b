// The heat link against worked problems that others have printed.
import {
  fallingFluxRise,
  peakInterfaceRise,
  semiInfiniteRise,
  surfaceStepRise,
} from "../../src/physics/heat/conduction.ts";
import { slabConvection, slabRoot, slabWeight } from "../../src/physics/heat/convection.ts";
import {
  coolerTakes,
  crossEffectiveness,
  crossEffectivenessShort,
  crossLargerMixed,
  effectiveness,
  parallelEffectiveness,
  transferUnits,
} from "../../src/physics/heat/cooler.ts";
import { ierfc } from "../../src/physics/heat/error-function.ts";
import { movingBandRise } from "../../src/physics/heat/flash.ts";
import { interfaceRise } from "../../src/physics/heat/interface.ts";
import { flowCarries, grooveCoefficient } from "../../src/physics/heat/lubrication.ts";
import { plateAfter, timeToReach } from "../../src/physics/heat/plate.ts";
import { slabRise } from "../../src/physics/heat/slab.ts";
import { separatorSteel, solid } from "../../src/physics/heat/solid.ts";
import type { Check } from "./check.ts";

const kelvin = 273.15;
const ownReference = "closed form, evaluated separately in Python 3";
const incropera = (place: string) =>
  `Incropera and others, Fundamentals of Heat and Mass Transfer, ${place}, in a published companion`;
const ht = "Bell, documentation of the library ht, effectiveness_from_NTU";
const gill = (place: string) => `Gill, user guide of the library pychemengg, ${place}`;

const holmanSteel = { conductivity: 45, diffusivity: 1.4e-5 };
const soil = solid(0.52, 2050, 1840);
const throughIron = { conductivity: 60, diffusivity: 1.6e-5 };
const steelFo = (fourier: number) => (fourier * 0.0009 ** 2) / separatorSteel.diffusivity;

// Incropera 11.1: coefficients inside and outside the oil cooler's inner tube, from the numbers that the example prints.
const water = (0.023 * 14049.54 ** 0.8 * 4.85 ** 0.4 * 0.625) / 0.025;
const oil = grooveCoefficient(5.63, 0.138, 0.02);
const oilCooler = (Math.PI * 0.025 * 65.71) / (1 / water + 1 / oil);

export const checks: readonly Check[] = [
  {
    claim: "steel at 25 mm under 3.2e5 W/m² for 30 s",
    link: "heat",
    source:
      "Holman, Heat Transfer, 5th ed., 1981, example 4.2, as printed in a finite-element verification guide",
    kind: "published",
    expected: 79.3,
    got: () => 35 + semiInfiniteRise(holmanSteel, 3.2e5, 30, 0.025),
    tolerance: { absolute: 0.05 },
  },
  {
    claim: "aluminium plate of 50 mm, 12.5 mm deep, after a minute of cooling",
    link: "heat",
    source:
      "Holman, Heat Transfer, 5th ed., 1981, example 4.5, as printed in a finite-element verification guide",
    kind: "published",
    expected: 147.7,
    got: () => 70 + 130 * slabConvection((525 * 0.025) / 215, (60 * 215) / (2700 * 900) / 0.025 ** 2, 0.5),
    tolerance: { absolute: 1 },
    because: "the book reads two charts; the guide's own computation gives 145.2",
  },
  {
    claim: "oil and steam in cross flow, steam mixed: effectiveness",
    link: "heat",
    source: "Holman, Heat Transfer, 10th ed., 2009, example 10-9, as printed in the documentation of ht",
    kind: "published",
    expected: 0.831218036142,
    got: () => crossLargerMixed(transferUnits(275 * 10.82, 1377.5), 1377.5 / 9672),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "heat of that exchanger",
    link: "heat",
    source: "Holman, Heat Transfer, 10th ed., 2009, example 10-9, as printed in the documentation of ht",
    kind: "published",
    expected: 131675.3271504,
    got: () => crossLargerMixed(transferUnits(275 * 10.82, 1377.5), 1377.5 / 9672) * 1377.5 * (130 - 15),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "effectiveness side by side at five units",
    link: "heat",
    source: ht,
    kind: "published",
    expected: 0.5881156068417585,
    got: () => parallelEffectiveness(5, 0.7),
    tolerance: { relative: 1e-12 },
  },
  {
    claim: "effectiveness in counterflow at five units",
    link: "heat",
    source: ht,
    kind: "published",
    expected: 0.920670368605,
    got: () => effectiveness(5, 0.7),
    tolerance: { relative: 1e-11 },
  },
  {
    claim: "effectiveness in cross flow, neither mixed, at five units",
    link: "heat",
    source: ht,
    kind: "published",
    expected: 0.84448217997,
    got: () => crossEffectiveness(5, 0.7),
    tolerance: { relative: 2e-11 },
  },
  {
    claim: "time of a thermocouple bead from 25 to 199 °C in gas of 200 °C",
    link: "heat",
    source: incropera("example 5.1"),
    kind: "published",
    expected: 5.16,
    got: () => timeToReach(298, 472, { settles: 473, timeConstant: 1 }) ?? NaN,
    tolerance: { absolute: 0.01 },
  },
  {
    claim: "outer surface of a pipe wall after 8 min of hot oil inside",
    link: "heat",
    source: incropera("example 5.4"),
    kind: "published",
    expected: 42.92,
    got: () => 60 - 80 * slabConvection((500 * 0.04) / 63.9, (18.8e-6 * 480) / 0.04 ** 2, 0),
    tolerance: { absolute: 0.15 },
    because: "the book takes its two constants to three digits from a table",
  },
  {
    claim: "heat flux into that wall then",
    link: "heat",
    source: incropera("example 5.4"),
    kind: "published",
    expected: -7362.49,
    got: () => -80 * 500 * slabConvection((500 * 0.04) / 63.9, (18.8e-6 * 480) / 0.04 ** 2, 1),
    tolerance: { relative: 0.007 },
    because: "the book takes its two constants to three digits from a table",
  },
  {
    claim: "time in air of a ceramic ball from 400 to 335 °C",
    link: "heat",
    source: incropera("example 5.5"),
    kind: "published",
    expected: 93.7,
    got: () => timeToReach(673, 608, { settles: 293, timeConstant: (3000 * 0.005 * 1000) / (3 * 10) }) ?? NaN,
    tolerance: { relative: 0.003 },
    because: "the companion takes ln 10 as 2.30",
  },
  {
    claim: "engine oil leaves a cooler of 65.7 m of tube at 60 °C",
    link: "heat",
    source: incropera("example 11.1"),
    kind: "published",
    expected: 60,
    got: () => 100 - (coolerTakes(213.1, 835.6, oilCooler) * (100 - 30)) / 213.1,
    tolerance: { absolute: 0.1 },
    because: "the length is printed to four digits, and found with ln 10 as 2.30",
  },
  {
    claim: "exhaust gas and water in cross flow: effectiveness for the 2.1 units read from the chart",
    link: "heat",
    source: incropera("example 11.3"),
    kind: "published",
    expected: 200 / 265,
    got: () => crossEffectiveness(2.1, (4197 * 90) / 200 / 4197),
    tolerance: { relative: 0.01 },
    because: "the units are read from a chart",
  },
  {
    claim: "the same exchanger at another flow: effectiveness read from the chart",
    link: "heat",
    source: incropera("example 11.4"),
    kind: "published",
    expected: 0.82,
    got: () => crossEffectiveness(transferUnits(4000, 1500), 1500 / 4197),
    tolerance: { absolute: 0.02 },
    because: "read from a chart",
  },
  {
    claim: "plates of 10 mm after two minutes in an oven of 800 °C",
    link: "heat",
    source: gill("transient example 1"),
    kind: "published",
    expected: 689,
    got: () => plateAfter(20 + kelvin, 800 + kelvin, 0, 2800 * 880 * 0.01, 2 * 200, 120) - kelvin,
    tolerance: { absolute: 0.5 },
  },
  {
    claim: "time for a copper rod from 100 to 25 °C",
    link: "heat",
    source: gill("transient example 2"),
    kind: "published",
    expected: 238,
    got: () => timeToReach(100, 25, { settles: 20, timeConstant: (8933 * 385 * 0.02) / (4 * 200) }) ?? NaN,
    tolerance: { absolute: 0.5 },
    because: "the text says 20 °C, its own solution 25 °C",
  },
  {
    claim: "heat of a double pipe with both streams side by side",
    link: "heat",
    source: gill("heat-exchanger example 2"),
    kind: "published",
    expected: 8.719e4,
    got: () => parallelEffectiveness(transferUnits(205 * 13, 2371.5), 2371.5 / 3135) * 2371.5 * 75,
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "hot fluid leaves a counterflow exchanger of 8.5 m² at 65 °C",
    link: "heat",
    source: gill("heat-exchanger example 1"),
    kind: "published",
    expected: 65,
    got: () => {
      const hot = 630 * 2.09;
      const coldIn = 149 - (hot * (193 - 65)) / 1670;
      return 193 - (coolerTakes(hot, 1670, 700 * 8.5) * (193 - coldIn)) / hot;
    },
    tolerance: { absolute: 1 },
    because: "the area is printed to two digits",
  },
  {
    claim: "heat that air gives up in a water-cooled cross-flow exchanger",
    link: "heat",
    source: "Som, Introduction to Heat Transfer, chapter 10, example 7",
    kind: "published",
    expected: 1e6,
    got: () => crossEffectivenessShort(transferUnits(220 * 250, 10100), 10100 / 29260) * 10100 * 105,
    tolerance: { relative: 0.015 },
    because: "the book goes on with 1 MW, rounded",
  },
  {
    claim: "wrought iron 80 mm deep, 550 °C with its surface put at 50 °C, after 11.54 min",
    link: "heat",
    source: "Som, Introduction to Heat Transfer, chapter 4, example 11",
    kind: "published",
    expected: 255,
    got: () => 550 + surfaceStepRise(throughIron, -500, (10 / 0.38) ** 2, 0.08),
    tolerance: { absolute: 1 },
    because: "the book reads the argument 0.38 from a table",
  },
  {
    claim: "first root for a brass plate in an oven, Bi 0.0109",
    link: "heat",
    source: "Çengel, Heat Transfer, instructor's solutions, problem 4-36",
    kind: "published",
    expected: 0.1039,
    got: () => slabRoot(0.0109, 0),
    tolerance: { relative: 0.004 },
    because: "interpolated along a straight line in a table whose root goes with the square root",
  },
  {
    claim: "weight of that root",
    link: "heat",
    source: "Çengel, Heat Transfer, instructor's solutions, problem 4-36",
    kind: "published",
    expected: 1.0018,
    got: () => slabWeight(slabRoot(0.0109, 0)),
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "surface of thick wood under 1250 W/m² after 20 min",
    link: "heat",
    source: "Çengel, Heat and Mass Transfer, problem on solids under equal flux",
    kind: "recalled",
    expected: 149,
    got: () => 20 + semiInfiniteRise({ conductivity: 1.26, diffusivity: 1.1e-5 }, 1250, 1200, 0),
    tolerance: { absolute: 0.5 },
  },
  {
    claim: "depth of soil that is just at 0 °C after 60 days of frost at −15 °C",
    link: "heat",
    source: "Incropera and others, Fundamentals of Heat and Mass Transfer, example 5.6",
    kind: "recalled",
    expected: 0,
    got: () => 20 + surfaceStepRise(soil, -35, 60 * 86400, 0.68),
    tolerance: { absolute: 0.2 },
    because: "the book prints 0.68 m; the companion's 0.92 m uses the wrong inverse",
  },
  {
    claim: "integral of the complementary error function at 0.5",
    link: "heat",
    source: "Carslaw and Jaeger, Conduction of Heat in Solids, appendix II",
    kind: "recalled",
    expected: 0.1996,
    got: () => ierfc(0.5),
    tolerance: { absolute: 5e-5 },
  },
  {
    claim: "largest rise of a shift of 0.5 J/mm², 0.5 s long",
    link: "heat",
    source: `${ownReference}, confirmed by Duhamel quadrature`,
    kind: "computed",
    expected: 57.1386,
    got: () => peakInterfaceRise(separatorSteel, 2e6, 0.5),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "rise at the end of that shift",
    link: "heat",
    source: `${ownReference}, confirmed by Duhamel quadrature`,
    kind: "computed",
    expected: 40.4031,
    got: () => fallingFluxRise(separatorSteel, 2e6, 0.5, 0.5),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "surface of a 1.8 mm steel plate after 0.5 s of 1 MW/m² on each face",
    link: "heat",
    source: "closed form of 400 terms, confirmed by finite differences",
    kind: "computed",
    expected: 153.962,
    got: () => slabRise(separatorSteel, { thickness: 0.0018, flux: 1e6 }, 0.5, 0.0009),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "its surface less its mean at Fo 0.1",
    link: "heat",
    source: "closed form of 400 terms in Python 3",
    kind: "computed",
    expected: 0.356826 - 0.1,
    got: () => (interfaceRise(1e6, steelFo(0.1), 0.0018) * 46) / (1e6 * 0.0009),
    tolerance: { absolute: 1e-5 },
  },
  {
    claim: "plate in oil of 100 °C after 10 s of 0.1 W/mm² per face",
    link: "heat",
    source: ownReference,
    kind: "computed",
    expected: 254.217,
    got: () => plateAfter(373.15, 373.15, 2e5, 7850 * 480 * 0.0018, 1000, 10) - kelvin,
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "oil of 2 L/min carries off by warming 50 K",
    link: "heat",
    source: ownReference,
    kind: "computed",
    expected: 2905,
    got: () => flowCarries(2e-3 / 60, 830 * 2100, 50),
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "flash rise under a band of 0.1 mm at 10 m/s",
    link: "heat",
    source: ownReference,
    kind: "computed",
    expected: 271.032,
    got: () => movingBandRise(separatorSteel, 1e9, { length: 1e-4, speed: 10 }),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "a transmission fluid cooler of 200 W/K at 8 and 25 L/min passes",
    link: "heat",
    source: `assumed cooler; ${ownReference}`,
    kind: "assumed",
    expected: 3945.5,
    got: () => coolerTakes(240.5333, 1560, 200) * 30,
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "a sump of 46.8 kJ/K without a cooler reaches 80 °C",
    link: "heat",
    source: `assumed sump; ${ownReference}`,
    kind: "assumed",
    expected: 1392.4,
    got: () => timeToReach(20, 80, { settles: 20 + 2500 / 15, timeConstant: 46800 / 15 }) ?? NaN,
    tolerance: { relative: 1e-4 },
  },
];
