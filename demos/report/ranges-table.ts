// The inputs that are uncertain: what the case took, between which bounds the truth may lie, and who says so.

import type { Case } from "../../src/inputs/case.ts";
import { originText } from "../../src/sources/origin.ts";
import { inputText, inputWords } from "./input-words.ts";
import { inBoth } from "./said.ts";
import type { Cell, Table } from "./table.ts";

interface Row {
  readonly says: string;
  readonly owners: string[];
  readonly cells: readonly Cell[];
}

/** One row an input; clutches that have the same number from the same source share one. `paths` leaves all others out. */
export function rangesTable(
  { origins, unit }: Pick<Case, "origins" | "unit">,
  paths?: ReadonlySet<string>,
): Table {
  const { clutches } = unit.build;
  const rows = new Map<string, Row>();
  for (const [path, sourced] of Object.entries(origins)) {
    const { range, value, origin } = sourced;
    if (range === null || paths?.has(path) === false) continue;
    const [says, owner] = inputWords(path, clutches);
    const cells = [
      inBoth((system) => inputText(path, sourced, [value], system)),
      inBoth((system) => inputText(path, sourced, range, system)),
      origin === null ? "not said" : originText(origin),
    ];
    const key = owner === null ? path : JSON.stringify([says, cells]);
    const row: Row = rows.get(key) ?? { says, owners: [], cells };
    if (owner !== null) row.owners.push(owner);
    rows.set(key, row);
  }
  return {
    title: "Inputs with a range: the answer is as sure as these are",
    columns: [
      { says: "input" },
      { says: "taken", right: true },
      { says: "may be", right: true },
      { says: "who says so, in the case's own words", prose: true },
    ],
    rows: [...rows.values()].map(({ says, owners, cells }) => [
      owners.length === 0 ? says : `${says}, ${whose(owners, clutches.length + 1)}`,
      ...cells,
    ]),
  };
}

const whose = (owners: readonly string[], all: number): string =>
  owners.length === all ? "every clutch" : owners.join(", ");
