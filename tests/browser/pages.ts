// The pages as a visitor meets them: built, served on this machine, and opened in a browser without a screen.

import { join } from "node:path";
import { inflateSync } from "node:zlib";
import axe from "axe-core";
import { chromium, type Browser, type BrowserContext, type Page } from "playwright-core";
import { shownUnits } from "../../src/units/show.ts";
import { build, preview, type PreviewServer } from "vite";

const root = join(import.meta.dirname, "../..");
export const screens = join(root, "out/screens");

export interface Site {
  readonly browser: Browser;
  readonly url: string;
  readonly close: () => Promise<void>;
}

/** Builds the pages into a folder of their own, serves them and starts the browser. */
export async function openSite(): Promise<Site> {
  const configFile = join(root, "vite.config.ts");
  const outDir = join(root, "out/browser-pages");
  await build({ configFile, logLevel: "error", build: { outDir, emptyOutDir: true } });
  const server: PreviewServer = await preview({
    configFile,
    logLevel: "error",
    build: { outDir },
    preview: { host: "127.0.0.1", port: 0 },
  });
  const url = server.resolvedUrls!.local[0]!;
  const browser = await chromium.launch({
    executablePath: process.env["CHROMIUM"] ?? "/usr/bin/chromium",
    args: ["--no-sandbox", "--disable-dev-shm-usage"],
  });
  const close = async () => {
    await browser.close();
    await server.close();
  };
  return { browser, url, close };
}

/** A page of a width, with everything that went wrong on it: errors, failed and foreign requests. */
export interface Visit {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly wrong: string[];
}

export async function visit(
  { browser, url }: Site,
  path: string,
  width: number,
  height = 900,
): Promise<Visit> {
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: "reduce" });
  await context.addInitScript("globalThis.__name = (f) => f");
  const page = await context.newPage();
  const wrong: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") wrong.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => wrong.push(`error: ${error.message}`));
  page.on("requestfailed", (request) => wrong.push(`failed: ${request.url()}`));
  page.on("response", (response) => {
    if (response.status() >= 400) wrong.push(`${response.status()}: ${response.url()}`);
  });
  page.on("request", (request) => {
    if (!/^(data|blob):/.test(request.url()) && !request.url().startsWith(url))
      wrong.push(`foreign: ${request.url()}`);
  });
  await page.goto(new URL(path, url).href);
  return { context, page, wrong };
}

/** What axe finds wrong, one line a finding. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(
    `axe.run(document, { resultTypes: ["violations"] }).then(({ violations }) =>
       violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => id + ": " + html.slice(0, 160))))`,
  );
}

/** How much wider than the window the page is [px]. */
export const overhang = (page: Page): Promise<number> =>
  page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");

/** Tables that are wider than the room they have, so that their last column is cut or has to be pushed into sight. */
export const cutTables = (page: Page): Promise<string[]> =>
  page.evaluate(`[...document.querySelectorAll(".table")]
    .filter((table) => table.scrollWidth > table.clientWidth)
    .map((table) => table.querySelector("caption").innerText)`);

/** Pairs of words in one picture that stand in each other's way, and words that leave it. */
export const meetings = (page: Page): Promise<string[]> =>
  page.evaluate(`[...document.querySelectorAll("svg")].filter((svg) => svg.parentElement.closest("svg") === null).flatMap((svg) => {
    const box = svg.getBoundingClientRect();
    const texts = [...svg.querySelectorAll("text")].map((text) => [text.textContent, text.getBoundingClientRect()]).filter(([says, { width }]) => says.trim() !== "" && width > 0);
    return texts.flatMap(([says, a], i) => [
      ...(a.left < box.left - 2 || a.right > box.right + 2 || a.bottom > box.bottom + 2 ? [says + " leaves its picture"] : []),
      ...texts.slice(0, i).filter(([, b]) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1.5 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4).map(([other]) => says + " meets " + other),
    ]);
  })`);

/** Dates that a line's end tears apart. */
export const tornDates = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const torn = [];
    while (walker.nextNode())
      for (const found of walker.currentNode.data.matchAll(/\\d{4}-\\d{2}-\\d{2}/g)) {
        const range = document.createRange();
        range.setStart(walker.currentNode, found.index);
        range.setEnd(walker.currentNode, found.index + found[0].length);
        if (new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size > 1) torn.push(found[0]);
      }
    return torn;
  })()`);

/** Numbers that a line's end parts from their unit, in words that are shown. */
export const tornAmounts = (page: Page): Promise<string[]> =>
  page.evaluate(`(() => {
    const amount = new RegExp(${JSON.stringify(`[\\d)][ \\u00a0](?:${shownUnits.join("|")}|%|min|days|weeks|hours)(?![\\w/])`)}, "g");
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const torn = [];
    while (walker.nextNode())
      for (const found of walker.currentNode.data.matchAll(amount)) {
        const range = document.createRange();
        range.setStart(walker.currentNode, found.index);
        range.setEnd(walker.currentNode, found.index + found[0].length);
        if (new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size > 1)
          torn.push(walker.currentNode.data.slice(Math.max(0, found.index - 20), found.index + found[0].length));
      }
    return torn;
  })()`);

/** The letters drawn on each page of a PDF as Chromium writes it. */
export function lettersByPage(pdf: Buffer): number[] {
  const text = pdf.toString("latin1");
  const objects = new Map(
    [...text.matchAll(/(\d+) 0 obj\b([^]*?)endobj/g)].map(([, id, body]) => [id!, body!]),
  );
  const inside = (body: string, key: string): string[] =>
    [...(new RegExp(`/${key}\\s*\\[?([^\\]/>]*)`).exec(body)?.[1] ?? "").matchAll(/(\d+) 0 R/g)].map(
      ([, id]) => id!,
    );
  const drawn = (id: string): string => {
    const raw = /stream\r?\n([^]*?)\r?\nendstream/.exec(objects.get(id)!)![1]!;
    return inflateSync(Buffer.from(raw, "latin1")).toString("latin1");
  };
  const pagesUnder = (id: string): string[] => {
    const body = objects.get(id)!;
    return body.includes("/Kids") ? inside(body, "Kids").flatMap(pagesUnder) : [body];
  };
  const catalog = [...objects.values()].find((body) => /\/Type\s*\/Catalog/.test(body))!;
  return pagesUnder(inside(catalog, "Pages")[0]!).map(
    (page) =>
      inside(page, "Contents")
        .map(drawn)
        .join("")
        .match(/T[jJ]\b/g)?.length ?? 0,
  );
}
