// A case: one unit, its leak, the weeks it drives and when things happen, read from plain data with units.

import * as v from "valibot";
import type { Week } from "../driving/pattern.ts";
import { given } from "../units/parse.ts";
import { codedError } from "../errors.ts";
import type { Towed } from "../history/towing.ts";
import type { Build, Unit } from "../physics/build.ts";
import { viscosityLine } from "../physics/fluid/viscosity.ts";
import type { Sourced } from "../sources/origin.ts";
import { brokenPaths, distinct, isThere, within } from "./broken.ts";
import { buildContradictions } from "./build-contradictions.ts";
import { buildSchema } from "./build-schema.ts";
import { caseContradictions } from "./case-contradictions.ts";
import { caseSchema, type CaseTree } from "./case-schema.ts";
import { faultList } from "./fault-list.ts";
import { faultsOfShape, plain, type Drawn } from "./gather.ts";
import type { PlainBuild } from "./gears.ts";
import { entriesOf, opensOf, towedOf, type Entry, type Opens } from "./moments.ts";
import { refuseOtherKind } from "./other-kind.ts";
import { toBuild } from "./to-build.ts";
import { toLeak } from "./to-leak.ts";
import { toWeek, type ReadWeek } from "./to-week.ts";

export interface Case {
  readonly name: string;
  readonly unit: Unit;
  readonly week: Week;
  /** ISO date whose midnight is second 0, and the odometer then [m]. */
  readonly start: { readonly date: string; readonly odometer: number };
  /** How long it goes on [s]. */
  readonly span: number;
  /** Fluid short of the correct fill from the start [m³ at the fill temperature]; negative when overfull. */
  readonly fillShort: number;
  readonly opens: Opens;
  /** A trailer, and when it is towed. */
  readonly towed?: Towed;
  /** In the order of time. */
  readonly entries: readonly Entry[];
  readonly seed: number;
  /** What was passed over, taken for granted or mended in the drives of the week that were recorded, a sentence each. */
  readonly remarks: readonly string[];
  /** Every number by its path in the case file, as it was written, with where it comes from. */
  readonly origins: Readonly<Record<string, Sourced>>;
}

/**
 * Reads a case from JSON data; the build stands in it as data (files.ts puts it there from its own file).
 * Throws "bad-case" with every fault at once: numbers without or with the wrong unit, missing and unknown keys,
 * and parts that contradict each other. An empty sump, a severed line or a burnt clutch is a result, no fault.
 */
export function readCase(json: unknown): Case {
  return caseReader(json)();
}

/**
 * Reads a case once, to be built as often as wanted with some of its numbers drawn anew: by path, in SI, within what their
 * kind allows. Each call throws what `readCase` throws when the numbers contradict each other. The week stays as written.
 */
export function caseReader(json: unknown): (drawn?: Drawn) => Case {
  if (typeof json !== "object" || json === null || Array.isArray(json))
    throw codedError("bad-case", [
      {
        path: "case",
        expected: "an object",
        given: given(json),
        example: '{ "name": "...", "build": { ... } }',
      },
    ]);
  refuseOtherKind("case", json);
  const parsed = v.safeParse(caseSchema, json);
  const shape = faultsOfShape(caseSchema, parsed.issues);
  const broken = brokenPaths(parsed.issues ?? [], shape);
  let known: ReadWeek | null = null;
  return (drawn = {}) => {
    const origins: Record<string, Sourced> = {};
    const list = faultList([...shape]);
    const tree = plain(parsed.output as CaseTree, "", list.faults, origins, drawn);
    const there = (path: string) => isThere(tree, path) && !broken.some((bad) => within(bad, path));

    buildContradictions(
      there("build") || isThere(tree, "build") ? tree.build : {},
      (part) => there(`build.${part}`),
      list,
    );
    caseContradictions(tree, there, list);
    const read = known ?? (there("week") ? toWeek(tree.week, there("seed") ? tree.seed : 0, list) : null);
    if (list.faults.length > 0 || read === null) throw codedError("bad-case", distinct(list.faults));
    known = read;

    const { name, fluid, driver, surroundings, start, span, fillShort, seed } = tree;
    const unitFluid = {
      viscosity: viscosityLine(fluid.viscosity),
      density15: fluid.density15,
      shearLoss: fluid.shearLoss,
    };
    const leak = tree.leak === null ? null : toLeak(tree.leak, unitFluid, list);
    if (list.faults.length > 0) throw codedError("bad-case", list.faults);
    const { week, remarks } = read;
    const unit: Unit = { build: toBuild(tree.build), fluid: unitFluid, leak, driver, surroundings };
    const towed = towedOf(tree);
    return {
      name,
      unit,
      week,
      start,
      span,
      fillShort,
      opens: opensOf(tree),
      ...(towed === undefined ? {} : { towed }),
      entries: entriesOf(tree),
      seed,
      remarks,
      origins,
    };
  };
}

/** Reads a build alone, with the same faults as in a case; paths begin with `build.`. */
export function readBuild(json: unknown): {
  readonly build: Build;
  readonly origins: Readonly<Record<string, Sourced>>;
} {
  const origins: Record<string, Sourced> = {};
  const schema = v.strictObject({ build: buildSchema });
  const parsed = v.safeParse(schema, { build: json });
  const shape = faultsOfShape(schema, parsed.issues);
  const list = faultList([...shape]);
  const broken = brokenPaths(parsed.issues ?? [], shape);
  const tree = plain(parsed.output as { build: CaseTree["build"] }, "", list.faults, origins);
  const there = (part: string) =>
    isThere(tree, `build.${part}`) && !broken.some((bad) => within(bad, `build.${part}`));
  buildContradictions(isThere(tree, "build") ? tree.build : ({} as Partial<PlainBuild>), there, list);
  if (list.faults.length > 0) throw codedError("bad-case", distinct(list.faults));
  return { build: toBuild(tree.build), origins };
}
