import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonBreak } from "../../src/inputs/json-break.ts";

const refusal = (text: string): string | null => {
  try {
    JSON.parse(text);
    return null;
  } catch (error) {
    return (error as Error).message;
  }
};
/** A JSON text with some characters of it replaced, taken out or put in. */
const nearly = fc
  .tuple(
    fc.json({ maxDepth: 3 }),
    fc.array(fc.tuple(fc.nat(200), fc.nat(2), fc.constantFrom(..."{}[]:,\"\\ \n1-.etu'a")), { maxLength: 2 }),
  )
  .map(([json, changes]) =>
    changes.reduce((text, [at, gone, put]) => {
      const from = at % (text.length + 1);
      return text.slice(0, from) + put + text.slice(from + gone);
    }, json),
  );

describe("the place at which a text stops being JSON", () => {
  it.each<[string, number, number, string]>([
    ['{\n  "name": "van"\n  "seed": 1\n}', 3, 3, '"seed": 1'],
    ['{\n  "name": "van",\n}', 3, 1, "}"],
    ['{ "name": \u201cvan\u201d }', 1, 11, "\u201cvan\u201d }"],
    ['{ "drops": tru }', 1, 12, "tru }"],
    ['{ "name": ', 1, 11, ""],
    ["{ name: 1 }", 1, 3, "name: 1 }"],
    ["[\r\n1,\r\n0.5 qt]", 3, 5, "qt]"],
  ])("%j: line %i, column %i", (text, line, column, stands) => {
    expect(jsonBreak(text)).toMatchObject({ line, column, stands });
  });

  it("is none exactly where the engine reads the text, and the engine's own wherever it tells one", () => {
    let told = 0;
    fc.assert(
      fc.property(nearly, (text) => {
        const [why, place] = [refusal(text), jsonBreak(text)];
        expect(place === null).toBe(why === null);
        // Within a word, a number or an escape engines count on to the letter that spoils it; here the piece is told from its beginning.
        const at = /^(?:Expected|Bad control|Unexpected non-whitespace).*at position (\d+)/s.exec(why ?? "");
        if (at === null) return;
        told++;
        const before = text.slice(0, Number(at[1])).split("\n");
        expect([place!.line, place!.column], why!).toEqual([before.length, before.at(-1)!.length + 1]);
      }),
      { numRuns: 2000 },
    );
    expect(told).toBeGreaterThan(100);
  });
});
