// What a leak loses while the vehicle stands, read from the tables of a prepared week: first from the line's column above the hole, then from
// what stands in the pan over it, at the viscosity that the whole stand amounts to.

import type { Leak } from "../physics/build.ts";
import { drainTime } from "../physics/leak/drain-down.ts";
import { columnArea, panArea, sinks } from "../physics/standing.ts";
import { panPieces, type Prepared } from "./prepared.ts";
import { mixed, readStand, type Reading } from "./reading.ts";

const hasColumn = ({ place, lineAbove }: Leak): boolean =>
  (place === "supply-line" || place === "return-line") && lineAbove > 0;

/**
 * Takes one of the week's kinds of stands, or so long a beginning of it [s], each as much longer as the vehicle rests longer; air and level are taken.
 * Whether anything can leak in it, whatever the opening.
 */
export function takeStand(
  reading: Reading,
  { standKinds }: Prepared,
  leak: Leak,
  standKind: number,
  lasts = standKinds[standKind]!.stand,
): boolean {
  const { stand, rests } = reading;
  readStand(reading, standKind, standKinds.length);
  reading.standKind = standKind;
  reading.standLasts = lasts;
  const longer = rests * lasts - standKinds[standKind]!.walked;
  const fluidity = stand[3]!;
  const later = longer > 0 ? longer / stand[2]! : 0;
  // Mean by how easily the fluid flows.
  const depth = later > 0 ? (stand[0]! * fluidity + stand[4]! * later) / (fluidity + later) : stand[0]!;
  reading.over = depth - leak.height;
  return reading.over > 0 || hasColumn(leak);
}

/** Mass [kg] lost in the last `asked` seconds of the stand that was taken, as much longer as the vehicle rests longer; the opening is taken. */
export function standLoses(reading: Reading, prepared: Prepared, leak: Leak, asked: number): number {
  const { parked, over, stand, rests, standLasts, thinned } = reading;
  const column = hasColumn(leak) ? leak.columnHeight : 0;
  const head = Math.max(column, over);
  if (!(asked > 0 && head > 0)) return 0;
  const seconds = rests * asked;
  const density = stand[1]!;
  // A leak that opens in the middle of a stand opens in the cold.
  const viscosity = thinned * (asked < standLasts ? stand[2]! : viscosityOf(reading, prepared));
  const onColumn = column > over;
  const area = onColumn ? columnArea(leak) : panArea(prepared.unit.build.sump.pan);
  const lost = sinks(parked, area, head, seconds, viscosity, density);
  return onColumn && over > 0 && column - lost / area < over
    ? pastColumn(reading, prepared, leak, seconds, viscosity)
    : lost * density;
}

/** Mass lost [kg] in so many seconds in which the column sinks to where the pan stands, and both go on together. */
function pastColumn(
  { parked, over, stand }: Reading,
  { unit }: Prepared,
  leak: Leak,
  seconds: number,
  viscosity: number,
): number {
  const area = columnArea(leak);
  const density = stand[1]!;
  const left = seconds - drainTime(parked, area, leak.columnHeight, over, viscosity, density);
  const fromPan = sinks(parked, panArea(unit.build.sump.pan), over, Math.max(0, left), viscosity, density);
  return (area * (leak.columnHeight - over) + fromPan) * density;
}

/** The viscosity that the whole of the stand that was taken amounts to [Pa s]. */
function viscosityOf(reading: Reading, prepared: Prepared): number {
  const { stand, rests, standLasts, standKind } = reading;
  const { walked } = prepared.standKinds[standKind]!;
  const lasts = rests * standLasts;
  const cold = stand[2]!;
  const whole = lasts < walked ? begins(reading, prepared, lasts) : stand[3]! + (lasts - walked) / cold;
  return lasts / Math.max(lasts / cold, whole);
}

/**
 * ∫dt/µ [1/Pa] over so long a beginning of a stand that was walked for longer: what it is more than in the cold fades from the
 * viscosity at the end of the trip before it, and adds up to what the whole stand has more.
 */
function begins(reading: Reading, { firstPiece, kinds, standKinds }: Prepared, lasts: number): number {
  const { walked, before } = standKinds[reading.standKind]!;
  const cold = reading.stand[2]!;
  const fluidity = reading.stand[3]!;
  const last = firstPiece[before + 1]! - 1;
  const at = last - ((last - firstPiece[before]!) % panPieces);
  const hot = mixed(reading, reading.tables.panViscosity, at, firstPiece[kinds.length]!);
  const more = fluidity - walked / cold;
  const fades = more / (1 / hot - 1 / cold);
  const share = more > 0 && fades > 0 ? Math.expm1(-lasts / fades) / Math.expm1(-walked / fades) : 0;
  return lasts / cold + more * share;
}

/** Mass [kg] that the stands of a week lose, and what one of each kind does; air, level and opening are taken. */
export function weekStanding(reading: Reading, prepared: Prepared, leak: Leak, each: Float64Array): number {
  const { standKinds } = prepared;
  let sum = 0;
  for (let s = 0; s < standKinds.length; s++) {
    const { stand, times } = standKinds[s]!;
    each[s] = takeStand(reading, prepared, leak, s) ? standLoses(reading, prepared, leak, stand) : 0;
    sum += times * each[s]!;
  }
  return sum;
}
