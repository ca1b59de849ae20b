import { notNegative, positive, type Range } from "../../errors.ts";

/** Passenger cars and light vans; a regression knows nothing outside the vehicles it was drawn through. */
export const regressionRoadLoadRange: Range = {
  law: "regression of type-approval road loads on test mass",
  quantity: "test mass",
  unit: "kg",
  low: 700,
  high: 3500,
  source:
    "default road-load coefficients of UN Global Technical Regulation 15 (range assumed: category M1/N1)",
};

/**
 * Road load on the level [N] of an average light vehicle from its test mass [kg] alone, at `speed` [m/s]:
 * f0 + f1 v + f2 v^2 with v in km/h. A comparison for `roadForce`, not a replacement: f0 holds driveline drag too.
 * Law: default coefficients drawn through type-approval road loads, used with UN GTR 15.
 */
export function regressionRoadLoad(testMass: number, speed: number): number {
  positive("testMass", testMass, "kg");
  notNegative("speed", speed, "m/s");
  const v = speed * 3.6;
  const f0 = 0.14 * testMass + 0.786;
  const f1 = 2.75e-5 * testMass - 0.0329;
  const f2 = 1.11e-5 * testMass + 0.0203;
  return f0 + (f1 + f2 * v) * v;
}
