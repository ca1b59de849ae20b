// Every law that a history watches has a sentence that says what leaving its range means, and its numbers follow the reader's units.
import { expect, test } from "vitest";
import { meaningOf, stretchedText } from "../../demos/report/stretched.ts";
import { glazeRange } from "../../src/physics/damage/glaze.ts";
import { pyrolysisRange } from "../../src/physics/damage/pyrolysis.ts";
import { newOutside, outsideOf, usedIn } from "../../src/history/outside.ts";

test("each watched law is explained, and told in both systems", () => {
  const watched = usedIn(newOutside());
  expect(watched.length).toBeGreaterThan(10);
  for (const { range } of watched) expect(meaningOf(range.law), range.law).not.toBe(meaningOf("no such law"));
  for (const seen of watched) seen.low = seen.high = 2 * seen.range.high;
  const told = outsideOf(watched);
  expect(told).toHaveLength(watched.length);
  for (const text of told) {
    const [US, SI] = [stretchedText(text, "US"), stretchedText(text, "SI")];
    expect(US).not.toMatch(/\d (?:K|Pa|°C|kPa|m\/s|km\/h)\b/);
    expect(SI).not.toMatch(/\d (?:K|Pa|°F|psi|ft\/s|mph)\b/);
    expect(US).toMatch(/ good from [\d.,-]+.* to /);
  }
});

test("a law without a sentence is told all the same", () => {
  expect(stretchedText("some law used at Re = 5 (holds from 10 to 20)", "US")).toContain("not known");
});

test("what is hotter than char and glaze were measured at is the steel, as in the table of clutches", () => {
  for (const { law } of [pyrolysisRange, glazeRange])
    expect(meaningOf(law)).toMatch(/^The steel beside a lining/);
});
