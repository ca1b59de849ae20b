// The week at one loss after another: flow tables, stands, and how near each piece of each trip came to each event.

import { overLid } from "../physics/sump/pan.ts";
import { driveFrozen, standFrozen, type Frozen } from "./frozen.ts";
import { fullMass, lack, restore, snapshotOf, type Snapshot } from "./snapshot.ts";
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

/** A week looked at: the levels [kg lacking], and what was seen by kind of trip and piece. */
export interface WeekSeen {
  readonly levels: number[];
  readonly kinds: readonly (readonly PieceSeen[])[];
}

/**
 * From one level to the next [kg]: while no air comes, while nothing slips, from there on, where moments come and go, and far beyond the
 * first burn, where only a leak comes that loses so much in a trip.
 */
const steps = { calm: levelStep, airy: 0.125, slipping: 0.0625, late: levelStep } as const;
/** So much is still looked at closely beyond the first level at which a clutch burns [kg]. */
const BEYOND = 0.375;
/** Trim with which the share that a full unit keeps of it through a trip is found [Pa]. */
const TRIAL = 20_000;

/** Walks the week level by level until the worst has happened; undefined when `going`, told the loss [kg], said no. */
export function walkLevels(
  frozen: Frozen,
  kinds: Kinds,
  going: (lacking: number) => boolean,
): { climate: Climate; seen: WeekSeen } | undefined {
  const { state, unit, road } = frozen.walk;
  const { trimLimit } = unit.build.shiftControl;
  const wide = kinds.kinds.length;
  const rows = Math.max(1, Math.floor(fullMass(unit) / levelStep));
  const tabling = newTabling(kinds, rows);
  const stands = newStands(rows * wide);
  const seen: WeekSeen = {
    levels: [],
    kinds: kinds.kinds.map(({ pieces }) =>
      Array.from({ length: pieces.length - 1 }, () => ({ starts: [], moreTrim: [], seen: [] })),
    ),
  };
  const row = () => new Float64Array(wide);
  const [kept, begins, added, round, before] = [row(), row(), row(), row(), row()];

  // A round of the full week first, so that every trip of the tables comes after the one that it comes after.
  const ends = kinds.kinds.map((kind, k) => {
    standFrozen(frozen, kind.stand, () => {});
    kept[k] = keptTrim(frozen, kind);
    driveFrozen(frozen, kind, {});
    return snapshotOf(frozen.walk);
  });
  let step: number = steps.calm;
  let grown = 0;
  let levels = 0;
  let closely = Infinity;
  for (let lacking = 0; lacking < rows * levelStep; lacking += step) {
    const tabled = Number.isInteger(lacking / levelStep);
    if (tabled) levels++;
    seen.levels.push(lacking);
    const shown: Shown = { air: false, slips: false, burns: 0 };
    for (const [k, kind] of kinds.kinds.entries()) {
      if (!going(lacking)) return undefined;
      restore(frozen.walk, ends[kind.before]!);
      lack(unit, state, lacking);
      standAt(frozen, kind, tabled ? stands : undefined, (levels - 1) * wide + k);
      // The trim goes on as it went from level to level.
      const trim = round[k]! + (round[k]! - before[k]!) * grown;
      begins[k] = state.trim = Math.max(-trimLimit, Math.min(trimLimit, trim));
      driveAt(frozen, kinds, lacking, k, tabled ? tabling : undefined, levels - 1, seen.kinds[k]!, shown);
      ends[k] = snapshotOf(frozen.walk);
      added[k] = state.trim - kept[k]! * begins[k]!;
    }
    before.set(round);
    trimGoingRound(kinds.occurrences, kept, added, trimLimit, round);
    for (let k = 0; k < wide; k++)
      seen.kinds[k]!.forEach(({ moreTrim }, p) =>
        moreTrim.push((round[k]! - begins[k]!) * kept[k]! ** (p / seen.kinds[k]!.length)),
      );
    if (shown.burns > 0) closely = Math.min(closely, lacking + BEYOND);
    if (lacking >= closely && shown.burns === wide) break;
    const next = nextStep(lacking, step, shown, closely);
    grown = lacking > 0 ? next / step : 0;
    step = next;
  }
  const { circuit, panDepth, panViscosity, panDensity, ageing } = tabling;
  return {
    climate: { air: road.ambient, levels, circuit, panDepth, panViscosity, panDensity, stands, ageing },
    seen,
  };
}

function nextStep(lacking: number, step: number, { air, slips }: Shown, closely: number): number {
  if (lacking >= closely) return steps.late - (lacking % steps.late);
  if (slips || step === steps.slipping) return steps.slipping;
  return air ? steps.airy : steps.calm;
}

function newStands(size: number): Climate["stands"] {
  const row = () => new Float64Array(size);
  return { seconds: row(), fluidity: row(), viscosity: row(), density: row(), depth: row(), high: row() };
}

/** The stand before a trip, into the tables if there are any. */
function standAt(
  frozen: Frozen,
  { stand }: TripKind,
  stands: Climate["stands"] | undefined,
  at: number,
): void {
  const { now, unit } = frozen.walk;
  if (stands === undefined) {
    standFrozen(frozen, stand, () => {});
    return;
  }
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

/** What a level has shown: air at the pump, slips, trips in which a clutch burns. */
interface Shown {
  air: boolean;
  slips: boolean;
  /** Kinds of trips. */
  burns: number;
}

/** A trip of a kind at a level, into the flow tables if there are any and into what is seen. */
function driveAt(
  frozen: Frozen,
  kinds: Kinds,
  lacking: number,
  k: number,
  tabling: Tabling | undefined,
  row: number,
  seen: readonly PieceSeen[],
  shown: Shown,
): void {
  const { now } = frozen.walk;
  const { air, slips, burns } = frozen;
  let burnt = false;
  if (tabling !== undefined) beginTrip(tabling, row, k);
  driveFrozen(frozen, kinds.kinds[k]!, {
    piece(index) {
      if (index > 0 && tabling !== undefined) nextPiece(tabling, now.density);
      seen[index]!.starts.push(snapshotOf(frozen.walk));
    },
    told(index, held, since) {
      seen[index]!.seen.push({ lacking, held: held.slice(), since: since.slice() });
      const happens = (event: number) => held[event]! > 0;
      shown.air ||= air.some(happens);
      shown.slips ||= slips.some(happens);
      burnt ||= burns.some(happens);
    },
    step(walk, seconds) {
      if (tabling !== undefined) gatherStep(tabling, walk, seconds);
      return true;
    },
    tick() {
      if (tabling !== undefined) closeTick(tabling, now.density);
    },
  });
  if (burnt) shown.burns++;
  // What came after the end of a trip that broke off is as at the level before.
  for (const { starts } of seen)
    if (starts.length < seen[0]!.starts.length) starts.push(starts.at(-1) ?? snapshotOf(frozen.walk));
  if (tabling !== undefined) endTrip(tabling, now.density, kinds.times[k]!);
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
