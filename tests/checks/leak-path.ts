// The leak path against worked problems, measured coefficients and exact limits.
import { annulusOpening } from "../../src/physics/leak/annulus.ts";
import { crackGap, crackOpening, shellParameter } from "../../src/physics/leak/crack.ts";
import {
  drainTime,
  drainTimeConstant,
  levelAfter,
  torricelliTime,
} from "../../src/physics/leak/drain-down.ts";
import { leakFlow, leakPressure, type Opening } from "../../src/physics/leak/flow.ts";
import { dischargeLimit, holeDiameter, holeOpening } from "../../src/physics/leak/hole.ts";
import type { Check } from "./check.ts";

const link = "leak path" as const;
const milliLitresAnHour = 3.6e9;
const evaluated = (law: string) => `${law}, evaluated by an independent program from printed inputs`;

/** How steeply a leak follows its pressure: d ln Q/d ln p, with an opening that may itself depend on pressure. */
function leakageExponent(opening: (pressure: number) => Opening, pressure: number): number {
  const flow = (p: number) => leakFlow(opening(p), p, 1e-3, 998);
  return Math.log(flow(1.005 * pressure) / flow(0.995 * pressure)) / Math.log(1.005 / 0.995);
}

/** Discharge coefficient of a hole at a Reynolds number of the ideal velocity, (d ρ/μ)√(2Δp/ρ). */
function coefficientAt(opening: Opening, diameter: number, reynolds: number): number {
  const [viscosity, density] = [0.01, 850];
  const ideal = (reynolds * viscosity) / (density * diameter);
  const flow = leakFlow(opening, (density / 2) * ideal ** 2, viscosity, density);
  return flow / ((Math.PI / 4) * diameter ** 2 * ideal);
}

/** Loss coefficient times Reynolds number of a hole in creeping flow, both on its mean velocity. */
function creepingLoss(wallOverDiameter: number): number {
  const [diameter, viscosity, density, velocity] = [1e-3, 0.1, 900, 1e-6];
  const flow = velocity * (Math.PI / 4) * diameter ** 2;
  const drop = leakPressure(holeOpening(diameter, wallOverDiameter * diameter), flow, viscosity, density);
  return (drop / (0.5 * density * velocity ** 2)) * ((density * velocity * diameter) / viscosity);
}

// The reference opening of the printed inputs: 0.9 mm wall and a limiting coefficient of 0.75.
const printedHole = (diameter: number): Opening => ({
  viscous: holeOpening(diameter, 0.9e-3).viscous,
  inertial: 1 / (2 * (0.75 * (Math.PI / 4) * diameter ** 2) ** 2),
});
const hot = (diameter: number) => leakFlow(printedHole(diameter), 2e5, 0.0072, 812);
const cold = (diameter: number) => leakFlow(printedHole(diameter), 2e5, 0.065, 856);
const fullyDeveloped = (opening: Opening): Opening => ({ viscous: opening.viscous, inertial: 0 });

const britannica = "Encyclopaedia Britannica, 11th edition (1911), Hydraulics";
const lichtarowicz = "Lichtarowicz, Duggins and Markland, J. Mech. Eng. Sci. 7 (1965) 210-219, formula";

export const checks: readonly Check[] = [
  // Long gaps and tubes
  {
    claim: "hydraulic oil leaks past a 25 mm piston with 5 µm clearance at 57.6 mm³/s",
    link,
    source: "Fox and McDonald, Introduction to Fluid Mechanics, example 8.1, read in an open companion",
    kind: "published",
    expected: 57.6e-9,
    got: () => leakFlow(annulusOpening(25e-3, 5e-6, 15e-3, 0), 19e6, 0.018, 920),
    tolerance: { relative: 0.002 },
  },
  {
    claim: "the same piston off centre by half its clearance",
    link,
    source: evaluated("eccentric ring gap"),
    kind: "computed",
    expected: 79.161e-9,
    got: () => leakFlow(annulusOpening(25e-3, 5e-6, 15e-3, 0.5), 19e6, 0.018, 920),
    tolerance: { relative: 1e-4 },
    because: "the printed value leaves the inertial part out, 1e-5 here",
  },
  {
    claim: "past a hardened ring of 10 mm with 15 µm clearance 442 mL an hour",
    link,
    source: evaluated("ring gap"),
    kind: "computed",
    expected: 1.227185e-7,
    got: () => leakFlow(fullyDeveloped(annulusOpening(10e-3, 15e-6, 2e-3, 0)), 2e5, 0.0072, 812),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "water needs 85.3 kPa to pass a 0.35 mm needle of 31.4 mm at 1 g/s",
    link,
    source: "worked answer to a college physics exercise on a hypodermic needle, homework page",
    kind: "published",
    expected: 85_254.55,
    got: () => leakPressure(fullyDeveloped(holeOpening(0.35e-3, 31.4e-3)), 1e-6, 1e-3, 1000),
    tolerance: { relative: 0.01 },
    because: "the page neglects the entrance, which the hole carries: 24/d³ beside 128 L/(π d⁴), 0.7 %",
  },
  {
    claim: "oil of 0.1 Pa s at 1.6 m/s between plates 10 mm apart loses 38.4 kPa in 2 m",
    link,
    source: "Som, Introduction to Heat Transfer, example 6.1, evaluated by an open companion program",
    kind: "computed",
    expected: 38_400,
    got: () => leakPressure(fullyDeveloped(crackOpening(1, 0.01, 2)), 1.6 * 0.01, 0.1, 900),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "a slot of 5 mm by 20 µm through 0.9 mm lets 370 mL an hour pass",
    link,
    source: evaluated("plane Poiseuille flow"),
    kind: "computed",
    expected: 370.4,
    got: () =>
      leakFlow(fullyDeveloped(crackOpening(5e-3, 20e-6, 0.9e-3)), 2e5, 0.0072, 812) * milliLitresAnHour,
    tolerance: { relative: 1e-4 },
  },

  ...(
    [
      [0.68, 0.0408],
      [6, 28],
      [20, 1037],
      [50, 16204],
    ] as const
  ).map(([gap, hourly]): Check => ({
    claim: `a crack of 4 mm that gapes by ${gap} µm lets ${hourly} mL an hour through a wall of 0.9 mm at 7 bar`,
    link,
    source: evaluated("plane Poiseuille flow"),
    kind: "computed",
    expected: hourly,
    got: () =>
      leakFlow(fullyDeveloped(crackOpening(4e-3, gap * 1e-6, 0.9e-3)), 7e5, 0.0072, 812) * milliLitresAnHour,
    tolerance: { relative: 2e-3 },
    because: "printed to three digits",
  })),
  {
    claim: "fluid of 1.44 Pa s at 2.7 m/s in the middle between plates 0.3 m apart loses 10.4 kPa in 30 m",
    link,
    source: evaluated("textbook problem on flow between plates, its inputs printed on a page for students,"),
    kind: "computed",
    expected: 10_368,
    got: () => leakPressure(fullyDeveloped(crackOpening(0.9, 0.3, 30)), (2 / 3) * 2.7 * 0.9 * 0.3, 1.44, 900),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "a pan of 0.06 m² sinks to 1/e over a gap of 20 mm by 0.1 mm in its rail in 260 404 s",
    link,
    source: evaluated("plane Poiseuille flow"),
    kind: "computed",
    expected: 260404,
    got: () => drainTimeConstant(fullyDeveloped(crackOpening(20e-3, 0.1e-3, 8e-3)), 0.06, 0.0072, 812),
    tolerance: { relative: 1e-5 },
  },

  // Short holes at high Reynolds number
  {
    claim: "a short tube discharges 0.82 of the ideal, measured",
    link,
    source: `${britannica}, § 49, cylindrical mouthpieces`,
    kind: "published",
    expected: 0.82,
    got: () => dischargeLimit(2),
    tolerance: { relative: 0.03 },
    because: "measured values run from 0.81 to 0.84 (Weisbach)",
  },
  {
    claim: "and about one third more than a simple orifice",
    link,
    source: `${britannica}, § 49, cylindrical mouthpieces`,
    kind: "published",
    expected: 4 / 3,
    got: () => dischargeLimit(2) / dischargeLimit(0),
    tolerance: { relative: 0.02 },
  },
  {
    claim: "a sharp-edged hole of one inch under four feet of water: Unwin's 0.6075 + 0.0098/√h − 0.0037 d",
    link,
    source: `${britannica}, W. C. Unwin on the experiments of J. G. Mair`,
    kind: "published",
    expected: 0.6075 + 0.0098 / Math.sqrt(4) - 0.0037,
    got: () => coefficientAt(holeOpening(25.4e-3, 1e-3), 25.4e-3, 1e5),
    tolerance: { relative: 0.01 },
  },
  {
    claim: "a sharp edge contracts the jet to π/(π + 2)",
    link,
    source: "M. G. Rabie, Fluid Power Engineering (2009), page 27, equation 2.39",
    kind: "published",
    expected: 0.611,
    got: () => dischargeLimit(0),
    tolerance: { absolute: 0.002 },
  },
  {
    claim: "an orifice discharges 0.62",
    link,
    source: "engineering wiki, orifice equation, table of coefficients",
    kind: "published",
    expected: 0.62,
    got: () => dischargeLimit(0.2),
    tolerance: { relative: 0.02 },
    because: "printed lists give 0.60 to 0.62",
  },
  {
    claim: "a short tube discharges 0.798: an entrance loss of 0.57 and the exit",
    link,
    source: "entrance loss 0.57 for a square edge, open library of fluid dynamics, C = 1/√1.57",
    kind: "published",
    expected: 1 / Math.sqrt(1.57),
    got: () => dischargeLimit(3),
    tolerance: { relative: 0.01 },
  },
  {
    claim: "round holes in water pipes leak as pressure to the power 0.5",
    link,
    source: "Greyvenstein and van Zyl, J. Water Supply 56 (2007) 117-124, abstract",
    kind: "published",
    expected: 0.5,
    got: () => leakageExponent(() => holeOpening(12e-3, 6e-3), 3e5),
    tolerance: { absolute: 0.02 },
    because: "'close to 0.5'",
  },
  {
    claim: "lengthwise cracks in water pipes leak as pressure to a power of 0.79 to 1.85",
    link,
    source: "Greyvenstein and van Zyl, J. Water Supply 56 (2007) 117-124, abstract",
    kind: "published",
    expected: (0.79 + 1.85) / 2,
    got: () => {
      const [radius, wall, half] = [55e-3, 3e-3, 45e-3]; // 110 mm plastic pipe, a crack of 90 mm
      const gap = (p: number) => crackGap((p * radius) / wall, half, 3e9, radius, wall, 0.4);
      return leakageExponent((p) => crackOpening(2 * half, gap(p), wall), 3e5);
    },
    tolerance: { absolute: (1.85 - 0.79) / 2 },
    because: "the range measured on a dozen pipes; the pipe here is one of their kind",
  },

  // Creeping flow and the passage to it
  {
    claim: "creeping flow through a hole a tenth as thick as wide: loss times Reynolds number 41.8",
    link,
    source: "B. A. Finlayson's course on chemical engineering flow, laminar orifice, solved Navier-Stokes",
    kind: "published",
    expected: 41.8,
    got: () => creepingLoss(0.1),
    tolerance: { relative: 0.07 },
    because: "the pipe around the orifice was finite; Sampson's wall has no end",
  },
  {
    claim: "and 57.7 for a hole 0.37 as thick as wide",
    link,
    source: "B. A. Finlayson's course on chemical engineering flow, laminar orifice, solved Navier-Stokes",
    kind: "published",
    expected: 57.7,
    got: () => creepingLoss(0.37),
    tolerance: { relative: 0.07 },
    because: "the pipe around the orifice was finite; Sampson's wall has no end",
  },
  {
    claim: "an endless thin wall: 12π, exactly",
    link,
    source: "R. A. Sampson, Phil. Trans. R. Soc. A 182 (1891) 449: Q = d³Δp/(24 μ)",
    kind: "recalled",
    expected: 12 * Math.PI,
    got: () => creepingLoss(0),
    tolerance: { relative: 1e-4 },
  },
  ...(
    [
      [2, 1000, 0.7446, 0.06],
      [2, 2e4, 0.8088, 0.02],
      [10, 1000, 0.5526, 0.06],
      [10, 1e4, 0.7385, 0.06],
    ] as const
  ).map(([ratio, reynolds, expected, relative]) => ({
    claim: `a hole ${ratio} diameters long at a Reynolds number of ${reynolds} discharges ${expected}`,
    link,
    source: lichtarowicz,
    kind: "recalled" as const,
    expected,
    got: () => coefficientAt(holeOpening(1e-3, ratio * 1e-3), 1e-3, reynolds),
    tolerance: { relative },
    because: "the sum of losses is another form than the 1965 fit; they part below a Reynolds number of 300",
  })),

  // The law itself, from printed inputs
  {
    claim: "a 0.05 mm hole in a hot line of 2 bar loses 16.2 mL an hour",
    link,
    source: evaluated("sum of Sampson, Hagen-Poiseuille and orifice"),
    kind: "computed",
    expected: 4.49767e-9,
    got: () => hot(0.05e-3),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "a 1 mm hole there loses 46.4 litres an hour",
    link,
    source: evaluated("sum of Sampson, Hagen-Poiseuille and orifice"),
    kind: "computed",
    expected: 1.288851e-5,
    got: () => hot(1e-3),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "cold, a 0.1 mm hole loses 28.2 mL an hour",
    link,
    source: evaluated("sum of Sampson, Hagen-Poiseuille and orifice"),
    kind: "computed",
    expected: 28.244,
    got: () => cold(0.1e-3) * milliLitresAnHour,
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "twenty drops a minute of 0.033 mL come from a hole of 0.063 mm",
    link,
    source: evaluated("sum of Sampson, Hagen-Poiseuille and orifice"),
    kind: "computed",
    expected: 0.06308e-3,
    got: () => holeDiameter(39.6 / milliLitresAnHour, 2e5, 0.0072, 812, 0.9e-3),
    tolerance: { relative: 1e-3 },
    because: "the printed value has a limiting coefficient of 0.75, the law 0.742 at this length",
  },

  // A crack held open by stress
  {
    claim: "a 4 mm crack in a 3/8 inch tube bulges: shell parameter 1.846",
    link,
    source: "Wüthrich (1983) as in BS 7910, evaluated by an independent program",
    kind: "computed",
    expected: 1.84593,
    got: () => shellParameter(2e-3, 4.318e-3, 0.889e-3, 0.33),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "30 MPa of bending hold it open by 6.02 µm at the middle",
    link,
    source: "Wüthrich (1983) as in BS 7910, evaluated by an independent program",
    kind: "computed",
    expected: 6.0166e-6,
    got: () => crackGap(30e6, 2e-3, 69e9, 4.318e-3, 0.889e-3, 0.33) / (Math.PI / 4),
    tolerance: { relative: 1e-4 },
  },

  // Draining under its own head
  {
    claim: "a tank of 3.2 m² and 5 m drains through 10 cm² in 1 h 29 min 44.7 s",
    link,
    source: "Choudhary and Om Prakash, Fluid Mechanics, example 6.19, read in an open companion",
    kind: "published",
    expected: 5384.73,
    got: () => torricelliTime(3.2, 10e-4, 0.6, 5, 0),
    tolerance: { relative: 3e-4 },
    because: "the book takes g = 9.81 m/s²",
  },
  {
    claim: "a pan of 0.06 m² sinks from 80 to 30 mm through 1 mm in 6201 s, viscosity left out",
    link,
    source: evaluated("Torricelli"),
    kind: "computed",
    expected: 6200.77,
    got: () => torricelliTime(0.06, (Math.PI / 4) * 1e-6, 0.61, 0.08, 0.03),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "through 0.3 mm it takes 298 808 s, by the whole law",
    link,
    source: "closed form and numerical quadrature by an independent program, agreeing to 12 digits",
    kind: "computed",
    expected: 298_807.6,
    got: () => drainTime(printedHole(0.3e-3), 0.06, 0.08, 0.03, 0.0072, 812.2),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "a long 1 mm passage lets cold oil sink to 1/e in 189 291 s",
    link,
    source: evaluated("Hagen-Poiseuille under a falling head"),
    kind: "computed",
    expected: 189_291,
    got: () =>
      drainTimeConstant({ viscous: (128 / Math.PI) * (10e-3 / 1e-3 ** 4), inertial: 0 }, 0.06, 0.065, 856),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "after an hour at a 0.3 mm passage 80 mm are 78.836 mm",
    link,
    source: evaluated("Hagen-Poiseuille under a falling head"),
    kind: "computed",
    expected: 78.836e-3,
    got: () =>
      levelAfter(
        { viscous: (128 / Math.PI) * (0.9e-3 / 0.3e-3 ** 4), inertial: 0 },
        0.06,
        0.08,
        3600,
        0.0072,
        812.2,
      ),
    tolerance: { relative: 1e-5 },
  },
];
