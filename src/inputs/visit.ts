// A visit to the bay: the vehicle, how it is used, where it leaks and what was seen, read from plain data with units and dates.

import * as v from "valibot";
import { dailyDriving, type DailyDriving } from "../driving/pattern.ts";
import { codedError } from "../errors.ts";
import { wayOf } from "../lookback/along.ts";
import type { Beliefs } from "../lookback/causes.ts";
import type { Evidence } from "../lookback/evidence.ts";
import type { Visit } from "../lookback/visit.ts";
import type { Sourced } from "../sources/origin.ts";
import { given } from "../units/parse.ts";
import { brokenPaths, distinct, isRecord, isThere, within } from "./broken.ts";
import { faultList } from "./fault-list.ts";
import { faultsOfShape, plain } from "./gather.ts";
import { assumed, type Assume, type Assumption } from "./visit-assumed.ts";
import { beliefsOf } from "./visit-beliefs.ts";
import { dayOf, type VisitClock } from "./visit-clock.ts";
import { clockOf, dateIn, drivenOf, noClock, type Driven } from "./visit-dates.ts";
import { evidenceOf } from "./visit-evidence.ts";
import { evidenceExamples, withItems } from "./visit-examples.ts";
import { refuseOtherKind } from "./other-kind.ts";
import { halfRead } from "./visit-half-read.ts";
import type { Seeing } from "./visit-seeing.ts";
import { addedOf, fullAtFirst } from "./visit-fluid.ts";
import { visitSchema, type PlainVisit, type VisitTree } from "./visit-schema.ts";
import { linesOf, pricesOf, type Lines, type Priced } from "./visit-prices.ts";
import { buildOf, caseOf } from "./visit-vehicle.ts";

/** A visit as the look back takes it, with its clocks and all that was assumed. */
export interface ReadVisit {
  readonly visit: Visit;
  /** What the file believes otherwise than the library, and what its clocks say of the use. */
  readonly beliefs: Beliefs;
  readonly clock: VisitClock;
  readonly about?: string;
  readonly seed: number;
  /** Everything that the file left out, with what stands in for it. */
  readonly assumptions: readonly Assumption[];
  /** Every number of the file by its path, as it was written. */
  readonly origins: Readonly<Record<string, Sourced>>;
  /** What parts cost, and the other joints of the lines; null where the file says nothing of them. */
  readonly prices: Priced | null;
  readonly lines: Lines | null;
  /** Whether build and fluid are the vehicle's own; otherwise the invented ones stand in, and an answer must say so. */
  readonly own: { readonly build: boolean; readonly fluid: boolean };
}

const DAY = 86400;
/**
 * Reads a visit from JSON data. `standIn` is the build of the invented van, for a visit that names none (files.ts puts it there).
 * Throws "bad-case" with every fault at once. No evidence at all is no fault: the answer is then what was believed before.
 */
export function readVisit(json: unknown, standIn?: unknown): ReadVisit {
  if (typeof json !== "object" || json === null || Array.isArray(json))
    throw codedError("bad-case", [
      {
        path: "visit",
        expected: "an object",
        given: given(json),
        example: '{ "name": "...", "leak": { "place": "supply-line" }, ... }',
      },
    ]);
  refuseOtherKind("visit", json);
  const parsed = v.safeParse(visitSchema, json);
  const origins: Record<string, Sourced> = {};
  const shape = faultsOfShape(visitSchema, parsed.issues);
  const list = faultList([...shape]);
  const broken = brokenPaths(parsed.issues ?? [], shape);
  const tree = plain(parsed.output as VisitTree, "", list.faults, origins);
  const there = (path: string) => isThere(tree, path) && !broken.some((bad) => within(bad, path));
  const assumptions: Assumption[] = [];
  const assume: Assume = (path, says, origin) => assumptions.push({ path, says, origin });

  const { lastFull, visit } = tree;
  const ends = isRecord(lastFull) && isRecord(visit);
  const driven = ends ? drivenOf(tree) : {};
  const read = caseOf(tree, there, driven, standIn, list, assume);
  const daily = read === null ? null : dailyDriving(read.week);
  const clock = ends ? clockOf(tree, driven, daily, list, assume) : null;
  if (!ends && isThere(lastFull, "date")) dateIn("lastFull.date", lastFull.date, list);
  if (!ends && isRecord(visit)) dateIn("visit.date", visit.date, list);
  const shield = there("shield") ? tree.shield! : false;
  if (!isThere(tree, "shield"))
    assume("shield", "nothing under the vehicle catches fluid", assumed("no shield is told of"));

  const seeing: Seeing = {
    clock: clock ?? noClock(lastFull, visit),
    list,
    assume,
    origins,
    build: read?.unit.build ?? buildOf(tree.build ?? standIn),
    tripsPerDay: daily?.trips ?? 2,
  };
  const evidence: Evidence[] = there("lastFull.checked") ? fullAtFirst(tree, seeing) : [];
  if (Array.isArray(tree.evidence))
    tree.evidence.forEach((item, i) => {
      if (there(`evidence.${i}`)) evidence.push(...evidenceOf(item, `evidence[${i}]`, seeing));
      else if (isThere(evidenceExamples, String(item?.kind))) halfRead(item, `evidence[${i}]`, seeing);
    });
  const added = Array.isArray(tree.topUps)
    ? addedOf(tree, there, seeing, read?.unit.fluid.density15 ?? 860)
    : [];

  const told = {
    at: clock?.at ?? 100 * DAY,
    shield,
    evidence,
    added,
    ...(driven.distance === undefined
      ? {}
      : {
          driven: { from: driven.from ?? 0, to: (driven.from ?? 0) + driven.distance },
          undated: clock?.undated === true,
        }),
  };
  const beliefs = beliefsOf(
    { beliefs: partsOf("beliefs", tree.beliefs, there), causes: partsOf("causes", tree.causes, there) },
    told,
    list,
  );
  if (list.faults.length > 0 || read === null || clock === null || daily === null)
    throw codedError("bad-case", withItems(distinct(list.faults), json));

  const lines = there("lines") ? linesOf(tree.lines!, assume) : null;
  const { leak, ...rest } = read.unit;
  const { opening: _opening, hiding: _hiding, ...site } = leak!;
  const start = new Date(`${clock.date}T00:00:00Z`);
  return {
    visit: {
      name: tree.name,
      unit: { ...rest, leak: null },
      week: read.week,
      site,
      weekday: (start.getUTCDay() + 6) % 7,
      dayOfYear: Math.round((start.getTime() - Date.UTC(start.getUTCFullYear(), 0, 1)) / (1000 * DAY)),
      ...told,
    },
    beliefs: withClocks(beliefs, tree, clock, driven, daily, assume),
    clock,
    ...(tree.about === undefined ? {} : { about: tree.about }),
    seed: tree.seed,
    assumptions,
    origins,
    prices: there("prices") ? pricesOf(tree.prices!) : null,
    lines,
    own: { build: tree.build !== undefined, fluid: tree.fluid !== undefined },
  };
}

/** Those entries of a part that could be read. */
const partsOf = <T extends object>(part: string, entries: T, there: (path: string) => boolean): T =>
  Object.fromEntries(
    Object.entries(isRecord(entries) ? entries : {}).filter(([name]) => there(`${part}.${name}`)),
  ) as T;

const USE = "use against the week as told";
const FULL = "lacking when it was last full";

/** What the two clocks and the last check say of the use and of the fill, unless the file believes otherwise. */
function withClocks(
  beliefs: Beliefs,
  { lastFull, week, use }: PlainVisit,
  { at }: VisitClock,
  { distance }: Driven,
  daily: DailyDriving,
  assume: Assume,
): Beliefs {
  const more: Record<string, NonNullable<Beliefs["unknowns"]>[string]> = {};
  if (distance !== undefined && lastFull.date !== undefined && daily.distance > 0) {
    const ratio = distance / ((daily.distance * at) / DAY);
    more[USE] = { law: "lognormal", middle: ratio, spread: 0.05 };
    if ((week !== undefined || use !== undefined) && Math.abs(Math.log(ratio)) > 0.3)
      assume(
        week === undefined ? "use" : "week",
        `the odometer says ${ratio.toFixed(2)} times as much driving as the week: the odometer is believed`,
        assumed("a week as told is an estimate"),
      );
  }
  if (lastFull.checked === "service without a look")
    more[FULL] = { law: "normal", middle: 0, spread: 0.5 * 0.946352946e-3 };
  return { ...beliefs, unknowns: { ...more, ...beliefs.unknowns } };
}

/** Odometer at a moment [m], trip by trip; the distance since second 0 when nobody read the odometer. */
export const drivenBy = ({ clock, visit }: Pick<ReadVisit, "clock" | "visit">, at: number): number =>
  (clock.odometer ?? 0) + clock.distance * wayOf(visit)(at);

/** ISO date of a moment of a visit [s of its clock]. */
export const visitDay = ({ clock }: Pick<ReadVisit, "clock">, at: number): string => dayOf(clock, at);
