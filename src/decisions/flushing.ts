// How much old fluid is left after it was changed, exchanged or filtered, each law for perfect mixing.
import { fraction, impossible, notNegative, positive } from "../errors.ts";

function whole(field: string, given: number): void {
  if (!(Number.isInteger(given) && given >= 0)) impossible(field, given, "a whole number, 0 or more");
}

function changedShare(changed: number): void {
  if (!(changed > 0 && changed <= 1)) impossible("changed", changed, "a share above 0, up to 1");
}

/**
 * Share of old fluid after so many volumes of the system have run through it, in at one end and out at the other, mixed all the
 * while: e^(−volumes). Pushed through without mixing it is less; what stands still in cooler cells and converter leaves more.
 */
export function oldAfterExchange(volumes: number): number {
  notNegative("volumes", volumes);
  return Math.exp(-volumes);
}

/** Volumes of the system that must run through it until a share of old fluid is left, above 0: −ln(share). */
export function volumesUntil(share: number): number {
  if (!(share > 0 && share <= 1)) impossible("share", share, "a share above 0, up to 1");
  return share === 1 ? 0 : -Math.log(share);
}

/** Share of old fluid after so many changes, each of which replaces a share `changed` of what is in the system (the pan's, say): (1 − changed)^changes. */
export function oldAfterChanges(changed: number, changes: number): number {
  changedShare(changed);
  whole("changes", changes);
  return (1 - changed) ** changes;
}

/** The same where each time a volume is filled on top, mixed in, and as much let out: (1 + added)^(−changes), `added` over what the system holds. */
export function oldAfterFillingFirst(added: number, changes: number): number {
  notNegative("added", added);
  whole("changes", changes);
  return changes === 0 ? 1 : (1 + added) ** -changes;
}

/** The same where a share is let out first and as much filled after: (1 − removed)^changes. Less old fluid is left than by filling first. */
export function oldAfterRemovingFirst(removed: number, changes: number): number {
  fraction("removed", removed);
  whole("changes", changes);
  return (1 - removed) ** changes;
}

/** Changes that it takes until a share of the fluid is new: exactly, as a number with a fraction, and as whole changes. */
export interface ChangesNeeded {
  readonly exactly: number;
  readonly whole: number;
}

/**
 * Changes, each replacing a share `changed`, until a share of the fluid is new: ln(1 − new)/ln(1 − changed). All new (1) only by a
 * change of all.
 */
export function changesUntil(wanted: number, changed: number): ChangesNeeded {
  fraction("wanted", wanted);
  changedShare(changed);
  if (wanted === 0) return { exactly: 0, whole: 0 };
  if (changed === 1) return { exactly: 1, whole: 1 };
  if (wanted === 1)
    impossible("wanted", wanted, "a share below 1, as long as a change leaves some old fluid");
  const exactly = Math.log1p(-wanted) / Math.log1p(-changed);
  // Three changes by which just what is wanted is new are three, whatever the last digit says.
  return { exactly, whole: Math.max(1, Math.ceil(exactly * (1 - 1e-12))) };
}

/** Dirt in the system around a change. */
export interface AroundChange {
  readonly before: number;
  readonly after: number;
}

/** Dirt just before and just after each change once it has gone on for long: gain/changed and what that change leaves, for so much gained between two changes. */
export function steadyDirt(gain: number, changed: number): AroundChange {
  notNegative("gain", gain);
  changedShare(changed);
  return { before: gain / changed, after: gain * ((1 - changed) / changed) };
}

/** Dirt just before the n-th change and just after it, begun clean; tends to `steadyDirt`. */
export function dirtAtChange(gain: number, changed: number, change: number): AroundChange {
  notNegative("gain", gain);
  changedShare(changed);
  whole("change", change);
  // Of each earlier gain (1 − changed) to the number of changes since is left.
  const before =
    gain * ((changed === 1 ? Math.min(1, change) : -Math.expm1(change * Math.log1p(-changed))) / changed);
  return { before, after: before * (1 - changed) };
}

/** Share of the pieces that a filter takes out in one pass, by its beta ratio of 1 or more: 1 − 1/β (ISO 16889, recalled). */
export function filterTakes(beta: number): number {
  if (!(beta >= 1 && beta < Infinity)) impossible("beta", beta, "1 or more");
  return 1 - 1 / beta;
}

/** A filter in a loop: volume of the system [m³], flow through the filter [m³/s], share that it takes, pieces that come in each second. */
export interface FilterLoop {
  readonly volume: number;
  readonly flow: number;
  readonly takes: number;
  readonly comesIn: number;
}

function checkLoop({ volume, flow, takes, comesIn }: FilterLoop): void {
  positive("volume", volume, "m³");
  notNegative("flow", flow, "m³/s");
  fraction("takes", takes);
  notNegative("comesIn", comesIn, "1/s");
}

/** Pieces in each cubic metre after a time [s], from so many at first: V dC/dt = in − Q η C, mixed all the while. */
export function piecesAfter(loop: FilterLoop, first: number, time: number): number {
  checkLoop(loop);
  notNegative("first", first, "1/m³");
  notNegative("time", time, "s");
  const rate = (loop.flow / loop.volume) * loop.takes;
  const turned = rate * time;
  const kept = Math.exp(-turned);
  // ∫ e^(−rate t) over the time; the time itself where nothing is taken out.
  const gathered = turned > 0 ? (-Math.expm1(-turned) / turned) * time : time;
  const grown = loop.comesIn === 0 || gathered === 0 ? 0 : (loop.comesIn / loop.volume) * gathered;
  return (first === 0 ? 0 : first * kept) + grown;
}

/** Pieces in each cubic metre in the end: in/(Q η). Infinity where nothing is taken out and some come in. */
export function steadyPieces(loop: FilterLoop): number {
  checkLoop(loop);
  if (loop.comesIn === 0) return 0;
  return loop.comesIn / loop.flow / loop.takes;
}

/** Time [s] until a share of the first pieces is left, above 0, with none coming in: V ln(1/share)/(Q η). Infinity where nothing is taken out. */
export function timeUntilClean(loop: FilterLoop, share: number): number {
  checkLoop(loop);
  const turns = volumesUntil(share);
  if (turns === 0) return 0;
  return (turns / loop.flow / loop.takes) * loop.volume;
}
