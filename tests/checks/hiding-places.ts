// What a shield keeps back, against films, beads and sorbents that others have measured.
import { edgeBead, filmRetention, puddleDepth, withdrawnFilm } from "../../src/physics/leak/film.ts";
import { type HidingStep, hidingStep, runsOverAfter } from "../../src/physics/leak/hiding.ts";
import { fullUptake, poreVolume, soakedVolume } from "../../src/physics/leak/soak.ts";
import type { Check } from "./check.ts";

const link = "hiding places" as const;
const barrelOn1000SquareFeet = 0.158987294928 / 92.90304; // m³/m²
const vertical = Math.PI / 2;
const day = 86_400;

const konishi = "Konishi, Hirohata, Kubota and Yuri, J. Metal Finish. Soc. Japan 25 (1974) 2-7, abstract";
const clingage = "40 CFR 63 subpart G, table 23, average clingage factors, light rust";
const morey = "F. C. Morey, NBS research paper RP1332, J. Res. NBS 25 (1940) 385-393, abstract";

/** Morey's measured mean film [m] on a body drawn out of oil: 0.015 (νs)^0.63 in cm, with ν in cm²/s and s in cm/s. */
const moreyFilm = (viscousSpeed: number) => 0.015 * viscousSpeed ** 0.63 * 1e-2;

const shield = { capacity: 200e-6, carryOff: 1 / 7200 };
const fromTo = (held: number, inflow: number, seconds: number): HidingStep => {
  const out = { held: 0, carriedOff: 0, overflow: 0 };
  hidingStep(out, shield, held, inflow, true, seconds);
  return out;
};

export const checks: readonly Check[] = [
  // Films
  {
    claim: "a sheet drawn out of a bath carries 0.02 √(viscosity × speed/density) cm, Kushner's rule",
    link,
    source: konishi,
    kind: "published",
    expected: 0.02e-2,
    got: () => filmRetention(0.1, 1000, 0.01, 1, vertical), // 1 poise, 1 g/cm³, 1 cm/s
    tolerance: { relative: 0.07 },
    because: "the rule has one digit; the draining film gives 2/(3√980) = 0.0213",
  },
  {
    claim: "a tank wall keeps 0.0060 barrels of crude oil on 1000 square feet",
    link,
    source: clingage,
    kind: "published",
    expected: 0.006 * barrelOn1000SquareFeet,
    got: () => filmRetention(8e-3, 850, 12, day, vertical),
    tolerance: { relative: 0.3 },
    because: "the factor is an average of tanks; here 12 m of wall, a day after, crude of 8 mPa·s",
  },
  {
    claim: "and 0.0015 barrels of gasoline",
    link,
    source: clingage,
    kind: "published",
    expected: 0.0015 * barrelOn1000SquareFeet,
    got: () => filmRetention(0.5e-3, 740, 12, day, vertical),
    tolerance: { relative: 0.3 },
    because: "the same wall and day as for crude oil, gasoline of 0.5 mPa·s",
  },
  ...[0.05, 0.3].map((viscousSpeed) => ({
    claim: `oil drawn up at a viscosity times speed of ${viscousSpeed} cm³/s² clings ${(moreyFilm(viscousSpeed) * 1e6).toFixed(0)} µm thick`,
    link,
    source: morey,
    kind: "published" as const,
    expected: moreyFilm(viscousSpeed),
    got: () => withdrawnFilm(1e-4 * 880, 880, 0.032, viscousSpeed * 1e-2), // 1 cm²/s, so the speed is that many cm/s
    tolerance: { relative: 0.12 },
    because: "nine oils, one mean formula, with constants that 'vary slightly with the liquid'",
  })),
  {
    claim: "a drained sheet keeps 0.65 σ/(ρg) for each length of its lower edge",
    link,
    source: konishi,
    kind: "published",
    expected: ((0.65 * 70) / (1.1 * 980)) * 10 * 1e-6, // 70 dyn/cm, 1.1 g/cm³, 10 cm of edge: cm³
    got: () => edgeBead(0.07, 1100, 0.1),
    tolerance: { relative: 2e-3 },
    because: "the paper takes g = 980 cm/s²",
  },
  {
    claim: "mercury lies 3.6 mm deep on glass",
    link,
    source:
      "de Gennes, Brochard-Wyart and Quéré, Capillarity and Wetting Phenomena (2004), chapter 2, puddles",
    kind: "recalled",
    expected: 3.6e-3,
    got: () => puddleDepth(0.486, 13_546, (140 * Math.PI) / 180),
    tolerance: { relative: 0.03 },
    because: "the contact angle is known to 5 degrees",
  },

  // Pads and foam
  {
    claim: "a bale of polypropylene pads of 8.99 lb that takes 22.56 times its weight holds 28.16 gallons",
    link,
    source: "sorbent trader's page, ASTM F726 test with 5W-30 motor oil",
    kind: "published",
    expected: 28.16 * 3.785411784e-3,
    got: () => soakedVolume(8.99 * 0.45359237, 22.56, 860),
    tolerance: { relative: 0.01 },
    because: "the oil's density is not printed; motor oils of this grade have 855 to 865 kg/m³",
  },
  {
    claim: "open polyurethane foam takes up to 30 times its weight of oil",
    link,
    source: "Pinto, Athanassiou and Fragouli, J. Phys. D 49 (2016) 145601, abstract",
    kind: "published",
    expected: 30,
    got: () => fullUptake(28, 1200, 870),
    tolerance: { relative: 0.1 },
    because: "foam density assumed, 28 kg/m³: the abstract gives none",
  },
  {
    claim: "soft foam from car seats and side panels takes 20 to 30 times its weight",
    link,
    source: "Cossari, Caschera and Plescia, Materials 19 (2026) 166, abstract",
    kind: "published",
    expected: 25,
    got: () => fullUptake(33, 1200, 870),
    tolerance: { absolute: 5 },
    because: "seat foam of 33 kg/m³ assumed, the middle of 25 to 45",
  },
  {
    claim: "a foam of 94 to 97 % voids",
    link,
    source: "university test report on an absorbent foam, maker's page 2016",
    kind: "published",
    expected: 0.955,
    got: () => poreVolume(1, 54, 1200),
    tolerance: { absolute: 0.015 },
    because: "density of the foam assumed, 54 kg/m³",
  },

  // The store itself
  {
    claim:
      "a shield of 0.2 litre that loses a share in two hours runs over 83 minutes after a leak of 200 mL/h began",
    link,
    source: "dV/dt = Q − V/τ integrated by a Runge-Kutta program with steps of 0.1 s",
    kind: "computed",
    expected: 4990.7,
    got: () => runsOverAfter(shield, 0, 200e-6 / 3600, true) ?? NaN,
    tolerance: { relative: 1e-4 },
  },
  {
    claim: "it has then given 77.3 mL to the wind",
    link,
    source: "dV/dt = Q − V/τ integrated by a Runge-Kutta program with steps of 0.1 s",
    kind: "computed",
    expected: 77.26e-6,
    got: () => fromTo(0, 200e-6 / 3600, 4990.7).carriedOff,
    tolerance: { relative: 1e-3 },
  },
];
