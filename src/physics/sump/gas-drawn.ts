// How much of what the pickup draws is gas, between the depths that its flow sets: a path over the mouth asks for many depths at one flow.

/** A mouth is covered from so many times the depth on that its rim needs. */
export const SPARE = 1.05;

/** Depth over the mouth [m] from which on it is covered: the onset of air drawing [m], and somewhat more than its rim needs [m]. */
export const coverDepth = (onset: number, weir: number): number => Math.max(onset, SPARE * weir);

/** Gas fraction drawn at a submergence [m], for a flow whose rim limits the liquid below `weir` and which covers the mouth from `cover` on [m]: as `gasFraction`. */
export function gasBetween(
  pickup: { readonly baseGas: number; readonly weirGas: number },
  submergence: number,
  weir: number,
  cover: number,
): number {
  if (submergence >= cover) return pickup.baseGas;
  if (submergence <= 0) return 1;
  if (submergence >= weir)
    return pickup.weirGas + ((pickup.baseGas - pickup.weirGas) * (submergence - weir)) / (cover - weir);
  const ratio = submergence / weir;
  return 1 - (1 - pickup.weirGas) * ratio * Math.sqrt(ratio);
}
