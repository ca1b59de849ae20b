// What an answer warns its reader of: ways of asking that are known to make it too sure.

import type { Posterior } from "../posterior.ts";
import { among, foretoldColumn } from "./pool.ts";

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
  return [...onlyOneLaw(posterior), ...leansOnTheFull(posterior)];
}

/** So much of the answer within the first tenth of the time leans on the date of the last full. */
const LEANS = 0.2;

function leansOnTheFull(posterior: Posterior): string[] {
  const opened = foretoldColumn(posterior, "opened", ({ opening }) => opening !== null);
  if (!(opened.share > 0)) return [];
  const { at } = posterior.bench.visit;
  const early = among(opened, (when) => when < 0.1 * at).share / opened.share;
  if (early < LEANS) return [];
  return [
    "Much of the answer lies close to when it was last full. A leak that was there before that, and was topped up then, would look the same: it may be older than is told here.",
  ];
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
