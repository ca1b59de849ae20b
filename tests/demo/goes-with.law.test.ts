// What a look back says of parts, money and looks: no surer than it is known, and nothing made up.
import { describe, expect, test } from "vitest";
import { costTable, goesWithSentences, goneTable } from "../../demos/look-back/goes-with.ts";
import {
  lookSentencesFor,
  lookTable,
  payingSentences,
  type Coming,
} from "../../demos/look-back/looking-again.ts";
import type { Telling } from "../../demos/look-back/told.ts";
import { goneIn, partTable, refillTable } from "../../demos/report/part-table.ts";
import { readVisitFile } from "../../src/inputs/files.ts";
import type { ReadVisit } from "../../src/inputs/visit.ts";
import type { ComingLeak } from "../../src/lookback/coming.ts";
import type { RuinedAnswer } from "../../src/lookback/answer/ruined.ts";
import { miles } from "../../src/units/literals.ts";

const read = readVisitFile("reference-data/visits/seep-behind-a-shield.json");
const sound = { clutches: false, lockUp: false, burnt: false };
const burnt = { clutches: true, lockUp: false, burnt: true };

const telling = (
  ruined: readonly RuinedAnswer[],
  more: { read?: ReadVisit; of?: number; cause?: string } = {},
): Telling =>
  ({
    read: more.read ?? read,
    looks: false,
    answer: {
      ruined,
      clutches: [{ of: more.of ?? null }],
      causes: [{ cause: more.cause ?? "slow leak", share: 1 }],
    },
  }) as unknown as Telling;

const column = (told: Telling, i: number) =>
  Object.fromEntries(goneTable(told).rows.map((row) => [row[0], row[i]]));

const leak = (delay: number): ComingLeak => ({
  law: "steady",
  findable: { "walk round": miles(100), "look underneath": miles(100), "shield taken off": miles(100) },
  harmed: miles(100 + delay),
});
const coming: Coming = { leaks: Array.from({ length: 40 }, (_, i) => leak(200 * (i + 1))), shield: true };
const said = (told: Telling) => goesWithSentences(told, coming, "US").join("\n");

describe("parts that go with the leak", () => {
  test("are told with their chances; of a handful that was driven with their number", () => {
    const cases = [
      { ...sound, share: 0.6 },
      { ...burnt, share: 0.4 },
    ];
    expect(column(telling(cases), 1)).toMatchObject({
      "what leaks": "> 99 %",
      cooler: "40 %",
      converter: "40 %",
      clutches: "40 %",
    });
    expect(column(telling(cases, { of: 5 }), 1)).toMatchObject({ cooler: "2 of 5", clutches: "2 of 5" });
  });

  test("a history knows: burnt takes cooler and converter along, half gone only the clutches", () => {
    const fates = (damage: number) => [{ damage }, { damage: 0 }, { damage: 0 }];
    expect(goneIn(fates(1.2))).toEqual({ line: "yes", cooler: "yes", converter: "yes", clutches: "yes" });
    expect(goneIn(fates(0.6))).toEqual({ line: "yes", cooler: "no", converter: "no", clutches: "yes" });
    expect(partTable("parts", goneIn(fates(0.6))).rows.map(([part]) => part)).not.toContain(
      "other joints of the lines",
    );
  });

  test("what goes in grows with what was emptied", () => {
    const poured = refillTable(read.visit.unit).rows.map((row) => parseFloat((row[1] as { SI: string }).SI));
    expect(poured).toEqual([...poured].sort((a, b) => a - b));
  });
});

describe("what each way costs", () => {
  const cases = [
    { ...sound, share: 0.9 },
    { ...burnt, share: 0.1 },
  ];

  test("is told by the file's prices, the least on average marked, and from when the clutches pay unseen", () => {
    const says = said(telling(cases));
    expect(costTable(telling(cases), coming).title).toContain("crowns");
    expect(
      costTable(telling(cases), coming).rows.filter(([way]) => String(way).includes("least on average")),
    ).toHaveLength(1);
    // By hand: 3450 - 290 now against 3620 then.
    expect(says).toContain("pays where they are gone in about 17 of 20 cases like this or more");
  });

  test("no way is called the cheapest where a handful was driven", () => {
    const told = telling(cases, { of: 6 });
    expect(JSON.stringify(costTable(told, coming).rows)).not.toContain("least on average");
    const says = said(told);
    expect(says).not.toContain("Least on average");
    expect(says).toContain("Look at pan and magnet before anything is ordered");
  });

  test("without prices it is said how to give them; where it hardly was a line, that it is not told", () => {
    const poor = telling(cases, { read: { ...read, prices: null } });
    expect(costTable(poor, coming).rows).toEqual([]);
    expect(said(poor)).toContain("give prices in the file");
    expect(said(telling(cases, { cause: "never filled" }))).toContain("It hardly was a line");
  });
});

describe("looks before it happens again", () => {
  test("the further apart, the more burn first; a closer look never misses more", () => {
    const shares = lookTable(coming).rows.map((row) =>
      row.slice(1).map((cell) => parseInt((cell as string).replace(/[<>] /, ""))),
    );
    for (const [i, row] of shares.entries()) {
      expect(row).toEqual([...row].sort((a, b) => b - a));
      if (i > 0) row.forEach((share, k) => expect(share).toBeGreaterThanOrEqual(shares[i - 1]![k]!));
    }
  });

  test("without a shield none is taken off", () => {
    const bare = { ...coming, shield: false };
    expect(lookTable(bare).columns.map(({ says }) => says)).not.toContain("shield taken off");
    expect(lookSentencesFor(bare, "US").join()).not.toContain("shield");
  });

  test("too few that burn tell nothing", () => {
    const few = { ...coming, leaks: coming.leaks.slice(0, 5) };
    expect(lookTable(few).rows).toEqual([]);
    expect(lookSentencesFor(few, "US")).toHaveLength(1);
    expect(payingSentences(read, few, "US")).toEqual([]);
  });

  test("what pays is told only by prices of the file, in both systems", () => {
    expect(payingSentences({ prices: null, lines: read.lines }, coming, "US")).toEqual([]);
    const [US, SI] = (["US", "SI"] as const).map((system) =>
      payingSentences(read, coming, system).join("\n"),
    );
    expect(US).toMatch(/about every [\d,]+ mi: .*crowns.* still do/);
    expect(SI).toMatch(/about every [\d,]+ km: .*crowns.* still do/);
    expect(US).toContain("The other joints here are past that.");
    expect(US).toMatch(/New lines before they leak are cheapest at about [\d.]+ years/);
    // A look that is dearer than all that it can save is not made.
    const dear = { ...read.prices!, look: 1e6 };
    expect(payingSentences({ prices: dear, lines: null }, coming, "US").join()).toContain(
      "hardly pay: they cost more than they save",
    );
    const { oneLeakIn: _, ...half } = read.prices!;
    expect(payingSentences({ prices: half, lines: null }, coming, "US").join()).toContain(
      "prices.oneLeakIn is missing",
    );
  });
});
