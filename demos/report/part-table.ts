// What goes with a leak: its parts and why, and how much fluid goes in by what was emptied.

import { goneWith, type Ruined } from "../../src/decisions/renewal.ts";
import { refills, type Emptying } from "../../src/decisions/refill.ts";
import type { ClutchFate } from "../../src/history/simulate.ts";
import type { Unit } from "../../src/physics/build.ts";
import { alone, inBoth } from "./said.ts";
import { amount, type Cell, type Table } from "./table.ts";

/** Fluid is poured as cold as the bay [K]. */
const BAY = 293.15;

/** How likely each part is gone, in words. */
export type Gone = Readonly<Record<"line" | "cooler" | "converter" | "clutches", string>> & {
  /** Left out where nothing is known of the other joints. */
  readonly joints?: string;
  readonly ofJoints?: string;
};

export function partTable(title: string, gone: Gone): Table {
  const rows: Cell[][] = [
    [
      "what leaks",
      gone.line,
      "line, fitting, pan or seal: renewed, not patched, and watched under pressure, idling hot",
    ],
    [
      "fluid and filter",
      "always",
      "what is left is aged and has run with air; what clutches shed lies in the filter",
    ],
    ...(gone.joints === undefined ? [] : [["other joints of the lines", gone.joints, gone.ofJoints ?? ""]]),
    [
      "cooler",
      gone.cooler,
      "it leaks into the coolant; or a clutch has burnt, and its debris lies in it: renewed, or flushed until its return runs clean and freely",
    ],
    [
      "converter",
      gone.converter,
      "its lock-up clutch has lost half of what it had to spare, or it holds the debris of a burnt clutch",
    ],
    ["clutches", gone.clutches, "a clutch or brake of the gears has lost half of what it had to spare"],
  ];
  return {
    title,
    columns: [{ says: "part" }, { says: "gone, or will leak", right: true }, { says: "why", prose: true }],
    rows,
    grave: (row) => rows[row]![1] === "yes",
  };
}

/** The same of a history, which knows: the last of its clutches is the lock-up's. */
export function goneIn(clutches: readonly Pick<ClutchFate, "damage">[]): Gone {
  const ruined: Omit<Ruined, "share"> = {
    clutches: clutches.slice(0, -1).some(({ damage }) => damage >= 0.5),
    lockUp: clutches.at(-1)!.damage >= 0.5,
    burnt: clutches.some(({ damage }) => damage >= 1),
  };
  const parts = goneWith(ruined);
  const told = (part: (typeof parts)[number]) => (parts.includes(part) ? "yes" : "no");
  return { line: "yes", cooler: told("cooler"), converter: told("converter"), clutches: told("clutches") };
}

const emptied: Readonly<Record<Emptying, string>> = {
  pan: "the pan alone",
  "pan, lines and cooler": "pan, lines and cooler",
  "pan, lines, cooler and converter": "pan, lines, cooler and converter",
  "all of it": "all of it, clutches too",
};

/** Of a unit that was full and has stood overnight; `own`: it is the vehicle's, not one that stands in. */
export function refillTable({ build, fluid }: Unit, own = true): Table {
  return {
    title: inBoth(
      (system) =>
        `Fluid that goes into a full unit drained after a night, poured at ${alone(system)(BAY, "temperature")}, by what was emptied${own ? "" : ": the invented van's, not yours"}`,
    ),
    columns: [
      { says: "emptied" },
      { says: "goes in", right: true },
      { says: "of it old afterwards", right: true },
    ],
    rows: refills(build, fluid, BAY).map((refill) => [
      emptied[refill.emptied],
      amount(refill.poured, "volume"),
      `${Math.round(100 * refill.old)} %`,
    ]),
  };
}
