// The answer without chance: one or two unknowns, integrated panel by panel. An independent route beside the guesses.

import { checkBelief, coordinateOf, logDensity, reach, valueAt } from "../../chance/belief.ts";
import { impossible } from "../../errors.ts";
import { gaussLegendre } from "./gauss-legendre.ts";
import { wholeLikelihood, type Draws, type Problem, type Unknown } from "./problem.ts";
import { normalised } from "./weights.ts";

/** How far out of a belief is looked at [standard deviations]. */
const REACH = 7;
/** Nodes of a panel: pieces of a smooth likelihood are met to rounding long before. */
const NODES = 12;
const rule = gaussLegendre(NODES);

/** An axis of the integral, in the unknown's coordinate: nodes panel by panel, their weights, and the panels' edges. */
interface Axis {
  readonly points: Float64Array;
  readonly weights: Float64Array;
  readonly edges: readonly number[];
}

export interface ExactAnswer extends Draws {
  readonly axes: readonly Axis[];
}

/**
 * The answer of a problem with one or two unknowns by Gauss and Legendre's rule over panels that end where the likelihood jumps; guesses
 * are the nodes, with the weights that the integral gives them. So means, deviations and the evidence are right to many digits.
 * `panels` on each axis, 4 or more. Errors: three or more unknowns.
 */
export function exactAnswer(problem: Problem, panels = 24): ExactAnswer {
  const { unknowns } = problem;
  const n = unknowns.length;
  if (n < 1 || n > 2) impossible("unknowns", n, "1 or 2: more are for temperedAnswer");
  for (const { name, belief } of unknowns) checkBelief(name, belief);
  if (!(Number.isInteger(panels) && panels >= 4)) impossible("panels", panels, "a whole number, 4 or more");
  const axes = unknowns.map((unknown) => axisOf(unknown, panels));
  const count = axes.reduce((product, { points }) => product * points.length, 1);
  const values = new Float64Array(count * n);
  const logLikelihood = new Float64Array(count);
  const logWeights = new Float64Array(count);
  const guess = new Float64Array(n);
  for (let i = 0; i < count; i++) {
    let rest = i;
    let logWeight = 0;
    for (let j = n - 1; j >= 0; j--) {
      const { points: nodes, weights } = axes[j]!;
      const at = rest % nodes.length;
      rest = (rest - at) / nodes.length;
      values[i * n + j] = guess[j] = valueAt(unknowns[j]!.belief, nodes[at]!);
      logWeight += Math.log(weights[at]!) + logDensity(unknowns[j]!.belief, nodes[at]!);
    }
    logLikelihood[i] = wholeLikelihood(problem, guess);
    logWeights[i] = logWeight + logLikelihood[i]!;
  }
  const weights = new Float64Array(count);
  const logEvidence = normalised(logWeights, weights) + Math.log(count);
  return { values, count, dimensions: n, weights, logLikelihood, logEvidence, axes };
}

function axisOf({ belief, jumps = [] }: Unknown, panels: number): Axis {
  const [low, high] = reach(belief, REACH);
  const edges = [
    ...Array.from({ length: panels + 1 }, (_, i) => low + ((high - low) * i) / panels),
    ...jumps.map((value) => coordinateOf(belief, value)).filter((x) => x > low && x < high),
  ]
    .sort((a, b) => a - b)
    .filter((edge, i, all) => i === 0 || edge > all[i - 1]!);
  const points: number[] = [];
  const weights: number[] = [];
  for (let p = 1; p < edges.length; p++) {
    const half = 0.5 * (edges[p]! - edges[p - 1]!);
    for (let i = 0; i < NODES; i++) {
      points.push(edges[p - 1]! + half * (1 + rule.nodes[i]!));
      weights.push(half * rule.weights[i]!);
    }
  }
  return { points: Float64Array.from(points), weights: Float64Array.from(weights), edges };
}

/** The value of an unknown under which a share p of an exact answer lies, from 0 to 1, to about as many digits as its mean has. */
export function exactQuantile(
  problem: Problem,
  { axes, weights, dimensions }: ExactAnswer,
  unknown: number,
  p: number,
): number {
  const { points, weights: lengths, edges } = axes[unknown]!;
  const other = dimensions === 2 ? axes[1 - unknown]!.points.length : 1;
  const mass = new Float64Array(points.length);
  for (let i = 0; i < weights.length; i++)
    mass[unknown === dimensions - 1 ? i % points.length : Math.floor(i / other)]! += weights[i]!;
  let below = 0;
  let panel = 0;
  const massOf = (at: number) => {
    let sum = 0;
    for (let i = 0; i < NODES; i++) sum += mass[at * NODES + i]!;
    return sum;
  };
  while (panel < edges.length - 2 && below + massOf(panel) < p) below += massOf(panel++);
  const [low, high] = [edges[panel]!, edges[panel + 1]!];
  const first = panel * NODES;
  const nodes = points.subarray(first, first + NODES);
  const densities = Float64Array.from(nodes, (_, i) => mass[first + i]! / lengths[first + i]!);
  let [from, to] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (from + to);
    if (below + massUpTo(nodes, densities, low, middle) < p) from = middle;
    else to = middle;
  }
  return valueAt(problem.unknowns[unknown]!.belief, 0.5 * (from + to));
}

/** Integral of the polynomial through a panel's nodes from the panel's beginning to x. */
function massUpTo(nodes: Float64Array, densities: Float64Array, low: number, x: number): number {
  const half = 0.5 * (x - low);
  let sum = 0;
  for (let i = 0; i < NODES; i++)
    sum += half * rule.weights[i]! * through(nodes, densities, low + half * (1 + rule.nodes[i]!));
  return sum;
}

/** The polynomial through points, at x (Lagrange). */
function through(nodes: Float64Array, values: Float64Array, x: number): number {
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    let term = values[i]!;
    for (let j = 0; j < nodes.length; j++) if (j !== i) term *= (x - nodes[j]!) / (nodes[i]! - nodes[j]!);
    sum += term;
  }
  return sum;
}
