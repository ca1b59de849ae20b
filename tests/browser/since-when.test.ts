// The page that looks back, as a technician meets it: on a phone and a desk, by mouse and by keyboard, on paper and without a network.
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Page } from "playwright-core";
import {
  axeFindings,
  meetings,
  openSite,
  overhang,
  screens,
  tornAmounts,
  tornDates,
  visit,
  type Site,
} from "./pages.ts";

const path = "since-when/index.html";
const SLOW = 240_000;
let site: Site;

beforeAll(async () => {
  mkdirSync(screens, { recursive: true });
  site = await openSite();
});
afterAll(() => site.close());

const status = (page: Page) => page.getByRole("status");
const done = (page: Page) => page.getByRole("status").filter({ hasText: "Done." }).waitFor({ timeout: SLOW });
const firstSentence = (page: Page) => page.locator(".answer p").nth(1).textContent();

describe("since when", () => {
  test(
    "at 360 px: an early answer, then the whole one; nothing wrong, nothing wider than the window, no words in each other's way, no date torn apart, no number from its unit, axe content",
    async () => {
      const { context, page, wrong } = await visit(site, path, 360, 780);
      await status(page).filter({ hasText: "Roughly" }).waitFor({ timeout: SLOW });
      await done(page);
      expect(await firstSentence(page)).toMatch(/The leak opened about \d+ weeks? before/);
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      expect(await meetings(page)).toEqual([]);
      expect(await tornDates(page)).toEqual([]);
      expect(await tornAmounts(page)).toEqual([]);
      expect(await axeFindings(page)).toEqual([]);
      await page.screenshot({ path: join(screens, "since-when-360.png"), fullPage: true });
      expect(wrong).toEqual([]);
      await context.close();
    },
    SLOW,
  );

  test(
    "on a desk: a fact moved by keyboard is asked anew without preparing the week again; SI; cancel; paper; no network",
    async () => {
      const { context, page, wrong } = await visit(site, path, 1280, 900);
      await done(page);
      const before = await firstSentence(page);
      await context.setOffline(true);
      await page.getByRole("slider", { name: /Drops counted/ }).focus();
      for (let i = 0; i < 20; i++) await page.keyboard.press("ArrowRight");
      await status(page).filter({ hasText: "Asking" }).waitFor({ timeout: SLOW });
      expect(await status(page).textContent()).not.toMatch(/Preparing/);
      await done(page);
      expect(await firstSentence(page)).not.toBe(before);
      await page.getByRole("radio", { name: "SI" }).check();
      expect(await page.locator(".answer").textContent()).not.toMatch(/\d\s(qt|mi)\b/);
      await page.getByRole("radio", { name: "first this week" }).check();
      await status(page).filter({ hasText: "Asking" }).waitFor({ timeout: SLOW });
      const kept = await firstSentence(page);
      await page.getByRole("button", { name: "Cancel" }).click();
      await status(page).filter({ hasText: "Cancelled." }).waitFor({ timeout: SLOW });
      expect(await firstSentence(page)).toBe(kept);
      // What is still shown answers other facts, and is marked so; on paper it says which.
      expect(await page.locator("section.old").count()).toBeGreaterThan(4);
      expect(await page.locator(".answer .asked").textContent()).toMatch(
        /^Asked on 2024-11-04 with .* 86 drops in a minute/,
      );
      await page.emulateMedia({ media: "print" });
      expect(await page.getByRole("slider").first().isVisible()).toBe(false);
      expect(wrong).toEqual([]);
      await context.close();
    },
    SLOW,
  );

  test(
    "a week on its way is kept where another fact moves, and given up where the one that is there will do",
    async () => {
      const { context, page, wrong } = await visit(site, path, 1280, 900);
      const preparing = () => page.workers().filter((worker) => worker.url().includes("prepare-worker"));
      await status(page).filter({ hasText: "Preparing" }).waitFor({ timeout: SLOW });
      await expect.poll(() => preparing().length, { timeout: SLOW }).toBe(1);
      const [first] = preparing();
      await page.getByRole("slider", { name: /^Missing/ }).focus();
      await page.keyboard.press("ArrowRight");
      await done(page);
      expect(preparing()).toEqual([first]);
      await page.getByRole("slider", { name: /Driven in a week/ }).focus();
      await page.keyboard.press("ArrowRight");
      await status(page).filter({ hasText: "One moment." }).waitFor({ timeout: SLOW });
      await status(page).filter({ hasText: "Preparing" }).waitFor({ timeout: SLOW });
      await page.keyboard.press("ArrowLeft");
      await status(page).filter({ hasText: "Asking" }).waitFor({ timeout: SLOW });
      expect(await status(page).textContent()).not.toMatch(/Preparing/);
      await done(page);
      expect(preparing()).toEqual([]);
      expect(wrong).toEqual([]);
      await context.close();
    },
    SLOW,
  );

  test("printed while it still computes, a place without its picture says so in a line of words", async () => {
    const { context, page } = await visit(site, path, 1280);
    await status(page).filter({ hasText: "Preparing" }).waitFor();
    await page.emulateMedia({ media: "print" });
    const empty: [height: number, says: string][] = await page.evaluate(
      `[...document.querySelectorAll(".sheet:empty")].map((sheet) => [sheet.getBoundingClientRect().height, getComputedStyle(sheet, "::before").content])`,
    );
    expect(empty.length).toBeGreaterThan(3);
    for (const [height, says] of empty) {
      expect(says).toContain("none was computed yet");
      // Two lines of 10 pt letters: on the screen the frame is kept open over twelve.
      expect(height).toBeGreaterThan(10);
      expect(height).toBeLessThan(45);
    }
    await page.screenshot({ path: join(screens, "since-when-print-early.png"), fullPage: true });
    await context.close();
  });

  test(
    "where runs differ, the button asks again with twice the guesses, by keyboard, and the status says so",
    async () => {
      const { context, page, wrong } = await visit(site, path, 1280, 900);
      await page.getByRole("slider", { name: /^Missing/ }).focus();
      await page.keyboard.press("Home");
      await page.getByRole("slider", { name: /Drops counted/ }).focus();
      await page.keyboard.press("End");
      await status(page)
        .filter({ hasText: /^Done\. Runs differ: compute again with 8000 guesses/ })
        .waitFor({ timeout: SLOW });
      const again = page.getByRole("button", { name: "Compute again with 8000 guesses" });
      await again.focus();
      await page.keyboard.press("Enter");
      await status(page).filter({ hasText: "Asking every explanation with 8000 guesses." }).waitFor();
      await page.getByRole("button", { name: "Cancel" }).click();
      // What was cancelled is offered again.
      await again.waitFor();
      expect(wrong).toEqual([]);
      await context.close();
    },
    SLOW,
  );

  test(
    "the day it came in is set by keyboard and everything follows; half a date changes nothing and is said; axe content, on paper the answer names it",
    async () => {
      const { context, page, wrong } = await visit(site, path, 360, 780);
      await status(page).filter({ hasText: "Roughly" }).waitFor({ timeout: SLOW });
      const input = page.getByLabel("Came in on");
      expect(await input.inputValue()).toBe("2024-11-04");
      await input.focus();
      await page.keyboard.type("05062025");
      const set = await input.inputValue();
      expect(["2025-05-06", "2025-06-05"]).toContain(set);
      await status(page).filter({ hasText: "2025" }).waitFor({ timeout: SLOW });
      await done(page);
      expect(await page.locator(".answer .asked").textContent()).toContain(`Asked on ${set} with`);
      expect(await firstSentence(page)).toMatch(/near 2025-0\d-\d\d/);
      const kept = await firstSentence(page);
      await input.focus();
      await page.keyboard.press("Backspace");
      expect(await input.getAttribute("aria-invalid")).toBe("true");
      await input.evaluate((element: HTMLElement) => element.blur());
      expect(await page.locator(".day .fault").textContent()).toContain(`2024-11-04: ${set} stays`);
      expect(await firstSentence(page)).toBe(kept);
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      expect(await axeFindings(page)).toEqual([]);
      await page.screenshot({ path: join(screens, "since-when-day-360.png"), fullPage: true });
      await page.emulateMedia({ media: "print" });
      expect(await input.isVisible()).toBe(false);
      expect(await page.locator(".answer .asked").isVisible()).toBe(true);
      expect(wrong).toEqual([]);
      await context.close();
    },
    SLOW,
  );
});
