// The demo's report as a reader meets it: one file, opened on a phone, on a desk and on paper, by keyboard.

import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { shortCase } from "../demo/demo.ts";
import { axeFindings, cutTables, lettersByPage, overhang, screens } from "./pages.ts";
import { expectWhole, reportOf, seen } from "./written.ts";

// A leak that brings events, a close-up and a burnt clutch within three days.
const leak = { kind: "hole", place: "supply-line", height: "60 mm", diameter: "2 mm", wall: "0.9 mm" };
const opened = reportOf("run", (folder) => [shortCase(folder, { leak, opens: { after: "1 day" } })]);

/** The least height of a letter in the pictures that are shown [px]. */
const leastLetters = (page: Page): Promise<number> =>
  page.evaluate(`Math.min(...[...document.querySelectorAll(".drawing svg text")]
    .map((text) => text.getBoundingClientRect())
    .filter(({ width, height }) => width > 0 && height > 0)
    .map(({ width, height }) => Math.min(width > height ? height : width, 99)))`);

describe("the report", () => {
  test.each([360, 390, 1280, 1920])(
    "at %i px: nothing wider than the window, letters that can be read, no words in each other's way, no date torn apart, no number from its unit",
    async (width) => {
      const page = await opened(width);
      await expectWhole(page);
      // Thirteen pixels as drawn; a single letter may be narrower than it is high.
      expect(await leastLetters(page)).toBeGreaterThan(4);
      const shown = width < 640 ? "narrow" : "wide";
      const figures = await page.locator("figure").count();
      expect(figures).toBeGreaterThan(5);
      expect(await page.locator(".drawing:visible").count()).toBe(figures);
      expect(await page.locator(`.drawing.us.${shown}:visible`).count()).toBe(figures);
      const scale = await page.evaluate(
        `Math.min(...[...document.querySelectorAll(".drawing.us.${shown} > svg")].map((svg) => svg.getBoundingClientRect().width / svg.viewBox.baseVal.width))`,
      );
      expect(scale).toBeGreaterThan(0.95);
      await page.screenshot({ path: join(screens, `report-${width}.png`), fullPage: true });
      await page.close();
    },
  );

  test.each([360, 1280])(
    "the keyboard turns prose, tables, events and pictures to SI at %i px",
    async (width) => {
      const page = await opened(width);
      const before = await seen(page);
      for (const unit of [/\d mi\b/, /\d qt\b/, /\d °F/, /\[psi\]/]) expect(before).toMatch(unit);
      for (const unit of [/\d km\b/, /\d L\b/, /\d °C/, /\[kPa\]/]) expect(before).not.toMatch(unit);
      await page.keyboard.press("Tab");
      await page.keyboard.press("ArrowRight");
      expect(await page.getByRole("radio", { name: "SI" }).isChecked()).toBe(true);
      const after = await seen(page);
      for (const unit of [/\d mi\b/, /\d qt\b/, /\d °F/, /\[psi\]/]) expect(after).not.toMatch(unit);
      for (const unit of [/\d km\b/, /\d L\b/, /\d °C/, /\[kPa\]/]) expect(after).toMatch(unit);
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      await page.close();
    },
  );

  test.each([800, 1024, 1280, 1920])("at %i px no table is cut at its right", async (width) => {
    const page = await opened(width);
    expect(await cutTables(page)).toEqual([]);
    await page.close();
  });

  test("on a phone the rows of a wide table are cards that name each number", async () => {
    const page = await opened(360);
    const cell = page.getByRole("cell").nth(1);
    const named = await cell.evaluate((element) => getComputedStyle(element, "::before").content);
    expect(named).toContain("odometer");
    await page.close();
  });

  test("axe finds nothing", async () => {
    for (const width of [360, 1280]) {
      const page = await opened(width);
      expect(await axeFindings(page)).toEqual([]);
      await page.close();
    }
  });

  test("on paper: the wide pictures, no switch, and nothing higher than a page that could be cut", async () => {
    const page = await opened(360);
    await page.emulateMedia({ media: "print" });
    // A4 without its margins, at 96 px an inch.
    await page.setViewportSize({ width: 688, height: 1016 });
    expect(await page.locator(".switch").isVisible()).toBe(false);
    expect(await page.locator(".drawing.narrow:visible").count()).toBe(0);
    expect(await overhang(page)).toBeLessThanOrEqual(0);
    expect(await cutTables(page)).toEqual([]);
    const figures = page.locator("figure");
    expect(await page.locator(".drawing.us.wide:visible").count()).toBe(await figures.count());
    const parts: { inside: string; height: number }[] = await page.evaluate(
      `[...document.querySelectorAll("figure, tr, .cautions, section:not(.ranges) > .table")].map((part) => ({
        inside: getComputedStyle(part).breakInside,
        height: part.getBoundingClientRect().height,
      }))`,
    );
    expect(parts.length).toBeGreaterThan(50);
    for (const { inside, height } of parts) {
      expect(inside).toBe("avoid");
      expect(height).toBeLessThan(1016);
    }
    await page.pdf({ path: join(screens, "report.pdf"), format: "A4", tagged: true, outline: true });
    for (const format of ["A4", "Letter"])
      expect(Math.min(...lettersByPage(await page.pdf({ format })).slice(-1)), format).toBeGreaterThan(300);
    await page.close();
  });
});
