// Whether the books close.

import type { History } from "../../src/history/simulate.ts";

export function booksText({ closure }: Pick<History, "closure">): string {
  const part = (gap: number) => gap.toExponential(1);
  return (
    "Nothing gets lost in the reckoning: what came in, what went out and what is still there agree " +
    `to ${part(closure.mass)} of the fluid filled in, ${part(closure.leaked)} of what leaked and ${part(closure.energy)} of the heat that passed (1e-9, a part in a billion, is asked for).`
  );
}
