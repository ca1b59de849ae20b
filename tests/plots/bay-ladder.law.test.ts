import { expect, test } from "vitest";
import type { BayCard } from "../../src/bay/bay-card.ts";
import { row } from "../../src/bay/bay-row.ts";
import { bayLadder } from "../../src/plots/bay-ladder.ts";
import { clutchStates } from "../../src/plots/clutch-states.ts";
import { drawEach, paper, sound } from "./drawn.ts";

const quart = 9.46352946e-4;
const practice = { kind: "common practice", source: "made up for this test" } as const;

/** A card in the shape of the bay's: pressure stays, the stick falls, the plug stops running, the gear gets slow. */
const card = (short: number): BayCard => ({
  unit: "made up",
  shortage: short * quart,
  rows: [
    row("line pressure", "idle, drive, hot", {
      kind: "pressure",
      value: 4.3e5,
      band: { low: 3.5e5, high: 7e5, ...practice },
    }),
    row("dipstick", "idle, park, hot", {
      kind: "length",
      value: 0.05 - 0.009 * short,
      band: { low: 0.045, high: 0.0505, ...practice },
    }),
    row("overflow plug", "runs from", {
      kind: "temperature",
      value: short > 0 ? null : 311,
      band: { low: 308, high: 318, ...practice },
    }),
    row("time into gear", "drive, hot", {
      kind: "seconds",
      value: 0.8 + short,
      band: { low: 0, high: 1, ...practice },
    }),
    row("cooler return", "in 20 s", {
      kind: "volume",
      value: 1.5e-3,
      band: { low: 9e-4, high: null, ...practice },
    }),
    row("pressures", "reverse over drive", {
      kind: "ratio",
      value: 1.45,
      band: { low: 1.3, high: 2, ...practice },
    }),
  ],
  misreadings: [],
  pressureLow: false,
  cautions: [],
  notes: [],
});

test("the ladder names every test with its unit and condition, in both systems", () => {
  drawEach(
    (picture) => bayLadder([0, 1, 2, 3].map(card), picture),
    (texts, system) => {
      const [pressure, length, temperature, volume] =
        system === "US" ? ["psi", "in", "°F", "qt"] : ["kPa", "mm", "°C", "L"];
      for (const title of [
        `line pressure [${pressure}]`,
        `dipstick [${length}]`,
        `overflow plug [${temperature}]`,
        `cooler return [${volume}]`,
        "time into gear [s]",
        "pressures [ratio]",
        "idle, park, hot",
      ])
        expect(texts).toContain(title);
      expect(texts.filter((text) => text === `short of fluid [${volume}]`)).toHaveLength(6);
    },
  );
});

test("what lies outside its band, or was not reached, is a cross and not a dot", () => {
  const svg = bayLadder([0, 1, 2, 3].map(card), { system: "US", width: 700, document: paper() });
  // Stick, plug and time into gear leave their band from the first quart on: nine crosses, the other fifteen are dots.
  expect(svg.getAttribute("aria-label")).toContain("3 of them leave their band");
  expect(svg.querySelectorAll("g[stroke-width='2'] path")).toHaveLength(9);
  expect(svg.querySelectorAll("circle")).toHaveLength(15);
});

test("a single card, and none, are drawn", () => {
  for (const cards of [[card(0)], []])
    sound(bayLadder(cards, { system: "SI", width: 360, document: paper() }), 360);
});

test("the three states of a clutch are named, wide and narrow", () => {
  drawEach(clutchStates, (texts) => {
    for (const says of [
      "released",
      "partly applied",
      "fully applied",
      "steel",
      "lined",
      "piston",
      "pressure",
    ])
      expect(texts).toContain(says);
  });
});
