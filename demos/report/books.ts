// Whether the books close, and which laws were stretched.

import type { History } from "../../src/history/simulate.ts";

export function booksText({ closure, outside }: Pick<History, "closure" | "outside">): string[] {
  const part = (gap: number) => gap.toExponential(1);
  return [
    `The books close to ${part(closure.mass)} of the fluid filled in, ${part(closure.leaked)} of what leaked and ` +
      `${part(closure.energy)} of the heat that passed (1e-9 is asked for).`,
    ...(outside.length === 0
      ? ["No watched law was used outside its range."]
      : outside.map((law) => `Outside its range: ${law}.`)),
  ];
}
