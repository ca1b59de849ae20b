// What nobody knew, before the evidence and after it.

import { coordinateAt, valueAt, type Belief } from "../../chance/belief.ts";
import type { Origin } from "../../sources/origin.ts";
import type { Explanation } from "../causes.ts";
import type { Posterior } from "../posterior.ts";
import { place } from "../common.ts";
import { foretoldColumn, HARDLY, pooled, spreadIn } from "./pool.ts";
import type { Spread } from "./spread.ts";

export interface UnknownAnswer {
  readonly name: string;
  /** Numbers are those of the belief (SI) times `per`, in `unit`. */
  readonly unit: string;
  readonly per: number;
  readonly origin: Origin;
  readonly before: Spread;
  readonly after: Spread;
  /** Of which explanation, its way of growing or its cause; missing: of all together. */
  readonly law?: string;
}

const beliefSpread = (belief: Belief): Spread => {
  const at = (p: number) => valueAt(belief, coordinateAt(belief, p));
  return { middle: at(0.5), half: [at(0.25), at(0.75)], nineTenths: [at(0.05), at(0.95)] };
};

/** What only a leak has, of what is common: its age, what it left under the vehicle, its drops. */
const ofLeaks: readonly number[] = [place.age, place.soakedUp, place.drop];

/** What is common to all explanations over all of them (what only a leak has, where there hardly is one, left out), what is an explanation's own for every one that counts. */
export function unknownsIn(posterior: Posterior): UnknownAnswer[] {
  const { weighed } = posterior;
  const shared = weighed[0]!.explanation.unknowns.filter(({ name }) =>
    weighed.every(({ explanation }) => explanation.unknowns.some((other) => other.name === name)),
  );
  const opened = foretoldColumn(posterior, "opened", ({ opening }) => opening !== null);
  const leaks = opened.share > HARDLY;
  const all = shared.flatMap((unknown, j): UnknownAnswer[] => {
    if (!leaks && ofLeaks.includes(j)) return [];
    const { name, unit, per, origin, belief } = unknown;
    // The age is that of the calendar, whatever clock a guess counts it by, and of leaks only.
    if (j === place.age) {
      const ages = { ...opened, values: opened.values.map((when) => posterior.bench.visit.at - when) };
      return [{ name, unit, per, origin, before: beliefSpread(belief), after: spreadIn(ages) }];
    }
    const column = pooled(posterior, ({ runs }, r, row) => {
      const { values, dimensions } = runs[r]!.answer;
      return values[row * dimensions + j]!;
    });
    return [{ name, unit, per, origin, before: beliefSpread(belief), after: spreadIn(column) }];
  });
  const own = weighed
    .filter(({ share }) => share > HARDLY)
    .flatMap(({ explanation }) =>
      explanation.unknowns
        .slice(shared.length)
        .map(({ name, unit, per, origin, belief }, k): UnknownAnswer => {
          const column = pooled(
            posterior,
            ({ runs }, r, row) => {
              const { values, dimensions } = runs[r]!.answer;
              return values[row * dimensions + shared.length + k]!;
            },
            (other) => other === explanation,
          );
          return {
            name,
            unit,
            per,
            origin,
            before: beliefSpread(belief),
            after: spreadIn(column),
            law: ownerOf(explanation),
          };
        }),
    );
  return [...all, ...own];
}

const ownerOf = ({ cause, law }: Explanation): string =>
  cause === "slow leak" && law !== undefined ? law : cause === "older leak" ? `older leak, ${law!}` : cause;
