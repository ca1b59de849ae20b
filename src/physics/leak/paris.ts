// Growth of a fatigue crack in a shaking line: Paris and Erdogan (1963).
import { impossible, notNegative, positive, type Range } from "../../errors.ts";

/**
 * How a crack grows. `perCycle` is the growth [m] in one cycle at a range of stress intensity of 1 MPa√m (so the
 * constant carries no hidden unit), `exponent` the slope m, `stressRange` the tensile part of a cycle [Pa], `geometry`
 * the factor Y, `threshold` the range of stress intensity [Pa√m] below which nothing grows, `longest` the length [m]
 * at which the line is severed.
 */
export interface ParisLaw {
  readonly perCycle: number;
  readonly exponent: number;
  readonly stressRange: number;
  readonly geometry: number;
  readonly threshold: number;
  readonly longest: number;
}

export const parisRange: Range = {
  law: "crack growth by cycles",
  quantity: "range of stress intensity",
  unit: "Pa√m",
  low: 0.66e6,
  high: 25e6,
  source:
    "IIW (Hobbacher): threshold for aluminium; tube walls tear near the toughness of the alloy, 25 MPa√m",
};

const oneMPa = 1e6;

/** Stress intensity K = Y σ √(πa) [Pa√m] at a crack of length a [m] under a stress [Pa]. */
export function stressIntensity(geometry: number, stress: number, length: number): number {
  if (!(geometry > 0 && geometry < Infinity)) impossible("geometry", geometry, "more than 0");
  if (!(Math.abs(stress) < Infinity)) impossible("stress", stress, "a finite stress in Pa");
  if (!(length >= 0 && length < Infinity)) impossible("length", length, "0 m or more");
  return geometry * stress * Math.sqrt(Math.PI * length);
}

/** Length [m] at which a crack runs by itself: a = (K_c/(Yσ))²/π, for a toughness [Pa√m] and largest stress [Pa]. */
export function criticalCrack(toughness: number, largestStress: number, geometry: number): number {
  if (!(toughness > 0 && toughness < Infinity)) impossible("toughness", toughness, "more than 0 Pa√m");
  if (!(largestStress > 0 && largestStress < Infinity))
    impossible("largestStress", largestStress, "more than 0 Pa");
  if (!(geometry > 0 && geometry < Infinity)) impossible("geometry", geometry, "more than 0");
  return (toughness / (geometry * largestStress)) ** 2 / Math.PI;
}

/** Growth in a cycle at ΔK = 1 MPa√m [m], from a constant printed for mm per cycle and N/mm^1.5 (BS 7910, IIW). */
export function perCycleFromMillimetres(constant: number, exponent: number): number {
  notNegative("constant", constant);
  positive("exponent", exponent);
  return constant * 1e-3 * Math.sqrt(1000) ** exponent;
}

function refuse(law: ParisLaw, start: number): void {
  if (!(start > 0 && start < Infinity)) impossible("start", start, "more than 0 m");
  if (!(law.perCycle >= 0 && law.perCycle < Infinity)) impossible("perCycle", law.perCycle, "0 m or more");
  if (!(law.exponent > 0 && law.exponent < 20)) impossible("exponent", law.exponent, "more than 0, below 20");
  if (!(law.stressRange >= 0 && law.stressRange < Infinity))
    impossible("stressRange", law.stressRange, "0 Pa or more");
  if (!(law.geometry > 0 && law.geometry < Infinity)) impossible("geometry", law.geometry, "more than 0");
  if (!(law.threshold >= 0 && law.threshold < Infinity))
    impossible("threshold", law.threshold, "0 Pa√m or more");
  if (!(law.longest > 0 && law.longest < Infinity)) impossible("longest", law.longest, "more than 0 m");
}

/** Share by which a crack of length a grows in its next cycle, with a and m fixed: (da/dN)/a; zero below threshold. */
function firstShare(start: number, law: ParisLaw): number {
  const K = law.geometry * law.stressRange * Math.sqrt(Math.PI * start);
  return K < law.threshold ? 0 : (law.perCycle * (K / oneMPa) ** law.exponent) / start;
}

/**
 * Length [m] of a crack after so many cycles: the closed form of da/dN = C ΔK^m, ended at `law.longest`. A crack
 * whose range of stress intensity lies below the threshold stays as it is.
 * Source: Paris and Erdogan, J. Basic Eng. 85 (1963) 528-533.
 */
export function parisCrack(start: number, cycles: number, law: ParisLaw): number {
  refuse(law, start);
  if (!(cycles >= 0 && cycles < Infinity)) impossible("cycles", cycles, "0 or more");
  if (start >= law.longest) return law.longest;
  const grown = firstShare(start, law) * cycles; // in units of the starting length
  const q = 1 - law.exponent / 2;
  if (Math.abs(q) < 1e-9) return Math.min(law.longest, start * Math.exp(grown));
  if (1 + q * grown <= 0) return law.longest; // past the moment at which the closed form runs away
  return Math.min(law.longest, start * Math.exp(Math.log1p(q * grown) / q));
}

/** Cycles that take a crack from one length [m] to a longer one; undefined when it never gets there. */
export function parisCycles(start: number, end: number, law: ParisLaw): number | undefined {
  refuse(law, start);
  if (!(end >= start && end < Infinity)) impossible("end", end, "no shorter than the start");
  if (end === start) return 0;
  const share = firstShare(start, law);
  if (share === 0) return undefined;
  const q = 1 - law.exponent / 2;
  const ratio = Math.log(end / start);
  return (Math.abs(q) < 1e-9 ? ratio : Math.expm1(q * ratio) / q) / share;
}

/**
 * Length [m] of a crack that grows from one length to another [m], after a share (0 to 1, held there) of the cycles that
 * takes: the same closed form when the time to the end is known instead of the constant C.
 */
export function parisBetween(start: number, end: number, exponent: number, share: number): number {
  if (!(start > 0 && start < Infinity)) impossible("start", start, "more than 0 m");
  if (!(end >= start && end < Infinity)) impossible("end", end, "no shorter than the start");
  if (!(exponent > 0 && exponent < 20)) impossible("exponent", exponent, "more than 0, below 20");
  if (!(share >= 0)) impossible("share", share, "0 or more");
  if (share >= 1) return end;
  const q = 1 - exponent / 2;
  const ratio = Math.log(end / start);
  if (Math.abs(q) < 1e-9) return start * Math.exp(share * ratio);
  return Math.min(end, start * Math.exp(Math.log1p(share * Math.expm1(q * ratio)) / q));
}
