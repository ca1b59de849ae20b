// The week at one loss after another: flow tables, stands, and how near each piece of each trip came to each event.

import { fluidAgeingRate } from "../physics/fluid/ageing.ts";
import { driveFrozen, lack, restore, snapshotOf, standFrozen, type Frozen, type Snapshot } from "./frozen.ts";
import type { Kinds } from "./kinds.ts";
import { trimGoingRound } from "./learned.ts";
import { levelStep, panPieces, shapes, type Climate } from "./prepared.ts";

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

/** Scale of the shapes at which a seep turns into a jet [m²]: between the two the tables are smooth. */
export const middleShape = 1e-13;
/** Levels that are still looked at after the first one at which a clutch burns within a piece of a trip. */
const LEVELS_BEYOND = 1;

/** Sums of one tick, and of what a trip's flow tables need. */
interface Gathered {
  seconds: number;
  supply: number;
  back: number;
  viscosity: number;
  path: number;
  liquid: number;
}

/** Walks the week level by level until the worst has happened; undefined when `going` said no. */
export function walkLevels(
  frozen: Frozen,
  { kinds, occurrences }: Kinds,
  going: (level: number) => boolean,
): { climate: Climate; seen: WeekSeen } | undefined {
  const { walk } = frozen;
  const { state, now, unit } = walk;
  const { cooler } = unit.build;
  const pieces = kinds.map((kind) => kind.pieces.length - 1);
  const offsets = pieces.map((_, k) => pieces.slice(0, k).reduce((a, b) => a + b, 0));
  const all = pieces.reduce((a, b) => a + b, 0);
  const most = Math.max(1, Math.floor(state.mass / levelStep));
  const count = shapes.length;
  const table = (width: number) => new Float64Array(most * width);
  const supplyLine = table(all * count);
  const returnLine = table(all * count);
  const [supplyWeek, returnWeek] = [table(count), table(count)];
  const [supplyPressure, returnPressure, ageing] = [table(1), table(1), table(1)];
  const [panDepth, panViscosity, panDensity] = [table(all), table(all), table(all)];
  const wide = kinds.length;
  const stands = {
    seconds: table(wide),
    fluidity: table(wide),
    viscosity: table(wide),
    density: table(wide),
    depth: table(wide),
  };
  const seen: PieceSeen[][] = pieces.map((n) =>
    Array.from({ length: n }, () => ({ starts: [], moreTrim: [], seen: [] })),
  );
  const ends: Snapshot[] = [];
  const times = kinds.map((_, k) => occurrences.filter(({ kind }) => kind === k).length);

  const { trimLimit } = unit.build.shiftControl;
  const kept = new Float64Array(wide);
  const [begins, added, round, roundBefore] = [0, 0, 0, 0].map(() => new Float64Array(wide)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];

  // A round of the full week first, so that every trip of the tables comes after the one that it comes after.
  for (const [k, kind] of kinds.entries()) {
    standFrozen(frozen, kind.stand, () => {});
    kept[k] = keptTrim(frozen, kind);
    driveFrozen(frozen, kind, {});
    ends[k] = snapshotOf(frozen);
  }

  let levels = most;
  for (let level = 0; level < levels; level++) {
    const lacking = level * levelStep;
    for (const [k, kind] of kinds.entries()) {
      if (!going(level)) return undefined;
      restore(frozen, ends[kind.before]!);
      lack(unit, state, lacking);
      const at = level * wide + k;
      standFrozen(frozen, kind.stand, (_, seconds) => {
        stands.fluidity[at]! += seconds / now.viscosity;
        stands.depth[at]! += (now.panDepth * seconds) / now.viscosity;
        stands.density[at]! += (now.density * seconds) / kind.stand;
      });
      if (kind.stand > 0) stands.depth[at]! /= stands.fluidity[at]!;
      stands.seconds[at] = kind.stand;
      begins[k] = state.trim = Math.max(
        -trimLimit,
        Math.min(trimLimit, level < 2 ? round[k]! : 2 * round[k]! - roundBefore[k]!),
      );
      stands.viscosity[at] = now.viscosity;

      const sum: Gathered = { seconds: 0, supply: 0, back: 0, viscosity: 0, path: 0, liquid: 0 };
      let piece = 0;
      let burnt = false;
      let [pieceSeconds, aged, supplySum, supplyWeight, returnSum, returnWeight] = [0, 0, 0, 0, 0, 0];
      const row = (p: number) => (level * all + offsets[k]! + p) * count;
      const flowed = () => {
        const s = sum.seconds;
        if (!(s > 0)) return;
        const { density } = now;
        const [supply, back, viscosity, path, liquid] = [
          sum.supply / s,
          sum.back / s,
          sum.viscosity / s,
          sum.path / s,
          sum.liquid / s,
        ];
        lose(supplyLine, row(piece), supply, viscosity, density, liquid, s);
        lose(returnLine, row(piece), back, path, density, liquid, s);
        supplySum += (supply * supply * s) / viscosity;
        supplyWeight += (supply * s) / viscosity;
        returnSum += (back * back * s) / path;
        returnWeight += (back * s) / path;
        sum.seconds = sum.supply = sum.back = sum.viscosity = sum.path = sum.liquid = 0;
      };
      const endPiece = () => {
        flowed();
        const cell = level * all + offsets[k]! + piece - (piece % panPieces);
        if (piece % panPieces < panPieces - 1 && piece < pieces[k]! - 1 && !burnt) return;
        if (pieceSeconds > 0) {
          panDepth[cell]! /= pieceSeconds;
          panViscosity[cell]! /= pieceSeconds;
          panDensity[cell]! /= pieceSeconds;
        }
        pieceSeconds = 0;
      };
      driveFrozen(frozen, kind, {
        piece(index) {
          if (index > piece) {
            endPiece();
            // Tables run on from piece to piece.
            supplyLine.copyWithin(row(index), row(piece), row(piece) + count);
            returnLine.copyWithin(row(index), row(piece), row(piece) + count);
            piece = index;
          }
          seen[k]![index]!.starts.push(snapshotOf(frozen));
        },
        told(index, held, since) {
          seen[k]![index]!.seen.push({ lacking, held: held.slice(), since: since.slice() });
          if (levels === most && frozen.burns.some((event) => held[event]! > 0))
            levels = Math.min(most, level + 1 + LEVELS_BEYOND);
        },
        step({ now: { line, viscosity, density, lineInput, panDepth: depth, temperature } }, seconds) {
          // Before the cooler stands what the rest of the circuit needs; a vanishing leak changes nothing of it.
          const behind = line.leakPressure;
          const before = behind + (cooler.cooler + cooler.returnLine) * lineInput.pathViscosity * line.cooler;
          sum.seconds += seconds;
          sum.supply += Math.max(0, before) * seconds;
          sum.back += Math.max(0, behind) * seconds;
          sum.viscosity += viscosity * seconds;
          sum.path += lineInput.pathViscosity * seconds;
          sum.liquid += (1 - line.lineGas) * seconds;
          const cell = level * all + offsets[k]! + piece - (piece % panPieces);
          panDepth[cell]! += depth * seconds;
          panViscosity[cell]! += viscosity * seconds;
          panDensity[cell]! += density * seconds;
          pieceSeconds += seconds;
          aged += fluidAgeingRate(temperature) * seconds;
          return true;
        },
        tick: flowed,
        untilBurnt: true,
      });
      burnt = true;
      endPiece();
      // Once a clutch has burnt the tables have nothing more to show: the rest of the trip is as at the level before.
      for (let p = piece + 1; p < pieces[k]!; p++) {
        const { starts } = seen[k]![p]!;
        starts.push(starts.at(-1) ?? snapshotOf(frozen));
        const back = all * count;
        for (const table of [supplyLine, returnLine])
          for (let s = 0; s < count; s++)
            table[row(p) + s] =
              table[row(piece) + s]! +
              (level > 0 ? table[row(p) - back + s]! - table[row(piece) - back + s]! : 0);
        const cell = level * all + offsets[k]! + p;
        if (p % panPieces === 0 && level > 0)
          for (const values of [panDepth, panViscosity, panDensity]) values[cell] = values[cell - all]!;
      }
      ends[k] = snapshotOf(frozen);
      added[k] = state.trim - kept[k]! * begins[k]!;
      const n = times[k]!;
      for (let s = 0; s < count; s++) {
        supplyWeek[level * count + s]! += n * supplyLine[row(pieces[k]! - 1) + s]!;
        returnWeek[level * count + s]! += n * returnLine[row(pieces[k]! - 1) + s]!;
      }
      ageing[level]! += n * aged;
      supplyPressure[level]! += n * supplySum;
      returnPressure[level]! += n * returnSum;
      totals[0] += n * supplyWeight;
      totals[1] += n * returnWeight;
    }
    roundBefore.set(round);
    trimGoingRound(occurrences, kept, added, trimLimit, round);
    for (let k = 0; k < wide; k++)
      for (let p = 0; p < pieces[k]!; p++)
        seen[k]![p]!.moreTrim.push((round[k]! - begins[k]!) * kept[k]! ** (p / pieces[k]!));
    supplyPressure[level]! /= Math.max(totals[0], 1e-300);
    returnPressure[level]! /= Math.max(totals[1], 1e-300);
    totals[0] = totals[1] = 0;
  }
  const climate: Climate = {
    air: walk.road.ambient,
    levels,
    supplyLine,
    returnLine,
    supplyWeek,
    returnWeek,
    supplyPressure,
    returnPressure,
    panDepth,
    panViscosity,
    panDensity,
    stands,
    ageing,
  };
  return { climate, seen };
}

/** Trim with which the share that a full unit keeps of it through a trip is found [Pa]. */
const TRIAL = 20_000;

/** Share of the learned trim that is left after a trip of a kind; the walk is where it was afterwards. */
function keptTrim(frozen: Frozen, kind: Kinds["kinds"][number]): number {
  const { state } = frozen.walk;
  const from = snapshotOf(frozen);
  const ends = [0, TRIAL].map((trim) => {
    restore(frozen, from);
    state.trim = trim;
    driveFrozen(frozen, kind, {});
    return state.trim;
  });
  restore(frozen, from);
  return Math.max(0, Math.min(1, (ends[1]! - ends[0]!) / TRIAL));
}

const totals: [number, number] = [0, 0];

/** Adds what openings of unit `viscous` and every shape lose in a time, scaled as the tables are. */
function lose(
  out: Float64Array,
  row: number,
  pressure: number,
  viscosity: number,
  density: number,
  liquid: number,
  seconds: number,
): void {
  if (!(pressure > 0)) return;
  const seep = (density * liquid * seconds * 2 * pressure) / viscosity;
  const mixed = density * Math.max(liquid, 1e-3);
  const x = (4 * mixed * pressure) / (viscosity * viscosity);
  for (let s = 0; s < shapes.length; s++) {
    const shape = shapes[s]!;
    out[row + s]! += (seep * Math.sqrt(1 + shape / middleShape)) / (1 + Math.sqrt(1 + x * shape));
  }
}
