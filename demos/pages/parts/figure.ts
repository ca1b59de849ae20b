// A picture on a page: drawn anew when its data, the units or the room for it change, and as wide as paper for printing.

import { computed, effect, signal } from "@preact/signals-core";
import type { Picture } from "../../../src/plots/picture.ts";
import { dated } from "./dated.ts";
import { element } from "./element.ts";
import { system } from "./units.ts";

/** Width of a picture on paper [px], so that its letters stay readable on A4 and US letter. */
const PAPER = 760;
const printing = signal(false);
if (typeof addEventListener === "function") {
  addEventListener("beforeprint", () => (printing.value = true));
  addEventListener("afterprint", () => (printing.value = false));
}

/** A figure with its caption. `draw` may read signals; null leaves the place empty, without its caption. */
export function figure(
  caption: string | Node,
  draw: (picture: Picture) => Element | null,
  className = "",
): HTMLElement {
  const sheet = element("div", { class: "sheet" });
  const under = element("figcaption", {}, ...(typeof caption === "string" ? dated(caption) : [caption]));
  const made = element("figure", { class: className }, sheet, under);
  const room = signal(0);
  // A large letter asks for a larger picture rather than for one with relatively smaller letters.
  const enlarged = () =>
    Math.max(1, Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 18);
  new ResizeObserver(([entry]) => {
    if (entry && !printing.value) room.value = Math.floor(entry.contentRect.width / enlarged());
  }).observe(sheet);
  const width = computed(() => (printing.value ? PAPER : room.value));
  effect(() => {
    if (width.value < 200) return;
    const svg = draw({ system: system.value, width: width.value, document });
    sheet.replaceChildren(...(svg ? [svg] : []));
    under.hidden = svg === null; // words about a picture that is not there say nothing
  });
  return made;
}
