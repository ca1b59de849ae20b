// What looking back costs in a browser without a screen: the page asked anew with another count of drops, its week prepared.
import { openSite, visit } from "../browser/pages.ts";

const SLOW = 240_000;

/** From the fact that changes to the whole answer of 4000 guesses on the page, by the clock [s]: the page's own workers, its pictures included. */
export async function costInBrowser(): Promise<number> {
  const site = await openSite();
  try {
    const { page } = await visit(site, "since-when/index.html", 1280);
    const told = (text: string) =>
      page.getByRole("status").filter({ hasText: text }).waitFor({ timeout: SLOW });
    await told("Done.");
    await page.getByRole("slider", { name: /Drops counted/ }).focus();
    const from = performance.now();
    await page.keyboard.press("ArrowRight");
    await told("Asking");
    await told("Done.");
    return (performance.now() - from) / 1000;
  } finally {
    await site.close();
  }
}
