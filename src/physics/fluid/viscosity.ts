// Kinematic viscosity against temperature: ASTM D341 (Walther 1931, MacCoull and Wright).
import { impossible, type Range } from "../../errors.ts";

/** One measured point of a data sheet: temperature [K], kinematic viscosity [m²/s]. */
export interface ViscosityPoint {
  readonly temperature: number;
  readonly kinematic: number;
}

/** log₁₀ log₁₀(ν[mm²/s] + 0.7) = A − B log₁₀ T: the cold pair holds below the knee [K], the warm pair above. */
export interface ViscosityLine {
  readonly warmA: number;
  readonly warmB: number;
  readonly coldA: number;
  readonly coldB: number;
  readonly knee: number;
}

export const viscosityRange: Range = {
  law: "viscosity line, simple form",
  quantity: "kinematic viscosity",
  unit: "m²/s",
  low: 2e-6,
  high: 2e-2,
  source: "ASTM D341-20, scope: below 2 mm²/s the three-term form is needed",
};

export const viscosityTemperatureRange: Range = {
  law: "viscosity line",
  quantity: "temperature",
  unit: "K",
  low: 253.15,
  high: 423.15,
  source:
    "ASTM D341: cloud point to first boiling; polymer-thickened fluids leave a warm line below about -10 degC",
};

// An oil of 10¹² Pa·s is a glass by definition: nothing is stiffer, and the exponential must end somewhere.
const stiffest = 15; // log₁₀ of Z in mm²/s

const doubleLog = (kinematic: number) => Math.log10(Math.log10(kinematic * 1e6 + 0.7));

function slope(colder: ViscosityPoint, warmer: ViscosityPoint): number {
  const B =
    (doubleLog(colder.kinematic) - doubleLog(warmer.kinematic)) /
    (Math.log10(warmer.temperature) - Math.log10(colder.temperature));
  if (!(B > 0 && B < Infinity))
    impossible("kinematic", warmer.kinematic, "viscosities that fall as temperature rises");
  return B;
}

/**
 * The viscosity line through two points of a data sheet (40 and 100 °C as a rule), or through three, where
 * two lines meet at the middle point. The third, cold point is needed by every polymer-thickened fluid: a line
 * through two warm points is several times too thin below 0 °C.
 *
 * @param points two or three, in any order; each above 0 K and above 0.3 mm²/s (the simple form ends there)
 * @throws impossible-input for another count, equal temperatures, or viscosity that does not fall with temperature
 * Source: ASTM D341, equations 1 to 3.
 */
export function viscosityLine(points: readonly ViscosityPoint[]): ViscosityLine {
  for (const { temperature, kinematic } of points) {
    if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
    if (!(kinematic > 0.3e-6 && kinematic < Infinity))
      impossible("kinematic", kinematic, "more than 0.3e-6 m²/s");
  }
  const [first, second, third] = [...points].sort((p, q) => p.temperature - q.temperature);
  if (!first || !second || points.length > 3)
    return impossible("points", points.length, "two or three points");
  const coldB = slope(first, second);
  const warmB = third ? slope(second, third) : coldB;
  const meeting = doubleLog(second.kinematic);
  const knee = second.temperature;
  return {
    warmA: meeting + warmB * Math.log10(knee),
    warmB,
    coldA: meeting + coldB * Math.log10(knee),
    coldB,
    knee,
  };
}

/**
 * Kinematic viscosity [m²/s] at a temperature [K > 0], by the simple form of ASTM D341. Falls strictly with
 * temperature between the glass (held at 10⁹ m²/s) and its hot limit of 0.3 mm²/s.
 */
export function kinematicViscosity(line: ViscosityLine, temperature: number): number {
  if (!(temperature > 0 && temperature < Infinity)) impossible("temperature", temperature, "more than 0 K");
  const cold = temperature < line.knee;
  const A = cold ? line.coldA : line.warmA;
  const B = cold ? line.coldB : line.warmB;
  const logZ = Math.exp(Math.LN10 * A - B * Math.log(temperature));
  return (Math.exp(Math.LN10 * (logZ < stiffest ? logZ : stiffest)) - 0.7) * 1e-6;
}

export const waltherRange: Range = {
  law: "viscosity line, three-term form",
  quantity: "kinematic viscosity",
  unit: "mm²/s",
  low: 0.21,
  high: 2e7,
  source: "ASTM D341, three-term form",
};

/** Z of a kinematic viscosity [mm²/s]: ν + 0.7 + e^(−1.47 − 1.84ν − 0.51ν²). For thin, hot fluids. Source: ASTM D341. */
export function waltherZ(kinematic: number): number {
  if (!(kinematic >= 0 && kinematic < Infinity)) impossible("kinematic", kinematic, "0 mm²/s or more");
  return kinematic + 0.7 + Math.exp(-1.47 - kinematic * (1.84 + 0.51 * kinematic));
}

/** Kinematic viscosity [mm²/s] of a Z: the standard's own approximate inverse of `waltherZ`, good to 0.03 %. */
export function waltherInverse(Z: number): number {
  if (!(Z >= 0.9 && Z < Infinity)) impossible("Z", Z, "0.9 or more");
  const w = Z - 0.7;
  return w - Math.exp(-0.7487 + w * (-3.295 + w * (0.6119 - 0.3193 * w)));
}
