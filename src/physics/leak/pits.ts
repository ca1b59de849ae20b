// Pitting and rust: depth as a power of time.
import { impossible, type Range } from "../../errors.ts";

export const pitRange: Range = {
  law: "depth of pits and rust",
  quantity: "time",
  unit: "s",
  low: 0,
  high: 20 * 3.15576e7,
  source: "Godard (1960) for pits in aluminium; ISO 9224 for loss in the open, up to 20 years",
};

/**
 * Exponents of depth against time: pits in aluminium (Godard 1960), rust of carbon steel and loss of aluminium (ISO 9224:2012,
 * table 2: 0.523 read in a public implementation, 0.728 recalled; its 0.813, sometimes quoted for aluminium, is zinc's).
 */
export const corrosionExponent = { aluminiumPits: 1 / 3, steelRust: 0.523, aluminiumLoss: 0.728 } as const;

function refuse(knownDepth: number, knownTime: number, exponent: number): void {
  if (!(knownDepth >= 0 && knownDepth < Infinity)) impossible("knownDepth", knownDepth, "0 m or more");
  if (!(knownTime > 0 && knownTime < Infinity)) impossible("knownTime", knownTime, "more than 0 s");
  if (!(exponent > 0 && exponent <= 2)) impossible("exponent", exponent, "more than 0, up to 2");
}

/** Depth [m] after so many seconds of exposure, from a depth known at one time: d = d₁(t/t₁)^n. */
export function corrosionDepth(
  knownDepth: number,
  knownTime: number,
  seconds: number,
  exponent: number,
): number {
  refuse(knownDepth, knownTime, exponent);
  if (!(seconds >= 0 && seconds < Infinity)) impossible("seconds", seconds, "0 s or more");
  return knownDepth * (seconds / knownTime) ** exponent;
}

/**
 * Width [m] of the mouth of a pit so many seconds after it came through the wall, from a width known at one time: the
 * same power law counted from then on, for the pit goes on growing sideways as it has inwards (assumed), up to the bore.
 * The seconds are those of the calendar: corrosion needs moisture, not a running engine.
 */
export function pitMouth(
  knownWidth: number,
  knownTime: number,
  seconds: number,
  exponent: number,
  bore: number,
): number {
  if (!(bore >= 0 && bore < Infinity)) impossible("bore", bore, "0 m or more");
  return Math.min(bore, corrosionDepth(knownWidth, knownTime, seconds, exponent));
}

/** Seconds of exposure until a depth [m] is reached, such as the wall: twice the wall of aluminium lasts 8 times as long. */
export function corrosionTime(
  knownDepth: number,
  knownTime: number,
  depth: number,
  exponent: number,
): number {
  refuse(knownDepth, knownTime, exponent);
  if (!(knownDepth > 0)) impossible("knownDepth", knownDepth, "more than 0 m");
  if (!(depth >= 0 && depth < Infinity)) impossible("depth", depth, "0 m or more");
  return knownTime * (depth / knownDepth) ** (1 / exponent);
}
