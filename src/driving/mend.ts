// Mending a recorded drive before it is checked: rows of one time, gaps while it moves, a start that is already rolling. Nothing is mended unasked or untold.

import { impossible } from "../errors.ts";
import { longestGap, type TraceColumns } from "./trace-from.ts";

/** What may be mended; what is left out is not. */
export interface Mending {
  /** Rows of one time become one, with the mean of their speeds, grades and lateral accelerations. */
  readonly mergeRepeats?: boolean;
  /** Gaps while the vehicle moves up to so long [s] are bridged by a straight line in speed; grade and turn are held. */
  readonly bridgeGaps?: number;
  /** A drive that begins at a speed is brought up to it from standstill at so much [m/s²], in a lead-in before its first row. */
  readonly leadIn?: number;
}

/** One thing that was mended, at a row of the columns as they were given. */
export interface Mended {
  readonly did: "merged" | "bridged" | "led in";
  readonly row: number;
  /** In words, without the row. */
  readonly what: string;
}

export interface MendedColumns {
  readonly columns: TraceColumns;
  readonly mended: readonly Mended[];
  /** For each row now the row that it was, or that it leads to. */
  readonly from: readonly number[];
}

interface At {
  time: number;
  speed: number;
  grade: number;
  lateral: number;
  from: number;
}

/**
 * Columns in SI, mended as far as asked, each thing told. What is left is checked by `traceFrom`. Errors: a bridge or a lead-in
 * that is not above 0. The distance of a lead-in, v²/(2a), is driven besides the drive's own.
 */
export function mendTrace(columns: TraceColumns, how: Mending): MendedColumns {
  const { mergeRepeats = false, bridgeGaps, leadIn } = how;
  if (bridgeGaps !== undefined && !(bridgeGaps > 0 && bridgeGaps < Infinity))
    impossible("bridgeGaps", bridgeGaps, "a time above 0 s");
  if (leadIn !== undefined && !(leadIn > 0 && leadIn < Infinity))
    impossible("leadIn", leadIn, "an acceleration above 0 m/s2");
  if (leadIn !== undefined && columns.speed[0]! / leadIn > LONGEST_LEAD)
    impossible("leadIn", leadIn, "an acceleration that reaches the first row's speed within an hour");
  const { name, time, speed, grade, lateral } = columns;
  const given = Array.from(time, (t, i): At => {
    return { time: t, speed: speed[i]!, grade: grade?.[i] ?? 0, lateral: lateral?.[i] ?? 0, from: i };
  });
  const mended: Mended[] = [];
  const merged = mergeRepeats ? merge(given, mended) : given;
  const bridged = bridgeGaps === undefined ? merged : bridge(merged, bridgeGaps, mended);
  const rows = leadIn === undefined ? bridged : lead(bridged, leadIn, mended);
  return {
    columns: {
      name,
      time: rows.map((row) => row.time),
      speed: rows.map((row) => row.speed),
      ...(grade === undefined ? {} : { grade: rows.map((row) => row.grade) }),
      ...(lateral === undefined ? {} : { lateral: rows.map((row) => row.lateral) }),
    },
    mended,
    from: rows.map(({ from }) => from),
  };
}

function merge(rows: readonly At[], mended: Mended[]): At[] {
  const out: At[] = [];
  for (let first = 0; first < rows.length;) {
    const same: At[] = [];
    while (
      first + same.length < rows.length &&
      (same.length === 0 || rows[first + same.length]!.time === same[0]!.time)
    )
      same.push(rows[first + same.length]!);
    const mean = (of: "speed" | "grade" | "lateral") =>
      same.reduce((sum, row) => sum + row[of], 0) / same.length;
    const { time, from } = same[0]!;
    if (same.length === 1) out.push(same[0]!);
    else {
      out.push({ time, speed: mean("speed"), grade: mean("grade"), lateral: mean("lateral"), from });
      mended.push({
        did: "merged",
        row: from,
        what: `${same.length} rows at ${time} s became one, their mean`,
      });
    }
    first += Math.max(1, same.length);
  }
  return out;
}

function bridge(rows: readonly At[], longest: number, mended: Mended[]): At[] {
  return rows.flatMap((row, i) => {
    const before = rows[i - 1];
    if (before === undefined) return [row];
    const gap = row.time - before.time;
    if (!(gap > longestGap && gap <= longest && (before.speed > 0 || row.speed > 0))) return [row];
    const parts = Math.floor(gap / longestGap) + 1; // parts of just the longest gap would be over it by a last digit
    const [from, to] = [before.speed.toPrecision(3), row.speed.toPrecision(3)];
    mended.push({
      did: "bridged",
      row: row.from,
      what: `${+gap.toPrecision(6)} s without a row were bridged by a straight line from ${from} to ${to} m/s`,
    });
    const between = Array.from({ length: parts - 1 }, (_, p): At => {
      const share = (p + 1) / parts;
      const speed = before.speed + (row.speed - before.speed) * share;
      return { ...before, time: before.time + gap * share, speed, from: row.from };
    });
    return [...between, row];
  });
}

/** Nobody speeds up for longer [s]. */
const LONGEST_LEAD = 3600;
/** Rows of a lead-in are so far apart at most [s]. */
const LEAD_STEP = 1;
/** A shorter one is none [s]: the clock has no digits for it. */
const SHORTEST_LEAD = 1e-3;

function lead(rows: readonly At[], acceleration: number, mended: Mended[]): At[] {
  const first = rows[0];
  if (first === undefined || !(first.speed > 0 && first.speed < Infinity)) return [...rows];
  const seconds = first.speed / acceleration;
  if (seconds < SHORTEST_LEAD) return [...rows];
  const parts = Math.ceil(seconds / LEAD_STEP - 1e-9);
  mended.push({
    did: "led in",
    row: first.from,
    what: `it begins at ${first.speed.toPrecision(3)} m/s: ${seconds.toPrecision(3)} s and ${(0.5 * first.speed * seconds).toPrecision(3)} m from standstill stand before it`,
  });
  const lead = Array.from({ length: parts }, (_, p): At => {
    const share = p / parts;
    return { ...first, time: first.time - seconds * (1 - share), speed: first.speed * share, lateral: 0 };
  });
  return [...lead, ...rows];
}
