// What is believed before any evidence, where a visit's file says otherwise than the library: by the name of the unknown or the cause.

import { checkBelief, type Belief } from "../chance/belief.ts";
import { isCoded } from "../errors.ts";
import { believedCauses, explanationsOf, type Beliefs } from "../lookback/causes.ts";
import type { Believed } from "../lookback/laws.ts";
import type { Outline } from "../lookback/visit.ts";
import type { Kind } from "../units/kinds.ts";
import { parseQuantity } from "../units/parse.ts";
import { exampleOf } from "../units/kinds.ts";
import { didYouMean } from "./accepted.ts";
import type { FaultList } from "./fault-list.ts";
import { readPlain } from "./leaf.ts";
import type { PlainVisit } from "./visit-schema.ts";

/** The kind of quantity behind the unit that an unknown is told in. */
const kinds: Readonly<Record<string, Kind>> = {
  d: "time",
  h: "time",
  L: "volume",
  qt: "volume",
  mm: "length",
  µm: "length",
  MPa: "pressure",
};

/** Beliefs by name in SI; a fault for names that no explanation knows and numbers that say nothing. */
export function beliefsOf(
  { beliefs, causes }: Pick<PlainVisit, "beliefs" | "causes">,
  visit: Outline,
  list: FaultList,
): Beliefs {
  const known = new Map<string, Believed>();
  for (const { unknowns } of explanationsOf(visit))
    for (const unknown of unknowns) known.set(unknown.name, unknown);
  const unknowns: Record<string, Belief> = {};
  for (const [name, told] of Object.entries(beliefs)) {
    const path = `beliefs.${name}`;
    const unknown = known.get(name);
    wantName([...known.keys()], name, path, "unknowns", list);
    if (unknown === undefined) continue;
    const belief = beliefOf(told, path, unknown, list);
    if (belief !== null) unknowns[name] = belief;
  }
  const names = Object.keys(believedCauses);
  for (const name of Object.keys(causes)) wantName(names, name, `causes.${name}`, "causes", list);
  return { causes, unknowns };
}

function wantName(known: readonly string[], name: string, path: string, of: string, list: FaultList): void {
  const quoted = known.map((key) => `"${key}"`);
  list.want(
    known.includes(name),
    path,
    `one of the ${of}: ${quoted.join(", ")}`,
    `this name${didYouMean(quoted, `"${name}"`)}`,
  );
}

type ToldBelief = PlainVisit["beliefs"][string];

function beliefOf(told: ToldBelief, path: string, { unit }: Believed, list: FaultList): Belief | null {
  const kind = kinds[unit];
  const number = (field: string, text: unknown, plainly: boolean): number => {
    const parsed = kind === undefined || plainly ? readPlain(text) : parseQuantity(kind, text);
    if ("value" in parsed) return parsed.value;
    const plain = kind === undefined || plainly;
    list.want(
      false,
      `${path}.${field}`,
      plain ? "a number without unit" : `a ${kind} with its unit`,
      parsed.wrong,
      plain ? "0.4" : exampleOf(kind),
    );
    return Number.NaN;
  };
  const belief: Belief =
    "middle" in told
      ? {
          law: told.law,
          middle: number("middle", told.middle, false),
          spread: number("spread", told.spread, told.law === "lognormal"),
        }
      : { law: told.law, low: number("low", told.low, false), high: number("high", told.high, false) };
  if (Object.values(belief).some((value) => Number.isNaN(value))) return null;
  try {
    checkBelief(path, belief);
    return belief;
  } catch (error) {
    if (!isCoded(error)) throw error;
    list.faults.push(...error.faults);
    return null;
  }
}
