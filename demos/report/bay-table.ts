// The bay card of the sound unit beside the same unit one, two and three quarts short.

import type { Band } from "../../src/bay/bands.ts";
import type { BayCard } from "../../src/bay/bay-card.ts";
import { asRead } from "../../src/bay/as-read.ts";
import type { BayRow } from "../../src/bay/bay-row.ts";
import { retold } from "../../src/units/retold.ts";
import { alone, inBoth, type Tell } from "./said.ts";

import type { UnitSystem } from "../../src/units/show.ts";
import type { Cell, Table } from "./table.ts";

export function bayTable(cards: readonly BayCard[]): Table {
  const lines = cards.map(({ rows, misreadings }) => [...rows, ...misreadings]);
  const misread = cards[0]!.rows.length;
  return {
    title: "The bay card: the tight unit tested with correct fill and short of fluid",
    columns: [
      { says: "test" },
      { says: "a sound unit" },
      ...cards.map(({ shortage }) => ({
        says: inBoth((system) => shortText(shortage, alone(system))),
        right: true,
      })),
    ],
    rows: lines[0]!.map((first, r) => [
      inBoth(
        (system) => `${r >= misread ? "misread " : ""}${first.test}: ${retold(first.condition, system)}`,
      ),
      inBoth((system) => bandText(first.band, first, system)),
      ...lines.map((rows) =>
        cell(
          rows[r]!,
          lines.some((other) => other[r]!.note !== first.note),
        ),
      ),
    ]),
    grave: (r) => r < misread && lines.some((rows) => rows[r]!.verdict !== "within"),
  };
}

const shortText = (shortage: number, tell: Tell): string =>
  shortage === 0 ? "correct fill" : `${tell(shortage, "volume")} short`;

/** The reading; what was seen besides is told only if it is not the same on every card. */
function cell({ value, kind, verdict, note }: BayRow, tell: boolean): Cell {
  const mark = verdict === "within" ? {} : { mark: verdict };
  const beside = note === undefined || !tell ? {} : { note };
  const same = (text: string): Cell => ({ US: text, SI: text, ...mark, ...beside });
  if (value === null) return same("not reached");
  if (kind === "seconds") return same(`${value.toFixed(2)} s`);
  return kind === "ratio"
    ? same(value.toFixed(2))
    : { ...inBoth((system) => asRead(value, kind, system)), ...mark, ...beside };
}

function bandText(
  { low, high, kind: origin }: Band,
  { kind }: Pick<BayRow, "kind">,
  system: UnitSystem,
): string {
  const text = (value: number) =>
    kind === "seconds" ? `${value} s` : kind === "ratio" ? String(value) : asRead(value, kind, system);
  // Nothing that is read can lie under 0 but a level.
  const span =
    low === null || (low === 0 && high !== null)
      ? `at most ${text(high!)}`
      : high === null
        ? `at least ${text(low)}`
        : `${text(low)} to ${text(high)}`;
  return `${span}, ${origin === "common practice" ? "practice" : origin}`;
}
