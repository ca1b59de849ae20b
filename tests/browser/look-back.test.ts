// The page of a look back as a reader meets it: one file, on a phone, on a desk and on paper, by keyboard.

import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { quickVisit } from "../demo/quick-visit.ts";
import { axeFindings, overhang, screens } from "./pages.ts";
import { expectWhole, reportOf, seen } from "./written.ts";

const opened = reportOf("look-back", (folder) => [quickVisit(folder), "--guesses", "1000", "--walks", "1"]);

describe("the page of a look back", () => {
  test.each([360, 390, 1280])(
    "at %i px: nothing wider than the window, six pictures, all letters inside them, none in each other's way, no date torn apart, no number from its unit",
    async (width) => {
      const page = await opened(width);
      await expectWhole(page);
      expect(await page.locator("figure").count()).toBe(6);
      expect(await page.locator(".drawing:visible").count()).toBe(6);
      const outside = await page.evaluate(
        `[...document.querySelectorAll(".drawing svg text")].filter((text) => {
        const [a, b] = [text.getBoundingClientRect(), text.closest(".drawing > svg").getBoundingClientRect()];
        return a.width > 0 && (a.left < b.left - 2 || a.right > b.right + 2 || a.bottom > b.bottom + 2 || a.top < b.top - 2);
      }).map(({ textContent }) => textContent)`,
      );
      expect(outside).toEqual([]);
      await page.screenshot({ path: join(screens, `look-back-${width}.png`), fullPage: true });
      await page.close();
    },
  );

  test.each([360, 1280])("the keyboard turns everything to SI at %i px", async (width) => {
    const page = await opened(width);
    const before = await seen(page);
    for (const unit of [/\d mi\b/, /\d qt\b/, /\[qt\]/, /\[mi\]/]) expect(before).toMatch(unit);
    for (const unit of [/\d km\b/, /\d L\b/, /\[L\]/, /\[km\]/]) expect(before).not.toMatch(unit);
    await page.keyboard.press("Tab");
    await page.keyboard.press("ArrowRight");
    const after = await seen(page);
    for (const unit of [/\d mi\b/, /\d qt\b/, /\[qt\]/, /\[mi\]/]) expect(after).not.toMatch(unit);
    for (const unit of [/\d km\b/, /\d L\b/, /\[L\]/, /\[km\]/]) expect(after).toMatch(unit);
    expect(await overhang(page)).toBeLessThanOrEqual(0);
    await page.close();
  });

  test("says first that it is no proof and whose build it is, and shows the cautions", async () => {
    const page = await opened(1280);
    const short = await page.locator("section").first().innerText();
    expect(short).toContain("not proof of anyone's fault");
    expect(short).toContain("an invented van stands in");
    expect(short).toContain("9 times in 10 between");
    expect(await page.locator(".cautions").innerText()).toContain(
      "towed with its driven wheels off the ground",
    );
    expect(await page.locator("body").innerText()).not.toContain("would have found it");
    await page.close();
  });

  test("axe finds nothing", async () => {
    for (const width of [360, 1280]) {
      const page = await opened(width);
      expect(await axeFindings(page)).toEqual([]);
      await page.close();
    }
  });

  test("on paper: the wide pictures, no switch, nothing cut", async () => {
    const page = await opened(360);
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize({ width: 688, height: 1016 });
    expect(await page.locator(".switch").isVisible()).toBe(false);
    expect(await page.locator(".drawing.narrow:visible").count()).toBe(0);
    expect(await page.locator(".drawing.us.wide:visible").count()).toBe(6);
    expect(await overhang(page)).toBeLessThanOrEqual(0);
    const high: number[] = await page.evaluate(
      `[...document.querySelectorAll("figure, tr, .cautions, section:not(.ranges) > .table")].map((part) => part.getBoundingClientRect().height)`,
    );
    expect(Math.max(...high)).toBeLessThan(1016);
    await page.pdf({ path: join(screens, "look-back.pdf"), format: "A4", tagged: true, outline: true });
    await page.close();
  });
});
