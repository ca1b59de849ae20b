// What may be behind it: a leak of this kind or that, or something else. Each is a way of making guesses; the same evidence weighs them.

import { assumed } from "./assumed.ts";
import type { Belief } from "../chance/belief.ts";
import { impossible } from "../errors.ts";
import { commonUnknowns, place } from "./common.ts";
import { laws, type Believed, type GrowthLaw } from "./laws.ts";
import type { LeakOpening } from "../physics/build.ts";
import type { Outline } from "./visit.ts";

export type CauseName =
  | "slow leak"
  | "older leak"
  | "line let go"
  | "never filled"
  | "cooler leaks into the coolant"
  | "worn pump or seals"
  | "wrong or aged fluid";

/** One way to explain a visit. */
export interface Explanation {
  readonly cause: CauseName;
  /** The growth law, for a leak. */
  readonly law?: string;
  readonly says: string;
  /** What it is believed to be worth before any evidence; shares of one cause add up to the cause's. */
  readonly believed: number;
  readonly unknowns: readonly Believed[];
  /** From which on they are its own, not common to all. */
  readonly own: number;
  readonly opening: ((values: Float64Array) => LeakOpening) | null;
  readonly unseen: boolean;
  /** Where its own unknown of a weak pump is, if it has one. */
  readonly weakness?: number;
  /** Symptoms that come of themselves, at any time: of a worn pump, of fluid that is not right. */
  readonly ails: boolean;
}

const quart = 0.946352946e-3;

/** What is believed before any evidence, where it is to be otherwise than stated here: what a cause is worth, and an unknown by its name. */
export interface Beliefs {
  readonly causes?: Readonly<Partial<Record<CauseName, number>>>;
  readonly unknowns?: Readonly<Record<string, Belief>>;
  /** Ways of growing by their names, against each other; 1 for those that are not named, 0: it did not grow so. */
  readonly laws?: Readonly<Record<string, number>>;
}

/** Whether it is a leak that opened since the visit's second 0: one of those that an opening date is told of. */
export const opensSince = ({ opening, cause }: Explanation): boolean =>
  opening !== null && cause !== "older leak";

/** What each cause is believed to be worth before any evidence. Nobody has counted: assumed, and to be edited. */
export const believedCauses: Readonly<Record<CauseName, number>> = {
  "slow leak": 0.55,
  "older leak": 0.05,
  "line let go": 0.1,
  "never filled": 0.1,
  "cooler leaks into the coolant": 0.05,
  "worn pump or seals": 0.1,
  "wrong or aged fluid": 0.05,
};

const suddenHole: GrowthLaw = {
  name: "sudden",
  says: "a line or fitting that let go at once",
  unknowns: [
    {
      name: "diameter of the torn opening",
      belief: { law: "log-uniform", low: 1.5e-3, high: 8e-3 },
      unit: "mm",
      per: 1e3,
      origin: assumed("from a torn lip to the whole bore"),
    },
  ],
  opening: (values, from) => ({ kind: "hole", diameter: values[from]!, wall: 0.9e-3 }),
};

/** How much older than the last full a leak may be that nobody saw [s]: assumed, a season of each kind. */
const OLDER = 365 * 86400;

const lacking: Believed = {
  name: "lacking since it was filled",
  belief: { law: "log-uniform", low: 0.3 * quart, high: 5 * quart },
  unit: "qt",
  per: 1 / quart,
  origin: assumed("a forgotten bottle to a refill of the pan only, after a rebuild"),
};
const weakness: Believed = {
  name: "pressure against a sound unit's",
  belief: { law: "uniform", low: 0.4, high: 1 },
  unit: "",
  per: 1,
  origin: assumed("below that nothing would hold at all"),
};

/**
 * Every explanation of a visit that is believed possible; those of one cause share what it is worth.
 * Errors: a belief below 0; nothing believed at all.
 */
export function explanationsOf(visit: Outline, beliefs: Beliefs = {}): readonly Explanation[] {
  const believed = { ...believedCauses, ...beliefs.causes };
  const worths = laws.map(({ name }) => beliefs.laws?.[name] ?? 1);
  for (const [name, worth] of Object.entries({ ...beliefs.causes, ...beliefs.laws }))
    if (!(worth >= 0 && worth < Infinity)) impossible(name, worth, "a belief of 0 or more");
  const [all, allLaws] = [sum(Object.values(believed)), sum(worths)];
  if (!(all > 0)) impossible("causes", all, "at least one cause believed above 0");
  if (!(allLaws > 0)) impossible("laws", allLaws, "at least one way of growing believed above 0");
  const share = ({ cause, law }: Explanation) =>
    cause === "slow leak" || cause === "older leak"
      ? (worths[laws.findIndex(({ name }) => name === law)]! * laws.length) / allLaws
      : 1;
  const explanations = allOf(visit, believed).map((explanation) => ({
    ...explanation,
    believed: (explanation.believed * share(explanation)) / all,
    unknowns: explanation.unknowns.map((unknown) => ({
      ...unknown,
      // A line that let go did so lately, and an older leak before the last full, whatever is believed of leaks since then.
      belief:
        ((explanation.cause === "line let go" || explanation.cause === "older leak") &&
        unknown.name === "age of the leak"
          ? undefined
          : beliefs.unknowns?.[unknown.name]) ?? unknown.belief,
    })),
  }));
  return explanations.filter((explanation) => explanation.believed > 0);
}

const sum = (worths: readonly number[]): number => worths.reduce((all, worth) => all + worth, 0);

function allOf(visit: Outline, believed: Readonly<Record<CauseName, number>>): readonly Explanation[] {
  const common = commonUnknowns(visit);
  const leaks = (
    cause: CauseName,
    among: readonly GrowthLaw[],
    unseen: boolean,
    age?: Belief,
  ): Explanation[] =>
    among.map((law) => ({
      cause,
      law: law.name,
      says: law.says,
      believed: believed[cause] / among.length,
      unknowns: [
        ...common.map((unknown, i) =>
          i === place.age && age !== undefined ? { ...unknown, belief: age } : unknown,
        ),
        ...law.unknowns,
      ],
      own: common.length,
      opening: (values) => law.opening(values, common.length),
      unseen,
      ails: false,
    }));
  const still = (
    cause: CauseName,
    says: string,
    own: readonly Believed[],
    more: Partial<Explanation> = {},
  ): Explanation => ({
    cause,
    says,
    believed: believed[cause],
    unknowns: [...common, ...own],
    own: common.length,
    opening: null,
    unseen: false,
    ails: false,
    ...more,
  });
  const steady = laws.filter(({ name }) => name === "steady");
  return [
    ...leaks("slow leak", laws, false),
    // The days are those that a week's driving takes: a line lets go on the road (`drivenBack`).
    ...leaks("line let go", [suddenHole], false, {
      law: "log-uniform",
      low: 300,
      high: Math.max(Math.min(7 * 86400, visit.at), 301),
    }),
    ...leaks("cooler leaks into the coolant", steady, true),
    still("never filled", "too little was put in the last time", [lacking]),
    still("worn pump or seals", "full, but the pressure is not what it was", [weakness], {
      weakness: common.length,
      ails: true,
    }),
    still("wrong or aged fluid", "full and under pressure, but the fluid is not right", [], { ails: true }),
    ...leaks("older leak", laws, false, { law: "uniform", low: visit.at, high: visit.at + OLDER }),
  ];
}
