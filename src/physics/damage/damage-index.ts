import { finite, impossible, type Range } from "../../errors.ts";

/** Loss of friction by glazing: qualitative in print, so an input. */
export const glazeLossRange: Range = {
  law: "friction left by a glazed lining",
  quantity: "share of friction lost when fully glazed",
  unit: "1",
  low: 0.3,
  high: 0.5,
  source: "assumed; pore clogging lowers dynamic friction (Lubricants 8(7), 2020, 68), without a number",
};

function share(x: number): number {
  return x > 1 ? 1 : x > 0 ? x : 0;
}

/**
 * Share of its first capacity that a clutch has left at equal pressure [0..1]:
 * c = (1 − a glaze)(1 − char)(1 − wear/lining), wear and lining thickness in metres, a the share of friction that a
 * full glaze costs. Friction falls with glaze; charred lining carries nothing; a lining worn away has no friction left.
 */
export function capacityLeft(
  glaze: number,
  char: number,
  wear: number,
  lining: number,
  glazeLoss: number,
): number {
  if (!(lining > 0)) impossible("lining", lining, "a thickness above 0 m");
  if (!(Math.abs(glaze + char + wear + glazeLoss) < Infinity)) refuse(glaze, char, wear, glazeLoss);
  return (1 - share(glazeLoss) * share(glaze)) * (1 - share(char)) * (1 - share(wear / lining));
}

/**
 * Damage index of a clutch: D = (1 − c)/(1 − 1/m), with c the share of its first capacity that is left and m the margin
 * when new, its capacity at rated pressure over its rated torque. 0: as new. 1: at rated pressure it no longer carries
 * its rated torque. Above 1 it slips under rated torque; with nothing left D is m/(m − 1).
 */
export function damageIndex(left: number, margin: number): number {
  if (!(margin > 1)) impossible("margin", margin, "a margin above 1: new, it must carry its rated torque");
  if (!(left >= 0 && left <= 1)) impossible("left", left, "a share from 0 to 1");
  return (1 - left) / (1 - 1 / margin);
}

function refuse(glaze: number, char: number, wear: number, glazeLoss: number): void {
  finite("glaze", glaze);
  finite("char", char);
  finite("wear", wear, "m");
  finite("glazeLoss", glazeLoss);
}
