// The pan: a box of fluid with a flat free surface, level or tilted.

import { finite, impossible, positive } from "../../errors.ts";

/**
 * A box-shaped pan [m]. x runs forward from the rear wall, y to the left from the right wall, z up from the
 * floor. `free` is the share of the box that is open to fluid (filter, valve body and ribs take the rest),
 * above 0 to 1.
 */
export interface Pan {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly free: number;
}

/** A depth below which a pan is empty [m]. */
const NOTHING = 1e-30;

const isPan = (pan: Pan): boolean =>
  pan.length > 0 &&
  pan.width > 0 &&
  pan.height > 0 &&
  pan.length + pan.width + pan.height < Infinity &&
  pan.free > 0 &&
  pan.free <= 1;

function check(pan: Pan): void {
  positive("pan length", pan.length, "m");
  positive("pan width", pan.width, "m");
  positive("pan height", pan.height, "m");
  if (!(pan.free > 0 && pan.free <= 1)) impossible("free share of the pan", pan.free, "above 0 to 1");
}

/** What the pan holds when full to the lid [m³]. */
export function panCapacity(pan: Pan): number {
  check(pan);
  return pan.free * pan.length * pan.width * pan.height;
}

/**
 * Depth over a level floor [m]: volume over free floor area, 0 when empty, the height of the pan when
 * overfull.
 */
export function meanDepth(pan: Pan, volume: number): number {
  if (!isPan(pan)) check(pan);
  const depth = volume / (pan.free * pan.length * pan.width);
  if (!(depth < Infinity)) finite("volume in the pan", volume, "m³");
  return depth <= 0 ? 0 : depth < pan.height ? depth : pan.height;
}

/** How high the fluid that the pan cannot hold stands over its lid [m]: as if its walls went on upwards. */
export function overLid(pan: Pan, volume: number): number {
  if (!isPan(pan)) check(pan);
  const floor = pan.free * pan.length * pan.width;
  const over = (volume - floor * pan.height) / floor;
  if (!(over < Infinity)) finite("volume in the pan", volume, "m³");
  return over > 0 ? over : 0;
}

/**
 * Depth of fluid [m] at the place (x, y) under a plane surface with the slopes tiltX (positive: deeper at the
 * rear, x = 0) and tiltY (positive: deeper at y = 0), for the volume [m³] in the pan. Exact for every
 * position of the plane, floor partly dry and lid partly wet included, and continuous in every argument. A
 * volume above the capacity fills the pan; none or a negative balance leaves it dry. Hydrostatics in a
 * uniformly accelerated frame.
 */
export function depthAt(
  pan: Pan,
  volume: number,
  tiltX: number,
  tiltY: number,
  x: number,
  y: number,
): number {
  const mean = meanDepth(pan, volume);
  if (mean === 0 || mean === pan.height) return mean;
  const riseX = Math.abs(tiltX) * pan.length;
  const riseY = Math.abs(tiltY) * pan.width;
  const half = 0.5 * (riseX + riseY);
  // How far the surface has fallen from the deepest corner to the place asked for.
  const fall =
    Math.abs(tiltX) * (tiltX >= 0 ? x : pan.length - x) + Math.abs(tiltY) * (tiltY >= 0 ? y : pan.width - y);
  if (!(Math.abs(fall) < Infinity)) impossible("tilt or place in the pan", fall, "finite numbers");
  if (mean + half <= pan.height && mean - half >= 0) return mean + half - fall;
  const rise = riseX < riseY ? riseX : riseY;
  const span = riseX < riseY ? riseY : riseX;
  const depth = cornerDepth(mean, rise, span, pan.height) - fall;
  return depth <= 0 ? 0 : depth < pan.height ? depth : pan.height;
}

/**
 * Height [m] over the floor, at the place (x, y), of the plane of a surface with these slopes over a mean depth [m, none below 0], in a
 * pan without a lid; negative where it has run under the dry floor. Concave in both slopes together. Same signs as `depthAt`.
 */
export function planeAt(pan: Pan, mean: number, tiltX: number, tiltY: number, x: number, y: number): number {
  if (!isPan(pan)) check(pan);
  const riseX = Math.abs(tiltX) * pan.length;
  const riseY = Math.abs(tiltY) * pan.width;
  const half = 0.5 * (riseX + riseY);
  const fall =
    Math.abs(tiltX) * (tiltX >= 0 ? x : pan.length - x) + Math.abs(tiltY) * (tiltY >= 0 ? y : pan.width - y);
  if (!(Math.abs(fall) < Infinity && mean < Infinity)) refusePlane(mean, fall);
  if (mean >= half) return mean - (fall - half);
  if (!(mean > NOTHING)) return -fall;
  return (riseX < riseY ? floorCornerDepth(mean, riseX, riseY) : floorCornerDepth(mean, riseY, riseX)) - fall;
}

/**
 * Volume [m³] in the pan when the depth at the place (x, y) is `depth` [m]: the inverse of `depthAt`, same
 * ranges.
 */
export function volumeAtDepth(
  pan: Pan,
  depth: number,
  tiltX: number,
  tiltY: number,
  x: number,
  y: number,
): number {
  const fall =
    Math.abs(tiltX) * (tiltX >= 0 ? x : pan.length - x) + Math.abs(tiltY) * (tiltY >= 0 ? y : pan.width - y);
  const riseX = Math.abs(tiltX) * pan.length;
  const riseY = Math.abs(tiltY) * pan.width;
  const corner = depth + fall;
  if (!isPan(pan)) check(pan);
  if (!(Math.abs(corner) < Infinity)) impossible("depth, tilt or place in the pan", corner, "finite numbers");
  return pan.free * pan.length * pan.width * meanUnder(corner, riseX, riseY, pan.height);
}

// Mean over x of clip(d - rise·x/L, 0, H): the depth of one row across the pan whose deep end has the virtual
// depth d. The shares of the row that are full and dry are subtracted from 1, so that nothing is lost at
// vanishing slope.
function rowMean(d: number, rise: number, height: number): number {
  if (d <= 0) return 0;
  if (d - rise >= height) return height;
  if (d <= height && d >= rise) return d - 0.5 * rise;
  const full = d > height ? (d - height) / rise : 0;
  const dry = d < rise ? (rise - d) / rise : 0;
  const top = d < height ? d : height;
  const bottom = d > rise ? d - rise : 0;
  return full * height + (1 - full - dry) * 0.5 * (top + bottom);
}

// Mean depth under a plane whose virtual depth in the deepest corner is c. Along the second slope the row
// mean is piecewise quadratic with breaks at 0, min(rise, H), max(rise, H) and rise + H, so that Simpson's
// rule between the breaks is exact. Same volume as the box-and-plane relation of Scardovelli and Zaleski (J.
// Comput. Phys. 164, 2000, 228), whose eight cubes cancel and lose all digits when one slope is small; this
// sum has positive terms only.
function meanUnder(c: number, riseX: number, riseY: number, height: number): number {
  const rise = riseX < riseY ? riseX : riseY;
  const span = riseX < riseY ? riseY : riseX;
  if (span === 0) return rowMean(c, 0, height);
  let low = c - span;
  let atLow = rowMean(low, rise, height);
  let left = 1;
  let sum = 0;
  for (let i = 0; i < 4; i++) {
    const edge =
      i === 0 ? 0 : i === 1 ? Math.min(rise, height) : i === 2 ? Math.max(rise, height) : rise + height;
    if (edge <= low || edge >= c) continue;
    const share = Math.min((edge - low) / span, left);
    const atEdge = rowMean(edge, rise, height);
    sum += (share * (atLow + 4 * rowMean(0.5 * (low + edge), rise, height) + atEdge)) / 6;
    left -= share;
    low = edge;
    atLow = atEdge;
  }
  return sum + (left * (atLow + 4 * rowMean(0.5 * (low + c), rise, height) + rowMean(c, rise, height))) / 6;
}

// Virtual depth in the deepest corner for a given mean depth. Where the surface meets the floor alone, or the lid alone (the
// same for the air, upside down), there is a closed form; where it meets both, a search.
function cornerDepth(mean: number, rise: number, span: number, height: number): number {
  if (mean < 0.5 * (rise + span)) {
    const corner = floorCornerDepth(mean, rise, span);
    return corner <= height ? corner : searchedCornerDepth(mean, rise, span, height, corner);
  }
  const air = floorCornerDepth(height - mean, rise, span);
  return air <= height
    ? height + rise + span - air
    : searchedCornerDepth(mean, rise, span, height, mean + 0.5 * (rise + span));
}

// Depth in the deepest corner when part of the floor is dry and nothing meets a lid: fluid in one corner, a wedge across
// the pan, or all but the opposite corner covered. The last is the root of e³/(6 rise span) - e + q for the depth e by
// which the plane dips under the floor in that corner: it falls and is convex, so Newton climbs from q without passing it.
function floorCornerDepth(mean: number, rise: number, span: number): number {
  const six = 6 * rise * span;
  if (mean * six < rise * rise * rise) return Math.cbrt(six * mean);
  if (2 * mean * span <= (span - rise) * span + (rise * rise) / 3)
    return 0.5 * rise + Math.sqrt(2 * span * mean - (rise * rise) / 12);
  const q = 0.5 * (rise + span) - mean;
  let e = q;
  for (let i = 0; i < 60; i++) {
    const cut = (e * e) / six; // at most 1/6, as e is at most the rise; more is a rounding of next to nothing
    const next = e + (cut * e - e + q) / (1 - 3 * cut);
    if (!(next > e && cut <= 1 / 6)) break;
    e = next;
  }
  return rise + span - e;
}

// The same by Newton from a start, kept inside a bracket, halving it whenever a Newton step leaves it or gains too
// little. The mean depth rises with c, so the bracket holds one root.
function searchedCornerDepth(
  mean: number,
  rise: number,
  span: number,
  height: number,
  start: number,
): number {
  let low = mean; // nowhere deeper than in the corner
  let high = mean + rise + span; // nowhere shallower than opposite it
  const close = 1e-15 * (rise + span + height);
  const nearly = 1e-12 * (rise + span + height); // a Newton step so small leaves an error of its square
  let c = start < high ? start : mean + 0.5 * (rise + span);
  let before = high - low;
  for (;;) {
    const excess = meanUnder(c, rise, span, height) - mean;
    if (excess === 0) return c;
    if (excess > 0) high = c;
    else low = c;
    // The share of the surface that is free: neither under the lid nor on the floor.
    const slope = (rowMean(c, rise, height) - rowMean(c - span, rise, height)) / span;
    let next = c - excess / slope;
    const step = Math.abs(next - c);
    if (next >= low && next <= high && step <= nearly) return next;
    if (!(next > low && next < high && step <= 0.5 * before)) next = low + 0.5 * (high - low);
    before = Math.abs(next - c);
    if (before <= close || high - low <= close) return next;
    c = next;
  }
}

function refusePlane(mean: number, fall: number): void {
  finite("mean depth", mean, "m");
  finite("tilt or place in the pan", fall);
}
