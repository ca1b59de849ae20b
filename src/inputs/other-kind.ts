// A case where a visit belongs, and the other way round: told as that, in place of the many faults that either has as the other.

import { codedError } from "../errors.ts";

/** The keys that only the one kind of file has, and who takes it. */
const kinds = {
  case: { keys: ["start", "opens", "span", "entries"], who: "a case: readCase and `npm run demo` take it" },
  visit: {
    keys: ["lastFull", "visit", "evidence"],
    who: "a visit: readVisit and `npm run lookback` take it",
  },
} as const;

type Kind = keyof typeof kinds;

/** Refuses data that have keys of the other kind alone ("bad-case"). */
export function refuseOtherKind(wanted: Kind, json: object): void {
  const other: Kind = wanted === "case" ? "visit" : "case";
  const has = (kind: Kind) => kinds[kind].keys.some((key) => Object.hasOwn(json, key));
  if (has(wanted) || !has(other)) return;
  throw codedError("bad-case", [
    {
      path: wanted,
      expected: `a ${wanted} (${kinds[wanted].keys.join(", ")})`,
      given: kinds[other].who,
      example: "",
    },
  ]);
}
