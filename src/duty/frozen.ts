// The trip-resolved walk with the loss frozen: the same ticks, shifts, slips and watched conditions as in a history, of a unit that
// lacks a given mass and loses none. Every trip begins with sound linings, so that a trip tells what it does by itself.

import { margins } from "../history/margin.ts";
import { idleInNeutral } from "../history/idle.ts";
import { newMeasures, type Measures } from "../history/measures.ts";
import { stand } from "../history/parked.ts";
import { noteRanges, noteStep, type Outside } from "../history/outside.ts";
import { settle } from "../history/settle.ts";
import { engageFromRest, noEngagement, type Engagement } from "../history/shift.ts";
import { tick } from "../history/tick.ts";
import { newWalk, type Walk } from "../history/walk.ts";
import type { EventName } from "../history/watch.ts";
import { fluidNow } from "../physics/chain.ts";
import type { Unit } from "../physics/build.ts";
import { fresh, type State } from "../physics/state.ts";
import { idleFirst } from "../history/plan.ts";
import type { TripKind } from "./kinds.ts";
import { forget, heldFor, newSeverity, noteLook, type Severity } from "./severity.ts";

/** A walk whose unit lacks fluid and leaks none, with the watch kept on it. */
export interface Frozen {
  readonly walk: Walk;
  readonly measures: Measures;
  readonly engagement: Engagement;
  readonly severity: Severity;
  /** Indices of events: air at the pump, a slip, a clutch of the gears burnt, no drive. */
  readonly air: readonly number[];
  readonly slips: readonly number[];
  readonly burns: readonly number[];
  readonly noDrive: number;
  /** Events that stay once they have come (damage, a trim at its limit), and those of them that had come before the piece on the way. */
  readonly stays: readonly number[];
  readonly past: Uint8Array;
  /** For the piece on the way and the one before it: by event, the measure held for its time, and when it began [s since the trip's start]. */
  held: Float64Array;
  since: Float64Array;
  heldBefore: Float64Array;
  sinceBefore: Float64Array;
  /** Running time at the start of the trip and of the piece [s]. */
  tripFrom: number;
  pieceFrom: number;
}

/** A walk on a unit that is tight, in air of a temperature [K]; no trip has begun. */
export function newFrozen(unit: Unit, air: number, fine?: number, finer?: number): Frozen {
  const tight: Unit = { ...unit, leak: null };
  const walk = newWalk(tight, fresh(tight, air), fine, finer);
  walk.road.ambient = air;
  fluidNow(tight, walk.state, walk.now);
  const measures = newMeasures(walk, margins(tight), true);
  const count = measures.watchers.length;
  const row = () => new Float64Array(count).fill(-Infinity);
  const named = (event: EventName) =>
    measures.watchers.flatMap(({ name }, index) => (name === event ? [index] : []));
  return {
    walk,
    measures,
    engagement: noEngagement(),
    air: named("first gulp of air"),
    slips: named("first sustained slip"),
    burns: measures.watchers.flatMap(({ name, clutch }, event) =>
      name === "damage 1" && clutch !== unit.build.lockUp.clutch.name ? [event] : [],
    ),
    noDrive: named("no drive")[0]!,
    stays: measures.watchers.flatMap(({ name }, event) =>
      name.startsWith("damage") || name === "learned trim at its limit" ? [event] : [],
    ),
    past: new Uint8Array(count),
    severity: newSeverity(measures.watchers.map(({ lasting }) => lasting)),
    held: row(),
    since: new Float64Array(count),
    heldBefore: row(),
    sinceBefore: new Float64Array(count),
    tripFrom: 0,
    pieceFrom: 0,
  };
}

/** Lets the unit stand for a time [s]; `look` sees every step. */
export function standFrozen(
  { walk }: Frozen,
  seconds: number,
  look: (walk: Walk, seconds: number) => void,
): void {
  let from = walk.state.clock;
  stand(walk, seconds, () => {
    look(walk, walk.state.clock - from);
    from = walk.state.clock;
    return true;
  });
}

/** What is told while a trip is driven; each may be left out. */
export interface TripWatch {
  /** Before a piece begins, and with the piece's index. */
  readonly piece?: (index: number) => void;
  /** When all that began in a piece is known. */
  readonly told?: (index: number, held: Float64Array, since: Float64Array) => void;
  /** After every step, with its length [s]; false ends the drive. */
  readonly step?: (walk: Walk, seconds: number) => boolean;
  readonly tick?: (index: number) => void;
  /** The laws that are used, noted as in a history. */
  readonly outside?: Outside;
}

/**
 * Drives a trip, or from one of its pieces on until `pieces` of them are done and whatever began in them has lasted as long as it
 * must (at most `longer` seconds), or the vehicle no longer drives. Linings are made sound at the beginning of the trip if `sound`.
 */
export function driveFrozen(
  frozen: Frozen,
  kind: TripKind,
  watch: TripWatch,
  first = 0,
  pieces = Infinity,
  longer = 10,
  sound = true,
): void {
  const { walk, measures, engagement, severity } = frozen;
  const { state, unit } = walk;
  const { ticks } = kind;
  const { outside } = watch;
  const count = kind.pieces.length - 1;
  const last = Math.min(count, first + pieces);
  frozen.tripFrom = state.running - kind.pieceTimes[first]!;
  frozen.pieceFrom = state.running;
  forget(severity);
  frozen.held.fill(-Infinity);
  frozen.heldBefore.fill(-Infinity);
  measures.values.fill(-1);
  engagement.time = 0;
  engagement.energy = 0;
  let before = state.running;
  const after = (): boolean => {
    measures.take(walk, engagement);
    noteLook(severity, state.running, measures.values);
    keepWorst(frozen);
    if (outside !== undefined) noteStep(outside, walk, engagement);
    const seconds = state.running - before;
    before = state.running;
    const on = watch.step?.(walk, seconds) ?? true;
    return on && !(frozen.held[frozen.noDrive]! > 0);
  };
  let piece = first;
  if (sound && first === 0) makeSound(state);
  frozen.past.fill(0);
  measures.worstDamage(); // what is worn already is no news
  isPast(frozen, measures.values);
  watch.piece?.(first);
  if (first === 0) {
    if (!idleInNeutral(walk, idleFirst, unit.build.engine.idleSpeed, after, ticks.grade[0])) return;
    engageFromRest(walk, engagement);
    measures.engaged(walk, engagement);
    if (outside !== undefined) noteRanges(outside, walk, engagement); // the coldest of the trip
  }
  const until = last === count ? Infinity : kind.pieceTimes[last]! + longer;
  for (let i = kind.pieces[first]!; i < ticks.count; i++) {
    while (i === kind.pieces[piece + 1]) {
      if (piece > first) watch.told?.(piece - 1, frozen.heldBefore, frozen.sinceBefore);
      piece++;
      settle(walk);
      nextPiece(frozen);
      if (piece < last) {
        measures.values.fill(-1);
        watch.piece?.(piece);
      }
    }
    if (state.running - frozen.tripFrom >= until) break;
    if (!tick(walk, ticks.dt[i]!, ticks.speed[i]!, ticks.grade[i]!, ticks.lateral[i]!, engagement, after))
      break;
    watch.tick?.(i);
  }
  settle(walk);
  if (outside !== undefined) noteRanges(outside, walk, engagement);
  if (piece > first) watch.told?.(piece - 1, frozen.heldBefore, frozen.sinceBefore);
  if (piece < last) watch.told?.(piece, frozen.held, frozen.since);
}

function makeSound(state: State): void {
  state.char.fill(0);
  state.glaze.fill(0);
  state.wear.fill(0);
}

function nextPiece(frozen: Frozen): void {
  const { held, since } = frozen;
  isPast(frozen, held);
  frozen.held = frozen.heldBefore;
  frozen.since = frozen.sinceBefore;
  frozen.heldBefore = held;
  frozen.sinceBefore = since;
  frozen.held.fill(-Infinity);
  frozen.pieceFrom = frozen.walk.state.running;
}

/** Events that stay and have come by now are past. */
function isPast({ stays, past }: Frozen, values: Float64Array): void {
  for (const event of stays) if (values[event]! > 0) past[event] = 1;
}

function keepWorst(frozen: Frozen): void {
  const { severity, pieceFrom, tripFrom, measures } = frozen;
  const { running } = frozen.walk.state;
  for (let i = 0; i < severity.lasting.length; i++) {
    if (frozen.past[i] === 1) continue;
    const began = running - severity.lasting[i]!;
    const here = began >= pieceFrom;
    const held = here ? frozen.held : frozen.heldBefore;
    const value = measures.values[i]!;
    // What stayed for a time was never more than it is now.
    if (!(value > held[i]!)) continue;
    const worst = severity.lasting[i]! > 0 ? heldFor(severity, i) : value;
    if (!(worst > held[i]!)) continue;
    // Below zero the nearest it came; above zero it is dated when it first happened.
    if (!(held[i]! > 0)) (here ? frozen.since : frozen.sinceBefore)[i] = began - tripFrom;
    held[i] = worst;
  }
}
