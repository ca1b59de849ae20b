// The price of a pressure that goes: once, in a given time, or again and again.

import { fadeSweep, type Cruise, type FadeRow } from "../../../src/history/fade.ts";
import { atFirst, caseOf } from "./van.ts";

/** The van in third gear at 50 km/h up a hill of one in twenty, warm. */
export const uphill: Cruise = { gear: 2, speed: 50 / 3.6, grade: 0.05, temperature: 358.15 };

const times = [0.05, 0.1, 0.2, 0.5, 1, 2, 3, 5, 10, 20, 60, 180, 600, 1800, 3600];

/** Heat for every time of the picture. */
export function fades(at: readonly number[] = times): FadeRow[] {
  return fadeSweep(caseOf(atFirst).unit, uphill, at);
}
