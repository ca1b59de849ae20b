// The week at one loss after another: flow tables, stands, and how near each piece of each trip came to each event.

import { overLid } from "../physics/sump/pan.ts";
import { driveFrozen, standFrozen, type Frozen } from "./frozen.ts";
import { lack, restore, snapshotOf, type Snapshot } from "./snapshot.ts";
import type { Kinds, TripKind } from "./kinds.ts";
import { trimGoingRound } from "./learned.ts";
import { levelStep, type Climate } from "./prepared.ts";
import { beginTrip, closeTick, endTrip, gatherStep, newTabling, nextPiece, type Tabling } from "./tabling.ts";

/** How near a piece came to each event while so much was lacking [kg]; see `Severity`. */
export interface Seen {
  readonly lacking: number;
  readonly held: Float64Array;
  readonly since: Float64Array;
}

/** A piece of a trip: where it begins at each level, and what was seen of it, by rising loss. */
export interface PieceSeen {
  readonly starts: Snapshot[];
  /** By level: learned trim that the unit has there in the long run over what it had in the walk [Pa]. */
  readonly moreTrim: number[];
  readonly seen: Seen[];
}

/** By kind of trip and piece. */
export type WeekSeen = readonly (readonly PieceSeen[])[];

/** Levels that are still looked at after the first one at which a clutch burns within a trip. */
const LEVELS_BEYOND = 1;
/** Trim with which the share that a full unit keeps of it through a trip is found [Pa]. */
const TRIAL = 20_000;

/** Walks the week level by level until the worst has happened; undefined when `going` said no. */
export function walkLevels(
  frozen: Frozen,
  kinds: Kinds,
  going: (level: number) => boolean,
): { climate: Climate; seen: WeekSeen } | undefined {
  const { state, unit, road } = frozen.walk;
  const { trimLimit } = unit.build.shiftControl;
  const most = Math.max(1, Math.floor(state.mass / levelStep));
  const wide = kinds.kinds.length;
  const tabling = newTabling(kinds, most);
  const stands = newStands(most * wide);
  const seen: PieceSeen[][] = kinds.kinds.map(({ pieces }) =>
    Array.from({ length: pieces.length - 1 }, () => ({ starts: [], moreTrim: [], seen: [] })),
  );
  const row = () => new Float64Array(wide);
  const [kept, begins, added, round, before] = [row(), row(), row(), row(), row()];

  // A round of the full week first, so that every trip of the tables comes after the one that it comes after.
  const ends = kinds.kinds.map((kind, k) => {
    standFrozen(frozen, kind.stand, () => {});
    kept[k] = keptTrim(frozen, kind);
    driveFrozen(frozen, kind, {});
    return snapshotOf(frozen.walk);
  });
  let levels = most;
  for (let level = 0; level < levels; level++) {
    for (const [k, kind] of kinds.kinds.entries()) {
      if (!going(level)) return undefined;
      restore(frozen.walk, ends[kind.before]!);
      lack(unit, state, level * levelStep);
      standAt(frozen, kind, stands, level * wide + k);
      // The trim goes on as it went from level to level.
      const trim = level < 2 ? round[k]! : 2 * round[k]! - before[k]!;
      begins[k] = state.trim = Math.max(-trimLimit, Math.min(trimLimit, trim));
      if (driveAt(frozen, kinds, level, k, tabling, seen[k]!) && levels === most)
        levels = Math.min(most, level + 1 + LEVELS_BEYOND);
      ends[k] = snapshotOf(frozen.walk);
      added[k] = state.trim - kept[k]! * begins[k]!;
    }
    before.set(round);
    trimGoingRound(kinds.occurrences, kept, added, trimLimit, round);
    for (let k = 0; k < wide; k++)
      seen[k]!.forEach(({ moreTrim }, p) =>
        moreTrim.push((round[k]! - begins[k]!) * kept[k]! ** (p / seen[k]!.length)),
      );
  }
  const { circuit, panDepth, panViscosity, panDensity, ageing } = tabling;
  return {
    climate: { air: road.ambient, levels, circuit, panDepth, panViscosity, panDensity, stands, ageing },
    seen,
  };
}

function newStands(size: number): Climate["stands"] {
  const row = () => new Float64Array(size);
  return { seconds: row(), fluidity: row(), viscosity: row(), density: row(), depth: row(), high: row() };
}

/** The stand before a trip. */
function standAt(frozen: Frozen, { stand }: TripKind, stands: Climate["stands"], at: number): void {
  const { now, unit } = frozen.walk;
  standFrozen(frozen, stand, (_, seconds) => {
    const flows = seconds / now.viscosity;
    stands.fluidity[at]! += flows;
    stands.depth[at]! += now.panDepth * flows;
    stands.high[at]! += (now.panDepth + overLid(unit.build.sump.pan, now.panVolume)) * flows;
    stands.density[at]! += (now.density * seconds) / stand;
  });
  if (stand > 0) {
    stands.depth[at]! /= stands.fluidity[at]!;
    stands.high[at]! /= stands.fluidity[at]!;
  } else stands.density[at] = now.density;
  stands.seconds[at] = stand;
  stands.viscosity[at] = now.viscosity;
}

/** A trip of a kind at a level, into the tables and what is seen; true when a clutch burnt. */
function driveAt(
  frozen: Frozen,
  kinds: Kinds,
  level: number,
  k: number,
  tabling: Tabling,
  seen: readonly PieceSeen[],
): boolean {
  const { now } = frozen.walk;
  let burnt = false;
  beginTrip(tabling, level, k);
  driveFrozen(frozen, kinds.kinds[k]!, {
    piece(index) {
      if (index > 0) nextPiece(tabling, now.density);
      seen[index]!.starts.push(snapshotOf(frozen.walk));
    },
    told(index, held, since) {
      seen[index]!.seen.push({ lacking: level * levelStep, held: held.slice(), since: since.slice() });
      burnt ||= frozen.burns.some((event) => held[event]! > 0);
    },
    step(walk, seconds) {
      gatherStep(tabling, walk, seconds);
      return true;
    },
    tick: () => closeTick(tabling, now.density),
    untilBurnt: true,
  });
  for (let p = tabling.piece + 1; p < seen.length; p++) {
    const { starts } = seen[p]!;
    starts.push(starts.at(-1) ?? snapshotOf(frozen.walk));
  }
  endTrip(tabling, now.density, kinds.times[k]!);
  return burnt;
}

/** Share of the learned trim that is left after a trip of a kind; the walk is where it was afterwards. */
function keptTrim(frozen: Frozen, kind: TripKind): number {
  const { state } = frozen.walk;
  const from = snapshotOf(frozen.walk);
  const ends = [0, TRIAL].map((trim) => {
    restore(frozen.walk, from);
    state.trim = trim;
    driveFrozen(frozen, kind, {});
    return state.trim;
  });
  restore(frozen.walk, from);
  return Math.max(0, Math.min(1, (ends[1]! - ends[0]!) / TRIAL));
}
