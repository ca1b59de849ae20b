// The vehicle of a visit: build, fluid, week and place of the leak, with what stands in for each that is not told.

import { isCoded } from "../errors.ts";
import type { Build } from "../physics/build.ts";
import { readBuild, readCase, type Case } from "./case.ts";
import { dateSeconds } from "./dates.ts";
import type { FaultList } from "./fault-list.ts";
import { unknownKey } from "./misspelt.ts";
import { assumed, usualFluid, usualSites, usualSurroundings, type Assume } from "./visit-assumed.ts";
import type { Driven } from "./visit-dates.ts";
import type { PlainVisit } from "./visit-schema.ts";
import { weekFor, type Use } from "./visit-week.ts";

const DAY = 86400;
/** A week's driving when nothing at all is told of it [m]. */
const USUAL_WEEK = 200 * 1609.344;
/** Keys of a leak's place; the opening and what hides it are what is looked for. */
const siteKeys = ["place", "height", "x", "y", "fedBy", "lineAbove", "columnHeight", "dripRadius"];
/** What they are called where it is told that they were left out. */
const siteWords: Readonly<Record<string, string>> = {
  height: "its height over the pan's floor",
  lineAbove: "what the line above it holds",
  columnHeight: "how high that line rises",
  dripRadius: "the rim that it drips from",
};
const siteExample = '{ "place": "supply-line" }';

/** The build by itself, where something else of the vehicle is wrong: what hangs on it can be looked at all the same. */
export function buildOf(json: unknown): Build | null {
  try {
    return readBuild(json).build;
  } catch (error) {
    if (!isCoded(error)) throw error;
    return null;
  }
}

/** Build, fluid, week and surroundings through the door of the cases, with a mark in the place of the opening. */
export function caseOf(
  tree: PlainVisit,
  there: (path: string) => boolean,
  { distance }: Driven,
  standIn: unknown,
  list: FaultList,
  assume: Assume,
): Case | null {
  const { build, fluid, driver, surroundings } = tree;
  if (build === undefined)
    assume(
      "build",
      "the invented van stands in: its pan, pump and clutches are not this vehicle's",
      assumed("no build is given"),
    );
  if (fluid === undefined) assume("fluid", "a conventional fluid", assumed("none is given"));
  if (surroundings === undefined)
    assume(
      "surroundings",
      "a temperate place: 52 °F (11 °C) over the year, 16 °F (9 °C) warmer in July and colder in January",
      assumed("none are given"),
    );
  const data = {
    name: "visit",
    build: build ?? standIn,
    fluid: fluid ?? usualFluid,
    leak: there("leak") ? siteOf(tree.leak, list, assume) : null,
    week:
      tree.week ??
      weekFor(
        there("use")
          ? useOf(tree, distance, assume)
          : { roads: "mixed", distancePerWeek: usualUse(tree, distance, assume) },
      ),
    ...(driver === undefined ? {} : { driver }),
    surroundings: surroundings ?? usualSurroundings,
    start: { date: "2024-01-01", odometer: "0 mi" },
    span: "1 day",
    seed: there("seed") ? tree.seed : 1,
  };
  list.want(
    tree.week === undefined || tree.use === undefined,
    "use",
    "a week or a use, not both",
    "both",
    '"use": { "distancePerWeek": "250 mi" }',
  );
  try {
    return readCase(data);
  } catch (error) {
    if (!isCoded(error)) throw error;
    list.faults.push(...error.faults);
    return null;
  }
}

function siteOf(leak: Readonly<Record<string, unknown>>, list: FaultList, assume: Assume): object {
  for (const key of Object.keys(leak).filter((one) => !siteKeys.includes(one)))
    list.faults.push({
      ...unknownKey(
        `leak.${key}`,
        key,
        siteKeys,
        Object.keys(leak),
        `only where it leaks (${siteKeys.join(", ")}): how large it is, is what is looked for`,
      ),
      example: siteExample,
    });
  const usual = usualSites[String(leak["place"])] ?? {};
  const missing = Object.keys(usual).filter((key) => !Object.hasOwn(leak, key));
  if (missing.length > 0)
    assume(
      "leak",
      `where exactly it leaks: ${missing.map((key) => siteWords[key]).join(", ")}, as usual at that place`,
      assumed("only the place is given"),
    );
  const own = Object.fromEntries(Object.entries(leak).filter(([key]) => siteKeys.includes(key)));
  return { ...usual, ...own, kind: "hole", diameter: "0.1 mm", wall: "0.9 mm" };
}

function useOf(tree: PlainVisit, distance: number | undefined, assume: Assume): Use {
  const { roads, distancePerWeek, hoursPerDay } = tree.use!;
  if (roads === undefined)
    assume("use.roads", "town and highway in turn", assumed("nothing is told of the roads"));
  const told = [distancePerWeek, hoursPerDay].some((number) => number !== undefined && !Number.isNaN(number));
  return {
    roads: roads ?? ("mixed" as const),
    ...(told ? {} : { distancePerWeek: usualUse(tree, distance, assume) }),
    ...(distancePerWeek === undefined || Number.isNaN(distancePerWeek) ? {} : { distancePerWeek }),
    ...(hoursPerDay === undefined || Number.isNaN(hoursPerDay) ? {} : { hoursPerDay }),
  };
}

/** A week's distance by odometer and dates, or the usual one. */
function usualUse({ lastFull, visit }: PlainVisit, distance: number | undefined, assume: Assume): number {
  const days = (dateSeconds(String(visit?.date)) - dateSeconds(String(lastFull?.date))) / DAY;
  if (distance !== undefined && distance > 0 && days > 0) {
    assume(
      "use",
      "trips of a day out and home on workdays, as far as the odometer says",
      assumed("only distance and dates are given"),
    );
    return (7 * distance) / days;
  }
  assume("use", "200 miles a week, out and home on workdays", assumed("nothing is told of the use"));
  return USUAL_WEEK;
}
