// The page as an apprentice meets it: on a phone, a desk, a projector and paper, by mouse and by keyboard.

import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Page } from "playwright-core";
import {
  axeFindings,
  lettersByPage,
  meetings,
  openSite,
  overhang,
  screens,
  tornAmounts,
  tornDates,
  visit,
  type Site,
} from "./pages.ts";

const path = "neither-on-nor-off/index.html";
const sheets = "figure .sheet";
let site: Site;

beforeAll(async () => {
  mkdirSync(screens, { recursive: true });
  site = await openSite();
});
afterAll(() => site.close());

/** Waits until every picture is drawn and the first history is there. */
async function ready(page: Page): Promise<void> {
  await page.getByRole("table").waitFor({ timeout: 90_000 });
  await page.waitForFunction(`document.querySelectorAll("${sheets}:empty").length === 0`, undefined, {
    timeout: 90_000,
  });
}

/** The text of the picture under a caption that begins so. */
const pictureText = (page: Page, caption: string) =>
  page.locator("figure", { hasText: caption }).locator(".sheet").textContent();

describe("neither on nor off", () => {
  test.each([
    [360, 780],
    [390, 844],
    [1280, 900],
    [1920, 1080],
  ])(
    "at %i px: no error, no failed or foreign request, nothing wider than the window, no words in each other's way, no date torn apart, no number from its unit",
    async (width, height) => {
      const { context, page, wrong } = await visit(site, path, width, height);
      await ready(page);
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      expect(await meetings(page)).toEqual([]);
      expect(await tornDates(page)).toEqual([]);
      expect(await tornAmounts(page)).toEqual([]);
      await page.screenshot({ path: join(screens, `neither-on-nor-off-${width}.png`), fullPage: true });
      expect(wrong).toEqual([]);
      await context.close();
    },
  );

  test("axe finds nothing, on this page nor on the list of pages", async () => {
    for (const each of [path, "index.html"]) {
      const { context, page } = await visit(site, each, 1280);
      if (each === path) await ready(page);
      expect(await axeFindings(page)).toEqual([]);
      await context.close();
    }
  });

  test("the list leads to the page and back", async () => {
    const { context, page } = await visit(site, "index.html", 1280);
    await page.getByRole("link", { name: "Neither on nor off" }).click();
    await page.getByRole("heading", { level: 1, name: "Neither on nor off" }).waitFor();
    await page.getByRole("link", { name: "Sumpfall" }).click();
    await page.getByRole("heading", { level: 1, name: "Sumpfall" }).waitFor();
    await context.close();
  });

  test("the keyboard moves a slider, and value, picture and sentence follow", async () => {
    const { context, page } = await visit(site, path, 1280);
    const slider = page.getByLabel("Torque that is asked of the clutch");
    const before = await pictureText(page, "Slip heat of the van's");
    const said = await page.locator(".reading").textContent();
    await slider.focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowRight");
    expect(await slider.getAttribute("aria-valuetext")).toContain("300 N m");
    expect(await pictureText(page, "Slip heat of the van's")).not.toBe(before);
    expect(await page.locator(".reading").textContent()).not.toBe(said);
    await context.close();
  });

  test("the switch turns every axis to SI, and the browser remembers it", async () => {
    const { context, page, wrong } = await visit(site, path, 1280);
    await ready(page);
    expect(await page.locator("main").textContent()).toContain("odometer [mi]");
    await page.getByRole("radio", { name: "SI", exact: true }).check();
    const axes = async () =>
      (await page.locator("svg text").allTextContents()).filter((text) => text.includes("["));
    const units = (texts: readonly string[]) =>
      new Set(texts.flatMap((text) => text.match(/\[[^\]]+\]/g) ?? []));
    const si = units(await axes());
    for (const unit of ["[kW]", "[kPa]", "[kJ]", "[mm]", "[°C]", "[km]", "[km/h]", "[N m]"])
      expect(si).toContain(unit);
    for (const unit of ["[hp]", "[psi]", "[BTU]", "[in]", "[°F]", "[mi]", "[mph]", "[lb ft]"])
      expect(si).not.toContain(unit);
    expect(await page.getByRole("columnheader", { name: "odometer [km]" }).count()).toBe(1);
    await page.reload();
    await ready(page);
    expect(await page.getByRole("radio", { name: "SI", exact: true }).isChecked()).toBe(true);
    expect(units(await axes())).toContain("[kPa]");
    expect(wrong).toEqual([]);
    await context.close();
  });

  test("a new hole is computed beside the page; cancelled, the last good history stays", async () => {
    const { context, page } = await visit(site, path, 1280);
    await ready(page);
    const status = page.getByRole("status");
    const first = await page.getByRole("table").textContent();
    await page.getByLabel("Diameter of the hole").focus();
    await page.keyboard.press("Home");
    await page.getByRole("button", { name: "Cancel" }).waitFor();
    await expect
      .poll(() => status.textContent())
      .toContain("Computing the history. Still shown: a hole of 0.0047");
    await expect
      .poll(() => page.getByRole("progressbar").getAttribute("value").then(Number), { timeout: 30_000 })
      .toBeGreaterThan(0);
    await page.getByRole("button", { name: "Cancel" }).click();
    await expect.poll(() => status.textContent()).toContain("Cancelled. Still shown: a hole of 0.0047");
    expect(await page.getByRole("table").textContent()).toBe(first);

    await page.getByLabel("Diameter of the hole").focus();
    for (let i = 0; i < 30; i++) await page.keyboard.press("ArrowRight");
    await expect.poll(() => status.textContent(), { timeout: 60_000 }).toContain("Done: a hole of");
    expect(await page.getByRole("table").textContent()).not.toBe(first);
    await context.close();
  });

  test("another place and another moment are shown when they are chosen", async () => {
    const { context, page } = await visit(site, path, 1280);
    await ready(page);
    await page.getByRole("radio", { name: "first gulp of air" }).check();
    expect(await pictureText(page, "Seconds before and after")).toContain(
      'time from "first gulp of air" [s]',
    );
    await page.getByRole("radio", { name: /its last \d+ running hours/ }).check();
    expect(await pictureText(page, "One point a trip")).not.toContain("leak opens");
    await page.getByRole("radio", { name: /return line/ }).check();
    await expect
      .poll(() => page.getByRole("status").textContent(), { timeout: 60_000 })
      .toMatch(/^Done: .*return line/);
    await context.close();
  });

  test("on paper there are pictures and no controls", async () => {
    const { context, page } = await visit(site, path, 1280);
    await ready(page);
    await page.pdf({
      path: join(screens, "neither-on-nor-off.pdf"),
      format: "A4",
      tagged: true,
      outline: true,
    });
    // No last page is blank, nor all but: what is closed on the screen leaves nothing there.
    for (const format of ["A4", "Letter"])
      expect(Math.min(...lettersByPage(await page.pdf({ format })).slice(-1)), format).toBeGreaterThan(500);
    await page.emulateMedia({ media: "print" });
    for (const control of await page.locator("input, button, progress").all())
      expect(await control.isVisible()).toBe(false);
    expect(await page.locator(`${sheets} > svg`).count()).toBe(5);
    for (const sheet of await page.locator(`${sheets} > svg`).all())
      expect(await sheet.isVisible()).toBe(true);
    // A4 without its margins: narrow enough for the style of a phone, whose pictures reach into the margin.
    await page.setViewportSize({ width: 680, height: 1000 });
    expect(await overhang(page)).toBeLessThanOrEqual(0);
    const left = await page.evaluate(
      `Math.min(...[...document.querySelectorAll(".sheet")].map((sheet) => sheet.getBoundingClientRect().left))`,
    );
    expect(left).toBeGreaterThanOrEqual(0);
    await context.close();
  });

  test("still works when the network is gone", async () => {
    const { context, page, wrong } = await visit(site, path, 1280);
    await ready(page);
    await context.setOffline(true);
    await page.getByLabel("Van with its load").focus();
    await page.keyboard.press("ArrowRight");
    await expect
      .poll(() => page.getByRole("status").textContent(), { timeout: 60_000 })
      .toMatch(/^Done: .*3000\skg/);
    expect(wrong).toEqual([]);
    await context.close();
  });
});
