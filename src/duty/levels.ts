// The week at one loss after another: flow tables, stands, and how near each piece of each trip came to each event.

import { newOutside, type Outside } from "../history/outside.ts";
import { overLid } from "../physics/sump/pan.ts";
import { driveFrozen, standFrozen, type Frozen } from "./frozen.ts";
import { fullMass, lack, restore, snapshotOf, type Snapshot } from "./snapshot.ts";
import type { Kinds, TripKind } from "./kinds.ts";
import { learnedBy, learnedGoingRound, learnedRange, teach, type LearnedRange } from "./learned.ts";
import { levelStep, type Climate, type UsedUpTo } from "./prepared.ts";
import { beginTrip, closeTick, endTrip, gatherStep, newTabling, nextPiece, type Tabling } from "./tabling.ts";
import { usedUpTo } from "./used.ts";

/** How near a piece came to each event while so much was lacking [kg]; see `Severity`. */
export interface Seen {
  readonly lacking: number;
  readonly held: Float64Array;
  readonly since: Float64Array;
}

/** A piece of a trip: where it begins at each level, and what was seen of it, by rising loss. */
export interface PieceSeen {
  readonly starts: Snapshot[];
  /** By level: what the unit has learned there in the long run over what it had in the walk; see `learnedRange`. */
  readonly moreLearned: Float64Array[];
  readonly seen: Seen[];
}

/** A kind of trip looked at: the levels [kg lacking] at which it was walked, and its pieces. */
export interface KindSeen {
  readonly levels: number[];
  /** It was looked at closely up to so much lacking [kg]. */
  upTo: number;
  readonly pieces: readonly PieceSeen[];
}

export const nothingSeen = ({ pieces }: TripKind): KindSeen => ({
  levels: [],
  upTo: Infinity,
  pieces: Array.from({ length: pieces.length - 1 }, () => ({ starts: [], moreLearned: [], seen: [] })),
});

/**
 * From one level to the next [kg]: as long as a kind of trip draws no air, until it slips, from there on, where moments come and go, and
 * beyond its first burn, where only a leak comes that loses much in a trip. Each is a multiple of the one before it in size.
 */
const steps = { calm: levelStep, airy: levelStep / 2, slipping: levelStep / 8, late: levelStep } as const;
/**
 * A kind of trip is looked at closely up to so much beyond the first level at which a clutch burns in it, and beyond the first at which one burns in another
 * that comes at least as often [kg]: what a leak of twenty trips loses from one of those to the next.
 */
export const BEYOND = 0.25;
export const BEYOND_OTHERS = 0.4;
/** Share of the range of what may be learned with which the share that a full unit keeps of it through a trip is found. */
const TRIAL = 0.1;

/**
 * Walks the week level by level until every kind of trip burns a clutch, or so much is lacking [kg]; undefined when `going`, told the loss [kg], said no.
 * Where a unit is all but full nothing is learned: what a trip keeps of it has not to be found (`learns`).
 */
export function walkLevels(
  frozen: Frozen,
  kinds: Kinds,
  going: (lacking: number) => boolean,
  most = Infinity,
  learns = true,
): { climate: Climate; seen: readonly KindSeen[] } | undefined {
  const { state, unit, road } = frozen.walk;
  const range = learnedRange(unit);
  const things = range.low.length;
  const wide = kinds.kinds.length;
  const rows = Math.max(1, Math.floor(Math.min(most, fullMass(unit)) / levelStep));
  const tabling = newTabling(kinds, rows);
  const stands = newStands(rows * kinds.standKinds.length);
  const clutches = unit.build.clutches.length;
  const [trims, fills] = [new Float64Array(rows), new Float64Array(rows * clutches)];
  const seen = kinds.kinds.map(nothingSeen);
  const outside = newOutside(road.ambient);
  const used: UsedUpTo[] = [];
  const shown = kinds.kinds.map((): Shown => ({ air: false, slips: false, burns: Infinity }));
  const row = () => new Float64Array(wide * things);
  const [kept, begins, added, round, before] = [row(), row(), row(), row(), row()];

  // A round of the full week first, so that every trip of the tables comes after the one that it comes after.
  const ends = kinds.kinds.map((kind, k) => {
    standFrozen(frozen, kind.stand, () => {});
    if (learns) kept.set(keptLearned(frozen, kind, range), k * things);
    driveFrozen(frozen, kind, {});
    return snapshotOf(frozen.walk);
  });
  let levels = 0;
  let lacking = 0;
  let grown = 0;
  while (lacking < rows * levelStep) {
    const tabled = lacking % levelStep === 0;
    if (tabled) levels++;
    for (const [k, kind] of kinds.kinds.entries()) {
      if (lacking % stepOf(shown[k]!, lacking, seen[k]!.upTo) !== 0) continue;
      if (!going(lacking)) return undefined;
      restore(frozen.walk, ends[kind.before]!);
      lack(unit, state, lacking);
      standFrozen(frozen, kind.stand, () => {});
      // What is learned goes on as it went from level to level.
      const first = k * things;
      teach(state, range, (i) => round[first + i]! + (round[first + i]! - before[first + i]!) * grown);
      begins.set(learnedBy(state), first);
      driveAt(
        frozen,
        kinds,
        lacking,
        k,
        tabled ? tabling : undefined,
        levels - 1,
        seen[k]!,
        shown[k]!,
        outside,
      );
      ends[k] = snapshotOf(frozen.walk);
      learnedBy(state).forEach(
        (learned, i) => (added[first + i] = learned - kept[first + i]! * begins[first + i]!),
      );
    }
    if (tabled)
      kinds.standKinds.forEach(({ before, walked }, s) => {
        restore(frozen.walk, ends[before]!);
        lack(unit, state, lacking);
        standAt(frozen, walked, stands, (levels - 1) * kinds.standKinds.length + s);
      });
    used.push(usedUpTo(lacking, outside));
    before.set(round);
    learnedGoingRound(kinds.occurrences, kept, added, range, round);
    if (tabled)
      for (const { kind } of kinds.occurrences) {
        const share = (thing: number) => round[kind * things + thing]! / kinds.occurrences.length;
        trims[levels - 1]! += share(0);
        for (let c = 0; c < clutches; c++) fills[(levels - 1) * clutches + c]! += share(c + 1);
      }
    seen.forEach(({ levels: walked, pieces }, k) => {
      if (walked.at(-1) !== lacking) return;
      pieces.forEach(({ moreLearned }, p) =>
        moreLearned.push(
          Float64Array.from({ length: things }, (_, i) => {
            const at = k * things + i;
            return (round[at]! - begins[at]!) * kept[at]! ** (p / pieces.length);
          }),
        ),
      );
    });
    seen.forEach((trip, k) => {
      const reached = (other: Shown, j: number) =>
        kinds.times[j]! >= kinds.times[k]! ? other.burns + BEYOND_OTHERS : Infinity;
      trip.upTo = Math.min(shown[k]!.burns + BEYOND, ...shown.map(reached));
    });
    if (shown.every(({ burns }) => lacking >= burns + BEYOND)) break;
    const step = Math.min(...shown.map((known, k) => stepOf(known, lacking, seen[k]!.upTo)));
    const next = (Math.floor(lacking / step) + 1) * step;
    grown = lacking > 0 ? (next - lacking) / step : 0;
    lacking = next;
  }
  const { circuit, panDepth, panViscosity, panDensity, ageing } = tabling;
  return {
    climate: {
      air: road.ambient,
      levels,
      circuit,
      panDepth,
      panViscosity,
      panDensity,
      stands,
      ageing,
      trim: trims,
      fills,
      used,
    },
    seen,
  };
}

/** What a kind of trip has shown: air at the pump, slips, and the first level at which a clutch burns in it [kg lacking]. */
interface Shown {
  air: boolean;
  slips: boolean;
  burns: number;
}

function stepOf({ air, slips }: Shown, lacking: number, upTo: number): number {
  if (lacking >= upTo) return steps.late;
  if (slips) return steps.slipping;
  return air ? steps.airy : steps.calm;
}

function newStands(size: number): Climate["stands"] {
  const row = () => new Float64Array(size);
  return { seconds: row(), fluidity: row(), viscosity: row(), density: row(), depth: row(), rest: row() };
}

/** A stand [s], into the tables. */
function standAt(frozen: Frozen, stand: number, stands: Climate["stands"], at: number): void {
  const { now, unit } = frozen.walk;
  const depth = () => now.panDepth + overLid(unit.build.sump.pan, now.panVolume);
  standFrozen(frozen, stand, (_, seconds) => {
    const flows = seconds / now.viscosity;
    stands.fluidity[at]! += flows;
    stands.depth[at]! += depth() * flows;
    stands.density[at]! += (now.density * seconds) / stand;
  });
  if (stand > 0) stands.depth[at]! /= stands.fluidity[at]!;
  else stands.density[at] = now.density;
  stands.seconds[at] = stand;
  stands.viscosity[at] = now.viscosity;
  stands.rest[at] = depth();
}

/** A trip of a kind at a level, into the flow tables if there are any and into what is seen. */
function driveAt(
  frozen: Frozen,
  kinds: Kinds,
  lacking: number,
  k: number,
  tabling: Tabling | undefined,
  row: number,
  { levels, pieces }: KindSeen,
  shown: Shown,
  outside: Outside,
): void {
  const { now } = frozen.walk;
  const { air, slips, burns } = frozen;
  levels.push(lacking);
  if (tabling !== undefined) beginTrip(tabling, row, k);
  driveFrozen(frozen, kinds.kinds[k]!, {
    outside,
    piece(index) {
      if (index > 0 && tabling !== undefined) nextPiece(tabling, now.density);
      pieces[index]!.starts.push(snapshotOf(frozen.walk));
    },
    told(index, held, since) {
      pieces[index]!.seen.push({ lacking, held: held.slice(), since: since.slice() });
      const happens = (event: number) => held[event]! > 0;
      shown.air ||= air.some(happens);
      shown.slips ||= slips.some(happens);
      if (burns.some(happens)) shown.burns = Math.min(shown.burns, lacking);
    },
    step(walk, seconds) {
      if (tabling !== undefined) gatherStep(tabling, walk, seconds);
      return true;
    },
    tick() {
      if (tabling !== undefined) closeTick(tabling, now.density);
    },
  });
  // What came after the end of a trip that broke off is as at the level before.
  for (const { starts } of pieces)
    if (starts.length < levels.length) starts.push(starts.at(-1) ?? snapshotOf(frozen.walk));
  if (tabling !== undefined) endTrip(tabling, now.density, kinds.times[k]!);
}

/** Share of each thing learned that is left after a trip of a kind; the walk is where it was afterwards. */
function keptLearned(frozen: Frozen, kind: TripKind, range: LearnedRange): Float64Array {
  const { state } = frozen.walk;
  const from = snapshotOf(frozen.walk);
  const [none, ...tried] = [() => false, (thing: number) => thing === 0, (thing: number) => thing > 0].map(
    (tries) => {
      restore(frozen.walk, from);
      teach(state, range, (thing) => (tries(thing) ? TRIAL * range.high[thing]! : 0));
      driveFrozen(frozen, kind, {});
      return learnedBy(state);
    },
  );
  restore(frozen.walk, from);
  return none!.map((learned, thing) => {
    const tries = TRIAL * range.high[thing]!;
    return tries > 0 ? Math.max(0, Math.min(1, (tried[Math.min(1, thing)]![thing]! - learned) / tries)) : 0;
  });
}
