// A band over some members is told no finer than it is wide.
import { expect, test } from "vitest";
import { toldBand } from "../../demos/ensemble/tables.ts";

test.each<[string, readonly (number | null)[], number, number]>([
  ["320 (210 to later)", [213.2, 260, 315.1, 400, null], 1, 0.1],
  ["0.7 (0.5 to 2.7)", [0.512, 0.6, 0.709, 1, 2.66], 1, 0.01],
  ["60191", [60191, 60191, 60191, 60191, 60191], 1, 1],
  ["later", [null, null, null, null, null], 1, 1],
])("%s", (says, band, factor, least) => {
  expect(toldBand(band as never, factor, least)).toBe(says);
});
