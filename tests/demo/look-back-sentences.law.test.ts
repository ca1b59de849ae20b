// What a look back says first and what it says of volumes that cannot be, on answers made up for it.
import { parseHTML } from "linkedom";
import { expect, test } from "vitest";
import { earlyWords } from "../../demos/look-back/early-words.ts";
import { aheadTable } from "../../demos/look-back/tables.ts";
import { nextLookBars } from "../../demos/look-back/bars.ts";
import {
  causeSentences,
  narrowingNote,
  nextSentences,
  reservations,
  sentences,
  type Telling,
} from "../../demos/look-back/told.ts";
import { tooMuch } from "../../demos/look-back/too-much.ts";
import { alone } from "../../demos/report/said.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { readVisitFile } from "../../src/inputs/files.ts";
import { answerOf, type Answer } from "../../src/lookback/answer/answer.ts";
import { lookBack } from "../../src/lookback/lookback.ts";
import { litres, quarts } from "../../src/units/literals.ts";

const read = readVisitFile("reference-data/visits/three-facts.json");
const shares = (told: Readonly<Record<string, number>>, word = "trust") =>
  ({
    answer: {
      trust: { word },
      causes: Object.entries(told).map(([cause, share]) => ({ cause, share })),
      parting: { apart: true },
    },
  }) as unknown as Telling;

test.each<[string, Readonly<Record<string, number>>]>([
  ["Yes. A slow leak", { "slow leak": 0.7, "line let go": 0.2, "never filled": 0.1 }],
  ["No. A fill that was low from the start", { "never filled": 0.9, "slow leak": 0.1 }],
  ["Cannot be told. A slow leak", { "slow leak": 0.6, "worn pump or seals": 0.4 }],
])("was it the leak opens with yes, no or cannot be told: %s", (says, told) => {
  expect(causeSentences(shares(told))[0]).toMatch(new RegExp(`^Was it the leak\\? ${says}: `));
});

test("where the evidence contradicts itself there is no yes: what comes nearest is told, and that nothing explains all", () => {
  const [says] = causeSentences(shares({ "slow leak": 0.99, "never filled": 0.01 }, "evidence conflicts"));
  expect(says).toMatch(/^Was it the leak\? Cannot be told: nothing .* What comes nearest is a slow leak: /);
});

test("an answer that may come out differently says so before it tells a date; one that can be trusted after it", async () => {
  const { visit, beliefs } = read;
  const prepared = prepareLoss(visit.unit, visit.week, 283);
  const answer = answerOf(await lookBack(visit, prepared, { guesses: 1000, seed: 1, beliefs }));
  const leaningFirst = (word: Answer["trust"]["word"]) => {
    const told = sentences(
      { read, answer: { ...answer, trust: { ...answer.trust, word } }, looks: false },
      "US",
    );
    const [leaning, dated] = [/lean on it/, /9 times in 10 it was between/].map((says) =>
      told.findIndex((one) => says.test(one)),
    );
    expect(Math.min(leaning!, dated!)).toBeGreaterThanOrEqual(0);
    return leaning! < dated!;
  };
  expect(leaningFirst("run longer")).toBe(true);
  expect(leaningFirst("evidence conflicts")).toBe(true);
  expect(leaningFirst("trust")).toBe(false);
}, 60_000);

test("without evidence it is said that the vehicle still drove into the bay", () => {
  const bare = { read: { ...read, visit: { ...read.visit, evidence: [] } }, answer: { conflicts: [] } };
  expect(reservations(bare as unknown as Telling).join()).toContain("and that it still drove into the bay");
});

const answer = (gulp: number, most: number) =>
  ({
    missing: { now: { nineTenths: [0, most] } },
    events: [{ name: "first gulp of air", chance: gulp }],
  }) as unknown as Telling["answer"];
const seen = (item: object) => ({
  visit: {
    ...read.visit,
    evidence: [{ name: "evidence[0]", at: read.visit.at, error: quarts(0.1), ...item }],
  },
});

test("a volume above what a pump that draws air leaves is answered with why", () => {
  const missing = seen({ kind: "fluid missing", volume: quarts(5.5) }) as never;
  expect(tooMuch(missing, answer(0.99, quarts(5.2)), alone("US"))).toEqual([
    expect.stringMatching(
      /^5\.5 qt were told missing, the answer goes up to 5\.2 qt: .*not pumped out/,
    ) as string,
  ]);
  expect(tooMuch(missing, answer(0.99, quarts(5.45)), alone("US"))).toEqual([]);
  expect(tooMuch(missing, answer(0.1, quarts(5.2)), alone("US"))).toEqual([]);
});

test("more drained than a full unit lets go through the plug is said to be that", () => {
  const full = read.visit.unit.build.fill - litres(4.6);
  const drained = (volume: number) => seen({ kind: "fluid drained", volume, stays: litres(4.6) }) as never;
  expect(tooMuch(drained(full + litres(0.5)), answer(0, 0), alone("SI"))[0]).toContain("through the plug");
  expect(tooMuch(drained(full), answer(0, 0), alone("SI"))).toEqual([]);
});

const DAY = 86400;
const looks = [
  { name: "catch the drip", says: "catch it in a cup", minutes: 40, now: 30 * DAY, after: 6 * DAY },
  { name: "ask for the first spot", says: "ask when it was seen", minutes: 3, now: 30 * DAY, after: 8 * DAY },
];
const next = (opened: object | null, cause: string, ahead: readonly object[] = looks) =>
  ({ read, answer: { opened, ahead, causes: [{ cause, share: 0.97 }] } }) as unknown as Telling;

test("a look has one name: in the picture, in the table and in the sentences, with what is done beside it", () => {
  const telling = next({ chance: 0.9 }, "slow leak");
  const { document } = parseHTML("<html><body></body></html>");
  const drawn = nextLookBars(telling.answer, { system: "US", width: 600, document }).textContent;
  const rows = aheadTable(telling).rows.map((row) => row.slice(0, 2));
  const said = nextSentences(telling).join(" ");
  expect(rows).toEqual(looks.map(({ name, says }) => [name, says]));
  for (const { name, says, minutes } of looks) {
    expect(drawn).toContain(`${name}, ${minutes} min`);
    expect(said).toContain(`${name} (${says}; ${minutes} min)`);
  }
});

test("sentence and table agree on what a look is worth: a tenth and more is named, from 2 % on it stands in the table, less in neither", () => {
  const said = (after: number) => {
    const telling = next({ chance: 0.9 }, "slow leak", [{ ...looks[0]!, now: 30 * DAY, after: after * DAY }]);
    return [nextSentences(telling).join(" "), aheadTable(telling).rows.length] as const;
  };
  expect(said(26)).toEqual([expect.stringMatching(/^What would narrow the opening date most: catch/), 1]);
  expect(said(28)).toEqual([expect.stringMatching(/^No look .* by a tenth; the table of looks tells/), 1]);
  expect(said(29.8)).toEqual([expect.stringMatching(/^No look .* by as much as 2 %\.$/), 0]);
});

test.each([
  ["never filled", /set the level hot.*check it again after a week/],
  ["worn pump or seals", /line pressure/],
  ["wrong or aged fluid", /which fluid was filled/],
  ["older leak", /older than the last full/],
])("where there is no opening to date (%s) it is said what to do in the place of a look", (cause, step) => {
  const telling = next(null, cause, []);
  const said = nextSentences(telling);
  expect(said[0]).toMatch(/^No further look narrows when a leak opened/);
  expect(said[1]).toMatch(step);
  // On the pages it stands where the table of looks would.
  expect(narrowingNote(telling)).toEqual(said);
});

test("looks for the opening date stand aside where there hardly was a leak", () => {
  expect(nextSentences(next({ chance: 0.05 }, "never filled")).join(" ")).toMatch(
    /helps little.*set the level hot/,
  );
  expect(nextSentences(next({ chance: 0.5 }, "never filled")).join(" ")).not.toContain("set the level hot");
});

test("early words tell no date of a leak where no drop was counted, and dates where some were", () => {
  const dates = { middle: read.clock.at / 2, half: [0, 1], nineTenths: [0, read.clock.at / 2] } as const;
  expect(earlyWords(read, dates)).toMatch(/opened, 9 times in 10, between \d{4}-/);
  const dry = readVisitFile("reference-data/visits/low-from-the-start.json");
  expect(earlyWords(dry, dates)).toMatch(
    /^No drop was counted: whether there is a leak at all is asked first/,
  );
});
