// Every sentence of the page that could be false, with what makes it true.

import { earlyAnswer } from "../../../src/lookback/early.ts";
import type { Claim } from "../parts/claim.ts";
import { factsAtFirst, readFacts, type Facts } from "./facts.ts";

/** What has leaked in a time over what leaks at its end, as a share of the time, of a flow that grows as a power of it. */
function missingOverFlow(power: number): number {
  const steps = 1000;
  let lost = 0;
  for (let i = 0; i < steps; i++) lost += ((i + 0.5) / steps) ** power / steps;
  return lost;
}

const mile = 1609.344;
const quart = 0.946352946e-3;
/** How long before the visit it opened, by the loss alone: the middle [s]. */
function age(changed: Partial<Facts>): number {
  const { visit, beliefs, seed } = readFacts({ ...factsAtFirst, ...changed });
  return visit.at - earlyAnswer(visit, seed, beliefs).opened.middle;
}

export const growing = {
  older: {
    says: "A leak that grew is older than what is missing divided by what drips now: twice as old if its flow grew evenly from nothing, three times if with the square of time.",
    holds: () => Math.abs(missingOverFlow(1) - 1 / 2) < 1e-3 && Math.abs(missingOverFlow(2) - 1 / 3) < 1e-3,
  },
  less: {
    says: "The same drops with less missing make it a younger leak.",
    holds: () => age({ missing: quart }) < age({ missing: 4 * quart }),
  },
  full: {
    says: "It cannot have leaked much longer than it is since it was last full, so the same facts after a shorter way make it younger.",
    holds: () => age({ since: 1200 * mile }) < age({ since: 4800 * mile }),
  },
} satisfies Record<string, Claim>;

export const claims: readonly Claim[] = Object.values(growing);
