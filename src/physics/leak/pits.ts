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

function refusePit(wall: number, aspect: number, exponent: number): void {
  if (!(wall > 0 && wall < Infinity)) impossible("wall", wall, "more than 0 m");
  if (!(aspect > 0 && aspect < Infinity)) impossible("aspect", aspect, "more than 0");
  if (!(exponent > 0 && exponent <= 2)) impossible("exponent", exponent, "more than 0, up to 2");
}

/**
 * Width [m] of the hole that a pit of a round bottom opens so many seconds after it came through a wall [m]: the circle that
 * the wall's far face cuts from it, d = 2 A √(p² − W²) with its depth p = W(1 + s/T)^n, so d = 2 A W √((1 + s/T)^(2n) − 1), up
 * to the bore [m]. T [s] is what the pit took to come through (`pierceTime`, or `corrosionTime` with the wall as the depth), A
 * its half width over its depth: 1 for half a ball, less for a narrow pit, more for a shallow one. It opens as the root of time,
 * whatever the exponent, and in the end as the depth does. Seconds are those of the calendar.
 * Source: geometry, on the power law of depth; that the pit keeps its shape is assumed.
 */
export function piercedMouth(
  wall: number,
  aspect: number,
  pierceTime: number,
  seconds: number,
  exponent: number,
  bore: number,
): number {
  refusePit(wall, aspect, exponent);
  if (!(pierceTime > 0)) impossible("pierceTime", pierceTime, "more than 0 s");
  if (!(seconds >= 0 && seconds < Infinity)) impossible("seconds", seconds, "0 s or more");
  if (!(bore >= 0 && bore < Infinity)) impossible("bore", bore, "0 m or more");
  const wider = Math.sqrt(Math.expm1(2 * exponent * Math.log1p(seconds / pierceTime)));
  return wider < Infinity ? Math.min(bore, aspect * (2 * wall * wider)) : bore;
}

/**
 * Seconds that a pit took through a wall [m], when the hole is so wide [m] so many seconds after: `piercedMouth` read the other
 * way, T = t₁/((1 + (d₁/(2 A W))²)^(1/(2n)) − 1). Infinite for no width: a pit that stands still at the far face.
 */
export function pierceTime(
  knownWidth: number,
  knownTime: number,
  wall: number,
  aspect: number,
  exponent: number,
): number {
  refusePit(wall, aspect, exponent);
  if (!(knownWidth >= 0 && knownWidth < Infinity)) impossible("knownWidth", knownWidth, "0 m or more");
  if (!(knownTime > 0 && knownTime < Infinity)) impossible("knownTime", knownTime, "more than 0 s");
  const deeper = Math.log1p((knownWidth / 2 / aspect / wall) ** 2) / (2 * exponent);
  // Below the least number that there is, a pit that widens so fast has come through at once.
  return Math.max(Number.MIN_VALUE, knownTime / Math.expm1(deeper));
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
