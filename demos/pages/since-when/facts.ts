// What the reader sets: a few facts from the bay, put into the form of a visit's file. The vehicle is the invented van.

import build from "../../../reference-data/parcel-van/build.json" with { type: "json" };
import threeFacts from "../../../reference-data/visits/three-facts.json" with { type: "json" };
import type { Tell } from "../../report/said.ts";
import { readVisit, type ReadVisit } from "../../../src/inputs/visit.ts";

/** Facts as they are set; SI but for the drops, which are counted in a minute. */
export interface Facts {
  readonly missing: number;
  readonly drops: number;
  /** Driven since it was last known full, and in a week [m]. */
  readonly since: number;
  readonly perWeek: number;
  /** Day on which it came in, an ISO date. */
  readonly date: string;
  readonly place: "supply-line" | "return-line" | "pan";
  readonly shield: boolean;
  /** Whether it ever slipped or flared. */
  readonly felt: "not asked" | "never" | "this week";
}

const mile = 1609.344;
const quart = 0.946352946e-3;

export const factsAtFirst: Facts = {
  missing: 3 * quart,
  drops: 46,
  since: 2400 * mile,
  perWeek: 200 * mile,
  date: threeFacts.visit.date,
  place: "supply-line",
  shield: true,
  felt: "not asked",
};

/** The facts as a visit's file would tell them. */
export function fileOf({ missing, drops, since, perWeek, date, place, shield, felt }: Facts) {
  const week = 7 * 86400e3;
  const visit = Date.parse(`${date}T00:00:00Z`);
  const on = (time: number) => new Date(time).toISOString().slice(0, 10);
  return {
    name: "facts from the bay",
    leak: { place },
    shield,
    use: { distancePerWeek: `${perWeek / 1000} km` },
    lastFull: { distanceAgo: `${since / 1000} km`, checked: threeFacts.lastFull.checked },
    visit: { date },
    evidence: [
      { kind: "added until it ran", volume: `${missing * 1000} L` },
      { kind: "drops", count: drops, time: "1 min", engine: "idling hot" },
      ...(felt === "never" ? [{ kind: "not felt", what: "flare", until: date }] : []),
      ...(felt === "this week"
        ? [{ kind: "first symptom", what: "flare", between: [on(visit - week), date] }]
        : []),
    ],
  };
}

/** The same as the look back takes it. */
export const readFacts = (facts: Facts): ReadVisit => readVisit(fileOf(facts), build);

/** What a prepared week hangs on: the distance of a week makes its trips, the day and the distance since the last full its seasons. */
export const weekOf = ({ since, perWeek, date }: Facts): Facts => ({ ...factsAtFirst, since, perWeek, date });

const places: Readonly<Record<Facts["place"], string>> = {
  "supply-line": "at the supply line, before the cooler",
  "return-line": "at the return line, behind the cooler",
  pan: "at the pan",
};

/** The facts in a sentence. */
export function factsText(facts: Facts, tell: Tell): string {
  const { missing, drops, since, perWeek, date, place, shield, felt } = facts;
  const flared = { "not asked": "", never: ", never flared", "this week": ", first flared this week" }[felt];
  return (
    `Asked on ${date} with ${tell(missing, "volume")} missing and ${drops} drops in a minute ${places[place]}, ` +
    `${shield ? "over a shield" : "without a shield"}, ${tell(since, "distance")} after it was last known full, ` +
    `at ${tell(perWeek, "distance")} a week${flared}.`
  );
}
