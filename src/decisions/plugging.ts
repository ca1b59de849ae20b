// A cooler of parallel passages that debris blocks, or narrows: what still flows.
import { fraction, impossible, notNegative, positive, type Range } from "../errors.ts";

function count(field: string, given: number, least: number): void {
  if (!(Number.isInteger(given) && given >= least && given <= Number.MAX_SAFE_INTEGER))
    impossible(field, given, `a whole number, ${least} or more`);
}

function checkBlocked(passages: number, blocked: number): void {
  count("passages", passages, 1);
  count("blocked", blocked, 0);
  if (blocked > passages) impossible("blocked", blocked, "no more than there are passages");
}

/** Share of the flow that is left at the same pressure difference, of equal laminar passages of which some are blocked: 1 − m/n. */
export function flowLeft(passages: number, blocked: number): number {
  checkBlocked(passages, blocked);
  return (passages - blocked) / passages;
}

/** How many times the pressure difference it takes for the same flow: n/(n − m). Infinity where all are blocked. */
export function pressureTimes(passages: number, blocked: number): number {
  checkBlocked(passages, blocked);
  return passages / (passages - blocked);
}

/**
 * Share of the flow that is left at the same pressure over line and cooler together, for their laminar resistances [1/m³] while
 * clean: (R_line + R_cooler)/(R_line + R_cooler n/(n − m)). A line that resists much hides a plugging cooler.
 */
export function flowLeftInLine(
  lineResistance: number,
  coolerResistance: number,
  passages: number,
  blocked: number,
): number {
  notNegative("lineResistance", lineResistance, "1/m³");
  positive("coolerResistance", coolerResistance, "1/m³");
  const times = pressureTimes(passages, blocked);
  if (times === Infinity) return 0;
  const ratio = lineResistance / coolerResistance;
  return ratio === Infinity ? 1 : (ratio + 1) / (ratio + times);
}

/** Passages that each get blocked with a probability, for themselves: how many that makes. */
export interface BlockedByChance {
  readonly mean: number;
  readonly deviation: number;
  /** Probability of just so many blocked, from none to all. */
  readonly probabilities: readonly number[];
}

const MOST_PASSAGES = 100_000;

/** The binomial law of how many of n passages are blocked, each with a probability. n up to 100 000. */
export function blockedByChance(passages: number, probability: number): BlockedByChance {
  count("passages", passages, 1);
  if (passages > MOST_PASSAGES) impossible("passages", passages, `up to ${MOST_PASSAGES}`);
  fraction("probability", probability);
  const mean = passages * probability;
  const deviation = Math.sqrt(mean * (1 - probability));
  const probabilities = new Array<number>(passages + 1).fill(0);
  if (probability === 0 || probability === 1) {
    probabilities[probability === 0 ? 0 : passages] = 1;
    return { mean, deviation, probabilities };
  }
  // Outwards from the likeliest number, each from its neighbour, so that none is lost below the smallest number.
  const odds = probability / (1 - probability);
  const likeliest = Math.min(passages, Math.floor((passages + 1) * probability));
  probabilities[likeliest] = 1;
  for (let k = likeliest + 1; k <= passages; k++)
    probabilities[k] = probabilities[k - 1]! * ((passages - k + 1) / k) * odds;
  for (let k = likeliest - 1; k >= 0; k--)
    probabilities[k] = (probabilities[k + 1]! * ((k + 1) / (passages - k))) / odds;
  const sum = probabilities.reduce((all, one) => all + one, 0);
  return { mean, deviation, probabilities: probabilities.map((one) => one / sum) };
}

function checkProbabilities({ probabilities }: BlockedByChance): void {
  if (probabilities.length < 2)
    impossible("probabilities", probabilities.length, "one for none, and for each passage");
  for (const probability of probabilities) fraction("probabilities", probability);
}

/** Probability that so many passages or more are blocked. */
export function blockedAtLeast(chance: BlockedByChance, least: number): number {
  checkProbabilities(chance);
  const { probabilities } = chance;
  count("least", least, 0);
  return probabilities.slice(least).reduce((sum, one) => sum + one, 0);
}

/**
 * Mean of n/(n − m) over all but a wholly blocked cooler: how many times the pressure difference it takes for the same flow. More
 * than at the mean number blocked: the mean of a ratio. Infinity where it is wholly blocked for sure.
 */
export function meanPressureTimes(chance: BlockedByChance): number {
  checkProbabilities(chance);
  const { probabilities } = chance;
  const passages = probabilities.length - 1;
  const open = probabilities.slice(0, passages);
  const sure = open.reduce((sum, one) => sum + one, 0);
  if (sure === 0) return Infinity;
  return open.reduce((sum, one, blocked) => sum + (one / sure) * (passages / (passages - blocked)), 0);
}

/** Passages left open by pieces larger than their gap, between two bounds. */
export interface OpenAfterPieces {
  /** Where pieces may clump and settle anywhere: expected, and its standard deviation. */
  readonly anywhere: number;
  readonly deviation: number;
  /** Where they follow the flow, which never leads into a blocked passage: each blocks another. */
  readonly followingFlow: number;
}

/**
 * Passages still open after so many pieces have come: n(1 − 1/n)^m where they land anywhere, n − m where they follow the flow.
 * Pieces know nothing of each other. Source: the classical problem of occupancy (Feller 1968, recalled).
 */
export function openAfterPieces(passages: number, pieces: number): OpenAfterPieces {
  count("passages", passages, 1);
  count("pieces", pieces, 0);
  const free = (others: number) =>
    passages > others ? Math.exp(pieces * Math.log1p(-others / passages)) : pieces === 0 ? 1 : 0;
  const one = free(1);
  // Two given passages: ln(1 − 2/n) − 2 ln(1 − 1/n) = ln(1 − 1/(n − 1)²), so that no large squares are subtracted.
  const joint =
    passages > 2
      ? Math.expm1(pieces * Math.log1p(-1 / (passages - 1) ** 2)) * one * one
      : free(2) - one * one;
  const variance = passages * (passages - 1) * joint + passages * one * (1 - one);
  return {
    anywhere: passages * one,
    deviation: Math.sqrt(Math.max(0, variance)),
    followingFlow: Math.max(0, passages - pieces),
  };
}

export const passageRange: Range = {
  law: "laminar flow in a cooler passage",
  quantity: "Re",
  unit: "1",
  low: 0,
  high: 2000,
  source: "Poiseuille; White, Viscous Fluid Flow (recalled): passages much longer than 0.06 Re diameters",
};

/** Fluid in a passage: its viscosity [Pa s] and density [kg/m³]. */
export interface PassageFluid {
  readonly viscosity: number;
  readonly density: number;
}

/** Flow [m³/s], mean velocity [m/s] and Reynolds number on the diameter, or on twice the gap. */
export interface PassageFlow {
  readonly flow: number;
  readonly velocity: number;
  readonly reynolds: number;
}

function flowing(
  flow: number,
  area: number,
  diameter: number,
  { viscosity, density }: PassageFluid,
): PassageFlow {
  const velocity = flow / area;
  const reynolds = (density / viscosity) * velocity * diameter;
  if (!(flow < Infinity && velocity < Infinity && reynolds < Infinity))
    impossible("flow in the passage", flow, "a number that is left with these sizes");
  return { flow, velocity, reynolds };
}

function checkPassage(pressure: number, length: number, { viscosity, density }: PassageFluid): void {
  notNegative("pressure", pressure, "Pa");
  positive("length", length, "m");
  positive("viscosity", viscosity, "Pa s");
  positive("density", density, "kg/m³");
}

/** Laminar flow in a round passage of a diameter and length [m] under a pressure difference [Pa]: π Δp d⁴/(128 µ L) (Hagen and Poiseuille). */
export function tubePassage(
  diameter: number,
  length: number,
  pressure: number,
  fluid: PassageFluid,
): PassageFlow {
  positive("diameter", diameter, "m");
  checkPassage(pressure, length, fluid);
  const area = (Math.PI / 4) * diameter * diameter;
  const velocity = ((pressure / 32) * diameter * (diameter / length)) / fluid.viscosity;
  return flowing(velocity * area, area, diameter, fluid);
}

/**
 * Laminar flow in a slot of a width, a gap up to the width and a length [m] under a pressure difference [Pa]: w g³ Δp/(12 µ L),
 * less for its ends: ×(1 − 0.630 gap/width). Source: White, Viscous Fluid Flow (recalled); 12 % low for a square.
 */
export function slotPassage(
  width: number,
  gap: number,
  length: number,
  pressure: number,
  fluid: PassageFluid,
): PassageFlow {
  positive("width", width, "m");
  if (!(gap > 0 && gap <= width)) impossible("gap", gap, "more than 0, up to the width");
  checkPassage(pressure, length, fluid);
  const area = width * gap;
  const velocity = (((pressure / 12) * gap * (gap / length)) / fluid.viscosity) * (1 - (0.63 * gap) / width);
  return flowing(velocity * area, area, 2 * gap, fluid);
}

/** Share of a bore or gap that a deposit on both walls leaves: 1 − 2δ/d. */
function leftOpen(deposit: number, across: number, field: string): number {
  positive(field, across, "m");
  notNegative("deposit", deposit, "m");
  if (2 * deposit > across) impossible("deposit", deposit, `half the ${field} at most`);
  return 1 - (2 * deposit) / across;
}

/** Share of the flow that a deposit [m] on the wall of a tube leaves at the same pressure difference: (1 − 2δ/d)⁴. */
export function flowPastDepositInTube(deposit: number, diameter: number): number {
  return leftOpen(deposit, diameter, "diameter") ** 4;
}

/** The same on both walls of a slot much wider than its gap: (1 − 2δ/g)³. */
export function flowPastDepositInSlot(deposit: number, gap: number): number {
  return leftOpen(deposit, gap, "gap") ** 3;
}
