import { describe, expect, test } from "vitest";
import { newRow } from "../../src/history/record.ts";
import { closeUpStrip } from "../../src/plots/close-up-strip.ts";
import { historyStrip } from "../../src/plots/history-strip.ts";
import { drawEach, notWellFormed, paper, sound } from "./drawn.ts";
import { closeUpAt, events, trips } from "./story.ts";

const marks = { low: 0.05, full: 0.055, trimLimit: 150e3, odometer: 9.6e7 };

describe("the strip of a history", () => {
  test("names every axis with its unit, in both systems", () => {
    drawEach(
      (picture) => historyStrip({ history: { trips, events }, ...marks }, picture),
      (texts, system) => {
        const all = texts.join("\n");
        const units = system === "US" ? ["[in]", "[BTU]", "[°F]", "[mi]"] : ["[mm]", "[kJ]", "[°C]", "[km]"];
        for (const unit of [...units, "running time [h]", "[%]", "[ratio]", "% of set point", "low mark"])
          expect(all).toContain(unit);
      },
    );
  });

  test("flags every event once, and of damage that comes at one time only the last", () => {
    drawEach(
      (picture) => historyStrip({ history: { trips, events }, ...marks }, picture),
      (texts) => {
        for (const says of [
          "leak opens",
          "first gulp of air",
          "first sustained slip",
          "front brake burnt",
          "no drive",
        ])
          expect(texts.filter((text) => text === says)).toHaveLength(1);
        expect(texts.join("\n")).not.toContain("damage 0.1");
      },
    );
  });

  test("shows only the end when it is asked to begin late", () => {
    const svg = historyStrip(
      { history: { trips, events }, ...marks, from: 35 * 3600 },
      { system: "US", width: 900, document: paper() },
    );
    sound(svg, 900);
    expect(svg.textContent).toContain("first flare");
    expect(svg.textContent).not.toContain("leak opens");
  });

  test.each([
    ["no trip", []],
    ["one trip", [trips[0]!]],
    ["a trip that showed nothing", [newRow()]],
    ["levels that were never read", trips.map((row) => ({ ...row, level: Number.NaN }))],
  ])("is drawn with %s", (_, some) => {
    for (const width of [320, 1100])
      sound(
        historyStrip(
          { history: { trips: some, events: [] }, ...marks },
          { system: "US", width, document: paper() },
        ),
        width,
      );
  });
});

describe("the strip of a close-up", () => {
  const moment = events.find(({ name }) => name === "first sustained slip")!.clock;

  test("names every axis with its unit, in both systems", () => {
    drawEach(
      (picture) => closeUpStrip({ closeUp: closeUpAt(moment), events, moment }, picture),
      (texts, system) => {
        const all = texts.join("\n");
        const units =
          system === "US"
            ? ["[mph]", "[in]", "[psi]", "[lb ft]", "[hp]"]
            : ["[km/h]", "[mm]", "[kPa]", "[N m]", "[kW]"];
        for (const unit of [...units, "[rpm]", "[%]", "[s]"]) expect(all).toContain(unit);
        for (const line of [
          "driven",
          "wanted",
          "set point",
          "can be carried",
          "asked",
          "first sustained slip",
        ])
          expect(texts).toContain(line);
      },
    );
  });

  test("is drawn when there is nothing to look at", () => {
    const svg = closeUpStrip(
      { closeUp: { about: "no drive", looks: [] }, events: [], moment: 0 },
      { system: "SI", width: 600, document: paper() },
    );
    sound(svg, 600);
  });
});

test("the check of the XML itself notices", () => {
  expect(notWellFormed('<svg a="1"><g></g></svg>')).toBe("");
  expect(notWellFormed('<svg><path d="M0,0"/></svg>')).toBe("");
  for (const bad of [
    "<svg><g></svg>",
    "<svg a=1></svg>",
    "<svg>a & b</svg>",
    '<svg a="1" a="2"></svg>',
    "<svg>a < b</svg>",
  ])
    expect(notWellFormed(bad)).not.toBe("");
});
