// What is kept of a history: one row a trip, thinned when there are many, and close-ups of the moments that matter.

import type { EventName } from "./watch.ts";
import type { Walk } from "./walk.ts";

/** Columns of the trip rows. Rows are merged two by two when the table is full, so that memory does not grow with the days. */
export const tripColumns = [
  "clock",
  "running",
  "distance",
  "lost",
  "mass",
  "level",
  "hottest",
  "mostGas",
  "leastPressure",
  "leastMargin",
  "trim",
  "leakFlow",
  "slipEnergy",
  "lockUpSlip",
  "hottestPlate",
  "worstDamage",
] as const;
export type TripColumn = (typeof tripColumns)[number];

/** How two neighbouring rows become one. */
const merging: Record<Exclude<TripColumn, "level">, (a: number, b: number) => number> = {
  clock: (_, b) => b,
  running: (_, b) => b,
  distance: (_, b) => b,
  lost: (_, b) => b,
  mass: (_, b) => b,
  hottest: Math.max,
  mostGas: Math.max,
  leastPressure: Math.min,
  leastMargin: Math.min,
  trim: (_, b) => b,
  leakFlow: (_, b) => b,
  slipEnergy: (a, b) => a + b,
  lockUpSlip: Math.max,
  hottestPlate: Math.max,
  worstDamage: (_, b) => b,
};

/** A trip; `level` is null until the stick could first be read. */
export type TripRow = Record<Exclude<TripColumn, "level">, number> & { level: number | null };

export const newRow = (): TripRow => ({
  clock: 0,
  running: 0,
  distance: 0,
  lost: 0,
  mass: 0,
  level: null,
  hottest: 0,
  mostGas: 0,
  leastPressure: Infinity,
  leastMargin: Infinity,
  trim: 0,
  leakFlow: 0,
  slipEnergy: 0,
  lockUpSlip: 0,
  hottestPlate: 0,
  worstDamage: 0,
});

const MOST_ROWS = 2000;

/** Keeps at most two thousand rows: when there are more, neighbours become one. */
export function keep(rows: TripRow[], row: TripRow): void {
  rows.push(row);
  if (rows.length < MOST_ROWS) return;
  for (let i = 0; 2 * i < rows.length; i++) {
    const a = rows[2 * i]!;
    const b = rows[2 * i + 1] ?? a;
    const merged = newRow();
    merged.level = b.level ?? a.level;
    for (const column of tripColumns)
      if (column !== "level") merged[column] = merging[column](a[column], b[column]);
    rows[i] = merged;
  }
  rows.length = Math.ceil(rows.length / 2);
}

/** One look of a close-up, SI. */
export interface Look {
  clock: number;
  speed: number;
  scheduled: number;
  engine: number;
  submergence: number;
  gas: number;
  setPoint: number;
  linePressure: number;
  trim: number;
  demand: number;
  /** Turbine torque that the gear's elements can carry [N m]; 0 in neutral, where nothing carries any. */
  holds: number;
  slip: number;
  slipHeat: number;
  temperature: number;
  plate: number;
}

/** What the unit did around the first event of a name. */
export interface CloseUp {
  readonly about: EventName;
  readonly looks: readonly Look[];
}

const LOOKS = 600;
const APART = 0.2;
const AFTERWARDS = 60;

/** The last two minutes of running, always at hand; a close-up is cut from it once a minute has passed. */
export interface Recent {
  readonly ring: Look[];
  next: number;
  filled: number;
  lastClock: number;
  readonly wanted: { about: EventName; due: number }[];
}

export function newRecent(): Recent {
  const blank = (): Look => ({
    clock: 0,
    speed: 0,
    scheduled: 0,
    engine: 0,
    submergence: 0,
    gas: 0,
    setPoint: 0,
    linePressure: 0,
    trim: 0,
    demand: 0,
    holds: 0,
    slip: 0,
    slipHeat: 0,
    temperature: 0,
    plate: 0,
  });
  return { ring: Array.from({ length: LOOKS }, blank), next: 0, filled: 0, lastClock: -Infinity, wanted: [] };
}

/** Notes the instant in the ring, at most five times a second. */
export function note(recent: Recent, walk: Walk): void {
  const { state, now, slip } = walk;
  if (state.clock - recent.lastClock < APART) return;
  recent.lastClock = state.clock;
  const look = recent.ring[recent.next]!;
  look.clock = state.clock;
  look.speed = state.speed;
  look.scheduled = walk.scheduled;
  look.engine = state.engine;
  look.submergence = now.submergence;
  look.gas = state.gas;
  look.setPoint = now.setPoint;
  look.linePressure = now.line.linePressure;
  look.trim = state.trim;
  look.demand = now.drive.turbineTorque;
  look.holds = now.holds < Infinity ? now.holds : 0;
  look.slip = slip.speed;
  look.slipHeat = slip.heat;
  look.temperature = now.temperature;
  look.plate = state.plate[slip.clutch]!;
  recent.next = (recent.next + 1) % LOOKS;
  recent.filled = Math.min(LOOKS, recent.filled + 1);
}

export function wantCloseUp(recent: Recent, about: EventName, clock: number): void {
  recent.wanted.push({ about, due: clock + AFTERWARDS });
}

/** Cuts the close-ups that are due (all of them when `now` is Infinity) out of the ring. */
export function cutCloseUps(recent: Recent, now: number, into: CloseUp[]): void {
  for (let i = 0; i < recent.wanted.length;) {
    const { about, due } = recent.wanted[i]!;
    if (due > now) {
      i++;
      continue;
    }
    const first = recent.filled < LOOKS ? 0 : recent.next;
    const looks = Array.from({ length: recent.filled }, (_, k) => ({ ...recent.ring[(first + k) % LOOKS]! }));
    into.push({ about, looks });
    recent.wanted.splice(i, 1);
  }
}
