// What a line's end must not tear on a page: a number stays with its unit, in every unit that is told, and words stay as they are.
import { expect, test } from "vitest";
import { textHtml } from "../../demos/report/said.ts";
import { splitAtWholes } from "../../demos/report/whole.ts";
import { show, shownKinds, shownUnits } from "../../src/units/show.ts";

const wholes = (text: string) => splitAtWholes(text).filter((_, i) => i % 2 === 1);

test("every amount that is shown is whole, and so is the other system's in its bracket", () => {
  for (const kind of shownKinds)
    for (const system of ["US", "SI"] as const)
      for (const value of [1e-6, 2e-4, 3, 400]) {
        const told = show(value, kind, system);
        expect(wholes(told).map((text) => text.replace(/\)$/, ""))).toEqual(
          told.split(/ \(|\)$/).filter(Boolean),
        );
      }
  expect(shownUnits).toContain("fl oz");
});

test.each([
  ["near 56500 mi, from 56497 to 56510 mi", ["56500 mi", "56510 mi"]],
  ["310 (310 to 360) °F", ["360) °F"]],
  ["0.1 fl oz/h of it", ["0.1 fl oz/h"]],
  ["known to ± 34 days instead of 11 weeks", ["± 34 days", "11 weeks"]],
  ["< 1 % on 2024-10-20", ["< 1 %", "2024-10-20"]],
  ["a 5 speed box with 3 milled faces, 2 of them", []],
])("%s", (text, told) => {
  expect(wholes(text)).toEqual(told);
  expect(splitAtWholes(text).join("")).toBe(text);
});

test("on a page each is in one line", () => {
  expect(textHtml("2024-10-20 at < 5 qt")).toBe(
    '<span class="unbroken">2024-10-20</span> at <span class="unbroken">&lt; 5 qt</span>',
  );
});
