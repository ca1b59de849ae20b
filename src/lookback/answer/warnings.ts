// What an answer warns its reader of: ways of asking that are known to make it too sure.

import type { Posterior } from "../posterior.ts";

/**
 * How often an interval that should hold the age of the leak in nine of ten cases does so when only one way of growing is allowed and the leak grew
 * another way: the least share of hundreds of made-up visits (tests/lookback/grown-otherwise.law measures them).
 */
export const heldWhenGrownOtherwise: Readonly<Record<string, number>> = {
  steady: 0.12,
  creeping: 0.63,
  cracking: 0.3,
  rusting: 0.47,
};

/** Below this share an interval of nine in ten is not to be trusted. */
const TOO_FEW = 0.8;

export function warningsIn(posterior: Posterior): string[] {
  return onlyOneLaw(posterior);
}

function onlyOneLaw({ weighed }: Posterior): string[] {
  const allowed = weighed.filter(({ explanation }) => explanation.cause === "slow leak");
  if (allowed.length !== 1) return [];
  const { law, says } = allowed[0]!.explanation;
  const held = heldWhenGrownOtherwise[law!] ?? 1;
  if (held >= TOO_FEW) return [];
  return [
    `Only one way of growing was allowed (${says}). Where a leak grew another way, intervals of nine in ten held its age in as few as ` +
      `${Math.round(10 * held)} of ten made-up cases: allow the others too.`,
  ];
}
