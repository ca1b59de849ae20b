// Whose units come first: one choice for all pages, remembered by the browser where it lets us.

import { signal } from "@preact/signals-core";
import type { UnitSystem } from "../../../src/units/show.ts";
import { choice } from "./choice.ts";

const KEY = "sumpfall.units";

function remembered(): UnitSystem {
  try {
    return localStorage.getItem(KEY) === "SI" ? "SI" : "US";
  } catch {
    return "US"; // a browser that keeps nothing
  }
}

export const system = signal<UnitSystem>("US");

/** The switch between US and SI units. */
export function unitSwitch(): HTMLElement {
  const { element, value } = choice(
    "Units",
    [
      ["US", "US"],
      ["SI", "SI"],
    ] as const,
    remembered(),
  );
  value.subscribe((chosen) => {
    system.value = chosen;
    try {
      localStorage.setItem(KEY, chosen);
    } catch {
      // remembered until the page is closed
    }
  });
  return element;
}
