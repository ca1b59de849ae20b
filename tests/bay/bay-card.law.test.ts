import { describe, expect, test } from "vitest";
import { quart } from "../../src/bay/bands.ts";
import { bayCard, bayCards } from "../../src/bay/bay-card.ts";
import { cardText } from "../../src/bay/card-text.ts";
import { builds, van } from "./van.ts";

describe.each(builds)("the $build.name", (unit) => {
  const cards = bayCards(
    unit,
    [0, 1, 2, 3].map((quarts) => quarts * quart),
  );
  const rowsOf = (test: string, condition = "") =>
    cards.map(({ rows }) => rows.filter((row) => row.test === test && row.condition.startsWith(condition)));
  const outside = (card: (typeof cards)[number]) =>
    card.rows
      .filter(({ verdict }) => verdict !== "within")
      .map(({ test, condition, value }) => `${test}, ${condition}: ${value}`);

  describe("a healthy unit", () => {
    test("lies within every band of the bay", () => expect(outside(cards[0]!)).toEqual([]));
    test("says why, where it goes into gear no slower cold than hot, and only there", () => {
      const [card] = cards;
      const time = (condition: string) =>
        card!.rows.find((row) => row.test === "time into gear" && row.condition === condition)!.value!;
      const quick = ["drive", "reverse"].some((gear) =>
        ["-5 °C, just started after a night", "-5 °C, after a minute at idle"].some(
          (cold) => time(`${gear}, ${cold}`) < 1.1 * time(`${gear}, hot`),
        ),
      );
      expect(card!.notes.some((note) => note.startsWith("Cold it goes into gear as quickly as hot"))).toBe(
        quick,
      );
      expect(cardText(card!, "US").includes("read the cold times as the least")).toBe(quick);
    });
    test("may be stalled", () => expect(cards[0]!.pressureLow).toBe(false));
  });

  describe("the less fluid", () => {
    test.each([
      ["line pressure", ""],
      ["cooler return", ""],
      ["dipstick", ""],
      ["overflow plug", "idle, 40 °C: over the lip"],
    ])("the less, never the more, on %s %s", (name, condition) => {
      // A launch is driven: its lowest reading falls on another instant at each shortage; the ladder below looks at it.
      const found = rowsOf(name, condition).map((rows) =>
        rows.filter((row) => !row.condition.startsWith("launch")),
      );
      for (let i = 1; i < found.length; i++) {
        found[i]!.forEach(({ value }, j) => {
          const before = found[i - 1]![j]!;
          if (before.kind === "ratio") return;
          expect(value!).toBeLessThanOrEqual(before.value! + 1e-6 * Math.abs(before.value!));
        });
      }
    });

    test.each([
      ["time into gear", ""],
      ["overflow plug", "warming up"],
      ["overflow plug", "idle, 40 °C: added"],
    ])("the more, never the less, on %s %s", (name, condition) => {
      const found = rowsOf(name, condition);
      for (let i = 1; i < found.length; i++) {
        found[i]!.forEach(({ value }, j) => {
          const before = found[i - 1]![j]!.value ?? Infinity;
          expect(value ?? Infinity).toBeGreaterThanOrEqual(before * (1 - 1e-6));
        });
      }
    });
  });

  describe("the ladder", () => {
    test("a quart is found by the level alone", () => {
      const found = cards[1]!.rows.filter(({ verdict }) => verdict !== "within").map(({ test }) => test);
      expect(found).not.toEqual([]);
      for (const name of found) expect(["dipstick", "overflow plug"]).toContain(name);
    });

    test("three quarts drop the pressure under its idle band in a launch, as air reaches the pump", () => {
      const [stop] = cards[3]!.rows.filter(({ condition }) => condition.startsWith("launch"));
      expect(stop!.verdict).toBe("below");
    });

    test("no rung that was reached is left again", () => {
      for (let i = 1; i < cards.length; i++) {
        cards[i - 1]!.rows.forEach(({ verdict }, j) => {
          if (verdict !== "within") expect(cards[i]!.rows[j]!.verdict).toBe(verdict);
        });
      }
    });
  });

  describe("an almost empty unit", () => {
    const card = bayCard(unit, unit.build.fill - 1e-6);
    test("still gives a card, of numbers and of what was not reached", () => {
      expect(card.pressureLow).toBe(true);
      for (const { value } of [...card.rows, ...card.misreadings])
        if (value !== null) expect(Number.isFinite(value)).toBe(true);
    });
  });
});

describe("the card as text", () => {
  const cards = [0, quart].map((shortage) => bayCard(van, shortage));
  test("names the shortage, the verdicts and the cautions, in either system's units first", () => {
    const us = cardText(cards[1]!, "US");
    const si = cardText(cards[1]!, "SI");
    expect(us).toContain("1 qt (0.946 L) short");
    expect(si).toContain("0.946 L (1 qt) short");
    expect(cardText(cards[0]!, "US")).toContain("correct fill");
    expect(us).toContain("51 to 102 psi (350 to 700 kPa), practice");
    expect(us).toContain("not reached");
    for (const caution of cards[1]!.cautions) expect(us).toContain(caution);
    expect(us.split("\n").filter((line) => line.includes("BELOW")).length).toBeGreaterThan(2);
  });
});
