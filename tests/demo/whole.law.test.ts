// What a line's end must not tear on a page: a number stays with its unit, in every unit that is told, and words stay as they are.
import { expect, test } from "vitest";
import { textHtml } from "../../demos/report/said.ts";
import { unbroken } from "../../demos/report/whole.ts";
import { show, shownKinds, shownUnits } from "../../src/units/show.ts";

const spaced = (text: string) => text.replaceAll("\u00a0", "_");

test("no amount that is shown can be broken but before its bracket", () => {
  for (const kind of shownKinds)
    for (const system of ["US", "SI"] as const)
      for (const value of [1e-6, 2e-4, 3, 400])
        expect(unbroken(show(value, kind, system)).replace(" (", "")).not.toContain(" ");
  expect(shownUnits).toContain("fl oz");
});

test.each([
  ["near 56500 mi, from 56497 to 56500 mi", "near 56500_mi, from 56497 to 56500_mi"],
  ["310 (310 to 360) °F", "310 (310 to 360)_°F"],
  ["0.1 fl oz/h of it", "0.1_fl_oz/h of it"],
  ["known to ± 34 days instead of 11 weeks", "known to ±_34_days instead of 11_weeks"],
  ["< 1 % in 25 min", "<_1_% in 25_min"],
  ["a 5 speed box with 3 milled faces, 2 of them", "a 5 speed box with 3 milled faces, 2 of them"],
])("%s", (text, whole) => {
  expect(spaced(unbroken(text))).toBe(whole);
});

test("the page's text holds both, dates and amounts", () => {
  expect(spaced(textHtml("2024-10-20 at 5 qt"))).toBe('<span class="date">2024-10-20</span> at 5_qt');
});
