// The inputs that are uncertain: what the case took, between which bounds the truth may lie, and who says so.

import type { Case } from "../../src/inputs/case.ts";
import { originText } from "../../src/sources/origin.ts";
import { isRecord } from "./load-case.ts";
import type { Table } from "./table.ts";

export function rangesTable({ origins }: Pick<Case, "origins">, data: unknown): Table {
  const ranged = Object.entries(origins).filter(([, { range }]) => range !== null);
  return {
    title: "Inputs with a range: the answer is as sure as these are",
    columns: [
      { says: "input" },
      { says: "taken", right: true },
      { says: "may be", right: true },
      { says: "from", prose: true },
    ],
    rows: ranged.map(([path, { text, origin }]) => [
      path,
      text,
      rangeAsWritten(data, path),
      origin === null ? "not said" : originText(origin),
    ]),
  };
}

/** The range in the units in which the case gives it: "0.1 L to 0.5 L". */
function rangeAsWritten(data: unknown, path: string): string {
  let at = data;
  for (const key of path.split(/[.[\]]+/).filter((part) => part !== "")) {
    at = isRecord(at) || Array.isArray(at) ? (at as Record<string, unknown>)[key] : undefined;
  }
  const range = isRecord(at) ? at["range"] : undefined;
  return Array.isArray(range) ? range.map(String).join(" to ") : "as said in the case";
}
