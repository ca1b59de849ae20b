// A band over some members is told no finer than it is wide.
import { expect, test } from "vitest";
import { toldBand } from "../../demos/ensemble/tables.ts";

test.each<[string, readonly (number | null)[], number, number]>([
  ["320 (210 to later)", [213.2, 260, 315.1, 400, null], 520, 0.1],
  // Where only its beginning is known, it reaches at least to the latest end of all.
  ["later (250 to later)", [247.4, null, null, null, null], 520, 0.1],
  ["later (247 to later)", [247.4, null, null, null, null], 260, 0.1],
  ["0.7 (0.5 to 2.7)", [0.512, 0.6, 0.709, 1, 2.66], 3, 0.01],
  ["60191", [60191, 60191, 60191, 60191, 60191], 61000, 1],
  ["later", [null, null, null, null, null], 1, 1],
])("%s", (says, band, latest, least) => {
  expect(toldBand(band as never, latest, 1, least)).toBe(says);
});
