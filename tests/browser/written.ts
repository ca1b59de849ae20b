// A page that a program of demos/ has written, opened from its file in a browser without a screen.

import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium, type Browser, type Page } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
import { freshFolder, runProgram } from "../demo/demo.ts";
import { meetings, overhang, screens, tornAmounts, tornDates } from "./pages.ts";

/** A written report, to be opened at any width. */
interface Written {
  readonly browser: Browser;
  readonly opened: (width: number) => Promise<Page>;
}

/** The same for the tests of a file: written before them, and the browser closed after them. Opens the page at a width. */
export function reportOf(...asked: Parameters<typeof written>): Written["opened"] {
  let report: Written | undefined;
  beforeAll(async () => {
    report = await written(...asked);
  });
  afterAll(() => report?.browser.close());
  return (width) => report!.opened(width);
}

/** Nothing is wider than the window, no words are in each other's way, no date is torn apart, no number from its unit. */
export async function expectWhole(page: Page): Promise<void> {
  expect(await overhang(page)).toBeLessThanOrEqual(0);
  expect(await meetings(page)).toEqual([]);
  expect(await tornDates(page)).toEqual([]);
  expect(await tornAmounts(page)).toEqual([]);
}

/** Lets a program write its report, by words that may name files in a fresh folder, and starts the browser. */
async function written(
  program: Parameters<typeof runProgram>[0],
  words: (folder: string) => readonly string[],
): Promise<Written> {
  mkdirSync(screens, { recursive: true });
  const folder = freshFolder();
  const out = join(folder, "out");
  const ran = await runProgram(program, [...words(folder), "--out", out]);
  expect(ran.err).not.toContain("expected");
  expect(ran.code).toBe(0);
  const url = pathToFileURL(join(out, "report.html")).href;
  const browser = await chromium.launch({
    executablePath: process.env["CHROMIUM"] ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-dev-shm-usage"],
  });
  return {
    browser,
    async opened(width) {
      const page = await browser.newPage({ viewport: { width, height: 900 } });
      await page.addInitScript("globalThis.__name = (f) => f");
      await page.goto(url);
      return page;
    },
  };
}

/** All words that are shown, in prose, tables and pictures; the input's own words apart. */
export const seen = (page: Page): Promise<string> =>
  page.evaluate(`(() => {
    const shown = (element) => element.getBoundingClientRect().width > 0;
    const own = [...document.querySelectorAll(".quoted, .ranges td.prose")];
    for (const element of own) element.style.display = "none";
    const pictures = [...document.querySelectorAll(".drawing text")].filter(shown).map(({ textContent }) => textContent);
    const words = document.body.innerText;
    for (const element of own) element.style.display = "";
    return [words, ...pictures].join("\\n");
  })()`);
