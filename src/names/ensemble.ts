// The ensemble: a case over all that its uncertain numbers may be, and what its answer hangs on.

export * from "../ensemble/bands.ts";
export { ensemble, type Ensemble, type EnsembleOptions, type Working } from "../ensemble/ensemble.ts";
export { members, type Member, type Members } from "../ensemble/members.ts";
export {
  curveNames,
  keyOf,
  staying,
  type CurveName,
  type Happened,
  type Outcome,
  type Rows,
} from "../ensemble/outcome.ts";
export * from "../ensemble/quantiles.ts";
export { rankInputs, type InputRank, type RankTable } from "../ensemble/ranks.ts";
export { scrambledHalton, type Sequence } from "../ensemble/sequence.ts";
export * from "../ensemble/sobol.ts";
export { uncertain, withRanges, type Uncertain, type Varying } from "../ensemble/uncertain.ts";
export * from "../ensemble/variance.ts";
