// No public function answers NaN, whatever number it is given: it computes or refuses, with a code and the field.
import { describe, expect, it } from "vitest";
import * as sumpfall from "../../src/index.ts";
import {
  bayRows,
  chainRows,
  drivingRows,
  dutyRows,
  ensembleRows,
  lookbackRows,
  rootRows,
  unitRows,
} from "./around.ts";
import { clutchRows, damageRows, heatRows, loadRows } from "./clutch-to-load.ts";
import { decisionRows } from "./deciding.ts";
import { fluidRows, leakRows } from "./fluid-and-leak.ts";
import { sumpRows, supplyRows } from "./sump-and-supply.ts";
import { wrongAnswers, type Question, type Unasked } from "./walk.ts";

type Row = readonly unknown[] | Question | Unasked;

const rows: Readonly<Record<string, Readonly<Record<string, Row>>>> = {
  "": rootRows,
  bay: bayRows,
  chain: chainRows,
  clutch: clutchRows,
  damage: damageRows,
  decisions: decisionRows,
  driving: drivingRows,
  duty: dutyRows,
  ensemble: ensembleRows,
  fluid: fluidRows,
  heat: heatRows,
  leak: leakRows,
  load: loadRows,
  lookback: lookbackRows,
  sump: sumpRows,
  supply: supplyRows,
  units: unitRows,
};

const groups: Readonly<Record<string, object>> = Object.fromEntries([
  ["", sumpfall],
  ...Object.entries(sumpfall).filter(([name, value]) => name in rows && typeof value === "object"),
]);

const functionsIn = (group: object): readonly (readonly [string, Question["ask"]])[] =>
  Object.entries(group).filter((entry): entry is [string, Question["ask"]] => typeof entry[1] === "function");

describe("a number that cannot be", () => {
  it("is asked of every public function, or is said why not", () => {
    const objects = Object.entries(sumpfall).filter(
      ([, value]) => typeof value === "object" && !Array.isArray(value),
    );
    expect(Object.keys(rows).sort()).toEqual(["", ...objects.map(([name]) => name)].sort());
    for (const [name, group] of Object.entries(groups))
      expect(Object.keys(rows[name]!).sort(), name).toEqual(
        functionsIn(group)
          .map(([key]) => key)
          .sort(),
      );
  });

  it.each(Object.keys(rows))("gives no NaN and no uncoded error: sumpfall.%s", (name) => {
    const wrong = functionsIn(groups[name]!).flatMap(([key, ask]) => {
      const row = rows[name]![key]!;
      if ("because" in row) return [];
      return wrongAnswers(`${name}.${key}`, "ask" in row ? row : { numbers: row, ask });
    });
    expect(wrong).toEqual([]);
  });
});
