// Where the doubt about an event comes from: Sobol indices of a case, by many runs of it.

import { impossible } from "../errors.ts";
import { eventOf, type Measure } from "./bands.ts";
import { runDraws, type Working } from "./ensemble.ts";
import { valuesAt, variable } from "./members.ts";
import type { Outcome } from "./outcome.ts";
import { pickFreeze, sobolIndices, type SobolIndex } from "./sobol.ts";
import type { Uncertain, Varying } from "./uncertain.ts";

export interface VarianceOptions extends Varying, Working {
  /** Rows of the design, from 2; it takes rows × (inputs + 2) histories. A few hundred give indices to about a tenth; under 64 their intervals are a little too narrow. */
  readonly rows: number;
  readonly seed: number;
}

/** The outcomes of a pick-freeze design, row by row. */
export interface VarianceStudy {
  readonly inputs: readonly Uncertain[];
  readonly a: readonly Outcome[];
  readonly b: readonly Outcome[];
  readonly ab: readonly (readonly Outcome[])[];
  /** Which rows of the design they are: a row is left out whole when one of its draws contradicts itself. */
  readonly rows: readonly number[];
  readonly dropped: number;
}

/** How an input bears on an event, the most important first. */
export interface VarianceTable {
  readonly method: string;
  readonly key: string;
  readonly measure: Measure;
  readonly rows: number;
  /** The variance is that of the logarithm: the values span more than a decade. */
  readonly logarithmic: boolean;
  /** Histories that ended before the event came: they count with their end. */
  readonly ended: number;
  readonly inputs: readonly ({ readonly path: string } & SobolIndex)[];
}

/** Runs the design. Deterministic, whatever the number of workers; rejects as `ensemble` does. */
export async function varianceStudy(caseData: unknown, options: VarianceOptions): Promise<VarianceStudy> {
  const { inputs, at } = variable(caseData, options);
  const points = pickFreeze(options.rows, inputs.length, options.seed);
  const draws = [points.a, points.b, ...points.ab].map((rows) => rows.map((row) => valuesAt(inputs, row)));
  const possible = Array.from({ length: options.rows }, (_, j) => j).filter((j) =>
    draws.every((rows) => at(rows[j]!) !== null),
  );
  if (possible.length < 2)
    impossible(
      "rows",
      possible.length,
      "2 or more rows of which every draw can be a unit; narrow the ranges",
    );
  const outcomes = await runDraws(
    caseData,
    options,
    draws.flatMap((rows) => possible.map((j) => rows[j]!)),
    options,
  );
  const n = possible.length;
  const [a, b, ...ab] = draws.map((_, block) => outcomes.slice(block * n, (block + 1) * n) as Outcome[]);
  return { inputs, a: a!, b: b!, ab, rows: possible, dropped: options.rows - n };
}

/** The indices of an event: of its running time (or what is measured), or that of the end where it had not come by then. */
export function varianceOf(study: VarianceStudy, key: string, measure: Measure = "running"): VarianceTable {
  const valueOf = (outcome: Outcome) => (eventOf(outcome, key) ?? outcome.end)[measure];
  const answers = [study.a, study.b, ...study.ab].map((outcomes) => Float64Array.from(outcomes, valueOf));
  const [low, high] = answers
    .flatMap((column) => [...column])
    .reduce(
      ([least, most], value) => [Math.min(least, value), Math.max(most, value)] as [number, number],
      [Infinity, -Infinity],
    );
  const logarithmic = low > 0 && high / low > 10;
  const [a, b, ...ab] = logarithmic ? answers.map((column) => column.map(Math.log)) : answers;
  const indices = sobolIndices(a!, b!, ab, 1, study.rows);
  return {
    method:
      "Sobol indices by pick and freeze: first order after Saltelli (2010), total after Jansen (1999), intervals by drawing again from eight sequences",
    key,
    measure,
    rows: a!.length,
    logarithmic,
    ended: [study.a, study.b, ...study.ab].flat().filter((outcome) => eventOf(outcome, key) === undefined)
      .length,
    inputs: study.inputs
      .map(({ path }, i) => ({ path, ...indices[i]! }))
      .sort((one, other) => other.total - one.total || (one.path < other.path ? -1 : 1)),
  };
}
