// When events come, as bands: every name is there and whole, on a phone too.
import { expect, test } from "vitest";
import type { EventBand } from "../../src/ensemble/bands.ts";
import { letterWidth } from "../../src/plots/ink.ts";
import { eventRows } from "../../src/plots/ensemble-bands.ts";
import { drawEach, paper, sound } from "./drawn.ts";

const band = (name: EventBand["name"], hours: readonly (number | null)[], share: number): EventBand => {
  const seconds = hours.map((hour) =>
    hour === null ? null : 3600 * hour,
  ) as unknown as EventBand["running"];
  return { key: name, name, share, clock: seconds, running: seconds, odometer: seconds, lost: seconds };
};
const data = {
  events: [
    band("leak opens", [10, 10, 10, 10, 10], 1),
    band("line pressure below demand", [5, 150, 190, 260, 293], 1),
    band("learned trim at its limit", [282, 300, null, null, null], 0.3),
  ],
  asWritten: { "leak opens": 36000 },
  to: 1e6,
};

test("names every event whole, with its share, and the axis with its unit", () => {
  drawEach(
    (picture) => eventRows(data, picture),
    (texts) => {
      for (const says of ["leak opens", "pressure below demand", "trim at its limit", "100 %", "30 %"])
        expect(texts).toContain(says);
      expect(texts).toContain("running time [h]");
    },
  );
  for (const width of [320, 1100]) {
    const svg = eventRows(data, { system: "US", width, document: paper() });
    sound(svg, width);
    for (const text of svg.querySelectorAll("text")) {
      const [at, room] = [Number(text.getAttribute("x")), letterWidth * (text.textContent ?? "").length];
      const anchor = text.getAttribute("text-anchor");
      const left = anchor === "end" ? at - room : anchor === "middle" ? at - room / 2 : at;
      expect(left, text.textContent ?? "").toBeGreaterThanOrEqual(0);
      expect(left + room, text.textContent ?? "").toBeLessThanOrEqual(width);
    }
  }
});
