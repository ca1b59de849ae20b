// Laws of many links at further points: tables of the books, and values that independent programs printed.
import { frictionTorque } from "../../src/physics/clutch/capacity.ts";
import { centrifugalForce, centrifugalPressure } from "../../src/physics/clutch/centrifugal.ts";
import { orificeFlow } from "../../src/physics/clutch/fill.ts";
import { meanRadiusPressure, meanRadiusWear, wearForce } from "../../src/physics/clutch/geometry.ts";
import { iecAgeing } from "../../src/physics/damage/insulation.ts";
import { hollomonJaffe } from "../../src/physics/damage/tempering.ts";
import { volumeCorrection } from "../../src/physics/fluid/density.ts";
import { pressureCoefficient } from "../../src/physics/fluid/pressure.ts";
import { specificHeat, thermalConductivity } from "../../src/physics/fluid/specific-heat.ts";
import { apiSurfaceTension } from "../../src/physics/fluid/surface-tension.ts";
import { referenceOils, viscosityIndex } from "../../src/physics/fluid/viscosity-index.ts";
import { waltherInverse, waltherZ } from "../../src/physics/fluid/viscosity.ts";
import { slabConvection, slabRoot, slabWeight } from "../../src/physics/heat/convection.ts";
import { stillSpotMean, stillSpotPeak } from "../../src/physics/heat/flash.ts";
import { grooveCoefficient } from "../../src/physics/heat/lubrication.ts";
import { dropVolume } from "../../src/physics/leak/drop.ts";
import { torricelliTime } from "../../src/physics/leak/drain-down.ts";
import { runningTime } from "../../src/physics/leak/power-growth.ts";
import { jettingWeber } from "../../src/physics/leak/regime.ts";
import type { Check, Kind, Link } from "./check.ts";

const celsius = (t: number) => t + 273.15;
const own = (law: string) => `${law}, evaluated by an independent program from printed inputs`;
const steel = { conductivity: 46, density: 7850, specificHeat: 480, diffusivity: 46 / (7850 * 480) };

function row(
  link: Link,
  kind: Kind,
  source: string,
  claim: string,
  expected: number,
  relative: number,
  got: () => number,
): Check {
  return { link, kind, source, claim, expected, tolerance: { relative }, got };
}

// The book prints these to five digits: half a unit of the last.
const heisler = "Incropera and others, Fundamentals of Heat and Mass Transfer, table 5.1";
const roots: readonly (readonly [number, number, number])[] = [
  [0.1, 0.3111, 1.0161],
  [1, 0.8603, 1.1191],
  [10, 1.4289, 1.262],
];
const slab = own("one-dimensional conduction in a slab cooled on both faces, 60 terms");
const d2270 = own("ASTM D2270, its polynomials");
const iec = "IEC 60076-7, relative ageing";

export const checks: readonly Check[] = [
  ...roots.flatMap(([biot, root, weight]) => [
    row("heat", "recalled", heisler, `first root of a slab at Biot ${biot}`, root, 2e-4, () =>
      slabRoot(biot, 0),
    ),
    row("heat", "recalled", heisler, `first weight of a slab at Biot ${biot}`, weight, 1e-4, () =>
      slabWeight(slabRoot(biot, 0)),
    ),
  ]),
  row("heat", "computed", slab, "middle of a slab, Biot 1, Fourier 1", 0.533859, 1e-4, () =>
    slabConvection(1, 1, 0),
  ),
  row("heat", "computed", slab, "face of a slab, Biot 1, Fourier 1", 0.348177, 1e-4, () =>
    slabConvection(1, 1, 1),
  ),
  row("heat", "computed", slab, "face of a slab, Biot 1, Fourier 0.1", 0.723577, 1e-4, () =>
    slabConvection(1, 0.1, 1),
  ),
  row("heat", "computed", slab, "face of a slab, Biot 10, Fourier 0.5", 0.064329, 1e-4, () =>
    slabConvection(10, 0.5, 1),
  ),
  row(
    "heat",
    "computed",
    own("Carslaw and Jaeger (1959), round spot"),
    "hottest point of a still spot of 20 µm at 100 MW/m²",
    43.478,
    1e-4,
    () => stillSpotPeak(steel, 1e8, 20e-6),
  ),
  row("heat", "computed", own("Carslaw and Jaeger (1959), round spot"), "its mean", 36.905, 1e-4, () =>
    stillSpotMean(steel, 1e8, 20e-6),
  ),
  row(
    "heat",
    "computed",
    own("laminar flow in a groove, Nusselt 3.66"),
    "film of oil in a groove of 1 mm",
    475.8,
    1e-4,
    () => grooveCoefficient(3.66, 0.13, 1e-3),
  ),
  row(
    "heat",
    "computed",
    own("laminar flow between plates, Nusselt 7.54"),
    "film of oil in a flat groove of 1 mm",
    980.2,
    1e-4,
    () => grooveCoefficient(7.54, 0.13, 1e-3),
  ),
  row("damage", "recalled", iec, "paper at 92 °C ages at half the rate", 0.5, 1e-9, () =>
    iecAgeing(celsius(92)),
  ),
  row("damage", "recalled", iec, "at 110 °C at four times", 4, 1e-9, () => iecAgeing(celsius(110))),
  row("damage", "recalled", iec, "at 140 °C at 128 times", 128, 1e-9, () => iecAgeing(celsius(140))),
  row("damage", "computed", own("Hollomon and Jaffe (1945)"), "an hour at 200 °C", 9463, 1e-4, () =>
    hollomonJaffe(celsius(200), 3600),
  ),
  row("damage", "computed", own("Hollomon and Jaffe (1945)"), "an hour at 600 °C", 17_463, 1e-4, () =>
    hollomonJaffe(celsius(600), 3600),
  ),
  row(
    "clutch",
    "computed",
    own("rings under even pressure"),
    "effective radius for a bore of half the outer diameter",
    0.777778,
    1e-6,
    () => meanRadiusPressure({ outer: 1, inner: 0.5 }),
  ),
  row(
    "clutch",
    "computed",
    own("rings under even pressure"),
    "effective radius for a bore of nine tenths",
    0.950877,
    1e-6,
    () => meanRadiusPressure({ outer: 1, inner: 0.9 }),
  ),
  row(
    "clutch",
    "recalled",
    "Shigley, Mechanical Engineering Design, ch. 16, in its metric form",
    "force for 0.7 MPa at the inner edge of 165 by 100 mm, worn in",
    7147.12,
    1e-5,
    () => wearForce({ outer: 0.0825, inner: 0.05 }, 0.7e6),
  ),
  row(
    "clutch",
    "recalled",
    "Shigley, Mechanical Engineering Design, ch. 16, in its metric form",
    "torque of six such faces at 0.24",
    681.836,
    1e-5,
    () =>
      frictionTorque(wearForce({ outer: 0.0825, inner: 0.05 }, 0.7e6), 0.24, {
        faces: 6,
        radius: meanRadiusWear({ outer: 0.0825, inner: 0.05 }),
      }),
  ),
  row(
    "clutch",
    "computed",
    own("hydrostatics in a turning frame"),
    "oil from 40 to 80 mm at 300 rad/s",
    183_600,
    1e-9,
    () => centrifugalPressure({ outer: 0.08, inner: 0.04, free: 0.04 }, 850, 300),
  ),
  row(
    "clutch",
    "computed",
    own("hydrostatics in a turning frame"),
    "its force on the piston",
    1384.311,
    1e-6,
    () => centrifugalForce({ outer: 0.08, inner: 0.04, free: 0.04 }, 850, 300),
  ),
  row("clutch", "computed", own("a sharp orifice"), "fill through 2.5 mm at 3 bar", 8.18273e-5, 1e-5, () =>
    orificeFlow({ fillOrifice: 2.5e-3, fillDischarge: 0.62 }, 3e5, 830),
  ),
  row(
    "fluid",
    "computed",
    own("API MPMS 11.1 (1980), table 54D"),
    "oil of 860 kg/m³ shrinks in the cold, −20 °C",
    1.025344,
    1e-6,
    () => volumeCorrection(860, celsius(-20)),
  ),
  row(
    "fluid",
    "computed",
    own("API MPMS 11.1 (1980), table 54D"),
    "oil of 845 kg/m³ swells to 80 °C",
    0.951079,
    1e-6,
    () => volumeCorrection(845, celsius(80)),
  ),
  row("fluid", "computed", own("ASTM D341, three-term form"), "Z of 1 mm²/s", 1.721928, 1e-6, () =>
    waltherZ(1),
  ),
  row(
    "fluid",
    "computed",
    own("ASTM D341, three-term form"),
    "and back, by the standard's own short inverse",
    0.999949,
    1e-6,
    () => waltherInverse(waltherZ(1)),
  ),
  row("fluid", "computed", own("ASTM D341, three-term form"), "Z of 2 mm²/s", 2.700754, 1e-6, () =>
    waltherZ(2),
  ),
  row("fluid", "computed", d2270, "index of an oil of 32 and 5.4 mm²/s", 102.21, 1e-3, () =>
    viscosityIndex(32, 5.4),
  ),
  {
    link: "fluid",
    kind: "recalled",
    source: "ASTM D2270, example B, second oil",
    claim: "index of an oil of 53.47 and 7.80 mm²/s",
    expected: 111,
    tolerance: { absolute: 0.5 },
    got: () => viscosityIndex(53.47, 7.8),
    because: "the standard reports whole numbers",
  },
  row(
    "fluid",
    "recalled",
    "ASTM D2270, table 1",
    "H of an oil of 7.80 mm²/s at 100 °C",
    57.31,
    2e-4,
    () => referenceOils(7.8).hundred,
  ),
  row(
    "fluid",
    "computed",
    own("Gold and others (2001), mineral oil"),
    "pressure coefficient of an oil of 32 mm²/s",
    16.03e-9,
    1e-3,
    () => pressureCoefficient(32e-6),
  ),
  row("fluid", "computed", own("Cragoe (1929)"), "heat capacity of oil of 0.86 at 150 °C", 2365.3, 1e-4, () =>
    specificHeat(0.86 * 999, celsius(150)),
  ),
  row("fluid", "computed", own("Cragoe (1929)"), "conductivity of oil of 0.86 at 150 °C", 0.12524, 1e-4, () =>
    thermalConductivity(0.86 * 999, celsius(150)),
  ),
  row("fluid", "computed", own("Cragoe (1929)"), "heat capacity of oil of 0.85 at 80 °C", 2121.8, 1e-4, () =>
    specificHeat(0.85 * 999, celsius(80)),
  ),
  row(
    "fluid",
    "computed",
    own("API procedure 10A3.2"),
    "surface tension at 90 °C of a cut of 850 K and 12",
    28.256e-3,
    1e-4,
    () => apiSurfaceTension(363.15, 850, 12),
  ),
  {
    link: "regime",
    kind: "computed",
    source: own("Tate with the table of Harkins and Brown"),
    claim: "a drop of oil from a tip of 4 mm radius",
    expected: 56.45e-9,
    tolerance: { relative: 0.013 },
    got: () => dropVolume(4e-3, 0.03, 840),
    because: "fit and table of the factor agree within 1.3 %",
  },
  row(
    "regime",
    "computed",
    own("Clanet and Lasheras (1999)"),
    "Weber number at which oil jets from 5 mm",
    0.21555,
    1e-4,
    () => jettingWeber(840, 0.03, 5e-3, 5e-3),
  ),
  row(
    "leak path",
    "computed",
    own("Torricelli with a discharge coefficient"),
    "a pan of 0.06 m² empties 80 mm through 1 mm",
    15_996.7,
    1e-5,
    () => torricelliTime(0.06, (Math.PI / 4) * 1e-6, 0.61, 0.08, 0),
  ),
  row(
    "growth",
    "computed",
    own("a steady leak"),
    "two litres at 206.62 mL/h are 9.68 hours",
    9.68 * 3600,
    1e-4,
    () => runningTime(2e-3, 206.62e-6 / 3600, 0),
  ),
];
