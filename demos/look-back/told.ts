// The answer in plain sentences, each with its number beside the word: what a customer can read.

import type { Answer } from "../../src/lookback/answer/answer.ts";
import { likelihood, outOfTwenty } from "../../src/lookback/answer/words.ts";
import type { ReadVisit } from "../../src/inputs/visit.ts";
import { showSpread } from "../../src/units/show-spread.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { alone, type Tell } from "../report/said.ts";
import { insteadSentences } from "./instead.ts";
import { itemWords } from "./item-words.ts";
import { toldMoments } from "./events.ts";
import { agesOf, dayIn } from "./moments.ts";
import { tooMuch } from "./too-much.ts";

export interface Telling {
  readonly read: ReadVisit;
  readonly answer: Answer;
  /** Whether it is told how likely each earlier look should have found the leak. */
  readonly looks: boolean;
}

/** Everything that a reader wants to know first; the same sentences in either system. */
export function sentences(telling: Telling, system: UnitSystem): string[] {
  const tell = alone(system);
  const leanOnIt = telling.answer.trust.word === "trust";
  return [
    // What contradicts itself, or may come out differently, comes before all that rests on it; what it was where it hardly was a leak.
    ...conflictSentences(telling, tell),
    ...(leanOnIt ? [] : trustSentences(telling)),
    ...((telling.answer.opened?.chance ?? 0) < 0.5
      ? [...causeSentences(telling), ...openingSentences(telling, system)]
      : [...openingSentences(telling, system), ...causeSentences(telling)]),
    ...tooMuch(telling.read, telling.answer, tell),
    ...harmSentences(telling, system),
    ...nextSentences(telling),
    ...(telling.looks ? lookSentences(telling) : []),
    ...(leanOnIt ? trustSentences(telling) : []),
    ...telling.answer.warnings,
  ];
}

/** What the answer rests on that is not this vehicle's own, and that it is no proof. */
export function reservations({ read, answer }: Telling): string[] {
  const seen =
    answer.conflicts.length > 0 ? "The evidence contradicts itself: read the conflicts first. " : "";
  return [
    `${seen}An estimate is evidence with an interval, not proof of anyone's fault.`,
    ...(read.visit.evidence.some(({ name }) => name !== "lastFull")
      ? []
      : [
          "No evidence was given: what stands here is only what was believed before any, and that it still drove into the bay.",
        ]),
    ...(read.own.build
      ? []
      : [
          "No build was given: an invented van stands in, so events and harm are that van's; give the vehicle's own pan, pump and clutches.",
        ]),
  ];
}

function openingSentences(telling: Telling, system: UnitSystem): string[] {
  const { read, answer } = telling;
  const { opened, missing } = answer;
  const { texts, unit } = showSpread(missing.now, "volume", system);
  const [about, from, to] = texts.map((text) => `${text} ${unit}`);
  const lacks = `${about!} were missing at the visit, 9 times in 10 between ${from!} and ${to!}.`;
  const told = toldMoments(telling).opened;
  const [dates, driven] = [told.dates, told.driven[system]];
  if (opened === null || dates === null || driven === null)
    return ["There is next to no sign of a leak that opened since it was last full.", lacks];
  const ages = agesOf(read, opened.when);
  const grown = [...(answer.causes.find(({ cause }) => cause === "slow leak")?.laws ?? [])].sort(
    (a, b) => b.share - a.share,
  )[0];
  const since =
    opened.chance < 0.5
      ? `If it was a leak that opened since it was last full (${outOfTwenty(opened.chance)}), it`
      : "The leak";
  return [
    `${since} opened ${ages.middle} before the visit, near ${dates.middle}: as likely earlier as later. ` +
      `9 times in 10 it was ${dates.from === dates.to ? `on ${dates.from}` : `between ${dates.between}`}, ${ages.nineTenths} before the visit. Half the time it was ${ages.half} before.` +
      (opened.chance >= 0.5 && opened.chance < 0.995
        ? ` That holds if it was a leak that opened since it was last full, which is ${likelihood(opened.chance)}.`
        : ""),
    `By the odometer it opened near ${driven.middle}, 9 times in 10 ${driven.nineTenths.startsWith("at ") ? "" : "from "}${driven.nineTenths}.`,
    ...(answer.older < 0.02
      ? []
      : [
          `Or it leaked before it was last full already, and was made good then: ${likelihood(answer.older)}. The dates here do not tell of that case.`,
        ]),
    // One way of growing is named only where it stands out: the others would not come out the same another time.
    ...(grown === undefined || grown.share < 0.05
      ? []
      : [
          grown.share < 0.6
            ? "Nobody saw it grow: several ways are averaged, and none stands out."
            : `Nobody saw it grow: several ways are averaged, and the likeliest is ${grown.says} (${outOfTwenty(grown.share)}).`,
        ]),
    lacks,
  ];
}

export function causeSentences({ answer: { causes, parting, trust } }: Telling): string[] {
  const [first, second] = causes;
  if (first === undefined) return [];
  const next =
    second === undefined || second.share < 0.005
      ? ""
      : ` Next comes ${named(second.cause)}: ${likelihood(second.share)}.`;
  const says = [
    trust.word === "evidence conflicts"
      ? `Was it the leak? Cannot be told: nothing that was asked explains all of the evidence. What comes nearest is ${named(first.cause)}: of what was asked, ${likelihood(first.share)}.${next}`
      : `Was it the leak? ${verdict(causes)}. ${capital(named(first.cause))}: ${likelihood(first.share)}.${next}`,
  ];
  if (!parting.apart)
    says.push(
      `The evidence does not tell ${named(parting.first)} from ${named(parting.second)}: not distinguishable. ` +
        (parting.look === null
          ? "No look that was reckoned through would part them."
          : `What would part them best: ${lookWords(parting.look)}.`),
    );
  return says;
}

/** Causes that are the leak where it was found: all that grew there or let go. */
const ofTheLeak: readonly string[] = ["slow leak", "older leak", "line let go"];

/** Yes and no from where the scale says very likely and very unlikely; between them nobody can tell. */
function verdict(causes: Answer["causes"]): string {
  const leak = causes.reduce((sum, { cause, share }) => sum + (ofTheLeak.includes(cause) ? share : 0), 0);
  if (leak > 0.8) return "Yes";
  return leak <= 0.2 ? "No" : "Cannot be told";
}

const articles: Readonly<Record<string, string>> = {
  "slow leak": "a slow leak",
  "older leak": "a leak that is older than the last full",
  "line let go": "a line that let go",
  "never filled": "a fill that was low from the start",
  "cooler leaks into the coolant": "a cooler that leaks into the coolant",
  "worn pump or seals": "a worn pump or worn seals",
  "wrong or aged fluid": "wrong or aged fluid",
};
export const named = (cause: string): string => articles[cause] ?? cause;
const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1);

/** Name of an item in the file, or of several joined by "with" → the items in words. */
export function wordsOf({ read }: Pick<Telling, "read">, names: string, tell: Tell): string {
  const items = names.split(" with ").map((name) => {
    const item = read.visit.evidence.find((other) => other.name === name);
    return item === undefined ? name : itemWords(item, read, tell);
  });
  return items.join(", with ");
}

function conflictSentences(telling: Telling, tell: Tell): string[] {
  return telling.answer.conflicts.map(
    ({ first, second, wayOut }) =>
      `These two can hardly both be right: ${wordsOf(telling, first, tell)}; and ${wordsOf(telling, second, tell)}. What would reconcile them: ${wayOut}.`,
  );
}

function harmSentences(telling: Telling, system: UnitSystem): string[] {
  const { read, answer } = telling;
  const event = (name: string) =>
    answer.events.find((other) => other.name === name && other.clutch === undefined);
  const says: string[] = [];
  const {
    event: spot,
    dates,
    driven,
  } = toldMoments(telling).events.find((told) => told.event.name === "first spot on the ground") ?? {};
  if (spot?.when && dates) {
    const ages = agesOf(read, spot.when);
    says.push(
      `A spot on the ground could have been seen by the visit: ${likelihood(spot.chance)}. Where it was, it came ${ages.middle} before the visit, near ${dates.middle} and ${driven![system]!.middle}. 9 times in 10 it came ${ages.nineTenths} before.`,
    );
  }
  const slip = event("first sustained slip");
  says.push(`A clutch had slipped for a second or more by the visit: ${likelihood(slip?.chance ?? 0)}.`);
  const burnt = Math.max(0, ...answer.clutches.map((clutch) => clutch.burnt));
  const worst = answer.clutches.filter((clutch) => clutch.burnt === burnt);
  const of = worst[0]?.of ?? null;
  const atRisk = `Most at risk ${worst.length === 1 ? "is" : "are"} ${worst.map(({ name }) => `the ${name}`).join(" and ")}`;
  const each = worst.length === 1 ? "it" : "each";
  says.push(
    of !== null
      ? `${atRisk}: ${each} burnt in ${Math.round(burnt * of)} of ${of} such losses that were driven trip by trip, and so few tell no odds.`
      : burnt < 0.005
        ? `A clutch is burnt: ${likelihood(burnt)}.`
        : `${atRisk}; ${each} is burnt: ${likelihood(burnt)}.`,
  );
  return says;
}

/** Looks that take away at least a fiftieth of the doubt about the opening date. */
export const narrowing = ({ ahead }: Answer): Answer["ahead"] =>
  ahead.filter(({ now, after }) => after <= 0.98 * now);

/** What is not in the table of looks, in a sentence, or what to do in the place of a look; nothing where the table holds all. */
export function narrowingNote({ answer }: Pick<Telling, "answer">): string[] {
  if (answer.ahead.length === 0) return insteadSentences(answer);
  const all = answer.ahead.length;
  const others = all - narrowing(answer).length;
  if (others === 0) return [];
  if (others === all)
    return [`None of the ${all} looks that were reckoned through would narrow the opening date by 2 %.`];
  return [
    `${others === 1 ? "Another look" : `${others} other looks`} would narrow the opening date by less than 2 %.`,
  ];
}

export function nextSentences({ answer }: Pick<Telling, "answer">): string[] {
  const { ahead, opened } = answer;
  const instead = insteadSentences(answer);
  if (opened === null || instead.length > 0) return instead;
  // A look that takes away less than a tenth of the doubt is not worth its minutes.
  const worth = ahead.filter(({ now, after }) => after < 0.9 * now);
  const best = worth[0];
  if (best === undefined)
    return [
      narrowing(answer).length === 0
        ? "No look that was reckoned through would narrow the opening date by as much as 2 %."
        : "No look that was reckoned through would narrow the opening date by a tenth; the table of looks tells what each would still leave.",
    ];
  const cheapest = worth.reduce((least, look) => (look.minutes < least.minutes ? look : least));
  const gain = ({ now, after }: typeof best) =>
    `the opening date would be known to ± ${days(after)} instead of ± ${days(now)} (about 2 times in 3)`;
  return [
    `What would narrow the opening date most: ${lookWords(best)}; ${gain(best)}.`,
    ...(cheapest === best
      ? []
      : [`The cheapest look that helps: ${lookWords(cheapest)}; ${gain(cheapest)}.`]),
  ];
}

/** A look by the name that it has in picture and table as well, with what is done and how long it takes. */
const lookWords = ({ name, says, minutes }: Pick<Answer["ahead"][number], "name" | "says" | "minutes">) =>
  `${name} (${says}; ${minutes} min)`;

/** A standard deviation of time. */
export const days = (seconds: number): string => {
  const count = seconds / 86400;
  return `${count < 10 ? count.toFixed(1) : Math.round(count)} days`;
};

function lookSentences({ read, answer: { looks } }: Telling): string[] {
  return looks.map(({ at, look, seen, existed, wet, found }) => {
    const then = `The look on ${dayIn(read, at)} (${look}, ${seen ? "wet" : "nothing seen"}): the leak was open by then ${outOfTwenty(existed)}`;
    return seen
      ? `${then}; otherwise what was wet there was another's fluid, which is reckoned with in one look of fifty (assumed).`
      : `${then}, wet enough to be seen ${outOfTwenty(wet)}, and a look of that kind would have found it ${outOfTwenty(found)}. ` +
          "How well such looks find leaks is assumed: nobody has published it.";
  });
}

const trusted = {
  trust: "How far to lean on it:",
  "run longer": "Do not lean on it yet:",
  "evidence conflicts": "Do not lean on it:",
} as const;

function trustSentences({ answer: { trust } }: Telling): string[] {
  return [`${trusted[trust.word]} ${trust.says[0]!.toLowerCase()}${trust.says.slice(1)}`];
}
