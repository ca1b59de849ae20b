// The fluid link against data sheets, standards and tables that others have printed.
import { aeratedViscosity, bulkModulus, gasFractionAt, soundSpeed } from "../../src/physics/fluid/aerated.ts";
import { fluidAgeingRate } from "../../src/physics/fluid/ageing.ts";
import { density, volumeCorrection } from "../../src/physics/fluid/density.ts";
import { dynamicViscosity } from "../../src/physics/fluid/fluid.ts";
import { barus, pressureCoefficient, roelands } from "../../src/physics/fluid/pressure.ts";
import { dissolvedVolume, dissolvingPressure, excessFraction } from "../../src/physics/fluid/solubility.ts";
import { specificHeat, thermalConductivity } from "../../src/physics/fluid/specific-heat.ts";
import { apiSurfaceTension, surfaceTension } from "../../src/physics/fluid/surface-tension.ts";
import {
  kinematicViscosity,
  viscosityLine,
  waltherInverse,
  waltherZ,
} from "../../src/physics/fluid/viscosity.ts";
import { referenceOils, viscosityIndex } from "../../src/physics/fluid/viscosity-index.ts";
import type { Check } from "./check.ts";
import { cell, overAll, tableOf } from "./table.ts";

const celsius = (t: number) => t + 273.15;
const fahrenheit = (t: number) => (t + 459.67) / 1.8;
const link = "fluid" as const;

/** Kinematic viscosity [mm²/s] at t [°C] on the line through points (°C, mm²/s). */
const onLine = (t: number, ...points: readonly (readonly [number, number])[]) =>
  kinematicViscosity(
    viscosityLine(points.map(([at, nu]) => ({ temperature: celsius(at), kinematic: nu * 1e-6 }))),
    celsius(t),
  ) * 1e6;

const engineOil = tableOf("engine-oil-unused/table.csv");
const engineOilSource =
  "Incropera and others, Fundamentals of Heat and Mass Transfer, table A.5, engine oil (unused), read in an open program of 2019";
const engineOilAt = (T: number, column: string) => cell(engineOil, "temperature_K", T, column);
const engineOilLine = viscosityLine(
  [300, 400].map((T) => ({
    temperature: T,
    kinematic: engineOilAt(T, "kinematic_viscosity_mm2_s") * 1e-6,
  })),
);
const engineOil15 = 891.0; // kg/m³, the table's own density at 288.15 K
const oneLine = "the simple D341 form holds to a few percent over 130 K on an oil without polymer";

const pao = tableOf("pao-coolant/density.csv");
const paoSource =
  "A. K. Sleiti, J. Synthetic Lubrication 24 (2007) 77-90, polyalphaolefin, read in an open fluid library";
const pao15 = 794.1;
const paoConductivity = tableOf("pao-coolant/conductivity.csv");

const life = tableOf("fluid-life-table/table.csv");

const tribology = "Stachowiak and Batchelor, Engineering Tribology, table 2.3";
const oneDensity = "dynamic viscosities, taken at one density, as the table gives none";
const d2270 = "ASTM D2270, table of L and H, read in an open library of chemical engineering";
const sampleOil = {
  viscosity: viscosityLine([
    { temperature: celsius(40), kinematic: 35e-6 },
    { temperature: celsius(100), kinematic: 7.3e-6 },
  ]),
  density15: 860,
  shearLoss: 0.15,
};

export const checks: readonly Check[] = [
  // Viscosity against temperature
  {
    claim: "a VG 32 oil of 32 and 5.4 mm²/s has 8.5 mm²/s at 80 degC",
    link,
    source: "spreadsheet on ASTM D341, viscosity against temperature, document-sharing copy",
    kind: "published",
    expected: 8.5,
    got: () => onLine(80, [40, 32], [100, 5.4]),
    tolerance: { absolute: 0.05 },
  },
  {
    claim: "medicinal white oil, 107 and 6.4 mPa·s at 30 and 100 degC, has 23.3 at 60 degC",
    link,
    source: tribology,
    kind: "published",
    expected: 23.3,
    got: () => onLine(60, [30, 107], [100, 6.4]),
    tolerance: { relative: 0.04 },
    because: oneDensity,
  },
  {
    claim: "heavy machine oil, 171 and 7.5 mPa·s at 30 and 100 degC, has 31 at 60 degC",
    link,
    source: tribology,
    kind: "published",
    expected: 31,
    got: () => onLine(60, [30, 171], [100, 7.5]),
    tolerance: { relative: 0.04 },
    because: oneDensity,
  },
  {
    claim: "another heavy machine oil, 122 and 7.3 mPa·s at 30 and 100 degC, has 26.3 at 60 degC",
    link,
    source: tribology,
    kind: "published",
    expected: 26.3,
    got: () => onLine(60, [30, 122], [100, 7.3]),
    tolerance: { relative: 0.04 },
    because: oneDensity,
  },
  {
    claim: "engine oil known at 300 and 400 K has 41.7 mm²/s at 350 K",
    link,
    source: engineOilSource,
    kind: "published",
    expected: engineOilAt(350, "kinematic_viscosity_mm2_s"),
    got: () => kinematicViscosity(engineOilLine, 350) * 1e6,
    tolerance: { relative: 0.04 },
    because: oneLine,
  },
  {
    claim: "and 5.83 mm²/s at 430 K, 30 K beyond the points",
    link,
    source: engineOilSource,
    kind: "published",
    expected: engineOilAt(430, "kinematic_viscosity_mm2_s"),
    got: () => kinematicViscosity(engineOilLine, 430) * 1e6,
    tolerance: { relative: 0.04 },
    because: oneLine,
  },
  {
    claim: "a crude oil of 24.36 and 5.42 mm²/s at 15 and 65 degC has 10.89 at 37 degC",
    link,
    source: "fluid table of an open piping-system library, crude of 32.6 degrees API",
    kind: "published",
    expected: 10.888,
    got: () => onLine(37, [15, 24.362], [65, 5.422]),
    tolerance: { relative: 0.03 },
    because: "temperatures of the table are whole degrees Celsius, rounded from Fahrenheit: 1 to 2 % each",
  },
  {
    claim: "a conventional fluid of 35.0 and 7.3 mm²/s has 233 mm²/s at 0 degC by its warm line",
    link,
    source: "an independent program in Python evaluating ASTM D341, simple form",
    kind: "computed",
    expected: 233.15,
    got: () => onLine(0, [40, 35], [100, 7.3]),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "three-term Z of 0.30 mm²/s",
    link,
    source: "an independent program in Python evaluating ASTM D341, three-term form",
    kind: "computed",
    expected: 1.126451,
    got: () => waltherZ(0.3),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "and back again, by the standard's approximate inverse",
    link,
    source: "an independent program in Python evaluating ASTM D341, three-term form",
    kind: "computed",
    expected: 0.299929,
    got: () => waltherInverse(1.126451),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "dynamic viscosity is kinematic times density: 35.0 mm²/s at 40 degC, 860 kg/m³ at 15 degC",
    link,
    source: "an independent program in Python: 35.0e-6 × 860 × 0.981654 (D341 and D1250)",
    kind: "computed",
    expected: 0.0295478,
    got: () => dynamicViscosity(sampleOil, celsius(40), 0),
    tolerance: { relative: 1e-5 },
  },

  // Viscosity index
  {
    claim: "22.83 and 5.05 mm²/s are index 156, the standard's own example",
    link,
    source: "ASTM D2270, example of procedure B",
    kind: "published",
    expected: 156.37,
    got: () => viscosityIndex(22.83, 5.05),
    tolerance: { absolute: 0.5 },
    because: "the standard reports whole numbers, and its polynomials stand for the table here",
  },
  {
    claim: "53.47 and 7.80 mm²/s are index 111",
    link,
    source: "ASTM D2270, second example of procedure B",
    kind: "recalled",
    expected: 111,
    got: () => viscosityIndex(53.47, 7.8),
    tolerance: { absolute: 0.5 },
  },
  {
    claim: "a conventional fluid of 35 and 7.3 mm²/s is sold as index 179",
    link,
    source: "data line of one conventional fluid, retail page",
    kind: "published",
    expected: 179,
    got: () => viscosityIndex(35, 7.3),
    tolerance: { absolute: 1.5 },
    because: "both viscosities are printed to two digits",
  },
  {
    claim: "the oil of index 0 that has 5.0 mm²/s at 100 degC has L = 40.23 at 40 degC",
    link,
    source: d2270,
    kind: "published",
    expected: 40.23,
    got: () => referenceOils(5).zero,
    tolerance: { relative: 1e-3 },
  },
  {
    claim: "the oil of index 100 that has 7.5 mm²/s at 100 degC has H = 53.98 at 40 degC",
    link,
    source: d2270,
    kind: "published",
    expected: 53.98,
    got: () => referenceOils(7.5).hundred,
    tolerance: { relative: 1.2e-3 },
  },
  {
    claim: "the oil of index 0 that has 20.0 mm²/s at 100 degC has L = 493.2 at 40 degC",
    link,
    source: d2270,
    kind: "published",
    expected: 493.2,
    got: () => referenceOils(20).zero,
    tolerance: { relative: 1e-3 },
  },

  // Pressure
  {
    claim: "a line pressure of 2 MPa thickens spindle oil by 3.25 %",
    link,
    source: "an independent program evaluating Barus with 16e-9 1/Pa",
    kind: "computed",
    expected: 6.50486e-3,
    got: () => barus(6.3e-3, 16e-9, 2e6),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "the same by Roelands",
    link,
    source: "an independent program evaluating Roelands",
    kind: "computed",
    expected: 6.50452e-3,
    got: () => roelands(6.3e-3, 16e-9, 2e6),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "light machine oil of 3.9 mPa·s has a pressure coefficient near 16e-9 1/Pa by the viscosity rule",
    link,
    source: tribology,
    kind: "published",
    expected: 16e-9,
    got: () => pressureCoefficient(3.9e-3 / 830),
    tolerance: { relative: 0.3 },
    because: "naphthenic oils of the table lie up to 30 % above the rule for paraffinic ones",
  },

  // Density
  {
    claim: "oil of 860 kg/m³ at 60 degF has 806.1 kg/m³ at 212 degF",
    link,
    source: "calculation page of an additive maker on API MPMS 11.1, lubricating oils: K₁ = 0.34878 per degF",
    kind: "published",
    expected: 806.132,
    got: () => (860 * volumeCorrection(860.35, celsius(100))) / volumeCorrection(860.35, fahrenheit(60)),
    tolerance: { relative: 1e-4 },
    because: "the same law referred to 60 degF instead of 15 degC",
  },
  {
    claim: "a generic hydraulic oil swells by 7.7 % from 0 to 100 degC",
    link,
    source: "open hydraulics library in Modelica, generic oil: 7.7e-4 per K on 870 kg/m³ at 0 degC",
    kind: "published",
    expected: 1.077,
    got: () => density(859.6, celsius(0)) / density(859.6, celsius(100)),
    tolerance: { relative: 0.005 },
    because: "a linear law against the curved one of the standard",
  },
  {
    claim: "engine oil of 891 kg/m³ at 15 degC has 853.9 kg/m³ at 350 K",
    link,
    source: engineOilSource,
    kind: "published",
    expected: engineOilAt(350, "density_kg_m3"),
    got: () => density(engineOil15, 350),
    tolerance: { relative: 0.005 },
    because: "the standard speaks for all lubricating oils at once",
  },
  {
    claim: "and follows the whole table from 273 to 430 K",
    link,
    source: engineOilSource,
    kind: "published",
    expected: 0,
    got: () =>
      overAll(engineOil, (at) => density(engineOil15, at("temperature_K")) / at("density_kg_m3") - 1),
    tolerance: { absolute: 0.005 },
    because:
      "root mean square of the relative deviation; the standard speaks for all lubricating oils at once",
  },
  {
    claim: "polyalphaolefin of 794 kg/m³ at 15 degC has 742 kg/m³ at 95.6 degC",
    link,
    source: paoSource,
    kind: "published",
    expected: cell(pao, "temperature_C", 95.6, "density_kg_m3"),
    got: () => density(pao15, celsius(95.6)),
    tolerance: { relative: 0.003 },
  },
  {
    claim: "and 702 kg/m³ at 155.7 degC",
    link,
    source: paoSource,
    kind: "published",
    expected: cell(pao, "temperature_C", 155.7, "density_kg_m3"),
    got: () => density(pao15, celsius(155.7)),
    tolerance: { relative: 0.003 },
  },
  {
    claim: "and follows its whole table from 5 to 194 degC",
    link,
    source: paoSource,
    kind: "published",
    expected: 0,
    got: () => overAll(pao, (at) => density(pao15, celsius(at("temperature_C"))) / at("density_kg_m3") - 1),
    tolerance: { absolute: 0.005 },
    because: "root mean square of the relative deviation; two rows lie above the 150 degC of the standard",
  },
  {
    claim: "a fill grows by 5.5 % from 20 to 90 degC",
    link,
    source: "an independent program evaluating API MPMS 11.1",
    kind: "computed",
    expected: 1.054944,
    got: () => volumeCorrection(860, celsius(20)) / volumeCorrection(860, celsius(90)),
    tolerance: { relative: 1e-6 },
  },

  // Heat
  {
    claim: "petroleum oil of specific gravity 0.91 takes 0.4445 Btu/(lb degF) at 80 degF",
    link,
    source: "engineering forum thread on heating crude oil, after Cragoe, NBS Misc. Pub. 97 (1929)",
    kind: "published",
    expected: 0.444480624,
    got: () => specificHeat(0.91 * 999.0, fahrenheit(80)) / 4186.8,
    tolerance: { relative: 5e-4 },
    because: "the SI constants are rounded to three or four digits",
  },
  {
    claim: "unused engine oil takes 1.88 kJ/(kg K) at 20 degC",
    link,
    source: "engineering reference site, specific heat of liquids, after Sonntag, Borgnakke and Van Wylen",
    kind: "published",
    expected: 1880,
    got: () => specificHeat(0.888 * 999.0, celsius(20)),
    tolerance: { relative: 0.04 },
    because: "Cragoe's rule is good to 2 to 4 %",
  },
  {
    claim: "and 2.22 kJ/(kg K) at 100 degC",
    link,
    source: "engineering reference site, specific heat of liquids, after Sonntag, Borgnakke and Van Wylen",
    kind: "published",
    expected: 2220,
    got: () => specificHeat(0.888 * 999.0, celsius(100)),
    tolerance: { relative: 0.04 },
    because: "Cragoe's rule is good to 2 to 4 %",
  },
  {
    claim: "engine oil takes 2.118 kJ/(kg K) at 350 K",
    link,
    source: engineOilSource,
    kind: "published",
    expected: engineOilAt(350, "specific_heat_kJ_kgK") * 1000,
    got: () => specificHeat(engineOil15, 350),
    tolerance: { relative: 0.04 },
    because: "Cragoe's rule is good to 2 to 4 %",
  },
  {
    claim: "a VG 32 oil takes 1.949 kJ/(kg K) at 40 degC",
    link,
    source: "lubricant table of an open rotor-dynamics library, VG 32",
    kind: "published",
    expected: 1948.8,
    got: () => specificHeat(0.874 * 999.0, celsius(40)),
    tolerance: { relative: 0.002 },
  },
  {
    claim: "and conducts 0.1313 W/(m K)",
    link,
    source: "lubricant table of an open rotor-dynamics library, VG 32",
    kind: "published",
    expected: 0.13126,
    got: () => thermalConductivity(0.874 * 999.0, celsius(40)),
    tolerance: { relative: 0.002 },
  },
  {
    claim: "polyalphaolefin conducts 0.1387 W/(m K) at 101.7 degC",
    link,
    source: paoSource,
    kind: "published",
    expected: cell(paoConductivity, "temperature_C", 101.7, "conductivity_W_mK"),
    got: () => thermalConductivity(pao15, celsius(101.7)),
    tolerance: { relative: 0.1 },
    because: "Cragoe's rule for conductivity is good to 10 %; it meets this oil within 1 %",
  },

  {
    claim: "and does so within a few percent from 60 to 243 degC",
    link,
    source: paoSource,
    kind: "published",
    expected: 0,
    got: () =>
      overAll(
        paoConductivity,
        (at) => thermalConductivity(pao15, celsius(at("temperature_C"))) / at("conductivity_W_mK") - 1,
      ),
    tolerance: { absolute: 0.1 },
    because: "root mean square of the relative deviation; Cragoe's rule is good to 10 %",
  },

  // Surface tension
  {
    claim: "sample problem of the data book: 29.577 mN/m",
    link,
    source: "API Technical Data Book, procedure 10A3.2, sample problem, read in an open library",
    kind: "published",
    expected: 29.577333e-3,
    got: () => apiSurfaceTension(fahrenheit(60), 1334 / 1.8, 12.4),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "the recommended line lies within 10 % of the data-book value of a base oil at 25 degC",
    link,
    source: "open library of chemical engineering evaluating API 10A3.2 for 850 K and Watson factor 12",
    kind: "computed",
    expected: 32.973e-3,
    got: () => surfaceTension(celsius(25)),
    tolerance: { relative: 0.1 },
    because: "the procedure's average error is 10.7 %, and the critical temperature is a guess",
  },

  // Air in the oil
  {
    claim: "half air, half water by volume carries sound at about 20 m/s",
    link,
    source: "C. E. Brennen, Fundamentals of Multiphase Flow (2005), chapter 9",
    kind: "recalled",
    expected: 20,
    got: () =>
      soundSpeed({
        gas: 0.5,
        liquidModulus: 2.2e9,
        liquidDensity: 998,
        gasModulus: 101_325,
        gasDensity: 1.2,
      }),
    tolerance: { relative: 0.05 },
  },
  {
    claim: "one part of air in a hundred slows sound in water to 119 m/s",
    link,
    source: "inputs of an open sound-speed function after Wood (1930), evaluated by an independent program",
    kind: "computed",
    expected: 119.158,
    got: () =>
      soundSpeed({
        gas: 0.01,
        liquidModulus: 998 * 1485 ** 2,
        liquidDensity: 998,
        gasModulus: 1.2 * 343 ** 2,
        gasDensity: 1.2,
      }),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "oil with 1 % air is at 10 bar two fifths as stiff as without",
    link,
    source: "formula and numerical derivative by an independent program, exact form of Cho and others (2002)",
    kind: "computed",
    expected: 592.054e6,
    got: () => bulkModulus(1.5e9, 0.01, 1e6, 1),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "ten percent of air are 2.2 % at 5 bar",
    link,
    source: "an independent program, isothermal",
    kind: "computed",
    expected: 0.0220266,
    got: () => gasFractionAt(0.1, 5e5, 1),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "a litre of oil holds about 90 mL of air at one atmosphere",
    link,
    source: "fluid lexicon of a hydraulics maker, solubility of gas in a pressure fluid",
    kind: "published",
    expected: 0.09,
    got: () => dissolvedVolume(0.09, 101_325),
    tolerance: { relative: 0.01 },
  },
  {
    claim: "and 9 litres at 100 bar",
    link,
    source: "fluid lexicon of a hydraulics maker, solubility of gas in a pressure fluid",
    kind: "published",
    expected: 9,
    got: () => dissolvedVolume(0.09, 1e7),
    tolerance: { relative: 0.02 },
    because: "the page takes one atmosphere for one bar",
  },
  {
    claim: "saturated oil held at 0.6 bar and 90 degC could become 7.6 % gas",
    link,
    source: "an independent program, Bunsen coefficient 0.09",
    kind: "computed",
    expected: 0.0761371,
    got: () => excessFraction(0.09, 6e4, 363.15),
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "2 % of air is dissolved again at 1.227 atmospheres, given time",
    link,
    source: "an independent program, Bunsen coefficient 0.09",
    kind: "computed",
    expected: 1.22676 * 101_325,
    got: () => dissolvingPressure(0.09, 0.02),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "five percent of fine bubbles thicken oil by 7.5 %",
    link,
    source: "A. T. J. Hayward, The viscosity of bubbly oil, National Engineering Laboratory (1961)",
    kind: "recalled",
    expected: 1.075,
    got: () => aeratedViscosity(1, 0.05),
    tolerance: { relative: 1e-3 },
  },

  // Age
  ...[175, 235, 295].map((t) => ({
    claim: `fluid at ${t} degF lasts ${cell(life, "temperature_F", t, "life_miles")} miles, at 30 miles an hour`,
    link,
    source: "trade life table, circulated since before 2002",
    kind: "common practice" as const,
    expected: cell(life, "temperature_F", t, "life_miles"),
    got: () => (30 / 3600) * (1 / fluidAgeingRate(fahrenheit(t))),
    tolerance: { relative: 0.05 },
    because: "the table halves each 19.3 degF over its whole length, the rule each 20 degF",
  })),
  {
    claim:
      "and over the whole table, 175 to 390 degF, the rule stays within a quarter of a halving, or 5 degF",
    link,
    source: "trade life table, circulated since before 2002",
    kind: "common practice",
    expected: 0,
    got: () =>
      overAll(life, (at) =>
        Math.log2(((30 / 3600) * (1 / fluidAgeingRate(fahrenheit(at("temperature_F"))))) / at("life_miles")),
      ),
    tolerance: { absolute: 0.25 },
    because: "root mean square of the deviation in halvings; each is 20 degF",
  },
];
