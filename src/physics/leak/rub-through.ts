// A line that rubs on a bracket or on a second line until the wall is gone.
import { impossible, type Range } from "../../errors.ts";
import { shut, type GrowingOpening } from "./flow.ts";
import { dischargeLimit, holeOpeningInto } from "./hole.ts";

export const wearRange: Range = {
  law: "wear by rubbing",
  quantity: "wear coefficient",
  unit: "1",
  low: 1e-7,
  high: 1e-1,
  source: "fretting 1e-6 to 1e-4, adhesive 1e-4, abrasive 1e-2 to 1e-1 (lecture and encyclopedia tables)",
};

/** Volume [m³] worn off the softer body of a hardness [Pa] by a force [N] over a slid distance [m]: k F s/H. Archard (1953). */
export function wornVolume(coefficient: number, force: number, distance: number, hardness: number): number {
  if (!(coefficient >= 0 && coefficient < Infinity)) impossible("coefficient", coefficient, "0 or more");
  if (!(force >= 0 && force < Infinity)) impossible("force", force, "0 N or more");
  if (!(distance >= 0 && distance < Infinity)) impossible("distance", distance, "0 m or more");
  if (!(hardness > 0 && hardness < Infinity)) impossible("hardness", hardness, "more than 0 Pa");
  return (coefficient * force * distance) / hardness;
}

/** Distance [m] slid in so many seconds by a to-and-fro motion of an amplitude [m] at a frequency [Hz]: 4 a f t. */
export function slidDistance(amplitude: number, frequency: number, seconds: number): number {
  if (!(amplitude >= 0 && amplitude < Infinity)) impossible("amplitude", amplitude, "0 m or more");
  if (!(frequency >= 0 && frequency < Infinity)) impossible("frequency", frequency, "0 Hz or more");
  if (!(seconds >= 0 && seconds < Infinity)) impossible("seconds", seconds, "0 s or more");
  return 4 * amplitude * frequency * seconds;
}

/** Seconds until a volume [m³] (patch times wall) is worn away at a wear rate [m³/s]; undefined when nothing wears. */
export function rubThroughTime(volume: number, wearRate: number): number | undefined {
  if (!(volume >= 0 && volume < Infinity)) impossible("volume", volume, "0 m³ or more");
  if (!(wearRate >= 0 && wearRate < Infinity)) impossible("wearRate", wearRate, "0 m³/s or more");
  return wearRate === 0 ? undefined : volume / wearRate;
}

/** Running time for which the depth of a rubbed flat is told [s]. */
const hundredHours = 360_000;

/** Area [m²] of the flat's cross-section: what is gone of a round tube of an outer radius when rubbed to a depth [m, 0 to radius]. */
export function flatArea(radius: number, depth: number): number {
  if (!(radius > 0 && radius < Infinity)) impossible("radius", radius, "more than 0 m");
  if (!(depth >= 0 && depth <= radius)) impossible("depth", depth, "0 m to the radius");
  const angle = 2 * Math.asin(Math.sqrt((0.5 * depth) / radius));
  return radius * (radius * (angle - 0.5 * Math.sin(2 * angle)));
}

/** Depth [m] of a flat of a cross-section [m²]: `flatArea` read the other way by Newton's rule, at most the radius. */
export function flatDepth(radius: number, area: number): number {
  if (!(radius > 0 && radius < Infinity)) impossible("radius", radius, "more than 0 m");
  if (!(area >= 0 && area < Infinity)) impossible("area", area, "0 m² or more");
  if (area >= 0.5 * Math.PI * radius * radius) return radius;
  const share = area / radius / radius;
  if (share === 0) return 0;
  // For a shallow flat the share is 2/3 of the angle's cube; the rule is convex, so it closes in from above.
  let angle = Math.cbrt(1.5 * share);
  for (let turn = 0; turn < 30; turn += 1) {
    const sine = Math.sin(angle);
    const off = (angle - 0.5 * Math.sin(2 * angle) - share) / (2 * sine * sine);
    angle -= off;
    if (Math.abs(off) < 1e-15 * angle) break;
  }
  const half = Math.sin(0.5 * angle);
  return 2 * radius * half * half;
}

function refuseTube(radius: number, wall: number, depthInHundredHours: number): void {
  if (!(wall > 0 && wall < radius)) impossible("wall", wall, "more than 0 m, less than the radius");
  if (!(depthInHundredHours > 0 && depthInHundredHours <= radius))
    impossible("depthInHundredHours", depthInHundredHours, "more than 0 m, at most the radius");
}

/**
 * Running seconds in which the flat goes from one depth [m] through the wall [m] of a tube of an outer radius [m]; 0 when
 * it is through. Archard (1953): force, motion and hardness stay as they are, so an equal volume goes each hour, and the
 * flat, which widens, deepens ever more slowly.
 */
export function timeToThrough(
  radius: number,
  wall: number,
  depth: number,
  depthInHundredHours: number,
): number {
  refuseTube(radius, wall, depthInHundredHours);
  const left = flatArea(radius, wall) - flatArea(radius, depth);
  return left > 0 ? rubThroughTime(left, flatArea(radius, depthInHundredHours) / hundredHours)! : 0;
}

/** The tube that was asked about last, what is gone of its cross-section when it is through [m²], and what goes each second [m²/s]: one leak is asked again and again. */
const asked = { radius: 0, wall: 0, depthInHundredHours: 0, through: 0, perSecond: 0 };

function ask(radius: number, wall: number, depthInHundredHours: number): void {
  if (asked.radius === radius && asked.wall === wall && asked.depthInHundredHours === depthInHundredHours)
    return;
  refuseTube(radius, wall, depthInHundredHours);
  asked.through = flatArea(radius, wall);
  asked.perSecond = flatArea(radius, depthInHundredHours) / hundredHours;
  asked.radius = radius;
  asked.wall = wall;
  asked.depthInHundredHours = depthInHundredHours;
}

/** Width [m] of the slot that the flat has cut from the bore so many running seconds after it came through: its chord. */
function chordAfter(radius: number, wall: number, depthInHundredHours: number, seconds: number): number {
  ask(radius, wall, depthInHundredHours);
  if (!(seconds >= 0 && seconds < Infinity)) impossible("seconds", seconds, "0 s or more");
  const bore = radius - wall;
  const gone = asked.through + asked.perSecond * seconds;
  const into = Math.max(0, flatDepth(radius, gone) - wall); // how far the flat reaches into the bore
  return 2 * Math.sqrt(into * (2 * bore - into));
}

/**
 * Diameter [m] of a round hole as large as the slot that the flat has opened so many running seconds after it came
 * through: as long as the contact [m], as wide as the chord that the flat cuts from the bore. Ends at the bore.
 */
export function rubbedMouth(
  radius: number,
  wall: number,
  contact: number,
  depthInHundredHours: number,
  seconds: number,
): number {
  if (!(contact > 0 && contact < Infinity)) impossible("contact", contact, "more than 0 m");
  const chord = chordAfter(radius, wall, depthInHundredHours, seconds);
  return Math.min(2 * (radius - wall), Math.sqrt((4 / Math.PI) * contact * chord));
}

/**
 * What that slot is to the flow, written into a record that is kept: arguments as of `rubbedMouth`. The flat runs out to nothing where
 * it meets the bore, so the slot has no wall, only an edge: viscous = 6√π E/(w h²), w the longer side, h the shorter, E the complete
 * elliptic integral of k² = 1 − (h/w)²; inertial = 1/(2 C² w² h²) with C of a sharp edge. Never less than the open bore resists.
 * Source: creeping flow through an elliptical hole in a thin plate (Roscoe 1949, recalled), taken for a slot of equal area and
 * slenderness: a round hole's 24/d³ when it is as wide as long, within 5 % of a long slit's 32/(π w h²). E after Ramanujan (1914), to 0.04 %.
 */
export function rubbedOpeningInto(
  out: GrowingOpening,
  radius: number,
  wall: number,
  contact: number,
  depthInHundredHours: number,
  seconds: number,
): void {
  if (!(contact > 0 && contact < Infinity)) impossible("contact", contact, "more than 0 m");
  const chord = chordAfter(radius, wall, depthInHundredHours, seconds);
  const width = Math.max(contact, chord);
  const height = Math.min(contact, chord);
  holeOpeningInto(out, 2 * (radius - wall), wall);
  const flat = height / width;
  const skew = ((1 - flat) / (1 + flat)) ** 2;
  const E = (Math.PI / 4) * (1 + flat) * (1 + (3 * skew) / (10 + Math.sqrt(4 - 3 * skew)));
  const viscous = (6 * Math.sqrt(Math.PI) * E) / (width * height * height);
  const CA = dischargeLimit(0) * width * height;
  out.viscous = Math.min(shut, Math.max(out.viscous, viscous));
  out.inertial = Math.min(shut, Math.max(out.inertial, 1 / (2 * CA * CA)));
}
